"""Which hand measurement to make first: the one to three that narrow the answer most, by the best linear gain
on drawn surfaces."""

from __future__ import annotations

import itertools
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

import numpy as np
from scipy import special

from crestcut.grid import FloatArray
from crestcut.surface.evidence_records import Evidence
from crestcut.surface.records import ErrorModel, Surface
from crestcut.travel.advice_draws import READ, Readings, Stand, draw_readings
from crestcut.travel.advice_strings import StringPlan, crossbar, h_of_strings, string_plan
from crestcut.travel.chance_records import Chance
from crestcut.travel.records import Passage
from crestcut.travel.ride import wheel_feet
from crestcut.travel.sweep import hard_parts
from crestcut.units import at_least, at_most, millimetres
from crestcut.vehicle.records import Part

NEARLY = 0.12  # share of the wheelbase next to an axle in which a string is read at a place, not at its least
SEEK = 0.30  # m either way from the worst point in which the least distance is expected
CLOSE = "still too close to call, but less so; write it into the job file and run again."
WHOLE = 0.001  # m: to what a reading that settles it is told
NO_ALONE = "It cannot settle it alone; write it into the job file and run again."
ENOUGH = 1.10  # a measurement that narrows the answer less than this is not asked for


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
    expect: float
    how: str
    blocks: float = float("nan")


def measure_first(
    passage: Passage,
    error: ErrorModel,
    most: int = 3,
    today: Chance | None = None,
    confidence: float = 0.95,
    kinds: Sequence[str] = KINDS,
    evidence: Evidence | None = None,
    seed: int = 0,
) -> tuple[Advice, ...]:
    """The measurements that narrow the least clearance most, best first; each gain counts those before it.

    How the least clearance goes with what each would read is taken from draws of ground and vehicle
    (``advice_draws``), with what has been read already folded in. The strings of an H are worth something
    together only: all three or none.
    today : what is said so far; with it a felt gap is expected without the bias of the least of many, and
    each outcome is told.  kinds : what may be asked for.  evidence : what has been read already.  Empty where
    nothing is swept, or where no measurement would help.
    """
    vehicle, surface, ride, worst = passage.vehicle, passage.surface, passage.ride, passage.clearance.worst
    if worst is None:
        return ()
    variant, station = worst.pose
    pose = int(np.searchsorted(ride.batch.variant, variant)) + station
    parts = hard_parts(vehicle)
    index = next(i for i, p in enumerate(parts) if p.name == worst.part)
    track = (vehicle.front_track + vehicle.rear_track) / 2
    feet = surface.height.frame.to_site(wheel_feet(vehicle, ride.batch.places[pose : pose + 1])[0])
    plans = string_plans(surface, feet, np.array(worst.xy), parts[index], track) if "string" in kinds else []
    drawn = draw_readings(passage, error, plans, evidence, seed)
    if drawn is None:
        return ()
    # without the bias of the least of many
    more = 0.0 if today is None else today.least_clearance - worst.gap
    gaps = [_felt(s, passage, parts[s.part].name, more) for s in drawn.stands]
    every = [*gaps, *(_Candidate("string", p.points, p.expect, p.how, p.blocks) for p in plans)]
    free = [i + 1 for i, c in enumerate(every) if c.kind in kinds]
    bound = frozenset(range(len(every) - 2, len(every) + 1)) if plans and len(plans[-1].least) == 2 else None
    covariance = _covariance(drawn, bound is not None)
    return _best_first(every, covariance, free, bound, most, today, confidence)


def _felt(stand: Stand, passage: Passage, part: str, more: float) -> _Candidate:
    feet = passage.surface.height.frame.to_site(wheel_feet(passage.vehicle, stand.place[None])[0])
    how = f"stand the vehicle there and feel the gap under the {part} with a stack of cards"
    return _Candidate("felt gap", np.vstack([feet, stand.at]), stand.gap + more, how)


def string_plans(
    surface: Surface, feet: FloatArray, worst: FloatArray, part: Part, track: float
) -> list[StringPlan]:
    """One string lengthways over the worst point, and the three of an H."""
    middle = feet.reshape(2, 2, 2).mean(axis=1)  # front, rear
    run = middle[0] - middle[1]
    share = float(np.clip((worst - middle[1]) @ run / (run @ run), 0.0, 1.0))
    beside = worst - (share * middle[0] + (1 - share) * middle[1])
    rear, front, near = middle[1] + beside, middle[0] + beside, SEEK / float(np.hypot(*run))
    # a crest is under it: the least distance needs no place
    least = ((share - near, share + near),) if NEARLY < share < 1 - NEARLY else ()
    how = (
        "stretch a string lengthways over the worst point, from wheel to wheel station, {}, and measure "
        f"{'the least distance ' if least else ''}down to the slab"
    )
    plan = string_plan(surface, rear, front, share, how, least)
    bar = crossbar(surface, feet, worst, part.y, track)
    plans = [plan] if np.isfinite(plan.expect) else []
    return plans + (h_of_strings(surface, feet, bar) if bar is not None else [])


def _covariance(drawn: Readings, with_h: bool) -> FloatArray:
    """(n, n) of the least clearance and of what the candidates would read, m2."""
    rows = np.vstack([drawn.least, drawn.gaps, drawn.strings])
    covariance = np.atleast_2d(np.cov(rows, bias=True))
    if with_h:
        # what an H implies has in it half of each error of its bars too
        covariance[-1, -1] += READ**2 / 2
        for bar in (-3, -2):
            covariance[-1, bar] += READ**2 / 2
            covariance[bar, -1] += READ**2 / 2
    return np.asarray(covariance)


def _best_first(
    every: Sequence[_Candidate],
    covariance: FloatArray,
    free: Sequence[int],
    bound: frozenset[int] | None,
    most: int,
    today: Chance | None,
    confidence: float,
) -> tuple[Advice, ...]:
    """The best set of each size, as long as one more is worth it; the set's best first, an H as it is set up.

    every : the candidates, entries 1, 2, ... of the covariance.  free : which of them may be asked for.
    """
    wanted = best_set(covariance, free, most, bound)
    chosen: list[int] = []
    advice: list[Advice] = []
    while len(chosen) < len(wanted):
        left = sorted(wanted - set(chosen))
        if bound is not None and bound <= wanted:
            left = [i for i in left if i not in bound] or left[:1]
        chosen.append(max(left, key=lambda i: narrowing(covariance, [*chosen, i])))
        c = every[chosen[-1] - 1]
        where = tuple((float(x), float(y)) for x, y in c.points)
        said = () if today is None else outcomes(c.kind, c.expect, covariance, chosen, today, confidence)
        narrows = narrowing(covariance, chosen)
        advice.append(Advice(c.kind, where, c.expect, narrows, c.how, said, c.blocks))
    return tuple(advice)


def best_set(
    covariance: FloatArray, candidates: Iterable[int], most: int, bound: frozenset[int] | None = None
) -> set[int]:
    """The candidates that together narrow entry 0 most, no more than ``most``, and no more than are worth
    it; those of ``bound`` all or none."""
    found: set[int] = set()
    last = 1.0
    indices = tuple(candidates)
    for size in range(1, min(most, len(indices)) + 1):
        sets = [
            c for c in itertools.combinations(indices, size)
            if bound is None or bound <= set(c) or not bound & set(c)
        ]  # fmt: skip
        if not sets:
            continue
        best = max(sets, key=lambda c: narrowing(covariance, c))
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
    if kind == "felt gap" and len(chosen) == 1:
        if touches >= 0:
            least = millimetres(at_most(touches, WHOLE), 0)
            said.append(f"{least} or less: it touches where the ground is worst.")
        else:
            said.append("It touches, or will not roll on by itself: write touched = true.")
        if clears > 0:
            said.append(f"{millimetres(at_least(clears, WHOLE), 0)} or more: it clears.")
        between = "Less than that" if touches < 0 else "Between"
        return (*said, f"{between}: {CLOSE}")
    # beside others a gap is one more number: what it cannot well be is not spoken of
    for level, which, what in ((touches, 0, "it touches"), (clears, 1, "it clears")):
        if abs(level - expect) <= usual and level > 0:
            limit = at_least(level, WHOLE) if word[which] == "or more" else at_most(level, WHOLE)
            said.append(f"{millimetres(limit, 0)} {word[which]}: {what}.")
    return (*said, f"Otherwise: {CLOSE}" if said else NO_ALONE)


def narrowing(covariance: FloatArray, chosen: Sequence[int]) -> float:
    """How many times narrower entry 0 is known once the ``chosen`` entries are read to within ``READ``."""
    read = list(chosen)
    own = covariance[np.ix_(read, read)] + READ**2 * np.eye(len(read))
    cross = covariance[0, read]
    rest = covariance[0, 0] - cross @ np.linalg.solve(own, cross)
    return float(np.sqrt(covariance[0, 0] / max(rest, 1e-12)))
