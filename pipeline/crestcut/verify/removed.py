"""What was taken away, from a scan before and one after, and how well that is known.

Each scan drifts by itself, so their difference on ground that nobody cut is not zero: it shows the two drifts
together. What that ground says of the drift inside the work is kriged into it (universal kriging: Matheron
1969; Rasmussen & Williams 2006, 2.7), with the new scan's height, tilt and place in plan as further unknowns.
In the middle of a wide cut nothing is said of the drift, and a depth is as uncertain as both scans together.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from scipy import linalg, ndimage

from crestcut.base.errors import CrestcutError
from crestcut.base.grid import BoolArray, FloatArray, HeightGrid, IntArray
from crestcut.chance import Doubt, Finding
from crestcut.terrain import Surface, between

TILE = 0.10  # m: what is compared; about the size of a patch
MOST = 600  # tiles of uncut ground, the nearest to the work
FEWEST = 30
LEVEL, TILT = 0.05, 0.01  # m and rad, 1 sd before the fit: what registering may have left, told by the ring
BEYOND = 0.10  # m: a hand strays so far over the drawn edge
PLANNED = 0.0005  # m: shallower is not looked for
ODD = 3.5  # standard deviations: ground not planned to be cut that lies lower than this was cut
ROUNDS = 12
OFF = 3.0  # times what both scans' errors explain: a later scan this far off where nobody cut shows nothing
OTHER = 0.25  # of the area of the work: as much ground that is lower beside it is no slip of the hand
CLUSTER = 4  # tiles: fewer odd ones are noise


@dataclass(frozen=True, eq=False)
class Removed:
    """depth : (ny, nx) m, best estimate, NaN where either scan has nothing.  sd : of it at one place, m, the
    tile's; NaN likewise.  work : (ny, nx) where the cut was looked for.  elsewhere : (ny, nx) where ground
    was cut that was not to be.  volume, volume_sd : m3 over both.  planned : m3.  typical : m, 1 sd of a
    depth in the middle of the work.  misfit : m rms by which ground that nobody cut differs, height, tilt and
    place in plan fitted to it.  explained : m rms by which it may, as both scans' errors have it.
    """

    depth: HeightGrid
    sd: HeightGrid
    work: BoolArray
    elsewhere: BoolArray
    volume: float
    volume_sd: float
    planned: float
    typical: float
    misfit: float
    explained: float


@dataclass(frozen=True, eq=False)
class _Tiles:
    """xy : (n, 2) site m.  drop : (n,) before less after, m.  noise : (n,) m2.  slope : (n, 2) of the ground.
    work : (n,) whether it reaches into the work.  index : (n, 2) row and column of tiles.  nodes : a side.
    """

    xy: FloatArray
    drop: FloatArray
    noise: FloatArray
    slope: FloatArray
    work: BoolArray
    index: IntArray
    nodes: int


def work_area(planned: HeightGrid, beyond: float = BEYOND) -> BoolArray:
    """(ny, nx) where a cut was planned, and as far beyond as a hand may stray."""
    cut = np.nan_to_num(planned.values) > PLANNED
    if not cut.any():
        return np.asarray(cut)
    return np.asarray(ndimage.distance_transform_edt(~cut) * planned.frame.cell <= beyond)


def removed_between(before: Surface, after: Surface, planned: HeightGrid, placed: float) -> Removed:
    """What two surfaces on the same frame say was taken away.

    planned : depths (ny, nx), m.  placed : m, 1 sd of the later scan's place in plan.
    Raises CrestcutError where too little uncut ground was seen by both.
    """
    work = work_area(planned)
    drop = before.height.values - after.height.values
    tiles = _tiles(before, after, drop, work)
    prior = _covariance(tiles, before, after, placed)
    odd = _cut_elsewhere(tiles, prior)
    ring = _ring(tiles, odd)
    if len(ring) < FEWEST:
        raise CrestcutError(
            "the two scans share too little ground that was not cut",
            "",
            "scan the slab around the cut as well, half a metre or more on every side",
        )
    drift, spread = _krige(prior, tiles, ring)
    cell = before.height.frame.cell
    # tiles of the work keep their full posterior; nearer to the ring less is unknown
    depth = drop - _spread_out(tiles, drift, work.shape)
    elsewhere = _nodes_of(tiles, odd, work.shape) & np.isfinite(drop)
    counted = tiles.work | odd
    sd = np.sqrt(np.maximum(np.diag(spread), 0.0) + tiles.noise)
    volume = float(np.nansum(np.where(work | elsewhere, depth, 0.0))) * cell**2
    total = spread[np.ix_(counted, counted)].sum() + tiles.noise[counted].sum()
    goal = np.nan_to_num(planned.values)
    return Removed(
        depth=before.height.like(depth),
        sd=before.height.like(np.where(np.isfinite(drop), _spread_out(tiles, sd, work.shape), np.nan)),
        work=work,
        elsewhere=elsewhere,
        volume=volume,
        volume_sd=float(np.sqrt(max(total, 0.0))) * TILE**2,
        planned=float(goal.sum()) * cell**2,
        typical=float(np.median(sd[tiles.work])) if tiles.work.any() else float("nan"),
        misfit=_off(tiles, ring),
        explained=float(np.sqrt(np.mean(_own_variance(tiles, before, after)[ring]))),
    )


def speaks_against(removed: Removed) -> tuple[Finding, ...]:
    """What forbids 'done' on the word of these two scans alone: the later one is off where nobody worked, so
    that nothing says it is right where somebody did; or much of what was not to be cut is lower too."""
    found = []
    frame, goal = removed.depth.frame, np.nan_to_num(removed.depth.values)
    beside = removed.elsewhere & ~removed.work
    area = float(beside.sum()) * frame.cell**2
    if removed.misfit > OFF * removed.explained:
        j, i = np.argwhere(removed.work).mean(axis=0) if removed.work.any() else (0.0, 0.0)
        x, y = (float(v) for v in frame.to_site((i * frame.cell, j * frame.cell)))
        found.append(Finding(Doubt.MISFIT, (x, y), 0.0, removed.misfit))
    if area > OTHER * float(removed.work.sum()) * frame.cell**2:
        j, i = np.unravel_index(int(np.argmax(np.where(beside, goal, -1.0))), goal.shape)
        x, y = (float(v) for v in frame.to_site((float(i) * frame.cell, float(j) * frame.cell)))
        found.append(Finding(Doubt.ELSEWHERE, (x, y), area, float(goal[j, i])))
    return tuple(found)


def _off(tiles: _Tiles, ring: IntArray) -> float:
    """m rms of the drops of uncut tiles, height, tilt and place in plan fitted (least squares)."""
    arm = tiles.xy - tiles.xy.mean(axis=0)
    free = np.column_stack([np.ones(len(arm)), arm, tiles.slope])[ring]
    left = tiles.drop[ring] - free @ np.linalg.lstsq(free, tiles.drop[ring])[0]
    return float(np.sqrt(np.mean(left**2)))


def _own_variance(tiles: _Tiles, before: Surface, after: Surface) -> FloatArray:
    """(n,) m2, of the drop of each tile as both scans' errors have it."""
    errors = (before.error, after.error)
    return np.asarray(sum(e.patch**2 + e.warp**2 for e in errors) + tiles.noise)


def _tiles(before: Surface, after: Surface, drop: FloatArray, work: BoolArray) -> _Tiles:
    """Means over squares in which at least half of the nodes were seen by both."""
    frame = before.height.frame
    n = max(round(TILE / frame.cell), 1)
    rows, columns = (s // n for s in drop.shape)

    def blocks(values: FloatArray) -> FloatArray:
        return values[: rows * n, : columns * n].reshape(rows, n, columns, n).swapaxes(1, 2).reshape(
            rows, columns, n * n
        )  # fmt: skip

    both = np.isfinite(drop) & before.rollable & after.rollable
    seen = blocks(both.astype(float)).mean(axis=2) >= 0.5
    masked = blocks(np.where(both, drop, np.nan))[seen]
    error = before.standard_error.values**2 + after.standard_error.values**2
    j, i = np.nonzero(seen)
    middle = np.column_stack([i, j]) * n + (n - 1) / 2
    sides = (np.gradient(before.height.values, frame.cell, axis=k) for k in (0, 1))
    slopes = [np.nan_to_num(np.asarray(g, dtype=np.float64)) for g in sides]
    across, along = (blocks(g)[seen].mean(axis=1) for g in slopes)  # a rim without a slope counts as level
    c, s = np.cos(frame.angle), np.sin(frame.angle)
    return _Tiles(
        frame.to_site(middle * frame.cell),
        np.nanmean(masked, axis=1),
        # neighbouring heights share their points over about half a tile
        np.nanmean(blocks(np.where(both, error, np.nan))[seen], axis=1) / 4,
        np.column_stack([along * c - across * s, along * s + across * c]),
        blocks(work.astype(float)).mean(axis=2)[seen] > 0,
        np.column_stack([j, i]),
        n,
    )


def _covariance(tiles: _Tiles, before: Surface, after: Surface, placed: float) -> FloatArray:
    """(n, n) m2, of what the drop would be on ground that nobody cut, noise of single points left out."""
    drift = between(before.error, tiles.xy, tiles.xy) + between(after.error, tiles.xy, tiles.xy)
    arm = tiles.xy - tiles.xy.mean(axis=0)
    free = np.column_stack([np.full(len(arm), LEVEL), TILT * arm, placed * tiles.slope])
    return np.asarray(drift + free @ free.T)


def _cut_elsewhere(tiles: _Tiles, prior: FloatArray) -> BoolArray:
    """Tiles outside the work that lie lower than drift explains, given their neighbours: found one shell
    after another, as each that is left out says less of the next."""
    odd = np.zeros(len(tiles.drop), bool)
    for _ in range(ROUNDS):
        ring = _ring(tiles, odd)
        if len(ring) < FEWEST:
            return np.zeros(len(tiles.drop), bool)
        own = prior[np.ix_(ring, ring)] + np.diag(tiles.noise[ring])
        inverse = linalg.inv(own)
        alone = (inverse @ tiles.drop[ring]) / np.sqrt(np.diag(inverse))
        fresh = np.zeros(len(odd), bool)
        fresh[ring[alone > ODD]] = True
        if odd.any():  # what was left out is judged by what remains
            drift, spread = _krige(prior, tiles, ring)
            lower = (tiles.drop - drift) / np.sqrt(np.diag(spread) + tiles.noise)
            near = _beside(tiles, odd)
            fresh |= near & ~tiles.work & ~odd & (lower > ODD - 1.5)
        if not fresh.any():
            break
        odd |= fresh
    return _clusters(tiles, odd)


def _ring(tiles: _Tiles, odd: BoolArray) -> IntArray:
    """Uncut tiles, the nearest to the work if there are too many."""
    ring = np.flatnonzero(~tiles.work & ~odd)
    if len(ring) <= MOST or not tiles.work.any():
        return ring[:: max(len(ring) // MOST, 1)]
    from scipy.spatial import cKDTree

    far = cKDTree(tiles.xy[tiles.work]).query(tiles.xy[ring])[0]
    return np.sort(ring[np.argsort(far, kind="stable")[:MOST]])


def _krige(prior: FloatArray, tiles: _Tiles, ring: IntArray) -> tuple[FloatArray, FloatArray]:
    """Drift at every tile (n,) m and what is left unknown of it (n, n) m2, given the uncut tiles ``ring``."""
    own = linalg.cho_factor(prior[np.ix_(ring, ring)] + np.diag(tiles.noise[ring] + 1e-12))
    gain = linalg.cho_solve(own, prior[ring]).T
    return gain @ tiles.drop[ring], np.asarray(prior - gain @ prior[ring])


def _beside(tiles: _Tiles, some: BoolArray) -> BoolArray:
    return np.asarray(ndimage.binary_dilation(_raster(tiles, some), np.ones((3, 3)))[tuple(tiles.index.T)])


def _clusters(tiles: _Tiles, odd: BoolArray) -> BoolArray:
    labels, _ = ndimage.label(_raster(tiles, odd), np.ones((3, 3)))
    size = np.bincount(labels.ravel())
    return odd & (size[labels[tuple(tiles.index.T)]] >= CLUSTER)


def _raster(tiles: _Tiles, some: BoolArray) -> BoolArray:
    out = np.zeros(tiles.index.max(axis=0) + 1, bool)
    out[tuple(tiles.index[some].T)] = True
    return out


def _nodes_of(tiles: _Tiles, some: BoolArray, shape: tuple[int, ...]) -> BoolArray:
    n = tiles.nodes
    out = np.zeros(shape, bool)
    for j, i in tiles.index[some] * n:
        out[j : j + n, i : i + n] = True
    return out


def _spread_out(tiles: _Tiles, values: FloatArray, shape: tuple[int, ...]) -> FloatArray:
    """Tile values at every node: straight lines between the tiles' middles, the nearest one's beyond them."""
    coarse = np.full(tiles.index.max(axis=0) + 1, np.nan)
    coarse[tuple(tiles.index.T)] = values
    gone = np.isnan(coarse)
    coarse = coarse[tuple(ndimage.distance_transform_edt(gone, return_distances=False, return_indices=True))]
    rows, columns = ((np.arange(size) - (tiles.nodes - 1) / 2) / tiles.nodes for size in shape)
    grid = np.meshgrid(rows, columns, indexing="ij")
    return np.asarray(ndimage.map_coordinates(coarse, grid, order=1, mode="nearest"))
