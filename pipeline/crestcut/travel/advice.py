"""Which hand measurement to make first: the one to three that narrow the answer most, by exact
linear-Gaussian gain."""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

import numpy as np
from scipy import special

from crestcut.grid import FloatArray
from crestcut.surface.covariance import of_functionals
from crestcut.surface.evidence_records import Evidence
from crestcut.surface.records import ErrorModel, Surface
from crestcut.travel.chance_footing import wheel_weights
from crestcut.travel.chance_records import Chance
from crestcut.travel.records import Clearance, Ride
from crestcut.travel.ride import wheel_feet
from crestcut.travel.sweep import FRAMES, hard_parts
from crestcut.units import millimetres
from crestcut.vehicle.records import Vehicle

READ = 0.001  # m, 1 sd of a careful reading
BLOCKS, BLOCK_STEP = 0.100, 0.020  # m: usual blocks under a string, and by how much higher ones are
FREE = 0.040  # m, that a string must clear the slab by where it is read
CLOSE = "still too close to call, but less so; write it into the job file and run again."
NO_ALONE = "It cannot settle it alone; write it into the job file and run again."
ENOUGH = 1.05  # a measurement that narrows the answer less than this is not asked for


KINDS = ("felt gap", "string")
USUAL = 2.5  # standard deviations: a reading further off than this is not to be counted on


@dataclass(frozen=True)
class Advice:
    """One measurement worth making.

    kind : felt gap, string.  where : places in site x, y, m.  expect : what is to be expected, m.  narrows :
    how many times narrower the interval becomes with this and all measurements before it.  how : in plain
    words.
    settles : what each outcome would settle, sentences; those before it taken to come out as expected.
    blocks : how high the blocks under a string are, m; NaN for a felt gap.
    """

    kind: str
    where: tuple[tuple[float, float], ...]
    expect: float
    narrows: float
    how: str
    settles: tuple[str, ...] = ()
    blocks: float = float("nan")


@dataclass(frozen=True, eq=False)
class _Candidate:
    kind: str
    points: FloatArray
    weights: FloatArray
    part: float  # 1 where the vehicle's part is read with the ground
    expect: float
    how: str
    blocks: float = float("nan")


def measure_first(
    vehicle: Vehicle,
    surface: Surface,
    ride: Ride,
    clearance: Clearance,
    error: ErrorModel,
    most: int = 3,
    today: Chance | None = None,
    confidence: float = 0.95,
    kinds: Sequence[str] = KINDS,
    evidence: Evidence | None = None,
) -> tuple[Advice, ...]:
    """The measurements that narrow the least clearance most, best first; each gain counts those before it.

    The clearance is taken to first order at its worst station: heights under the four wheels, the nearest
    ground, the part's own height.
    today : what is said so far; with it a felt gap is expected without the bias of the least of many, and
    each outcome is told.  kinds : what may be asked for.  evidence : what has been read already.  Empty where
    nothing is swept, or where no measurement would help.
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
    candidates = [c for c in _candidates(target, surface, feet, share, worst.part) if c.kind in kinds]
    if today is not None:
        best = today.least_clearance
        candidates = [replace(c, expect=best) if c.kind == "felt gap" else c for c in candidates]
    every = [target, *candidates]
    covariance = _covariance(every, error, part.within, worst.part, evidence)
    return _best_first(every, covariance, most, today, confidence)


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
    level = float(weights @ surface.height.sample(points))
    # high enough that the string runs free of the slab, in whole steps
    short = FREE - BLOCKS - level
    blocks = BLOCKS + BLOCK_STEP * math.ceil(short / BLOCK_STEP) if short > 0 else BLOCKS
    pull = (
        f"stretch a string {how}, on two {millimetres(blocks, 0)} blocks at 30 N, and measure down to "
        "the slab"
    )
    return _Candidate("string", points, weights, 0.0, level + blocks, pull, blocks)


def _covariance(
    every: Sequence[_Candidate], error: ErrorModel, within: float, part: str, evidence: Evidence | None
) -> FloatArray:
    """(n, n) of what the candidates would read, m2, given what has been read already."""
    read = evidence.readings if evidence is not None else ()
    points, weights = ([getattr(c, k) for c in (*every, *read)] for k in ("points", "weights"))
    ground = of_functionals(error, tuple(points), tuple(weights), tuple(np.zeros(len(w)) for w in weights))
    parts = np.array([*(c.part for c in every), *(float(r.part == part) for r in read)])
    both = ground + within**2 * np.outer(parts, parts)
    n = len(every)
    if evidence is None or not read:
        return both
    known = np.linalg.solve(both[n:, n:] + evidence.noise, both[n:, :n])
    return np.asarray(both[:n, :n] - both[:n, n:] @ known)


def _best_first(
    every: Sequence[_Candidate], covariance: FloatArray, most: int, today: Chance | None, confidence: float
) -> tuple[Advice, ...]:
    """The best set of each size, as long as one more is worth it; the set's best first."""
    wanted = best_set(covariance, range(1, len(every)), most)
    chosen: list[int] = []
    advice: list[Advice] = []
    while len(chosen) < len(wanted):
        chosen.append(max(wanted - set(chosen), key=lambda i: narrowing(covariance, [*chosen, i])))
        c = every[chosen[-1]]
        where = tuple((float(x), float(y)) for x, y in c.points)
        said = () if today is None else outcomes(c.kind, c.expect, covariance, chosen, today, confidence)
        narrows = narrowing(covariance, chosen)
        advice.append(Advice(c.kind, where, c.expect, narrows, c.how, said, c.blocks))
    return tuple(advice)


def best_set(covariance: FloatArray, candidates: Iterable[int], most: int) -> set[int]:
    """The candidates that together narrow entry 0 most, no more than ``most``, and no more than are worth
    it."""
    found: set[int] = set()
    last = 1.0
    indices = tuple(candidates)
    for size in range(1, min(most, len(indices)) + 1):
        best = max(itertools.combinations(indices, size), key=lambda c: narrowing(covariance, c))
        # a larger set must be worth each reading that it takes more than the one in hand
        if narrowing(covariance, best) >= last * ENOUGH ** (size - len(found)):
            found, last = set(best), narrowing(covariance, best)
    return found


def outcomes(
    kind: str, expect: float, covariance: FloatArray, chosen: Sequence[int], today: Chance, confidence: float
) -> tuple[str, ...]:
    """What readings of the last of the ``chosen`` would settle, the others as expected: plain sentences.

    The least clearance given a reading r is normal about best + gain (r - expect), as narrow as the readings
    make it; it touches, or clears, once that leaves no more than 1 - confidence for the other.
    """
    own = covariance[np.ix_(chosen, chosen)] + READ**2 * np.eye(len(chosen))
    gain = float(np.linalg.solve(own, covariance[0, chosen])[-1])
    if abs(gain) < 1e-6:
        return (NO_ALONE,)
    left = special.ndtri(confidence) * today.spread / narrowing(covariance, chosen)
    touches, clears = (expect + (level - today.least_clearance) / gain for level in (-left, left))
    usual = USUAL * float(np.sqrt(own[-1, -1]))
    word = ("or less", "or more") if gain > 0 else ("or more", "or less")
    said = []
    if kind == "felt gap":
        if touches >= 0:
            said.append(f"{millimetres(touches, 0)} or less: it touches where the ground is worst.")
        else:
            said.append("It touches, or will not roll on by itself: write touched = true.")
        if clears > 0:
            said.append(f"{millimetres(_up(clears), 0)} or more: it clears.")
        between = "Less than that" if touches < 0 else "Between"
        return (*said, f"{between}: {CLOSE}")
    for level, which, what in ((touches, 0, "it touches"), (clears, 1, "it clears")):
        if abs(level - expect) <= usual and level > 0:
            said.append(f"{millimetres(level, 0)} {word[which]}: {what}.")
    return (*said, f"Otherwise: {CLOSE}" if said else NO_ALONE)


def _up(length: float) -> float:
    """To the next whole millimetre."""
    return float(np.ceil(length * 1e3 - 1e-9)) / 1e3


def narrowing(covariance: FloatArray, chosen: Sequence[int]) -> float:
    """How many times narrower entry 0 is known once the ``chosen`` entries are read to within ``READ``."""
    read = list(chosen)
    own = covariance[np.ix_(read, read)] + READ**2 * np.eye(len(read))
    cross = covariance[0, read]
    rest = covariance[0, 0] - cross @ np.linalg.solve(own, cross)
    return float(np.sqrt(covariance[0, 0] / max(rest, 1e-12)))
