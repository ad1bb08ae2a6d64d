"""The slab behind a scan: what it may be, drawn; its mean is the surface that is swept, cut and shown.

Given which shapes there are and which setting (``features``), amplitudes are normal and the slab's waves a
Gaussian field: both are drawn by Matheron's rule (Wilson et al., JMLR 22, 2021), each draw beside its
opposite. Nothing of the scan's own error is left in a draw, so the least gap over many places needs no
correction: the draws are what the slab may be, not the slab with errors on it.
"""

from __future__ import annotations

from collections.abc import Iterator
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
    PRESENT,
    YARD,
    Dictionary,
    Offered,
    Usual,
    chain,
    columns_on,
    dictionary_of,
    taken_at_once,
    thinned,
)
from crestcut.terrain.slab.kept import kept_of, narrow_part
from crestcut.terrain.slab.misfit import Misfit
from crestcut.terrain.slab.shapes import TREND, Columns, Shape
from crestcut.terrain.slab.split import (
    LEAST,
    WAVIEST,
    FieldPriors,
    Sample,
    Setting,
    Settings,
    Whitened,
    curvature_of,
    matern_of_means,
    matern_of_square,
    squares,
    whiten,
)

LONG = 0.70  # m: a shorter break is a feature, not a part of the trend
COLUMNS = 0.05  # m between the nodes on which wide shapes are reckoned
AT_ONCE = 4096  # nodes reckoned at a time: so many of every shape stay near the processor
NARROW = 0.30  # m: shapes narrower than this are reckoned at every node
SHARED = 0.06  # m: side of the square whose points make one fitted height
MOST_WITHIN = 10  # nodes on a tile's side that are enough to tell what it shows
ALIKE = 0.15  # m: shapes of one kind no farther apart are one feature


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


@dataclass(frozen=True, eq=False)
class Feature:
    """A real feature that most draws have: kind, (2,) grid u, v of its middle in m, NaN along its line;
    height m (of a hump above zero, of a step the far side over the near one), size m, chance 0..1."""

    kind: Shape
    at: tuple[float, float]
    height: float
    size: float
    chance: float


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
    noise, own = _noise(tiles, surface.standard_error, error.patch, error.patch_length)
    words = dictionary_of(tiles, breaks, usual)
    square = squares(tiles.uv, tiles.uv, tiles.spread, tiles.spread)
    level = float(tiles.mean.mean())
    y = tiles.mean - level
    table = words.columns.at(tiles.uv, tiles.spread)
    seen = whiten(priors.setting(np.zeros(4)), square, noise, table, y)
    offered = Offered.of(words, seen)
    words, number, state = thinned(words, offered, taken_at_once(words, offered))
    table, apart = table[:, number], max(fine.lattice, 0.5 * float(tiles.side.max()))
    on = columns_on(words, state)
    misfit = Misfit.of(words, seen.taken(number), state, apart)
    del offered, seen  # as large as what was offered
    beside = noise + misfit.covariance(tiles.uv, tiles.uv, square)
    sample = Sample.of(tiles, beside, y, seed)
    settings = Settings(sample, priors, table[:, on], 1 / words.columns.sd[on] ** 2, seed)
    through = lambda s: whiten(s, square, beside, table, y)  # noqa: E731
    each = -(-fine.pairs // fine.rounds)
    draws = _Draws(words, table, _Observed(tiles, y, noise), misfit, height.frame, apart, seed)
    for drawn in chain(words, table, settings, through, state, fine.rounds, each, seed):
        draws.add(*drawn)
    posterior = draws.posterior(priors)
    mean = _mean(posterior, height.frame, level)
    of_scan = posterior.split
    own = float(np.hypot(own, of_scan.scan * narrow_part(of_scan.scan_length)))
    away = height.values - mean
    kept = kept_of(away, surface.rollable, height.frame.cell, own, error.patch_length, surface.standard_error)
    whole = np.where(surface.rollable, mean + kept, height.values)
    return posterior, height.like(np.where(height.measured, whole, np.nan))


def _noise(
    tiles: Tiles, standard_error: HeightGrid, patch: float, patch_length: float
) -> tuple[FloatArray, float]:
    """(n, n) covariance of the tiles' means by patch and white noise, m2, and the sd of both at a node, m.

    What the heights show within tiles bounds it: an exact scan has no patch, whoever made it.
    """
    se2 = float(np.nanmedian(standard_error.values**2)) if np.isfinite(standard_error.values).any() else 0.0
    side, per = float(np.median(tiles.side)), int(np.sqrt(np.median(tiles.nodes)))
    own = float(patch**2)
    if per > 1:
        within, free = _within(side, min(per, MOST_WITHIN), 0.5 * patch_length)
        # median of a mean square of so many over its mean (Wilson & Hilferty, PNAS 17, 1931)
        middle = (1 - 2 / (9 * free)) ** 3
        own = min(own, max(float(np.median(tiles.fine)) / middle - 0.5 * se2, 0.0) / within)
    apart = ((tiles.uv[:, None, :] - tiles.uv[None, :, :]) ** 2).sum(axis=-1)
    noise = own * matern_of_means(apart, tiles.spread[:, None] + tiles.spread[None, :], 0.5 * patch_length)
    noise.flat[:: len(noise) + 1] += se2 / (1 + (tiles.side / SHARED) ** 2)
    return noise, float(np.sqrt(own + se2))


def _within(side: float, per: int, half_at: float) -> tuple[float, float]:
    """What share of a patch's variance its nodes, ``per`` by ``per`` in a tile of ``side`` m, show about a
    plane through them, and how many free ones that mean square is worth."""
    at = (np.arange(per) + 0.5) * side / per
    places = np.stack(np.meshgrid(at, at), axis=-1).reshape(-1, 2)
    plane = np.linalg.qr(np.column_stack([np.ones(len(places)), places]))[0]
    none = np.zeros(len(places))
    away = np.eye(len(places)) - plane @ plane.T
    rest = away @ matern_of_square(squares(places, places, none, none), half_at) @ away
    return float(np.trace(rest)) / (len(places) - 3), float(np.trace(rest) ** 2 / (rest**2).sum())


@dataclass(frozen=True, eq=False)
class _Observed:
    """Tiles, y (n,) their heights about some level, m, and noise (n, n) m2, what neither field is."""

    tiles: Tiles
    y: FloatArray
    noise: FloatArray


class _Draws:
    """Amplitudes and waves drawn, setting by setting."""

    def __init__(
        self, words: Dictionary, table: FloatArray, seen: _Observed, misfit: Misfit, frame: GridFrame,
        apart: float, seed: int,
    ) -> None:  # fmt: skip
        tiles, noise = seen.tiles, seen.noise
        self.words, self.table, self.tiles, self.y = words, table, tiles, seen.y
        self.root = linalg.cholesky(noise + LEAST**2 * np.eye(len(noise)), lower=True)
        self.frame, self.lattice, self.rng = frame, _lattice(frame, apart), np.random.default_rng([seed, 4])
        own = replace(self.lattice, origin=(0.0, 0.0), angle=0.0)  # wherever the site is, the same digits
        self.nodes = own.node_xy().reshape(-1, 2)
        square = squares(self.nodes, tiles.uv, np.zeros(len(self.nodes)), tiles.spread)
        self.misfit, self.cross = misfit, misfit.covariance(self.nodes, tiles.uv, square)
        self.away = np.sqrt(square)
        self.settings: list[Setting] = []
        self.amplitude: list[FloatArray] = []  # each (m, 2 k): draws, then their opposites
        self.waves: list[FloatArray] = []  # each (nodes, 2 k)

    def add(self, setting: Setting, seen: Whitened, models: list[IntArray]) -> None:
        """A pair of draws for each model (the columns that are on)."""
        n, count, precision = len(self.tiles), len(models), 1 / self.words.columns.sd**2
        amplitude = np.zeros((len(self.words.columns), 2 * count))
        for i, on in enumerate(models):
            gram = seen.gram[np.ix_(on, on)] + np.diag(precision[on])
            lower = linalg.cholesky(gram, lower=True, check_finite=False)
            best = linalg.cho_solve((lower, True), seen.along[on])
            away = linalg.solve_triangular(lower, self.rng.standard_normal(len(on)), lower=True, trans=1)
            amplitude[on, i], amplitude[on, count + i] = best + away, best - away
        places = np.vstack([self.tiles.uv, self.nodes])
        slab = setting.slab * unit_field(setting.slab_length, places, self.rng, count)
        slab += self.misfit.draw(places, self.rng, count)
        scan = setting.scan * unit_field(setting.scan_length, self.tiles.uv, self.rng, count)
        white = self.root @ self.rng.standard_normal((n, count))
        own = slab[:n] + scan + white
        rest = self.y[:, None] - self.table @ amplitude - np.concatenate([own, -own], axis=1)
        solved = linalg.cho_solve((seen.lower, True), rest, check_finite=False)
        cross = setting.slab**2 * matern32(self.away, setting.slab_length) + self.cross
        self.settings.extend([setting] * count)
        self.amplitude.append(amplitude)
        self.waves.append(cross @ solved + np.concatenate([slab[n:], -slab[n:]], axis=1))

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
            tuple(_features(self.words, amplitude)),
        )  # fmt: skip


def _opposites_last(several: list[FloatArray]) -> FloatArray:
    halves = [np.split(a, 2, axis=1) for a in several]
    return np.concatenate([h[0] for h in halves] + [h[1] for h in halves], axis=1)


def _lattice(frame: GridFrame, apart: float) -> GridFrame:
    """Nodes ``apart`` m over the frame, from its first node on, in its own axes."""
    columns, rows = (int(np.ceil(s / apart - 1e-9)) + 1 for s in frame.size)
    return GridFrame(frame.origin, frame.angle, apart, (rows, columns))


def _features(words: Dictionary, amplitude: FloatArray) -> Iterator[Feature]:
    """Humps, hollows, ruts and steps that most draws have; near-same shapes count as one."""
    columns = words.columns
    for kind in (Shape.BUMP, Shape.RUT, Shape.STEP):
        index = np.flatnonzero((columns.kind == kind) & (amplitude != 0).any(axis=1))
        places = 2 if kind == Shape.BUMP else 1
        while len(index):
            has = amplitude[index] != 0
            first = index[int(np.argmax(has.sum(axis=1)))]
            size = float(columns.sizes[first, places])
            apart = np.abs(columns.sizes[index, :places] - columns.sizes[first, :places])
            near = (apart <= max(size, ALIKE)).all(axis=1) & (columns.line[index] == columns.line[first])
            some = has[near].any(axis=0)
            chance = float(some.mean())
            if chance >= PRESENT:
                height = float(amplitude[index[near]][:, some].sum(axis=0).mean())
                yield Feature(kind, _place(columns, int(first)), height, size, chance)
            index = index[~near]


def _place(columns: Columns, number: int) -> tuple[float, float]:
    """Grid u, v of a shape's middle, m; NaN where it runs right across the slab."""
    u, v = columns.sizes[number, :2]
    if columns.kind[number] == Shape.BUMP:
        return float(u), float(v)
    line = columns.lines[columns.line[number]]
    if len(line.at) > 1:
        middle = line.at[len(line.at) // 2]
        return float(middle[0]), float(middle[1])
    along_u = abs(np.sin(line.normal[0])) > abs(np.cos(line.normal[0]))
    return (float("nan"), float(u)) if along_u else (float(u), float("nan"))


def _mean(posterior: Posterior, frame: GridFrame, level: float) -> FloatArray:
    """(ny, nx) mean of all draws, m: wide shapes and waves between coarse nodes, narrow ones at all."""
    mean = posterior.amplitude.mean(axis=1)
    ny, nx = frame.shape
    uv = np.stack(np.meshgrid(np.arange(nx) * frame.cell, np.arange(ny) * frame.cell), axis=-1).reshape(-1, 2)
    sizes = posterior.columns
    narrow = np.isin(sizes.kind, (Shape.HINGE, Shape.HINGE_ALONG, Shape.ACROSS, Shape.STEP))
    narrow |= (sizes.kind == Shape.CURVE) & (sizes.sizes[:, 1] < NARROW)
    narrow |= (sizes.kind == Shape.RUT) & (sizes.sizes[:, 1] < 0.5 * NARROW)
    out = np.full(len(uv), level)
    columns_, rows = (int(np.ceil(s / COLUMNS - 1e-9)) + 1 for s in frame.size)
    places = np.stack(np.meshgrid(np.arange(columns_) * COLUMNS, np.arange(rows) * COLUMNS), axis=-1)
    places = places.reshape(-1, 2)
    values = sizes.take(np.flatnonzero(~narrow)).sums(places, mean[~narrow])
    waves = posterior.waves.mean(axis=0, dtype=np.float64).ravel()
    values += between_nodes(posterior.lattice, places) @ waves
    out += np.asarray(along_axes(values.reshape(rows, columns_), COLUMNS, frame)).ravel()
    on = np.flatnonzero(narrow)
    if len(on):
        some, by = sizes.take(on), mean[on]
        parts = [slice(first, first + AT_ONCE) for first in range(0, len(uv), AT_ONCE)]
        out += np.concatenate(in_threads(lambda part: some.sums(uv[part], by), parts))
    return out.reshape(ny, nx)
