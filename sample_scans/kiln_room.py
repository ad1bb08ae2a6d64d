"""The kiln room of the invented pottery: a workshop floor seen by a scanner on a tripod from two places.

A floor 6.4 x 4.6 m that falls 3 mm in a metre to the door, with two high spots, a hollow and a column; walls
up to hip height. Errors as tripod scanners are known for (common practice, no source): noise of single
ranges, patches of about 0.1 m, and a smooth warp of its own for each place it stood.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray
from walk import Field, Walk

FloatArray = NDArray[np.float64]

ROOM = (0.0, 6.4, 0.0, 4.6)  # m: x from, to, y from, to; the walls' faces
COLUMN = (4.05, 4.35, 2.75, 3.05)  # m
FALL = 0.003  # rise over run along x
HUMPS = ((1.75, 1.55, 0.60, 0.50, 0.0080), (4.75, 1.30, 0.45, 0.70, 0.0060))  # x, y, half axes, height; m
HOLLOW = (2.55, 3.35, 0.55, 0.55, 0.0060)  # the same, depth
WAVE, WAVE_LONG = 0.0003, 2.6  # m: amplitude and length of the floor's own undulation
STATIONS = ((1.2, 3.6, 1.5), (5.3, 2.1, 1.5))  # m: where the scanner stood
WALL, WALLS_KEPT = 0.6, 0.2  # m: the walls are kept up to here, and only this share of their points
RANGE_NOISE, PATCH, PATCH_HALF, WARP, WARP_HALF = 0.0012, 0.00025, 0.05, 0.0004, 1.0  # m, 1 sd


def _cap(x: FloatArray, y: FloatArray, spot: tuple[float, float, float, float, float]) -> FloatArray:
    """A round rise: cos^2 over its half axes, nothing beyond."""
    x0, y0, a, b, tall = spot
    r = np.hypot((x - x0) / a, (y - y0) / b)
    return tall * np.cos(np.minimum(r, 1.0) * np.pi / 2) ** 2


def floor(x: FloatArray, y: FloatArray) -> FloatArray:
    """True height of the floor at x, y (m), m."""
    x, y = np.asarray(x, float), np.asarray(y, float)
    wave = WAVE * np.sin(2 * np.pi * x / WAVE_LONG + 0.7) * np.cos(2 * np.pi * y / WAVE_LONG)
    return -FALL * x + wave + sum(_cap(x, y, h) for h in HUMPS) - _cap(x, y, HOLLOW)


def scan(seed: int, points: int) -> Walk:
    """``points`` : rays cast, half from each place; what they meet, in the order they were measured."""
    rng = np.random.default_rng(seed)
    patch, parts = Field(rng, PATCH_HALF), []
    for k, station in enumerate(STATIONS):
        parts.append(_from(rng, np.array(station), points // 2, patch, Field(rng, WARP_HALF), 300.0 * k))
    xyz, time, colour, kind = (np.concatenate([p[i] for p in parts]) for i in range(4))
    return Walk(xyz, time, colour, kind)


def _from(
    rng: np.random.Generator, eye: FloatArray, n: int, patch: Field, warp: Field, start: float
) -> tuple[FloatArray, FloatArray, NDArray[np.uint8], NDArray[np.int8]]:
    """One place: upright sweeps while the head turns once; as even on the floor as a thinned export."""
    moment = np.sort(rng.uniform(0.0, 1.0, n))
    # even over the floor: distances drawn so, the turn in the order of time
    far = np.sqrt(rng.uniform(0.35**2, 6.2**2, n))
    turn = 2 * np.pi * moment
    ray = np.column_stack([far * np.cos(turn), far * np.sin(turn), np.full(n, -eye[2])])
    ray /= np.linalg.norm(ray, axis=1, keepdims=True)
    reach, kind = _meet(eye, ray)
    hit = eye + reach[:, None] * ray
    good = np.isfinite(reach) & (hit[:, 2] < WALL) & ((kind == 0) | (rng.uniform(size=n) < WALLS_KEPT))
    hit, ray, kind, moment = hit[good], ray[good], kind[good], moment[good]
    xyz = hit + (RANGE_NOISE * rng.standard_normal(len(hit)))[:, None] * ray
    xyz[:, 2] += WARP * warp(hit[:, 0], hit[:, 1]) + PATCH * patch(hit[:, 0], hit[:, 1])
    grey = np.where(kind == 0, 168.0, 205.0) + 7.0 * rng.standard_normal(len(hit))
    colour = np.clip(grey[:, None] + np.array([3.0, 0.0, -6.0]), 0, 255).astype(np.uint8)
    return xyz, start + 240.0 * moment, colour, kind.astype(np.int8)


def _meet(eye: FloatArray, ray: FloatArray) -> tuple[FloatArray, NDArray[np.int64]]:
    """Distance (n,) to what each ray meets first, and what: 0 the floor, 1 a wall or the column."""
    # the floor is so nearly level that two steps of Newton along the ray find it
    down = np.where(ray[:, 2] < 0, -eye[2] / np.minimum(ray[:, 2], -1e-9), np.inf)
    for _ in range(3):
        p = eye + np.minimum(down, 50.0)[:, None] * ray
        down = down - (p[:, 2] - floor(p[:, 0], p[:, 1])) / np.minimum(ray[:, 2], -1e-9)
    reach, kind = down, np.zeros(len(ray), int)
    for box, outside in ((ROOM, False), (COLUMN, True)):
        side = _box(eye, ray, box, outside)
        nearer = side < reach
        reach, kind = np.where(nearer, side, reach), np.where(nearer, 1, kind)
    return reach, kind


def _box(eye: FloatArray, ray: FloatArray, box: tuple[float, ...], outside: bool) -> FloatArray:
    """Distance (n,) at which a ray in plan enters a box (from outside) or leaves it; inf: never."""
    with np.errstate(divide="ignore", invalid="ignore"):
        tx = (np.array(box[:2])[:, None] - eye[0]) / ray[:, 0]
        ty = (np.array(box[2:])[:, None] - eye[1]) / ray[:, 1]
    near = np.maximum(tx.min(axis=0), ty.min(axis=0))
    far = np.minimum(tx.max(axis=0), ty.max(axis=0))
    return np.where((near < far) & (near > 0), near, np.inf) if outside else far
