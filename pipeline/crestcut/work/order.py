"""What the sheets are made from, and the raster of stations and offsets that they share."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field, replace

import numpy as np

from crestcut.chance import Chance, Left
from crestcut.contact import Ride, TravelLine, wanted_gap
from crestcut.cut import CutPlan, KeepArea
from crestcut.job import Job
from crestcut.terrain import Surface
from crestcut.vehicle import Vehicle
from crestcut.work.records import Release
from crestcut.work.site import Site
from crestcut.work.ties import Marks

AS_LEAST = 0.0002  # m: a gap this near to the least counts as least


@dataclass(frozen=True, eq=False)
class WorkOrder:
    """The job, the slab and the vehicle's ride over it, the plan, and whether it may be cut.

    plan : None where nothing is planned.  left : what it leaves; None where that was not worked out.  today :
    how it stands before. marks : name -> site x, y, m.  keeps : areas cut less, site metres.
    """

    job: Job
    vehicle: Vehicle
    surface: Surface
    ride: Ride
    plan: CutPlan | None
    release: Release
    marks: Marks = field(default_factory=dict)
    keeps: Sequence[KeepArea] = ()
    left: Left | None = None
    today: Chance | None = None

    @property
    def line(self) -> TravelLine:
        """The line of travel."""
        return self.ride.line


def make_site(surface: Surface, line: TravelLine, plan: CutPlan | None, job: Job | None = None) -> Site:
    """Heights, stations and offsets of the raster against the line's first direction.

    job : for the feather and for which part of the underside sets each height.
    """
    frame = surface.height.frame
    ground = surface.height.values
    finished = plan.finished.values if plan is not None else ground
    u, v = frame.to_grid(line.xy[0])
    depth = np.nan_to_num(ground - finished)
    site = Site(
        ground,
        finished,
        surface.slab & surface.height.measured & (depth <= 0),
        frame.cell,
        np.arange(frame.shape[1], dtype=np.float64) * frame.cell - float(u),
        np.arange(frame.shape[0], dtype=np.float64) * frame.cell - float(v),
        None if plan is None else plan.limits.deepest.values,
        0.25 if job is None else job.cut.feather,
    )
    return site if plan is None or job is None else _with_parts(site, plan, job)


def _with_parts(site: Site, plan: CutPlan, job: Job) -> Site:
    """Which part of the underside sets the height of every node: the worst part of the zone that comes
    lowest.
    """
    gaps = wanted_gap(job.wanted.want, job.wanted.want_ends)
    zones = [z for z in plan.after.lowest if z in plan.after.least]
    if not zones:
        return site
    least, part = np.full(site.ground.shape, np.inf), np.full(site.ground.shape, -1, np.int16)
    for k, zone in enumerate(zones):
        over = plan.after.lowest[zone].values - gaps[zone]
        lower = over < least  # never where nothing reaches
        least[lower], part[lower] = over[lower], k
    return replace(site, part=part, parts=tuple(plan.after.least[z].part for z in zones))


def wheel_stations(plan: CutPlan, ride: Ride, vehicle: Vehicle, site: Site) -> tuple[float, float]:
    """Stations of the axles, the lower first, where the gap is least once cut: there the blocks stand.

    A good cut leaves the same least gap at many stations: the middle one of them is taken.
    """
    worst, gaps = plan.after.worst, plan.after.pair_gap
    if worst is None:
        middle = float(np.median(site.station))
        return middle - vehicle.wheelbase / 2, middle + vehicle.wheelbase / 2
    half = vehicle.wheelbase / 2
    middle = worst.station + (half if worst.variant.way == "turned" else -half)
    if gaps is not None and len(ride.batch.variant) == len(gaps):
        stations = np.concatenate([poses.station for poses in ride.poses])
        turned = np.array([p.variant.way == "turned" for p in ride.poses])[ride.batch.variant]
        near = (gaps.min(axis=1) <= worst.gap + AS_LEAST) & ride.batch.live
        if len(stations) == len(near) and near.any():
            middle = float(np.median((stations + np.where(turned, half, -half))[near]))
    return middle - half, middle + half
