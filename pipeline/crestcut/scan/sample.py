"""Points on the faces of a mesh, so that a mesh and a cloud go the same way from here on."""

from __future__ import annotations

import math

import numpy as np
from numpy.typing import NDArray

from crestcut.base.grid import FloatArray

DENSITY = 4000.0  # points per m2: a point about every 16 mm, denser than any phone app's mesh
MOST = 3_000_000  # points: a large mesh is thinned evenly rather than filling the memory
FEWEST = 20_000


def sample_faces(
    points: FloatArray, faces: NDArray[np.int64], colours: NDArray[np.uint8] | None, seed: int = 0
) -> tuple[FloatArray, NDArray[np.uint8] | None]:
    """Points (n, 3) spread evenly over triangles (m, 3) of ``points`` in metres, and their colours (n, 3)
    where given.

    Every triangle gets its share of area times ``DENSITY``, the rest of it by a seeded draw. Stratified in
    order of faces, so that the density is even also over long runs of small triangles. Triangles without area
    get nothing.
    """
    corner = points[faces]
    area = np.linalg.norm(np.cross(corner[:, 1] - corner[:, 0], corner[:, 2] - corner[:, 0]), axis=1) / 2.0
    whole = float(area.sum())
    if not whole > 0.0:
        return np.empty((0, 3)), None if colours is None else np.empty((0, 3), np.uint8)
    number = int(np.clip(math.ceil(whole * DENSITY), FEWEST, MOST))
    rng = np.random.default_rng(seed)
    # One draw in each of `number` equal slices of the cumulated area.
    at = (np.arange(number) + rng.random(number)) / number * whole
    face = np.minimum(np.searchsorted(np.cumsum(area), at, side="right"), len(faces) - 1)
    # Uniform on a triangle by folding the unit square (Turk 1990, Graphics Gems, 'Generating random points in
    # triangles').
    s, t = rng.random((2, number))
    fold = s + t > 1.0
    s, t = np.where(fold, 1.0 - s, s), np.where(fold, 1.0 - t, t)
    weight = np.stack([1.0 - s - t, s, t], axis=1)
    sampled = np.einsum("nk,nkd->nd", weight, corner[face])
    if colours is None:
        return sampled, None
    blended = np.einsum("nk,nkd->nd", weight, colours[faces[face]].astype(float))
    return sampled, np.rint(blended).astype(np.uint8)
