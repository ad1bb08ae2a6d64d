"""Simulated scans with their truth: a crest at any angle, and a slab with clutter whose every point is
labelled."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from crestcut.base.grid import FloatArray, GridFrame
from crestcut.scan.records import Frame, Scan

SLAB, KERB, LAWN, OBJECT, OVERHANG, GHOST = range(6)


def scan_of(points: FloatArray) -> Scan:
    """A scan in metres, z up, from nowhere."""
    return Scan(
        points, np.zeros(len(points), np.int16), Frame(np.ones(3), np.eye(3), np.zeros(3), "m", "z"), ()
    )


@dataclass(frozen=True)
class Crest:
    """A break through the origin at ``angle`` on a slope. kind: sharp, round (50 mm of rounding), plan (3 m
    radius), step (25 mm)."""

    kind: str
    angle: float = 0.0
    grade: float = 0.20
    at: tuple[float, float] = (0.0, 0.0)

    def across(self, xy: FloatArray) -> FloatArray:
        """Distance past the break, m."""
        x, y = xy[..., 0] - self.at[0], xy[..., 1] - self.at[1]
        v, along = (
            x * np.cos(self.angle) + y * np.sin(self.angle),
            -x * np.sin(self.angle) + y * np.cos(self.angle),
        )
        return np.hypot(v + 3.0, along) - 3.0 if self.kind == "plan" else v

    def height(self, xy: FloatArray) -> FloatArray:
        """True height, m."""
        v, slope = self.across(xy), 0.02 * xy[..., 0] + 0.01 * xy[..., 1]
        if self.kind == "step":
            return slope - np.where(v > 0, 0.025, 0.0)
        if self.kind == "round":  # a parabola over 50 mm, tangent to both sides
            t = 0.025
            rounded = np.where(v > t, v, (v + t) ** 2 / (4 * t))
            return slope - self.grade * np.where(v < -t, 0.0, rounded)
        return slope - self.grade * np.maximum(v, 0.0)


def crest_scan(
    crest: Crest,
    seed: int,
    noise: float = 0.008,
    density: float = 3000.0,
    size: tuple[float, float] = (2.0, 1.6),
    extra: Callable[[FloatArray], FloatArray] | None = None,
) -> tuple[Scan, GridFrame]:
    """Points at random places about the crest with white noise, and a 10 mm frame over the middle;
    ``extra`` adds to heights."""
    rng = np.random.default_rng(seed)
    outer = np.array(size) + 0.6
    xy = rng.uniform(-0.5, 0.5, (int(density * outer.prod()), 2)) * outer
    z = crest.height(xy) + noise * rng.standard_normal(len(xy))
    if extra is not None:
        z = z + extra(xy)
    shape = (round(size[1] / 0.01) + 1, round(size[0] / 0.01) + 1)
    return scan_of(np.column_stack([xy, z])), GridFrame((-size[0] / 2, -size[1] / 2), 0.0, 0.010, shape)


@dataclass(frozen=True, eq=False)
class Clutter:
    scan: Scan
    label: NDArray[np.int64]
    frame: GridFrame
    stands: FloatArray  # (n,) m above the ground of each point, without noise


BOXES = (  # middle x, y, size x, y, height (m)
    (1.2, 0.8, 0.50, 0.40, 0.35),  # planter
    (3.0, 2.2, 0.60, 0.60, 1.00),  # bin
    (4.4, 0.9, 0.60, 0.20, 0.55),  # wheels
    (4.4, 2.2, 0.60, 0.20, 0.55),
    (2.0, 1.2, 0.05, 0.05, 0.45),  # legs
    (2.4, 1.2, 0.05, 0.05, 0.45),
    (2.0, 1.6, 0.05, 0.05, 0.45),
    (2.4, 1.6, 0.05, 0.05, 0.45),
    (3.5, 1.0, 0.215, 0.10, 0.065),  # brick
    (0.7, 2.2, 0.12, 0.10, 0.045),  # stone
    (1.7, 2.4, 0.40, 0.15, 0.038),  # plank
)


def clutter_scan(seed: int, noise: float = 0.006, density: float = 6000.0) -> Clutter:
    """A 5.6 x 3 m slab with a crest; kerb and lawn along its left side; things on it, over it and ghosts
    under it."""
    rng = np.random.default_rng(seed)
    xy = rng.uniform((-0.4, -0.4), (6.0, 4.0), (int(density * 6.4 * 4.4), 2))
    ground = 0.02 * xy[:, 0] - 0.12 * np.maximum(xy[:, 0] - 2.8, 0.0)
    kerb, lawn = (xy[:, 1] > 3.0) & (xy[:, 1] <= 3.15), xy[:, 1] > 3.15
    label = np.where(kerb, KERB, np.where(lawn, LAWN, SLAB))
    rough = np.where(lawn, 0.09 + 0.012 * rng.standard_normal(len(xy)), np.where(kerb, 0.11, 0.0))
    parts = [np.column_stack([xy, ground + rough])]
    labels, stands = [label], [rough]
    for x, y, wide, deep, tall in BOXES:
        under = (np.abs(xy[:, 0] - x) < wide / 2) & (np.abs(xy[:, 1] - y) < deep / 2)
        labels[0] = np.where(under, -1, labels[0])
        n = int(density * (wide * deep + tall * (wide + deep)))
        side = rng.random(n) < tall * (wide + deep) / (wide * deep + tall * (wide + deep))
        p = rng.uniform(-0.5, 0.5, (n, 2)) * (wide, deep)
        face = rng.integers(0, 4, n)
        p[:, 0] = np.where(side & (face < 2), (face - 0.5) * wide, p[:, 0])
        p[:, 1] = np.where(side & (face >= 2), (face - 2.5) * deep, p[:, 1])
        h = np.where(side, rng.uniform(0, tall, n), tall)
        p += np.array([x, y])
        base = 0.02 * p[:, 0] - 0.12 * np.maximum(p[:, 0] - 2.8, 0.0)
        parts.append(np.column_stack([p, base + h]))
        labels.append(np.full(n, OBJECT))
        stands.append(h)
    leaves = rng.uniform((4.6, 0.2), (5.8, 1.2), (4000, 2))
    parts.append(np.column_stack([leaves, rng.uniform(0.25, 0.9, 4000)]))
    ghosts = rng.uniform((0, 0), (5.6, 3.0), (2500, 2))
    parts.append(np.column_stack([ghosts, rng.uniform(-0.75, -0.45, 2500)]))
    labels += [np.full(4000, OVERHANG), np.full(2500, GHOST)]
    stands += [np.full(4000, 0.3), np.full(2500, -0.3)]
    points, label, stand = np.concatenate(parts), np.concatenate(labels), np.concatenate(stands)
    points[:, 2] += noise * rng.standard_normal(len(points))
    seen = label >= 0
    frame = GridFrame((0.0, 0.0), 0.0, 0.010, (361, 561))
    return Clutter(scan_of(points[seen]), label[seen], frame, stand[seen])
