"""Which hand measurement to make first: the one to three that narrow the answer most, by exact
linear-Gaussian gain."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from crestcut.grid import FloatArray
from crestcut.surface.covariance import of_functionals
from crestcut.surface.records import ErrorModel, Surface
from crestcut.travel.chance_footing import wheel_weights
from crestcut.travel.records import Clearance, Ride
from crestcut.travel.ride import wheel_feet
from crestcut.travel.sweep import FRAMES, hard_parts
from crestcut.units import millimetres
from crestcut.vehicle.records import Vehicle

READ = 0.001  # m, 1 sd of a careful reading
BLOCKS = 0.100  # m, blocks that the expected string distances assume
ENOUGH = 1.05  # a measurement that narrows the answer less than this is not asked for


@dataclass(frozen=True)
class Advice:
    """One measurement worth making.

    kind : felt gap, string.  where : places in site x, y, m.  expect : what the scan says will be read, m.
    narrows : how many times narrower the interval becomes with this and all measurements before it.  how :
    in plain words.
    """

    kind: str
    where: tuple[tuple[float, float], ...]
    expect: float
    narrows: float
    how: str


@dataclass(frozen=True, eq=False)
class _Candidate:
    kind: str
    points: FloatArray
    weights: FloatArray
    part: float  # 1 where the vehicle's part is read with the ground
    expect: float
    how: str


def measure_first(
    vehicle: Vehicle, surface: Surface, ride: Ride, clearance: Clearance, error: ErrorModel, most: int = 3
) -> tuple[Advice, ...]:
    """The measurements that narrow the least clearance most, best first; each gain counts those before it.

    The clearance is taken to first order at its worst station: heights under the four wheels, the nearest
    ground, the part's own height.
    Empty where nothing is swept, or where no measurement would help.
    """
    worst = clearance.worst
    if worst is None:
        return ()
    variant, station = worst.pose
    pose = int(np.searchsorted(ride.batch.variant, variant)) + station
    part = next(p for p in hard_parts(vehicle) if p.name == worst.part)
    frame = surface.height.frame
    feet = frame.to_site(wheel_feet(vehicle, ride.batch.places[pose : pose + 1])[0])
    k = FRAMES.index(part.on)
    at = np.append(frame.to_grid(worst.xy), float(surface.height.sample(np.array(worst.xy))))
    local = (at - ride.batch.position[pose, k]) @ ride.batch.rotation[pose, k]
    weights = wheel_weights(vehicle, local[:1], local[1:2], np.array([k]))[0]
    target = _Candidate("", np.vstack([feet, worst.xy]), np.append(weights, -1.0), 1.0, worst.gap, "")
    share = float(np.clip(local[0] / vehicle.wheelbase, 0.0, 1.0))
    return _greedy(target, _candidates(target, surface, feet, share, worst.part), error, part.within, most)


def _candidates(
    target: _Candidate, surface: Surface, feet: FloatArray, share: float, part: str
) -> list[_Candidate]:
    """A gap felt under the standing vehicle, a string lengthways over the worst point, and the three
    strings of an H."""
    worst = target.points[4]
    middle = feet.reshape(2, 2, 2).mean(axis=1)  # front, rear
    beside = worst - (share * middle[0] + (1 - share) * middle[1])
    left = share * feet[0] + (1 - share) * feet[2]
    right = share * feet[1] + (1 - share) * feet[3]
    across = float(np.clip((worst - right) @ (left - right) / ((left - right) @ (left - right)), 0.0, 1.0))
    gap = _Candidate(
        "felt gap", target.points, target.weights, 1.0, target.expect,
        f"stand the vehicle there and feel the gap under the {part} with a stack of cards",
    )  # fmt: skip
    strings = [
        _string(
            middle[1] + beside,
            middle[0] + beside,
            share,
            surface,
            "lengthways over the worst point, from wheel to wheel station",
        ),
        _string(
            feet[2],
            feet[0],
            share,
            surface,
            "in the left wheel track, abreast of the worst point (an H, first bar)",
        ),
        _string(
            feet[3],
            feet[1],
            share,
            surface,
            "in the right wheel track, abreast of the worst point (an H, second bar)",
        ),
        _string(
            right,
            left,
            across,
            surface,
            "across between those two places, over the worst point (the H's crossbar)",
        ),
    ]
    return [gap, *(s for s in strings if np.isfinite(s.expect))]


def _string(a: FloatArray, b: FloatArray, share: float, surface: Surface, how: str) -> _Candidate:
    points = np.array([a, b, a + share * (b - a)])
    weights = np.array([1 - share, share, -1.0])
    expect = float(weights @ surface.height.sample(points)) + BLOCKS
    pull = f"stretch a string {how}, on two {millimetres(BLOCKS, 0)} blocks at 30 N, and measure down to the slab"
    return _Candidate("string", points, weights, 0.0, expect, pull)


def _greedy(
    target: _Candidate, candidates: Sequence[_Candidate], error: ErrorModel, within: float, most: int
) -> tuple[Advice, ...]:
    every = [target, *candidates]
    white = tuple(np.zeros(len(c.weights)) for c in every)
    ground = of_functionals(error, tuple(c.points for c in every), tuple(c.weights for c in every), white)
    parts = np.array([c.part for c in every])
    covariance = ground + within**2 * np.outer(parts, parts)
    chosen: list[int] = []
    advice: list[Advice] = []
    last = 1.0
    while len(chosen) < min(most, len(candidates)):
        gains = {i: narrowing(covariance, [*chosen, i]) for i in range(1, len(every)) if i not in chosen}
        best = max(gains, key=lambda i: gains[i])
        if gains[best] < ENOUGH * last:
            break
        chosen.append(best)
        last = gains[best]
        c = every[best]
        where = tuple((float(x), float(y)) for x, y in c.points)
        advice.append(Advice(c.kind, where, c.expect, last, c.how))
    return tuple(advice)


def narrowing(covariance: FloatArray, chosen: Sequence[int]) -> float:
    """How many times narrower entry 0 is known once the ``chosen`` entries are read to within ``READ``."""
    read = list(chosen)
    own = covariance[np.ix_(read, read)] + READ**2 * np.eye(len(read))
    cross = covariance[0, read]
    rest = covariance[0, 0] - cross @ np.linalg.solve(own, cross)
    return float(np.sqrt(covariance[0, 0] / max(rest, 1e-12)))
