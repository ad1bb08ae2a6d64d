"""A simulated walk with a phone: rays from a moving hand onto the courtyard, with the errors such scans are
known for.

Three errors, as measured on a real slab (repeatability only): noise of single ranges; patches of about 0.1 m;
and a smooth warp, Matern-3/2, that differs between the way up and the way back and does not average away.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import courtyard
import numpy as np
from numpy.typing import NDArray

FloatArray = NDArray[np.float64]
Removed = Callable[[FloatArray, FloatArray], FloatArray]

RANGE_NOISE = 0.006  # m, 1 sd along the ray, at 2 m
PATCH, PATCH_HALF = 0.0015, 0.05  # m, 1 sd; covariance halves at
WARP, WARP_HALF = 0.005, 0.40
SHARED = 0.15  # share of the warp's variance that both passes of one walk have in common
SPEED, FRAMES = 0.42, 12.0  # m/s, depth frames per second
_HALF_UNIT = 1.6783469900166605  # (1 + x) exp(-x) = 1/2: Matern-3/2


@dataclass(frozen=True, eq=False)
class Walk:
    """xyz (n, 3) metres in the walk's own frame; time (n,) s; colour (n, 3) uint8; kind (n,) index into
    courtyard.LABELS.
    """

    xyz: FloatArray
    time: FloatArray
    colour: NDArray[np.uint8]
    kind: NDArray[np.int8]


@dataclass(frozen=True)
class Pose:
    """Where a walk's own frame lies: own = turn about z by ``yaw`` (rad), then moved by ``move`` (m)."""

    yaw: float = 0.0
    move: tuple[float, float, float] = (0.0, 0.0, 0.0)

    def to_own(self, xyz: FloatArray) -> FloatArray:
        """(n, 3) courtyard metres -> (n, 3) metres in the walk's frame."""
        c, s = np.cos(self.yaw), np.sin(self.yaw)
        return xyz @ np.array([[c, s, 0.0], [-s, c, 0.0], [0.0, 0.0, 1.0]]) + np.asarray(self.move)


class Field:
    """A random field of unit variance with Matern-3/2 covariance, on a 40 mm raster, read bilinearly."""

    STEP, SIZE = 0.04, (1024, 512)

    def __init__(self, rng: np.random.Generator, half: float) -> None:
        # spectral density of Matern-3/2 in the plane: (kappa^2 + k^2)^-5/2 (Rasmussen & Williams 2006, eq.
        # 4.15)
        kappa = _HALF_UNIT / half
        kx, ky = (2 * np.pi * np.fft.fftfreq(n, self.STEP) for n in self.SIZE)
        density = (kappa**2 + kx[:, None] ** 2 + ky[None, :] ** 2) ** -2.5
        noise = np.fft.fft2(rng.standard_normal(self.SIZE))
        values = np.fft.ifft2(noise * np.sqrt(density)).real
        self.values = values / np.sqrt(density.sum() / density.size)

    def __call__(self, x: FloatArray, y: FloatArray) -> FloatArray:
        u, v = (x + 8.0) / self.STEP, (y + 6.0) / self.STEP
        i, j = np.floor(u).astype(int), np.floor(v).astype(int)
        a, b, f = u - i, v - j, self.values
        low = f[i, j] * (1 - a) + f[i + 1, j] * a
        return low * (1 - b) + (f[i, j + 1] * (1 - a) + f[i + 1, j + 1] * a) * b


def walk(seed: int, points: int, pose: Pose = Pose(), removed: Removed | None = None) -> Walk:
    """``points`` : how many rays are cast (some meet nothing). Up along y = 1.45, back along 3.35, phone
    held at 1.4 m.  removed : what has been taken off the slab by then, m at x, y.
    """
    rng = np.random.default_rng(seed)
    warps, patch = [Field(rng, WARP_HALF) for _ in range(3)], Field(rng, PATCH_HALF)
    eye, heading, time, back = _path(rng, points)
    ray = _rays(rng, heading, points)
    distance = _meet(eye, ray, removed)
    hit = eye + distance[:, None] * ray
    good = np.isfinite(distance) & ~_in_hole(hit) & _in_sight(hit)
    eye, ray, distance, time, back = eye[good], ray[good], distance[good], time[good], back[good]
    hit = hit[good]
    kind = courtyard.label(hit[:, 0], hit[:, 1])
    noise = RANGE_NOISE * (0.4 + 0.6 * (distance / 2.0) ** 2) * rng.standard_normal(len(hit))
    noise[kind == 3] += 0.018 * rng.standard_normal(int((kind == 3).sum()))  # blades of grass
    xyz = hit + noise[:, None] * ray
    own = np.where(back, warps[1](hit[:, 0], hit[:, 1]), warps[2](hit[:, 0], hit[:, 1]))
    smooth = np.sqrt(SHARED) * warps[0](hit[:, 0], hit[:, 1]) + np.sqrt(1 - SHARED) * own
    xyz[:, 2] += WARP * smooth + PATCH * patch(hit[:, 0], hit[:, 1])
    return Walk(pose.to_own(xyz), time, _colour(rng, hit, kind), kind)


def _path(
    rng: np.random.Generator, points: int
) -> tuple[FloatArray, FloatArray, FloatArray, NDArray[np.bool_]]:
    """Eye (n, 3), way (n,) rad, time (n,) s and whether on the way back, ray by ray, in the order of time."""
    start, end = -1.7, 15.2
    lane = end - start
    moment = np.sort(rng.uniform(0.0, 2 * lane / SPEED + 2.0, points))
    time = np.floor(moment * FRAMES) / FRAMES
    along = np.clip(time * SPEED, 0.0, 2 * lane)
    back = along > lane
    x = np.where(back, end + 1.9 - (along - lane), start + along)
    # a hand sways, and slows down where the walker looks: density is uneven along the path
    x = x + 0.22 * np.sin(0.55 * time) + 0.10 * np.sin(1.7 * time)
    y = np.where(back, 3.35, 1.45) + 0.18 * np.sin(0.8 * time + 1.0)
    z = courtyard.slab(x, np.full_like(x, 2.0)) + 1.40 + 0.05 * np.sin(1.1 * time)
    heading = np.where(back, np.pi, 0.0) + 0.16 * np.sin(0.9 * time)
    return np.column_stack([x, y, z]), heading, time, back


def _rays(rng: np.random.Generator, heading: FloatArray, n: int) -> FloatArray:
    """Unit vectors (n, 3): a phone's field of view about a line looking 50 degrees down."""
    down, side = np.radians(50.0 + 24.0 * rng.uniform(-1, 1, n)), np.radians(34.0 * rng.uniform(-1, 1, n))
    forward, across = np.cos(down) * np.cos(side), np.sin(side)
    c, s = np.cos(heading), np.sin(heading)
    return np.column_stack([forward * c - across * s, forward * s + across * c, -np.sin(down) * np.cos(side)])


def _seen(p: FloatArray, removed: Removed | None) -> FloatArray:
    z = courtyard.seen(p[:, 0], p[:, 1])
    return z if removed is None else z - removed(p[:, 0], p[:, 1])


def _meet(eye: FloatArray, ray: FloatArray, removed: Removed | None) -> FloatArray:
    """Distance (n,) at which each ray first meets the courtyard; NaN where it does not within 4.2 m."""
    near, far = np.zeros(len(ray)), np.full(len(ray), np.nan)
    for t in np.arange(0.25, 4.2, 0.035):
        open_ = np.isnan(far)
        p = eye[open_] + t * ray[open_]
        below = p[:, 2] <= _seen(p, removed)
        index = np.flatnonzero(open_)
        far[index[below]] = t
        near[index[~below]] = t
    for _ in range(9):
        middle = (near + far) / 2
        p = eye + np.nan_to_num(middle)[:, None] * ray
        below = p[:, 2] <= _seen(p, removed)
        far, near = np.where(below, middle, far), np.where(below, near, middle)
    return (near + far) / 2 + far * 0.0


def _in_hole(p: FloatArray) -> NDArray[np.bool_]:
    x, y, a, b = courtyard.HOLE
    return ((p[:, 0] - x) / a) ** 2 + ((p[:, 1] - y) / b) ** 2 < 1.0


def _in_sight(p: FloatArray) -> NDArray[np.bool_]:
    (x0, x1), (y0, y1) = courtyard.X, courtyard.Y
    return (p[:, 0] > x0) & (p[:, 0] < x1) & (p[:, 1] > y0) & (p[:, 1] < y1)


_PAINT = np.array(
    [
        [168, 166, 160],
        [112, 113, 116],
        [180, 178, 172],
        [104, 128, 74],
        [150, 128, 108],
        [88, 112, 64],
        [66, 72, 78],
        [150, 104, 52],
    ],
    dtype=float,
)


def _colour(rng: np.random.Generator, hit: FloatArray, kind: NDArray[np.int8]) -> NDArray[np.uint8]:
    """Muted colours in steps of 6 (they pack better), chalk crosses at the marks."""
    rgb = (
        _PAINT[kind]
        + 12.0 * np.sin(3.1 * hit[:, :1]) * np.cos(2.3 * hit[:, 1:2])
        + 6.0 * rng.standard_normal((len(hit), 1))
    )
    for x, y in courtyard.MARKS.values():
        dx, dy = np.abs(hit[:, 0] - x), np.abs(hit[:, 1] - y)
        cross = (np.minimum(dx, dy) < 0.015) & (np.maximum(dx, dy) < 0.10)
        rgb[cross] = (232.0, 96.0, 60.0)
    return (np.clip(np.round(rgb / 6.0) * 6.0, 0, 252)).astype(np.uint8)
