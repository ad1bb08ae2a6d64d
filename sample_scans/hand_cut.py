"""What the hand took off the apron: the depths the work sheets gave, followed as a hand does.

``apron_cut.csv`` holds those depths, in millimetres every 20 mm, as ``courtyard_apron_measured.toml`` was
planned (``readings.py`` writes them). The hand went a little over the drawn edge and a little deeper than
asked, unevenly, nowhere else.
"""

from __future__ import annotations

from functools import cache
from pathlib import Path

import numpy as np
from numpy.typing import NDArray

FloatArray = NDArray[np.float64]

CORNER, STEP = (4.30, 0.90), 0.02  # m: x, y of the first depth, and between depths
SIZE = (111, 57)  # depths: rows, columns
STRAY = 0.040  # m that the hand went over the drawn edge, all round
OVER = 0.0035  # m deeper than asked on the whole
UNEVEN, UNEVEN_HALF = 0.0008, 0.12  # m, 1 sd about that; its covariance halves at
SEED = 41


@cache
def planned() -> FloatArray:
    """(rows, columns) m: the depths asked for; rows run with y."""
    asked: FloatArray = np.loadtxt(Path(__file__).with_name("apron_cut.csv"), delimiter=",") / 1000
    return asked


@cache
def _extent() -> tuple[tuple[float, float], tuple[float, float]]:
    """x, y of the cut's middle, and half its size, m."""
    rows, columns = np.nonzero(planned())
    ends = [(c + STEP * k.min(), c + STEP * k.max()) for k, c in zip((columns, rows), CORNER, strict=True)]
    (a, b), (c, d) = ends
    return ((a + b) / 2, (c + d) / 2), ((b - a) / 2, (d - c) / 2)


def forget() -> None:
    """The depths were written anew."""
    planned.cache_clear()
    _extent.cache_clear()


@cache
def _unevenness() -> object:
    from walk import Field

    return Field(np.random.default_rng(SEED), UNEVEN_HALF)


def removed(x: FloatArray, y: FloatArray) -> FloatArray:
    """m taken off at x, y (alike in shape): bilinear between the depths, 0 outside."""
    grid = planned()
    # what was drawn, stretched about its middle until its edge lies where the hand went
    each = zip((x, y), *_extent(), strict=True)
    drawn = [c + (np.asarray(p) - c) * h / (h + STRAY) for p, c, h in each]
    u, v = (drawn[0] - CORNER[0]) / STEP, (drawn[1] - CORNER[1]) / STEP
    inside = (u >= 0) & (v >= 0) & (u < grid.shape[1] - 1) & (v < grid.shape[0] - 1)
    i, j = np.where(inside, u, 0).astype(int), np.where(inside, v, 0).astype(int)
    a, b = np.where(inside, u - i, 0.0), np.where(inside, v - j, 0.0)
    low = grid[j, i] * (1 - a) + grid[j, i + 1] * a
    depth = low * (1 - b) + (grid[j + 1, i] * (1 - a) + grid[j + 1, i + 1] * a) * b
    # at the edge the hand is as careful as the depth is small
    share = np.clip(depth / 0.003, 0.0, 1.0)
    odd = OVER + UNEVEN * _unevenness()(x, y)  # type: ignore[operator]
    return np.where(inside, np.maximum(depth + share * odd, 0.0), 0.0)
