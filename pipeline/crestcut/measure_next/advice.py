"""Which hand measurement to make first: the one to three that narrow the answer most, by the best linear gain
on drawn surfaces; where a part may touch, from what each outcome would leave on the draws."""

from __future__ import annotations

import itertools
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, replace

import numpy as np
from scipy import special

from crestcut.base.grid import FloatArray
from crestcut.base.units import at_least, at_most, millimetres
from crestcut.chance import Chance, smoothed_below
from crestcut.contact import Passage, hard_parts, wheel_feet
from crestcut.measure_next.boards import Boards, plan_boards
from crestcut.measure_next.draws import READ, Readings, draw_readings, walk_narrows
from crestcut.measure_next.strings import StringPlan, crossbar, h_of_strings, string_plan
from crestcut.measure_next.touch import Worth, noise_alike, worth_of
from crestcut.terrain import Evidence

NEARLY = 0.12  # share of the wheelbase next to an axle in which a string is read at a place, not at its least
SEEK = 0.30  # m either way from the worst point in which the least distance is expected
CLOSE = "still too close to call, but less so; write it into the job file and {again}."
WHOLE = 0.001  # m: to what a reading that settles it is told
NO_ALONE = "It cannot settle it alone; write it into the job file and {again}."
ON_BOARDS = "It touches on the boards: roll off the way you came, and stretch a string instead."
WALK = (
    "walk the slab again the other way round, from the other end and against the first walk's direction, and "
    "name both scans under [scan] files"
)
ENOUGH = 1.10  # a measurement that narrows the answer less than this is not asked for


RISK = 0.02  # chance of a touch where the vehicle would stand, above which it is not to stand there so
KINDS = ("felt gap", "string")
USUAL = 2.5  # standard deviations: a reading further off than this is not to be counted on


@dataclass(frozen=True)
class Advice:
    """One measurement worth making.

    kind : felt gap, string, walk.  where : places in site x, y, m.  expect : what is to be expected, m.
    narrows : how many times narrower the interval becomes with this and all measurements before it, a
    walk's alone.  how : in plain words.
    settles : what each outcome would settle, sentences; those before it taken to come out as expected.
    blocks : how high the blocks under a string are, m; NaN for a felt gap.  seek : from and to which the
    least distance under it is sought, m from its block a; none where it is read at the place.  part : that a
    gap is felt under.
    boards : to stand on for it.  worth : of a gap what a touch, a clear and a reading on the bare slab tell.
    """

    kind: str
    where: tuple[tuple[float, float], ...]
    expect: float
    narrows: float
    how: str
    settles: tuple[str, ...] = ()
    blocks: float = float("nan")
    part: str = ""
    boards: Boards | None = None
    worth: Worth | None = None
    seek: tuple[tuple[float, float], ...] = ()


@dataclass(frozen=True, eq=False)
class SoFar:
    """What is said before a reading, and what it is to decide: whether the least clearance is ``asked`` m or
    more (0: whether it clears), with a ``confidence`` 0..1."""

    today: Chance
    confidence: float
    asked: float = 0.0

    @property
    def either(self) -> tuple[str, str]:
        """In words, less and no less than that."""
        return ("less is left than was asked", "done") if self.asked > 0 else ("it touches", "it clears")

    def told(self, sentence: str) -> str:
        """With what is to be done once it is written down."""
        return sentence.format(again="check again" if self.asked > 0 else "run again")


@dataclass(frozen=True, eq=False)
class _Candidate:
    """noise : variance of its reading's error over ``READ``'s, m2; off : of it from where the vehicle
    stands.  risky : a part may touch."""

    kind: str
    points: FloatArray
    expect: float
    how: str
    blocks: float = float("nan")
    part: str = ""
    boards: Boards | None = None
    worth: Worth | None = None
    noise: float = 0.0
    off: float = 0.0
    risky: bool = False
    seek: tuple[tuple[float, float], ...] = ()


@dataclass(frozen=True, eq=False)
class _Choice:
    """candidates : entries 1, 2, ... of the covariance (m2) of the least clearance and what they read.
    wanted : the best set of them.  bound : those that are worth something together only."""

    candidates: Sequence[_Candidate]
    covariance: FloatArray
    wanted: set[int]
    bound: frozenset[int] | None


def measure_first(
    passage: Passage,
    most: int = 3,
    today: Chance | None = None,
    confidence: float = 0.95,
    kinds: Sequence[str] = KINDS,
    evidence: Evidence | None = None,
    sizes: Sequence[float] = (),
    asked: float = 0.0,
) -> tuple[Advice, ...]:
    """The measurements that narrow the least clearance most, best first; each gain counts those before it.

    How the least clearance goes with what each would read is taken from draws of ground and vehicle
    (``draws``), with what has been read already folded in. The strings of an H are worth something
    together only: all three or none.
    today : what is said so far; with it a felt gap is expected without the bias of the least of many, and
    each outcome is told.  kinds : what may be asked for, a second walk only if named.  evidence : what has
    been read already.  sizes : thicknesses of board that can be had, m: where a part may touch a gap is felt
    on boards or not at all; without boards and strings a touch is worth what it tells.  asked : m that is to
    be left, of finished work: outcomes are told against it.
    Empty where nothing is swept, or where no measurement would help.
    """
    worst = passage.clearance.worst
    if worst is None:
        return ()
    plans = string_plans(passage) if "string" in kinds else []
    drawn = draw_readings(passage, plans, evidence)
    if drawn is None:
        return ()
    # without the bias of the least of many
    more = 0.0 if today is None else today.least_clearance - worst.gap
    gaps = [_felt(drawn, k, passage, more) for k in range(len(drawn.stands))]
    every = [*gaps, *(_Candidate("string", p.points, p.expect, p.how, p.blocks, seek=p.seek) for p in plans)]
    bound = frozenset(range(len(every) - 2, len(every) + 1)) if plans and len(plans[-1].least) == 2 else None

    def on_boards(k: int) -> Boards | None:
        return plan_boards(passage, drawn.stands[k], sizes, evidence)

    choice = _chosen(every, drawn, kinds, bound, most, on_boards)
    found = _best_first(choice, None if today is None else SoFar(today, confidence, asked))
    if "walk" in kinds and drawn.stands:
        narrows = walk_narrows(drawn, passage)
        found += (Advice("walk", (), float("nan"), narrows, WALK),) if narrows >= ENOUGH else ()
    return found


def _felt(drawn: Readings, k: int, passage: Passage, more: float) -> _Candidate:
    """A gap felt on the bare slab. more : by how much the surface's own least gap is off, m."""
    stand, gap = drawn.stands[k], drawn.gaps[k]
    frame, part = passage.surface.height.frame, hard_parts(passage.vehicle)[stand.part].name
    feet = frame.to_site(wheel_feet(passage.vehicle, stand.place[None])[0])
    how = f"stand the vehicle there and feel the gap under the {part} with a stack of cards"
    # of a slab that was judged each draw is what it may be, and so is what would be read there
    expect = stand.gap + more if passage.surface.error.slab is None else float(gap.mean())
    risky = smoothed_below(drawn.any[k], 0.0) > RISK
    worth = worth_of(drawn.least, gap, float(np.sqrt(READ**2 + stand.off)))
    noise = max(noise_alike(drawn.least, gap, worth.narrows) - READ**2, 0.0) if risky else stand.off
    points = np.vstack([feet, stand.at])
    return _Candidate(
        "felt gap", points, expect, how, part=part, worth=worth, noise=noise, off=stand.off, risky=risky
    )


def _boarded(gap: _Candidate, boards: Boards | None) -> _Candidate:
    """The same gap felt on boards; None: as good as any board, until it is known which."""
    if boards is None:
        return replace(gap, noise=gap.off)
    how = (
        f"stand the vehicle there on four boards {millimetres(boards.thickness)} thick, one under each tyre, "
        f"and feel the gap under the {gap.part} with a feeler on a long stick"
    )
    expect = gap.expect + boards.thickness + boards.held
    return replace(gap, how=how, expect=expect, boards=boards, noise=gap.off + boards.noise, risky=False)


def _chosen(
    every: Sequence[_Candidate],
    drawn: Readings,
    kinds: Sequence[str],
    bound: frozenset[int] | None,
    most: int,
    on_boards: Callable[[int], Boards | None],
) -> _Choice:
    """The best set of the candidates, with their boards. Boards are sought for those only that would be
    in it; where none serve, a string comes instead."""
    found = [_boarded(c, None) if c.risky else c for c in every]
    free = [i + 1 for i, c in enumerate(found) if c.kind in kinds]
    while True:
        covariance = _covariance(drawn, found, bound is not None)
        wanted = best_set(covariance, free, most, bound)
        open_ = [i for i in sorted(wanted) if found[i - 1].risky]
        if not open_:
            break
        boards = on_boards(open_[0] - 1)
        if boards is None:
            free.remove(open_[0])
        else:
            found[open_[0] - 1] = _boarded(every[open_[0] - 1], boards)
    if not free:  # nothing but a touch can be had
        found = list(every)
        covariance = _covariance(drawn, found, bound is not None)
        wanted = best_set(covariance, [i + 1 for i, c in enumerate(found) if c.kind in kinds], most, bound)
    return _Choice(found, covariance, wanted, bound)


def string_plans(passage: Passage) -> list[StringPlan]:
    """One string lengthways over the worst point, and the three of an H."""
    vehicle, surface, found = passage.vehicle, passage.surface, passage.clearance.worst
    assert found is not None
    part = next(p for p in hard_parts(vehicle) if p.name == found.part)
    batch, (variant, station) = passage.ride.batch, found.pose
    place = batch.places[int(np.searchsorted(batch.variant, variant)) + station]
    feet, worst = surface.height.frame.to_site(wheel_feet(vehicle, place[None])[0]), np.array(found.xy)
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
    bar = crossbar(surface, feet, worst, part.y, (vehicle.front_track + vehicle.rear_track) / 2)
    plans = [plan] if np.isfinite(plan.expect) else []
    return plans + (h_of_strings(surface, feet, bar) if bar is not None else [])


def _covariance(drawn: Readings, every: Sequence[_Candidate], with_h: bool) -> FloatArray:
    """(n, n) of the least clearance and of what the candidates would read, m2, but for ``READ``."""
    rows = np.vstack([drawn.least, drawn.gaps, drawn.strings])
    covariance = np.atleast_2d(np.cov(rows, bias=True))
    covariance += np.diag([0.0, *(c.noise for c in every)])
    if with_h:
        # what an H implies has in it half of each error of its bars too
        covariance[-1, -1] += READ**2 / 2
        for bar in (-3, -2):
            covariance[-1, bar] += READ**2 / 2
            covariance[bar, -1] += READ**2 / 2
    return np.asarray(covariance)


def _best_first(choice: _Choice, so_far: SoFar | None) -> tuple[Advice, ...]:
    """The wanted ones, each with what it adds; the best first, an H as it is set up."""
    covariance, wanted, bound = choice.covariance, choice.wanted, choice.bound
    chosen: list[int] = []
    advice: list[Advice] = []
    while len(chosen) < len(wanted):
        left = sorted(wanted - set(chosen))
        if bound is not None and bound <= wanted:
            left = [i for i in left if i not in bound] or left[:1]
        chosen.append(max(left, key=lambda i: narrowing(covariance, [*chosen, i])))
        c = choice.candidates[chosen[-1] - 1]
        where = tuple((float(x), float(y)) for x, y in c.points)
        said: tuple[str, ...] = ()
        if so_far is not None and c.risky and c.worth is not None:
            said = touch_outcomes(c.worth)
        elif so_far is not None:
            said = outcomes(c, covariance, chosen, so_far)
        narrows = narrowing(covariance, chosen)
        advice.append(
            Advice(c.kind, where, c.expect, narrows, c.how, said, c.blocks, c.part, c.boards, c.worth, c.seek)
        )
    return tuple(advice)


def touch_outcomes(worth: Worth) -> tuple[str, ...]:
    """What a touch, a clear or a reading on the bare slab would tell, in sentences."""
    told = (
        (f"It touches (a chance of {worth.touch:.0%}): write touched = true", worth.given_touch),
        ("A gap can be read: write it", worth.given_reading),
        ("It only clears a card: write cleared", worth.given_clear),
    )
    return tuple(
        f"{what}; the answer becomes {times:.1f} times narrower." for what, times in told if times == times
    )


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
    last: _Candidate, covariance: FloatArray, chosen: Sequence[int], so_far: SoFar
) -> tuple[str, ...]:
    """What readings of the ``last`` of the ``chosen`` would settle, the others as expected: plain sentences.

    The least clearance given a reading r is normal about best + gain (r - expect), as narrow as the readings
    make it; it is less, or no less, than ``so_far.asked`` once that leaves no more than 1 - confidence for
    the other.
    """
    kind, expect, boards = last.kind, last.expect, last.boards is not None
    own = covariance[np.ix_(chosen, chosen)] + READ**2 * np.eye(len(chosen))
    gain = float(np.linalg.solve(own, covariance[0, chosen])[-1])
    no_alone, close = (so_far.told(sentence) for sentence in (NO_ALONE, CLOSE))
    if abs(gain) < 1e-6:
        return (no_alone,)
    left = special.ndtri(so_far.confidence) * so_far.today.spread / narrowing(covariance, chosen)
    spare = so_far.today.least_clearance - so_far.asked
    less, enough = (expect + (level - spare) / gain for level in (-left, left))
    usual = USUAL * float(np.sqrt(own[-1, -1]))
    word = ("or less", "or more") if gain > 0 else ("or more", "or less")
    said = []
    if kind == "felt gap" and len(chosen) == 1:
        if less >= 0:
            least = millimetres(at_most(less, WHOLE), 0)
            said.append(f"{least} or less: {so_far.either[0]} where the ground is worst.")
        elif not boards:
            said.append("It touches, or will not roll on by itself: write touched = true.")
        if enough > 0:
            said.append(f"{millimetres(at_least(enough, WHOLE), 0)} or more: {so_far.either[1]}.")
        between = "Less than that" if less < 0 else "Between"
        return (*said, f"{between}: {close}", *((ON_BOARDS,) if boards else ()))
    # beside others a gap is one more number: what it cannot well be is not spoken of
    for level, which in ((less, 0), (enough, 1)):
        if abs(level - expect) <= usual and level > 0:
            limit = at_least(level, WHOLE) if word[which] == "or more" else at_most(level, WHOLE)
            said.append(f"{millimetres(limit, 0)} {word[which]}: {so_far.either[which]}.")
    return (*said, f"Otherwise: {close}" if said else no_alone)


def narrowing(covariance: FloatArray, chosen: Sequence[int]) -> float:
    """How many times narrower entry 0 is known once the ``chosen`` entries are read to within ``READ``."""
    read = list(chosen)
    own = covariance[np.ix_(read, read)] + READ**2 * np.eye(len(read))
    cross = covariance[0, read]
    rest = covariance[0, 0] - cross @ np.linalg.solve(own, cross)
    return float(np.sqrt(covariance[0, 0] / max(rest, 1e-12)))
