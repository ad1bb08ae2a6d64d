"""Which points are ground: what a tyre may roll on, what of it is slab that could be cut, and what was
taken away."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from scipy import ndimage

from crestcut.base.errors import CrestcutError
from crestcut.base.grid import BoolArray, FloatArray, GridFrame
from crestcut.job import Settings
from crestcut.scan import Scan
from crestcut.terrain.ground.all_points import Fitted, see_all
from crestcut.terrain.ground.raster import Lattice, pitch_for
from crestcut.terrain.ground.regions import GHOST, GROUND, OBJECT, Pieces, split
from crestcut.terrain.ground.seen import Seen
from crestcut.terrain.ground.tiles import Tiles, make_tiles, residuals, robust_planes, tile_spread

BESIDE = 2.0  # standard deviations: points farther above the ground right beside an object are taken away
# times the slab's own spread: lawn, gravel (a phone's own noise grows 1.5 times from near to far)
ROUGHER = 1.7
SMOOTH = 0.006  # m: a spread below this is never called rough: it would be brushed concrete
SPECK = 0.011  # m2 of ground: less in the midst of slab is slab (four tiles of 50 mm)
SECOND, TWICE = 0.15, 0.3  # m over the ground, and share of it, that a second layer has
KERB_WIDTH = 0.45  # m: a raised strip narrower than this is a kerb
AS_USUAL = Settings()
# of a whole scan, before any line is drawn on it
FAR_SHARE = 0.0005  # of the points at each side that may be strays and do not stretch the window
MOST_POINTS = 1_600_000  # of more, every second, third ... is enough here
LARGEST = 5000.0  # m2: over more there are sites, not slabs
FEWEST = 200  # points


@dataclass(frozen=True, eq=False)
class Ground:
    """keep : (n,) points that are ground.  noise : sd of one of them, m.  rollable, slab : per lattice cell.

    removed : (what in plain words, points) of what was taken away inside the lattice.
    twice : height of a second layer over much of the ground, m, where the scan shows it twice.
    seen : everything in the window, what was taken away included; None where there is no ground.
    """

    keep: BoolArray
    noise: float
    rollable: BoolArray
    slab: BoolArray
    removed: tuple[tuple[str, int], ...]
    twice: float | None = None
    seen: Seen | None = None


def limit_of(noise: float, settings: Settings) -> float:
    """How far off the ground's plane a point may lie and still be ground, m; noise : 1 sd of one, m."""
    return max(settings.near, settings.far * noise)


@dataclass(frozen=True, eq=False)
class _Told:
    """The tiles told apart. above : (n,) of each point over its ground, m.  upper : (n,) how much
    that may be, m."""

    pieces: Pieces
    fitted: Fitted
    above: FloatArray
    upper: FloatArray


def find_ground(lattice: Lattice, placed: FloatArray, settings: Settings = AS_USUAL) -> Ground:
    """Robust separation of ground from what stands on it, hangs over it or lies below it; ``placed`` (n, 3)
    as on the lattice."""
    told = _tell(make_tiles(lattice, placed), lattice, placed, settings)
    if told is None:
        nothing = np.zeros(lattice.shape, bool)
        return Ground(np.zeros(len(placed), bool), 5e-5, nothing, nothing, ())
    fitted, pieces, above = told.fitted, told.pieces, told.above
    tiles, is_ground = fitted.tiles, fitted.is_ground
    removed = _words(tiles, pieces, above, fitted.keep, told.upper, len(placed))
    spread = tile_spread(above, fitted.keep, tiles.start, tiles.order)
    slab = _slab(tiles, pieces, is_ground, spread, settings)
    seen, rough = see_all(lattice, placed, fitted)
    cells = _to_cells(is_ground, tiles, lattice), _to_cells(slab & ~rough, tiles, lattice)
    twice = _second_layer(tiles, is_ground, above, fitted.limit)
    return Ground(fitted.keep, fitted.noise, *cells, removed, twice, seen)


def rollable_ground(lattice: Lattice, placed: FloatArray) -> tuple[BoolArray, BoolArray]:
    """(n,) points that are ground and, per lattice cell, what a tyre may roll on: of ``find_ground`` what a
    plan needs before any line is drawn on it, without the rest."""
    tiles = make_tiles(lattice, placed)
    told = _tell(tiles, lattice, placed, AS_USUAL)
    if told is None:
        return np.zeros(len(placed), bool), np.zeros(lattice.shape, bool)
    return told.fitted.keep, _to_cells(told.fitted.is_ground, tiles, lattice)


def _tell(tiles: Tiles, lattice: Lattice, placed: FloatArray, settings: Settings) -> _Told | None:
    """Which tiles and points are ground; None where no tile has a level."""
    if np.isnan(tiles.level).all():
        return None
    pieces = split(tiles.level, tiles.width, _inner(lattice, tiles))
    is_ground = (pieces.label >= 0) & (pieces.kind[pieces.label] == GROUND)
    level, group = _over_sunk(tiles.level, pieces, is_ground)
    planes = robust_planes(level, group, 1, 0.03)
    above = residuals(placed, tiles.start, tiles.order, tiles.side, planes)
    noise = _noise(above)
    limit = limit_of(noise, settings)
    beside = _beside_objects(pieces)
    upper = _per_point(tiles, np.where(beside, max(settings.near, BESIDE * noise), limit), len(placed))
    with np.errstate(invalid="ignore"):
        keep = (above < upper) & (above > -limit)
    return _Told(pieces, Fitted(tiles, is_ground, group, planes, keep, noise, limit), above, upper)


def _over_sunk(
    level: FloatArray, pieces: Pieces, is_ground: BoolArray
) -> tuple[FloatArray, NDArray[np.int32]]:
    """Levels and groups of the ground's tiles, carried on over sunk tiles beside it: a joint's or a ghost's
    points may be the lowest layer of a tile whose other points are ground."""
    group = np.where(is_ground, pieces.label, -1).astype(np.int32)
    sunk = (pieces.label >= 0) & (pieces.kind[pieces.label] == GHOST)
    if not sunk.any() or not is_ground.any():
        return level, group
    planes = robust_planes(level, group, 1, 0.03)
    distance, (fj, fi) = ndimage.distance_transform_edt(~is_ground, return_indices=True)
    j, i = np.nonzero(sunk & (distance < 2.5))
    at = fj[j, i], fi[j, i]
    out = level.copy()
    out[j, i] = planes[(*at, 0)] + planes[(*at, 1)] * (i - at[1]) + planes[(*at, 2)] * (j - at[0])
    group[j, i] = group[at]
    return out, group


def _second_layer(tiles: Tiles, is_ground: BoolArray, above: FloatArray, limit: float) -> float | None:
    """Height over the ground, m, of a second layer of points that much of it has, as two passes leave that do
    not agree; None where there is none."""
    with np.errstate(invalid="ignore"):
        upper = (above > limit) & (above < SECOND)
    of_tile = np.repeat(np.arange(len(tiles.start) - 1), np.diff(tiles.start))
    sums = np.bincount(of_tile, upper[tiles.order], len(tiles.start) - 1)
    both = (sums >= 0.25 * np.diff(tiles.start)) & (sums >= 2) & is_ground.ravel()
    if both.sum() < TWICE * is_ground.sum():
        return None
    heights = above[tiles.order][both[of_tile] & upper[tiles.order]]
    middle = float(np.median(heights))
    # one layer, not brush or rubble: three quarters of it within a few noises of its middle
    return middle if np.mean(np.abs(heights - middle) < limit) > 0.75 else None


def _inner(lattice: Lattice, tiles: Tiles) -> BoolArray:
    """Tiles inside the frame."""
    first = lattice.pad // tiles.side
    ny, nx = tiles.level.shape
    out = np.zeros((ny, nx), bool)
    out[first : ny - first, first : nx - first] = True
    return out


def _noise(above: FloatArray) -> float:
    """Standard deviation of single points about their tile's plane, m, from the median of what lies near
    it."""
    some = above[:: max(1, len(above) // 300_000)]
    near = some[np.abs(some) < 0.03]
    if len(near) < 10:
        return 5e-5
    return max(float(1.4826 * np.median(np.abs(near - np.median(near)))), 5e-5)


def _beside_objects(pieces: Pieces) -> BoolArray:
    """Tiles that touch an object's tile: points of both lie in them."""
    known = pieces.label >= 0
    standing = known & (pieces.kind[pieces.label] == OBJECT) & (np.nan_to_num(pieces.step[pieces.label]) > 0)
    return ndimage.binary_dilation(standing, np.ones((3, 3), bool))


def _per_point(tiles: Tiles, values: FloatArray, n: int) -> FloatArray:
    """A tile's value for each of its points; 0 outside."""
    out = np.zeros(n)
    out[tiles.order] = np.repeat(values.ravel(), np.diff(tiles.start))
    return out


def _words(
    tiles: Tiles, pieces: Pieces, above: FloatArray, keep: BoolArray, upper: FloatArray, n: int
) -> tuple[tuple[str, int], ...]:
    """What was taken away, in words, and how many points each."""
    kind = np.where(pieces.label >= 0, pieces.kind[pieces.label], 0)
    of_point = np.zeros(n, np.int8)
    of_point[tiles.order] = np.repeat(kind.ravel(), np.diff(tiles.start))
    gone = ~keep & (of_point > 0)
    on_ground = gone & (of_point == GROUND)
    with np.errstate(invalid="ignore"):
        high = on_ground & (above >= upper)
    counts = (
        (
            "standing on the ground (objects, wheels, legs, planting)",
            int((gone & (of_point == OBJECT)).sum()),
        ),
        ("over the ground (overhang, leaves, sides of objects)", int(high.sum())),
        (
            "below the ground (ghost points)",
            int((on_ground & ~high).sum() + (gone & (of_point == GHOST)).sum()),
        ),
        ("apart from the ground (nothing joins them to it)", int((gone & (of_point > GHOST)).sum())),
    )
    return tuple((what, count) for what, count in counts if count)


def _slab(
    tiles: Tiles, pieces: Pieces, is_ground: BoolArray, spread: FloatArray, settings: Settings
) -> BoolArray:
    """Tiles of the slab itself: joined to the main piece at no more than a small step, wide, and as smooth
    as it is."""
    known = np.maximum(pieces.label, 0)
    step, width = np.nan_to_num(pieces.step, nan=9.0)[known], pieces.width[known]
    wide = (width >= KERB_WIDTH) | (np.abs(step) <= settings.near)
    flush = is_ground & (np.abs(step) <= settings.kerb) & wide
    n, square = (spread[:, k].reshape(flush.shape) for k in (0, 2))
    pooled_n = ndimage.uniform_filter(np.where(flush, n, 0.0), 5)
    pooled = ndimage.uniform_filter(np.where(flush, n * square, 0.0), 5)
    rough = np.sqrt(np.maximum(pooled, 0.0) / np.maximum(pooled_n, 1e-9))
    if not flush.any():
        return flush
    # the smooth part of what is flush sets the measure: a slab has at least a third of it
    usual = float(np.percentile(rough[flush], 33))
    smooth = flush & (rough <= max(SMOOTH, ROUGHER * usual))
    # a rough patch counts only where it is as large as a lawn or a bed, a smooth one only where a slab is
    smooth = _drop_small(flush & ~smooth, 0.3 / tiles.width**2, flush & smooth, flush)
    found = _largest(
        ndimage.binary_opening(smooth, np.ones((3, 3), bool)) | (smooth & (n == 0)), smooth, tiles.width
    )
    return found | _specks(is_ground & ~found, found, tiles.width)


def _specks(other: BoolArray, slab: BoolArray, width: float) -> BoolArray:
    """Ground in the midst of slab too small to be anything else: one noisy tile, a few millimetres off its
    neighbours, would forbid all cutting there, and with it the whole plan."""
    labels, count = ndimage.label(other, np.ones((3, 3), int))
    small = np.bincount(labels.ravel(), minlength=count + 1) * width**2 <= SPECK
    small[np.unique(labels[ndimage.binary_dilation(~(slab | other), np.ones((3, 3), bool))])] = False
    small[0] = False
    return np.asarray(small[labels])


def _drop_small(rough: BoolArray, fewest: float, smooth: BoolArray, all_of: BoolArray) -> BoolArray:
    labels, count = ndimage.label(rough)
    sizes = np.bincount(labels.ravel(), minlength=count + 1)
    large = sizes >= fewest
    large[0] = False
    return all_of & ~large[labels]


def _largest(core: BoolArray, smooth: BoolArray, width: float) -> BoolArray:
    """Connected pieces of ``core`` of at least half a square metre, grown back over ``smooth`` by one
    tile."""
    labels, count = ndimage.label(core)
    if count == 0:
        return smooth
    sizes = np.bincount(labels.ravel(), minlength=count + 1) * width**2
    large = sizes >= min(0.5, sizes[1:].max())
    large[0] = False
    return ndimage.binary_dilation(large[labels], np.ones((3, 3), bool)) & smooth


def _to_cells(tile_mask: NDArray[np.bool_], tiles: Tiles, lattice: Lattice) -> BoolArray:
    """A mask of tiles as a mask of lattice cells."""
    big = np.repeat(np.repeat(tile_mask, tiles.side, axis=0), tiles.side, axis=1)
    return big[: lattice.shape[0], : lattice.shape[1]]


def see_scan(scan: Scan) -> Seen | None:
    """Everything a whole scan shows, before any line is drawn on it: what stands on the ground or hangs over
    it, where it is there twice, what of it is no slab; None where the scan is too small or too large to hold
    one slab."""
    points = scan.points[:: math.ceil(len(scan.points) / MOST_POINTS)]
    low, high = np.quantile(points[:, :2], [FAR_SHARE, 1 - FAR_SHARE], axis=0)
    lattice = _lattice_of_whole(low, high, len(points))
    return None if lattice is None else find_ground(lattice, lattice.place(points)).seen


def ground_points(scan: Scan) -> BoolArray:
    """(n,) which points of a whole scan are ground, of any kind: none is thinned. Raises CrestcutError where
    the scan is too small or too large to hold one slab."""
    low, high = scan.points[:, :2].min(axis=0), scan.points[:, :2].max(axis=0)
    lattice = _lattice_of_whole(low, high, len(scan.points))
    if lattice is None:
        raise CrestcutError(
            "is too small or too large to tell what of it is ground", str(scan.files[0].path),
            "crop it to the slab and a few metres about it",
        )  # fmt: skip
    return rollable_ground(lattice, lattice.place(scan.points))[0]


def _lattice_of_whole(low: FloatArray, high: FloatArray, count: int) -> Lattice | None:
    """The lattice over a whole scan of so many points from ``low`` to ``high`` (x, y, site m), as fine as
    they are worth; None where it is too small or too large to hold one slab."""
    size = high - low
    area = float(size[0] * size[1])
    if count < FEWEST or not 0.25 < area < LARGEST:
        return None
    pitch = pitch_for(area, count)
    nx, ny = (np.ceil(size / pitch).astype(int) + 1).tolist()
    return Lattice.around(GridFrame((float(low[0]), float(low[1])), 0.0, pitch, (ny, nx)), pitch)
