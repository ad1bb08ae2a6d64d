"""Strings over two equal blocks as evidence about the ground: read at a place, or where the slab comes
nearest.

The least distance is not a sum of heights: which place is nearest differs from draw to draw. What goes along
with it on average does so through the average of its gradients (Stein's lemma, Cov(e, h(e)) = Cov(e) E[grad
h] for Gaussian e; Stein, Annals of Statistics 9, 1981): every place counts by how likely it is to be nearest.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

import numpy as np

from crestcut.base.errors import CrestcutError
from crestcut.base.grid import FloatArray, IntArray
from crestcut.base.units import millimetres
from crestcut.job import Point, StringReading
from crestcut.terrain.error.covariance import between
from crestcut.terrain.error.draws import WHITE_LENGTH
from crestcut.terrain.readings.records import Evidence, Reading
from crestcut.terrain.records import Surface

Resolve = Callable[[Point], tuple[float, float]]
PLACINGS = 256  # places tried about the stated ones
SAME = 0.015  # m: places written nearer to each other than this are one chalk mark, and off by the same
STRING_WEIGHT = 0.00685  # N/m: 0.24 mm of sag over 2.9 m at 30 N
PULL = 30.0  # N, the pull the sheet asks for
PROUD = 4.0  # warps by which a slab must stand over a string before it is said that it would touch
STEP = 0.01  # m along a string between places where it may be least
BY_BLOCKS = 0.02  # share of a string at either end, where a block is
TRIED = 400  # draws of the error along a string: where the least may be
TINY = 1e-5  # m, that keeps a covariance positive in rounding
FAR = 5.0  # standard deviations by which a place may be further down and still be looked at


@dataclass(frozen=True, eq=False)
class _Strung:
    """One string on the plan. ends (2, 2) site m; share (k,) of the way from a to b where it is read; marks:
    indices of the chalk marks under a, b and, for one that is read at a place, that place."""

    name: str
    string: StringReading
    ends: FloatArray
    share: FloatArray
    marks: IntArray

    @property
    def least(self) -> bool:
        """Was it read where the distance is least, and not at a place?"""
        return self.string.at is None


def strings_evidence(
    strings: Sequence[StringReading], surface: Surface, resolve: Resolve, seed: int = 0
) -> Evidence | None:
    """The distance from each string down to the slab; None if there are none.

    Places are only so well known: the expected distances, and how their errors go together, come from trying
    places about the stated ones. At a crest that mistake is one-sided, 20 mm on an 18 % break being worth
    1.4 mm on average. A place that several strings share moves for all of them alike: what a block stands too
    low by on a mark, the distance read there is too long by, and the two cancel.
    Raises CrestcutError for a place off the ground of the scan, and for a string that the slab would touch.
    """
    if not strings:
        return None
    named = [(f"[[string]] {k + 1}", s) for k, s in enumerate(strings)]
    places = [_places(name, s, resolve) for name, s in named]
    marks, placed = _chalk_marks(places, strings)
    first = np.cumsum([0, *(len(p) for p in places)])
    strung = [
        _Strung(name, s, p[:2], _shares(s, p), marks[a:b])
        for (name, s), p, a, b in zip(named, places, first[:-1], first[1:], strict=True)
    ]
    rng = np.random.default_rng([seed, len(strings)])
    moves = rng.normal(0.0, 1.0, (PLACINGS, len(placed), 2)) * placed[:, None]
    readings, tried = [], []
    for one in strung:
        down = _down(surface, one, np.zeros((len(placed), 2)))
        _check(one, down, surface)
        moved = _nearest(_down(surface, one, moves))
        seen = ~np.isnan(moved)
        exactly = float(_nearest(down))
        # too much of it off the scan: nothing is learnt of its places but how well they are known
        lost = seen.sum() <= PLACINGS // 2
        tried.append(
            exactly + rng.normal(0.0, one.string.placed, PLACINGS) if lost
            else np.where(seen, moved, moved[seen].mean())
        )  # fmt: skip
        predicted = exactly if lost else float(tried[-1].mean())
        readings.append(_reading(one, down, surface, predicted, exactly, rng))
    noise = np.atleast_2d(np.cov(np.array(tried), bias=True)) + np.diag([s.within**2 for s in strings])
    return Evidence(tuple(readings), noise)


def _places(name: str, string: StringReading, resolve: Resolve) -> FloatArray:
    """Site x, y of a, b and the place read, if it is one: (2 or 3, 2), m."""
    a, b = np.array(resolve(string.a)), np.array(resolve(string.b))
    length = float(np.hypot(*(b - a)))
    if string.at is None:
        if string.between is not None and not string.between[1] <= length:
            raise CrestcutError(
                f"between ends at {string.between[1]:.3f} m on a string of {length:.3f} m",
                name,
                "measure it from a towards b",
            )
        return np.array([a, b])
    if not 0 < string.at < length:
        raise CrestcutError(
            f"at is {string.at:.3f} m on a string of {length:.3f} m", name, "measure it from a towards b"
        )
    return np.array([a, b, a + string.at / length * (b - a)])


def _shares(string: StringReading, places: FloatArray) -> FloatArray:
    length = float(np.hypot(*(places[1] - places[0])))
    if string.at is not None:
        return np.array([string.at / length])
    low, high = (0.0, length) if string.between is None else string.between
    low, high = max(low / length, BY_BLOCKS), min(high / length, 1 - BY_BLOCKS)
    return np.linspace(low, high, max(int((high - low) * length / STEP), 20))


def _chalk_marks(
    places: Sequence[FloatArray], strings: Sequence[StringReading]
) -> tuple[IntArray, FloatArray]:
    """Which chalk mark each place is, in order, and how well each is known, 1 sd, m."""
    marks: list[FloatArray] = []
    placed: list[float] = []
    index = []
    for these, string in zip(places, strings, strict=True):
        for xy in these:
            near = [k for k, mark in enumerate(marks) if np.hypot(*(xy - mark)) < SAME]
            if not near:
                marks.append(xy)
                placed.append(string.placed)
            index.append(near[0] if near else len(marks) - 1)
            placed[index[-1]] = max(placed[index[-1]], string.placed)
    return np.array(index), np.array(placed)


def _down(surface: Surface, one: _Strung, moves: FloatArray) -> FloatArray:
    """(..., k) distance from the string down to the fitted slab where it is read, m; moves : (..., marks, 2)
    of the chalk marks from where they are said to be, m."""
    ends = one.ends + moves[..., one.marks[:2], :]
    share, run = one.share, ends[..., 1, :] - ends[..., 0, :]
    length = np.hypot(run[..., 0], run[..., 1])[..., None]
    if one.least:
        under = ends[..., :1, :] + share[:, None] * run[..., None, :]
    else:
        at = one.ends[0] + share[:, None] * (one.ends[1] - one.ends[0])
        under = at + moves[..., one.marks[2:3], :]
        along = ((under - ends[..., :1, :]) @ run[..., None])[..., 0]
        share = np.clip(along / length**2, 0.0, 1.0)
    # parabola: w L^2 / 8 T in the middle
    sag = STRING_WEIGHT * length**2 / (8 * PULL) * 4 * share * (1 - share)
    high = surface.height.sample(ends)
    over = high[..., :1] * (1 - share) + high[..., 1:] * share + one.string.blocks - sag
    return np.asarray(over - surface.height.sample(under), dtype=np.float64)


def _nearest(down: FloatArray) -> FloatArray:
    """(...) least of what is known along the last axis; NaN where nothing is."""
    least = np.where(np.isnan(down), np.inf, down).min(axis=-1)
    return np.where(np.isinf(least), np.nan, least)


def _check(one: _Strung, down: FloatArray, surface: Surface) -> None:
    least = float(_nearest(down))
    if np.isnan(least):
        raise CrestcutError(
            "an end of the string, or the slab under it, lies where the scan has no ground",
            one.name,
            "move it onto scanned slab",
        )
    if least < -max(PROUD * surface.error.warp, 0.010):
        raise CrestcutError(
            f"the slab would touch this string: it stands {millimetres(-least)} over it",
            one.name,
            "use higher blocks",
        )


def _reading(
    one: _Strung,
    down: FloatArray,
    surface: Surface,
    predicted: float,
    exactly: float,
    rng: np.random.Generator,
) -> Reading:
    what = "the distance under the string"
    keep = np.flatnonzero(~np.isnan(down))
    under = one.ends[0] + one.share[keep, None] * (one.ends[1] - one.ends[0])
    drawn = _changes(np.vstack([one.ends, under]), one.share[keep], surface, rng)
    near = np.flatnonzero(down[keep] <= exactly + FAR * float(drawn.std()))
    share, down, under, drawn = one.share[keep][near], down[keep][near], under[near], drawn[near]
    chance, fair = _least_of(down, drawn)
    points = np.vstack([one.ends, under])
    weights = np.array([chance @ (1 - share), chance @ share, *-chance])
    said = (one.name, what, points, weights, error_at(surface, points), predicted, one.string.down)
    if not one.least:
        return Reading(*said)
    said = (*said[:5], predicted + fair - exactly, one.string.down)
    return Reading(*said, exactly=fair, along=np.column_stack([share, down]))


def _changes(points: FloatArray, share: FloatArray, surface: Surface, rng: np.random.Generator) -> FloatArray:
    """(k, TRIED) drawn errors of the distance at each place, m, half of them the opposites of the others;
    points : both ends, then the places."""
    apart = np.sqrt(((points[:, None] - points[None]) ** 2).sum(axis=-1))
    se = error_at(surface, points)
    own = between(surface.error, points, points)
    own += se[:, None] * se * np.maximum(1 - apart / WHITE_LENGTH, 0.0)  # along a line a valid covariance
    root = np.linalg.cholesky(own + TINY**2 * np.eye(len(own)))
    error = root @ rng.standard_normal((len(own), TRIED // 2))
    change = (1 - share)[:, None] * error[0] + share[:, None] * error[1] - error[2:]
    return np.concatenate([change, -change], axis=1)


def _least_of(down: FloatArray, change: FloatArray) -> tuple[FloatArray, float]:
    """How likely each place is to be the nearest, and the least that is to be expected: the draws' mean."""
    each = down[:, None] + change
    chance = np.bincount(each.argmin(axis=0), minlength=len(down)) / change.shape[1]
    return chance, float(each.min(axis=0).mean())


def error_at(surface: Surface, points: FloatArray) -> FloatArray:
    """White part of the fitted height at each point, 1 sd, m; zero where nothing is measured, and where the
    slab was judged: it is in its draws."""
    if surface.error.slab is not None:
        return np.zeros(len(points))
    return np.nan_to_num(surface.standard_error.sample(points))
