"""The invented courtyard of a hillside pottery, exactly: every height the sample scans were made from.

Coordinates are those of the first walk, metres: x from the road up into the yard, y to the left, z up, zero
where the walker held the phone when the walk began. Nothing here is measured; all of it is made up.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import ArrayLike, NDArray

FloatArray = NDArray[np.float64]

X, Y = (-0.9, 16.2), (-0.25, 6.1)  # what the walks can see
SLAB_Y = (0.35, 4.90)  # concrete
KERB_Y = (4.90, 5.05)
KERB, WALL_TOP = 0.105, 0.55
GUTTER = 0.90  # x of the road gutter
CREST = 4.85  # x of the crest where y = 2.0
FALL, DRAIN = 10.60, 13.35  # x where the yard begins to fall, and of the drain channel before the kiln
ROAD_GRADE, APRON_GRADE, YARD_GRADE, FALL_GRADE, KILN_GRADE = -0.030, 0.166, -0.008, -0.075, 0.156
CREST_ROUNDING = 0.030  # m: floated, nearly sharp
OTHER_ROUNDING = 0.060
SKEW, BEND = 0.045, -0.012  # the crest runs a little askew and is a little curved in plan: dx/dy, and 1/m
CROSS_FALL = 0.008  # towards the kerb
DOWN = -1.42  # z of the gutter: the phone was held that far above it
JOINTS = (2.88, 7.95, 11.90)  # x of the contraction joints, 8 mm wide and 6 mm deep
MARKS = {"A": (3.20, 0.62), "B": (6.40, 0.62), "C": (6.40, 4.30)}  # chalk crosses
PLANTER = (9.1, 9.75, 3.95, 4.55, 0.42)  # x, x, y, y, height
BIN = (7.1, 4.42, 0.26, 0.94)  # x, y, radius, height
HOLE = (8.35, 3.62, 0.13, 0.10)  # x, y and half sizes of the wet patch that sent nothing back
LEAVES = 46


def _break(v: ArrayLike, before: float, after: float, rounding: float) -> FloatArray:
    """A change of grade at v = 0: a hyperbola, ``rounding`` metres wide."""
    v = np.asarray(v, dtype=float)
    return (before + after) / 2 * v + (after - before) / 2 * np.sqrt(v**2 + rounding**2)


def crest_x(y: ArrayLike) -> FloatArray:
    """x of the crest at y, metres."""
    d = np.asarray(y, dtype=float) - 2.0
    return CREST + SKEW * d + BEND * d**2 / 2


def slab(x: ArrayLike, y: ArrayLike) -> FloatArray:
    """Height of road and concrete, metres (broadcast of x, y); as if it went on for ever, without joints."""
    x, y = np.asarray(x, dtype=float), np.asarray(y, dtype=float)
    z = _break(x - GUTTER, ROAD_GRADE, APRON_GRADE, OTHER_ROUNDING)
    z = z + _break(x - crest_x(y), APRON_GRADE, YARD_GRADE, CREST_ROUNDING) - APRON_GRADE * (x - crest_x(y))
    z = z + _break(x - FALL, YARD_GRADE, FALL_GRADE, OTHER_ROUNDING) - YARD_GRADE * (x - FALL)
    z = z + _break(x - DRAIN, FALL_GRADE, KILN_GRADE, OTHER_ROUNDING) - FALL_GRADE * (x - DRAIN)
    return z - CROSS_FALL * (y - 2.0) + DOWN


def ground(x: ArrayLike, y: ArrayLike) -> FloatArray:
    """Height of the slab with its joints, metres: what a straightedge would find."""
    x = np.asarray(x, dtype=float)
    z = slab(x, y)
    for joint in JOINTS:
        z = z - 0.006 * (np.abs(x - joint) < 0.004)
    return z


LABELS = ("slab", "road", "kerb", "lawn", "wall", "planter", "bin", "leaf")


def label(x: ArrayLike, y: ArrayLike) -> NDArray[np.int8]:
    """Index into LABELS of what one sees from above at x, y."""
    x, y = np.broadcast_arrays(np.asarray(x, dtype=float), np.asarray(y, dtype=float))
    out = np.zeros(x.shape, np.int8)
    out[x < GUTTER] = 1
    out[_in_leaf(x, y)] = 7
    out[(y > KERB_Y[0]) & (x >= GUTTER)] = 2
    out[(y > KERB_Y[1]) & (x >= GUTTER)] = 3
    out[(y < 0.0) & (x >= GUTTER)] = 4
    out[_in_planter(x, y)] = 5
    out[np.hypot(x - BIN[0], y - BIN[1]) < BIN[2]] = 6
    return out


def seen(x: ArrayLike, y: ArrayLike) -> FloatArray:
    """Height of the uppermost thing at x, y: slab, kerb, lawn, wall, planter with its plant, bin, leaf.
    Metres.
    """
    x, y = np.broadcast_arrays(np.asarray(x, dtype=float), np.asarray(y, dtype=float))
    z = np.array(ground(x, y))
    kind = label(x, y)
    z[kind == 7] += 0.009 + 0.004 * np.sin(60.0 * x[kind == 7])
    z[kind == 2] += KERB
    lawn = kind == 3
    z[lawn] += (
        KERB - 0.02 + 0.018 * np.sin(41.0 * x[lawn] + 7.0 * np.sin(23.0 * y[lawn])) * np.cos(37.0 * y[lawn])
    )
    z[kind == 4] += WALL_TOP
    plant = kind == 5
    bush = np.clip(1.0 - ((x[plant] - 9.42) / 0.36) ** 2 - ((y[plant] - 4.25) / 0.34) ** 2, 0.0, None)
    z[plant] += PLANTER[4] + 0.33 * np.sqrt(bush) + 0.03 * np.sin(90.0 * x[plant]) * np.cos(80.0 * y[plant])
    z[kind == 6] += BIN[3]
    return z


def _in_planter(x: FloatArray, y: FloatArray) -> NDArray[np.bool_]:
    return (x > PLANTER[0]) & (x < PLANTER[1]) & (y > PLANTER[2]) & (y < PLANTER[3])


def _leaves() -> FloatArray:
    """(LEAVES, 4) x, y, long and short half axis of fallen leaves, drifted towards the kerb."""
    rng = np.random.default_rng(11)
    x = rng.uniform(1.2, 15.5, LEAVES)
    y = SLAB_Y[1] - 0.05 - rng.gamma(1.3, 0.75, LEAVES)
    size = rng.uniform(0.025, 0.060, LEAVES)
    return np.column_stack([x, np.clip(y, 0.5, 4.85), size, size * rng.uniform(0.4, 0.8, LEAVES)])


_LEAF = _leaves()


def _in_leaf(x: FloatArray, y: FloatArray) -> NDArray[np.bool_]:
    out = np.zeros(x.shape, dtype=bool)
    for lx, ly, a, b in _LEAF:
        out |= ((x - lx) / a) ** 2 + ((y - ly) / b) ** 2 < 1.0
    return out


def string_down(
    a: tuple[float, float], b: tuple[float, float], blocks: float, at: float | None = None
) -> float:
    """What a rule reads from a taut string on two blocks down to the slab, metres: at a distance from ``a``,
    or the least.
    """
    length = float(np.hypot(b[0] - a[0], b[1] - a[1]))
    s = np.linspace(0.0, 1.0, 4001) if at is None else np.array([at / length])
    x, y = a[0] + s * (b[0] - a[0]), a[1] + s * (b[1] - a[1])
    ends = slab(np.array([a[0], b[0]]), np.array([a[1], b[1]])) + blocks
    return float(np.min(ends[0] + s * (ends[1] - ends[0]) - slab(x, y)))
