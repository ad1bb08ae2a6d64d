"""The stages of a job one by one, for one vehicle: for a notebook. ``run_job`` is made of the same functions.

Scan and vehicle are read by ``read_scan`` and ``load_vehicle``, the line laid by ``travel_line``; then
``fit_surface``, ``drive``, ``assess``, ``plan`` and ``assess_after``. Each takes records and gives one; what
is wanted, how the slab may be cut and how all is reckoned are records with defaults.
"""

from __future__ import annotations

from collections.abc import Sequence

from crestcut.base.parallel import one_thread_each
from crestcut.chance import Left
from crestcut.contact import Passage, TravelLine, ride, window
from crestcut.cut import CutPlan, FleetPlan, KeepArea, Limits, cut_limits, deepest_allowed, plan_fleet
from crestcut.job import CutWish, Settings, Slab, Travel, Wanted
from crestcut.scan import Scan
from crestcut.standing import (
    LoadedVehicle,
    Standing,
    drives_of,
    judged,
    judged_after,
    second_opinion,
    swept_by,
)
from crestcut.terrain import Surface
from crestcut.vehicle import AS_MEASURED, LoadState, Vehicle
from crestcut.work import drained

# what holds where a call says nothing else; frozen, so one of each will do
TRAVEL, WANTED, CUT, SLAB, SETTINGS = Travel(), Wanted(), CutWish(), Slab(), Settings()


@one_thread_each
def fit_surface(
    scan: Scan,
    vehicle: Vehicle,
    line: TravelLine,
    travel: Travel = TRAVEL,
    scanner: str | None = None,
    flatness: float | None = None,
    settings: Settings = SETTINGS,
) -> Surface:
    """The slab where the vehicle may go: heights on nodes ``line.step`` m apart, judged apart from the scan's
    own error.

    travel : how far to either side, and which ways.  scanner : phone, photogrammetry, terrestrial or
    total-station; None where not known.  flatness : an F_F (ACI 117-10), None where none is known.
    Raises CrestcutError where too few points are ground there.
    """
    from crestcut.terrain import NOT_YET, build_surface, judged_apart

    drivers = (LoadedVehicle(vehicle, (AS_MEASURED,), True),)
    frame = window(line, vehicle, travel, line.step)
    surface = build_surface(scan, frame, scanner, NOT_YET, settings=settings)
    return judged_apart(scan, surface, drives_of(drivers, (line,)), scanner, flatness, settings)


@one_thread_each
def drive(
    vehicle: Vehicle,
    surface: Surface,
    line: TravelLine,
    travel: Travel = TRAVEL,
    loads: Sequence[LoadState] = (AS_MEASURED,),
) -> Passage:
    """``ride`` and ``sweep``: the vehicle stood up at every station, and what its underside clears.

    loads : of ``vehicle.loads``. Raises CrestcutError where the line leads a tyre off the measured ground.
    """
    rode = ride(vehicle, surface, line, travel, loads)
    return Passage(vehicle, surface, rode, swept_by(vehicle, surface, rode))


@one_thread_each
def assess(passage: Passage, scan: Scan, wanted: Wanted = WANTED, settings: Settings = SETTINGS) -> Standing:
    """What can be said of the passage as far as scan and tape allow: ``today``, ``in_use``, and the
    ``margin`` of a cut.

    scan : the one its surface was fitted to, all points of which are looked at a second time.
    """
    driver = LoadedVehicle(passage.vehicle, passage.ride.loads, True, passage.parts)
    return second_opinion(judged(passage, driver, wanted, settings), passage.surface, scan.frame)


@one_thread_each
def plan(
    standing: Standing,
    surface: Surface,
    cut: CutWish = CUT,
    slab: Slab = SLAB,
    keeps: Sequence[KeepArea] = (),
) -> CutPlan:
    """The least cut that leaves the vehicle what was wanted and its margin, within what the slab allows.

    No release: whether this slab may be cut at all is asked by ``run_job`` and said in what ``write_job``
    writes, nowhere here. slab : unanswered is the strictest case.
    Raises CrestcutError for a ``deepest`` over a quarter of the thickness.
    """
    limit = deepest_allowed(cut, slab)
    limits = cut_limits(surface, limit.depth, limit.reason, cut.feather, keeps)
    return planned((standing,), surface, limits, cut).plan


@one_thread_each
def assess_after(standing: Standing, plan: CutPlan, surface: Surface, scan: Scan) -> Left:
    """What can be said of the clearance once the plan is cut, at walking pace and in use."""
    return judged_after(standing, plan.after, plan.limits, surface, scan.frame)


def planned(standings: Sequence[Standing], surface: Surface, limits: Limits, cut: CutWish) -> FleetPlan:
    """The common cut of several vehicles, shaped to drain where that is wished."""
    members, wanted = [s.member for s in standings], standings[0].wanted
    fleet = plan_fleet(members, surface, limits, wanted, cut.feather)
    if cut.drain is None:
        return fleet
    return drained(fleet, members, surface, limits, wanted, cut.drain, cut.feather)
