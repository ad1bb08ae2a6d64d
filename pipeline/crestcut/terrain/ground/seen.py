"""What a scan shows besides the ground that was fitted to it: typed findings, and where they lie."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from crestcut.base.grid import BoolArray, FloatArray


@dataclass(frozen=True)
class Thing:
    """Something that stands on the ground or hangs over it."""

    x: float  # site x, y of its middle, m
    y: float
    size: tuple[float, float]  # m, along and across the frame
    height: float  # m over the ground, 98th percentile of its points
    lowest: float  # m over the ground, 2nd percentile: well above zero for what hangs
    area: float  # m2 of ground under it
    points: int
    unseen: float  # share of that ground of which nothing was measured, 0..1


@dataclass(frozen=True)
class Layers:
    """A patch of ground that the scan shows twice, as two passes leave that do not agree."""

    x: float  # site x, y of its middle, m
    y: float
    size: tuple[float, float]  # m, along and across the frame
    area: float  # m2
    apart: float  # m
    up: float  # m, how far the upper one lies over the ground as it was fitted
    down: float  # m, how far the lower one lies under it


@dataclass(frozen=True, eq=False)
class Seen:
    """Everything in a window, none of it rejected. Arrays are (ny, nx) on the frame's nodes.

    crude : height of the middle of all points within reach of the ground, m, only where it is farther from
    the fitted ground than its own error and the fit's; NaN elsewhere.  error : 1 sd of ``crude``, m.
    thing : index into ``things`` of what stands over the node, -1 where nothing does.  twice : shown twice.
    rough : too rough to be concrete.  roughness : usual height of that, 1 sd, m, NaN where there is none.
    cell : between nodes, m.
    """

    crude: FloatArray
    error: FloatArray
    thing: NDArray[np.int32]
    twice: BoolArray
    rough: BoolArray
    things: tuple[Thing, ...]
    layers: tuple[Layers, ...]
    roughness: float
    cell: float
