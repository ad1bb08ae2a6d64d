"""Heights along hinges: the shape on which a ridge agrees is taken off the points, what is left is smoothed
as everywhere else, and the shape is put back.

What is left of a crest whose place, rounding and fold are known is as plain as the slab beside it, so the
plain fit serves there too, with the bandwidth that the points ask for: wide where only noise is left, narrow
where the slab undulates or where the shape does not suit. No fixed window has to tell noise, undulation and
fold apart.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass, replace

import numpy as np
from scipy import sparse
from scipy.spatial import cKDTree

from crestcut.base.grid import FloatArray
from crestcut.base.kernels import njit
from crestcut.terrain.breaklines.hinge import HINGE, P_D, P_E, P_G, P_H, P_K, TINY
from crestcut.terrain.breaklines.ridges import SPACING, BreakPoints
from crestcut.terrain.heights.local import CellMeans
from crestcut.terrain.heights.plain import HALVES, fit_plain

ACROSS, ALONG = 0.85, 0.10  # a knot's say: of its half window, m
# columns of one knot of a ridge
_COLUMN, _ROW, _ANGLE, _D, _G, _K, _FOLD, _RHO, _PLACE_SD, _RHO_SD, _HALF = range(11)
# what a cell keeps of the knots beside it
SAY, V, E, RHO, COS, SIN, PLACE_VAR, RHO_VAR, HALF = range(9)


@dataclass(frozen=True, eq=False)
class Crests:
    """What hinges say, per lattice cell: ``say``, 0 where none speaks; height, m, and its variance, m2; and
    of the ridge with the most weight ``shape`` (..., 9), its columns named above.

    Where ridges meet, each counts by its say over the variance of what it left to be smoothed: a shape that
    does not suit leaves a narrow window."""

    say: FloatArray
    height: FloatArray
    variance: FloatArray
    shape: FloatArray

    def columns(self, some: slice) -> Crests:
        """Of some columns of the lattice."""
        return Crests(self.say[:, some], self.height[:, some], self.variance[:, some], self.shape[:, some])

    @classmethod
    def none(cls, shape: tuple[int, ...]) -> Crests:
        """Where nothing folds."""
        say, height, variance = (np.zeros(shape) for _ in range(3))
        return cls(say, height, variance, np.zeros((*shape, 9)))


def smooth_crests(knots: BreakPoints, means: CellMeans, inflation: float) -> Crests:
    """Every ridge of hinges in a box around it."""
    mask, pitch = means.mask, means.pitch
    out = Crests.none(mask.shape)
    total, most = np.zeros(mask.shape), np.zeros(mask.shape)
    for ridge in _ridges(knots, pitch):
        band = ACROSS * float(ridge[:, _HALF].max()) + HALVES[0]
        reach = math.ceil(math.hypot(band, ALONG) / pitch) + 1
        box = tuple(
            slice(max(0, math.floor(at.min()) - reach), min(size, math.ceil(at.max()) + reach + 1))
            for at, size in zip((ridge[:, _ROW], ridge[:, _COLUMN]), mask.shape, strict=True)
        )
        ridge[:, [_ROW, _COLUMN]] -= [s.start for s in box]
        sums = np.zeros((*mask[box].shape, 9))
        _spread(ridge, band, pitch, sums)
        on = sums[..., SAY] > 0
        m = sums / np.maximum(sums[..., SAY:V], 1e-12)
        bend = m[..., E] * np.sqrt(m[..., V] ** 2 + m[..., RHO] ** 2 + TINY**2)
        across = np.maximum(1 - (m[..., V] / np.maximum(ACROSS * m[..., HALF], 1e-9)) ** 2, 0.0)
        say = np.where(on & mask[box], across**2 * np.minimum(sums[..., SAY], 1.0), 0.0)
        at = say > 0
        left = replace(
            means,
            count=np.where(on, means.count[box], 0.0),
            z=np.where(on, means.z[box] - bend, 0.0),
            mask=at,
        )
        rest, sd, _ = fit_plain(left, inflation)
        weight = np.where(at, say / np.maximum(sd, 1e-12) ** 2, 0.0)
        m[..., SAY] = say
        stronger = weight > most[box]
        out.shape[box][stronger], most[box][stronger] = m[stronger], weight[stronger]
        out.say[box][at] += say[at]
        total[box] += weight
        out.height[box][at] += (weight * (rest + bend))[at]
        out.variance[box][at] += (weight * (sd**2 + _shape_variance(m)))[at]
    spoken = total > 0
    for values in (out.height, out.variance):
        values[spoken] /= np.maximum(total[spoken], 1e-300)
    return out


def _shape_variance(m: FloatArray) -> FloatArray:
    """Variance of height from what is not known of the shape, m2. The line's own error moves both sides
    against each other: of sign v, 1 - 3/2 |v| / H is what heights and slopes leave. That of the rounding
    lowers the top."""
    v = np.abs(m[..., V])
    side = np.maximum(0.0, 1 - 1.5 * v / np.maximum(m[..., HALF], 1e-9))
    top = np.sqrt(v * v + m[..., RHO_VAR]) - v
    out: FloatArray = m[..., E] ** 2 * (side**2 * m[..., PLACE_VAR] + top**2)
    return out


def _ridges(knots: BreakPoints, pitch: float) -> Iterator[FloatArray]:
    """Hinge knots of one ridge after the other, (m, 11), all of them facing the same way."""
    on = np.flatnonzero(knots.model == HINGE)
    if not len(on):
        return
    p = knots.params[on]
    rows = np.column_stack(
        [knots.place[on], p[:, [P_D, P_G, P_K, P_E, P_H]], knots.spread[on], knots.half[on]]
    )
    xy, angle = rows[:, :2] * pitch, rows[:, _ANGLE]
    a, b = cKDTree(xy).query_pairs(3 * SPACING, output_type="ndarray").T
    gap = xy[b] - xy[a]
    joined = np.abs(gap[:, 0] * np.cos(angle[a]) + gap[:, 1] * np.sin(angle[a])) < SPACING
    joined &= np.abs(np.sin(angle[a] - angle[b])) < 0.5
    graph = sparse.coo_matrix((np.ones(joined.sum()), (a[joined], b[joined])), shape=(len(on), len(on)))
    number, label = sparse.csgraph.connected_components(graph, directed=False)
    for r in range(number):
        ridge = rows[label == r]
        back = np.cos(ridge[:, _ANGLE] - ridge[0, _ANGLE]) < 0
        ridge[back, _ANGLE] += np.pi
        ridge[back, _D] *= -1  # n = d + g l + k l^2 with n and l turned about
        ridge[back, _K] *= -1
        yield ridge


@njit()
def _spread(ridge: FloatArray, band: float, pitch: float, sums: FloatArray) -> None:
    """Adds what each knot says within ``band`` m across its break to the cells' sums."""
    ny, nx = sums.shape[:2]
    for t in range(ridge.shape[0]):
        one = ridge[t]
        ci, cj, ca, sa = one[_COLUMN], one[_ROW], math.cos(one[_ANGLE]), math.sin(one[_ANGLE])
        tall, wide = abs(sa) * band + abs(ca) * ALONG, abs(ca) * band + abs(sa) * ALONG
        for j in range(max(0, int(cj - tall / pitch)), min(ny, int(cj + tall / pitch) + 2)):
            for i in range(max(0, int(ci - wide / pitch)), min(nx, int(ci + wide / pitch) + 2)):
                x, y = (i - ci) * pitch, (j - cj) * pitch
                n, along = x * ca + y * sa, -x * sa + y * ca
                if abs(n) >= band or abs(along) >= ALONG:
                    continue
                w = (1 - (along / ALONG) ** 2) ** 2
                s = sums[j, i]
                s[SAY] += w
                s[V] += w * (n - one[_D] - along * (one[_G] + along * one[_K]))
                s[E] += w * one[_FOLD]
                s[RHO] += w * one[_RHO]
                s[COS] += w * ca
                s[SIN] += w * sa
                s[PLACE_VAR] += w * one[_PLACE_SD] ** 2
                s[RHO_VAR] += w * one[_RHO_SD] ** 2
                s[HALF] += w * one[_HALF]
