"""Thinning and normals, as finding the up axis and registering repeats need them."""

from __future__ import annotations

import numpy as np

from crestcut.base.grid import FloatArray


def thin(points: FloatArray, cell: float) -> FloatArray:
    """Centroids (m, 3) of the occupied cubes of side ``cell``, in the unit of ``points`` (n, 3), n above
    0."""
    key = np.floor((points - points.min(axis=0)) / cell).astype(np.int64)
    across = key.max(axis=0) + 1
    flat = (key[:, 0] * across[1] + key[:, 1]) * across[2] + key[:, 2]
    _, group = np.unique(flat, return_inverse=True)
    count = np.bincount(group)
    return np.stack([np.bincount(group, points[:, k]) / count for k in range(3)], axis=1)


def normals(points: FloatArray, neighbours: int = 16) -> tuple[FloatArray, FloatArray]:
    """Unit normals (n, 3), of no settled sign, and roughness (n,): least over middle principal value about
    each point, infinite where too few are there for a plane."""
    from scipy.spatial import cKDTree

    if len(points) < 3:
        return np.zeros((len(points), 3)), np.full(len(points), np.inf)
    near = cKDTree(points).query(points, k=min(neighbours, len(points)))[1]
    around = points[near] - points[near].mean(axis=1, keepdims=True)
    value, vector = np.linalg.eigh(np.einsum("nki,nkj->nij", around, around))
    return vector[:, :, 0], value[:, 0] / np.maximum(value[:, 1], 1e-30)
