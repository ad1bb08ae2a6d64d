"""A job and its files: the answer, and every deliverable of it in a folder."""

from __future__ import annotations

from dataclasses import replace
from importlib import import_module
from pathlib import Path

from crestcut.apps.rerun import job_of_record
from crestcut.base.errors import Say, Verdict
from crestcut.base.language import Words, speaking, words_of
from crestcut.base.parallel import meanwhile
from crestcut.job import Job, ScanChoice
from crestcut.scan import Scan
from crestcut.study import STUDY_NAME, Clock, Report, Study, order_of, run_job, write_study
from crestcut.work import Worksheet, make_site, make_worksheet

Held = tuple[ScanChoice, Scan]


def run_and_write(
    path: Path, out: Path, say: Say = lambda _: None, held: Held | None = None, language: str | None = None
) -> tuple[Study, tuple[Path, ...]]:
    """A job's answer and every deliverable in ``out``, moved there when all are whole; the paths written.

    held : as of ``run_job``.  language : of sheets and pictures, in place of the job's own.
    """
    from crestcut.report import Staging

    staging = Staging(out, "run", say)
    with staging as folder:
        done = run_into(path, folder, say, out / STUDY_NAME, held, language)
        staging.about = done.report.identity
    return done, staging.moved


def run_into(
    path: Path, folder: Path, say: Say, before: Path, held: Held | None = None, language: str | None = None
) -> Study:
    """The same into a folder that nobody else knows. before, held : as of ``run_job``."""
    from crestcut.report import first_answer, verdict_line

    def answered(known: Report) -> None:
        say(Verdict(verdict_line(known), lambda: first_answer(known)))

    job = job_of_record(path, say) if path.suffix == ".json" else path
    done = run_job(job, say, before, held, answered)
    with speaking(spoken(done.report.job, language)):
        _write(done, folder, say)
    return done


def spoken(job: Job, language: str | None = None) -> Words:
    """The words of a job's sheets and pictures."""
    return words_of(language or job.language, job.site.country)


def write_job(done: Study, out: Path | str, say: Say = lambda _: None) -> tuple[Path, ...]:
    """Every deliverable of a finished job into ``out``; as ``run_and_write``."""
    from crestcut.report import Staging

    staging = Staging(Path(out), "run", say)
    with staging as folder:
        staging.about = done.report.identity
        with speaking(spoken(done.report.job)):
            _write(done, folder, say)
    return staging.moved


def _write(done: Study, folder: Path, say: Say) -> None:
    from crestcut.report import write_result

    report = done.report
    clock = Clock(say)
    with clock.stage("write", "writing mesh, pictures, page and sheets"):
        kept = meanwhile(write_study, done, folder / STUDY_NAME)  # packing lets go of the interpreter
        try:
            _draw(done, folder)
        finally:
            kept()
    timed = replace(report, seconds={**report.seconds, **clock.seconds})
    write_result(timed, folder / "result.json")


def _draw(done: Study, folder: Path) -> None:
    from crestcut.report import (
        CAD_NAME,
        GLB_NAME,
        PLY_NAME,
        RECORD_NAME,
        REFERENCE_NAME,
        draw_plan,
        draw_profile,
        draw_reference,
        worth_drawing,
        write_agreement,
        write_cad,
        write_depth_glb,
        write_depth_ply,
        write_record,
        write_report,
        write_sheets,
    )

    report = done.report
    sheet = worksheet_of(done)
    site = make_site(report.surface, report.line, report.plan)
    write_depth_ply(report, folder / PLY_NAME)
    write_depth_glb(report, folder / GLB_NAME)
    draw_plan(report, folder / "plan.png")
    draw_profile(report, folder / "profile.png")
    if worth_drawing(report):
        draw_reference(report, folder / REFERENCE_NAME)
    write_sheets(sheet, site, report.identity, folder)
    write_agreement(report, sheet, folder)
    write_cad(report, sheet, folder / CAD_NAME)
    write_report(report, folder, sheet)
    write_record(report, folder / RECORD_NAME)


def worksheet_of(done: Study) -> Worksheet:
    """The work sheets of a finished job."""
    report = done.report
    order = order_of(report, done.release)
    return make_worksheet(order, report.advice, report.scan.frame.plan_to_site)


def reached(report: Report) -> bool:
    """Does the planned cut, where there is one, reach what was asked, water included?"""
    plan = report.plan
    return plan is None or (plan.feasible and (plan.drain is None or plan.drain.reached))


def load_all() -> None:
    """Load every library that a job's answer and files take; all are loaded when first needed otherwise."""
    from crestcut import report, terrain
    from crestcut.cut import load_caster

    drawn = ("ezdxf", "trimesh", "matplotlib.backends.backend_agg", "matplotlib.backends.backend_pdf")
    for module in (*drawn, "scipy.optimize"):
        import_module(module)
    for room in (report, terrain):
        for name in room.__all__:
            getattr(room, name)
    load_caster()
