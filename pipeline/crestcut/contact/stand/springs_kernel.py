"""Four springs between body and ground: who carries what, which wheel hangs, how far each axle sinks.

The body's heave, pitch and roll q and the wheels' heights w minimise

    E = sum over wheels of (k c^2 / 2 + F c + U w)  +  bars  +  the body's weight,
    with c = w - B q,  w >= ground,  c >= -droop,

a convex quadratic programme. c is how far a spring is pressed beyond 'as measured', F what it carries there,
U the weight of a wheel. The four contact forces N obey three equations of balance, so one number is free: the
warp force a in N = N0 + a n, n = (1/tf, -1/tf, -1/tr, 1/tr), the only load of four wheels that neither lifts,
pitches nor rolls a rigid body. Compatibility asks n . c(N) = n . ground (the twist of the ground between the
axles). Its left side grows with a, so a one-dimensional search solves the programme exactly; where the twist
is more than the springs can follow, a stops where a wheel's force is zero: that wheel hangs.
A rigid cart is the same with c = 0: the twist always exceeds it, and it stands on the three wheels that its
centre of mass chooses.
"""

from __future__ import annotations

import math

import numpy as np
from numba import njit

from crestcut.base.grid import FloatArray, IntArray
from crestcut.base.parallel import share
from crestcut.contact.stand.tyres import (
    PLACES_AT_ONCE,
    VOID,
    _attitude,
    _axle,
    _first_guess,
    _hang,
    _lean,
    row_maxima,
    tyre_node,
    tyre_reach,
)

SEARCH_STEPS = 80


@njit(cache=True, nogil=True, error_model="numpy")
def _pressed(
    force_left: float, force_right: float, rate: float, bar: float, droop: float
) -> tuple[float, float]:
    """How far an axle's two springs are pressed by forces beyond those as measured, m, >= -droop (the stop).

    Rates [[k + b, -b], [-b, k + b]]: an M-matrix, so the spring that would extend most is the one whose stop
    holds first.
    """
    mean, half = 0.5 * (force_left + force_right) / rate, 0.5 * (force_left - force_right) / (rate + 2 * bar)
    left, right = mean + half, mean - half
    if min(left, right) >= -droop:
        return left, right
    if left < right:
        return -droop, max((force_right - bar * droop) / (rate + bar), -droop)
    return max((force_left - bar * droop) / (rate + bar), -droop), -droop


@njit(cache=True, nogil=True, error_model="numpy")
def _twisted(
    a: float,
    forces: np.ndarray,
    n: np.ndarray,
    own: tuple[float, float],
    front: np.ndarray,
    rear: np.ndarray,
    c: np.ndarray,
) -> float:
    """The twist that the springs take at warp force ``a``, rad; how far each is pressed into ``c`` (4,)."""
    c[0], c[1] = _pressed(
        forces[0] + a * n[0] - own[0], forces[1] + a * n[1] - own[0], front[0], front[1], front[2]
    )
    c[2], c[3] = _pressed(
        forces[2] + a * n[2] - own[1], forces[3] + a * n[3] - own[1], rear[0], rear[1], rear[2]
    )
    return n[0] * c[0] + n[1] * c[1] + n[2] * c[2] + n[3] * c[3]


@njit(cache=True, nogil=True, error_model="numpy")
def _warp_force(
    twist: float, low: float, high: float, forces: np.ndarray, n: np.ndarray, own: tuple[float, float],
    front: np.ndarray, rear: np.ndarray, c: np.ndarray,
) -> float:  # fmt: skip
    """The a in [low, high] at which the springs take the twist, or the nearer end. ``front``, ``rear``: rate,
    bar, droop.
    """
    # the answer where no limit binds: each axle's roll stiffness is t^2 (k + 2 b) / 2 for its own roll
    rest = (forces[0] - forces[1]) * n[0] / (front[0] + 2 * front[1]) + (forces[2] - forces[3]) * n[2] / (
        rear[0] + 2 * rear[1]
    )
    a = (twist - rest) / (
        2.0 * n[0] ** 2 / (front[0] + 2 * front[1]) + 2.0 * n[2] ** 2 / (rear[0] + 2 * rear[1])
    )
    a = min(max(a, low), high)
    g_low = g_high = math.nan
    for step in range(SEARCH_STEPS):
        g = _twisted(a, forces, n, own, front, rear, c)
        if abs(g - twist) < 1e-12 or (a >= high and g <= twist) or (a <= low and g >= twist):
            break
        if g < twist:
            low, g_low = a, g
        else:
            high, g_high = a, g
        if math.isnan(g_low) or math.isnan(g_high):
            a = high if math.isnan(g_high) else low
        elif high - low <= 1e-13 * (abs(high) + abs(low)):
            break
        else:
            # a few straight pieces: false position, with a halving now and then so that both ends move
            a = (
                0.5 * (low + high)
                if step % 3 == 2
                else low + (twist - g_low) / (g_high - g_low) * (high - low)
            )
    return a


@njit(cache=True, nogil=True, error_model="numpy")
def _resting(
    s: np.ndarray,
    own: tuple[float, float],
    sin_pitch: float,
    sin_roll: float,
    shifts: bool,
    share: float,
    forces: np.ndarray,
) -> float:
    """One set of contact forces in balance with the weight: axle loads as they shift with the grade, sides by
    roll stiffness.

    ``own`` : spring load and wheel of one wheel at front and rear, N. What slides the body downhill acts at
    the height of its centre of mass and is held at the ground: it moves sprung weight x height x sin(pitch) /
    wheelbase from axle to axle (statics).
    """
    normal = math.sqrt(max(1.0 - sin_pitch**2 - sin_roll**2, 0.25)) if shifts else 1.0
    sprung = 2.0 * (own[0] + own[1]) - 4.0 * s[11]
    tilt = sprung * s[12] * sin_pitch / s[0] if shifts else 0.0
    lean = sprung * (s[13] * normal - s[12] * sin_roll) if shifts else 0.0
    front, rear = own[0] * normal - 0.5 * tilt, own[1] * normal + 0.5 * tilt
    forces[0], forces[1] = front + share * lean / s[1], front - share * lean / s[1]
    forces[2], forces[3] = rear + (1 - share) * lean / s[2], rear - (1 - share) * lean / s[2]
    return normal


@njit(cache=True, nogil=True, error_model="numpy")
def stand(
    twist: float, s: np.ndarray, load_front: float, load_rear: float, sin_pitch: float, sin_roll: float,
    forces: np.ndarray, lift: np.ndarray, sink: np.ndarray,
) -> bool:  # fmt: skip
    """Solve the programme for one place.

    twist : n . ground, the axles' difference in roll of the ground, rad (square to the chassis).  s :
        ``spring_array``.
    load_front, load_rear : how far a load state moved the body, m.  sin_pitch (nose up), sin_roll (left side
        up) : of the body.
    Out: forces (4,) of the ground on the wheels, N; lift (4,) how far each hangs above it, m; sink (3,) how
    far the body stands above its axles' means at front and rear, m, and beyond the stiffness-weighted roll,
    rad. True where a limit binds (a stop or a hanging wheel).
    """
    rigid, shifts = s[14] > 0, not math.isnan(s[6])
    # a load that lowers the body presses its springs and leaves them more droop
    front, rear = np.array([s[3], s[4], s[5] - load_front]), np.array([s[7], s[8], s[9] - load_rear])
    held_f = s[6] - s[3] * load_front if shifts else s[3] * min(front[2], 1e3)
    held_r = s[10] - s[7] * load_rear if shifts else s[7] * min(rear[2], 1e3)
    if rigid:
        held_f, held_r = s[6], s[10]
    own = (held_f + s[11], held_r + s[11])
    stiff_f, stiff_r = s[1] ** 2 * (front[0] / 2 + front[1]), s[2] ** 2 * (rear[0] / 2 + rear[1])
    share = stiff_f / (stiff_f + stiff_r)
    normal = _resting(s, own, sin_pitch, sin_roll, shifts, share, forces)
    n = np.array([1.0 / s[1], -1.0 / s[1], -1.0 / s[2], 1.0 / s[2]])
    low, high = -1.0e18, 1.0e18
    for i in range(4):
        if n[i] > 0:
            low = max(low, -forces[i] / n[i])
        else:
            high = min(high, -forces[i] / n[i])
    if low > high:  # it would tip over: no balance on wheels that only push
        low = high = 0.5 * (low + high)
    c = np.zeros(4)
    if rigid:
        a = high if twist > 0 else low
    else:
        level = (
            held_f + s[11] * normal,
            held_r + s[11] * normal,
        )  # forces that leave the springs as measured
        a = _warp_force(twist, low, high, forces, n, level, front, rear, c)
    taken = n[0] * c[0] + n[1] * c[1] + n[2] * c[2] + n[3] * c[3]
    hangs = _hangs(a, twist - taken, n, forces, lift)
    stopped = not rigid and (min(c[0], c[1]) <= -front[2] or min(c[2], c[3]) <= -rear[2])
    if hangs or stopped or shifts:
        sink[0], sink[1] = -0.5 * (c[0] + c[1]), -0.5 * (c[2] + c[3])
        sink[2] = -share * (c[0] - c[1]) / s[1] - (1 - share) * (c[2] - c[3]) / s[2]
    else:
        sink[:] = 0.0
    return hangs or stopped


@njit(cache=True, nogil=True, error_model="numpy")
def _hangs(a: float, excess: float, n: np.ndarray, forces: np.ndarray, lift: np.ndarray) -> bool:
    """Add the warp to the forces; where twist is left over, lift the wheel that carries nothing by it. Is
    there one?
    """
    lift[:] = 0.0
    worst = -1
    for i in range(4):
        forces[i] += a * n[i]
        # of two wheels that carry nothing (a tie) either may hang: one is enough
        if n[i] * excess < 0 and (worst < 0 or forces[i] < forces[worst]):
            worst = i
    if abs(excess) <= 1e-10 or worst < 0:
        return False
    lift[worst] = -excess / n[worst]
    forces[worst] = 0.0
    return True


def settle_sprung(
    ground: FloatArray, cell: float, places: FloatArray, geometry: FloatArray, springs: FloatArray,
    want_contact: bool, wheels: FloatArray, contact: IntArray, position: FloatArray, rotation: FloatArray,
    hanging: FloatArray,
) -> None:  # fmt: skip
    """As ``tyres.settle``, for springs with loads or stops and for rigid carts.

    springs : ``spring_array``.  wheels (n, 4) are then the tyres' lowest points as they hang; contact is -1
    for a wheel that hangs.  hanging : (n, 4) how far each wheel's tyre is off the ground, m.
    """
    bound = row_maxima(ground, tyre_reach(geometry, cell))
    fixed = (ground, bound, cell, places, geometry, springs, want_contact)
    out = (wheels, contact, position, rotation, hanging)
    share(lambda a, b: _settle_part(a, b, *fixed, *out), len(places), PLACES_AT_ONCE)


@njit(cache=True, nogil=True, error_model="numpy")
def _settle_part(
    first: int, stop: int, ground: np.ndarray, bound: np.ndarray, cell: float, places: np.ndarray,
    geometry: np.ndarray, springs: np.ndarray, want_contact: bool, wheels: np.ndarray, contact: np.ndarray,
    position: np.ndarray, rotation: np.ndarray, hanging: np.ndarray,
) -> None:  # fmt: skip
    """``settle_sprung`` for places first..stop-1."""
    columns = np.arange(ground.shape[1]) * cell
    for p in range(first, stop):
        _settle_one(
            ground, bound, columns, cell, places[p], geometry, springs, want_contact,
            wheels[p], contact[p], position[p], rotation[p], hanging[p],
        )  # fmt: skip


@njit(cache=True, nogil=True, error_model="numpy")
def _settle_one(
    ground: np.ndarray, bound: np.ndarray, columns: np.ndarray, cell: float, place: np.ndarray,
    geometry: np.ndarray, springs: np.ndarray, want_contact: bool, wheels: np.ndarray, contact: np.ndarray,
    position: np.ndarray, rotation: np.ndarray, hanging: np.ndarray,
) -> None:  # fmt: skip
    """One place of ``settle_sprung``: what ``stand`` finds acts on the body like a load state of that
    place."""
    base, front_track, rear_track, radius, half, share_front, share_rear = geometry
    u, v, yaw, load_front, load_rear = place
    cos, sin = math.cos(yaw), math.sin(yaw)
    h, forces, lift, sink = np.zeros(4), np.zeros(4), np.zeros(4), np.zeros(3)
    h[2], h[3] = _axle(ground, bound, columns, cell, geometry, u, v, cos, sin, rear_track)
    roll, roll_front, roll_rear, square = 0.0, 0.0, 0.0, 1.0
    pitch, reach = _first_guess(ground, cell, place, base, 0.5 * (h[2] + h[3]))
    for _ in range(30):
        mu, mv = u + reach * cos, v + reach * sin
        h[0], h[1] = _axle(ground, bound, columns, cell, geometry, mu, mv, cos, sin, front_track)
        square = math.cos(pitch)  # springs work square to the chassis
        twist = square * ((h[0] - h[1]) / front_track - (h[2] - h[3]) / rear_track)
        limits = stand(
            twist, springs, load_front, load_rear, math.sin(pitch), math.sin(roll), forces, lift, sink
        )
        for i in range(4):
            wheels[i] = h[i] + lift[i] / square
        rise = 0.5 * (wheels[0] + wheels[1]) - 0.5 * (wheels[2] + wheels[3])
        lean = load_front + sink[0] - (load_rear + sink[1])
        s = (rise + lean * math.cos(pitch)) / base
        old_pitch, old_roll = pitch, roll
        pitch = math.asin(min(max(s, -0.9), 0.9))
        roll_front = _lean(wheels[0] - wheels[1], front_track)
        roll_rear = _lean(wheels[2] - wheels[3], rear_track)
        roll = share_front * roll_front + share_rear * roll_rear + sink[2]
        moved = base * math.cos(pitch) + lean * math.sin(pitch)
        done = abs(moved - reach) < 1e-5
        if limits or sink[0] != 0.0 or sink[1] != 0.0:  # then what the springs do depends on the attitude
            done = done and abs(pitch - old_pitch) < 1e-6 and abs(roll - old_roll) < 1e-6
        reach = moved
        if done:
            break
    mu, mv = u + reach * cos, v + reach * sin
    for i in range(4):
        hanging[i] = lift[i] / square
        if min(h[0], h[1], h[2], h[3]) < VOID / 2:
            wheels[i] = h[i]
        if want_contact:
            side = 0.5 * (front_track if i < 2 else rear_track) * (1.0 if i % 2 == 0 else -1.0)
            foot_u, foot_v = (mu if i < 2 else u) - side * sin, (mv if i < 2 else v) + side * cos
            carried = lift[i] == 0.0
            contact[i] = tyre_node(ground, cell, foot_u, foot_v, cos, sin, radius, half) if carried else -1
    front, rear = 0.5 * (wheels[0] + wheels[1]), 0.5 * (wheels[2] + wheels[3])
    _attitude(yaw, pitch, roll, rotation[0])
    _hang(u, v, rear + radius, 0.0, radius - load_rear - sink[1], rotation[0], position[0])
    _attitude(yaw, pitch, roll_front, rotation[1])
    _hang(mu, mv, front + radius, base, radius, rotation[1], position[1])
    _attitude(yaw, pitch, roll_rear, rotation[2])
    _hang(u, v, rear + radius, 0.0, radius, rotation[2], position[2])
