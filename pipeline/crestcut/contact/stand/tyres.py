"""Tyres on the ground and the body on its tyres: the compiled part of the ride.

Everything here is in grid axes (u along columns, v along rows, z up), metres and radians. Ground arrays hold
``VOID`` where nothing was measured, so that such nodes never carry a tyre.
"""

from __future__ import annotations

import math
from typing import NamedTuple

import numpy as np

from crestcut.base.grid import FloatArray, IntArray
from crestcut.base.kernels import njit
from crestcut.base.parallel import share

PLACES_AT_ONCE = 500
VOID = -1.0e9  # stands for 'not measured' inside the kernels: lower than any ground


class Axles(NamedTuple):
    """What the ride needs of a vehicle: lengths in m, ``half_width`` that of a tyre; shares of the roll
    stiffness, 1 in all."""

    wheelbase: float
    front_track: float
    rear_track: float
    radius: float
    half_width: float
    front_share: float
    rear_share: float


class TyreGround(NamedTuple):
    """heights : (ny, nx) what tyres stand on, m.  bound : ``row_maxima`` of it over at least a tyre's reach.
    columns : (nx,) u of every column, m."""

    heights: FloatArray
    bound: FloatArray
    columns: FloatArray
    cell: float


class Hub(NamedTuple):
    """Over which (u, v) a hub or the middle of an axle stands, m, and cosine and sine of its heading."""

    u: float
    v: float
    cos: float
    sin: float


class Stance(NamedTuple):
    """How a vehicle stands at n places.

    wheels : (n, 4) height of each tyre's lowest point (front left, front right, rear left, rear right; VOID
    over nothing measured), of one that hangs as it hangs.  contact : (n, 4) node that carries it, -1 where it
    was not asked for, hangs or stands on nothing.  position : (n, 3, 3) and rotation : (n, 3, 3, 3), [.., 0]
    of the body, [.., 1] of what the front and [.., 2] of what the rear axle carries.
    """

    wheels: FloatArray
    contact: IntArray
    position: FloatArray
    rotation: FloatArray

    @classmethod
    def empty(cls, n: int) -> Stance:
        """Of n places yet to be settled."""
        return cls(
            np.empty((n, 4)), np.full((n, 4), -1, np.int64), np.empty((n, 3, 3)), np.empty((n, 3, 3, 3))
        )


@njit(fastmath=True, forceinline=True)
def _highest(ground: FloatArray, u: FloatArray, cos: float, shift: float, squared: float) -> float:
    """Highest ground + sqrt(radius^2 - a^2) along one run of a row, a = u cos + shift."""
    best = VOID
    for i in range(ground.shape[0]):
        a = u[i] * cos + shift
        best = max(best, ground[i] + math.sqrt(max(squared - a * a, 0.0)))
    return best


@njit()
def row_maxima(ground: FloatArray, reach: int) -> FloatArray:
    """Highest ground within ``reach`` columns either side, row by row: a bound that spares most of a tyre's
    footprint.

    Running maximum from both ends of blocks as long as the window (van Herk 1992, Gil and Werman 1993): three
    steps a node.
    """
    rows, columns = ground.shape
    out = np.empty((rows, columns))
    width = 2 * reach + 1
    ahead, back = np.empty(columns), np.empty(columns)
    for j in range(rows):
        for i in range(columns):
            ahead[i] = ground[j, i] if i % width == 0 else max(ahead[i - 1], ground[j, i])
        for i in range(columns - 1, -1, -1):
            last = i == columns - 1 or (i + 1) % width == 0
            back[i] = ground[j, i] if last else max(back[i + 1], ground[j, i])
        for i in range(columns):
            out[j, i] = max(back[max(i - reach, 0)], ahead[min(i + reach, columns - 1)])
            if i < reach:
                out[j, i] = max(out[j, i], ahead[i])
    return out


@njit()
def tyre_height(ground: TyreGround, hub: Hub, radius: float, half_width: float) -> float:
    """Lowest point of a tyre: the ground dilated by a disk, flat across the tyre.

    h = max over nodes (a ahead, b to the left, |b| <= half_width) of ground + sqrt(radius^2 - a^2) - radius
    (ISO 16610-41: morphological dilation by a disk). Node by node, so a contact between two nodes is low by
    at most (cell / 2)^2 / (2 radius): 0.04 mm at a 10 mm cell. What lies further ahead than a node as high as
    the bound could carry the tyre from is not looked at. Exact.
    """
    heights, bound, columns_u, cell = ground
    u, v, cos, sin = hub
    rows, columns = heights.shape
    reach_v = radius * abs(sin) + half_width * abs(cos)
    j0 = max(math.ceil((v - reach_v) / cell - 1e-6), 0)
    j1 = min(math.floor((v + reach_v) / cell + 1e-6), rows - 1)
    here = min(max(math.floor(u / cell + 0.5), 0), columns - 1)
    squared = radius * radius
    best = VOID
    for j in range(j0, j1 + 1):
        dv = j * cell - v
        # a node |a| ahead beats ``best`` only if bound + sqrt(radius^2 - a^2) > best
        fall = best - bound[j, here]
        if fall >= radius:
            continue
        ahead = math.sqrt(squared - fall * fall) if fall > 0 else radius
        # |du cos + dv sin| <= ahead and |-du sin + dv cos| <= half_width, solved for du along this row
        low, high = -1.0e9, 1.0e9
        if abs(cos) > 1e-12:
            edge = (min(ahead, radius - 1e-9) + 1e-9) / abs(cos)
            middle = -dv * sin / cos
            low, high = max(low, middle - edge), min(high, middle + edge)
        if abs(sin) > 1e-12:
            edge = half_width / abs(sin)
            middle = dv * cos / sin
            low, high = max(low, middle - edge), min(high, middle + edge)
        elif abs(dv) > half_width + 1e-9:
            continue
        i0 = max(math.ceil((u + low) / cell - 1e-9), 0)
        i1 = min(math.floor((u + high) / cell + 1e-9), columns - 1)
        if i1 >= i0:
            run = slice(i0, i1 + 1)
            best = max(best, _highest(heights[j, run], columns_u[run], cos, dv * sin - u * cos, squared))
    return best - radius if best > VOID / 2 else VOID


@njit()
def tyre_node(ground: TyreGround, hub: Hub, radius: float, half_width: float) -> int:
    """Flat index of the node that carries the tyre of ``tyre_height``; -1 over nothing measured."""
    heights, cell = ground.heights, ground.cell
    u, v, cos, sin = hub
    rows, columns = heights.shape
    reach_u = radius * abs(cos) + half_width * abs(sin)
    reach_v = radius * abs(sin) + half_width * abs(cos)
    best, node = VOID, -1
    for j in range(
        max(math.ceil((v - reach_v) / cell - 1e-6), 0),
        min(math.floor((v + reach_v) / cell + 1e-6), rows - 1) + 1,
    ):
        dv = j * cell - v
        for i in range(
            max(math.ceil((u - reach_u) / cell), 0), min(math.floor((u + reach_u) / cell), columns - 1) + 1
        ):
            du = i * cell - u
            a, b = du * cos + dv * sin, -du * sin + dv * cos
            if abs(b) > half_width + 1e-9 or abs(a) >= radius:
                continue
            height = heights[j, i] + math.sqrt(radius * radius - a * a)
            if height > best:
                best, node = height, j * columns + i
    return node if best > VOID / 2 else -1


@njit()
def place_body(
    angles: tuple[float, float, float], hub: tuple[float, float, float], x: float, z: float,
    position: FloatArray, rotation: FloatArray,
) -> None:  # fmt: skip
    """Turn a body by yaw about z, then pitch (nose up), then roll (left side up), and place it so that its
    point (x, 0, z) is the middle of an axle's hubs (u, v, z).

    Out: position (3,); rotation (3, 3), its columns forward, left and up of the body.
    """
    yaw, pitch, roll = angles
    cy, sy, cp, sp, cr, sr = (
        math.cos(yaw),
        math.sin(yaw),
        math.cos(pitch),
        math.sin(pitch),
        math.cos(roll),
        math.sin(roll),
    )
    left = (-sy, cy, 0.0)
    up = (-sp * cy, -sp * sy, cp)
    rotation[0, 0], rotation[1, 0], rotation[2, 0] = cp * cy, cp * sy, sp
    for k in range(3):
        rotation[k, 1] = left[k] * cr + up[k] * sr
        rotation[k, 2] = up[k] * cr - left[k] * sr
    for k in range(3):
        position[k] = hub[k] - rotation[k, 0] * x - rotation[k, 2] * z


@njit()
def axle_heights(ground: TyreGround, middle: Hub, track: float, axles: Axles) -> tuple[float, float]:
    """Heights of an axle's left and right tyre."""
    u, v, cos, sin = middle
    du, dv = 0.5 * track * sin, 0.5 * track * cos
    left, right = Hub(u - du, v + dv, cos, sin), Hub(u + du, v - dv, cos, sin)
    return (
        tyre_height(ground, left, axles.radius, axles.half_width),
        tyre_height(ground, right, axles.radius, axles.half_width),
    )


@njit()
def carrying_node(ground: TyreGround, front: Hub, rear: Hub, wheel: int, axles: Axles) -> int:
    """The node that carries one of four wheels, the middles of their axles over ``front`` and ``rear``."""
    middle, track = (front, axles.front_track) if wheel < 2 else (rear, axles.rear_track)
    side = 0.5 * track * (1.0 if wheel % 2 == 0 else -1.0)
    foot = Hub(middle.u - side * middle.sin, middle.v + side * middle.cos, middle.cos, middle.sin)
    return tyre_node(ground, foot, axles.radius, axles.half_width)


@njit()
def lean_of(rise: float, over: float) -> float:
    """Angle at which a length ``over`` rises by ``rise``, rad; held off the upright."""
    return math.asin(min(max(rise / over, -0.9), 0.9))


@njit()
def first_guess(ground: TyreGround, place: FloatArray, base: float, rear: float) -> tuple[float, float]:
    """Pitch (rad) and how far ahead the front axle stands (m), from the ground a wheelbase ahead: spares a
    step."""
    heights, cell = ground.heights, ground.cell
    u, v = place[0] + base * math.cos(place[2]), place[1] + base * math.sin(place[2])
    j, i = math.floor(v / cell + 0.5), math.floor(u / cell + 0.5)
    pitch, lean = 0.0, place[3] - place[4]
    if 0 <= j < heights.shape[0] and 0 <= i < heights.shape[1] and min(heights[j, i], rear) > VOID / 2:
        pitch = lean_of(heights[j, i] - rear + lean, base)
    return pitch, base * math.cos(pitch) + lean * math.sin(pitch)


@njit()
def settle_part(
    first: int, stop: int, ground: TyreGround, places: FloatArray, axles: Axles, want_contact: bool,
    out: Stance,
) -> None:  # fmt: skip
    """``settle`` for places first..stop-1."""
    base, radius = axles.wheelbase, axles.radius
    h = np.empty(4)
    for p in range(first, stop):
        u, v, yaw, load_front, load_rear = places[p]
        cos, sin = math.cos(yaw), math.sin(yaw)
        h[2], h[3] = axle_heights(ground, Hub(u, v, cos, sin), axles.rear_track, axles)
        rear, lean = 0.5 * (h[2] + h[3]), load_front - load_rear
        pitch, reach = first_guess(ground, places[p], base, rear)
        for _ in range(12):
            ahead = Hub(u + reach * cos, v + reach * sin, cos, sin)
            h[0], h[1] = axle_heights(ground, ahead, axles.front_track, axles)
            # hubs sit at chassis (0, radius - load_rear) and (base, radius - load_front) in x, z
            pitch = lean_of(0.5 * (h[0] + h[1]) - rear + lean * math.cos(pitch), base)
            moved = base * math.cos(pitch) + lean * math.sin(pitch)
            done = abs(moved - reach) < 1e-5
            reach = moved
            if done:
                break
        mu, mv = u + reach * cos, v + reach * sin
        for i in range(4):
            out.wheels[p, i] = h[i]
            if want_contact:
                middles = Hub(mu, mv, cos, sin), Hub(u, v, cos, sin)
                out.contact[p, i] = carrying_node(ground, middles[0], middles[1], i, axles)
        roll_front, roll_rear = (
            lean_of(h[0] - h[1], axles.front_track),
            lean_of(h[2] - h[3], axles.rear_track),
        )
        roll = axles.front_share * roll_front + axles.rear_share * roll_rear
        front = 0.5 * (h[0] + h[1])
        # what an axle carries keeps its height over the wheels, whatever the body above does under load
        plain = lean_of(front - rear, base)
        position, rotation = out.position[p], out.rotation[p]
        over_rear, over_front = (u, v, rear + radius), (mu, mv, front + radius)
        place_body((yaw, pitch, roll), over_rear, 0.0, radius - load_rear, position[0], rotation[0])
        place_body((yaw, plain, roll_front), over_front, base, radius, position[1], rotation[1])
        place_body((yaw, plain, roll_rear), over_rear, 0.0, radius, position[2], rotation[2])


def of_one_kind(values: FloatArray) -> FloatArray:
    """The values as kernels are compiled for once: in one piece and not read-only, whoever they come from."""
    return np.require(values, np.float64, ["C", "W"])


def tyre_ground(heights: FloatArray, cell: float, axles: Axles) -> TyreGround:
    """Ground (ny, nx), m, for the tyres of a vehicle at any heading."""
    reach = math.ceil(math.hypot(axles.radius, axles.half_width) / cell) + 1
    columns = np.arange(heights.shape[1], dtype=np.float64) * cell
    heights = of_one_kind(heights)
    return TyreGround(heights, row_maxima(heights, reach), columns, cell)


def settle(ground: TyreGround, places: FloatArray, axles: Axles, want_contact: bool) -> Stance:
    """Stand the vehicle on the ground at every place.

    places : (n, 5) u, v of the rear axle's middle, yaw, body shift at front and rear axle (load).

    With equal sides and no wheel at its droop stop the energy of four springs is least where each axle's
    middle keeps the mean of its wheels and roll = sum(k t^2 roll_axle) / sum(k t^2): d/d(roll) of sum over
    axles of k/2 * 2 * (t/2)^2 (roll - roll_axle)^2 = 0.
    The wheelbase is a length along the chassis, so the front axle's place depends on the pitch: solved by
    fixed point, whose contraction is about slope x tan(pitch), a few per cent.
    """
    places, out = of_one_kind(places), Stance.empty(len(places))
    share(
        lambda a, b: settle_part(a, b, ground, places, axles, want_contact, out), len(places), PLACES_AT_ONCE
    )
    return out
