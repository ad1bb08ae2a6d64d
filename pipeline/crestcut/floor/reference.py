"""What a spot is told high or low from: a plane, a level, or the floor's own general level."""

from __future__ import annotations

import math

import numpy as np
from scipy import ndimage

from crestcut.base.errors import CrestcutError
from crestcut.base.grid import FloatArray, HeightGrid

BLOCK = 0.2  # m: cells in which the general level is taken
TURNS = 30  # of the robust fit
SHARP = 4.685  # Tukey's biweight: 95 % as good as least squares on plain noise
LEAST_SCALE = 1e-4  # m


def robust_plane(floor: HeightGrid) -> tuple[FloatArray, tuple[float, float]]:
    """The plane (ny, nx) m that most of a floor lies on, and its slope along u and v.

    Reweighted least squares with Tukey's biweight (Beaton & Tukey, Technometrics 16, 1974), so that high
    spots and hollows neither raise nor tip it.
    """
    rows, columns = np.nonzero(floor.measured)
    thin = slice(None, None, max(1, len(rows) // 40_000))
    rows, columns = rows[thin], columns[thin]
    cell = floor.frame.cell
    places = np.stack([columns * cell, rows * cell, np.ones(len(rows))], axis=1)
    z = floor.values[rows, columns]
    weight = np.ones(len(z))
    fit = np.array([0.0, 0.0, float(np.median(z))])
    for _ in range(TURNS):
        root = np.sqrt(weight)[:, None]
        new, *_ = np.linalg.lstsq(places * root, z * root[:, 0], rcond=None)
        off = z - places @ new
        scale = max(1.4826 * float(np.median(np.abs(off))), LEAST_SCALE)
        weight = np.clip(1 - (off / (SHARP * scale)) ** 2, 0.0, None) ** 2
        if np.abs(new - fit).max() < 1e-9:
            break
        fit = new
    v, u = np.mgrid[: floor.frame.shape[0], : floor.frame.shape[1]] * cell
    return u * fit[0] + v * fit[1] + fit[2], (float(fit[0]), float(fit[1]))


def level_at(floor: HeightGrid, datum: tuple[float, float] | None) -> FloatArray:
    """A level (ny, nx) m: as high as the floor at ``datum`` (site x, y), or at its median height."""
    if datum is None:
        return np.full(floor.frame.shape, float(np.nanmedian(floor.values)))
    height = float(floor.sample(datum))
    if math.isnan(height):
        raise CrestcutError(
            "lies where the floor was not measured", "floor.datum", "name a place on scanned floor"
        )
    return np.full(floor.frame.shape, height)


def general_level(floor: HeightGrid, plane: FloatArray, radius: float) -> FloatArray:
    """The floor's own general level (ny, nx) m: the median of all heights over ``plane`` within ``radius``,
    smoothed.

    A spot that takes up less than half of the disk does not show in it; a floor that undulates more widely is
    followed.
    """
    cell, over = floor.frame.cell, floor.values - plane
    k = max(round(BLOCK / cell), 1)
    blocks = _block_medians(over, k)
    steps = max(round(radius / (k * cell)), 1)
    wide = np.pad(blocks, steps, constant_values=np.nan)
    j, i = np.mgrid[-steps : steps + 1, -steps : steps + 1]
    disk = np.argwhere(np.hypot(j, i) <= steps)
    ny, nx = blocks.shape
    every = np.stack([wide[a : a + ny, b : b + nx] for a, b in disk])
    with np.errstate(all="ignore"):
        known = ~np.isnan(every).all(axis=0)
        level = np.full(blocks.shape, np.nan)
        level[known] = np.nanmedian(every[:, known], axis=0)
    level = _filled(level)
    level = ndimage.gaussian_filter(level, max(steps / 4, 1.0), mode="nearest")
    rows, columns = (np.arange(n) for n in floor.frame.shape)
    at = np.meshgrid((rows - (k - 1) / 2) / k, (columns - (k - 1) / 2) / k, indexing="ij")
    return plane + ndimage.map_coordinates(level, at, order=3, mode="nearest")


def _block_medians(values: FloatArray, k: int) -> FloatArray:
    """Medians of k x k blocks, NaN left out; NaN where nothing is measured."""
    ny, nx = (-(-n // k) for n in values.shape)
    padded = np.full((ny * k, nx * k), np.nan)
    padded[: values.shape[0], : values.shape[1]] = values
    blocks = padded.reshape(ny, k, nx, k).transpose(0, 2, 1, 3).reshape(ny, nx, k * k)
    out = np.full((ny, nx), np.nan)
    known = ~np.isnan(blocks).all(axis=2)
    out[known] = np.nanmedian(blocks[known], axis=1)
    return out


def _filled(values: FloatArray) -> FloatArray:
    """NaN replaced by the nearest value."""
    missing = np.isnan(values)
    if not missing.any():
        return values
    nearest = ndimage.distance_transform_edt(missing, return_distances=False, return_indices=True)
    return np.asarray(values[tuple(nearest)])
