"""Triangles that bridge what nobody measured: far larger than the mesh around them.

A scanning app closes a gap with a few triangles from rim to rim. A mesh that was simplified has large ones
everywhere instead, and those are as good as the rest: what counts is where most of the area lies.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from crestcut.base.grid import BoolArray, FloatArray
from crestcut.scan.formats.mesh import edge_lengths
from crestcut.scan.records import Bridge

# times the usual longest side, seen from above: an app's own meshes reach 1.6 times (two real and made ones)
FACTOR = 4.0
SMALLEST = 0.15  # m: a gap that a tyre's contact covers is no hole
USUAL = 2.5  # times the median side: up to here a triangle is of the usual size
DENSE = 0.4  # share of the area in triangles of usual size from which the rest of a mesh counts as dense


def bridging(points: FloatArray, faces: NDArray[np.int64]) -> BoolArray:
    """Which triangles (m,) of a mesh only bridge a hole; points (n, 3) m, z up, faces (m, 3).

    The longest side of each is taken seen from above, so that tall triangles on walls and kerbs do not count.
    Where most of the area is in triangles of the median's size, those over ``FACTOR`` medians are holes; in
    a simplified mesh the size that half of the area has stands for the median.
    """
    corner = points[faces]
    longest = edge_lengths(points * (1.0, 1.0, 0.0), faces).max(axis=1)
    area = np.linalg.norm(np.cross(corner[:, 1] - corner[:, 0], corner[:, 2] - corner[:, 0]), axis=1)
    whole = float(area.sum())
    if not whole > 0.0:
        return np.zeros(len(faces), bool)
    usual = float(np.median(longest[area > 0]))
    if area[longest <= USUAL * usual].sum() < DENSE * whole:
        order = np.argsort(longest, kind="stable")
        usual = float(longest[order][np.searchsorted(np.cumsum(area[order]), whole / 2)])
    return np.asarray((longest > max(FACTOR * usual, SMALLEST)) & (area > 0))


def bridges(points: FloatArray, faces: NDArray[np.int64]) -> tuple[Bridge, ...]:
    """The holes that triangles (m, 3) bridge, those that share a corner as one; largest first."""
    if len(faces) == 0:
        return ()
    from scipy import sparse

    n = len(points)
    ends = np.concatenate([faces[:, :2], faces[:, 1:]])
    joined = sparse.coo_matrix((np.ones(len(ends), bool), (ends[:, 0], ends[:, 1])), shape=(n, n))
    label = sparse.csgraph.connected_components(joined, directed=False)[1][faces[:, 0]]
    corner = points[faces]
    side = corner[:, 1:, :2] - corner[:, :1, :2]
    area = np.abs(side[:, 0, 0] * side[:, 1, 1] - side[:, 0, 1] * side[:, 1, 0]) / 2.0
    found = []
    for k in np.unique(label):
        mine = corner[label == k][..., :2].reshape(-1, 2)
        low, high = mine.min(axis=0), mine.max(axis=0)
        x, y = (low + high) / 2
        size = (float(high[0] - low[0]), float(high[1] - low[1]))
        found.append(Bridge(float(area[label == k].sum()), float(x), float(y), size, int((label == k).sum())))
    return tuple(sorted(found, key=lambda b: -b.area))
