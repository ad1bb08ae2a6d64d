"""How the vehicle stands at every station of every way it may be driven over the line."""

from __future__ import annotations

import math
from collections.abc import Sequence

import numpy as np

from crestcut.base.errors import CrestcutError
from crestcut.base.grid import FloatArray, GridFrame, HeightGrid, frozen_array
from crestcut.base.units import millimetres
from crestcut.contact.path.line import is_straight, stations_of
from crestcut.contact.records import AS_USUAL, WHEELS, Batch, Poses, Ride, TravelLine, Variant
from crestcut.contact.stand.ground import CONTACT_LENGTH, ridden_ground
from crestcut.contact.stand.placing import Axles
from crestcut.contact.stand.springs import stands_by_limits, suspension
from crestcut.contact.stand.springs_kernel import settle_sprung
from crestcut.contact.stand.tyres import VOID, settle, tyre_ground
from crestcut.job import Travel
from crestcut.terrain import Surface
from crestcut.vehicle import AS_MEASURED, LoadState, Vehicle

LEAST_DRIVE = 0.3  # m: a line that leaves less to drive is not worth offering
# one wheel climbing first, where a break lies askew to the way
ABREAST = 0.10  # m along the way: both wheels meet a break as good as together
BREAK = 0.04  # change of grade within ``REACH`` to either side that counts as a break
REACH = 0.40  # m
MATTERS = 0.008  # m of an axle's one side over the other, beyond the other axle's: below, nothing is said
WANDER_STEP = 0.10  # m, at most, between the offsets that stand for the wander


def ride(
    vehicle: Vehicle,
    surface: Surface,
    line: TravelLine,
    travel: Travel = AS_USUAL,
    loads: Sequence[LoadState] = (AS_MEASURED,),
    ground: FloatArray | None = None,
) -> Ride:
    """Stand the vehicle at every station of every variant: offsets within the wander, headings, ways, loads.

    A driver is anywhere within the wander and turned by anything within the heading at any station, so the
    poses are all combinations of the discrete offsets and headings at every station (what a fan of skewed
    lines through every place would give). What is least over all of them is the worst a driver within both
    limits can meet, a little worse than any one drive.
    ground : (ny, nx) what the tyres stand on, ``VOID`` where unmeasured; default: the surface, small holes
    bridged.

    Raises CrestcutError where the line itself (no offset, no heading) leads a tyre off the measured ground.
    Other variants that do are left out and said in ``notes``.
    """
    filled = 0
    if ground is None:
        ground, filled = ridden_ground(surface)
    frame = surface.height.frame
    variants = _variants(travel, loads)
    shift = {load.name: (load.front, load.rear) for load in loads}
    places = [_places(line, frame, vehicle, variant, shift[variant.load]) for variant in variants]
    counts = [len(p) for p in places]
    batch = settle_batch(
        vehicle, ground, frame.cell, np.concatenate(places), np.repeat(np.arange(len(variants)), counts)
    )
    poses, at = [], 0
    for variant, count in zip(variants, counts, strict=True):
        poses.append(_view(batch, slice(at, at + count), variant, vehicle, line, frame))
        at += count
    notes = [
        *line.notes,
        *_judge(poses, batch, vehicle, surface.height),
        *_climb_notes(vehicle, poses),
        *_scatter_note(travel),
    ]
    return Ride(line, tuple(poses), batch, filled, tuple(notes), travel, tuple(loads))


def places_of(
    line: TravelLine, frame: GridFrame, vehicle: Vehicle, travel: Travel, loads: Sequence[LoadState]
) -> FloatArray:
    """Rear-axle places (n, 5) of every variant of the line, in the order of ``Batch``."""
    shift = {load.name: (load.front, load.rear) for load in loads}
    return np.concatenate([_places(line, frame, vehicle, v, shift[v.load]) for v in _variants(travel, loads)])


def _variants(travel: Travel, loads: Sequence[LoadState]) -> list[Variant]:
    return [
        Variant(float(offset), float(heading), way, load.name)
        for way in travel.ways
        for load in loads
        for heading in _headings(travel.heading)
        for offset in _offsets(travel.wander)
    ]


def _offsets(wander: float) -> FloatArray:
    return np.linspace(-wander, wander, 2 * math.ceil(wander / WANDER_STEP - 1e-9) + 1)


def _headings(heading: float) -> FloatArray:
    return np.array([-heading, 0.0, heading]) if heading > 0 else np.zeros(1)


def _scatter_note(travel: Travel) -> list[str]:
    offsets, headings = _offsets(travel.wander), _headings(travel.heading)
    if len(offsets) * len(headings) == 1:
        return []
    return [
        f"Judged for a driver within {millimetres(travel.wander, 0)} to either side of the line and "
        f"{math.degrees(travel.heading):g} degrees off its heading: every figure is the worst of "
        f"{len(offsets)} offsets x {len(headings)} headings at every station, each taken for itself"
    ]


def _places(
    line: TravelLine, frame: GridFrame, vehicle: Vehicle, variant: Variant, load: tuple[float, float]
) -> FloatArray:
    """Rear-axle places (n, 5) whose wheels stay between the ends of the line, in the order they are
    driven."""
    uv = frame.to_grid(line.xy)
    yaw = line.yaw - frame.angle
    stop = len(uv) - math.ceil(vehicle.wheelbase / line.step - 1e-9)
    turned = variant.way == "turned"
    index = np.arange(len(uv) - 1, len(uv) - 1 - stop, -1) if turned else np.arange(stop)
    u, v, path = uv[index, 0], uv[index, 1], yaw[index]
    # offsets are to the left of the line as drawn, whichever way it is driven
    u, v = u - variant.offset * np.sin(path), v + variant.offset * np.cos(path)
    heading = path + variant.heading + (math.pi if turned else 0.0)
    return np.stack([u, v, heading, np.full(len(u), load[0]), np.full(len(u), load[1])], axis=1)


def axles_of(vehicle: Vehicle) -> Axles:
    """What ``tyres.settle`` needs of a vehicle. Roll shares: axle roll stiffness k t^2 / 2 + bar,
    over the sum of both."""
    springs = vehicle.springs
    front = springs.front_rate * vehicle.front_track**2 / 2 + springs.front_anti_roll
    rear = springs.rear_rate * vehicle.rear_track**2 / 2 + springs.rear_anti_roll
    share = front / (front + rear)
    lengths = (vehicle.wheelbase, vehicle.front_track, vehicle.rear_track, vehicle.tyre_radius)
    return Axles(*map(float, (*lengths, vehicle.tyre_width / 2, share, 1 - share)))


def settle_batch(
    vehicle: Vehicle,
    ground: FloatArray,
    cell: float,
    places: FloatArray,
    variant: np.ndarray,
    want_contact: bool = False,
) -> Batch:
    """Settle many places at once; ``live`` is False where a tyre or its hub's foot meets nothing measured."""
    axles = axles_of(vehicle)
    args = (tyre_ground(ground, cell, axles, places), places, axles, want_contact)
    stance = settle_sprung(*args, suspension(vehicle)) if stands_by_limits(vehicle) else settle(*args)
    feet = wheel_feet(vehicle, places)
    j = np.rint(feet[..., 1] / cell).astype(int)
    i = np.rint(feet[..., 0] / cell).astype(int)
    inside = (j >= 0) & (j < ground.shape[0]) & (i >= 0) & (i < ground.shape[1])
    on = (
        inside
        & (ground[np.where(inside, j, 0), np.where(inside, i, 0)] > VOID / 2)
        & (stance.wheels > VOID / 2)
    )
    return Batch(places, variant, on.all(axis=1), *stance)


def wheel_feet(vehicle: Vehicle, places: FloatArray) -> FloatArray:
    """Grid u, v under each hub, (n, 4, 2), to first order (level chassis)."""
    cos, sin = np.cos(places[:, 2]), np.sin(places[:, 2])
    x = np.array([vehicle.wheelbase, vehicle.wheelbase, 0.0, 0.0])
    y = np.array([vehicle.front_track, -vehicle.front_track, vehicle.rear_track, -vehicle.rear_track]) / 2
    u = places[:, :1] + x * cos[:, None] - y * sin[:, None]
    v = places[:, 1:2] + x * sin[:, None] + y * cos[:, None]
    return np.stack([u, v], axis=-1)


def _view(
    batch: Batch, part: slice, variant: Variant, vehicle: Vehicle, line: TravelLine, frame: GridFrame
) -> Poses:
    places, rotation = batch.places[part], batch.rotation[part, 0]
    axle = places[:, :2] + vehicle.wheelbase * rotation[:, :2, 0]
    if is_straight(line):
        rear = frame.to_grid(line.xy[:1])[0]
        yaw = float(line.yaw[0]) - frame.angle
        station = (axle[:, 0] - rear[0]) * math.cos(yaw) + (axle[:, 1] - rear[1]) * math.sin(yaw)
    else:
        ahead = -vehicle.wheelbase if variant.way == "turned" else vehicle.wheelbase
        index = np.arange(len(places))
        near = (len(line.xy) - 1 - index if variant.way == "turned" else index) * line.step + ahead
        station = stations_of(line, frame.to_site(axle), np.asarray(near, dtype=np.float64))
    return Poses(
        variant,
        frozen_array(station),
        batch.wheels[part],
        batch.contact[part],
        batch.position[part, 0],
        rotation,
        batch.live[part],
    )


def _judge(poses: Sequence[Poses], batch: Batch, vehicle: Vehicle, height: HeightGrid) -> list[str]:
    """Refuse a line that leads a tyre over nothing measured; say which other variants do."""
    lost = 0
    for k, pose in enumerate(poses):
        if pose.live.all():
            continue
        if pose.variant.offset == 0 and pose.variant.heading == 0:
            _refuse_hole(pose, batch.places[batch.variant == k], vehicle, height)
        lost += int((~pose.live).sum())
    if not lost:
        return []
    worst = max(poses, key=lambda p: int((~p.live).sum()))
    first = float(worst.station[~worst.live].min())
    return [
        f"{lost / len(batch.live):.0%} of the positions within the wander would put a tyre where the scan "
        f"has no ground, most of them {_said(worst.variant)}, from the front axle {first:.2f} m along it; "
        "they are not judged. Shorten or move the line, scan further to the sides, or give less wander"
    ]


def _said(variant: Variant) -> str:
    """Where a variant runs: "200 mm left of the line, turned 3 degrees to the right"."""
    side, turn = ("left" if x > 0 else "right" for x in (variant.offset, variant.heading))
    off = f"{millimetres(abs(variant.offset), 0)} {side} of the line" if variant.offset else "on the line"
    way = _against(variant)
    if not variant.heading:
        return off + way
    return f"{off}, turned {math.degrees(abs(variant.heading)):g} degrees to the {turn}{way}"


def _against(variant: Variant) -> str:
    return " against its direction" if variant.way == "turned" else ""


def _refuse_hole(pose: Poses, places: FloatArray, vehicle: Vehicle, height: HeightGrid) -> None:
    p = int(np.argmin(pose.live))
    feet = wheel_feet(vehicle, places[p : p + 1])[0]
    measured = height.sample(height.frame.to_site(feet))
    wheel = int(np.argmax(np.isnan(measured))) if np.isnan(measured).any() else 0
    gone = int((~pose.live).sum())
    more = f" (and {gone - 1} more stations)" if gone > 1 else ""
    raise CrestcutError(
        f"no measured ground under the {WHEELS[wheel]} tyre with the front axle {pose.station[p]:.2f} m "
        f"along the line, driven exactly on it{_against(pose.variant)}{more}",
        "[travel] line",
        f"{_shorter(pose, vehicle.wheelbase)}keep the wheels on scanned slab, or scan the hole: "
        f"only gaps under {CONTACT_LENGTH * 1000:.0f} mm are bridged",
    )


def _shorter(pose: Poses, wheelbase: float) -> str:
    """Words like `shorten the line: end it 3.3 m from its start; or ` where the ground is lost at the ends
    alone and enough is left to drive; else empty."""
    order = np.argsort(pose.station)
    station, live = pose.station[order], pose.live[order]
    stands = np.flatnonzero(live)
    if len(stands) == 0 or not live[stands[0] : stands[-1] + 1].all():
        return ""
    first, last = float(station[stands[0]]), float(station[stands[-1]])
    if last - first < LEAST_DRIVE:
        return ""
    # the line begins and ends under an axle; rounded to the side that keeps the wheels on
    ahead, behind = (0.0, wheelbase) if pose.variant.way == "turned" else (wheelbase, 0.0)
    words = []
    if stands[0] > 0:
        words.append(f"start it {math.ceil((first - ahead) * 10) / 10:.1f} m later")
    if stands[-1] < len(live) - 1:
        words.append(f"end it {math.floor((last + behind) * 10) / 10:.1f} m from its start")
    return f"shorten the line: {' and '.join(words)}; or "


def _climb_notes(vehicle: Vehicle, poses: Sequence[Poses]) -> tuple[str, ...]:
    """Which front wheel meets the strongest break of the line first, and how the body leans over it; nothing
    where both meet it together or it hardly matters. Read off the line itself: no offset, no heading, first
    way and load.
    """
    on_line = [p for p in poses if p.variant.offset == 0 and p.variant.heading == 0 and p.live.all()]
    if not on_line:
        return ()
    pose = on_line[0]
    met_left, met_right = (_strongest_break(pose.station, pose.wheels[:, wheel]) for wheel in (0, 1))
    twist = (pose.wheels[:, 0] - pose.wheels[:, 1]) - (pose.wheels[:, 2] - pose.wheels[:, 3])
    worst = int(np.argmax(np.abs(twist)))
    if met_left is None or met_right is None or abs(twist[worst]) < MATTERS:
        return ()
    (left, grade), (right, other) = met_left, met_right
    apart = abs(left - right)
    if apart < ABREAST or apart > vehicle.front_track * 3 or np.sign(grade) != np.sign(other):
        return ()
    first = "left" if (left < right) == (pose.station[-1] > pose.station[0]) else "right"
    lean = math.degrees(math.asin(min(float(np.abs(pose.rotation[:, 2, 1]).max()), 1.0)))
    turned = "" if pose.variant.way == "forward" else " (driven turned)"
    return (
        f"The break at {0.5 * (left + right):.1f} m along the line lies askew: the {first} front wheel meets "
        f"it {apart:.2f} m before the other{turned}. The axles are twisted against each other by up to "
        f"{millimetres(abs(float(twist[worst])), 0)} from side to side, with the front axle at "
        f"{pose.station[worst]:.2f} m, and the body leans by up to {lean:.1f} degrees on the way",
    )


def _strongest_break(station: FloatArray, height: FloatArray) -> tuple[float, float] | None:
    """Station (m) where a wheel's path changes its grade most within REACH to either side, and by how
    much; None where nowhere."""
    step = abs(float(station[-1] - station[0])) / max(len(station) - 1, 1)
    n = max(round(REACH / step), 1) if step > 0 else 0
    if n == 0 or len(height) < 2 * n + 1:
        return None
    change = (height[2 * n :] - 2 * height[n:-n] + height[: -2 * n]) / (n * step)
    k = int(np.argmax(np.abs(change)))
    return (float(station[n + k]), float(change[k])) if abs(change[k]) >= BREAK else None
