"""A job and its files: the answer, and every deliverable of it in a folder."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

from crestcut.cut import KeepArea
from crestcut.study import STUDY_NAME, Clock, Say, ScanAhead, Study, run_job, write_study
from crestcut.work import WorkOrder, Worksheet, make_site, make_worksheet

if TYPE_CHECKING:
    from crestcut.report import Worker


def run_and_write(
    path: Path,
    out: Path,
    say: Say = lambda _: None,
    press: Worker | None = None,
    ahead: ScanAhead | None = None,
) -> tuple[Study, tuple[Path, ...]]:
    """The job's answer and every deliverable in ``out``, moved there when all are whole; the paths written.

    press : a second process for pictures, sheets and meshes, which draws while options are still being tried;
    None draws them here. It is ended either way, before what it writes into is moved or thrown away.
    ahead : as for ``run_job``.
    """
    from crestcut.report import Staging, Worker

    staging = Staging(out, "run", say)
    sheets: list[Worksheet] = []
    with staging as folder, press or Worker(apart=False) as hand:
        done = run_job(path, say, lambda early: sheets.append(_draw(early, folder, hand)), ahead)
        staging.about = done.report.identity
        _write_rest(done, sheets[0], folder, hand, say)
    return done, staging.moved


def write_job(
    done: Study, out: Path, say: Say = lambda _: None, press: Worker | None = None
) -> tuple[Path, ...]:
    """Every deliverable of a finished job into ``out``; as ``run_and_write``."""
    from crestcut.report import Staging, Worker

    staging = Staging(out, "run", say)
    with staging as folder, press or Worker(apart=False) as hand:
        staging.about = done.report.identity
        _write_rest(done, _draw(done, folder, hand), folder, hand, say)
    return staging.moved


def _draw(done: Study, folder: Path, hand: Worker) -> Worksheet:
    """Ask the press for all that shows no option: pictures, meshes, work sheets and drawing."""
    from crestcut.report import (
        CAD_NAME,
        GLB_NAME,
        draw_pictures,
        light,
        write_cad,
        write_depth_glb,
        write_sheets,
    )

    report = done.report
    shown = light(report)
    hand.ask(draw_pictures, shown, folder)
    hand.ask(write_depth_glb, shown, folder / GLB_NAME)
    order = WorkOrder(
        report.job, report.vehicle, report.surface, report.ride, report.plan, done.release,
        marks={m.name: m.xy for m in report.marks},
        keeps=[
            KeepArea(k.kind, tuple((float(x), float(y)) for x, y in k.area), k.deepest)
            for k in report.keeps
        ],
        left=report.left,
    )  # fmt: skip
    sheet = make_worksheet(order, report.advice, report.scan.frame.plan_to_site)
    site = make_site(report.surface, report.line, report.plan)
    hand.ask(write_sheets, sheet, site, report.identity, folder)
    hand.ask(write_cad, shown, sheet, folder / CAD_NAME)
    return sheet


def _write_rest(done: Study, sheet: Worksheet, folder: Path, hand: Worker, say: Say) -> None:
    """Mesh, page and result into ``folder``; back when the press has done all it was asked."""
    from crestcut.report import PLY_NAME, write_depth_ply, write_report, write_result

    report = done.report
    clock = Clock(say)
    with clock.stage("write", "writing mesh, pictures, page and sheets"):
        write_depth_ply(report, folder / PLY_NAME)
        write_report(report, folder, sheet)
        write_study(done, folder / STUDY_NAME)
        hand.finish()
    timed = replace(report, seconds={**report.seconds, **clock.seconds})
    write_result(timed, folder / "result.json")
