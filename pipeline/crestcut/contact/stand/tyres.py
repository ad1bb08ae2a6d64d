"""Tyres on the ground and the body on its tyres: the compiled part of the ride.

Everything here is in grid axes (u along columns, v along rows, z up), metres and radians. Ground arrays hold
``VOID`` where nothing was measured, so that such nodes never carry a tyre.
"""

from __future__ import annotations

import math

import numpy as np
from numba import njit

from crestcut.base.grid import FloatArray, IntArray
from crestcut.base.parallel import share

PLACES_AT_ONCE = 500
VOID = -1.0e9  # stands for 'not measured' inside the kernels: lower than any ground


@njit(cache=True, nogil=True, error_model="numpy", fastmath=True, forceinline=True)
def _highest(ground: np.ndarray, u: np.ndarray, cos: float, shift: float, squared: float) -> float:
    """Highest ground + sqrt(radius^2 - a^2) along one run of a row, a = u cos + shift."""
    best = VOID
    for i in range(ground.shape[0]):
        a = u[i] * cos + shift
        best = max(best, ground[i] + math.sqrt(max(squared - a * a, 0.0)))
    return best


@njit(cache=True, nogil=True, error_model="numpy")
def row_maxima(ground: np.ndarray, reach: int) -> np.ndarray:
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


@njit(cache=True, nogil=True, error_model="numpy")
def tyre_height(
    ground: np.ndarray,
    bound: np.ndarray,
    columns_u: np.ndarray,
    cell: float,
    u: float,
    v: float,
    cos: float,
    sin: float,
    radius: float,
    half_width: float,
) -> float:
    """Lowest point of a tyre whose hub stands over (u, v): the ground dilated by a disk, flat across the
    tyre.

    h = max over nodes (a ahead, b to the left, |b| <= half_width) of ground + sqrt(radius^2 - a^2) - radius
    (ISO 16610-41: morphological dilation by a disk). Node by node, so a contact between two nodes is low by
    at most (cell / 2)^2 / (2 radius): 0.04 mm at a 10 mm cell.
    columns_u : (nx,) u of every column.  bound : ``row_maxima`` over at least the tyre's reach; what lies
    further ahead than a node as high as the bound could carry the tyre from is not looked at. Exact.
    """
    rows, columns = ground.shape
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
            best = max(best, _highest(ground[j, run], columns_u[run], cos, dv * sin - u * cos, squared))
    return best - radius if best > VOID / 2 else VOID


@njit(cache=True, nogil=True, error_model="numpy")
def tyre_node(
    ground: np.ndarray,
    cell: float,
    u: float,
    v: float,
    cos: float,
    sin: float,
    radius: float,
    half_width: float,
) -> int:
    """Flat index of the node that carries the tyre of ``tyre_height``; -1 over nothing measured."""
    rows, columns = ground.shape
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
            height = ground[j, i] + math.sqrt(radius * radius - a * a)
            if height > best:
                best, node = height, j * columns + i
    return node if best > VOID / 2 else -1


@njit(cache=True, nogil=True, error_model="numpy")
def _attitude(yaw: float, pitch: float, roll: float, rotation: np.ndarray) -> None:
    """Columns: forward, left, up of the chassis. yaw about z, then pitch (nose up), then roll (left side
    up)."""
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


@njit(cache=True, nogil=True, error_model="numpy")
def _hang(
    hub_u: float, hub_v: float, hub_z: float, x: float, z: float, rotation: np.ndarray, position: np.ndarray
) -> None:
    """Place the chassis so that its point (x, 0, z) is the middle of an axle's hubs."""
    position[0] = hub_u - rotation[0, 0] * x - rotation[0, 2] * z
    position[1] = hub_v - rotation[1, 0] * x - rotation[1, 2] * z
    position[2] = hub_z - rotation[2, 0] * x - rotation[2, 2] * z


@njit(cache=True, nogil=True, error_model="numpy")
def _axle(
    ground: np.ndarray, bound: np.ndarray, columns: np.ndarray, cell: float, geometry: np.ndarray,
    u: float, v: float, cos: float, sin: float, track: float,
) -> tuple[float, float]:  # fmt: skip
    """Heights of an axle's left and right tyre, its middle over (u, v)."""
    du, dv, radius, half = 0.5 * track * sin, 0.5 * track * cos, geometry[3], geometry[4]
    left = tyre_height(ground, bound, columns, cell, u - du, v + dv, cos, sin, radius, half)
    return left, tyre_height(ground, bound, columns, cell, u + du, v - dv, cos, sin, radius, half)


@njit(cache=True, nogil=True, error_model="numpy")
def _lean(rise: float, over: float) -> float:
    """Angle at which a length ``over`` rises by ``rise``, rad; held off the upright."""
    return math.asin(min(max(rise / over, -0.9), 0.9))


@njit(cache=True, nogil=True, error_model="numpy")
def _first_guess(
    ground: np.ndarray, cell: float, place: np.ndarray, base: float, rear: float
) -> tuple[float, float]:
    """Pitch (rad) and how far ahead the front axle stands (m), from the ground a wheelbase ahead: spares a
    step."""
    u, v = place[0] + base * math.cos(place[2]), place[1] + base * math.sin(place[2])
    j, i = math.floor(v / cell + 0.5), math.floor(u / cell + 0.5)
    pitch, lean = 0.0, place[3] - place[4]
    if 0 <= j < ground.shape[0] and 0 <= i < ground.shape[1] and min(ground[j, i], rear) > VOID / 2:
        pitch = _lean(ground[j, i] - rear + lean, base)
    return pitch, base * math.cos(pitch) + lean * math.sin(pitch)


@njit(cache=True, nogil=True, error_model="numpy")
def settle_part(
    first: int, stop: int, ground: np.ndarray, bound: np.ndarray, cell: float, places: np.ndarray,
    geometry: np.ndarray, want_contact: bool, wheels: np.ndarray, contact: np.ndarray, position: np.ndarray,
    rotation: np.ndarray,
) -> None:  # fmt: skip
    """``settle`` for places first..stop-1. bound : ``row_maxima`` of the ground over a tyre's reach."""
    base, front_track, rear_track, radius, half, share_front, share_rear = geometry
    columns = np.arange(ground.shape[1]) * cell
    h = np.empty(4)
    for p in range(first, stop):
        u, v, yaw, load_front, load_rear = places[p]
        cos, sin = math.cos(yaw), math.sin(yaw)
        h[2], h[3] = _axle(ground, bound, columns, cell, geometry, u, v, cos, sin, rear_track)
        rear, lean = 0.5 * (h[2] + h[3]), load_front - load_rear
        pitch, reach = _first_guess(ground, cell, places[p], base, rear)
        for _ in range(12):
            mu, mv = u + reach * cos, v + reach * sin
            h[0], h[1] = _axle(ground, bound, columns, cell, geometry, mu, mv, cos, sin, front_track)
            # hubs sit at chassis (0, radius - load_rear) and (base, radius - load_front) in x, z
            pitch = _lean(0.5 * (h[0] + h[1]) - rear + lean * math.cos(pitch), base)
            moved = base * math.cos(pitch) + lean * math.sin(pitch)
            done = abs(moved - reach) < 1e-5
            reach = moved
            if done:
                break
        mu, mv = u + reach * cos, v + reach * sin
        for i in range(4):
            wheels[p, i] = h[i]
            if want_contact:
                side = 0.5 * (front_track if i < 2 else rear_track) * (1.0 if i % 2 == 0 else -1.0)
                foot_u, foot_v = (mu if i < 2 else u) - side * sin, (mv if i < 2 else v) + side * cos
                contact[p, i] = tyre_node(ground, cell, foot_u, foot_v, cos, sin, radius, half)
        roll_front, roll_rear = _lean(h[0] - h[1], front_track), _lean(h[2] - h[3], rear_track)
        front = 0.5 * (h[0] + h[1])
        # what an axle carries keeps its height over the wheels, whatever the body above does under load
        plain = _lean(front - rear, base)
        for k in range(3):
            roll = share_front * roll_front + share_rear * roll_rear
            if k > 0:
                roll = roll_front if k == 1 else roll_rear
            _attitude(yaw, pitch if k == 0 else plain, roll, rotation[p, k])
            if k == 1:
                _hang(mu, mv, front + radius, base, radius, rotation[p, k], position[p, k])
            else:
                up = radius - load_rear if k == 0 else radius
                _hang(u, v, rear + radius, 0.0, up, rotation[p, k], position[p, k])


def settle(
    ground: FloatArray, cell: float, places: FloatArray, geometry: FloatArray, want_contact: bool,
    wheels: FloatArray, contact: IntArray, position: FloatArray, rotation: FloatArray,
) -> None:  # fmt: skip
    """Stand the vehicle on the ground at every place.

    places : (n, 5) u, v of the rear axle's middle, yaw, body shift at front and rear axle (load).
    geometry : (7,) wheelbase, front track, rear track, tyre radius, tyre half width, roll share of the front
    and of the rear axle.
    Out: wheels (n, 4) height of each tyre's lowest point (front left, front right, rear left, rear right;
    VOID over nothing measured), contact (n, 4) node that carries it, position (n, 3, 3) and rotation
    (n, 3, 3, 3): [.., 0] body, [.., 1] front and [.., 2] rear axle.

    With equal sides and no wheel at its droop stop the energy of four springs is least where each axle's
    middle keeps the mean of its wheels and roll = sum(k t^2 roll_axle) / sum(k t^2): d/d(roll) of sum over
    axles of k/2 * 2 * (t/2)^2 (roll - roll_axle)^2 = 0.
    The wheelbase is a length along the chassis, so the front axle's place depends on the pitch: solved by
    fixed point, whose contraction is about slope x tan(pitch), a few per cent.
    """
    bound = row_maxima(ground, tyre_reach(geometry, cell))
    args = (ground, bound, cell, places, geometry, want_contact, wheels, contact, position, rotation)
    share(lambda a, b: settle_part(a, b, *args), len(places), PLACES_AT_ONCE)


def tyre_reach(geometry: FloatArray, cell: float) -> int:
    """Columns that a tyre may reach to either side of its hub at any heading."""
    return math.ceil(math.hypot(geometry[3], geometry[4]) / cell) + 1
