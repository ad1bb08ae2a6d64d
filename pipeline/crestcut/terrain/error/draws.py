"""Seeded draws of what a surface's error may look like, on a grid, and draws that agree with what was
measured by hand.

Warp and patch are stationary Gaussian fields, drawn exactly by circulant embedding (Dietrich & Newsam, SIAM
J. Sci. Comput. 18, 1997): the warp on a coarse grid, since it is smooth, and interpolated. Readings are
folded in by Matheron's rule (pathwise conditioning; Wilson et al., JMLR 22, 2021): a draw is moved by the
kriged difference between what it says and what was read.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray
from scipy import fft, sparse

from crestcut.base.grid import FloatArray, GridFrame, HeightGrid, IntArray
from crestcut.terrain.error.covariance import between, matern32, patch_half, sums_of, worked_at
from crestcut.terrain.records import ErrorModel

# nodes of a part's own grid to its half-covariance length: its covariance is right to 1 and to 3 %
FINE_WARP, FINE_PATCH = 4.0, 2.5
EXTRA = 2  # nodes beyond the frame on each side
FADE = 5.0  # half-covariance lengths after which nothing is shared: the padding of the embedding
WHITE_LENGTH = 0.03  # m: a fitted height shares its points with its neighbours about so far


class FieldMaker:
    """Draws of the error over one frame. Make it once, draw often.

    standard_error : the white part of the height at each node, 1 sd, m; NaN counts as zero (nothing is
    measured there).
    white_length : how far fitted heights share their points, m.  nodes : (n,) flat indices, if only these
    are wanted.
    """

    def __init__(
        self,
        model: ErrorModel,
        frame: GridFrame,
        standard_error: HeightGrid | None,
        white_length: float = WHITE_LENGTH,
        nodes: IntArray | None = None,
    ) -> None:
        self.model, self.frame = model, frame
        self.shape = frame.shape if nodes is None else (len(nodes),)
        self._slab: NDArray[np.float32] | None = None
        self._on: NDArray[np.float32] | None = None  # by what its layers are multiplied
        patch, warp = (model.patch, model.warp) if model.slab is None else model.worked
        if model.slab is not None:
            places = frame.node_xy().reshape(-1, 2)
            places = places if nodes is None else places[nodes]
            self._slab = -model.slab.at_site(places)
            self._on = worked_at(model, places).astype(np.float32).reshape(*self.shape, 1)
            standard_error = None  # it is in the draws
        self._layers = [
            Layer(sd, half_at, frame, nodes, fine)
            for sd, half_at, fine in (
                (warp, model.warp_length, FINE_WARP), (patch, patch_half(model), FINE_PATCH)
            )
            if sd > 0
        ]  # fmt: skip
        self._lattice = _Lattice(frame, white_length, nodes)
        white = None if standard_error is None else np.nan_to_num(standard_error.values)
        self._white = white if white is None or nodes is None else white.ravel()[nodes]

    def draw(self, rng: np.random.Generator) -> FloatArray:
        """One error field, m: (ny, nx), or (n,) at the nodes asked for."""
        return np.asarray(self.draw_many(rng, 1)[..., 0], dtype=np.float64)

    def pairs(self, rng: np.random.Generator, count: int) -> NDArray[np.float32]:
        """``count`` error fields and as many opposite ones about their middle, m: (n, 2 count) at the nodes
        asked for; fewer where the slab was drawn fewer times."""
        if self._slab is None:
            half = self.draw_many(rng, count)
            return np.concatenate([half, -half], axis=-1)
        every = self._slab.shape[-1] // 2
        count = min(count, every)
        out = np.concatenate([self._slab[:, :count], self._slab[:, every : every + count]], axis=-1)
        if self._layers:
            half = self._layered(rng, count).reshape(len(out), count)
            out += np.concatenate([half, -half], axis=-1)
        return out.reshape(*self.shape, 2 * count)

    def draw_many(self, rng: np.random.Generator, count: int) -> NDArray[np.float32]:
        """``count`` error fields, m: (ny, nx, count), or (n, count) at the nodes asked for; single precision,
        0.1 micrometre."""
        field = self._layered(rng, count)
        if self._white is not None and self._white.any():
            field += self._white.astype(np.float32)[..., None] * self._lattice.draw(rng, count)
        return field

    def _layered(self, rng: np.random.Generator, count: int) -> NDArray[np.float32]:
        field = np.zeros((*self.shape, count), np.float32)
        for layer in self._layers:
            field += layer.draw(rng, count)
        return field if self._on is None else field * self._on


class Layer:
    """One Matern-3/2 part on its own spacing, interpolated to the frame. One transform makes two fields."""

    def __init__(
        self, sd: float, half_at: float, frame: GridFrame, nodes: IntArray | None, fine: float
    ) -> None:
        self.sd = sd
        step = max(int(half_at / fine / frame.cell), 1)
        # a few more nodes on each side, so that the interpolation has neighbours everywhere
        self.need = tuple(math.ceil((n - 1) / step) + 1 + 2 * EXTRA for n in frame.shape)
        apart = step * frame.cell
        # the period must leave room for the covariance to die away
        size = tuple(fft.next_fast_len(n + math.ceil(FADE * half_at / apart)) for n in self.need)
        lag = [np.minimum(np.arange(n), n - np.arange(n)) * apart for n in size]
        covariance = matern32(np.hypot(lag[0][:, None], lag[1][None, :]), half_at)
        # eigenvalues of the circulant are the transform of its first row; the tiny negative ones come from
        # cutting the tail off
        power = np.maximum(fft.fft2(covariance).real, 0.0)
        power *= covariance.size / power.sum()  # keep the variance exactly one
        self.amplitude = np.sqrt(power / covariance.size).astype(np.float32)
        along = [_cubic(n, m, step) for n, m in zip(frame.shape, self.need, strict=True)]
        self.blend = _Blend(along, frame.shape, nodes, sd * _restored(half_at, apart, step))

    def draw(self, rng: np.random.Generator, count: int) -> NDArray[np.float32]:
        """``count`` draws of the field, as ``blend`` lays them on nodes, m."""
        size = (-(-count // 2), *self.amplitude.shape, 2)
        noise = rng.standard_normal(size, dtype=np.float32).view(np.complex64)[..., 0]
        noise *= self.amplitude
        both = fft.fft2(noise, overwrite_x=True)[:, : self.need[0], : self.need[1]]
        return self.blend(np.stack([both.real, both.imag], axis=1).reshape(-1, *self.need)[:count])


def _restored(half_at: float, apart: float, step: int) -> FloatArray:
    """(step, step) by what interpolated unit fields are to be multiplied at each place between coarse nodes:
    blending takes variance away."""
    weights = _cubic(step, 2 + 2 * EXTRA, step)[:, EXTRA - 1 : EXTRA + 3]
    at = np.stack(np.meshgrid(np.arange(4), np.arange(4), indexing="ij"), axis=-1).reshape(-1, 2) * apart
    covariance = matern32(np.hypot(*(at[:, None] - at[None]).transpose(2, 0, 1)), half_at)
    both = np.einsum("aj,bi->abji", weights, weights).reshape(step, step, 16)
    return np.asarray(1 / np.sqrt(np.einsum("abk,kl,abl->ab", both, covariance, both)))


class _Blend:
    """From a coarse grid to the nodes of the frame: rows and columns blended separately; all nodes, or
    chosen ones. scale : repeats over the nodes, what each is multiplied by."""

    def __init__(
        self, along: list[FloatArray], shape: tuple[int, int], nodes: IntArray | None, scale: FloatArray
    ) -> None:
        self.rows, self.columns = (sparse.csr_array(a.astype(np.float32)) for a in along)
        j, i = np.arange(shape[0]) % scale.shape[0], np.arange(shape[1]) % scale.shape[1]
        self.scale = scale[j[:, None], i[None, :]].astype(np.float32)
        self.nodes: sparse.csr_array | None = None
        if nodes is not None:
            # each chosen node takes the outer product of its row's and its column's weights
            r, c = self.rows[nodes // shape[1]], self.columns[nodes % shape[1]]
            self.nodes = sparse.diags_array(self.scale.ravel()[nodes]) @ _row_products(r, c)

    def __call__(self, fields: NDArray[np.float32]) -> NDArray[np.float32]:
        """fields (count, rows, columns) of the coarse grid -> (..., count)."""
        if self.nodes is not None:
            return np.asarray(self.nodes @ np.ascontiguousarray(fields.reshape(len(fields), -1).T))
        every = [((self.columns @ (self.rows @ f).T).T) * self.scale for f in fields]
        return np.stack(every, axis=-1)


def _row_products(a: sparse.csr_array, b: sparse.csr_array) -> sparse.csr_array:
    """Row by row the outer product of two sparse matrices, flattened: (n, p) and (n, q) -> (n, p q)."""
    width_a, width_b = (int(np.diff(m.indptr).max(initial=1)) for m in (a, b))
    (ia, va), (ib, vb) = _padded(a, width_a), _padded(b, width_b)
    index = (ia[:, :, None] * b.shape[1] + ib[:, None, :]).reshape(len(ia), -1)
    value = (va[:, :, None] * vb[:, None, :]).reshape(len(ia), -1)
    start = np.arange(len(ia) + 1) * index.shape[1]
    return sparse.csr_array(
        (value.ravel(), index.ravel(), start), shape=(a.shape[0], a.shape[1] * b.shape[1])
    )


def _padded(matrix: sparse.csr_array, width: int) -> tuple[IntArray, FloatArray]:
    """Indices and values of each row, filled up to one width with zeros."""
    count = np.diff(matrix.indptr)
    index, value = np.zeros((len(count), width), np.int64), np.zeros((len(count), width), matrix.dtype)
    held = np.arange(width) < count[:, None]
    index[held], value[held] = matrix.indices, matrix.data
    return index, value


def _cubic(nodes: int, coarse: int, step: int) -> FloatArray:
    """Interpolation (nodes, coarse) from every ``step``-th node, the first ``EXTRA`` of them before node 0.

    Cubic convolution with a = -0.5 (Keys, IEEE Trans. ASSP 29, 1981); the identity where step is 1.
    """
    where = np.arange(nodes) / step + EXTRA
    d = np.abs(where[:, None] - np.arange(coarse)[None, :])
    near = 1.5 * d**3 - 2.5 * d**2 + 1
    far = -0.5 * d**3 + 2.5 * d**2 - 4 * d + 2
    return np.where(d <= 1, near, np.where(d < 2, far, 0.0))


class _Lattice:
    """White noise that neighbours within ``length`` share: normals on a lattice, blended linearly, unit
    variance at every node."""

    def __init__(self, frame: GridFrame, length: float, nodes: IntArray | None) -> None:
        along = [_tent(n, max(round(length / frame.cell), 1)) for n in frame.shape]
        self.size = (along[0].shape[1], along[1].shape[1])
        self.blend = _Blend(along, frame.shape, nodes, np.ones((1, 1)))

    def draw(self, rng: np.random.Generator, count: int) -> NDArray[np.float32]:
        """``count`` draws of the field, as ``blend`` lays them on nodes, m."""
        return self.blend(rng.standard_normal((count, *self.size), dtype=np.float32))


def _tent(nodes: int, step: int) -> FloatArray:
    at = np.arange(nodes) / step
    coarse = math.ceil((nodes - 1) / step) + 2
    weight = np.maximum(1.0 - np.abs(at[:, None] - np.arange(coarse)[None, :]), 0.0)
    return weight / np.sqrt((weight**2).sum(axis=1, keepdims=True))


def towards(
    model: ErrorModel, places: FloatArray, points: Sequence[FloatArray], weights: Sequence[FloatArray]
) -> FloatArray:
    """Covariance (n, m), m2, of the error at ``places`` (n, 2) with m weighted sums of it, sum of
    weights[i] error(points[i])."""
    if model.slab is not None and len(points):
        each = sums_of(model.slab, points, weights)
        own = model.slab.at_site(places) @ (each.T / model.slab.count).astype(np.float32)
        if not any(model.worked):
            return np.asarray(own, dtype=np.float64)
        on = [w * worked_at(model, p) for p, w in zip(points, weights, strict=True)]
        return own + worked_at(model, places)[:, None] * towards(model.of_work, places, points, on)
    columns = [between(model, places, p) @ w for p, w in zip(points, weights, strict=True)]
    return np.stack(columns, axis=1) if columns else np.zeros((len(places), 0))


def moved(field: FloatArray, gain: FloatArray, miss: FloatArray) -> FloatArray:
    """Matheron's rule: a draw, moved so that it agrees with the readings.

    field : (n,) error at n places in this draw.  gain : (n, m) covariance with the readings times the
    inverse of the readings' own.
    miss : (m,) what was read less what this draw would have read, its own noise included.
    """
    return field + gain @ miss
