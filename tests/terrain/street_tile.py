"""A labelled street tile, where the real scans are: which of its points lie on the surface that their own
neighbours make."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

import numpy as np
from scipy.spatial import KDTree

from crestcut.base.grid import BoolArray, FloatArray, GridFrame
from crestcut.job import ScanChoice
from crestcut.scan import read_scan
from crestcut.terrain.ground.ground import find_ground
from crestcut.terrain.ground.raster import Lattice

STREET = Path(__file__).parents[3] / "shared/realdata/street/tile_2293_9698_ground.laz"
NEIGHBOURS, REACH = 40, 0.5  # points, m


@dataclass(frozen=True, eq=False)
class Tile:
    """Per point: keep, told to be ground.  off : m, from a robust plane through its 40 nearest labelled
    neighbours.  spread : m, 1 sd of those neighbours about theirs."""

    keep: BoolArray
    off: FloatArray
    spread: FloatArray


def street_tile(path: Path) -> Tile:
    """Every point of the file is labelled ground; its own scanner puts 5 % of them more than 25 mm off what
    lies around (one of several beams), and knows its far rim to 90 mm only: such labels say 'this is the
    street', not 'this is its height'. What a slab's height may be made of is judged by what is left."""
    points = read_scan(ScanChoice((path,), None, None, None)).points
    low, size = points[:, :2].min(axis=0), np.ptp(points[:, :2], axis=0)
    nx, ny = ((size / 0.05).astype(int) + 2).tolist()
    lattice = Lattice.around(GridFrame((float(low[0]), float(low[1])), 0.0, 0.05, (ny, nx)))
    keep = find_ground(lattice, lattice.place(points)).keep
    _, near = KDTree(points[:, :2]).query(points[:, :2], NEIGHBOURS, distance_upper_bound=REACH)
    off = np.concatenate([_off(points, near[k : k + 20_000], k) for k in range(0, len(points), 20_000)])
    around = np.where(near < len(points), off[np.minimum(near, len(points) - 1)], np.nan)
    return Tile(keep, off, 1.4826 * np.nanmedian(around, axis=1))


def _off(points: FloatArray, near: FloatArray, first: int) -> FloatArray:
    """(n,) distance in height of points ``first`` and on from a bisquare plane through their neighbours."""
    there = near < len(points)
    d = points[np.where(there, near, 0)] - points[first : first + len(near), None]
    a = np.stack([np.ones(there.shape), d[..., 0], d[..., 1]], axis=-1)
    weight = there.astype(float)
    for step in range(8):
        normal = np.einsum("nki,nk,nkj->nij", a, weight, a) + 1e-6 * np.eye(3)
        right = np.einsum("nki,nk,nk->ni", a, weight, d[..., 2])
        plane = np.linalg.solve(normal, right[..., None])[..., 0]
        left = (d[..., 2] - np.einsum("nki,ni->nk", a, plane)) / max(0.03, 0.12 * 0.7**step)
        weight = there * np.clip(1 - left**2, 0, None) ** 2
    return np.abs(plane[:, 0])
