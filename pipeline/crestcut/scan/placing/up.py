"""Which axis points up: declared, written, or found from the largest near-level face of the scan."""

from __future__ import annotations

from collections.abc import Callable
from functools import cache, partial

import numpy as np
from numpy.typing import ArrayLike, NDArray

from crestcut.base.grid import FloatArray
from crestcut.scan.registering.voxels import normals, thin

AXES = ("x", "y", "z")
# Right-handed turns that bring each file axis up.
ROTATION: dict[str, FloatArray] = {
    "z": np.eye(3),
    "-z": np.diag([1.0, -1.0, -1.0]),
    "y": np.array([[1.0, 0, 0], [0, 0, -1], [0, 1, 0]]),
    "-y": np.array([[1.0, 0, 0], [0, 0, 1], [0, -1, 0]]),
    "x": np.array([[0, 1.0, 0], [0, 0, 1], [1, 0, 0]]),
    "-x": np.array([[0, 0, 1.0], [0, 1, 0], [-1, 0, 0]]),
}
_LEVEL = np.cos(np.radians(30.0))  # steeper than any slab that is driven on
_CLEARLY = 1.3  # how much more level area another axis must have before z is given up
_MOST = 20_000  # voxels looked at
_COLUMN, _LAYER = 1 / 60, 1 / 150  # of the scan's size: about 0.1 m and 40 mm on a slab
FEW, MORE = 20, 2.5  # columns, and times the other way's: fewer show nothing
_AROUND = 5  # columns each way whose median level is the slab's


def level_share(points: ArrayLike, seed: int = 0) -> FloatArray:
    """(3,) share of the scan's smooth area that lies square to each file axis (within 30 degrees).

    The scan is thinned to voxels so that every bit of area counts once however often it was measured; the
    normal of each comes from its neighbours; ragged neighbourhoods (planting) are left out. Unit-free: works
    before the unit is known.
    """
    voxels = _voxels(np.asarray(points, dtype=float), seed)
    if len(voxels) < 20:
        return np.zeros(3)
    normal, rough = normals(voxels)
    smooth = np.abs(normal)[rough < 0.08]
    if len(smooth) < 0.02 * len(voxels) or len(smooth) < 10:
        return np.zeros(3)
    return np.asarray((smooth > _LEVEL).sum(axis=0) / len(voxels))


def _voxels(points: FloatArray, seed: int) -> FloatArray:
    """Centroids of occupied voxels, in units of the scan's size."""
    rng = np.random.default_rng(seed)
    if len(points) > 400_000:
        points = points[np.sort(rng.choice(len(points), 400_000, replace=False))]
    low, high = np.percentile(points, [1.0, 99.0], axis=0)
    size = float(np.max(high - low))
    if not size > 0.0:
        return np.empty((0, 3))
    inside = np.all((points >= low - 0.05 * size) & (points <= high + 0.05 * size), axis=1)
    scaled = (points[inside] - low) / size
    centre = thin(scaled, 0.01)
    if len(centre) > _MOST:
        centre = centre[np.sort(rng.choice(len(centre), _MOST, replace=False))]
    return np.asarray(centre)


Standing = Callable[[str], tuple[int, int]]  # of an axis, as ``stands_out``


def standing_of(points: ArrayLike) -> Standing:
    """``stands_out`` of points, reckoned once for an axis however often it is asked: it takes a quarter of a
    second a million points."""
    return cache(partial(stands_out, points))


def guess_up(points: ArrayLike, standing: Standing | None = None) -> tuple[str, str, bool]:
    """(axis, reason, sure) from the shape alone; z where the shape does not say otherwise.  standing : of
    the points, where somebody asks it too."""
    share = level_share(points)
    best = int(np.argmax(share))
    z = 2
    if share[best] < 0.05:
        return "z", "z taken: no level face was found that would say otherwise", False
    sure = bool(share[best] > _CLEARLY * np.delete(share, best).max())
    if best != z and share[best] <= _CLEARLY * share[z]:
        best = z
    axis = AXES[best]
    below = hangs_below((standing or standing_of(points))(axis))
    if below and axis != "z":
        axis = "-" + axis
    others = ", ".join(f"{AXES[k]} {share[k]:.0%}" for k in range(3) if k != best)
    reason = f"{axis}, guessed: {share[best]:.0%} of the area lies square to it ({others})"
    if below and axis == "z":
        # z down is rare, a gutter or a bed beside the slab is not: said, not turned over.
        reason += '; much lies below the slab: if the scan is upside down, write up = "-z"'
    elif below:
        reason += " and things stand out on its negative side"
    return axis, reason, sure


def hangs_below(standing: tuple[int, int]) -> bool:
    """Whether what stands out from the slab stands out downwards: the scan is upside down."""
    above, below = standing
    return below > FEW and below > MORE * above


def stands_above(standing: tuple[int, int]) -> bool:
    """Whether what stands out from the slab stands out upwards, which shows that up is up."""
    above, below = standing
    return above > FEW and above > MORE * below


def looking_up(points: FloatArray, faces: NDArray[np.int64]) -> float:
    """-1 to 1: of a mesh's area in plan the share that is seen from above less that seen from below, by the
    order of its corners (counterclockwise as seen from outside: ISO/IEC 12113:2022, 3.7.2.1), z up."""
    a, b, c = (points[faces[:, k], :2] for k in range(3))
    doubled = (b[:, 0] - a[:, 0]) * (c[:, 1] - a[:, 1]) - (b[:, 1] - a[:, 1]) * (c[:, 0] - a[:, 0])
    return float(doubled.sum() / max(np.abs(doubled).sum(), 1e-300))


def stands_out(points: ArrayLike, axis: str) -> tuple[int, int]:
    """In how many columns something stands out from the slab upwards, and downwards.

    The slab's level about each place is the median of the fullest layers of the columns around it.
    """
    turned = np.asarray(points, dtype=float) @ ROTATION[axis].T
    low, high = np.percentile(turned, [1.0, 99.0], axis=0)
    size = float(np.max(high - low)) or 1.0
    inside = np.all((turned >= low) & (turned <= high), axis=1)
    i, j, k = (
        np.floor((turned[inside] - low) / (size * np.array([_COLUMN, _COLUMN, _LAYER]))).astype(np.int64).T
    )
    shape = (int(i.max()) + 1, int(j.max()) + 1, int(k.max()) + 1)
    filled = np.bincount((i * shape[1] + j) * shape[2] + k, minlength=shape[0] * shape[1] * shape[2]).reshape(
        shape
    )
    whole = filled.sum(axis=2)
    fullest = np.where(whole > 0, np.argmax(filled, axis=2).astype(float), np.nan)
    padded = np.pad(fullest, _AROUND, constant_values=np.nan)
    windows = np.lib.stride_tricks.sliding_window_view(padded, (2 * _AROUND + 1,) * 2).reshape(*shape[:2], -1)
    level = np.full(shape[:2], np.nan)
    level[whole > 0] = np.nanmedian(windows[whole > 0], axis=1)
    off = np.arange(shape[2]) - level[..., None]
    above, below = (
        int((np.where(side, filled, 0).sum(axis=2) > 0.1 * np.maximum(whole, 1)).sum())
        for side in (off > 2, off < -2)
    )
    return above, below
