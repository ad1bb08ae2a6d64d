"""The slab as a surface: heights, what may be rolled on and cut, and how wrong it may be."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from enum import Enum, StrEnum
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray

from crestcut.base.grid import BoolArray, FloatArray, HeightGrid, frozen_array
from crestcut.base.summary import Summary
from crestcut.base.units import millimetres
from crestcut.terrain.breaklines.breaks import Break
from crestcut.terrain.ground.seen import Seen

if TYPE_CHECKING:
    from crestcut.terrain.slab.posterior import Posterior


class Known(StrEnum):
    """From what the size of a scan's warp is known."""

    REPEATS = "repeats"
    WALK = "walk"  # one walk compared with itself
    NAMED = "named"  # a prior for the kind of scanner that was named
    UNNAMED = "unnamed"  # a prior for no scanner in particular


class DoubtKind(Enum):
    """What of a scan no fit can answer for."""

    NO_SCALE = "no scale"
    GUESSED = "guessed"
    ROUNDED = "rounded"
    STATIONS = "stations"
    FACES = "faces down"
    UP = "up"


@dataclass(frozen=True)
class Doubt:
    """One such thing.  words : told with every verdict.  decides : no verdict is above 'cannot tell'.
    units : of a guessed unit, those others that would make a slab of the scan too.
    """

    kind: DoubtKind
    words: str
    decides: bool
    units: tuple[str, ...] = ()


@dataclass(frozen=True)
class ErrorModel:
    """Three parts of the error of a scan's height, each a standard deviation in metres, and where each figure
    came from.

    white : one point's own noise about the fitted surface.  patch : correlated over ``patch_length`` (about
    0.1 m).
    warp : smooth, Matern-3/2 with covariance falling to half at ``warp_length`` metres.
    ``*_source`` is a plain phrase: "from two repeats", "from the order of the points", "prior for phone
    scanners".
    mesh_edge : of the triangles the heights were taken from, m, which cut crests; 0 for points.
    known : from what the warp's size is known.
    slab : what the slab may be, given heights with these errors (``posterior``): then the heights are its
    mean and how wrong they are is drawn from it; None: heights as scanned, wrong by the parts above.
    worked : (patch, warp), m, of what was done to the slab since, on top of ``slab``.  worked_on : by what
    they are multiplied at each node, 0 to 1; None: one everywhere.
    doubts : what none of these figures holds.  uneven : by how much heights as scanned are too high since one
    of two passes has more points there than the other, m (``unevenness``); None: by nothing that is known, or
    taken off already.
    """

    white: float
    patch: float
    patch_length: float
    warp: float
    warp_length: float
    white_source: str
    patch_source: str
    warp_source: str
    mesh_edge: float = 0.0
    known: Known = Known.UNNAMED
    slab: Posterior | None = None
    worked: tuple[float, float] = (0.0, 0.0)
    worked_on: HeightGrid | None = None
    doubts: tuple[Doubt, ...] = ()
    uneven: HeightGrid | None = field(default=None, compare=False)

    @property
    def of_work(self) -> ErrorModel:
        """Of ``worked`` alone where it is one, as a scan's is."""
        patch, warp = self.worked
        return replace(self, patch=patch, warp=warp, slab=None, worked=(0.0, 0.0), worked_on=None)


@dataclass(frozen=True, eq=False, repr=False)
class Surface(Summary):
    """Everything about the ground inside the window.

    height : best estimate, metres, NaN not measured; what a tyre rolls on (a narrow joint does not lower it).
    top : at least ``height``: raised by what the surface rises inside the cell above the straight line
    between its nodes, so that a crest between two nodes is not lost to contact.
    standard_error : of ``height``, white part only, metres, 1 sd; NaN where height is.
    rollable : (ny, nx) a tyre may roll here (ground of any kind, measured).
    slab : (ny, nx) concrete that could be cut: inside the slab's own outline, not kerb, lawn or gravel.
    removed : (what, points) for what was taken away before fitting.
    breaks : the lines along which it folds or steps, as the fit found them.
    scanned : heights as fitted to the scan, its own error in them, where ``height`` is the slab judged apart
    from that; None where it is not.
    seen : what the scan shows besides, none of it taken away; None where the heights come from elsewhere.
    joints : (n, 2, 2) grid u, v of both ends of each straight joint that was bridged, m.
    """

    height: HeightGrid
    top: HeightGrid
    standard_error: HeightGrid
    rollable: BoolArray
    slab: BoolArray
    error: ErrorModel
    removed: tuple[tuple[str, int], ...]
    points_used: int
    notes: tuple[str, ...] = ()
    breaks: tuple[Break, ...] = ()
    scanned: HeightGrid | None = None
    seen: Seen | None = None
    joints: FloatArray = field(default_factory=lambda: np.empty((0, 2, 2)))

    @property
    def summary(self) -> str:
        """How much is measured, how finely, how well, and where the heights are from."""
        frame, error = self.height.frame, self.error
        (length, width), area = frame.size, float(self.height.measured.sum()) * frame.cell**2
        noise = f"white {millimetres(error.white)}, patch {millimetres(error.patch)}"
        whose = "heights as scanned" if error.slab is None else (
            f"waves of the slab {millimetres(error.slab.split.slab)},"
            f" of the scan {millimetres(error.slab.split.scan)}"
        )  # fmt: skip
        return (
            f"{length:.1f} x {width:.1f} m at {millimetres(frame.cell, 0)}, {area:.1f} m2 of it measured\n"
            f"  scan's error, 1 sd: {noise}, warp {millimetres(error.warp)}; {whose}"
        )

    def __post_init__(self) -> None:
        for name in ("rollable", "slab"):
            array: NDArray = frozen_array(getattr(self, name), np.bool_, 2, name)
            if array.shape != self.height.frame.shape:
                raise ValueError(f"{name}: shape {self.height.frame.shape} expected, {array.shape} found")
            object.__setattr__(self, name, array)

    def as_scanned(self) -> Surface:
        """Heights as fitted to the scan, with its own errors: to be compared with another scan of the same
        ground."""
        if self.scanned is None:
            return self
        rise = self.top.values - self.height.values
        return replace(
            self, height=self.scanned, top=self.scanned.like(self.scanned.values + rise), scanned=None,
            error=replace(self.error, slab=None, worked=(0.0, 0.0), worked_on=None),
        )  # fmt: skip
