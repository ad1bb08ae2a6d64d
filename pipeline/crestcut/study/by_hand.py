"""Places that a job names, and what was measured there by hand, laid on the slab that was found."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from crestcut.base.errors import CrestcutError
from crestcut.chance import given, heard, witness_evidence
from crestcut.contact import Passage, TravelLine
from crestcut.cut import KeepArea
from crestcut.job import Job, Point
from crestcut.scan import Scan, resolve_area, resolve_point
from crestcut.standing import LoadedVehicle, rides_of, swept_by
from crestcut.terrain import Evidence, Surface, gather_evidence, joined, up_settled


def told_by_hand(
    job: Job, scan: Scan, surface: Surface, drivers: tuple[LoadedVehicle, ...], lines: tuple[TravelLine, ...]
) -> tuple[Surface, tuple[LoadedVehicle, ...], tuple[str, ...]]:
    """Slab and vehicles given the strings, levels and witnesses of the job, and what contradicts.

    A witness is the main vehicle's: of the others it says only what it says of the slab. drivers : that one
    first.
    """
    if not job.by_hand:
        return surface, drivers, ()
    (driver, *others), line = drivers, lines[0]
    evidence = evidence_of(job, scan, surface, driver, line)
    told = given(_somewhere(driver, line, surface, job), evidence, job.settings.seed)
    driver = replace(driver, vehicle=told.vehicle, parts=told.parts)
    if not told.contradictions and any(w.front_axle is None for w in job.witnesses):
        told = heard(_passage(driver, line, told.surface, job), job.witnesses, job.settings.seed)
        driver = replace(driver, vehicle=told.vehicle, parts=told.parts)
    surface = told.surface if told.contradictions else up_settled(told.surface)
    return surface, (driver, *others), told.contradictions


def _somewhere(driver: LoadedVehicle, line: TravelLine, surface: Surface, job: Job) -> Passage:
    """Along the middle of the line alone, one of thirty ways to drive it: a reading is of its own place."""
    middle = replace(job.travel, wander=0.0, heading=0.0, ways=job.travel.ways[:1])
    try:
        return _passage(driver, line, surface, replace(job, travel=middle))
    except CrestcutError:  # nothing measured is under the vehicle there
        return _passage(driver, line, surface, job)


def _passage(driver: LoadedVehicle, line: TravelLine, surface: Surface, job: Job) -> Passage:
    """Of the gaps alone, which is all that a reading asks for."""
    (rode,) = rides_of((driver,), (line,), surface, job)
    swept = swept_by(driver.vehicle, surface, rode, job.path.name, cells=False)
    return Passage(driver.vehicle, surface, rode, swept, driver.parts)


def keeps_of(job: Job, scan: Scan, surface: Surface) -> list[KeepArea]:
    """The job's keep areas, their corners in site metres. Raises CrestcutError for one that is no area."""
    at = _height_at(surface)
    return [
        KeepArea(k.kind, resolve_area(k.area, job.marks, scan.frame, at, f"keep {n + 1}"), k.deepest)
        for n, k in enumerate(job.keeps)
    ]


def place_of(job: Job, scan: Scan, surface: Surface) -> Callable[[Point], tuple[float, float]]:
    """What gives the site x, y of a point as the job has it: m, taped along the slab."""
    at = _height_at(surface)
    return lambda point: resolve_point(point, job.marks, scan.frame, at)


def _height_at(surface: Surface) -> Callable[[float, float], float]:
    return lambda x, y: float(surface.height.sample((x, y)))


def evidence_of(
    job: Job, scan: Scan, surface: Surface, driver: LoadedVehicle, line: TravelLine
) -> Evidence | None:
    """Strings, levels and witnesses as readings of surface and vehicle; None where nothing was measured by
    hand.

    A witness is the vehicle of [vehicle]: it says nothing of another's underside.
    """
    place = place_of(job, scan, surface)
    witnesses = job.witnesses if driver.main else ()
    vehicle = driver.vehicle
    return joined(
        gather_evidence(job, surface, place, job.settings.seed),
        witness_evidence(witnesses, vehicle, surface, line, vehicle.loads, place, job.settings.seed),
    )
