"""Pieces of ground: tiles that run on into each other without a step, and what each piece is.

A crest of 20 % is no step, a 25 mm kerb is. Pieces that stand like islands are objects; raised pieces that
reach the rim of the scan or are large are kerbs, lawns and upper slabs; small pieces that lie low are ghosts.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from scipy import ndimage, sparse

from crestcut.base.grid import BoolArray, FloatArray
from crestcut.terrain.ground.tiles import STEEPEST, robust_planes

STEP = 0.015  # m: a piece this much off its neighbour is another level
KERB = 0.20  # m: no tyre is meant to roll up more
ISLAND_AREA = 1.0  # m2: a raised piece smaller than this, with ground all round, stands on it
BUMP, RING = 0.018, 0.012  # m: what lies on the slab stands that high over it, all round it nothing does
BUMP_LENGTH, BUMP_REACH = 0.8, 0.30  # m: longer it is part of the slab; how far around it is judged
PIT_AREA = 0.3  # m2: a sunk piece smaller than this is a ghost
LONG = 0.8  # m: a raised piece at the rim of the scan this long is a kerb or a lawn
FAR = 0.6  # m: a piece farther than this from any ground is judged by its size alone

GROUND, OBJECT, GHOST, APART = 1, 2, 3, 4  # kinds of piece


@dataclass(frozen=True, eq=False)
class Pieces:
    """label : (ny, nx) piece of each tile, -1 where empty.  kind, step (m), area (m2), width (m, widest
    inscribed) per piece.

    main : the piece that the rest is judged against.
    """

    label: NDArray[np.int32]
    kind: NDArray[np.int8]
    step: FloatArray
    area: FloatArray
    width: FloatArray
    main: int


@dataclass(frozen=True, eq=False)
class _Surroundings:
    """What pieces are judged against: tile ``level`` (ny, nx), m, the ``planes`` about them, the ``rim`` of
    the scan, the ``width`` of a tile, m; and the tiles known for ``ground`` so far, to which each piece that
    is found to be some is added."""

    level: FloatArray
    planes: FloatArray
    rim: BoolArray
    width: float
    ground: BoolArray


def split(level: FloatArray, width: float, inner: BoolArray) -> Pieces:
    """Pieces of the tile levels (ny, nx), m; ``width`` of a tile, m; ``inner`` marks tiles inside the
    frame."""
    label = _connect(level, width)
    count = int(label.max()) + 1
    area: FloatArray = np.bincount(label[label >= 0], minlength=count).astype(float) * width**2
    inside = np.bincount(label[(label >= 0) & inner], minlength=count)
    main = int(np.argmax(inside if inside.max() > 0 else area))
    kind, step, fat = np.full(count, APART, np.int8), np.full(count, np.nan), np.zeros(count)
    kind[main], step[main], fat[main] = GROUND, 0.0, np.inf
    pieces = Pieces(label, kind, step, area, fat, main)
    around = _Surroundings(
        level, robust_planes(level, label, 2, 0.03), _rim(label >= 0), width, label == main
    )
    slices = ndimage.find_objects(label + 1)
    for piece in np.argsort(-area, kind="stable"):
        if piece == main or kind[piece] == GROUND:
            continue
        if area[piece] < 1.5 * width**2:
            break  # single tiles are judged below, all at once
        _judge(pieces, int(piece), slices[piece], around)
    _judge_single(pieces, around)
    return pieces


def _connect(level: FloatArray, width: float) -> NDArray[np.int32]:
    """Label of each tile, -1 where empty: neighbours (also over one empty tile) that a slope explains are
    one piece."""
    ny, nx = level.shape
    group = np.zeros(level.shape, np.int32)
    planes = robust_planes(level, group, 5, 0.03)
    index = np.arange(ny * nx, dtype=np.int32).reshape(ny, nx)
    rows, columns = [], []
    allowed = _allowance(level, planes)
    for axis, distance in ((0, 1), (1, 1), (0, 2), (1, 2)):
        a, b = _pairs(level, axis, distance)
        sa, sb = _pairs(planes[..., 2 - axis], axis, distance)
        ia, ib = _pairs(index, axis, distance)
        rise = np.clip((sa + sb) / 2, -np.inf, np.inf) * distance
        joined = np.abs(b - a - rise) <= allowed * (1 if distance == 1 else 1.2)
        if distance == 2:  # only over a gap
            middle = np.take(level, np.arange(1, level.shape[axis] - 1), axis=axis)
            joined &= np.isnan(middle)
        rows.append(ia[joined])
        columns.append(ib[joined])
    r, c = np.concatenate(rows), np.concatenate(columns)
    graph = sparse.coo_matrix((np.ones(len(r), bool), (r, c)), shape=(ny * nx, ny * nx))
    _, label = sparse.csgraph.connected_components(graph, directed=False)
    filled = ~np.isnan(level).ravel()
    out = np.full(ny * nx, -1, np.int32)
    _, out[filled] = np.unique(label[filled], return_inverse=True)
    label = out.reshape(ny, nx)
    for low in _bumps(level, width):
        label[low] = label.max() + 1
    _, label[label >= 0] = np.unique(label[label >= 0], return_inverse=True)
    return label


def _bumps(level: FloatArray, width: float) -> list[BoolArray]:
    """Tiles of what lies low and compact on the slab, though noise joins it to the ground: over a plane that
    0.3 m around it agree on, with nothing but ground on every side.

    A crest is no bump: it runs on, so that tiles beyond both ends stand over their plane as well.
    """
    reach = max(2, round(BUMP_REACH / width))
    over = level - robust_planes(level, np.zeros(level.shape, np.int32), reach, 0.03)[..., 0]
    labels, _ = ndimage.label(np.nan_to_num(over) > BUMP, np.ones((3, 3), int))
    found = []
    for k, box in enumerate(ndimage.find_objects(labels), start=1):
        if max(s.stop - s.start for s in box) * width > BUMP_LENGTH:
            continue
        j, i = (slice(max(0, s.start - 3), s.stop + 3) for s in box)
        near, mine = over[j, i], labels[j, i] == k
        inner = ndimage.binary_dilation(mine, np.ones((3, 3), bool))
        ring = near[ndimage.binary_dilation(inner, np.ones((3, 3), bool), iterations=2) & ~inner]
        seen = ring[np.isfinite(ring)]
        if len(seen) >= 0.8 * len(ring) and len(seen) and seen.max() < RING:
            whole = np.zeros(level.shape, bool)
            whole[j, i] = inner & (near > RING)
            found.append(whole)
    return found


def _pairs(values: NDArray, axis: int, distance: int) -> tuple[NDArray, NDArray]:
    n = values.shape[axis]
    return np.take(values, np.arange(n - distance), axis=axis), np.take(
        values, np.arange(distance, n), axis=axis
    )


def _allowance(level: FloatArray, planes: FloatArray) -> float:
    """How far neighbours may be off their common slope, m: two standard deviations of tile levels, within 9
    to 13 mm."""
    a, b = _pairs(level, 1, 1)
    sa, sb = _pairs(planes[..., 1], 1, 1)
    off = np.abs(b - a - (sa + sb) / 2)
    off = off[np.isfinite(off)]
    return float(np.clip(2.2 * 1.4826 * np.median(off), 0.009, 0.013)) if len(off) else 0.009


def _rim(filled: BoolArray) -> BoolArray:
    """Tiles beside what the scan never saw: outside the raster, or an empty region that is joined to the
    outside."""
    empty = np.pad(~filled, 1, constant_values=True)
    labels, _ = ndimage.label(empty)
    outside = labels == labels[0, 0]
    return ndimage.binary_dilation(outside, iterations=2)[1:-1, 1:-1]


def _judge(pieces: Pieces, piece: int, box: tuple[slice, slice], around: _Surroundings) -> None:
    """Decides on one piece, which lies in a box of rows and columns."""
    kind, step, area, width = pieces.kind, pieces.step, pieces.area, around.width
    reach = int(np.ceil(FAR / width))
    j, i = (slice(max(0, s.start - reach), s.stop + reach) for s in box)
    mine, near = pieces.label[j, i] == piece, around.ground[j, i]
    pieces.width[piece] = 2 * ndimage.distance_transform_edt(np.pad(mine, 1)).max() * width
    length = max(box[0].stop - box[0].start, box[1].stop - box[1].start) * width
    touches = bool((around.rim[j, i] & mine).any())
    if near.any():
        step[piece] = _step(mine, near, around.level[j, i], around.planes[j, i])
    if np.isnan(step[piece]):
        large = area[piece] >= 3 * ISLAND_AREA and not _in_the_air(pieces.label == piece, around)
        kind[piece] = GROUND if large else APART
    elif step[piece] > KERB:
        kind[piece] = OBJECT
    elif step[piece] > STEP:
        wide = area[piece] >= ISLAND_AREA or (touches and length >= LONG and area[piece] >= LONG * 2 * width)
        kind[piece] = GROUND if wide else OBJECT
    elif step[piece] < -STEP:
        large = area[piece] >= PIT_AREA or length >= 1.0
        kind[piece] = GROUND if large and step[piece] > -0.5 else GHOST
    else:
        kind[piece] = GROUND
    if kind[piece] == GROUND:
        around.ground[j, i] |= mine


def _in_the_air(mine: BoolArray, around: _Surroundings) -> bool:
    """Whether no drivable slope leads from the ground to a far piece: a roof or a bonnet whose sides were not
    seen is as large as a around."""
    ground, level = around.ground, around.level
    if not ground.any():
        return False
    distance, (fj, fi) = ndimage.distance_transform_edt(~ground, return_indices=True)
    pick = mine & (distance <= distance[mine].min() + 2)
    rise = np.abs(level[pick] - level[fj[pick], fi[pick]])
    return bool(np.median(rise - STEEPEST * around.width * distance[pick]) > KERB)


def _step(mine: BoolArray, near: BoolArray, level: FloatArray, planes: FloatArray) -> float:
    """Median height of a piece's nearest tiles over the ground carried on to them along its slope, m; NaN
    if too far."""
    distance, (fj, fi) = ndimage.distance_transform_edt(~near, return_indices=True)
    closest = distance[mine].min()
    pick = mine & (distance <= closest + 2)
    at, (j, i) = (fj[pick], fi[pick]), np.nonzero(pick)
    su, sv = (np.nan_to_num(np.clip(planes[..., k][at], -1, 1)) for k in (1, 2))
    rise = np.clip(su * (i - at[1]) + sv * (j - at[0]), -0.15, 0.15)
    return float(np.median(level[pick] - planes[..., 0][at] - rise))


def _judge_single(pieces: Pieces, around: _Surroundings) -> None:
    """Single tiles: ground where the ground around runs through them, else something on it or under it."""
    label, kind, planes, ground, width = pieces.label, pieces.kind, around.planes, around.ground, around.width
    single = (pieces.area < 1.5 * width**2) & (kind != GROUND)
    pick = (label >= 0) & single[np.maximum(label, 0)]
    if not pick.any() or not ground.any():
        return
    distance, (fj, fi) = ndimage.distance_transform_edt(~ground, return_indices=True)
    j, i = np.nonzero(pick)
    at = fj[pick], fi[pick]
    su, sv = (np.nan_to_num(np.clip(planes[..., k][at], -1, 1)) for k in (1, 2))
    off = around.level[pick] - planes[..., 0][at] - su * (i - at[1]) - sv * (j - at[0])
    what = np.where(off > STEP, OBJECT, np.where(off < -STEP, GHOST, GROUND))
    what = np.where(distance[pick] * width > FAR / 2, APART, what)
    kind[label[pick]] = what
    pieces.step[label[pick]] = off


__all__ = ["APART", "GHOST", "GROUND", "OBJECT", "STEEPEST", "Pieces", "split"]
