"""Small invented slabs for the tests of reading: an apron rising to a crest, with a kerb and a pot on it."""

from __future__ import annotations

import numpy as np

from crestcut.base.grid import FloatArray, IntArray

UTM = np.array([512_345.25, 5_403_210.75, 412.5])  # the size of map coordinates, metres
LENGTH, WIDTH, CREST, GRADE = 6.0, 4.0, 3.2, 0.10


def ground(x: FloatArray, y: FloatArray) -> FloatArray:
    """Heights of the apron: up at 10 % to the crest, then down at 2 %, a little fall across."""
    return np.minimum(GRADE * x, GRADE * CREST - 0.02 * (x - CREST)) + 0.01 * y


def slab_cloud(number: int = 4000, seed: int = 1, noise: float = 0.004) -> FloatArray:
    """(number, 3) points of the bare apron, metres, z up."""
    rng = np.random.default_rng(seed)
    x, y = rng.random(number) * LENGTH, rng.random(number) * WIDTH
    return np.column_stack([x, y, ground(x, y) + rng.normal(0.0, noise, number)])


def cluttered_cloud(number: int = 60_000, seed: int = 2, noise: float = 0.004) -> FloatArray:
    """The apron with a kerb 120 mm high along one edge, a box, and two pots: things that hold a scan in
    plan."""
    rng = np.random.default_rng(seed)
    slab = slab_cloud(number, seed, noise)
    kerb = np.array([LENGTH, 0.15, 0.12])
    parts = [slab, _box(rng, number // 12, (0.0, WIDTH, 0.0), kerb)]
    for at, size in (
        ((4.6, 0.5), (0.5, 0.4, 0.5)),
        ((0.7, 2.9), (0.3, 0.3, 0.45)),
        ((2.1, 0.4), (0.25, 0.45, 0.3)),
    ):
        base = float(ground(np.array(at[0]), np.array(at[1])))
        parts.append(_box(rng, number // 40, (*at, base), np.array(size)))
    points = np.concatenate(parts)
    points[len(slab) :] += rng.normal(0.0, noise, points[len(slab) :].shape)
    return points


def _box(
    rng: np.random.Generator, number: int, corner: tuple[float, float, float], size: FloatArray
) -> FloatArray:
    """Points on top and sides of a box that follows the ground at its foot."""
    p = rng.random((number, 3))
    side = rng.integers(0, 5, number)
    p[side == 0, 0], p[side == 1, 0], p[side == 2, 1], p[side == 3, 1], p[side == 4, 2] = (
        0.0,
        1.0,
        0.0,
        1.0,
        1.0,
    )
    points = p * size + corner
    if corner[2] == 0.0:
        points[:, 2] += ground(points[:, 0], np.full(number, WIDTH))
    return points


def slab_mesh(step: float = 0.1) -> tuple[FloatArray, IntArray]:
    """(vertices (n, 3), triangles (m, 3)) of the bare apron; the crest runs along a row of vertices."""
    x, y = np.meshgrid(np.arange(0.0, LENGTH + step / 2, step), np.arange(0.0, WIDTH + step / 2, step))
    rows, columns = x.shape
    at = np.arange(rows * columns).reshape(rows, columns)
    a, b, c, d = at[:-1, :-1].ravel(), at[:-1, 1:].ravel(), at[1:, 1:].ravel(), at[1:, :-1].ravel()
    faces = np.concatenate([np.column_stack([a, b, c]), np.column_stack([a, c, d])])
    return np.column_stack([x.ravel(), y.ravel(), ground(x.ravel(), y.ravel())]), faces


def y_up(points: FloatArray) -> FloatArray:
    """z up -> y up, as phone apps and glTF have it."""
    return np.column_stack([points[:, 0], points[:, 2], -points[:, 1]])


def turned(points: FloatArray, angle: float, move: tuple[float, float, float]) -> FloatArray:
    """Turned about z to the left by ``angle`` (rad), then moved (m): a second walk in its own frame."""
    c, s = np.cos(angle), np.sin(angle)
    return points @ np.array([[c, s, 0.0], [-s, c, 0.0], [0.0, 0.0, 1.0]]) + np.asarray(move)


def smooth_warp(points: FloatArray, seed: int, sd: float = 0.005) -> FloatArray:
    """Heights (n,) of a smooth random error over a few decimetres, as a phone scan has, metres."""
    rng = np.random.default_rng(seed)
    height = np.zeros(len(points))
    for _ in range(60):
        wave, phase = rng.normal(0.0, 3.5, 2), rng.random() * 2 * np.pi
        height += np.cos(points[:, :2] @ wave + phase)
    return height * sd / np.sqrt(30.0)
