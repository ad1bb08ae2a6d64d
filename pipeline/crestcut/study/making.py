"""The answer of a job on one page: scan -> surface -> ride -> sweep -> chance -> cut -> release -> record."""

from __future__ import annotations

import math
import time
from collections.abc import Callable, Iterable, Iterator, Sequence
from contextlib import contextmanager
from dataclasses import replace
from pathlib import Path
from typing import Any

import numpy as np

from crestcut import __version__
from crestcut.base.errors import Mind, Say, Step
from crestcut.base.grid import GridFrame
from crestcut.base.memory import large_apart, trimmed
from crestcut.base.parallel import compiled_before, meanwhile, one_thread_each
from crestcut.chance import Chance, Left, heard_notes
from crestcut.contact import (
    SoftContact,
    settle_part,
    soft_contacts,
    wanted_gap,
)
from crestcut.cut import (
    ENOUGH,
    FleetPlan,
    Judged,
    KeepArea,
    NotCast,
    RayCast,
    contradiction,
    cut_limits,
    deepest_allowed,
    load_caster,
    ray_cast,
)
from crestcut.job import Job, ScanChoice, load_job
from crestcut.scan import Scan, mark_place
from crestcut.standing import (
    Standing,
    all_judged,
    common_window,
    doubts_in_words,
    drivers_of,
    drives_of,
    judged_after,
    line_drawn,
    lines_of,
    options_of,
    rides_of,
    seen_notes,
    swept_of,
)
from crestcut.study.by_hand import keeps_of, told_by_hand
from crestcut.study.checks import held_against
from crestcut.study.record import Laid, Study
from crestcut.study.report import PlacedKeep, PlacedMark, Report, VehicleRow, kind_of_contact
from crestcut.study.saved import (
    STUDY_NAME,
    differing,
    kept_slab,
    read_study,
    remembered,
    scan_read,
    surface_key,
)
from crestcut.study.stages import planned
from crestcut.terrain import Drive, Surface
from crestcut.work import (
    AT_MARK,
    Release,
    WorkOrder,
    asked_first,
    board_sizes,
    check_work,
    decide_release,
    guided,
    ranked,
    with_heights,
)

Advice = tuple[dict[str, object], ...]
FIRST_RUN = "first run on this machine, inner loops are compiled on the way, about half a minute, once"


class Clock:
    """Seconds per stage, and a word to the user as each begins."""

    def __init__(self, say: Say) -> None:
        self.seconds: dict[str, float] = {}
        self.say = say

    @contextmanager
    def stage(self, name: str, words: str) -> Iterator[None]:
        """Say ``words``, and keep how long the block took, s, under ``name``."""
        self.say(Step(words, name))
        start = time.perf_counter()
        yield
        trimmed()
        self.seconds[name] = time.perf_counter() - start


@one_thread_each
def run_job(
    asked: Path | str | Job,
    say: Say = lambda _: None,
    before: Path | None = None,
    held: tuple[ScanChoice, Scan] | None = None,
    answered: Callable[[Report], None] = lambda _: None,
) -> Study:
    """The answer of a job, or of the job in a file; nothing written yet.

    before : the record of an earlier run, whose slab is taken up where it was made from all the same: the
    answer is the same as without, sooner.  held : a scan that was read just now, taken where it is the job's.
    answered : called with what is known before any cut is sought: chances of today, and what to measure.

    Raises CrestcutError for anything wrong with job, scan, vehicle or line.
    """
    large_apart()
    clock = Clock(say)
    job = asked if isinstance(asked, Job) else load_job(Path(asked))
    check_work(job)
    if not compiled_before(settle_part):
        say(Mind(FIRST_RUN))
    drivers = drivers_of(job)
    limit = deepest_allowed(job.cut, job.slab)
    drawn_line = line_drawn(job)
    with clock.stage("scan", "reading the scan"):
        scan = scan_read(job, drivers, drawn_line, say, held, before)
    _mind(say, scan.notes)  # before anything fails of it: a wrong axis shows as a slab that is not there
    lines = lines_of(drivers, job, scan.frame, drawn_line)
    of_line = drawn_line.notes if drawn_line else ()
    _mind(say, (*of_line, *lines[0].notes))
    laid = _laid(job, scan, common_window(drivers, lines, job), drives_of(drivers, lines), clock, before)
    surface, scan = laid.surface, laid.scan.beside(scan)
    with clock.stage("readings", "taking in what was measured by hand"):
        surface, drivers, against = told_by_hand(job, scan, surface, drivers, lines)
    checks = held_against(job.scan.checks, scan, surface)
    _mind(say, checks.notes)
    with clock.stage("ride", "standing the vehicle along the line"):
        rides = rides_of(drivers, lines, surface, job, scan.frame)
    with clock.stage("sweep", "sweeping the underside over the slab"):
        swept = swept_of(drivers, rides, surface, job)
    with clock.stage("chance", "drawing surfaces and vehicles"):
        standings = all_judged(job, surface, drivers, rides, swept, scan.frame, against)
    beside = meanwhile(_beside_the_cut, job, scan, surface, standings[0])
    caster = meanwhile(load_caster)
    keeps = keeps_of(job, scan, surface)
    advice, soft = beside()
    digest = drawn_line.sha256 if drawn_line else ""
    known = replace(
        _known(job, scan, surface, standings, keeps), line_sha256=digest, advice=advice, soft=soft,
        checks=checks,
    )  # fmt: skip
    answered(known)
    limits = cut_limits(surface, limit.depth, limit.reason, job.cut.feather, keeps)
    with clock.stage("cut", "seeking the least cut"):
        fleet = planned(standings, surface, limits, job.cut)
        members = [s.member for s in standings]
        fleet = guided(fleet, members, surface, limits, job)
    with clock.stage("chance after", "drawing what the cut would leave"):
        after = [
            judged_after(s, a, limits, surface, scan.frame)
            for s, a in zip(standings, fleet.after, strict=True)
        ]
    with clock.stage("ray cast", "casting rays from the underside, for a second opinion"):
        cast = cast_again(caster(), job, surface, standings, fleet)
    if isinstance(cast, NotCast):
        say(Mind(f"no second opinion on the gaps: {cast.words}"))
    report, release = _report(known, standings, fleet, after, cast)
    with clock.stage("options", "trying what is cheaper"):
        boards = tuple(board_sizes(job).values())
        options = options_of(job, standings, fleet, after, surface, keeps, boards)
        options = ranked(options, order_of(report, release))
    notes = (*report.notes, *of_line, *checks.notes)
    report = replace(report, options=options, notes=notes, seconds=clock.seconds)
    return Study(report, release, drivers, laid)


def _mind(say: Say, notes: Iterable[str]) -> None:
    for note in notes:
        say(Mind(note))


def _laid(
    job: Job, scan: Scan, frame: GridFrame, drives: Sequence[Drive], clock: Clock, before: Path | None
) -> Laid:
    """The slab judged apart from the scan: taken up from ``before`` where that was made from the same."""
    made_from = surface_key(scan, frame, drives, job)
    if (kept := kept_slab(before, made_from)) is not None:
        clock.say(f"taking up the slab from {STUDY_NAME}: same scan, window and settings")
        return replace(kept, scan=remembered(job, scan, kept.surface))
    # a fifth of a second, which a run that takes up its slab does without
    from crestcut.terrain import NOT_YET, build_surface, judged_apart

    with clock.stage("surface", "finding the slab"):
        surface = build_surface(scan, frame, job.scan.scanner, NOT_YET, settings=job.settings)
    with clock.stage("split", "judging slab and scan apart"):
        flatness = job.slab.flatness
        surface = judged_apart(scan, surface, drives, job.scan.scanner, flatness, job.settings)
    return Laid(made_from, surface, remembered(job, scan, surface))


def order_of(report: Report, release: Release) -> WorkOrder:
    """What the work sheets are made from."""
    places = np.array([m.xy for m in report.marks]).reshape(-1, 2)
    return WorkOrder(
        report.job, report.vehicle, report.surface, report.ride, report.plan, release,
        marks=with_heights({m.name: m.xy for m in report.marks}, report.scan.near(places, AT_MARK)),
        keeps=[
            KeepArea(k.kind, tuple((float(x), float(y)) for x, y in k.area), k.deepest)
            for k in report.keeps
        ],
        left=report.left, today=report.today,
    )  # fmt: skip


def taken_up(path: Path, job: Job, folder: Path | None, say: Say) -> tuple[Study, Job, tuple[str, ...]]:
    """The plan that finished work is checked against, what was asked for then with what was measured since,
    and what is to be said of where the plan is from.

    folder : with the results of ``run``: the plan there is what was cut, as long as it is of this job and
    version; None, or none there: made anew.
    """
    place = folder / STUDY_NAME if folder is not None else None
    if place is None or not place.is_file():
        return run_job(path, say), job, ()
    say("taking up the plan as it was made")
    study = read_study(place, say)
    if study is None:
        note = f"the plan in {place.name} is of another version of this program: it was made anew"
        say(Mind(note))
        return run_job(path, say), job, (note,)
    before = study.report.job
    if before.path.name != job.path.name:
        return run_job(path, say), job, ()
    then = replace(before, after=job.after, path=job.path)
    if changed := differing(before, job):
        note = (
            f"the job file has changed since the plan was made ({', '.join(changed)}): the work is checked"
            " against the plan as it was made; run the job again for another"
        )
        say(Mind(note))
        return study, then, (note,)
    return study, then, ()


def _beside_the_cut(
    job: Job, scan: Scan, surface: Surface, first: Standing
) -> tuple[Advice, tuple[SoftContact, ...]]:
    """What is told of the one that speaks, whatever the cut will be."""
    carried = scan_margin(first.margin, first.today)
    return asked_first(first, surface, scan, job, carried), soft_contacts(first.vehicle, surface, first.ride)


def cast_again(
    caster: Any, job: Job, surface: Surface, standings: Sequence[Standing], fleet: FleetPlan
) -> RayCast | NotCast:
    """The decisive gaps of every vehicle cast anew, or why not. caster : ``load_caster``."""
    if isinstance(caster, NotCast):
        return caster
    asked = wanted_gap(job.wanted.want, job.wanted.want_ends)
    judged = [
        Judged(s.vehicle, s.ride, s.before, after, {zone: gap + s.margin for zone, gap in asked.items()})
        for s, after in zip(standings, fleet.after, strict=True)
    ]
    return ray_cast(caster, surface, fleet.plan.depth.values, judged)


def _known(
    job: Job, scan: Scan, surface: Surface, standings: Sequence[Standing], keeps: Sequence[KeepArea]
) -> Report:
    """What is known before any cut is sought; of several vehicles the one with least room speaks."""
    first = standings[0]
    vehicle, rode, before = first.vehicle, first.ride, first.before
    return Report(
        job=job, scan=scan, surface=surface, vehicle=vehicle, ride=rode, before=before,
        kind=kind_of_contact(before, vehicle, job), today=first.today, in_use=first.in_use,
        marks=tuple(PlacedMark(m.name, mark_place(m.name, job.marks, scan.frame)) for m in job.marks),
        keeps=tuple(PlacedKeep(k.kind, np.array(k.corners), k.deepest) for k in keeps),
        version=__version__, seed=job.settings.seed, vehicle_doubts=_doubts(standings),
        notes=(*scan.notes, *vehicle.notes, *surface.notes, *rode.notes, *heard_notes(job.witnesses),
               *_fleet_notes(job, standings), *seen_notes(first, surface, scan.frame)),
    )  # fmt: skip


def _report(
    known: Report, standings: Sequence[Standing], fleet: FleetPlan, after: Sequence[Left],
    cast: RayCast | NotCast,
) -> tuple[Report, Release]:  # fmt: skip
    """The same with its plan, and whether it may be cut."""
    job, first, plan = known.job, standings[0], fleet.plan
    carried = max(scan_margin(s.margin, s.today) for s in standings)
    unsure = any(doubt.decides for doubt in known.surface.error.doubts) or carried > job.wanted.want / 2
    provisional = (plan.deepest > 0 and unsure) or bool(first.today.doubts)
    doubts = doubts_in_words(first, known.scan.frame)
    release = decide_release(job, provisional, plan, doubts, contradiction(cast))
    report = replace(
        known, plan=plan, after=after[0].today, after_in_use=after[0].in_use,
        release=release.state, release_reasons=release.reasons, provisional=provisional,
        vehicles=_vehicle_rows(standings, fleet, after) if len(standings) > 1 else (), ray_cast=cast,
    )  # fmt: skip
    return report, release


def _doubts(standings: Sequence[Standing]) -> tuple[str, ...]:
    """Figures of the vehicles that look mistaken, each with whose it is."""
    return tuple(f"{s.vehicle.path.name}: {doubt}" for s in standings for doubt in s.vehicle.doubts)


def _vehicle_rows(
    standings: Sequence[Standing], fleet: FleetPlan, after: Sequence[Left]
) -> tuple[VehicleRow, ...]:
    rows = []
    for k, s in enumerate(standings):
        worst, short = s.before.worst, max(-fleet.excess[k], 0.0)
        rows.append(VehicleRow(
            s.vehicle.name, tuple(load.name for load in s.driver.loads), worst.part if worst else "",
            s.today, s.in_use, after[k].today, fleet.alone[k], fleet.litres[k] / 1000, short <= ENOUGH,
            short if short > ENOUGH else 0.0,
            s.vehicle.path.name, s.vehicle.sha256, after[k].in_use,
        ))  # fmt: skip
    return tuple(rows)


def _fleet_notes(job: Job, standings: Sequence[Standing]) -> list[str]:
    """What is said of one vehicle only where there are several."""
    if len(standings) < 2 or not job.witnesses:
        return []
    main = next(s.vehicle.name for s in standings if s.driver.main)
    return [f"witnesses speak of the {main} alone: the other vehicles are judged without them"]


def scan_margin(margin: float, today: Chance) -> float:
    """The part of the margin that the scan's own errors ask for, m: its share of the standard deviation."""
    return margin * math.sqrt(today.scan_share)
