"""How a real hump differs from the round bump that stands in for it: a field of its own about each.

The dictionary offers round bumps of a few sizes at places some way apart; concrete makes humps of any form.
What a form leaves is neither the slab's waves, which are everywhere and longer, nor the scan's error: it is
the model's own discrepancy (Kennedy & O'Hagan, J. R. Statist. Soc. B 63, 2001), a Gaussian field about zero
that lives where the hump does and grows with its height. An accurate scan tells it; under a poor one it stays
open.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Self

import numpy as np
from scipy import linalg

from crestcut.base.grid import FloatArray
from crestcut.terrain.slab.between import unit_field
from crestcut.terrain.slab.features import Dictionary, columns_on
from crestcut.terrain.slab.shapes import Shape
from crestcut.terrain.slab.split import Whitened, matern_of_square

# of a bump's height, 1 sd: half a step beside the places that are offered leaves a quarter of it at the most,
# a hump half as long again one way a fifth, a cosine's square a twentieth
SHARE = 0.2
REACH = 1.75  # of a bump's size: 1 sd of how far about its middle the misfit reaches
LENGTH = 0.8  # of a bump's size, where the misfit's covariance is one half


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
        gram = seen.gram[np.ix_(on, on)] + np.diag(1 / columns.sd[on] ** 2)
        height = linalg.solve(gram, seen.along[on], assume_a="pos")
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
            out += sd[:, None] * unit_field(LENGTH * size, places, rng, count)
        return out

    def covariance(self, a: FloatArray, b: FloatArray, square: FloatArray) -> FloatArray:
        """(n, m) m2 between places a (n, 2) and b (m, 2), apart by the root of ``square`` (n, m) m2."""
        out = np.zeros(square.shape)
        for size, one, other in zip(self.size, self.sds(a).T, self.sds(b).T, strict=True):
            out += one[:, None] * matern_of_square(square, LENGTH * size) * other
        return out
