"""Tyres on the ground and the body on its tyres: the compiled part of the ride.

Everything here is in grid axes (u along columns, v along rows, z up), metres and radians. Ground arrays hold
``VOID`` where nothing was measured, so that such nodes never carry a tyre.
"""

from __future__ import annotations

import math
from typing import NamedTuple

import numpy as np

from crestcut.base.grid import FloatArray, IntArray
from crestcut.base.kernels import greater, njit
from crestcut.base.parallel import share
from crestcut.contact.stand.placing import Attitude, Axles, hung, lean_of, place_frames, roll_of

PLACES_AT_ONCE = 500
UNKNOWN = 1.0e9  # no bound yet
TREAD = 1.0e-6  # m at a tread's edge: less than this, a tilt is found
TILTS = 20  # steps at most; a tyre as wide as half its track takes them all
VOID = -1.0e9  # stands for 'not measured' inside the kernels: lower than any ground


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


class Tyre(NamedTuple):
    """radius and half_width : m.  tilt : how far the tread rises to the left for each metre across."""

    radius: float
    half_width: float
    tilt: float


@njit(fastmath=True, forceinline=True)
def _highest(
    ground: FloatArray, u: FloatArray, cos: float, shift: float, squared: float, rise: float
) -> float:
    """Highest ground + sqrt(radius^2 - a^2) + u rise along one run of a row, a = u cos + shift."""
    best = VOID
    for i in range(ground.shape[0]):
        a = u[i] * cos + shift
        best = greater(best, ground[i] + math.sqrt(greater(squared - a * a, 0.0)) + u[i] * rise)
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
def tyre_height(
    ground: TyreGround, hub: Hub, tyre: Tyre, floor: float, rows: FloatArray, step: float
) -> float:
    """Height of a tyre's lowest place, the middle of its tread, over (u, v): the ground dilated by a disk
    that leans with its axle.

    h = max over nodes (a ahead, b to the left, |b| <= half_width) of ground - b tilt + sqrt(radius^2 - a^2)
    - radius (ISO 16610-41: dilation by a structuring element, here a cylinder's underside). The axle is
    square to the wheel's plane, so the tread rises across as the axle does; over the middle of the tread a
    cylinder leaning by psi, tilt = tan psi, is exactly

        ground - b tilt - s / cos psi,  |b + s sin psi| <= half_width cos psi,  s = radius - sqrt(radius^2 -
        a^2)

    (eliminate the width coordinate from hub + width along the axle - r across it). Left out are 1 / cos psi,
    which at 10 % of tilt leaves a tyre whose contact is e above its lowest place too high by 0.005 e (0.03 mm
    on a crest of 20 %), and of the footprint 0.5 mm of its width and 0.1 e of its place: with them the nodes
    under a tyre would depend on its tilt, and a height jump with it.

    Node by node, so a contact between two nodes is low by at most (cell / 2)^2 / (2 radius): 0.04 mm at a
    10 mm cell. Exact; what cannot carry the tyre is not looked at. floor : a height that it surely reaches,
    or ``VOID``.  rows : (rows under it or more,) what none of a row's nodes exceeds (radius added) at a tilt
    ``step`` less than this, m; left as it is at this tilt. ``UNKNOWN`` on a first look.
    """
    heights, bound, columns_u, cell = ground
    radius, half_width, tilt = tyre
    u, v, cos, sin = hub
    count, columns = heights.shape
    reach_v = radius * abs(sin) + half_width * abs(cos)
    j0 = max(math.ceil((v - reach_v) / cell - 1e-6), 0)
    j1 = min(math.floor((v + reach_v) / cell + 1e-6), count - 1)
    here = min(max(math.floor(u / cell + 0.5), 0), columns - 1)
    squared = radius * radius
    spread = abs(sin) * (radius * abs(cos) + half_width * abs(sin))
    best = floor + radius if floor > VOID / 2 else VOID
    for j in range(j0, j1 + 1):
        dv = j * cell - v
        # the row's nodes lie this far to either side, and are raised by the tilt by no more than at one end
        right, left = max(dv * cos - spread, -half_width), min(dv * cos + spread, half_width)
        top = rows[j - j0] + max(-step * right, -step * left)
        # a node |a| ahead beats ``best`` only if bound + sqrt(radius^2 - a^2) > best
        fall = best - bound[j, here] - max(-tilt * right, -tilt * left)
        if fall >= radius or top < best:
            rows[j - j0] = min(top, best)
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
            rows[j - j0] = VOID
            continue
        i0 = max(math.ceil((u + low) / cell - 1e-9), 0)
        i1 = min(math.floor((u + high) / cell + 1e-9), columns - 1)
        if i1 >= i0:
            run = slice(i0, i1 + 1)
            highest = _highest(
                heights[j, run], columns_u[run], cos, dv * sin - u * cos, squared, sin * tilt
            ) - tilt * (dv * cos + u * sin)  # b = dv cos - (u' - u) sin
            best = max(best, highest)
        rows[j - j0] = min(top, best)
    return best - radius if best > VOID / 2 else VOID


@njit()
def tyre_node(ground: TyreGround, hub: Hub, tyre: Tyre) -> int:
    """Flat index of the node that carries the tyre of ``tyre_height``; -1 over nothing measured."""
    heights, cell = ground.heights, ground.cell
    radius, half_width, tilt = tyre
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
            height = heights[j, i] - b * tilt + math.sqrt(radius * radius - a * a)
            if height > best:
                best, node = height, j * columns + i
    return node if best > VOID / 2 else -1


@njit()
def axle_heights(
    ground: TyreGround, middle: Hub, track: float, axles: Axles, tilt: tuple[float, float], rows: FloatArray
) -> tuple[float, float]:
    """Heights of an axle's left and right tyre, both leaning with it.

    tilt : a guess, and how much more than its tyres' heights on the ground the axle rises to the left (a
    wheel that hangs).  rows : (2, n) to work in.

    The tilt t and the heights depend on each other: t = (left(t) - right(t)) / track + more. Each height is a
    maximum of lines in t of slope -b, |b| <= half_width, so the right side contracts by 2 half_width / track,
    the tyre's width over the track (0.13), and has one fixed point (Banach); a step of less than ``TREAD`` at
    the tread's edge is within 0.15 of that of it.
    """
    u, v, cos, sin = middle
    du, dv = 0.5 * track * sin, 0.5 * track * cos
    left_hub, right_hub = Hub(u - du, v + dv, cos, sin), Hub(u + du, v - dv, cos, sin)
    now, more = tilt
    rows[:] = UNKNOWN
    tyre = Tyre(axles.radius, axles.half_width, now)
    left = tyre_height(ground, left_hub, tyre, VOID, rows[0], 0.0)
    right = tyre_height(ground, right_hub, tyre, VOID, rows[1], 0.0)
    if min(left, right) < VOID / 2:
        return left, right
    for _ in range(TILTS):
        step = (left - right) / track + more - now
        edge = axles.half_width * abs(step)
        if edge < TREAD:
            break
        now += step
        tyre = Tyre(axles.radius, axles.half_width, now)
        left = tyre_height(ground, left_hub, tyre, left - edge - 1e-9, rows[0], step)
        right = tyre_height(ground, right_hub, tyre, right - edge - 1e-9, rows[1], step)
    return left, right


@njit()
def rows_for(ground: TyreGround, axles: Axles) -> FloatArray:
    """(2, n) room for ``axle_heights``."""
    reach = math.hypot(axles.radius, axles.half_width)
    return np.empty((2, 2 * math.ceil(reach / ground.cell) + 3))


@njit()
def tilt_under(ground: TyreGround, middle: Hub, track: float) -> float:
    """How far the ground under an axle's two hubs rises to the left for each metre across: a first guess of
    its tilt."""
    heights, cell = ground.heights, ground.cell
    u, v, cos, sin = middle
    found = np.full(2, VOID)
    for k in range(2):
        side = track * (0.5 - k)
        j, i = math.floor((v + side * cos) / cell + 0.5), math.floor((u - side * sin) / cell + 0.5)
        if 0 <= j < heights.shape[0] and 0 <= i < heights.shape[1]:
            found[k] = heights[j, i]
    return (found[0] - found[1]) / track if min(found[0], found[1]) > VOID / 2 else 0.0


@njit()
def carrying_nodes(
    ground: TyreGround, front: Hub, rear: Hub, axles: Axles, tilts: tuple[float, float], out: IntArray
) -> None:
    """The node that carries each of the four tyres, into ``out``, the middles of their axles over ``front``
    and ``rear``, tilted by ``tilts``."""
    for i in range(4):
        middle, track, tilt = (
            (front, axles.front_track, tilts[0]) if i < 2 else (rear, axles.rear_track, tilts[1])
        )
        side = 0.5 * track * (1.0 if i % 2 == 0 else -1.0)
        foot = Hub(middle.u - side * middle.sin, middle.v + side * middle.cos, middle.cos, middle.sin)
        out[i] = tyre_node(ground, foot, Tyre(axles.radius, axles.half_width, tilt))


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
    h, rows = np.empty(4), rows_for(ground, axles)
    for p in range(first, stop):
        u, v, yaw, load_front, load_rear = places[p]
        cos, sin = math.cos(yaw), math.sin(yaw)
        behind = Hub(u, v, cos, sin)
        guess = tilt_under(ground, behind, axles.rear_track)
        h[2], h[3] = axle_heights(ground, behind, axles.rear_track, axles, (guess, 0.0), rows)
        rear, lean = 0.5 * (h[2] + h[3]), load_front - load_rear
        tilt_rear = (h[2] - h[3]) / axles.rear_track
        pitch, reach = first_guess(ground, places[p], base, rear)
        ahead = Hub(u + reach * cos, v + reach * sin, cos, sin)
        tilt_front, rise = tilt_under(ground, ahead, axles.front_track), 0.0
        for _ in range(12):
            ahead = Hub(u + reach * cos, v + reach * sin, cos, sin)
            h[0], h[1] = axle_heights(ground, ahead, axles.front_track, axles, (tilt_front, 0.0), rows)
            tilt_front = (h[0] - h[1]) / axles.front_track
            body = axles.front_share * tilt_front + axles.rear_share * tilt_rear
            rise = 0.5 * (h[0] + h[1]) - rear + radius * (hung(tilt_front, body) - hung(tilt_rear, body))
            # hubs sit at chassis (0, radius - load_rear) and (base, radius - load_front) in x, z
            pitch = lean_of(rise + lean * math.cos(pitch), base)
            moved = base * math.cos(pitch) + lean * math.sin(pitch)
            done = abs(moved - reach) < 1e-5
            reach = moved
            if done:
                break
        mu, mv = u + reach * cos, v + reach * sin
        for i in range(4):  # one by one, as in ``trials``: an array to a slice takes long to compile
            out.wheels[p, i] = h[i]
        if want_contact:
            front = Hub(mu, mv, cos, sin)
            carrying_nodes(ground, front, behind, axles, (tilt_front, tilt_rear), out.contact[p])
        # what an axle carries keeps its height over the wheels, whatever the body above does under load
        plain = lean_of(rise, base)
        roll = axles.front_share * roll_of(tilt_front, plain) + axles.rear_share * roll_of(tilt_rear, plain)
        at = Attitude(yaw, pitch, roll, plain, tilt_front, tilt_rear)
        on_front, on_rear = (mu, mv, 0.5 * (h[0] + h[1])), (u, v, rear)
        place_frames(at, on_front, on_rear, axles, radius - load_rear, out.position[p], out.rotation[p])


def of_one_kind(values: FloatArray) -> FloatArray:
    """The values as kernels are compiled for once: in one piece and not read-only, whoever they come from."""
    return np.require(values, np.float64, ["C", "W"])


def tyre_ground(heights: FloatArray, cell: float, axles: Axles, places: FloatArray) -> TyreGround:
    """Ground (ny, nx), m, for the tyres of a vehicle at ``places`` (n, 2 or more) u, v of its rear axle's
    middle, m, at any heading; elsewhere the bound is infinite."""
    reach = math.ceil(math.hypot(axles.radius, axles.half_width) / cell) + 1
    columns = np.arange(heights.shape[1], dtype=np.float64) * cell
    heights = of_one_kind(heights)
    if not len(places):
        return TyreGround(heights, np.full(heights.shape, np.inf), columns, cell)
    # no tyre is farther from the rear axle's middle than that along the chassis and across it
    track = 0.5 * max(axles.front_track, axles.rear_track)
    away = axles.wheelbase + track + axles.half_width + axles.radius + 2 * cell
    low, high = (places[:, :2].min(axis=0) - away) / cell, (places[:, :2].max(axis=0) + away) / cell
    # a place that is no number is nowhere
    first, last = (np.clip(np.nan_to_num(x), 0, heights.shape[::-1]).astype(int) for x in (low, high + 1))
    rows, some = slice(first[1], last[1]), slice(first[0], last[0])
    if (last - first == heights.shape[::-1]).all():
        return TyreGround(heights, row_maxima(heights, reach), columns, cell)
    bound = np.full(heights.shape, np.inf)
    around = slice(max(some.start - reach, 0), some.stop + reach)
    found = row_maxima(of_one_kind(heights[rows, around]), reach)
    bound[rows, some] = found[:, some.start - around.start :][:, : some.stop - some.start]
    return TyreGround(heights, bound, columns, cell)


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
