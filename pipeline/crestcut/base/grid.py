"""The one raster type. Values sit on nodes; rows run along the line of travel.

A grid has its own axes: *u* along its columns (the way of travel), *v* along its rows (to the left of it).
They are turned by ``angle`` from the site's x axis. Node ``[j, i]`` lies at ``u = i * cell``,
``v = j * cell`` from ``origin``.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import ArrayLike, NDArray

from crestcut.base.errors import CrestcutError
from crestcut.base.summary import Summary

if TYPE_CHECKING:
    from xarray import DataArray

FloatArray = NDArray[np.float64]
BoolArray = NDArray[np.bool_]
IntArray = NDArray[np.int64]


def frozen_array(
    values: ArrayLike, dtype: type = np.float64, ndim: int | None = None, name: str = "array"
) -> NDArray:
    """A read-only copy-on-need of ``values``: frozen dataclasses leave their arrays writable otherwise."""
    array: NDArray = np.ascontiguousarray(np.asarray(values, dtype=dtype))
    if ndim is not None and array.ndim != ndim:
        raise ValueError(f"{name}: {ndim} dimensions expected, shape {array.shape} found")
    if array.flags.writeable:
        array = array.view()
        array.flags.writeable = False
    return array


@dataclass(frozen=True)
class GridFrame:
    """Where a raster lies: no values.

    origin : site x, y of node [0, 0], metres.  angle : of the u axis from the site's x axis, radians.
    cell : node spacing, metres.  shape : (rows, columns) = (ny, nx).
    """

    origin: tuple[float, float]
    angle: float
    cell: float
    shape: tuple[int, int]

    def __post_init__(self) -> None:
        if not (self.cell > 0 and np.isfinite(self.cell)):
            raise ValueError(f"cell: a length above zero expected, {self.cell} found")
        if min(self.shape) < 1:
            raise ValueError(f"shape: at least one row and column expected, {self.shape} found")
        if not np.all(np.isfinite([*self.origin, self.angle])):
            raise ValueError(f"origin and angle: finite values expected, {self.origin}, {self.angle} found")

    @property
    def size(self) -> tuple[float, float]:
        """Extent (u, v) between the outermost nodes, metres."""
        return (self.shape[1] - 1) * self.cell, (self.shape[0] - 1) * self.cell

    def to_grid(self, xy: ArrayLike) -> FloatArray:
        """Site x, y (..., 2) in metres -> grid u, v (..., 2) in metres from node [0, 0]."""
        d = np.asarray(xy, dtype=float)[..., :2] - np.asarray(self.origin)
        c, s = np.cos(self.angle), np.sin(self.angle)
        return np.stack([d[..., 0] * c + d[..., 1] * s, -d[..., 0] * s + d[..., 1] * c], axis=-1)

    def to_site(self, uv: ArrayLike) -> FloatArray:
        """Grid u, v (..., 2) in metres -> site x, y (..., 2) in metres."""
        p = np.asarray(uv, dtype=float)
        c, s = np.cos(self.angle), np.sin(self.angle)
        x = self.origin[0] + p[..., 0] * c - p[..., 1] * s
        y = self.origin[1] + p[..., 0] * s + p[..., 1] * c
        return np.stack([x, y], axis=-1)

    def node_xy(self) -> FloatArray:
        """Site x, y of every node, (ny, nx, 2), metres."""
        ny, nx = self.shape
        u, v = np.meshgrid(np.arange(nx) * self.cell, np.arange(ny) * self.cell)
        return self.to_site(np.stack([u, v], axis=-1))


@dataclass(frozen=True, eq=False, repr=False)
class HeightGrid(Summary):
    """Values on the nodes of a frame, (ny, nx) float64; NaN where nothing was measured. Read-only."""

    frame: GridFrame
    values: FloatArray

    def __post_init__(self) -> None:
        values = frozen_array(self.values, ndim=2, name="values")
        if values.shape != self.frame.shape:
            raise ValueError(f"values: shape {self.frame.shape} expected, {values.shape} found")
        if np.isinf(values).any():
            raise ValueError("values: infinite height found; not measured is NaN")
        object.__setattr__(self, "values", values)

    @property
    def measured(self) -> BoolArray:
        """Where there is a value, (ny, nx)."""
        return ~np.isnan(self.values)

    @property
    def summary(self) -> str:
        """Extent, cell, and from least to most."""
        known = self.values[self.measured]
        span = f"{known.min():.3f} to {known.max():.3f} m" if known.size else "nothing measured"
        long, wide = self.frame.size
        return f"{long:.1f} x {wide:.1f} m, nodes {self.frame.cell * 1000:.0f} mm apart, {span}"

    def to_xarray(self, name: str = "height") -> DataArray:
        """The values (ny, nx) as an xarray DataArray, which the extra ``notebook`` brings: dimensions v and u
        (m along the grid's axes), x and y of every node (site m), NaN where not measured; frame and units in
        ``attrs``.

        name : of what the values are, metres. Raises CrestcutError where xarray is not installed.
        """
        try:
            from xarray import DataArray
        except ImportError:
            raise CrestcutError(
                "xarray is not installed", "", "pip install xarray, or this package with [notebook]"
            ) from None
        frame, xy = self.frame, self.frame.node_xy()
        ny, nx = frame.shape
        metres = {"units": "m"}
        return DataArray(
            self.values, dims=("v", "u"), name=name,
            coords={
                "u": ("u", np.arange(nx) * frame.cell, {**metres, "long_name": "along the line"}),
                "v": ("v", np.arange(ny) * frame.cell, {**metres, "long_name": "to the left of it"}),
                "x": (("v", "u"), xy[..., 0], {**metres, "long_name": "site x"}),
                "y": (("v", "u"), xy[..., 1], {**metres, "long_name": "site y"}),
            },
            attrs={**metres, "cell": frame.cell, "origin": frame.origin, "angle": frame.angle,
                   "angle_units": "rad, of the u axis from the site's x axis"},
        )  # fmt: skip

    def like(self, values: ArrayLike) -> HeightGrid:
        """Other values on the same nodes."""
        return HeightGrid(self.frame, np.asarray(values, dtype=float))

    def sample(self, xy: ArrayLike) -> FloatArray:
        """Bilinear value at site x, y (..., 2); NaN outside and where any of the four nodes with weight is
        NaN."""
        q = self.frame.to_grid(xy) / self.frame.cell
        ny, nx = self.frame.shape
        eps = 1e-9
        i = np.clip(np.floor(q[..., 0] + eps).astype(int), 0, max(nx - 2, 0))
        j = np.clip(np.floor(q[..., 1] + eps).astype(int), 0, max(ny - 2, 0))
        a, b = q[..., 0] - i, q[..., 1] - j
        out = np.zeros(a.shape)
        for dj, wj in ((0, 1 - b), (1, b)):
            for di, wi in ((0, 1 - a), (1, a)):
                w = wi * wj
                value = self.values[np.minimum(j + dj, ny - 1), np.minimum(i + di, nx - 1)]
                out = out + np.where(np.abs(w) < eps, 0.0, w * value)
        inside = (
            (q[..., 0] >= -eps)
            & (q[..., 0] <= nx - 1 + eps)
            & (q[..., 1] >= -eps)
            & (q[..., 1] <= ny - 1 + eps)
        )
        return np.where(inside, out, np.nan)

    def crop(self, rows: slice, columns: slice) -> HeightGrid:
        """The part of the grid between whole rows and columns; steps are not taken."""
        ny, nx = self.frame.shape
        j0, j1, _ = rows.indices(ny)
        i0, i1, _ = columns.indices(nx)
        origin = self.frame.to_site((i0 * self.frame.cell, j0 * self.frame.cell))
        frame = GridFrame(
            (float(origin[0]), float(origin[1])), self.frame.angle, self.frame.cell, (j1 - j0, i1 - i0)
        )
        return HeightGrid(frame, self.values[j0:j1, i0:i1])
