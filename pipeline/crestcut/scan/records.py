"""What a scan is once it is read: points in metres, z up, near a local origin."""

from __future__ import annotations

from dataclasses import dataclass, field
from pathlib import Path

import numpy as np
from numpy.typing import ArrayLike, NDArray

from crestcut.base.grid import BoolArray, FloatArray, GridFrame, frozen_array
from crestcut.base.summary import Summary
from crestcut.scan.control.fit import Fitted, Movement
from crestcut.scan.formats.raw import Origin, Tally
from crestcut.scan.placing.system import NO_SYSTEM, System


@dataclass(frozen=True, eq=False)
class Frame:
    """How the scan's own coordinates become site coordinates, and back.

    site = rotation @ (scale * file) - shift.  ``scale`` (3,): metres per file unit, one for each *file* axis.
    ``rotation`` (3, 3): turns the scaled file axes so that z is up.  ``shift`` (3,): metres, float64, taken
    off after turning.  ``grid`` : a length of the plan in the scan's own coordinates over the same on the
    ground, which site metres are.  ``scanned`` : of a scan that was tied to control, whose own coordinates
    are the control's: how it came.
    """

    scale: FloatArray
    rotation: FloatArray
    shift: FloatArray
    unit: str  # as printed: "m", "ft", "us-ft", "mm" ...
    up: str  # x y z -x -y -z: the file axis that points up
    system: System = NO_SYSTEM  # the reference system that the file or the job names
    grid: float = 1.0
    scanned: Scanned | None = None

    def __post_init__(self) -> None:
        object.__setattr__(self, "scale", frozen_array(self.scale, ndim=1, name="scale"))
        object.__setattr__(self, "rotation", frozen_array(self.rotation, ndim=2, name="rotation"))
        object.__setattr__(self, "shift", frozen_array(self.shift, ndim=1, name="shift"))

    def to_site(self, file_xyz: ArrayLike) -> FloatArray:
        """File coordinates (..., 3) in file units -> site coordinates (..., 3) in metres."""
        turned = (np.asarray(file_xyz, dtype=float) * self.scale) @ self.rotation.T
        return turned / self._stretch - self.shift

    def to_file(self, site_xyz: ArrayLike) -> FloatArray:
        """Site coordinates (..., 3) in metres -> file coordinates (..., 3) in file units."""
        turned = (np.asarray(site_xyz, dtype=float) + self.shift) * self._stretch
        return (turned @ self.rotation) / self.scale

    @property
    def _stretch(self) -> FloatArray:
        """(3,) of the plan alone: heights are true lengths in every system."""
        return np.array([self.grid, self.grid, 1.0])

    @property
    def turned_scale(self) -> FloatArray:
        """(3,) metres per file unit along the axes, after turning z up."""
        return np.abs(self.rotation @ np.diag(self.scale) @ self.rotation.T).diagonal()

    @property
    def words(self) -> str:
        """Whose coordinates places are printed in: "m, as in the scan", or the control's."""
        whose = "as in the scan" if self.scanned is None else self.system.plan or "as the control"
        return f"{self.unit}, {whose}"

    def as_written(self, plan_xy: ArrayLike) -> str:
        """A place in own coordinates as a job file takes it."""
        x, y = (float(v) for v in np.asarray(plan_xy, dtype=float))
        return f"[{x:.2f}, {y:.2f}]" if self.scanned is None else f"{{ east = {x:.2f}, north = {y:.2f} }}"

    @property
    def plan_scale(self) -> FloatArray:
        """(2,) of ``turned_scale``, of the plan."""
        return self.turned_scale[:2]

    def to_own(self, site_xyz: ArrayLike) -> FloatArray:
        """Site x, y, z (..., 3) in metres -> the scan's own east, north and height (..., 3), in file units, z
        turned up."""
        return (np.asarray(site_xyz, dtype=float) + self.shift) * self._stretch / self.turned_scale

    def own_to_site(self, own_xyz: ArrayLike) -> FloatArray:
        """The other way."""
        return np.asarray(own_xyz, dtype=float) * self.turned_scale / self._stretch - self.shift

    def plan_to_site(self, plan_xy: ArrayLike) -> FloatArray:
        """The scan's own plan coordinates (..., 2), in file units after turning z up -> site x, y, metres."""
        return np.asarray(plan_xy, dtype=float) * self.plan_scale / self.grid - self.shift[:2]

    def site_to_plan(self, site_xy: ArrayLike) -> FloatArray:
        """Site x, y (..., 2) in metres -> plan coordinates (..., 2) in file units."""
        return (np.asarray(site_xy, dtype=float)[..., :2] + self.shift[:2]) * self.grid / self.plan_scale

    def of_other(self, other: Frame, site_xyz: FloatArray) -> FloatArray:
        """Site coordinates (n, 3) of another scan of the place -> these, by what both call their own."""
        if self.scanned is not None and not other.system.plan:  # it came as this one did
            before = site_xyz + (other.shift - self.scanned.frame.shift)
            return self.scanned.movement.apply(before)
        if self.system.plan and other.system.plan:
            return self.own_to_site(other.to_own(site_xyz))
        return site_xyz + (other.shift - self.shift)

    def written_to_site(self, plan_xy: ArrayLike) -> FloatArray:
        """What a job file writes as [x, y], (..., 2): coordinates of the scan as it came -> site x, y,
        metres."""
        if self.scanned is None:
            return self.plan_to_site(plan_xy)
        before = self.scanned.frame.plan_to_site(plan_xy)
        return self.scanned.movement.apply(_with_height(before, self.scanned.level))[..., :2]


@dataclass(frozen=True, eq=False)
class Scanned:
    """A scan before it was tied to control: its frame then, and how it was moved since. level : m, site
    height in that frame of places that are given without one; half a metre beside it is worth 0.5 mm of place
    for each milliradian of tilt."""

    frame: Frame
    movement: Movement
    level: float


def _with_height(xy: FloatArray, height: float) -> FloatArray:
    return np.concatenate([xy, np.full((*xy.shape[:-1], 1), height)], axis=-1)


@dataclass(frozen=True)
class TiedPoint:
    """A control point. at : as surveyed, own units.  residual : m, east, north and up, where the scan has it
    less where it was surveyed.  redundancy : of each, 0 to 1: the share of an error there that shows in the
    residual.  height_of_scan : its height was taken from the scan about it, not given."""

    name: str
    at: tuple[float, float, float]
    residual: tuple[float, float, float]
    redundancy: tuple[float, float, float]
    height_of_scan: bool

    @property
    def off(self) -> float:
        """m."""
        return float(np.linalg.norm(self.residual))


@dataclass(frozen=True, eq=False)
class Tie:
    """How a scan was tied to control. scale : what the control makes the scan's size, and 1 sd of it, whether
    it was taken up (``free``) or not.  stated : standard deviations were."""

    points: tuple[TiedPoint, ...]
    fitted: Fitted
    free: bool
    scale: tuple[float, float]
    stated: bool

    @property
    def rms(self) -> float:
        """m, of all residuals of a point together."""
        return float(np.sqrt(np.mean([p.off**2 for p in self.points])))

    @property
    def worst(self) -> TiedPoint:
        """The point whose residual is largest."""
        return max(self.points, key=lambda p: p.off)

    @property
    def suspect(self) -> TiedPoint:
        """The point without which the others agree best."""
        return self.points[self.fitted.suspect.number]

    def height_sd(self, site_xyz: FloatArray) -> FloatArray:
        """(n,) m, 1 sd of heights at places (n, 3), site m, by the tie alone."""
        return self.fitted.sd(site_xyz)[:, 2]


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
    sha256: str  # with that of files beside it that hold its numbers: ``load.scan_digest``
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
    up_shown: str = ""  # what of the file itself shows that up is up; "" where nothing does
    faces_down: bool = False  # its mesh is seen from below, by the order of its corners
    quantum: float = 0.0  # m: what the coordinates are rounded to in the file; 0 where finer than can be seen
    size: int = 0  # bytes
    origin: Origin = field(default_factory=Origin)


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


@dataclass(frozen=True, eq=False)
class Photo:
    """Mean colours (ny, nx, 3) of the points about each node, and where there are any (ny, nx)."""

    frame: GridFrame
    colours: NDArray[np.uint8]
    seen: BoolArray


@dataclass(frozen=True, eq=False, repr=False)
class Scan(Summary):
    """Points of one slab from one or more files.

    points : (n, 3) float64 site metres, z up, in file order.  source : (n,) int16, index into ``files``.
    pass_of : (n,) int16, index into ``passes``; a file is one pass unless it holds several stations.
    colours : (n, 3) uint8 or None.  time : (n,) float64 seconds or None.
    every : how manieth point is held, of all or of those in the part that was asked for.  whole : (m, 3) a
    few of all points, where ``points`` are those of a part; None where they are of all.  classed : whether
    its one file says of its points what they are.  tally : of a file of which but some points are held, until
    those that are needed are.
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
    tie: Tie | None = None
    every: int = 1
    whole: FloatArray | None = None
    classed: bool = False
    tally: Tally | None = None

    @property
    def all_over(self) -> FloatArray:
        """(m, 3) points from wherever there are any, for what is told of a scan as a whole."""
        return self.points if self.whole is None else self.whole

    @property
    def count(self) -> int:
        """Points held."""
        return len(self.points)

    def near(self, places: FloatArray, reach: float) -> FloatArray:
        """(k, 3) points within ``reach`` m of any of places (m, 2), site m, along x and along y."""
        found = np.zeros(len(self.points), bool)
        for x, y in places:
            found |= (np.abs(self.points[:, 0] - x) <= reach) & (np.abs(self.points[:, 1] - y) <= reach)
        return self.points[found]

    def photo(self, frame: GridFrame) -> Photo | None:
        """Its colours on the nodes of ``frame``; None where it has none."""
        if self.colours is None:
            return None
        ny, nx = frame.shape
        i, j = np.rint(frame.to_grid(self.points[:, :2]) / frame.cell).astype(int).T
        inside = (i >= 0) & (i < nx) & (j >= 0) & (j < ny)
        flat = j[inside] * nx + i[inside]
        n = np.bincount(flat, minlength=nx * ny)
        total = [np.bincount(flat, self.colours[inside, k], nx * ny) for k in range(3)]
        mean = np.stack(total, axis=-1) / np.maximum(n, 1)[:, None]
        return Photo(frame, mean.astype(np.uint8).reshape(ny, nx, 3), (n > 0).reshape(ny, nx))

    @property
    def summary(self) -> str:
        """How many points of what, how large, and in which unit they came."""
        x, y, z = np.ptp(self.all_over, axis=0) if len(self.all_over) else np.zeros(3)
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
