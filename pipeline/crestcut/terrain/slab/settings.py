"""Settings of the two fields laid out where the heights leave them likely, each with its weight.

Four numbers (sd and length of slab and scan) are integrated over by importance sampling from normals that
are fitted to what was weighed so far, all of it weighed together (adaptive multiple importance sampling:
Cornuet, Marin, Mira & Robert, Scandinavian Journal of Statistics 39, 2012). Places are those of an additive
recurrence, which fill more evenly than drawn ones (Niederreiter, Random Number Generation and Quasi-Monte
Carlo Methods, 1992, chapter 3). Nothing is accepted or refused on the way: where last digits differ, as from
one processor to another, the first normals do by where a climb ends, and what is integrated by little.
"""

from __future__ import annotations

import itertools
from collections.abc import Callable, Sequence
from dataclasses import dataclass

import numpy as np
from scipy import special

from crestcut.base.grid import BoolArray, FloatArray
from crestcut.base.parallel import in_threads

DIMENSIONS = 4
ROUGH, FIRST = 48, 32  # places of the prior that are tried roughly, and again with the first normals
STEPS, FARTHEST, BEND = 30, 8.0, 0.1  # uphill from the best of either side; sd of the prior
MORE, LEAST_ROUNDS, MOST_ROUNDS = 24, 3, 8  # places of the normals fitted, each time
WIDENED = 0.6  # power of the posterior by which settings are chosen: other shapes than the first want others
LEAST = 0.25  # of them on either side
FEW, ENOUGH = 8.0, 24.0  # places that count: weights are flattened below it; no further round is made above
# of the covariance: a normal somewhat wide costs little where one too narrow misses all; m of z that stays
WIDE, FLOOR = 1.4, 0.05
TAILS = 2.5  # of what a hill's top says of its foot: one that is missed is missed by all that follows
# the root of x^5 = x + 1, whose powers keep their multiples farthest apart in four dimensions (Roberts, The
# unreasonable effectiveness of quasirandom sequences, 2018, from memory)
RATIO = 1.1673039782614187

Score = Callable[[FloatArray], float]
Side = Callable[[FloatArray], BoolArray]


def evenly(first: int, count: int, shift: FloatArray) -> FloatArray:
    """(count, 4) standard normal quantiles at places first .. of an even filling of the unit cube, all moved
    by shift (4,), 0..1: what other places would have given shows from one shift to another (Cranley &
    Patterson, SIAM J. Numerical Analysis 13, 1976)."""
    steps = np.outer(np.arange(first + 1, first + count + 1), RATIO ** -np.arange(1.0, DIMENSIONS + 1))
    return np.asarray(special.ndtri(np.clip(np.mod(shift + steps, 1.0), 1e-9, 1 - 1e-9)))


@dataclass(frozen=True, eq=False)
class Laid:
    """z (n, 4) standard normals under the prior; log_weight (n,) : to it the log likelihood is added, and the
    sum is the log of each one's share in the posterior, but for a constant.  top (4,) : the likeliest."""

    z: FloatArray
    log_weight: FloatArray
    top: FloatArray


@dataclass(frozen=True, eq=False)
class _Normal:
    mean: FloatArray
    root: FloatArray

    def log_density(self, z: FloatArray) -> FloatArray:
        """(n,) but for a constant, at z (n, 4)."""
        away = np.linalg.solve(self.root, (z - self.mean).T)
        return np.asarray(-0.5 * (away**2).sum(axis=0) - np.log(np.diag(self.root)).sum())

    def places(self, first: int, count: int, shift: FloatArray) -> FloatArray:
        """(count, 4) of it, as ``evenly``."""
        return self.mean + evenly(first, count, shift) @ self.root.T


@dataclass(frozen=True, eq=False)
class _Mixture:
    """Normals, and how many places of each."""

    parts: Sequence[tuple[_Normal, int]]

    def log_density(self, z: FloatArray) -> FloatArray:
        """(n,) but for a constant, at z (n, 4)."""
        each = np.stack([normal.log_density(z) + np.log(many) for normal, many in self.parts])
        return np.asarray(np.logaddexp.reduce(each, axis=0))

    def places(self, first: int, shift: FloatArray) -> FloatArray:
        """(n, 4) of it all."""
        firsts = first + np.cumsum([0, *(many for _, many in self.parts)])
        return np.concatenate([
            normal.places(int(k), many, shift) for (normal, many), k in zip(self.parts, firsts, strict=False)
        ])  # fmt: skip


PRIOR = _Normal(np.zeros(DIMENSIONS), np.eye(DIMENSIONS))


def laid_out(score: Score, rough: Score, side: Side, count: int, seed: int = 0) -> Laid:
    """``count`` settings, or fewer, where prior and heights together are likely.

    score : log likelihood, but for a constant, at z (4,); several at once are asked for.  rough : a cheap
    one, as that of some of the heights, by which it is seen where to look.  side : of places (n, 4) which of
    two kinds they are of. The posterior may have a hill on either side with nothing between, and what has
    not been looked at is not found: each side has a normal of its own, and some of the places.
    """
    shift = np.random.default_rng([seed, 2]).random(DIMENSIONS)
    z = PRIOR.places(0, ROUGH, shift)
    seen, on = np.array(in_threads(rough, z)) + PRIOR.log_density(z), side(z)
    starts = [z[some][np.argmax(seen[some])] for some in (on, ~on) if some.any()]
    hills = in_threads(lambda start: _hill(rough, start), starts)
    parts = [(PRIOR, FIRST), *((hill, MORE // len(hills)) for hill in hills)]
    mixed, newest = _Mixture(parts), _Mixture(parts)
    z, tried = np.empty((0, DIMENSIONS)), np.empty(0)
    for number in range(MOST_ROUNDS):
        some = newest.places(len(z), shift)
        z, tried = np.concatenate([z, some]), np.concatenate([tried, in_threads(score, some)])
        log_weight = tried + PRIOR.log_density(z) - mixed.log_density(z)
        if number >= LEAST_ROUNDS - 1 and _counting(log_weight) >= ENOUGH:
            break
        newest = _Mixture(_by_sides(z, log_weight, side(z)))
        mixed = _Mixture([*mixed.parts, *newest.parts])
    return _chosen(z, tried, log_weight, side(z), count)


def _chosen(z: FloatArray, tried: FloatArray, log_weight: FloatArray, on: BoolArray, count: int) -> Laid:
    """``count`` of the places tried or fewer, one at each step of what lies below in the posterior somewhat
    widened, in an order in which neighbours are alike (systematic resampling: Kitagawa, J. Comp. Graph.
    Statistics 5, 1996): what a hill weighs is told by all of its places, not by the few that are kept."""
    share = np.exp(WIDENED * (log_weight - log_weight.max()))
    mean = share @ z / share.sum()
    main = np.linalg.eigh((share * (z - mean).T) @ (z - mean))[1][:, -1]
    order = np.lexsort((z @ main, on))
    below = np.cumsum(share[order]) / share.sum()
    taken, often = np.unique(
        order[np.searchsorted(below, (np.arange(count) + 0.5) / count)], return_counts=True
    )
    rest = (1 - WIDENED) * log_weight[taken] - tried[taken]
    return Laid(z[taken], np.log(often) + rest, z[np.argmax(tried + PRIOR.log_density(z))])


def _by_sides(z: FloatArray, log_weight: FloatArray, on: BoolArray) -> list[tuple[_Normal, int]]:
    """A normal for each side that has places enough to fit one, and of ``MORE`` places as many as the side
    weighs, at least ``LEAST``."""
    sides = [some for some in (on, ~on) if some.sum() >= FEW]
    weight = np.array([float(np.logaddexp.reduce(log_weight[some])) for some in sides])
    share = np.clip(np.exp(weight - np.logaddexp.reduce(weight)), LEAST, 1 - LEAST)
    return [
        (_fitted(z[some], log_weight[some]), round(MORE * (part if len(sides) > 1 else 1.0)))
        for some, part in zip(sides, share, strict=True)
    ]


def _hill(score: Score, start: FloatArray) -> _Normal:
    """The normal at the top of the hill on which ``start`` (4,) lies, by its bend there (Laplace)."""
    from scipy import optimize  # a run that takes up its slab climbs nothing

    down = lambda z: 0.5 * float(z @ z) - score(z)  # noqa: E731
    found = optimize.minimize(down, start, method="L-BFGS-B", bounds=[(-FARTHEST, FARTHEST)] * DIMENSIONS,
                              options={"maxiter": STEPS, "eps": 0.03, "ftol": 1e-6})  # fmt: skip
    top, h = np.asarray(found.x), BEND * np.eye(DIMENSIONS)
    least = down(top)
    bend = np.diag([down(top + h[i]) + down(top - h[i]) - 2 * least for i in range(DIMENSIONS)])
    for i, j in itertools.combinations(range(DIMENSIONS), 2):
        both = down(top + h[i] + h[j]) + down(top - h[i] - h[j]) - 2 * least
        bend[i, j] = bend[j, i] = 0.5 * (both - bend[i, i] - bend[j, j])
    size, axes = np.linalg.eigh(bend / BEND**2)
    spread = np.clip(1 / np.maximum(size, 1e-9), FLOOR**2, 1.0)  # no wider than the prior
    return _Normal(top, np.linalg.cholesky(TAILS * (axes * spread) @ axes.T))


def _counting(log_weight: FloatArray) -> float:
    """How many of the places count: (sum w)^2 / sum w^2 (Kish, 1965)."""
    weight = np.exp(log_weight - log_weight.max())
    return float(weight.sum() ** 2 / (weight**2).sum())


def _fitted(z: FloatArray, log_weight: FloatArray) -> _Normal:
    """Mean and covariance of weighed places (n, 4), weights flattened until ``FEW`` of them count."""
    while _counting(log_weight) < FEW:
        log_weight = 0.8 * log_weight
    weight = np.exp(log_weight - log_weight.max())
    weight /= weight.sum()
    mean = weight @ z
    away = z - mean
    spread = WIDE * (away * weight[:, None]).T @ away + FLOOR**2 * np.eye(DIMENSIONS)
    return _Normal(mean, np.linalg.cholesky(spread))
