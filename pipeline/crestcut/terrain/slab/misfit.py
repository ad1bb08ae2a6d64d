"""How a real hump differs from the round bump that stands in for it: a field of its own about each.

The dictionary offers round bumps of a few sizes at places some way apart; concrete makes humps of any form.
What a form leaves is neither the slab's waves, which are everywhere and longer, nor the scan's error: it is
the model's own discrepancy (Kennedy & O'Hagan, J. R. Statist. Soc. B 63, 2001), a Gaussian field about zero
that lives where the hump does and grows with its height. An accurate scan tells it; under a poor one it stays
open. It is as smooth as the forms are that it stands for (squared exponential): a rougher one would leave
doubt between the tiles of a floor that is known exactly.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Self

import numpy as np
from scipy import linalg

from crestcut.base.grid import FloatArray, GridFrame
from crestcut.terrain.slab.between import between_nodes
from crestcut.terrain.slab.features import Dictionary, columns_on
from crestcut.terrain.slab.shapes import Shape
from crestcut.terrain.slab.split import Whitened

# of a bump's height, 1 sd: half a step beside the places that are offered leaves a quarter of it at the most,
# a hump half as long again one way a fifth, a cosine's square a twentieth
SHARE = 0.15
REACH = 1.75  # of a bump's size: 1 sd of how far about its middle the misfit reaches
LENGTH = 1.2  # of a bump's size, where the misfit's covariance is one half
HALF = 1.1774100225154747  # exp(-x^2 / 2) = 1/2
FINE, JITTER = 4.0, 1e-9  # nodes of a draw to that length; on the diagonal, of the variance


@dataclass(frozen=True, eq=False)
class Misfit:
    """About k humps. at (k, 2) grid u, v of their middles, size (k,), sd (k,) at the middle; m."""

    at: FloatArray
    size: FloatArray
    sd: FloatArray

    @classmethod
    def of(cls, words: Dictionary, seen: Whitened, state: list[int], apart: float) -> Self:
        """Of the bumps that are on, heights as they are seen. apart : m between the nodes on which the slab's
        waves are reckoned: of a smaller bump they cannot carry any."""
        on, columns = columns_on(words, state), words.columns
        told = seen.taken(on)
        height = linalg.solve(told.gram + np.diag(1 / columns.sd[on] ** 2), told.along, assume_a="pos")
        bump = (columns.kind[on] == Shape.BUMP) & (columns.sizes[on, 2] >= apart)
        sizes = columns.sizes[on[bump]]
        return cls(sizes[:, :2], sizes[:, 2], SHARE * np.abs(height[bump]))

    def sds(self, uv: FloatArray) -> FloatArray:
        """(n, k) 1 sd of each at uv (n, 2), m."""
        square = ((uv[:, None, :] - self.at) ** 2).sum(axis=-1)
        return np.asarray(self.sd * np.exp(-0.5 * square / (REACH * self.size) ** 2))

    def draw(self, places: FloatArray, rng: np.random.Generator, count: int) -> FloatArray:
        """(n, count) of all humps together at places (n, 2), m."""
        out = np.zeros((len(places), count))
        for size, sd in zip(self.size, self.sds(places).T, strict=True):
            out += sd[:, None] * _smooth(LENGTH * size, places, rng, count)
        return out

    def covariance(self, a: FloatArray, b: FloatArray, square: FloatArray) -> FloatArray:
        """(n, m) m2 between places a (n, 2) and b (m, 2), apart by the root of ``square`` (n, m) m2."""
        out = np.zeros(square.shape)
        for size, one, other in zip(self.size, self.sds(a).T, self.sds(b).T, strict=True):
            out += one[:, None] * np.exp(-0.5 * square * (HALF / (LENGTH * size)) ** 2) * other
        return out


def _smooth(half_at: float, places: FloatArray, rng: np.random.Generator, count: int) -> FloatArray:
    """(n, count) draws of a squared-exponential field of unit variance at places (n, 2), m, its covariance
    one half at ``half_at`` m: drawn on a grid, where it is the product of one factor an axis, cubic
    between."""
    step = half_at / FINE
    low, high = places.min(axis=0), places.max(axis=0)
    rows, columns = (int(np.ceil(s / step)) + 1 for s in (high - low)[::-1])
    drawn = rng.standard_normal((rows, columns, count))
    for axis, nodes in enumerate((rows, columns)):
        apart = np.subtract.outer(np.arange(nodes), np.arange(nodes)) * (HALF / FINE)
        root = linalg.cholesky(np.exp(-0.5 * apart**2) + JITTER * np.eye(nodes), lower=True)
        drawn = np.moveaxis(np.tensordot(root, drawn, (1, axis)), 0, axis)
    coarse = GridFrame((float(low[0]), float(low[1])), 0.0, step, (rows, columns))
    flat = np.ascontiguousarray(drawn.reshape(rows * columns, count))
    return np.asarray(between_nodes(coarse, places - low) @ flat, dtype=np.float64)
