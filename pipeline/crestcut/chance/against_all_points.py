"""A second look after the sweep: does anything the scan shows speak against the verdict?

The verdict comes from heights that were fitted to what was taken for ground. Here the underside is held
against everything else: all points with none rejected, ground seen twice, ground too rough for concrete, and
what the underside itself allows. Findings are typed; what they do to a verdict is said once, in ``doubted``.
"""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
from scipy import ndimage

from crestcut.base.errors import CrestcutError
from crestcut.base.grid import BoolArray, FloatArray, GridFrame, IntArray
from crestcut.chance.doubt_words import finding_words
from crestcut.chance.records import Cause, Chance, Doubt, Finding
from crestcut.contact import Clearance, Passage, TravelLine, hard_parts, places_of, ride, sweep, wheel_feet
from crestcut.job import Travel
from crestcut.scan import Frame
from crestcut.terrain import Layers, Seen, Surface, Thing
from crestcut.vehicle import LoadState, Vehicle

ROUGH_SHARE = 0.25  # of the ground under the vehicle's path from which it is no slab
SURE = 2.0  # standard deviations
SLACK = 0.02  # m: the most that a correction may add to what the underside can have
GROSS = 5.6  # times the stated error: four standard deviations of the difference of two passes
LEAST_ERROR = 0.003  # m: no better is a layer's height told here
LEAST_AREA = 0.003  # m2 of overlap with all points: less is a stray
BESIDE = 0.15  # m to either side of a tyre's middle that count as under it
NO_VERDICT = (Doubt.NOT_SLAB,)  # these leave none; the others only forbid 'clears'


def second_look(
    passage: Passage, travel: Travel, loads: tuple[LoadState, ...], today: Chance
) -> tuple[Finding, ...]:
    """What speaks against a verdict on this passage, gravest first; empty where nothing does.

    today : the chance as the draws gave it; its spread is the stated error of the swept gap.
    """
    seen, clearance = passage.surface.seen, passage.clearance
    findings: list[Finding] = []
    if seen is not None:
        under = lowest_of(clearance, passage.surface.height.frame.shape)
        path = np.isfinite(under)
        findings += _rough(seen, passage.surface, path)
        findings += _touching(seen, passage, under)
        findings += _sunk(seen, passage, travel, loads)
        findings += _twice(seen, passage, under, today.verdict == "clears")
    return (*findings, *_against_the_sweep(passage, today))


def doubted(chance: Chance, findings: tuple[Finding, ...], frame: Frame) -> Chance:
    """The chance with its verdict withdrawn where a finding forbids it; frame : for places in words.

    The best estimate is never left larger than the swept underside could have.
    """
    most = min((f.size for f in findings if f.doubt is Doubt.CANNOT_BE), default=math.inf)
    against = tuple(f for f in findings if f.doubt in NO_VERDICT or chance.verdict == "clears")
    if not against and most == math.inf:
        return chance
    low, high = chance.interval
    against = against or tuple(f for f in findings if f.doubt is Doubt.CANNOT_BE)
    chance = chance.told([*((Cause.FOUND, finding_words(f, frame)) for f in against), *chance.because])
    return replace(
        chance, verdict="cannot tell", words="", chance_of_contact=math.nan,
        least_clearance=min(chance.least_clearance, most), interval=(min(low, most), min(high, most)),
        doubts=against,
    )  # fmt: skip


def lowest_of(clearance: Clearance, shape: tuple[int, int]) -> FloatArray:
    """Lowest height (ny, nx) of the underside over each node, m; NaN where it never is."""
    low = np.full(shape, np.nan)
    for grid in clearance.lowest.values():
        low = np.fmin(low, grid.values)
    return low


def _rough(seen: Seen, surface: Surface, path: BoolArray) -> list[Finding]:
    """Lawn, gravel or cobbles under the path."""
    ground = path & surface.height.measured
    rough = ground & seen.rough
    if not rough.any() or rough.sum() < ROUGH_SHARE * ground.sum():
        return []
    area = float(rough.sum()) * surface.height.frame.cell**2
    return [Finding(Doubt.NOT_SLAB, _middle(rough, surface), area, seen.roughness)]


def _touching(seen: Seen, passage: Passage, under: FloatArray) -> list[Finding]:
    """Where the underside meets the middle of all points, though it clears the fitted ground: one finding a
    thing, and one for the rest."""
    frame = passage.surface.height.frame
    with np.errstate(invalid="ignore"):
        meets = (under - seen.crude < -SURE * seen.error) & (
            under - np.nan_to_num(passage.surface.top.values, nan=-np.inf) >= 0
        )
    found = []
    for k in np.unique(seen.thing[meets]):
        mine = meets & (seen.thing == k)
        area = float(mine.sum()) * frame.cell**2
        if area < LEAST_AREA:
            continue
        if k >= 0:
            thing = seen.things[int(k)]
            found.append(Finding(Doubt.STANDS, (thing.x, thing.y), thing.area, thing.height))
        else:
            depth = float(np.nanmax((seen.crude - under)[mine]))
            found.append(Finding(Doubt.ALL_POINTS, _middle(mine, passage.surface), area, depth))
    return sorted(found, key=lambda f: -f.area)


def _sunk(seen: Seen, passage: Passage, travel: Travel, loads: tuple[LoadState, ...]) -> list[Finding]:
    """The ride and the sweep again where most points under a tyre lie below the fitted ground."""
    surface = passage.surface
    with np.errstate(invalid="ignore"):
        lower = surface.height.measured & (seen.crude < surface.height.values)
    if not (lower & _under_tyres(passage)).any():
        return []
    height = surface.height.like(np.where(lower, seen.crude, surface.height.values))
    low = replace(surface, height=height, top=height.like(np.where(lower, height.values, surface.top.values)))
    try:
        rode = ride(passage.vehicle, low, passage.ride.line, travel, loads)
    except CrestcutError:  # the fitted ground carried every tyre; what carries none here is judged by holes
        return []
    worst = sweep(passage.vehicle, low, rode).worst
    error = float(np.nanmax(seen.error[lower]))
    if worst is None or worst.gap >= -SURE * error:
        return []
    return [Finding(Doubt.ALL_POINTS, worst.xy, float(lower.sum()) * height.frame.cell**2, -worst.gap)]


def _twice(seen: Seen, passage: Passage, under: FloatArray, clears: bool) -> list[Finding]:
    """Patches that are there twice, where it matters which layer is the slab: the underside would meet the
    upper one, or come down as far as the lower one lies under a tyre. Where nothing clears, those farther
    apart than the stated error explains."""
    surface, worst = passage.surface, passage.clearance.worst
    if not seen.layers or worst is None:
        return []
    error = max(math.hypot(surface.error.warp, surface.error.patch), LEAST_ERROR)
    tyres = _under_tyres(passage)
    with np.errstate(invalid="ignore"):
        gap = under - surface.top.values
    found = []
    for patch in seen.layers:
        box = _box(patch, surface)
        mine = seen.twice[box]
        if clears:
            with np.errstate(invalid="ignore"):
                # the slab judged behind the scan may keep to either layer, or run between them
                met = mine & (gap[box] < patch.apart + error)
            if worst.gap < patch.apart + error:
                met |= mine & tyres[box]
        else:
            met = mine & (np.isfinite(gap[box]) | tyres[box]) & (patch.apart > GROSS * error)
        if met.any():
            found.append(Finding(Doubt.TWICE, (patch.x, patch.y), patch.area, patch.apart))
    return found


def _box(patch: Layers, surface: Surface) -> tuple[slice, slice]:
    """Rows and columns of the frame that a patch reaches over."""
    frame = surface.height.frame
    u, v = frame.to_grid((patch.x, patch.y)) / frame.cell
    i, j = (np.array(patch.size) / 2 / frame.cell).astype(int)
    return (
        slice(max(0, round(float(v)) - j), round(float(v)) + j + 1),
        slice(max(0, round(float(u)) - i), round(float(u)) + i + 1),
    )


def _against_the_sweep(passage: Passage, today: Chance) -> list[Finding]:
    """A best estimate far from the sweep it corrects."""
    worst = passage.clearance.worst
    if worst is None or not math.isfinite(today.least_clearance):
        return []
    part = min((min(p.z) for p in hard_parts(passage.vehicle) if p.name == worst.part), default=math.nan)
    # on flat ground the part is as high as it was measured; the swept gap is larger only over a dip
    most = max(part, worst.gap)
    if today.least_clearance > most + min(SURE * today.spread, SLACK):
        return [Finding(Doubt.CANNOT_BE, worst.xy, 0.0, most)]
    if today.verdict == "clears" and worst.gap < -today.spread:
        return [Finding(Doubt.SWEPT, worst.xy, 0.0, -worst.gap)]
    return []


def _under_tyres(passage: Passage) -> BoolArray:
    """Nodes (ny, nx) that a tyre rolls over, or stands ``BESIDE`` or less from."""
    feet = wheel_feet(passage.vehicle, passage.ride.batch.places)
    return _rolled_over(feet, passage.surface.height.frame, BESIDE)


def _rolled_over(feet: FloatArray, frame: GridFrame, half: float) -> BoolArray:
    """Nodes (ny, nx) under the middles of tyres, grid u, v (..., 2), and to ``half`` m beside them."""
    at: IntArray = np.rint(feet.reshape(-1, 2) / frame.cell).astype(np.int64)
    inside = ((at >= 0) & (at < np.array(frame.shape[::-1]))).all(axis=1)
    out = np.zeros(frame.shape, bool)
    out[at[inside, 1], at[inside, 0]] = True
    return np.asarray(ndimage.binary_dilation(out, iterations=max(1, round(half / frame.cell))))


def in_the_way(passage: Passage) -> tuple[Thing, ...]:
    """What stands on the path of the underside or the tyres, or hangs over it, largest first."""
    seen = passage.surface.seen
    if seen is None:
        return ()
    path = np.isfinite(lowest_of(passage.clearance, seen.thing.shape)) | _under_tyres(passage)
    return tuple(seen.things[k] for k in np.unique(seen.thing[path]) if k >= 0)


def under_the_tyres(
    vehicle: Vehicle, surface: Surface, line: TravelLine, travel: Travel, loads: tuple[LoadState, ...]
) -> tuple[Thing, ...]:
    """What stands where a tyre would go on this line, largest first; for lines that cannot be ridden."""
    seen = surface.seen
    if seen is None:
        return ()
    frame = surface.height.frame
    feet = wheel_feet(vehicle, places_of(line, frame, vehicle, travel, loads))
    wide = _rolled_over(feet, frame, vehicle.tyre_width / 2)
    return tuple(seen.things[k] for k in np.unique(seen.thing[wide]) if k >= 0)


def _middle(mask: BoolArray, surface: Surface) -> tuple[float, float]:
    frame = surface.height.frame
    rows, columns = np.nonzero(mask)
    x, y = frame.to_site((columns.mean() * frame.cell, rows.mean() * frame.cell))
    return float(x), float(y)
