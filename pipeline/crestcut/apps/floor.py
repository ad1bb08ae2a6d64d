"""A floor on one page: scan -> floor -> gaps, F-numbers and their chance -> what to grind -> release ->
files.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from pathlib import Path

import numpy as np

from crestcut import __version__
from crestcut.base.errors import CrestcutError, Mind, Say
from crestcut.base.grid import GridFrame
from crestcut.base.language import speaking
from crestcut.base.parallel import one_thread_each
from crestcut.cut import cut_limits, deepest_allowed
from crestcut.floor import (
    Levelling,
    doubted_floor,
    floor_findings,
    floor_frame,
    floor_nodes,
    floor_only,
    judge_floor,
    make_floor_sheet,
    tilt_of,
)
from crestcut.job import FloorJob, Job, load_floor_job, words_in
from crestcut.report import FloorReport
from crestcut.scan import (
    Frame,
    Needs,
    Patch,
    Scan,
    anywhere,
    mark_place,
    read_scan,
    resolve_area,
)
from crestcut.standing import AROUND
from crestcut.study import Clock, Identity, keeps_of, place_of
from crestcut.terrain import (
    FLOOR,
    DoubtKind,
    NoSlab,
    Surface,
    build_surface,
    doubts_of,
    gather_evidence,
    slab_behind,
)
from crestcut.work import check_work, decide_release

OWN_ERROR = (
    "the scan's own error is worth more than half of the gap asked for, or leaves the answer open: lay a"
    " straightedge at the places named"
)


@dataclass(frozen=True, eq=False)
class _MeshOf:
    """What the mesh of a depth is written from."""

    surface: Surface
    scan: Scan
    plan: Levelling
    identity: Identity


@one_thread_each
def floor_job(path: Path, say: Say = lambda _: None) -> FloorReport:
    """A floor's job file answered, nothing written yet.

    Raises CrestcutError for anything wrong with job, scan or area, or a rule that the floor has no room for.
    """
    clock = Clock(say)
    job = load_floor_job(path)
    check_work(job.base)
    base, seed = job.base, job.base.settings.seed
    limit = deepest_allowed(base.cut, base.slab)
    with clock.stage("scan", "reading the scan"):
        scan = read_scan(base.scan, say, _needed(job))
    doubts = _doubted(job, scan)
    for note in (*scan.notes, *doubts):
        say(Mind(note))
    corners = resolve_area(job.wish.area, base.marks, scan.frame, None, "floor.area") if job.wish.area else ()
    frame = floor_frame(scan, corners, base.cell)
    with clock.stage("surface", "finding the floor"):
        whole = _surface(base, scan, frame)
        floor = floor_nodes(whole, corners, job.wish.straightedge)
    with clock.stage("split", "judging floor and scan apart"):
        findings = floor_findings(whole, floor, corners)
        # what is no floor keeps its scanned heights: readings beside walls are taken there
        whole = replace(whole, rollable=floor)
        whole = slab_behind(whole, whole.error, base.slab.flatness, seed, FLOOR)
        surface = floor_only(whole, floor)
    place = place_of(base, scan, whole)
    keeps = keeps_of(base, scan, whole)
    evidence = gather_evidence(base, whole, place, seed)
    datum = None if job.wish.datum is None else place(job.wish.datum)
    with clock.stage("judge", "judging the floor"):
        limits = cut_limits(surface, limit.depth, limit.reason, base.cut.feather, keeps)
        judged = judge_floor(
            surface, job.wish, limits, evidence, datum, tilt_of(base.scan.scanner), seed, say
        )
    judged = doubted_floor(replace(judged, notes=(*judged.notes, *doubts)), findings)
    release = decide_release(base, judged.provisional, None, OWN_ERROR if judged.provisional else "")
    marks = {m.name: mark_place(m.name, base.marks, scan.frame) for m in base.marks}
    with clock.stage("work", "setting board and blocks"):
        sheet = make_floor_sheet(job, judged, release, marks)
    return FloorReport(
        job,
        scan,
        judged,
        release,
        sheet,
        marks,
        tuple(keeps),
        corners,
        __version__,
        seed,
        clock.seconds,
    )


def floor_and_write(path: Path, out: Path, say: Say = lambda _: None) -> tuple[FloorReport, tuple[Path, ...]]:
    """The answer and every file of it in ``out``, moved there when all are whole; the paths written."""
    from crestcut.report import (
        FLOOR_NAME,
        PLY_NAME,
        Staging,
        draw_floor_plan,
        write_depth_ply,
        write_floor_json,
        write_floor_sheets,
    )

    staging = Staging(out, "floor", say)
    with staging as folder, speaking(words_in(path)):
        report = floor_job(path, say)
        staging.about = report.identity
        say("writing mesh, plan and sheets")
        judged = report.judged
        mesh = _MeshOf(judged.surface, report.scan, judged.levelling, report.identity)
        write_depth_ply(mesh, folder / PLY_NAME)
        draw_floor_plan(report, folder / "floor_plan.png")
        write_floor_sheets(report, folder)
        write_floor_json(report, folder / FLOOR_NAME)
    return report, staging.moved


def _needed(job: FloorJob) -> Needs:
    """Where points of the scan are needed: in the area, and a little beyond it."""

    def of(frame: Frame) -> tuple[Patch, ...]:
        corners = np.array(resolve_area(job.wish.area, job.base.marks, frame, None, "floor.area"))
        (x, y), (wide, tall) = corners.min(axis=0) - AROUND, np.ptp(corners, axis=0) + 2 * AROUND
        return (Patch((float(x), float(y)), 0.0, (float(wide), float(tall))),)

    return of if job.wish.area else anywhere


def _surface(base: Job, scan: Scan, frame: GridFrame) -> Surface:
    try:
        return build_surface(scan, frame, base.scan.scanner)
    except NoSlab as error:  # the same fault, in a floor's own words
        raise CrestcutError("hardly any floor was found there", "floor.area", error.mend.replace(
            "scan the slab there, or move the line", "scan the floor there, or name another area"
        )) from None  # fmt: skip


def _doubted(job: FloorJob, scan: Scan) -> tuple[str, ...]:
    """What is doubtful of the scan's unit and axis, plain sentences. Raises CrestcutError for a scan that
    cannot tell millimetres at all: without scale, coarsely rounded, of stations that disagree."""
    doubts = doubts_of(scan, job.base.scan.scanner)
    for doubt in doubts:
        if doubt.decides and doubt.kind is not DoubtKind.GUESSED:
            raise CrestcutError(doubt.words, str(scan.files[0].path), "then run again")
    return tuple(doubt.words for doubt in doubts)
