"""Whose are the waves that a scan shows: the slab's or its own? What the heights themselves say of it.

What is seen is y = X b + s + e + noise: a trend X b (planes, gentle curves, breaks, features), the slab's
waves s, the scan's warp e, both Gaussian fields with Matern-3/2 covariance (Rasmussen & Williams, Gaussian
Processes for Machine Learning, 2006, equation 4.17), and what is left of patch and white noise in a tile's
mean. Only s + e is seen, so data bound the sum and priors split it; where the two have other lengths, or
the scan's error is known from repeats, data split it too. The trend's amplitudes are integrated out with
their own priors (ibid. section 2.7; the flat limit is kriging with a trend, Cressie, Statistics for Spatial
Data, 1993, section 3.4).
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import cached_property
from typing import Self

import numpy as np
from scipy import linalg, special
from scipy.linalg import lapack

from crestcut.base.grid import BoolArray, FloatArray, IntArray
from crestcut.terrain.error.covariance import matern32
from crestcut.terrain.error.shown import of_second_difference
from crestcut.terrain.slab.averages import Tiles
from crestcut.terrain.slab.shapes import Columns

USUAL_FLATNESS = 25.0  # F_F: ACI 117-10 'moderately flat', what a floated slab mostly is
# F_F of the waviest concrete: 12 is the least that a part of the least class may have (ACI 117-10: 20,
# locally 3/5 of it), and a yard is taken to be twice as wavy as a floor at its worst (common practice, no
# source)
WAVIEST = 6.0
FOOT = 0.3048  # m
SLAB_LENGTH, SLAB_LENGTH_FACTOR = 0.8, 1.6  # m where the slab's covariance is one half, 1 sd as a factor
SCAN_LENGTH_FACTOR = 1.5
SHORTEST, LONGEST = 0.2, 3.0  # m
# of a scan whose scanner is not known: from a level to a phone within two sd (common practice, no source)
ANY_WARP, ANY_FACTOR, ANY_LENGTH = 0.0030, 2.2, 0.4  # m, 1 sd as a factor, m
AT_ONCE, ROWS = 1000, 64  # columns, and rows of a covariance, made at a time
LEAST = 2e-5  # m: no field is smaller
# of the variance, on the diagonal of a covariance from single distances: the rounding of so many tiles (6e-8
# of each entry) moves no eigenvalue by as much, and that of more by more
ROUNDED, TOGETHER = 3e-6, 300


@dataclass(frozen=True)
class FieldPriors:
    """Before anything is seen: medians, and 1 sd as a factor.

    curvature : sd of the slab's second difference over a foot, m (``curvature_of``).  warp : of the scan, sd
    in m.  warp_length : m, where its covariance is one half.  doubt : chance that the scanner is none of the
    kind named; then ``any_warp``, ``any_factor`` and ``any_length`` say what a scan's warp may be.
    """

    curvature: float
    curvature_factor: float
    warp: float
    warp_factor: float
    warp_length: float
    doubt: float = 0.0
    any_warp: float = ANY_WARP
    any_factor: float = ANY_FACTOR
    any_length: float = ANY_LENGTH

    @property
    def most_curvature(self) -> float:
        """Of concrete and scan together, over a foot, 1 sd in m: the waviest concrete under a scan whose warp
        is one of its own sd above its median. Beyond it is no slab (a lawn, gravel), or no scan of one."""
        scan = [(self.warp * self.warp_factor, self.warp_length)]
        if self.doubt > 0:
            scan.append((self.any_warp * self.any_factor, self.any_length))
        most = max(w * np.sqrt(curvature_variance(h)) for w, h in scan)
        return float(np.hypot(curvature_of(WAVIEST), most))

    def setting(self, z: FloatArray) -> Setting:
        """What four standard normals (slab sd, its length, scan sd, its length) stand for."""
        own = float(np.clip(SLAB_LENGTH * SLAB_LENGTH_FACTOR ** z[1], SHORTEST, LONGEST))
        bend = self.curvature * self.curvature_factor ** z[0]
        slab = max(float(bend / np.sqrt(curvature_variance(own))), LEAST)
        scan, other = self._scan(float(z[2]))
        middle = self.warp_length ** (1 - other) * self.any_length**other
        length = float(np.clip(middle * SCAN_LENGTH_FACTOR ** z[3], SHORTEST, LONGEST))
        return Setting(slab, own, max(scan, LEAST), length)

    def wavier(self, z: FloatArray) -> BoolArray:
        """(n,) where z (n, 4) has the slab's waves larger than the scan's: either may be taken for the
        other."""
        settings = [self.setting(one) for one in z]
        return np.array([s.slab > s.scan for s in settings])

    def _scan(self, z: float) -> tuple[float, float]:
        """The warp, m, at a standard normal's quantile z of the two priors mixed by ``doubt``, and the chance
        that a scan of such a warp is none of the kind named."""
        if self.doubt == 0:
            return self.warp * self.warp_factor**z, 0.0
        at, wide = np.log([max(self.warp, LEAST), self.any_warp]), np.log([self.warp_factor, self.any_factor])
        share = np.array([1 - self.doubt, self.doubt])
        below = special.ndtr(z)
        low, high = float((at + z * wide).min()), float((at + z * wide).max())
        for _ in range(40):
            middle = 0.5 * (low + high)
            short = float(share @ special.ndtr((middle - at) / wide)) < below
            low, high = (middle, high) if short else (low, middle)
        density = share / wide * np.exp(-0.5 * ((low - at) / wide) ** 2)
        return float(np.exp(low)), float(density[1] / density.sum())


def curvature_of(flatness: float) -> float:
    """Second difference over 12 in, 1 sd in m, of a floor of F-number F_F: F_F = 4.57 / (3 s + |m|), inches,
    here with no mean curvature m (ASTM E1155; the constant from memory)."""
    return 4.57 / (3 * flatness) * 0.0254


def curvature_variance(half_at: float) -> float:
    """Variance of z(x - l) - 2 z(x) + z(x + l), l a foot, of a field of unit variance."""
    return of_second_difference(FOOT, half_at)


def matern_of_square(square: FloatArray, half_at: float) -> FloatArray:
    """Matern-3/2 correlation at distances whose squares (m2) are given, one half at ``half_at`` m."""
    return matern32(np.sqrt(square), half_at)


@dataclass(frozen=True)
class Setting:
    """One pair of fields: sd and length (m, where covariance is one half) of slab and scan."""

    slab: float
    slab_length: float
    scan: float
    scan_length: float

    @property
    def curvatures(self) -> tuple[float, float]:
        """Of slab and scan over a foot, 1 sd in m."""
        slab, scan = (curvature_variance(h) for h in (self.slab_length, self.scan_length))
        return self.slab * float(np.sqrt(slab)), self.scan * float(np.sqrt(scan))


def squares(a: FloatArray, b: FloatArray, a_spread: FloatArray, b_spread: FloatArray) -> FloatArray:
    """(n, m) squared distances, m2, that a tile's mean has to another's: middles apart plus the spread of
    places in both, two axes each. Exact for a Gaussian covariance of small tiles; keeps any positive."""
    out = np.subtract.outer(a[:, 0], b[:, 0])
    other = np.subtract.outer(a[:, 1], b[:, 1])
    out *= out
    out += np.multiply(other, other, out=other)
    other[...] = a_spread[:, None] + b_spread
    out += np.multiply(other, 2.0, out=other)
    return np.asarray(out)


def covariance(setting: Setting, square: FloatArray, noise: FloatArray) -> FloatArray:
    """(n, n), m2, of the tiles' means about the trend, its lower triangle alone, columns together as it is
    decomposed; noise (n, n) m2, of what neither field is."""
    upper = np.zeros(square.shape)
    for first in range(0, len(square), ROWS):  # so few at a time stay near the processor
        rows = slice(first, first + ROWS)
        apart, out = np.sqrt(square[rows, first:]), upper[rows, first:]
        np.multiply(matern32(apart, setting.slab_length), setting.slab**2, out=out)
        out += setting.scan**2 * matern32(apart, setting.scan_length)
        out += noise[rows, first:]
    upper.flat[:: len(upper) + 1] += LEAST**2
    if square.dtype == np.float32:
        rounded = ROUNDED * max(len(upper) / TOGETHER, 1.0)
        upper.flat[:: len(upper) + 1] += rounded * (setting.slab**2 + setting.scan**2)
    return upper.T


def covariance_between(setting: Setting, square: FloatArray, noise: FloatArray) -> FloatArray:
    """(n, m), m2, of the means of some tiles with those of others: as ``covariance``."""
    apart = np.sqrt(square)
    out = setting.slab**2 * matern32(apart, setting.slab_length) + noise
    out += setting.scan**2 * matern32(apart, setting.scan_length)
    return np.asarray(out)


@dataclass(frozen=True, eq=False)
class Whitened:
    """Columns and heights seen through one setting: white (n, m) = L^-1 B, along (m,) = B' K^-1 y, own =
    y' K^-1 y, log_det of K; root (n (n + 1) / 2,): L, the Cholesky factor of K, without what is zero in it
    (rectangular full packed: Gustavson et al., ACM Trans. Math. Software 37, 2010)."""

    white: FloatArray
    along: FloatArray
    own: float
    log_det: float
    root: FloatArray

    @cached_property
    def gram(self) -> FloatArray:
        """(m, m) B' K^-1 B."""
        return self.white.T @ self.white

    @property
    def norms(self) -> FloatArray:
        """(m,) diagonal of ``gram``."""
        return np.asarray(np.einsum("nc,nc->c", self.white, self.white))

    def rows(self, index: IntArray) -> FloatArray:
        """(k, m) of ``gram``, which is not made for them where there are more columns than tiles."""
        wide = self.white.shape[1] > len(self.white)
        return self.white[:, index].T @ self.white if wide else self.gram[index]

    def solve(self, rest: FloatArray) -> FloatArray:
        """(n, c) K^-1 of rest (n, c)."""
        solved, _ = lapack.dpftrs(len(rest), self.root, rest, uplo="L")
        return np.asarray(solved)

    def bare(self) -> Self:
        """Without the columns: what draws of a setting ask for later on."""
        return replace(self, white=self.white[:, :0].copy(), along=self.along[:0])

    def taken(self, index: IntArray) -> Self:
        """Some of the columns."""
        return replace(self, white=self.white[:, index], along=self.along[index])

    def equations(self) -> NormalEquations:
        """What is left of it once the heights are taken in."""
        return NormalEquations(self.gram, self.along, -0.5 * (self.log_det + self.own))


@dataclass(frozen=True, eq=False)
class NormalEquations:
    """Of the columns through one setting: gram (m, m), along (m,) as of ``Whitened``; alone : log likelihood,
    but for a constant, of the heights with no column."""

    gram: FloatArray
    along: FloatArray
    alone: float

    @property
    def norms(self) -> FloatArray:
        """(m,) diagonal of ``gram``."""
        return np.diag(self.gram)

    def rows(self, index: IntArray) -> FloatArray:
        """(k, m) of ``gram``."""
        return self.gram[index]


def whiten(setting: Setting, square: FloatArray, noise: FloatArray, b: FloatArray, y: FloatArray) -> Whitened:
    """b (n, m) columns; y (n,) heights, m."""
    both = np.empty((len(b), b.shape[1] + 1), order="F")  # as the library wants it: no copy of a large table
    both[:, :-1], both[:, -1] = b, y
    return whitened(covariance(setting, square, noise), both)


def columns_at(columns: Columns, tiles: Tiles, y: FloatArray) -> FloatArray:
    """(n, m + 1) columns at tiles and their heights y, made some at a time: a long lane offers many."""
    both = np.empty((len(tiles), len(columns) + 1), order="F")
    for first in range(0, len(columns), AT_ONCE):
        some = np.arange(first, min(first + AT_ONCE, len(columns)))
        both[:, some] = columns.take(some).at(tiles.uv, tiles.spread)
    both[:, -1] = y
    return both


def whitened(k: FloatArray, both: FloatArray) -> Whitened:
    """k (n, n) covariance, both (n, m + 1) columns and heights; either is written over."""
    lower = linalg.cholesky(k, lower=True, overwrite_a=True, check_finite=False)
    both = linalg.solve_triangular(lower, both, lower=True, overwrite_b=True, check_finite=False)
    w, v = both[:, :-1], both[:, -1]
    log_det = 2 * float(np.log(np.diag(lower)).sum())
    return Whitened(w, w.T @ v, float(v @ v), log_det, lapack.dtrttf(lower, uplo="L")[0])


def log_evidence(seen: Whitened, index: FloatArray | slice, precision: FloatArray) -> float:
    """Log marginal likelihood, but for a constant, of the columns ``index`` with amplitudes of mean 0 and
    these 1 / sd^2."""
    gram = seen.gram[index][:, index] + np.diag(precision)
    lower = linalg.cholesky(gram, lower=True, check_finite=False)
    fit = linalg.solve_triangular(lower, seen.along[index], lower=True, check_finite=False)
    log_det = 2 * float(np.log(np.diag(lower)).sum()) - float(np.log(precision).sum())
    return -0.5 * (seen.log_det + log_det + seen.own - float(fit @ fit))
