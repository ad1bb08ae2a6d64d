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
from typing import NamedTuple

import numpy as np

from crestcut.base.grid import FloatArray, IntArray
from crestcut.base.kernels import njit
from crestcut.base.parallel import share
from crestcut.contact.stand.placing import Attitude, Axles, hung, lean_of, place_frames, roll_of
from crestcut.contact.stand.tyres import (
    PLACES_AT_ONCE,
    TREAD,
    VOID,
    Hub,
    Stance,
    TyreGround,
    axle_heights,
    carrying_nodes,
    first_guess,
    of_one_kind,
    rows_for,
    tilt_under,
)

SEARCH_STEPS = 80
Four = tuple[float, float, float, float]


class AxleSprings(NamedTuple):
    """Of one axle: ``rate`` of a wheel and ``bar`` between the wheels, N/m; ``droop``, m; ``load`` of a
    wheel's spring, N, NaN where it was not measured."""

    rate: float
    bar: float
    droop: float
    load: float


class Suspension(NamedTuple):
    """What ``stand`` needs of a vehicle. wheel : weight of one, N.  height, left : of the centre of mass over
    the ground and beside the middle, m.  rigid : a cart."""

    front: AxleSprings
    rear: AxleSprings
    wheel: float
    height: float
    left: float
    rigid: bool


class Body(NamedTuple):
    """How the body stands beforehand: moved by a load state at front and rear, m; sines of its pitch (nose
    up) and roll (left side up)."""

    load_front: float
    load_rear: float
    sin_pitch: float
    sin_roll: float


class Balance(NamedTuple):
    """Contact forces without warp, N; how warp changes each, 1/m; forces of a wheel at front and rear that
    leave the springs as measured, N."""

    forces: FloatArray
    n: Four
    level: tuple[float, float]
    front: AxleSprings
    rear: AxleSprings


class Carried(NamedTuple):
    """forces : (4,) of the ground on the wheels, N.  lift : (4,) how far each hangs above it, m.  sink : (3,)
    how far the body stands above its axles' means at front and rear, m, and beyond the stiffness-weighted
    roll, rad."""

    forces: FloatArray
    lift: FloatArray
    sink: FloatArray


@njit()
def _pressed(force_left: float, force_right: float, axle: AxleSprings) -> tuple[float, float]:
    """How far an axle's two springs are pressed by forces beyond those as measured, m, >= -droop (the stop).

    Rates [[k + b, -b], [-b, k + b]]: an M-matrix, so the spring that would extend most is the one whose stop
    holds first.
    """
    rate, bar, droop = axle.rate, axle.bar, axle.droop
    mean, half = 0.5 * (force_left + force_right) / rate, 0.5 * (force_left - force_right) / (rate + 2 * bar)
    left, right = mean + half, mean - half
    if min(left, right) >= -droop:
        return left, right
    if left < right:
        return -droop, max((force_right - bar * droop) / (rate + bar), -droop)
    return max((force_left - bar * droop) / (rate + bar), -droop), -droop


@njit()
def _twist_of(n: Four, c: FloatArray) -> float:
    """The twist between the axles that springs pressed by ``c`` (4,) m take, rad."""
    return n[0] * c[0] + n[1] * c[1] + n[2] * c[2] + n[3] * c[3]


@njit()
def _twisted(a: float, at: Balance, c: FloatArray) -> float:
    """The twist that the springs take at warp force ``a``, rad; how far each is pressed into ``c`` (4,)."""
    forces, n, own = at.forces, at.n, at.level
    c[0], c[1] = _pressed(forces[0] + a * n[0] - own[0], forces[1] + a * n[1] - own[0], at.front)
    c[2], c[3] = _pressed(forces[2] + a * n[2] - own[1], forces[3] + a * n[3] - own[1], at.rear)
    return _twist_of(n, c)


@njit()
def _warp_force(twist: float, low: float, high: float, at: Balance, c: FloatArray) -> float:
    """The a in [low, high] at which the springs take the twist, or the nearer end."""
    forces, n = at.forces, at.n
    # the answer where no limit binds: each axle's roll stiffness is t^2 (k + 2 b) / 2 for its own roll
    front, rear = at.front.rate + 2 * at.front.bar, at.rear.rate + 2 * at.rear.bar
    rest = (forces[0] - forces[1]) * n[0] / front + (forces[2] - forces[3]) * n[2] / rear
    a = (twist - rest) / (2.0 * n[0] ** 2 / front + 2.0 * n[2] ** 2 / rear)
    a = min(max(a, low), high)
    g_low = g_high = math.nan
    for step in range(SEARCH_STEPS):
        g = _twisted(a, at, c)
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


@njit()
def _resting(
    axles: Axles, s: Suspension, own: tuple[float, float], body: Body, share: float, forces: FloatArray
) -> float:
    """One set of contact forces in balance with the weight: axle loads as they shift with the grade, sides by
    roll stiffness.

    ``own`` : spring load and wheel of one wheel at front and rear, N. What slides the body downhill acts at
    the height of its centre of mass and is held at the ground: it moves sprung weight x height x sin(pitch) /
    wheelbase from axle to axle (statics). Loads that were not measured do not shift.
    """
    shifts = not math.isnan(s.front.load)
    normal = math.sqrt(max(1.0 - body.sin_pitch**2 - body.sin_roll**2, 0.25)) if shifts else 1.0
    sprung = 2.0 * (own[0] + own[1]) - 4.0 * s.wheel
    tilt = sprung * s.height * body.sin_pitch / axles.wheelbase if shifts else 0.0
    lean = sprung * (s.left * normal - s.height * body.sin_roll) if shifts else 0.0
    front, rear = own[0] * normal - 0.5 * tilt, own[1] * normal + 0.5 * tilt
    forces[0], forces[1] = front + share * lean / axles.front_track, front - share * lean / axles.front_track
    forces[2] = rear + (1 - share) * lean / axles.rear_track
    forces[3] = rear - (1 - share) * lean / axles.rear_track
    return normal


@njit()
def _held(axle: AxleSprings, load: float, rigid: bool) -> tuple[AxleSprings, float]:
    """An axle's springs as a load state leaves them, and what one of them then carries, N: a load that lowers
    the body presses its springs and leaves them more droop."""
    now = AxleSprings(axle.rate, axle.bar, axle.droop - load, axle.load)
    if rigid:
        return now, axle.load
    if math.isnan(axle.load):
        return now, axle.rate * min(now.droop, 1e3)
    return now, axle.load - axle.rate * load


@njit()
def stand(twist: float, axles: Axles, s: Suspension, body: Body, out: Carried) -> bool:
    """Solve the programme for one place.

    twist : n . ground, the axles' difference in roll of the ground, rad (square to the chassis).  True where
    a limit binds (a stop or a hanging wheel).
    """
    forces, sink, track_f, track_r = out.forces, out.sink, axles.front_track, axles.rear_track
    front, held_f = _held(s.front, body.load_front, s.rigid)
    rear, held_r = _held(s.rear, body.load_rear, s.rigid)
    own = (held_f + s.wheel, held_r + s.wheel)
    stiff_f, stiff_r = track_f**2 * (front.rate / 2 + front.bar), track_r**2 * (rear.rate / 2 + rear.bar)
    share = stiff_f / (stiff_f + stiff_r)
    normal = _resting(axles, s, own, body, share, forces)
    n = (1.0 / track_f, -1.0 / track_f, -1.0 / track_r, 1.0 / track_r)
    low, high = -1.0e18, 1.0e18
    for i in range(4):
        if n[i] > 0:
            low = max(low, -forces[i] / n[i])
        else:
            high = min(high, -forces[i] / n[i])
    if low > high:  # it would tip over: no balance on wheels that only push
        low = high = 0.5 * (low + high)
    c = np.zeros(4)
    if s.rigid:
        a = high if twist > 0 else low
    else:
        level = (held_f + s.wheel * normal, held_r + s.wheel * normal)
        a = _warp_force(twist, low, high, Balance(forces, n, level, front, rear), c)
    hangs = _hangs(a, twist - _twist_of(n, c), n, forces, out.lift)
    stopped = not s.rigid and (min(c[0], c[1]) <= -front.droop or min(c[2], c[3]) <= -rear.droop)
    if hangs or stopped or not math.isnan(s.front.load):
        sink[0], sink[1] = -0.5 * (c[0] + c[1]), -0.5 * (c[2] + c[3])
        sink[2] = -share * (c[0] - c[1]) / track_f - (1 - share) * (c[2] - c[3]) / track_r
    else:
        sink[:] = 0.0
    return hangs or stopped


@njit()
def _hangs(a: float, excess: float, n: Four, forces: FloatArray, lift: FloatArray) -> bool:
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
    ground: TyreGround, places: FloatArray, axles: Axles, want_contact: bool, springs: Suspension
) -> Stance:
    """As ``tyres.settle``, for springs with loads or stops and for rigid carts."""
    places, out = of_one_kind(places), Stance.empty(len(places))
    share(
        lambda a, b: _settle_part(a, b, ground, places, axles, springs, want_contact, out),
        len(places),
        PLACES_AT_ONCE,
    )
    return out


@njit()
def _hang(lift: FloatArray, contact: IntArray) -> None:
    """No node carries a wheel that hangs: contact (4,), lift (4,) m."""
    for i in range(4):
        if lift[i] != 0.0:
            contact[i] = -1


@njit()
def _settle_part(
    first: int, stop: int, ground: TyreGround, places: FloatArray, axles: Axles, springs: Suspension,
    want_contact: bool, out: Stance,
) -> None:  # fmt: skip
    """``settle_sprung`` for places first..stop-1: what ``stand`` finds acts on the body like a load state of
    that place."""
    base, radius, half_width = axles.wheelbase, axles.radius, axles.half_width
    tracks, rows = (axles.front_track, axles.rear_track), rows_for(ground, axles)
    h, carried = np.zeros(4), Carried(np.zeros(4), np.zeros(4), np.zeros(3))
    lift, sink = carried.lift, carried.sink
    for p in range(first, stop):
        u, v, yaw, load_front, load_rear = places[p]
        cos, sin = math.cos(yaw), math.sin(yaw)
        wheels, behind = out.wheels[p], Hub(u, v, cos, sin)
        tilt_rear = tilt_under(ground, behind, tracks[1])
        h[2], h[3] = axle_heights(ground, behind, tracks[1], axles, (tilt_rear, 0.0), rows)
        roll, square = 0.0, 1.0
        # how much more an axle rises to the left than its tyres do on the ground: one that hangs
        more_front, more_rear, used_rear = 0.0, 0.0, 0.0
        pitch, reach = first_guess(ground, places[p], base, 0.5 * (h[2] + h[3]))
        ahead = Hub(u + reach * cos, v + reach * sin, cos, sin)
        tilt_front = tilt_under(ground, ahead, tracks[0])
        for _ in range(30):
            ahead = Hub(u + reach * cos, v + reach * sin, cos, sin)
            h[0], h[1] = axle_heights(ground, ahead, tracks[0], axles, (tilt_front, more_front), rows)
            if more_rear != used_rear:
                h[2], h[3] = axle_heights(ground, behind, tracks[1], axles, (tilt_rear, more_rear), rows)
                used_rear = more_rear
            square = math.cos(pitch)  # springs work square to the chassis
            twist = square * ((h[0] - h[1]) / tracks[0] - (h[2] - h[3]) / tracks[1])
            body = Body(load_front, load_rear, math.sin(pitch), math.sin(roll))
            limits = stand(twist, axles, springs, body, carried)
            for i in range(4):
                wheels[i] = h[i] + lift[i] / square
            tilt_front = (wheels[0] - wheels[1]) / tracks[0]
            tilt_rear = (wheels[2] - wheels[3]) / tracks[1]
            old_front, more_front = more_front, (lift[0] - lift[1]) / square / tracks[0]
            more_rear = (lift[2] - lift[3]) / square / tracks[1]
            rise = 0.5 * (wheels[0] + wheels[1]) - 0.5 * (wheels[2] + wheels[3])
            leans = axles.front_share * tilt_front + axles.rear_share * tilt_rear + sink[2]
            rise += radius * (hung(tilt_front, leans) - hung(tilt_rear, leans))
            lean = load_front + sink[0] - (load_rear + sink[1])
            old_pitch, old_roll = pitch, roll
            pitch = lean_of(rise + lean * math.cos(pitch), base)
            roll = axles.front_share * roll_of(tilt_front, pitch) + axles.rear_share * roll_of(
                tilt_rear, pitch
            )
            roll += sink[2]
            moved = base * math.cos(pitch) + lean * math.sin(pitch)
            done = abs(moved - reach) < 1e-5
            if limits or sink[0] != 0.0 or sink[1] != 0.0:  # what the springs do depends on the attitude
                done = done and abs(pitch - old_pitch) < 1e-6 and abs(roll - old_roll) < 1e-6
                moves = max(abs(more_front - old_front), abs(more_rear - used_rear))
                done = done and half_width * moves < TREAD
            reach = moved
            if done:
                break
        mu, mv = u + reach * cos, v + reach * sin
        if min(h[0], h[1], h[2], h[3]) < VOID / 2:
            wheels[0], wheels[1], wheels[2], wheels[3] = h[0], h[1], h[2], h[3]
        if want_contact:
            front = Hub(mu, mv, cos, sin)
            carrying_nodes(ground, front, behind, axles, (tilt_front, tilt_rear), out.contact[p])
            _hang(lift, out.contact[p])
        at = Attitude(yaw, pitch, roll, pitch, tilt_front, tilt_rear)
        on_front = (mu, mv, 0.5 * (wheels[0] + wheels[1]))
        on_rear = (u, v, 0.5 * (wheels[2] + wheels[3]))
        up = radius - load_rear - sink[1]
        place_frames(at, on_front, on_rear, axles, up, out.position[p], out.rotation[p])
