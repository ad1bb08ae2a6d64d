"""Which breaks and real features a slab may have, and which of them the heights ask for: a Gibbs chain.

A few shapes out of many, each with a prior chance and an amplitude of its own: given the fields' setting all
amplitudes are integrated out, so what is drawn is only which shapes there are and which setting (George &
McCulloch, JASA 88, 1993; collapsed over amplitudes). Where a hump and the scan's own error cannot be told
apart both stay among the draws.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import Self

import numpy as np
from scipy import linalg

from crestcut.base.grid import FloatArray, IntArray
from crestcut.terrain.breaklines.breaks import Break
from crestcut.terrain.slab.averages import Tiles
from crestcut.terrain.slab.shapes import FACE, TREND, Columns, Row, Shape, columns
from crestcut.terrain.slab.split import NormalEquations, Whitened, log_evidence

FLAT = {Shape.LEVEL: 10.0, Shape.TILT_U: 1.0, Shape.TILT_V: 1.0}  # 1 sd, m or m/m: nothing is known
FOLD_SD, FOLD_ALONG_SD = 0.05, 0.005  # of half a change of slope; the same per metre along the line
BENT = 0.10  # 1/m, curvature in plan beyond which a bow of 2 sd does not do for what a fold of 0.08 leaves
SURELY_BENT = 1.5  # m of line on which places wrong by 3 mm each show less than a third of that by chance
ROUNDINGS = (0.0, 0.03, 0.07, 0.13, 0.22)  # m, rho of a hinge
LENGTHS = (0.25, 0.4, 0.6, 1.0, 1.6, 2.5)  # m, of a curve between two planes
BUMP_SIZES, RUT_SIZES = (0.10, 0.15, 0.25, 0.4), (0.10, 0.20)  # m
MOST_BUMPS = 6000  # offered at once: all that are offered are weighed against each other
WINDOW = 10.0  # m2: one feature is expected in so much slab
ABSENT = 0.1  # prior odds that a break which a fit has found is none
KEPT = 80  # candidates that the chain may take up
SURE = 3.0  # log of the odds at which a feature is taken up before the chain starts
MOST_SURE = 8
BURN, EVERY = 20, 2  # sweeps over the shapes before one is used, and of those that follow
PRESENT = 0.5  # of the draws: then a feature is named


@dataclass(frozen=True)
class Usual:
    """How large and how many the shapes of a kind of slab are. 1 sd: bow 1/m; gentle, half the change of
    slope of a fold that no fit has found; bump, rut, step m.  bumps, ruts, steps, bends : expected numbers in
    ``WINDOW``."""

    bow: float
    gentle: float
    bump: float
    rut: float
    step: float
    bumps: float
    ruts: float
    steps: float
    bends: float


YARD = Usual(0.004, 0.03, 0.010, 0.008, 0.010, 0.7, 0.15, 0.15, 0.5)  # the bow: 8 mm in the middle of 4 m


@dataclass(frozen=True, eq=False)
class Dictionary:
    """columns : every shape.  always : how many of the first are in every model.  choices : for each variable
    of the chain the columns it may take (index array) and their log prior odds; none of them has ``none``."""

    columns: Columns
    always: int
    choices: tuple[tuple[IntArray, FloatArray], ...]
    none: tuple[float, ...]


def dictionary_of(tiles: Tiles, breaks: Sequence[Break], usual: Usual = YARD) -> Dictionary:
    """All that a slab under ``tiles`` may be made of, ``breaks`` those that a fit has found."""
    low, high = tiles.uv.min(axis=0), tiles.uv.max(axis=0)
    area = float((tiles.side**2).sum())
    centre = tuple(float(c) for c in (low + high) / 2)
    across, lengthways = Break.straight(0.0, 0.0), Break.straight(math.pi / 2, 0.0)
    lines = (*breaks, across, lengthways)
    number = {"u": len(breaks), "v": len(breaks) + 1}
    always: list[Row] = [(k, (), -1, FLAT.get(k, usual.bow)) for k in TREND]
    hinges = [k for k, b in enumerate(breaks) if b.fold != 0]
    always += [(Shape.HINGE_ALONG, (0.0, breaks[k].rounding), k, FOLD_ALONG_SD) for k in hinges]
    # a slab that falls away beyond a crest curved in plan is a cone there: max(v, 0) = (v + |v|) / 2, whose
    # first half is a tilt only where the line is straight
    always += [
        (Shape.ACROSS, (), k, FOLD_SD)
        for k in hinges
        if breaks[k].length >= SURELY_BENT and abs(breaks[k].curvature) > BENT
    ]
    rows = list(always)
    choices: list[tuple[IntArray, FloatArray]] = []
    none: list[float] = []

    def offer(some: list[Row], odds: float, without: float) -> None:
        """A variable that takes one of ``some``, equally likely, with odds to ``without``; none where a
        small window has no room for any."""
        if not some:
            return
        index = np.arange(len(rows), len(rows) + len(some))
        rows.extend(some)
        choices.append((index, np.full(len(some), math.log(odds / len(some)))))
        none.append(math.log(without))

    for k, line in enumerate(breaks):
        if line.fold != 0:
            moved = (0.0, -1.5 * max(line.placed, 0.003), 1.5 * max(line.placed, 0.003))
            some: list[Row] = [(Shape.HINGE, (d, r), k, FOLD_SD) for d in moved for r in ROUNDINGS]
            some += [(Shape.CURVE, (0.0, length), k, FOLD_SD) for length in LENGTHS]
            offer(some, 1.0, ABSENT)
        else:
            offer([(Shape.STEP, (0.0, FACE), k, usual.step)], 1.0, ABSENT)
    share = area / WINDOW
    slots = int(np.clip(round(1 + 2 * share), 2, 8))
    bends = _gentle(low, high, number, usual.gentle)
    for _ in range(2):  # both may take the same column: the second list is the first again
        offer(bends, usual.bends * share / 2, 1.0)
    bumps, ruts, steps = _features(low, high, number, float(tiles.side.max()), usual)
    weights = np.concatenate([
        np.full(len(some), math.log(odds * share / slots / max(len(some), 1)))
        for some, odds in ((bumps, usual.bumps), (ruts, usual.ruts), (steps, usual.steps))
    ])  # fmt: skip
    first = len(rows)
    rows.extend([*bumps, *ruts, *steps])
    for _ in range(slots):
        choices.append((np.arange(first, len(rows)), weights))
        none.append(0.0)
    return Dictionary(columns(rows, lines, (centre[0], centre[1])), len(always), tuple(choices), tuple(none))


def _gentle(low: FloatArray, high: FloatArray, number: dict[str, int], sd: float) -> list[Row]:
    some: list[Row] = []
    for axis, name in enumerate("uv"):
        for length in (0.4, 1.0, 2.0, 3.5):
            places = np.arange(low[axis] + 0.3, high[axis] - 0.3, max(0.2, length / 6))
            some += [(Shape.CURVE, (float(p), length), number[name], sd) for p in places]
    return some


def _features(
    low: FloatArray, high: FloatArray, number: dict[str, int], side: float, usual: Usual
) -> tuple[list[Row], ...]:
    """Bumps, ruts and steps. side : of the largest tile, m: much narrower bumps do not show in its mean."""
    bumps: list[Row] = []
    offered = {s: 0.75 * s + 0.05 for s in BUMP_SIZES if s >= 0.4 * side}
    area = float(np.prod(high - low))
    wider = math.sqrt(max(sum(area / e**2 for e in offered.values()) / MOST_BUMPS, 1.0))
    for size, every in ((s, wider * e) for s, e in offered.items()):
        for u in np.arange(low[0], high[0] + every / 2, every):
            bumps += [
                (Shape.BUMP, (float(u), float(v), size), -1, usual.bump)
                for v in np.arange(low[1], high[1] + every / 2, every)
            ]
    ruts: list[Row] = [
        (Shape.RUT, (float(v), size), number["v"], usual.rut)
        for size in RUT_SIZES
        for v in np.arange(low[1], high[1], 0.6 * size)
    ]
    steps: list[Row] = [
        (Shape.STEP, (float(p), FACE), number[name], usual.step)
        for axis, name in enumerate("uv")
        for p in np.arange(low[axis] + 0.2, high[axis] - 0.2, 0.05)
    ]
    return bumps, ruts, steps


@dataclass(frozen=True, eq=False)
class Offered:
    """What the heights say of the columns that a model may have or not, after those in every model are taken
    out: their amplitudes are integrated over once a setting, not once a draw (block elimination of the
    normal equations). seen : of all columns; cross (a, c), what those in every model explain of the gram
    matrix; along, own (c,) what is left of ``Whitened.along`` and of the diagonal; sd (c,) m; first : the
    number of the first of these columns in the dictionary.  known : gains worked out before: most variables
    of a sweep are off, and ask the same of the same columns."""

    seen: Whitened | NormalEquations
    cross: FloatArray
    along: FloatArray
    own: FloatArray
    sd: FloatArray
    first: int
    known: dict[tuple[bytes, bytes], FloatArray] = field(default_factory=dict)

    @classmethod
    def of(cls, words: Dictionary, seen: Whitened | NormalEquations) -> Self:
        """Of every column of ``words``, seen through one setting."""
        a, sd = words.always, words.columns.sd
        always = seen.rows(np.arange(a))
        lower = linalg.cholesky(always[:, :a] + np.diag(1 / sd[:a] ** 2), lower=True, check_finite=False)
        cross = linalg.solve_triangular(lower, always[:, a:], lower=True, check_finite=False)
        fit = linalg.solve_triangular(lower, seen.along[:a], lower=True, check_finite=False)
        own = seen.norms[a:] - (cross**2).sum(axis=0)
        return cls(seen, cross, seen.along[a:] - cross.T @ fit, own, sd[a:], a)

    def gains(self, state: Sequence[int], index: IntArray | None = None) -> FloatArray:
        """Log of the factor by which each column, put beside those that are on, makes the heights likelier:
        1/2 t^2 / (v + 1/sd^2) - 1/2 log(1 + sd^2 v), t and v its own after the others are taken out.

        state : number in the dictionary of what each variable has taken, -1 for none.  index : of the columns
        asked for in the dictionary; all that are offered where None."""
        on = np.array(sorted({s - self.first for s in state if s >= 0}), dtype=np.int64)
        which = np.arange(len(self.sd)) if index is None else index - self.first
        key = on.tobytes(), which.tobytes()
        if key not in self.known:
            self.known[key] = self._gains(on, which)
        return self.known[key]

    def _gains(self, on: IntArray, which: IntArray) -> FloatArray:
        rows = self.seen.rows(self.first + on)[:, self.first :] - self.cross[:, on].T @ self.cross
        lower = linalg.cholesky(rows[:, on] + np.diag(1 / self.sd[on] ** 2), lower=True, check_finite=False)
        cross = linalg.solve_triangular(lower, rows[:, which], lower=True, check_finite=False)
        fit = linalg.solve_triangular(lower, self.along[on], lower=True, check_finite=False)
        t = self.along[which] - cross.T @ fit
        v = np.maximum(self.own[which] - (cross**2).sum(axis=0), 0.0)
        var = self.sd[which] ** 2
        gain = 0.5 * t * t / (v + 1 / var) - 0.5 * np.log1p(var * v)
        taken = np.zeros(len(self.sd), bool)
        taken[on] = True
        gain[taken[which]] = -math.inf
        return np.asarray(gain)


def taken_at_once(words: Dictionary, offered: Offered) -> list[int]:
    """What each variable takes before the chain starts, -1 for none: the best column, as long as it is
    sure."""
    state = [-1] * len(words.choices)
    for _ in range(len(words.choices) + MOST_SURE):
        gain = offered.gains(state)
        best, at, which = -math.inf, -1, -1
        for n, (index, odds) in enumerate(words.choices):
            if state[n] >= 0:
                continue
            score = gain[index - offered.first] + odds - words.none[n]
            k = int(np.argmax(score))
            if score[k] > best:
                best, at, which = float(score[k]), n, int(index[k])
        if best < SURE or at < 0:
            break
        state[at] = which
    return state


def likelier(words: Dictionary, seen: Whitened, state: Sequence[int], other: Sequence[int]) -> float:
    """By how much the shapes of ``other`` make heights likelier than those of ``state``, log."""
    columns = [columns_on(words, some) for some in (state, other)]
    one, more = (log_evidence(seen.taken(on), slice(None), 1 / words.columns.sd[on] ** 2) for on in columns)
    return more - one


def columns_on(words: Dictionary, state: Sequence[int]) -> IntArray:
    """(k,) columns that are on: those always there, and what each variable of the chain has taken."""
    return np.array([*range(words.always), *sorted({s for s in state if s >= 0})], dtype=np.int64)


def thinned(
    words: Dictionary, offered: Offered, state: Sequence[int]
) -> tuple[Dictionary, IntArray, list[int]]:
    """The dictionary with only what the heights speak for, the old columns' numbers, and the state in it."""
    gain = offered.gains(state)
    keep = np.zeros(len(words.columns), bool)
    keep[: words.always] = True
    keep[[s for s in state if s >= 0]] = True
    pools: dict[tuple[int, int], FloatArray] = {}
    for index, odds in words.choices:
        pools.setdefault((int(index[0]), len(index)), odds)
    for (first, size), odds in pools.items():
        index = np.arange(first, first + size)
        score = gain[index - offered.first] + odds
        score[~np.isfinite(score)] = math.inf
        keep[index[np.argsort(-score, kind="stable")[:KEPT]]] = True
    number = np.flatnonzero(keep)
    new = np.cumsum(keep) - 1
    choices, none = [], []
    for (index, odds), without in zip(words.choices, words.none, strict=True):
        on = keep[index]
        choices.append((new[index[on]], odds[on]))
        lost = float(np.exp(odds[~on]).sum())  # what is not offered any more counts as none
        none.append(math.log(math.exp(without) + lost))
    return (
        Dictionary(words.columns.take(number), words.always, tuple(choices), tuple(none)),
        number,
        [int(new[s]) if s >= 0 else -1 for s in state],
    )


def chain(
    words: Dictionary, told: Sequence[NormalEquations], log_weight: FloatArray, state: list[int], count: int,
    seed: int,
) -> list[tuple[int, IntArray]]:  # fmt: skip
    """``count`` draws of a setting (its number) and of which shapes there are (columns that are on).

    Shapes given the setting, one after the other, then the setting given the shapes: of all that are laid
    out by what they weigh, so that the chain never has to walk from one to the next.
    told : what the heights say of the columns through each setting.  log_weight (n,) : of each setting.
    """
    rng = np.random.default_rng([seed, 3])
    all_of = _AllSettings(words, told, log_weight)
    offered = [Offered.of(words, one) for one in told]
    visited: list[list[IntArray]] = [[] for _ in told]
    share = np.zeros(len(told))
    for number in range(BURN + EVERY * count):
        chances = all_of.log_chances(columns_on(words, state))
        setting = _drawn(chances, rng)
        _sweep(words, offered[setting], state, rng)
        if number >= BURN:
            visited[setting].append(columns_on(words, state))
            chances = np.exp(chances - chances.max())
            share += chances / chances.sum()
    # draws of each setting by its chances on the way, which scatter less than how often it was taken
    share[[not some for some in visited]] = 0.0
    many = np.diff(np.rint(count * np.cumsum([0.0, *share]) / share.sum()).astype(int))
    return [
        (k, some[int((n + 0.5) * len(some) / often)])
        for k, (some, often) in enumerate(zip(visited, many, strict=True))
        for n in range(often)
    ]


class _AllSettings:
    """log_evidence of the same columns through all settings at once."""

    def __init__(self, words: Dictionary, told: Sequence[NormalEquations], log_weight: FloatArray) -> None:
        self.gram, self.along = np.stack([t.gram for t in told]), np.stack([t.along for t in told])
        self.alone = log_weight + np.array([t.alone for t in told])
        self.precision = 1 / words.columns.sd**2

    def log_chances(self, on: IntArray) -> FloatArray:
        """(n,) but for a constant, given the columns that are on."""
        lower = np.linalg.cholesky(self.gram[:, on[:, None], on] + np.diag(self.precision[on]))
        fit = np.linalg.solve(lower, self.along[:, on, None])[..., 0]
        log_det = np.log(np.diagonal(lower, axis1=1, axis2=2)).sum(axis=1)
        return np.asarray(self.alone - log_det + 0.5 * (fit**2).sum(axis=1))


def _drawn(log_weight: FloatArray, rng: np.random.Generator) -> int:
    """One of them, by their weights."""
    weight = np.exp(log_weight - log_weight.max())
    return int(np.searchsorted(np.cumsum(weight), rng.random() * weight.sum()))


def _sweep(words: Dictionary, offered: Offered, state: list[int], rng: np.random.Generator) -> None:
    """Every variable drawn given all others."""
    for n, (index, odds) in enumerate(words.choices):
        state[n] = -1
        k = _drawn(np.append(offered.gains(state, index) + odds, words.none[n]), rng)
        state[n] = int(index[k]) if k < len(index) else -1
