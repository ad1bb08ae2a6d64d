"""The slab behind a scan: what it may be, drawn; its mean is the surface that is swept, cut and shown.

Given which shapes there are and which setting (``features``), amplitudes are normal and the slab's waves a
Gaussian field: both are drawn by Matheron's rule (Wilson et al., JMLR 22, 2021), each draw beside its
opposite. Nothing of the scan's own error is left in a draw, so the least gap over many places needs no
correction: the draws are what the slab may be, not the slab with errors on it.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import cached_property

import numpy as np
from numpy.typing import NDArray
from scipy import linalg

from crestcut.base.grid import FloatArray, GridFrame, HeightGrid, IntArray
from crestcut.base.parallel import in_threads
from crestcut.terrain.error.covariance import matern32
from crestcut.terrain.records import ErrorModel, Surface
from crestcut.terrain.slab.averages import MOST, Tiles, tiles_of
from crestcut.terrain.slab.between import along_axes, between_nodes, unit_field
from crestcut.terrain.slab.features import (
    YARD,
    Dictionary,
    Offered,
    Usual,
    chain,
    columns_on,
    dictionary_of,
    likelier,
    taken_at_once,
    thinned,
)
from crestcut.terrain.slab.kept import kept_of, narrow_part
from crestcut.terrain.slab.misfit import Misfit
from crestcut.terrain.slab.named import Feature, named
from crestcut.terrain.slab.noise import ALL, Noise
from crestcut.terrain.slab.settings import Score, laid_out
from crestcut.terrain.slab.shapes import TREND, Columns
from crestcut.terrain.slab.split import (
    WAVIEST,
    FieldPriors,
    NormalEquations,
    Setting,
    Whitened,
    curvature_of,
    squares,
)
from crestcut.terrain.slab.stretches import Near, Stretches, Whole, lasts, reach_of

# m of a stretch where settings are sought: wrong by some tenths of a nat on a usual slab, in a fourth of the
# time; to see where to look every third tile will do
COARSE, THIN = 1.0, 3
# settings are sought for the shapes that are sure at usual ones; where others are sure at those found, by so
# much of a log likelihood, they are sought again
TRIES, MUCH = 3, 10.0
LONG = 0.70  # m: a shorter break is a feature, not a part of the trend
KEPT_TO, MOST_HELD = 10.0, 6_000_000  # m; distances of nodes from tiles that are kept, not reckoned anew


@dataclass(frozen=True)
class Fineness:
    """How finely a slab is judged: tiles aimed at; lattice, m between the nodes on which waves are reckoned,
    or half a tile where that is more; pairs of draws, each with its opposite, and the settings (rounds) that
    they are shared among: an end beyond which one draw in twenty lies hangs on those that are drawn there."""

    tiles: int = MOST
    lattice: float = 0.20
    pairs: int = 100
    rounds: int = 20


FINE = Fineness()


@dataclass(frozen=True)
class Split:
    """Whose the waves are, m: sd over the tiles of what is seen about the trend, of the slab's waves in it
    and of the rest, the scan's; medians of the draws, and 90 % of what the slab's may be.

    slab_length, scan_length : where the covariance of each is one half, m.
    curvature : of slab and scan together over a foot, 1 sd, m.
    beyond_concrete : that is more than any concrete under such a scan has, or the slab's own is more than any
        concrete's (``FieldPriors.most_curvature``, ``WAVIEST``): what was scanned is no slab, or not so."""

    seen: float
    slab: float
    scan: float
    slab_range: tuple[float, float]
    slab_length: float
    scan_length: float
    curvature: float
    beyond_concrete: bool


@dataclass(frozen=True, eq=False)
class Posterior:
    """Draws of the slab over one frame. columns : (q) shapes that any draw has; amplitude (q, d) of each, 0
    where a draw has it not.  waves : (d, rows, columns) on ``lattice``, m.  Draws d / 2 apart are each
    other's opposites about the mean of their model."""

    frame: GridFrame
    columns: Columns
    amplitude: FloatArray
    lattice: GridFrame
    waves: NDArray[np.float32]
    split: Split
    features: tuple[Feature, ...]

    @cached_property
    def spread(self) -> float:
        """How far a draw lies off the mean, 1 sd in m, planes taken out: they move no clearance."""
        places = self.frame.to_grid(self.lattice.node_xy().reshape(-1, 2))
        plane = np.linalg.qr(np.column_stack([np.ones(len(places)), places]))[0].astype(np.float32)
        away = self.deviations(places)
        away -= plane @ (plane.T @ away)
        return float(np.sqrt((away.astype(np.float64) ** 2).mean()))

    @property
    def count(self) -> int:
        """Draws."""
        return self.amplitude.shape[1]

    def at_site(self, xy: FloatArray) -> NDArray[np.float32]:
        """``deviations`` at site x, y (n, 2), m."""
        return self.deviations(self.frame.to_grid(xy))

    def moved(self, sums: FloatArray, steps: FloatArray) -> tuple[Posterior, Posterior]:
        """Every draw moved along its covariance with weighted sums of draws: first the draws, then the change
        of their mean (one draw).

        sums (m, d) : of every draw less the mean, m (``covariance.sums_of``).  steps (m, d) : their inverse
        covariance times the miss, 1/m.
        """
        own = sums.T @ steps / self.count  # (d, d): each draw's change as a sum of deviations
        away = self.amplitude - self.amplitude.mean(axis=1, keepdims=True)
        waves = self.waves.reshape(self.count, -1)
        still = waves - waves.mean(axis=0)
        amplitude = self.amplitude + away @ own
        shifted = waves + own.T.astype(np.float32) @ still
        new = replace(self, amplitude=amplitude, waves=shifted.reshape(self.waves.shape))
        change = own.mean(axis=1)
        middle = (change.astype(np.float32) @ still).reshape(1, *self.lattice.shape)
        return new, replace(self, amplitude=(away @ change)[:, None], waves=middle)

    def taken(self, which: IntArray) -> Posterior:
        """The draws of these numbers (d,), which may come more than once."""
        return replace(self, amplitude=self.amplitude[:, which], waves=self.waves[which])

    def mean_over(self, frame: GridFrame) -> FloatArray:
        """(ny, nx) mean of all draws on a frame with the same origin and axes, m, but for the level."""
        return _mean(self, frame, 0.0)

    def deviations(self, uv: FloatArray) -> NDArray[np.float32]:
        """(n, d) every draw less the mean of all, m, at grid u, v (n, 2) of ``frame``, m."""
        away = (self.amplitude - self.amplitude.mean(axis=1, keepdims=True)).astype(np.float32)
        out: NDArray[np.float32] = self.columns.at(uv).astype(np.float32) @ away
        waves = self.waves - self.waves.mean(axis=0, dtype=np.float64).astype(np.float32)
        out += between_nodes(self.lattice, uv) @ waves.reshape(self.count, -1).T
        return out


def judge(
    surface: Surface, error: ErrorModel, priors: FieldPriors, seed: int = 0, usual: Usual = YARD,
    fine: Fineness = FINE,
) -> tuple[Posterior, HeightGrid] | None:  # fmt: skip
    """What the slab may be, given heights fitted to a scan, and its mean where the heights are; None where
    fewer tiles are measured than a trend has amplitudes.

    surface : as fitted; nodes that are not rollable keep their heights.  error : of the scan: its patch at
    most, no more is taken than the heights show.  usual : of the slab's shapes.
    """
    height = surface.height
    breaks = tuple(b for b in surface.breaks if b.length >= LONG)
    tiles = tiles_of(height, surface.rollable, breaks, fine.tiles)
    if len(tiles) <= len(TREND) + 2 * len(breaks):
        return None
    level = Noise.of(tiles, surface.standard_error, error.patch, error.patch_length)
    own = level.sd
    heights = (Stretches if lasts(height.frame) else Whole).of(tiles, level)
    every = dictionary_of(tiles, breaks, usual)
    middle = float(tiles.mean.mean())
    y = tiles.mean - middle
    apart = max(fine.lattice, 0.5 * float(tiles.side.max()))
    taken: list[int] | None = None
    setting = priors.setting(np.zeros(4))
    for _ in range(TRIES):
        seen = heights.whiten_shapes(setting, every.columns, y)
        offered = Offered.of(every, seen)
        found = taken_at_once(every, offered)
        if taken is not None and likelier(every, seen, taken, found) < MUCH:
            break
        taken = found
        words, number, state = thinned(every, offered, taken)
        table = words.columns.at(tiles.uv, tiles.spread)
        misfit = Misfit.of(words, seen.taken(number), state, apart)
        del offered, seen  # as large as what was offered
        on = columns_on(words, state)
        beside, shapes = heights.beside(misfit.covariance), (table[:, on], 1 / words.columns.sd[on] ** 2)
        likely, rough = (
            _likelihood(tiles, level, misfit, priors, y, shapes, some)
            for some in (ALL, slice(None, None, THIN))
        )
        laid = laid_out(likely, rough, priors.wavier, fine.rounds, seed)
        setting = priors.setting(laid.top)
    settings = [priors.setting(z) for z in laid.z]
    told, roots = zip(*in_threads(lambda setting: _told(beside, setting, table, y), settings), strict=True)
    draws = _Draws(words, table, _Observed(tiles, y, heights), misfit, height.frame, apart, seed)
    drawn = chain(words, told, laid.log_weight, state, fine.pairs, seed)
    for k, setting in enumerate(settings):
        models = [on for which, on in drawn if which == k]
        if models:
            seen = roots[k] or beside.whiten(setting, table[:, :0], y)
            draws.add(setting, told[k], seen, models)
    posterior = draws.posterior(priors)
    mean = _mean(posterior, height.frame, middle)
    of_scan = posterior.split
    own = float(np.hypot(own, of_scan.scan * narrow_part(of_scan.scan_length)))
    away = height.values - mean
    kept = kept_of(away, surface.rollable, height.frame.cell, own, error.patch_length, surface.standard_error)
    whole = np.where(surface.rollable, mean + kept, height.values)
    return posterior, height.like(np.where(height.measured, whole, np.nan))


def _likelihood(
    tiles: Tiles, level: Noise, misfit: Misfit, priors: FieldPriors, y: FloatArray,
    shapes: tuple[FloatArray, FloatArray], some: slice,
) -> Score:  # fmt: skip
    """Of some of the tiles, given shapes: their columns (n, k) and 1 / sd^2 (k,)."""
    part = Stretches.of(tiles.taken(some), level.taken(some), COARSE).beside(misfit.covariance)
    return part.single().likelihood(priors, shapes[0][some], y[some], shapes[1])


def _told(
    heights: Whole | Stretches, setting: Setting, table: FloatArray, y: FloatArray
) -> tuple[NormalEquations, Whitened | None]:
    """What the heights say of the columns; the root of their covariance, if that is not as long as a lane."""
    seen = heights.whiten(setting, table, y)
    return seen.equations(), seen.bare() if isinstance(heights, Whole) else None


@dataclass(frozen=True, eq=False)
class _Observed:
    """Tiles, y (n,) their heights about some level, m, and of what neither field is among them."""

    tiles: Tiles
    y: FloatArray
    noise: Whole | Stretches


class _Draws:
    """Amplitudes and waves drawn, setting by setting."""

    def __init__(
        self, words: Dictionary, table: FloatArray, seen: _Observed, misfit: Misfit, frame: GridFrame,
        apart: float, seed: int,
    ) -> None:  # fmt: skip
        self.words, self.table, self.tiles, self.y = words, table, seen.tiles, seen.y
        self.white = seen.noise.drawn()
        self.frame, self.lattice, self.rng = frame, _lattice(frame, apart), np.random.default_rng([seed, 4])
        own = replace(self.lattice, origin=(0.0, 0.0), angle=0.0)  # wherever the site is, the same digits
        self.nodes = own.node_xy().reshape(-1, 2)
        self.misfit = misfit
        self.near = seen.noise.near(self.nodes)
        each = [(near, near.within(KEPT_TO)) for near in self.near]
        many = sum(len(near.nodes) * len(self.tiles.side[some]) for near, some in each)
        self.held = [self._apart(*pair) for pair in each] if many <= MOST_HELD else None
        self.settings: list[Setting] = []
        self.amplitude: list[FloatArray] = []  # each (m, 2 k): draws, then their opposites
        self.waves: list[FloatArray] = []  # each (nodes, 2 k)

    def add(
        self, setting: Setting, told: NormalEquations, seen: Whitened, models: Sequence[IntArray]
    ) -> None:
        """A pair of draws for each model (the columns that are on). told : of all columns; seen : heights,
        whatever columns are with them."""
        n, count, precision = len(self.tiles), len(models), 1 / self.words.columns.sd**2
        amplitude = np.zeros((len(self.words.columns), 2 * count))
        for i, on in enumerate(models):
            gram = told.gram[np.ix_(on, on)] + np.diag(precision[on])
            lower = linalg.cholesky(gram, lower=True, check_finite=False)
            best = linalg.cho_solve((lower, True), told.along[on])
            away = linalg.solve_triangular(lower, self.rng.standard_normal(len(on)), lower=True, trans=1)
            amplitude[on, i], amplitude[on, count + i] = best + away, best - away
        places = np.vstack([self.tiles.uv, self.nodes])
        slab = setting.slab * unit_field(setting.slab_length, places, self.rng, count)
        slab += self.misfit.draw(places, self.rng, count)
        scan = setting.scan * unit_field(setting.scan_length, self.tiles.uv, self.rng, count)
        own = slab[:n] + scan + self.white(self.rng, count)
        rest = self.y[:, None] - self.table @ amplitude - np.concatenate([own, -own], axis=1)
        solved = seen.solve(rest)
        reach = reach_of(setting, solved)
        waves = np.concatenate([slab[n:], -slab[n:]], axis=1)
        for number, near in enumerate(self.near):
            some = near.within(reach)
            if self.held is None or len(self.tiles.side[some]) > self.held[number][0].shape[1]:
                away, cross = self._apart(near, some)
            else:
                away, cross = (a[:, : len(self.tiles.side[some])] for a in self.held[number])
            of_slab = setting.slab**2 * matern32(away, setting.slab_length)
            waves[near.nodes] += (of_slab + cross) @ solved[some]
        self.settings.extend([setting] * count)
        self.amplitude.append(amplitude)
        self.waves.append(waves)

    def _apart(self, near: Near, some: IntArray | slice) -> tuple[FloatArray, FloatArray]:
        """Distances (k, n), m, of some nodes of the lattice from some tiles, and the misfit's covariance."""
        nodes, tiles = self.nodes[near.nodes], self.tiles.uv[some]
        square = squares(nodes, tiles, np.zeros(len(nodes)), self.tiles.spread[some])
        return np.sqrt(square), self.misfit.covariance(nodes, tiles, square)

    def posterior(self, priors: FieldPriors) -> Posterior:
        """All draws together, opposites in the second half."""
        amplitude, waves = (_opposites_last(a) for a in (self.amplitude, self.waves))
        used = np.flatnonzero((amplitude != 0).any(axis=1))
        rest = self.y[:, None] - self.table @ amplitude
        own = between_nodes(self.lattice, self.tiles.uv) @ waves
        seen, slab, scan = (np.std(v, axis=0) for v in (rest, own, rest - own))
        lengths = np.median([(s.slab_length, s.scan_length) for s in self.settings], axis=0)
        low, high = np.quantile(slab, [0.05, 0.95])
        bend = np.array([s.curvatures for s in self.settings])
        both = float(np.median(np.hypot(*bend.T)))
        beyond = both > priors.most_curvature or np.median(bend[:, 0]) > curvature_of(WAVIEST)
        split = Split(
            float(np.median(seen)), float(np.median(slab)), float(np.median(scan)), (float(low), float(high)),
            float(lengths[0]), float(lengths[1]), both, bool(beyond),
        )  # fmt: skip
        shape = (waves.shape[1], *self.lattice.shape)
        return Posterior(
            self.frame, self.words.columns.take(used), amplitude[used], self.lattice,
            # in one order, or sums over draws read back from a record have other last digits
            waves.T.reshape(shape).astype(np.float32, order="C"), split,
            tuple(named(self.words, amplitude)),
        )  # fmt: skip


def _opposites_last(several: list[FloatArray]) -> FloatArray:
    halves = [np.split(a, 2, axis=1) for a in several]
    return np.concatenate([h[0] for h in halves] + [h[1] for h in halves], axis=1)


def _lattice(frame: GridFrame, apart: float) -> GridFrame:
    """Nodes ``apart`` m over the frame, from its first node on, in its own axes."""
    columns, rows = (int(np.ceil(s / apart - 1e-9)) + 1 for s in frame.size)
    return GridFrame(frame.origin, frame.angle, apart, (rows, columns))


def _mean(posterior: Posterior, frame: GridFrame, level: float) -> FloatArray:
    """(ny, nx) mean of all draws, m."""
    waves = posterior.waves.mean(axis=0, dtype=np.float64)
    shapes = posterior.columns.over(frame, posterior.amplitude.mean(axis=1))
    return level + shapes + along_axes(waves, posterior.lattice.cell, frame)
