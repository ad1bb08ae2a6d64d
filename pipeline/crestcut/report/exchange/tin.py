"""A triangulated surface of few points that keeps to a grid of heights within a stated tolerance."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from scipy import ndimage
from scipy.spatial import Delaunay

from crestcut.base.grid import BoolArray, FloatArray, HeightGrid, IntArray, frozen_array

FIRST = 32  # nodes between the points of the first triangulation
MOST_ROUNDS = 60
NEXT_TO = ndimage.generate_binary_structure(2, 2)


@dataclass(frozen=True, eq=False)
class Tin:
    """xyz (n, 3) site metres; faces (m, 3) into them, counter-clockwise from above.  worst : m, by which it
    is off any node of the grid it was made from."""

    xyz: FloatArray
    faces: IntArray
    worst: float

    def __post_init__(self) -> None:
        object.__setattr__(self, "xyz", frozen_array(self.xyz, ndim=2, name="xyz"))


def tin_of(height: HeightGrid, tolerance: float) -> Tin:
    """Greedy insertion: the node that is farthest off each triangle is taken up until none is farther than
    ``tolerance`` m (Garland & Heckbert, Fast polygonal approximation of terrains, CMU-CS-95-181, 1995, many
    at once). Edges of what is measured are kept node by node, holes stay holes.
    """
    known = height.measured
    rows, columns = np.nonzero(known)
    z = height.values[known] - float(np.nanmean(height.values))
    at = np.column_stack([columns, rows]).astype(float)
    taken = _edge(known)[known] | ((rows % FIRST == 0) & (columns % FIRST == 0))
    for _ in range(MOST_ROUNDS):
        index = np.flatnonzero(taken)
        mesh = Delaunay(at[index])
        off, triangle = _off(mesh, z[index], at, z)
        far = np.abs(off)
        far[taken] = 0.0
        bad = np.flatnonzero(far > tolerance)
        if not len(bad):
            break
        order = bad[np.lexsort((-far[bad], triangle[bad]))]
        taken[order[np.unique(triangle[order], return_index=True)[1]]] = True
    corners = height.frame.to_site(at[index] * height.frame.cell)
    faces = mesh.simplices[_on_measured(mesh, at[index], known)].astype(np.int64)
    # the library turns them counter-clockwise in the plane
    return Tin(np.column_stack([corners, height.values[known][index]]), faces, float(far.max()))


def _edge(known: BoolArray) -> BoolArray:
    """Measured nodes beside one that is not, or beside the grid's end."""
    return np.asarray(known & ~ndimage.binary_erosion(known, NEXT_TO))


def _off(mesh: Delaunay, corner: FloatArray, at: FloatArray, z: FloatArray) -> tuple[FloatArray, IntArray]:
    """(n,) how far each place is above its triangle, m, and which that is; 0 and -1 beside all."""
    triangle = np.asarray(mesh.find_simplex(at), dtype=np.int64)
    turn = mesh.transform[triangle]
    share = np.einsum("nij,nj->ni", turn[:, :2], at - turn[:, 2])
    share = np.column_stack([share, 1.0 - share.sum(axis=1)])
    off = z - (share * corner[mesh.simplices[triangle]]).sum(axis=1)
    return np.where((triangle < 0) | ~np.isfinite(off), 0.0, off), triangle


def _on_measured(mesh: Delaunay, corner: FloatArray, known: BoolArray) -> BoolArray:
    """Triangles that lie on what was measured: no unmeasured node within, nor under their middle."""
    rows, columns = np.nonzero(~known)
    over = mesh.find_simplex(np.column_stack([columns, rows]).astype(float))
    good = np.ones(len(mesh.simplices), dtype=bool)
    good[over[over >= 0]] = False
    middle = corner[mesh.simplices].mean(axis=1)
    near = np.rint(middle).astype(np.int64)
    good &= known[near[:, 1], near[:, 0]]
    a, b, c = (corner[mesh.simplices[:, k]] for k in range(3))
    area = (b[:, 0] - a[:, 0]) * (c[:, 1] - a[:, 1]) - (b[:, 1] - a[:, 1]) * (c[:, 0] - a[:, 0])
    return np.asarray(good & (np.abs(area) > 1e-9))
