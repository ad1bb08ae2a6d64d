"""The vehicles of a job over its slab: each stood up, swept, and judged as far as scan and tape allow."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from contextlib import contextmanager, nullcontext
from dataclasses import dataclass, replace

from crestcut.alternatives import Estimator, Option, bench, options_table
from crestcut.base.errors import CrestcutError
from crestcut.base.grid import FloatArray, GridFrame
from crestcut.base.parallel import meanwhile
from crestcut.base.summary import Summary
from crestcut.base.units import millimetres
from crestcut.chance import (
    Chance,
    CutDraws,
    Draws,
    Finding,
    Left,
    chance_of,
    chance_of_plan,
    doubted,
    draw_clearances,
    draw_cut,
    finding_words,
    in_the_way,
    in_use_allowances,
    margin_for,
    second_look,
    under_the_tyres,
)
from crestcut.contact import (
    Clearance,
    DrawnLine,
    Passage,
    Ride,
    TravelLine,
    hard_parts,
    read_line,
    ride,
    sweep,
    travel_line,
    wanted_gap,
    window,
)
from crestcut.cut import FleetPlan, KeepArea, Limits, Member, refuse_one_name
from crestcut.job import Job, Settings, VehicleChoice, Wanted
from crestcut.scan import Frame as ScanFrame
from crestcut.scan import Needs, Patch, mark_place, resolve_line
from crestcut.terrain import Drive, Evidence, Surface, about, high, thing_words
from crestcut.vehicle import LoadState, Vehicle, load_state, load_vehicle, refuse_parts_over_tracks

LINE = "[travel] line"
AROUND = 1.0  # m about window, marks and check points: what is read of a scan too large to be held
MOST_THINGS = 5  # in the way, named in words


@dataclass(frozen=True, eq=False)
class LoadedVehicle:
    """One vehicle of the job with the loads it is judged with, and its line once that is known."""

    vehicle: Vehicle
    loads: tuple[LoadState, ...]
    main: bool  # the one of [vehicle], which the witnesses speak of
    parts: FloatArray | None = None  # drawn heights of its parts where readings told of them: ``Passage``

    @property
    def within(self) -> dict[str, float]:
        """1 sd, m, of the height of each hard part."""
        hard = hard_parts(self.vehicle)
        spread = [p.within for p in hard] if self.parts is None else self.parts.std(axis=1).tolist()
        return {p.name: s for p, s in zip(hard, spread, strict=True)}


@dataclass(frozen=True, eq=False, repr=False)
class Standing(Summary):
    """A vehicle on the slab: its ride, what it clears, and the draws behind every chance.

    margin : m on top of what is asked, for confidence.  findings : what the second look found.
    wanted, settings : what was asked, and how it was reckoned.
    """

    driver: LoadedVehicle
    ride: Ride
    before: Clearance
    drawn: Draws
    cut: CutDraws
    today: Chance
    in_use: Chance
    margin: float
    wanted: Wanted
    settings: Settings
    findings: tuple[Finding, ...] = ()

    @property
    def summary(self) -> str:
        """What can be said today, in use, and the margin of a cut."""
        margin = f"a cut wants {millimetres(self.margin)} of margin"
        return (
            f"{self.vehicle.name}\n  today: {self.today.summary}\n  in use: {self.in_use.summary}; {margin}"
        )

    @property
    def vehicle(self) -> Vehicle:
        """The driver's, for short."""
        return self.driver.vehicle

    @property
    def member(self) -> Member:
        """As the common cut takes it."""
        return Member(self.vehicle, self.ride, self.before, self.margin)


def drivers_of(job: Job) -> tuple[LoadedVehicle, ...]:
    """The vehicles of the job, checked against what is asked; [vehicle] first.

    Raises CrestcutError for a file that cannot be read, an unknown load, two vehicles of one name.
    """
    found = [_driver(job, job.vehicle, True), *(_driver(job, choice, False) for choice in job.other_vehicles)]
    if len(found) > 1:
        refuse_one_name(tuple(d.vehicle.name for d in found))
    return tuple(found)


def _driver(job: Job, choice: VehicleChoice, main: bool) -> LoadedVehicle:
    vehicle = load_vehicle(choice.file)
    loads = [load_state(vehicle, name) for name in choice.loads]
    refuse_parts_over_tracks(vehicle, job.wanted.want, job.wanted.want_ends, loads)
    return LoadedVehicle(vehicle, tuple(loads), main)


def line_drawn(job: Job) -> DrawnLine | None:
    """The line's own file, where it has one."""
    return read_line(job.travel.line_file, job.travel.layer) if job.travel.line_file else None


def lines_of(
    drivers: Sequence[LoadedVehicle], job: Job, frame: ScanFrame, drawn: DrawnLine | None
) -> tuple[TravelLine, ...]:
    """The job's line as each of its vehicles drives it, through the same points; a bend too tight is told
    with the vehicle's name. drawn : as of ``line_drawn``.
    """
    places = drawn.on_site(frame) if drawn else resolve_line(job.travel.line, job.marks, frame)
    found = []
    for d in drivers:
        with _named(d, drivers):
            found.append(travel_line(places, d.vehicle, job.travel, job.cell))
    return tuple(found)


def drives_of(drivers: Sequence[LoadedVehicle], lines: Sequence[TravelLine]) -> list[Drive]:
    """How far each vehicle goes, and how long and wide it is: which doubts of a scan matter to it."""
    each = zip(drivers, lines, strict=True)
    return [Drive(line.length, d.vehicle.wheelbase, d.vehicle.width) for d, line in each]


def common_window(drivers: Sequence[LoadedVehicle], lines: Sequence[TravelLine], job: Job) -> GridFrame:
    """The raster that every vehicle needs: the first one's, made larger by whole cells until it holds the
    others'.
    """
    frames = [window(line, d.vehicle, job.travel, job.cell) for d, line in zip(drivers, lines, strict=True)]
    first, cell = frames[0], job.cell
    low, high = [0, 0], [first.shape[1] - 1, first.shape[0] - 1]
    for frame in frames[1:]:
        (right, top), zero = frame.size, 0.0
        for corner in ((zero, zero), (right, zero), (zero, top), (right, top)):
            uv = first.to_grid(frame.to_site(corner)) / cell
            low = [min(a, math.floor(x + 1e-6)) for a, x in zip(low, uv, strict=True)]
            high = [max(a, math.ceil(x - 1e-6)) for a, x in zip(high, uv, strict=True)]
    x, y = first.to_site((low[0] * cell, low[1] * cell))
    shape = (high[1] - low[1] + 1, high[0] - low[0] + 1)
    return replace(first, origin=(float(x), float(y)), shape=shape) if len(frames) > 1 else first


def points_needed(drivers: Sequence[LoadedVehicle], job: Job, drawn: DrawnLine | None) -> Needs:
    """Where the job needs points of the scan: about the line, its marks and its check points. drawn : as
    of ``line_drawn``."""

    def of(frame: ScanFrame) -> tuple[Patch, ...]:
        window = common_window(drivers, lines_of(drivers, job, frame, drawn), job)
        corner = window.to_site((-AROUND, -AROUND))
        wide, tall = window.size
        marks = [mark_place(m.name, job.marks, frame) for m in job.marks]
        checks = [frame.plan_to_site(c.at[:2]).tolist() for c in job.scan.checks]
        return (
            Patch((float(corner[0]), float(corner[1])), window.angle, (wide + 2 * AROUND, tall + 2 * AROUND)),
            *(
                Patch((float(x) - AROUND, float(y) - AROUND), 0.0, (2 * AROUND,) * 2)
                for x, y in (*marks, *checks)
            ),
        )

    return of


def rides_of(
    drivers: Sequence[LoadedVehicle],
    lines: Sequence[TravelLine],
    surface: Surface,
    job: Job,
    frame: ScanFrame | None = None,
) -> tuple[Ride, ...]:
    """Each vehicle at every station; a tyre over a hole is told with the vehicle's name and, given the scan's
    frame, with what stands there."""
    found = []
    for d, line in zip(drivers, lines, strict=True):
        telling = nullcontext() if frame is None else _told_what_stands(d, line, surface, job, frame)
        with _named(d, drivers), telling:
            found.append(ride(d.vehicle, surface, line, job.travel, d.loads))
    return tuple(found)


@contextmanager
def _named(driver: LoadedVehicle, drivers: Sequence[LoadedVehicle]) -> Iterator[None]:
    """Where there are several vehicles, an error says which one it is of."""
    try:
        yield
    except CrestcutError as error:
        if len(drivers) < 2:
            raise
        raise CrestcutError(f"{driver.vehicle.name}: {error.what}", error.where, error.mend) from None


@contextmanager
def _told_what_stands(
    driver: LoadedVehicle, line: TravelLine, surface: Surface, job: Job, frame: ScanFrame
) -> Iterator[None]:
    """A line that cannot be ridden is told with what stands on it, where something does."""
    try:
        yield
    except CrestcutError as error:
        things = under_the_tyres(driver.vehicle, surface, line, job.travel, driver.loads)
        if not things:
            raise
        at = about(frame, (things[0].x, things[0].y))
        mend = f"move what stands on it, {high(things[0].height)} high about {at}, and scan again; or "
        raise CrestcutError(error.what, error.where, mend + error.mend) from None


def swept_of(
    drivers: Sequence[LoadedVehicle], rides: Sequence[Ride], surface: Surface, job: Job
) -> tuple[Clearance, ...]:
    """What each vehicle clears. Raises CrestcutError for one that is over nothing measured."""
    each = zip(drivers, rides, strict=True)
    return tuple(swept_by(d.vehicle, surface, rode, job.path.name) for d, rode in each)


def swept_by(
    vehicle: Vehicle, surface: Surface, rode: Ride, where: str = LINE, cells: bool = True
) -> Clearance:
    """What one vehicle clears; cells : as of ``sweep``. Raises CrestcutError where it is over nothing
    measured."""
    clearance = sweep(vehicle, surface, rode, cells=cells)
    if clearance.worst is None:
        raise CrestcutError(
            f"the scan has no ground under any part of the {vehicle.name}",
            where,
            "draw the line over the scanned slab",
        )
    return clearance


def judged(
    passage: Passage,
    driver: LoadedVehicle,
    wanted: Wanted,
    settings: Settings,
    evidence: Evidence | None = None,
) -> Standing:
    """Draws, today's and in-use chance, and the margin that a cut needs for the confidence asked for.

    passage : the driver's.  evidence : readings that are not in its surface and parts yet.
    """
    before, seed = passage.clearance, settings.seed
    planned = meanwhile(draw_cut, passage, wanted, seed, settings.draws, evidence)
    drawn = draw_clearances(passage, seed, settings.draws, evidence)
    cut = planned()
    if drawn is None or cut is None:
        raise CrestcutError(
            "no part of the vehicle meets measured ground", LINE, "draw the line over the scan"
        )
    today = chance_of(drawn, passage, wanted)
    in_use = chance_of(drawn, passage, wanted, in_use_allowances(wanted, passage.vehicle))
    margin = margin_for(cut, wanted)
    return Standing(driver, passage.ride, before, drawn, cut, today, in_use, margin, wanted, settings)


def all_judged(
    job: Job, surface: Surface, drivers: Sequence[LoadedVehicle], rides: Sequence[Ride],
    swept: Sequence[Clearance], frame: ScanFrame, contradictions: tuple[str, ...] = (),
) -> tuple[Standing, ...]:  # fmt: skip
    """Every vehicle judged and looked at a second time, ``worst_first``; readings are in ``surface``."""
    each = zip(drivers, rides, swept, strict=True)
    found = []
    for driver, rode, cleared in each:
        passage = passage_of(surface, driver, rode, cleared, contradictions)
        found.append(second_opinion(judged(passage, driver, job.wanted, job.settings), surface, frame))
    return worst_first(found, job)


def passage_of(
    surface: Surface, driver: LoadedVehicle, rode: Ride, swept: Clearance, against: tuple[str, ...] = ()
) -> Passage:
    """The driver's passage, its parts as readings have told of them.  against : ``contradictions``."""
    return Passage(driver.vehicle, surface, rode, swept, driver.parts, against)


def second_opinion(standing: Standing, surface: Surface, frame: ScanFrame) -> Standing:
    """The standing with its verdicts withdrawn where anything the scan shows speaks against them.

    frame : the scan's, for places in words.
    """
    s = standing
    passage = Passage(s.vehicle, surface, s.ride, s.before)
    found = second_look(passage, s.ride.travel, s.driver.loads, s.today)
    today, in_use = (doubted(c, found, frame) for c in (s.today, s.in_use))
    return replace(s, today=today, in_use=in_use, findings=found)


def doubts_in_words(standing: Standing, frame: ScanFrame) -> str:
    """What withdrew the verdict; empty where nothing did."""
    return "; ".join(finding_words(f, frame) for f in standing.today.doubts)


def seen_notes(standing: Standing, surface: Surface, frame: ScanFrame) -> list[str]:
    """What stands in the way, and what speaks against the verdict and did not withdraw it."""
    s = standing
    things = in_the_way(Passage(s.vehicle, surface, s.ride, s.before))
    said = [thing_words(thing, frame) for thing in things[:MOST_THINGS]]
    if len(things) > MOST_THINGS:
        said.append(f"{len(things) - MOST_THINGS} smaller things stand in the way besides")
    return [*said, *(finding_words(f, frame) for f in s.findings if f not in s.today.doubts)]


def judged_after(
    standing: Standing, after: Clearance, limits: Limits, surface: Surface, frame: ScanFrame
) -> Left:
    """What can be said of the clearance once the plan is cut, at walking pace and in use; after : swept over
    it. Today's answers where it changes nothing for this vehicle, and no surer than those of what is on the
    ground."""
    if after.least == standing.before.least:
        return Left(standing.today, standing.in_use)
    wanted, passage = standing.wanted, Passage(standing.vehicle, surface, standing.ride, after)
    use = in_use_allowances(wanted, standing.vehicle)
    known = (standing.cut, passage, standing.margin, limits.deepest, wanted)
    today, in_use = (
        doubted(chance_of_plan(*known, allowances), standing.findings, frame) for allowances in ((), use)
    )
    return Left(today, in_use)


def worst_first(standings: Sequence[Standing], job: Job) -> tuple[Standing, ...]:
    """The one most likely to touch first; among equals the one that is shortest of what is asked.

    The first one is what verdict, pictures and options speak of.
    """
    asked = wanted_gap(job.wanted.want, job.wanted.want_ends)

    def key(s: Standing) -> tuple[float, float]:
        short = min((c.gap - asked[zone] for zone, c in s.before.least.items()), default=math.inf)
        # a verdict withdrawn is worse news than 'clears' and better than 'touches'
        touch = 0.5 if s.today.doubts else s.today.chance_of_contact
        return -round(touch, 2), short

    return tuple(sorted(standings, key=key))


def options_of(
    job: Job, standings: Sequence[Standing], fleet: FleetPlan, after: Sequence[Left], surface: Surface,
    keeps: Sequence[KeepArea], boards: Sequence[float] = (),
) -> tuple[Option, ...]:  # fmt: skip
    """The table of what could be done; each row with the chances that the job's own draws give. Empty where
    the verdict is withdrawn: what is doubted reaches nothing. boards : thickness of what is sold to lie
    loose, m."""
    if standings[0].today.doubts:
        return ()
    benches, estimators = [], []
    for s, cleared, left in zip(standings, fleet.after, after, strict=True):
        now = bench(
            s.vehicle, surface, s.ride, s.before, job.wanted, s.driver.loads, [k.corners for k in keeps]
        )
        benches.append(replace(now, margin=s.margin))
        slowly = in_use_allowances(job.wanted, s.vehicle, slowly=True)
        stood = Passage(s.vehicle, surface, s.ride, s.before)
        slow = chance_of(s.drawn, stood, job.wanted, slowly)
        gap = cleared.worst.gap if cleared.worst is not None else math.nan
        estimators.append(
            Estimator(now.before.gap, s.today, s.in_use, slow, left, gap, job.wanted.confidence)
        )
    return options_table(benches, fleet.plan, estimators, job, fleet.after, boards)
