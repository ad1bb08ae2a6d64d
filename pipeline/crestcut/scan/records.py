"""What a scan is once it is read: points in metres, z up, near a local origin."""

from __future__ import annotations

from dataclasses import dataclass, field
from pathlib import Path

import numpy as np
from numpy.typing import ArrayLike, NDArray

from crestcut.base.grid import FloatArray, frozen_array
from crestcut.base.summary import Summary
from crestcut.scan.placing.system import NO_SYSTEM, System


@dataclass(frozen=True, eq=False)
class Frame:
    """How the scan's own coordinates become site coordinates, and back.

    site = rotation @ (scale * file) - shift.  ``scale`` (3,): metres per file unit, one for each *file* axis.
    ``rotation`` (3, 3): turns the scaled file axes so that z is up.  ``shift`` (3,): metres, float64, taken
    off after turning.
    """

    scale: FloatArray
    rotation: FloatArray
    shift: FloatArray
    unit: str  # as printed: "m", "ft", "us-ft", "mm" ...
    up: str  # x y z -x -y -z: the file axis that points up
    system: System = NO_SYSTEM  # the reference system that the file or the job names

    def __post_init__(self) -> None:
        object.__setattr__(self, "scale", frozen_array(self.scale, ndim=1, name="scale"))
        object.__setattr__(self, "rotation", frozen_array(self.rotation, ndim=2, name="rotation"))
        object.__setattr__(self, "shift", frozen_array(self.shift, ndim=1, name="shift"))

    def to_site(self, file_xyz: ArrayLike) -> FloatArray:
        """File coordinates (..., 3) in file units -> site coordinates (..., 3) in metres."""
        return (np.asarray(file_xyz, dtype=float) * self.scale) @ self.rotation.T - self.shift

    def to_file(self, site_xyz: ArrayLike) -> FloatArray:
        """Site coordinates (..., 3) in metres -> file coordinates (..., 3) in file units."""
        return ((np.asarray(site_xyz, dtype=float) + self.shift) @ self.rotation) / self.scale

    @property
    def turned_scale(self) -> FloatArray:
        """(3,) metres per file unit along the axes, after turning z up."""
        return np.abs(self.rotation @ np.diag(self.scale) @ self.rotation.T).diagonal()

    @property
    def plan_scale(self) -> FloatArray:
        """(2,) of ``turned_scale``, of the plan."""
        return self.turned_scale[:2]

    def to_own(self, site_xyz: ArrayLike) -> FloatArray:
        """Site x, y, z (..., 3) in metres -> the scan's own east, north and height (..., 3), in file units, z
        turned up."""
        return (np.asarray(site_xyz, dtype=float) + self.shift) / self.turned_scale

    def plan_to_site(self, plan_xy: ArrayLike) -> FloatArray:
        """Plan coordinates (..., 2), in file units after turning z up (what a job file calls a point) ->
        site x, y, metres."""
        return np.asarray(plan_xy, dtype=float) * self.plan_scale - self.shift[:2]

    def site_to_plan(self, site_xy: ArrayLike) -> FloatArray:
        """Site x, y (..., 2) in metres -> plan coordinates (..., 2) in file units."""
        return (np.asarray(site_xy, dtype=float)[..., :2] + self.shift[:2]) / self.plan_scale


@dataclass(frozen=True)
class Bridge:
    """A hole of a mesh that a few far too large triangles bridge: not measured."""

    area: float  # m2, seen from above
    x: float  # site x, y of its middle, metres, in the frame of the file it is in
    y: float
    size: tuple[float, float]  # m, along x and y
    faces: int


@dataclass(frozen=True)
class ScanFile:
    """One file as it was read."""

    path: Path
    format: str
    sha256: str
    points: int  # kept
    dropped: int  # NaN, infinite or otherwise unusable
    mesh_edge: float | None  # median triangle edge, m; None for a point cloud
    unit_reason: str  # "written in the file" or how it was guessed
    up_reason: str
    fit_error: float | None = None  # m, rms after registration on the first file; None for the first
    bridges: tuple[Bridge, ...] = ()  # holes of a mesh that its triangles bridge, left out; largest first
    unit_guessed: bool = False  # told from the scan's size alone
    unit_alternatives: tuple[str, ...] = ()  # units in which a scan of this size would be a slab too
    up_guessed: bool = False  # told from the scan's shape alone
    quantum: float = 0.0  # m: what the coordinates are rounded to in the file; 0 where finer than can be seen


@dataclass(frozen=True)
class ScanPass:
    """One walk, or one station of a scanner: what may disagree with the others of a scan.

    residual : m rms of what it and those before it both saw, once laid on one another; None for the first, or
    where they saw nothing in common.  off : m along site x, y and up that it lies beside those before it, as
    its file has it; None where it was laid on them, or cannot be told.
    """

    name: str
    points: int
    residual: float | None = None
    off: tuple[float, float, float] | None = None


@dataclass(frozen=True, eq=False, repr=False)
class Scan(Summary):
    """Points of one slab from one or more files.

    points : (n, 3) float64 site metres, z up, in file order.  source : (n,) int16, index into ``files``.
    pass_of : (n,) int16, index into ``passes``; a file is one pass unless it holds several stations.
    colours : (n, 3) uint8 or None.  time : (n,) float64 seconds or None.
    """

    points: FloatArray
    source: NDArray[np.int16]
    frame: Frame
    files: tuple[ScanFile, ...]
    colours: NDArray[np.uint8] | None = None
    time: FloatArray | None = None
    notes: tuple[str, ...] = ()  # plain sentences for the user
    passes: tuple[ScanPass, ...] = ()
    pass_of: NDArray[np.int16] = field(default_factory=lambda: np.empty(0, np.int16))

    @property
    def summary(self) -> str:
        """How many points of what, how large, and in which unit they came."""
        x, y, z = np.ptp(self.points, axis=0) if len(self.points) else np.zeros(3)
        names = ", ".join(f.path.name for f in self.files)
        size = f"{x:.1f} x {y:.1f} m, {z:.2f} m from lowest to highest"
        return f"{len(self.points):,} points of {names}\n  {size}; coordinates came in {self.frame.unit}"

    def __post_init__(self) -> None:
        if not self.passes:
            each = (ScanPass(f.path.name, f.points, f.fit_error) for f in self.files)
            object.__setattr__(self, "passes", tuple(each))
        of = self.pass_of if len(self.pass_of) else self.source
        object.__setattr__(self, "pass_of", frozen_array(of, np.int16, 1, "pass_of"))
        points = frozen_array(self.points, ndim=2, name="points")
        if points.shape[1] != 3 or not np.isfinite(points).all():
            raise ValueError("points: (n, 3) finite values expected")
        object.__setattr__(self, "points", points)
        object.__setattr__(self, "source", frozen_array(self.source, np.int16, 1, "source"))
        if self.colours is not None:
            object.__setattr__(self, "colours", frozen_array(self.colours, np.uint8, 2, "colours"))
        if self.time is not None:
            object.__setattr__(self, "time", frozen_array(self.time, np.float64, 1, "time"))
