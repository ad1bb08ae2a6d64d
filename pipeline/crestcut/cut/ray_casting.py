"""A second opinion on the least gaps: points of the underside, cast straight down on the slab by a library.

An independent twin of the sweep: it has none of its kernels, bounds or bookkeeping, only the poses of the
ride, the vehicle's parts and the heights. Where they meet, both measure the same thing. Plate and slab are
both flat within a triangle between neighbouring nodes, so their distance there is least at a corner, a node:
what the sweep reads. Under the inside of a plate the two therefore agree to the raster of the points. At a
plate's edge they need not: the sweep lengthens each plate by half a step (for the poses between two
stations) and reads nodes alone, up to a cell inside of that. What difference this allows is measured, not
assumed (``_due``): the swept gap of a plate lies between the gap cast from the lengthened plate, which holds
every node the sweep reads, and that cast from it without a rim of one cell's diagonal, all of whose triangles
have their three corners among those nodes.

Both run over ``Surface.top``, the highest of each cell: as triangles between nodes it lies as much above the
slab as in the sweep, so none of the difference is due to it. How far ``top`` is above what was scanned is the
surface's own question, which no casting answers.
"""

from __future__ import annotations

import math
import sys
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass, replace
from enum import StrEnum
from types import ModuleType
from typing import Any

import numpy as np

from crestcut.base.grid import BoolArray, FloatArray, IntArray
from crestcut.base.units import both
from crestcut.contact import (
    FAR,
    FRAMES,
    Batch,
    Clearance,
    Ride,
    hard_parts,
    ridden_ground,
    runs,
    settle_batch,
)
from crestcut.cut.plan import CUT, ENOUGH, cut_surface
from crestcut.terrain import Surface
from crestcut.vehicle import Vehicle

DIFFERS = 0.0005  # m: two ways to find one gap may not lie further apart than this, beyond what is due
MOST_BINDING = 16  # pairs of pose and part that hold the cut, of each vehicle; evenly among them if more
PITCHES = (0.01, 0.002, 0.0004)  # m between sample points: all over a plate, then about its lowest ones
KEPT = 64  # lowest points about which the next finer pitch is laid
LIFT = 2.0  # m above its sample point that a ray begins: an overlap is found too
_NEEDLESS = ("dash", "plotly", "plotly.graph_objects")  # what Open3D loads for its web pages alone
PACKAGES = "libegl1 libgl1 libusb-1.0-0"  # what its Linux wheels need of the system


class Absence(StrEnum):
    """Why nothing was cast."""

    NOT_INSTALLED = "open3d not installed"
    CANNOT_LOAD = "open3d cannot load"


@dataclass(frozen=True)
class NotCast:
    """No second opinion. words : for people, with what to do."""

    code: Absence
    words: str


@dataclass(frozen=True)
class Gap:
    """One least gap found both ways, m, negative = overlap; None where no part meets measured ground.

    due : where they lie further apart than ``DIFFERS``, between which ends the swept one must be.
    """

    swept: float | None
    cast: float | None
    due: tuple[float, float] | None = None


@dataclass(frozen=True)
class CastVehicle:
    """A vehicle's least gap today and on the slab as cut."""

    name: str
    before: Gap
    after: Gap


@dataclass(frozen=True)
class Difference:
    """Where sweep and rays contradict each other.  beyond : m apart, what is due taken off.  after : on the
    cut slab.  station : of the front axle from the line's start, m."""

    beyond: float
    swept: float
    cast: float
    vehicle: str
    part: str
    station: float
    after: bool


@dataclass(frozen=True)
class RayCast:
    """The second opinion: vehicles in the order they were given.  pairs : of pose and part that were cast.
    differs : the worst of the differences beyond what is due and ``DIFFERS``; None where there is none."""

    vehicles: tuple[CastVehicle, ...]
    pairs: int
    differs: Difference | None


@dataclass(frozen=True, eq=False)
class Judged:
    """A vehicle whose sweep is to be doubted: over the slab as it is and as cut.  kept : zone -> gap the cut
    was to leave, m."""

    vehicle: Vehicle
    ride: Ride
    before: Clearance
    after: Clearance
    kept: dict[str, float]


def load_caster() -> Any:
    """Open3D, loaded on first need, or ``NotCast``.

    Nine tenths of the seconds its import takes go to modules for web pages that nothing here opens: they are
    left out of it (1.2 s of processor time become 0.3).
    """
    try:
        with _without(_NEEDLESS):
            import open3d
    except ModuleNotFoundError as error:
        code = Absence.NOT_INSTALLED if error.name == "open3d" else Absence.CANNOT_LOAD
        return NotCast(code, f"{code} ({error})")
    except (ImportError, OSError, RuntimeError, AttributeError) as error:
        mend = f"; on Debian: apt-get install {PACKAGES}" if sys.platform == "linux" else ""
        return NotCast(Absence.CANNOT_LOAD, f"{Absence.CANNOT_LOAD} ({error}){mend}")
    return open3d


def contradiction(cast: RayCast | NotCast | None) -> str:
    """In words where sweep and rays contradict each other; empty where they agree, or nothing was cast."""
    found = cast.differs if isinstance(cast, RayCast) else None
    if found is None:
        return ""
    when = "once cut" if found.after else "today"
    swept, rays = (both(g) if math.isfinite(g) else "nothing" for g in (found.swept, found.cast))
    return (
        f"under the {found.part} of the {found.vehicle}, front axle {found.station:.2f} m along the line, "
        f"the gap {when} is {swept} by the sweep and {rays} by ray casting"
    )


class _Empty(ModuleType):
    """Stands for a module while another is loaded that names it and does not use it."""

    def __getattr__(self, name: str) -> None:
        if name.startswith("__"):
            raise AttributeError(name)


@contextmanager
def _without(names: Sequence[str]) -> Iterator[None]:
    stand_in = {name: _Empty(name) for name in names if name not in sys.modules}
    sys.modules.update(stand_in)
    try:
        yield
    finally:
        for name in stand_in:
            del sys.modules[name]


def ray_cast(open3d: Any, surface: Surface, depth: FloatArray, judged: Sequence[Judged]) -> RayCast:
    """The decisive gaps of every vehicle found anew: those of its poses of least gap, before and after the
    cut, zone by zone, and those that hold the cut.

    open3d : ``load_caster``.  depth : (ny, nx) taken away, m, NaN where not measured.
    """
    cut = np.nan_to_num(depth)
    lower = cut_surface(surface, cut) if cut.max(initial=0.0) > CUT else surface
    vehicles, found, pairs = [], [], 0
    for one in judged:
        casts = [
            _Cast(open3d, ground, one, swept, after)
            for ground, swept, after in ((surface, one.before, False), (lower, one.after, True))
        ]
        for cast in casts:
            found += cast.differences()
            pairs += len(cast.pairs)
        vehicles.append(CastVehicle(one.vehicle.name, *(cast.gap() for cast in casts)))
    return RayCast(tuple(vehicles), pairs, max(found, key=lambda d: d.beyond, default=None))


def _decisive(one: Judged, swept: Clearance, after: bool) -> IntArray:
    """(n, 2) pose of the batch and hard part: all parts where a zone's gap is least; after the cut also those
    pairs that hold it."""
    assert swept.pair_gap is not None
    batch, parts = one.ride.batch, hard_parts(one.vehicle)
    poses = {int(np.searchsorted(batch.variant, c.pose[0])) + c.pose[1] for c in swept.least.values()}
    pairs = {(p, m) for p in poses for m in range(len(parts))}
    if after:
        over = swept.pair_gap - np.array([one.kept[p.zone] for p in parts])
        tight = np.argwhere((over < ENOUGH) & batch.live[:, None])
        few = np.unique(np.linspace(0, len(tight) - 1, MOST_BINDING).astype(int)) if len(tight) else ()
        pairs |= {(int(tight[k, 0]), int(tight[k, 1])) for k in few}
    return np.array(sorted(pairs), dtype=np.int64).reshape(-1, 2)


class _Cast:
    """The parts of one vehicle at its decisive poses over one ground, and the ground as triangles."""

    def __init__(self, open3d: Any, surface: Surface, one: Judged, swept: Clearance, after: bool) -> None:
        self.core, self.one, self.swept, self.after = open3d.core, one, swept, after
        self.pairs = _decisive(one, swept, after)
        self.cell, self.step = surface.top.frame.cell, one.ride.line.step
        self.parts = hard_parts(one.vehicle)
        self.batch = _stood(one, surface, np.unique(self.pairs[:, 0])) if after else one.ride.batch
        self.zero = float(np.nanmedian(surface.top.values))
        self.scene = open3d.t.geometry.RaycastingScene()
        self.lone = surface.top.measured  # nodes that no triangle holds: swept, and no ray meets them
        under = self._shadows(surface)
        for part in _columns_of(under):
            corners, faces = _triangles(surface.top.values, self.zero, self.cell, under, part)
            if len(faces):
                self.scene.add_triangles(self.core.Tensor(corners), self.core.Tensor(faces))
            rows, columns = np.divmod(faces, part.stop - part.start)
            self.lone[rows, columns + part.start] = False
        self.found = [self._least(pose, m, 0.0, 0.0) for pose, m in self.pairs]

    def gap(self) -> Gap:
        """Least gap of all pairs both ways; and where these lie apart, what is due."""
        swept = math.inf if self.swept.worst is None else self.swept.worst.gap
        cast = min((gap for gap, _ in self.found), default=math.inf)
        if swept == cast or abs(swept - cast) <= DIFFERS:
            return Gap(_known(swept), _known(cast))
        each = zip(self.pairs, self.found, strict=True)
        ends = np.array([self._due(pose, m, at) for (pose, m), (_, at) in each]).min(axis=0)
        return Gap(_known(swept), _known(cast), (float(ends[0]), float(ends[1])))

    def differences(self) -> list[Difference]:
        """Every pair of which sweep and rays say another thing than is due."""
        found, batch = [], self.batch
        assert self.swept.pair_gap is not None
        for (pose, m), (cast, at) in zip(self.pairs, self.found, strict=True):
            swept = float(self.swept.pair_gap[pose, m])
            swept = swept if swept < FAR / 2 else math.inf
            if swept == cast or abs(swept - cast) <= DIFFERS:
                continue
            low, high = self._due(pose, m, at)
            if self.lone[self._box(pose, m, 2)].any():
                low = -math.inf  # the sweep may have met one of those
            if low - DIFFERS <= swept <= high + DIFFERS:
                continue
            v = int(batch.variant[pose])
            station = self.one.ride.poses[v].station[pose - int(np.searchsorted(batch.variant, v))]
            found.append(Difference(
                max(low - swept, swept - high), swept, cast, self.one.vehicle.name, self.parts[m].name,
                float(station), self.after,
            ))  # fmt: skip
        return found

    def _due(self, pose: int, m: int, at: tuple[float, float]) -> tuple[float, float]:
        """Between which gaps, m, the sweep's must lie: see the module.

        at : the point of the plate with the least gap. Within a cell's diagonal of it lies a node that the
        sweep reads, however narrow the plate: the largest gap in that circle is a bound too.
        """
        ends, sides, rim = self.step / 2, self.step / 4, math.sqrt(2) * self.cell
        narrow = max(self.cell / 2 - (self.parts[m].y[1] - self.parts[m].y[0]) / 2, 0.0)
        low = self._least(pose, m, ends, max(sides, narrow))[0]
        high = self._least(pose, m, ends - rim, sides - rim)[0]
        across = np.linspace(-rim, rim, 15)
        x, y = (c.ravel() for c in np.meshgrid(across, across))
        return low, min(high, float(self._cast(pose, m, at[0] + x, at[1] + y).max()))

    def _least(self, pose: int, m: int, ends: float, sides: float) -> tuple[float, tuple[float, float]]:
        """Least gap of one plate, m, infinite where it is over nothing, and where on the plate: x, y in the
        vehicle frame.

        ends, sides : m, the plate is made so much longer at both ends and wider at both sides.
        """
        part = self.parts[m]
        (x0, x1), (y0, y1) = (part.x[0] - ends, part.x[1] + ends), (part.y[0] - sides, part.y[1] + sides)
        if x0 > x1 or y0 > y1:
            return math.inf, (math.nan, math.nan)
        x, y = (c.ravel() for c in np.meshgrid(_steps(x0, x1), _steps(y0, y1)))
        gap = self._cast(pose, m, x, y)
        for pitch in PITCHES[1:]:
            low = np.argpartition(gap, KEPT)[:KEPT] if len(gap) > KEPT else np.arange(len(gap))
            offsets = np.arange(-2, 3) * pitch
            dx, dy = (o.ravel() for o in np.meshgrid(offsets, offsets))
            x = np.clip((x[low, None] + dx).ravel(), x0, x1)
            y = np.clip((y[low, None] + dy).ravel(), y0, y1)
            gap = self._cast(pose, m, x, y)
        k = int(np.argmin(gap))
        return float(gap[k]), (float(x[k]), float(y[k]))

    def _cast(self, pose: int, m: int, x: FloatArray, y: FloatArray) -> FloatArray:
        """Gap, m, straight down from points (n,) of a plate's plane; infinite where nothing is hit."""
        points = self._placed(pose, m, x, y)
        rays = np.zeros((len(points), 6), np.float32)
        rays[:, :3] = points + np.array([0.0, 0.0, LIFT - self.zero])
        rays[:, 5] = -1.0
        hit = self.scene.cast_rays(self.core.Tensor(rays))["t_hit"].numpy()
        return hit.astype(np.float64) - LIFT

    def _placed(self, pose: int, m: int, x: FloatArray, y: FloatArray) -> FloatArray:
        """Points of a plate's plane (n, 3) in grid axes, m, as the vehicle stands."""
        part, body = self.parts[m], FRAMES.index(self.parts[m].on)
        z = part.z[0] + (x - part.x[0]) * (part.z[1] - part.z[0]) / (part.x[1] - part.x[0])
        turn, at = self.batch.rotation[pose, body], self.batch.position[pose, body]
        return np.stack([x, y, z], axis=1) @ turn.T + at

    def _shadows(self, surface: Surface) -> BoolArray:
        """Cells (ny - 1, nx - 1) under any of the plates, with room about them."""
        under = np.zeros(tuple(n - 1 for n in surface.top.frame.shape), np.bool_)
        for pose, m in self.pairs:
            under[self._box(pose, m, 4)] = True
        return under

    def _box(self, pose: int, m: int, room: int) -> tuple[slice, slice]:
        """Rows and columns about a plate, ``room`` cells beyond it."""
        part = self.parts[m]
        corners = self._placed(pose, m, np.repeat(part.x, 2), np.tile(part.y, 2))[:, :2] / self.cell
        (i0, j0), (i1, j1) = np.floor(corners.min(axis=0)) - room, np.ceil(corners.max(axis=0)) + room
        return slice(max(int(j0), 0), max(int(j1), 0)), slice(max(int(i0), 0), max(int(i1), 0))


def _stood(one: Judged, surface: Surface, poses: IntArray) -> Batch:
    """The batch with those poses as the vehicle stands there on another ground."""
    old = one.ride.batch
    position, rotation = old.position.copy(), old.rotation.copy()
    if len(poses):
        fresh = settle_batch(
            one.vehicle, ridden_ground(surface)[0], surface.height.frame.cell, old.places[poses],
            old.variant[poses],
        )  # fmt: skip
        position[poses], rotation[poses] = fresh.position, fresh.rotation
    return replace(old, position=position, rotation=rotation)


def _known(gap: float) -> float | None:
    return gap if math.isfinite(gap) else None


def _steps(low: float, high: float) -> FloatArray:
    """From edge to edge, both of them in it."""
    return np.linspace(low, high, max(math.ceil((high - low) / PITCHES[0]), 1) + 1)


def _columns_of(wanted: BoolArray) -> list[slice]:
    """Columns of nodes (n + 1) about the wanted cells (m, n): every run of columns with any for itself."""
    return [slice(first, stop + 1) for first, stop in runs(np.asarray(wanted.any(axis=0)))]


def _triangles(
    top: FloatArray, zero: float, cell: float, wanted: BoolArray, columns: slice
) -> tuple[np.ndarray, np.ndarray]:
    """Some columns of nodes (ny k, 3) float32, m above zero, and triangles (n, 3) uint32 between measured
    ones, in the wanted cells.

    Two to a cell, one where a corner is missing.
    """
    heights, wanted = top[:, columns] - zero, wanted[:, columns.start : columns.stop - 1]
    ny, nx = heights.shape
    known = ~np.isnan(heights)
    corners = np.zeros((ny, nx, 3), np.float32)
    corners[..., 0] = np.arange(columns.start, columns.stop) * cell
    corners[..., 1] = (np.arange(ny) * cell)[:, None]
    corners[known, 2] = heights[known]
    a, b, c, d = 0, 1, nx + 1, nx  # from the first corner of a cell
    ka, kb, kc, kd = (
        known[s] & wanted for s in (np.s_[:-1, :-1], np.s_[:-1, 1:], np.s_[1:, 1:], np.s_[1:, :-1])
    )
    faces = []
    for nodes, where in (
        ((a, b, c), ka & kb & kc), ((a, c, d), ka & kc & kd),
        ((b, c, d), kb & kc & kd & ~ka), ((a, b, d), ka & kb & kd & ~kc),
    ):  # fmt: skip
        j, i = np.nonzero(where)
        faces.append((j * nx + i)[:, None] + np.array(nodes))
    return corners.reshape(-1, 3), np.concatenate(faces).astype(np.uint32)
