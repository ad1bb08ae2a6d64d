"""Scans that lie: a sharp crest that a low vehicle touches by 4.7 mm, and what may stand, hang or fail on it.

All of it invented and seeded; metres. The slab climbs along x to ``CREST`` and falls beyond it, alike at
every y.
"""

from __future__ import annotations

from pathlib import Path

import numpy as np
from numpy.typing import NDArray

from crestcut.base.grid import FloatArray

CREST, GRADE, FALL = 3.5, 0.10, -0.09  # x of the crest, rise over run before and beyond it
X, Y = (-0.8, 7.8), (-1.8, 1.8)
NOISE, DENSITY = 0.002, 3000.0
WHEELBASE, BELLY = 2.60, 0.118

VEHICLE = f"""
name = "made-up cart"
wheelbase = "{WHEELBASE * 1000:.0f} mm"
front_track = "1480 mm"
rear_track = "1480 mm"
tyre_radius = "300 mm"
tyre_width = "190 mm"
front_overhang = "500 mm"
rear_overhang = "500 mm"
width = "1700 mm"
belly_clearance = "%.1f mm"
"""

JOB = """
title = "A scan that lies"
[site]
place = "outdoors"
ground = "private"
country = "US"
[scan]
files = ["%s"]
scanner = "%s"
unit = "m"
up = "z"
[vehicle]
file = "cart.toml"
load = ["as measured"]
[travel]
line = %s
ways = ["forward"]
wander = "100 mm"
heading = 0
[surface]
cell = "20 mm"
"""


def slab(x: FloatArray, y: FloatArray) -> FloatArray:
    """Height of the slab, m."""
    d = np.asarray(x, dtype=float) - CREST
    return np.where(d < 0, GRADE, FALL) * d + 0.0 * np.asarray(y)


def cloud(seed: int, density: float = DENSITY, noise: float = NOISE) -> FloatArray:
    """The slab as points (n, 3), nothing on it."""
    rng = np.random.default_rng(seed)
    n = int(density * (X[1] - X[0]) * (Y[1] - Y[0]))
    x, y = rng.uniform(*X, n), rng.uniform(*Y, n)
    return np.column_stack([x, y, slab(x, y) + noise * rng.standard_normal(n)])


def in_order(points: FloatArray) -> FloatArray:
    """Points (n, 3) in the order of a walk along x."""
    return points[np.argsort(points[:, 0] + 0.3 * np.sin(7.0 * points[:, 1]), kind="stable")]


def second_layer(seed: int, lower: float = 0.015, reach: float = 0.25, share: float = 1.0) -> FloatArray:
    """The slab, and ``lower`` m below it a second one within ``reach`` of the crest, ``share`` as dense."""
    rng = np.random.default_rng(seed + 1000)
    n = int(share * DENSITY * 2 * reach * (Y[1] - Y[0]))
    x, y = rng.uniform(CREST - reach, CREST + reach, n), rng.uniform(*Y, n)
    again = np.column_stack([x, y, slab(x, y) - lower + NOISE * rng.standard_normal(n)])
    return in_order(np.concatenate([cloud(seed), again]))


def walker(seed: int, places: int = 20, each: int = 4000, density: float = DENSITY) -> FloatArray:
    """A person seen at ``places`` places along the line, ``each`` points of theirs, in the order of time."""
    rng = np.random.default_rng(seed + 2000)
    parts = [cloud(seed, density)]
    for x0 in np.linspace(1.2, 5.8, places):
        y0 = rng.uniform(-0.6, 0.6)
        turn, height = rng.uniform(0, 2 * np.pi, each), rng.uniform(0.0, 1.75, each)
        wide = np.interp(height, [0.0, 0.1, 0.9, 1.4, 1.5, 1.75], [0.16, 0.12, 0.20, 0.24, 0.10, 0.09])
        x, yy = x0 + wide * np.cos(turn), y0 + wide * np.sin(turn)
        parts.append(np.column_stack([x, yy, slab(x, yy) + height + NOISE * rng.standard_normal(each)]))
    return in_order(np.concatenate(parts))


def box(rng: np.random.Generator, low: tuple[float, ...], high: tuple[float, ...], n: int) -> FloatArray:
    """Points (n, 3) on top and sides of a box between two corners."""
    p = rng.uniform(low, high, (n, 3))
    sides = np.subtract(high, low)
    areas = np.array([sides[0] * sides[1], 2 * sides[1] * sides[2], 2 * sides[0] * sides[2]])
    face = rng.choice(3, n, p=areas / areas.sum())
    p[face == 0, 2] = high[2]
    for k, axis in ((1, 0), (2, 1)):
        on = face == k
        p[on, axis] = np.where(rng.random(int(on.sum())) < 0.5, low[axis], high[axis])
    return p


def parked(seed: int, x: float = 2.6, y: float = -0.2, long: float = 4.2, wide: float = 1.7) -> FloatArray:
    """A parked car with its middle at x, y: body from 0.2 to 0.8 m over the slab, cabin to 1.4 m, four
    wheels; nothing is seen of the slab beneath."""
    rng = np.random.default_rng(seed + 3000)
    ground = cloud(seed)
    under = (np.abs(ground[:, 0] - x) < long / 2) & (np.abs(ground[:, 1] - y) < wide / 2)
    half, side = long / 2, wide / 2
    body = box(rng, (x - half, y - side, 0.2), (x + half, y + side, 0.8), 30_000)
    cabin = box(rng, (x - 0.6, y - side + 0.1, 0.8), (x + 1.0, y + side - 0.1, 1.4), 12_000)
    wheels = [
        box(rng, (wx - 0.3, wy - 0.1, 0.0), (wx + 0.3, wy + 0.1, 0.3), 1500)
        for wx in (x - 1.3, x + 1.3)
        for wy in (y - side + 0.1, y + side - 0.1)
    ]
    car = np.concatenate([body, cabin, *wheels])
    car[:, 2] += slab(car[:, 0], car[:, 1])
    return in_order(np.concatenate([ground[~under], car]))


def lawn(seed: int, rough: float = 0.014, every: float = 0.05) -> FloatArray:
    """Grass or gravel instead of a slab: heights that differ by ``rough`` m (1 sd) from one ``every`` m to
    the next, and blades that stand over it."""
    rng = np.random.default_rng(seed + 4000)
    points = cloud(seed)
    shape = tuple(int((b - a) / every) + 3 for a, b in (X, Y))
    tufts = rough * rng.standard_normal(shape)
    i, j = ((points[:, 0] - X[0]) / every).astype(int), ((points[:, 1] - Y[0]) / every).astype(int)
    points[:, 2] += tufts[i, j] + 0.7 * rough * np.abs(rng.standard_normal(len(points)))
    return in_order(points)


def mesh(
    seed: int, edge: float = 0.06, hole: tuple[float, float] | None = None, across: tuple[float, float] = Y
) -> tuple[FloatArray, NDArray[np.int64]]:
    """The slab as a mesh (vertices (n, 3), faces (m, 3)) with sides of ``edge``; between the two x of
    ``hole`` and the two y of ``across`` nothing was measured, and two big triangles bridge it."""
    rng = np.random.default_rng(seed + 5000)
    xs, ys = np.arange(X[0], X[1] + edge / 2, edge), np.arange(Y[0], Y[1] + edge / 2, edge)
    x, y = np.meshgrid(xs, ys)
    p = np.column_stack([x.ravel(), y.ravel(), np.zeros(x.size)])
    p[:, :2] += rng.uniform(-0.2, 0.2, (len(p), 2)) * edge
    p[:, 2] = slab(p[:, 0], p[:, 1]) + NOISE * rng.standard_normal(len(p))
    number = np.arange(x.size).reshape(x.shape)
    a, b, c, d = number[:-1, :-1], number[:-1, 1:], number[1:, :-1], number[1:, 1:]
    faces = np.concatenate([np.stack(t, -1).reshape(-1, 3) for t in ((a, b, d), (a, d, c))])
    if hole is not None:
        i0, i1 = np.searchsorted(xs, hole[0]), np.searchsorted(xs, hole[1])
        j0, j1 = np.searchsorted(ys, across[0]), np.searchsorted(ys, across[1]) - 1
        column, row = (
            np.tile(np.arange(len(xs)), len(ys))[faces],
            np.repeat(np.arange(len(ys)), len(xs))[faces],
        )
        inside = ((column >= i0) & (column <= i1) & (row >= j0) & (row <= j1)).all(axis=1)
        corner = [number[j0, i0], number[j0, i1], number[j1, i1], number[j1, i0]]
        big = [[corner[0], corner[1], corner[2]], [corner[0], corner[2], corner[3]]]
        faces = np.concatenate([faces[~inside], big])
    return p, faces


def simplified(seed: int) -> tuple[FloatArray, NDArray[np.int64]]:
    """The slab as a program simplifies it: sides of half a metre on its planes, small ones at the crest."""
    rng = np.random.default_rng(seed + 6000)
    far = np.concatenate([np.arange(X[0], CREST - 0.4, 0.5), np.arange(CREST + 0.4, X[1] + 0.3, 0.5)])
    xs = np.unique(np.concatenate([far, np.arange(CREST - 0.3, CREST + 0.31, 0.06)]))
    points = []
    for x in xs:
        apart = 0.06 if abs(x - CREST) < 0.31 else 0.5
        y = np.linspace(*Y, round((Y[1] - Y[0]) / apart) + 1)
        points.append(np.column_stack([np.full(len(y), x), y]))
    xy = np.concatenate(points)
    from scipy.spatial import Delaunay

    z = slab(xy[:, 0], xy[:, 1]) + 0.0005 * rng.standard_normal(len(xy))
    return np.column_stack([xy, z]), Delaunay(xy).simplices.astype(np.int64)


def write_cloud(points: FloatArray, path: Path) -> Path:
    """As LAZ, 0.1 mm steps."""
    import laspy

    header = laspy.LasHeader(point_format=0, version="1.2")
    header.scales, header.offsets = np.full(3, 1e-4), np.zeros(3)
    header.creation_date = None
    data = laspy.LasData(header)
    data.x, data.y, data.z = points.T
    data.write(str(path))
    return path


def write_mesh(points: FloatArray, faces: NDArray[np.int64], path: Path) -> Path:
    """As binary PLY."""
    import trimesh

    path.write_bytes(trimesh.Trimesh(points, faces, process=False).export(file_type="ply"))
    return path


def write_job(
    folder: Path,
    scan: Path,
    belly: float = BELLY,
    scanner: str = "total-station",
    line: str = "[[0.5, 0.0], [6.5, 0.0]]",
    more: str = "",
) -> Path:
    """A job over ``scan`` with a vehicle ``belly`` m over the ground."""
    (folder / "cart.toml").write_text(VEHICLE % (belly * 1000))
    job = folder / "job.toml"
    job.write_text(JOB % (scan.name, scanner, line) + more)
    return job
