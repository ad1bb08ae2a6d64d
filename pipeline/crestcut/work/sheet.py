"""The worksheet: everything the person on the slab needs, from one plan."""

from __future__ import annotations

import contextlib
import math
from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace

import numpy as np

from crestcut.cut.area import inside
from crestcut.cut.limits import KeepArea
from crestcut.cut.records import CutPlan
from crestcut.cut.slab_limits import deepest_allowed, steel_depth, stop_rules
from crestcut.errors import CrestcutError
from crestcut.grid import BoolArray, FloatArray
from crestcut.job.records import Job
from crestcut.surface.records import Surface
from crestcut.travel.records import Ride, TravelLine
from crestcut.travel.sweep import wanted_gap
from crestcut.units import both, millimetres
from crestcut.vehicle.records import Vehicle
from crestcut.work import cards
from crestcut.work.drain import drain_words
from crestcut.work.dust import silica_line
from crestcut.work.floor_jig import floor_level, make_floor_jig
from crestcut.work.ground_records import WalkSlope
from crestcut.work.jig import below_board, make_jig
from crestcut.work.jig_records import FloorJig, Jig, Tool
from crestcut.work.measure_first import measures
from crestcut.work.passes import make_passes
from crestcut.work.quantities import work_out
from crestcut.work.records import Release, SetOut, Worksheet
from crestcut.work.setout import make_set_out
from crestcut.work.site import Site
from crestcut.work.slopes import walk_slope
from crestcut.work.tools import choose_tools, load_tools, tool_folder
from crestcut.work.trade import INCHES, TradeWords, trade_words
from crestcut.work.water import water_report
from crestcut.work.workable import SKIN, make_workable

BUILDING = ("door", "building", "threshold", "garage", "wall", "sill")
GUTTER = ("gutter", "drain", "kerb", "curb", "street", "channel")
WALK = ("walk", "path", "pavement", "sidewalk", "footway")
AS_LEAST = 0.0002  # m: a gap this near to the least counts as least
# m: the strip at either end of the line that stands in for gutter or building
END_DEPTH, END_WIDTH = 0.30, 1.0


def make_worksheet(
    job: Job,
    vehicle: Vehicle,
    surface: Surface,
    line: TravelLine,
    ride: Ride,
    plan: CutPlan | None,
    release: Release,
    marks: Mapping[str, tuple[float, float]] | None = None,
    keeps: Sequence[KeepArea] = (),
    advice: Sequence[Mapping[str, object]] = (),
    tools: Sequence[Tool] | None = None,
    hours: float | None = None,
    to_site: Callable[[FloatArray], FloatArray] | None = None,
) -> Worksheet:
    """Jig, passes and set-out when released; quantities, dust line, water, slopes, limits and cautions
    always.

    marks : name -> site x, y, m.  keeps : areas cut less, site metres.  advice : hand measurements worth
    making first.
    to_site : turns the advice's places, given in the scan's own coordinates, into site metres; None: they
    are.
    tools : default: the files of ``configs/tools``.  hours : of grinding in a shift, None = more than four.
    Raises CrestcutError for a tool file that is not understood or has guard or shroud off.
    """
    site = make_site(surface, line, plan, job)
    if tools is None:
        folder = tool_folder(job.path)
        tools = load_tools(folder) if folder else ()
    deepest, volume = (plan.deepest, plan.volume) if plan is not None else (0.0, 0.0)
    chosen, why = choose_tools(tools, deepest, volume) if deepest > SKIN else ((), "nothing to cut")
    metric = (job.site.country or "").upper() not in INCHES
    words = trade_words(job.site.country)
    notes = (
        [] if tools or deepest <= SKIN else ["No tool files were found (configs/tools): no jig and no times."]
    )
    jig, floor, set_out = None, None, None
    if release.state == "ok" and plan is not None and deepest > SKIN:
        jig, floor, set_out, said = _cutting(site, surface, plan, ride, vehicle, chosen, marks or {}, metric)
        notes += said
    passes = (
        make_passes(plan, chosen, jig, job.cut.feather) if set_out is not None and plan is not None else ()
    )
    gutter, building = water_places(job, surface, line, site, keeps)
    return Worksheet(
        title=job.title or job.path.stem,
        stamp=release.stamp,
        release=release,
        source=f"vehicle {vehicle.name} | job {job.path.name}",
        metric=metric,
        words=words,
        first=(
            measures(
                advice,
                marks or {},
                surface.height,
                (-float(site.station[0]), -float(site.offset[0])),
                to_site,
            )
            if release.state != "ok"
            else ()
        ),
        marks=tuple(
            (name, *_station_offset(surface, site, xy)) for name, xy in sorted((marks or {}).items())
        ),
        jig=jig,
        floor=floor,
        passes=passes,
        why_tools=why,
        set_out=set_out,
        quantities=work_out(deepest, volume, plan.area if plan else 0.0, chosen, jig),
        silica=tuple(silica_line(tool, job.site.place, hours) for tool in chosen),
        limits=limit_lines(job, plan, keeps, words),
        water=water_report(
            surface.height.values,
            site.finished,
            surface.height.frame,
            site.station,
            site.offset,
            gutter,
            building,
            words,
        ),
        walks=walks(site, surface, keeps, job.cut.feather),
        cautions=cards.cautions(job, chosen),
        cards=cards.HIT_CARDS,
        afterwards=cards.afterwards(job.slab.thickness, words),
        notes=tuple(notes),
    )


def _station_offset(surface: Surface, site: Site, xy: tuple[float, float]) -> tuple[float, float]:
    u, v = surface.height.frame.to_grid(xy)
    return float(u + site.station[0]), float(v + site.offset[0])


def make_site(surface: Surface, line: TravelLine, plan: CutPlan | None, job: Job | None = None) -> Site:
    """Heights, stations and offsets of the raster against the line's first direction.

    job : for the feather and for which part of the underside sets each height.
    """
    frame = surface.height.frame
    ground = surface.height.values
    finished = plan.finished.values if plan is not None else ground
    u, v = frame.to_grid(line.xy[0])
    depth = np.nan_to_num(ground - finished)
    error = surface.error
    site = Site(
        ground,
        finished,
        surface.slab & surface.height.measured & (depth <= 0),
        frame.cell,
        np.arange(frame.shape[1], dtype=np.float64) * frame.cell - float(u),
        np.arange(frame.shape[0], dtype=np.float64) * frame.cell - float(v),
        None if plan is None else plan.limits.deepest.values,
        0.25 if job is None else job.cut.feather,
        math.hypot(error.patch, error.warp),
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
    over = np.stack([np.nan_to_num(plan.after.lowest[z].values - gaps[z], nan=np.inf) for z in zones])
    part = np.where(np.isfinite(over.min(axis=0)), over.argmin(axis=0), -1)
    return replace(site, part=part, parts=tuple(plan.after.least[z].part for z in zones))


def _cutting(
    site: Site,
    surface: Surface,
    plan: CutPlan,
    ride: Ride,
    vehicle: Vehicle,
    tools: Sequence[Tool],
    marks: Mapping[str, tuple[float, float]],
    metric: bool,
) -> tuple[Jig | None, FloorJig | None, SetOut, list[str]]:
    """Jig and floor jig (None where the tools or the reach do not serve, with the reason) and set-out."""
    notes: list[str] = []
    blade = next((tool for tool in tools if tool.use == "kerf"), None)
    wheels = wheel_stations(plan, ride, vehicle, site)
    below, jig, floor = None, None, None
    try:
        below = None if blade is None else below_board(blade, metric)
        work = make_workable(site, wheels, below)
        if blade is not None:
            jig = make_jig(site, work, blade, metric, marks, surface.height)
    except CrestcutError as error:
        notes.append(f"No jig sheet: {error}.")
        jig, work = None, make_workable(site, wheels)
    level = floor_level(site, work.core)
    if blade is not None and level is not None:
        with contextlib.suppress(CrestcutError):  # the board on its blocks serves then
            floor = make_floor_jig(site, level, blade, metric, marks, surface.height)
    tracks = (("front tyres", vehicle.front_track / 2), ("rear tyres", vehicle.rear_track / 2))
    return jig, floor, make_set_out(site, work, wheels, tracks, marks, surface.height), notes


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


def limit_lines(
    job: Job, plan: CutPlan | None, keeps: Sequence[KeepArea], words: TradeWords
) -> tuple[str, ...]:
    """What is left of the slab, what lies in it, and where replacing the bay should be priced."""
    limit = deepest_allowed(job)
    lines = [f"Deepest cut allowed {both(limit.depth)}: {limit.reason}."]
    lines += [f"Next limit {both(depth)}: {words}." for words, depth in limit.rules[1:]]
    slab = job.slab
    if plan is not None and slab.thickness is not None:
        lines.append(
            f"Section left at the deepest place: {millimetres(slab.thickness - plan.deepest, 0)} "
            f"of {millimetres(slab.thickness, 0)}."
        )
    steel = steel_depth(slab)
    if plan is not None and steel is not None:
        lines.append(
            f"Cover left over the steel: {millimetres(max(steel[0] - plan.deepest, 0.0), 0)} ({steel[1]})."
        )
    if plan is not None:
        rules = stop_rules(job, plan.deepest, plan.volume)
        if rules:
            bay = (
                f"about {math.ceil(plan.area * 2):.0f} m2 and {plan.area * 2 * (slab.thickness or 0.1):.2f}"
                " m3 of concrete"
            )
            lines.append(f"Price replacing the {words.bay} as well ({bay}): {'; '.join(rules)}.")
    if plan is not None and plan.drain is not None:
        lines.append(drain_words(plan.drain))
    joints = [k for k in keeps if "joint" in k.kind.lower()]
    lines.append(
        f"Joints: {len(joints)} named; those the cut makes shallower are re-sawn to a quarter of the"
        " thickness."
        if joints
        else "Joints: none named; look for them, and re-saw any that the cut makes shallower."
    )
    return tuple(lines)


def walks(site: Site, surface: Surface, keeps: Sequence[KeepArea], feather: float) -> tuple[WalkSlope, ...]:
    """Finished slopes of every area people walk on."""
    frame = surface.height.frame
    found = [
        walk_slope(keep.kind, site.ground, site.finished, inside(frame, keep.corners), frame, feather)
        for keep in keeps
        if any(word in keep.kind.lower() for word in WALK)
    ]
    return tuple(w for w in found if w is not None)


def water_places(
    job: Job, surface: Surface, line: TravelLine, site: Site, keeps: Sequence[KeepArea]
) -> tuple[tuple[str, BoolArray], tuple[str, BoolArray]]:
    """Gutter and building: keep areas that say so, else the lower and the higher end of the line."""
    frame = surface.height.frame
    named = {}
    for role, words in (("gutter", GUTTER), ("building", BUILDING)):
        areas = [k for k in keeps if any(word in k.kind.lower() for word in words)]
        if areas:
            mask = np.logical_or.reduce([inside(frame, k.corners) for k in areas])
            if (mask & surface.height.measured).any():
                named[role] = (" and ".join(dict.fromkeys(k.kind for k in areas)), mask)
    ends = [_end(site, at) for at in (0.0, line.length)]
    heights = [_mean_height(surface, mask) for mask in ends]
    low, high = (0, 1) if not heights[0] > heights[1] else (1, 0)
    gutter = named.get("gutter", ("the low end of the line", ends[low]))
    building = named.get("building", ("the high end of the line", ends[high]))
    return gutter, building


def _end(site: Site, at: float) -> BoolArray:
    along = np.abs(site.station - at) <= END_DEPTH
    across = np.abs(site.offset) <= END_WIDTH
    return across[:, None] & along[None, :]


def _mean_height(surface: Surface, mask: BoolArray) -> float:
    values = surface.height.values[mask & surface.height.measured]
    return float(values.mean()) if len(values) else math.nan
