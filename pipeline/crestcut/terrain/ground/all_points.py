"""A second, crude opinion on the ground: from all points, none rejected, by robust figures of each tile.

The fit throws away what it takes for objects, leaves and ghosts. Where that is most of what lies in a tile,
the fit may be the one that is wrong, or something stands there: either is worth naming. Tiles whose points
agree with the fit say nothing here, so that a sound scan costs next to nothing.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from scipy import ndimage

from crestcut.base.grid import BoolArray, FloatArray, IntArray
from crestcut.terrain.ground.raster import Lattice
from crestcut.terrain.ground.seen import Layers, Seen, Thing
from crestcut.terrain.ground.tiles import Tiles, residuals, robust_planes

REACH = 0.30  # m over and under the ground: farther points say nothing of a height the underside could meet
TALLEST = 2.5  # m: what is higher hangs over everything that drives
MOST_REJECTED = 0.5  # share of a tile's points within reach from which the fit's opinion is doubted
LEAST_OFF = 0.006  # m: nearer than this to the fit nothing is said
SURE = 3.5  # standard deviations
MEDIAN = 1.2533  # sd of a median over that of a mean, normal noise
STANDS = 0.4  # share of a tile's points that are something which stands or hangs there
FEWEST = 10  # points of a thing
HALF, FLAT = 0.5, 0.15  # a share, and m of height: below them what is flat may be a second layer
NEAR = 0.05  # m from the fit: points that could be a second layer; farther ones are rejected and count above
LEAST_APART = 0.006  # m: layers nearer than this are noise
POOL = 5  # tiles, side of the square whose points are judged together
CRISP, LIKELY = 0.52, 0.42  # Sarle's coefficient: 1/3 for one normal layer, 0.555 for none at all
WIDER = 1.5  # times the usual variance that a likely second layer must bring
OUTER = 1.645  # standard deviations from the middle of a layer to its outer 5 %
PATCH = 0.10  # m2: a second layer over less is an edge
ROUGH = 0.004  # m, sd of tiles about their neighbours: concrete scanned by phone has 1 to 2 (one real slab)
ROUGH_POOL = 11  # tiles
ROUGH_AREA = 0.5  # m2: less is a bed or litter beside a slab


@dataclass(frozen=True, eq=False)
class Fitted:
    """What ``find_ground`` made of the tiles. group : (ny, nx) piece of ground, -1 where none is.  planes :
    (ny, nx, 3) of ground tiles, NaN elsewhere.  keep : (n,) points taken for ground.  noise : sd of one of
    them, m.  limit : m, how far they may be off."""

    tiles: Tiles
    is_ground: BoolArray
    group: NDArray[np.int32]
    planes: FloatArray
    keep: BoolArray
    noise: float
    limit: float


def see_all(lattice: Lattice, placed: FloatArray, fitted: Fitted) -> tuple[Seen, BoolArray]:
    """Everything in the window, and the tiles that are surely too rough for concrete; ``placed`` (n, 3) as
    on the lattice."""
    tiles = fitted.tiles
    planes = _carried_on(fitted.planes)
    above = residuals(placed, tiles.start, tiles.order, tiles.side, planes)[tiles.order]
    kept = fitted.keep[tiles.order]
    count = np.diff(tiles.start)
    of_tile = np.repeat(np.arange(len(count)), count)
    inner = _inside(lattice, tiles)
    offset, error = _medians(above, kept, of_tile, fitted)
    thing, things = _things(lattice, tiles, above, kept, of_tile, inner, fitted.limit)
    free = ~ndimage.binary_dilation(thing >= 0, np.ones((3, 3), bool))
    twice, layers = _layers(lattice, tiles, above, of_tile, inner & fitted.is_ground & free)
    flat = [k for k, found in enumerate(things) if _is_layer(found, fitted.noise)]
    twice |= np.isin(thing, flat)
    layers = (*layers, *(_as_layer(things[k]) for k in flat))
    new = np.full(len(things) + 1, -1, np.int32)  # the last stands for 'nothing'
    stay = [k for k in range(len(things)) if k not in flat]
    new[stay] = np.arange(len(stay))
    thing, things = new[thing], tuple(things[k] for k in stay)
    rough, roughness = _rough(tiles, fitted, kept, of_tile)
    j, i = _tiles_of_nodes(tiles, lattice)
    spread = lambda a: a[np.ix_(j, i)]  # noqa: E731
    found = Seen(
        crude=_heights(planes, offset, tiles, lattice), error=spread(error), thing=spread(thing),
        twice=spread(twice), rough=spread(rough), things=things, layers=layers, roughness=roughness,
        cell=lattice.frame.cell,
    )  # fmt: skip
    if rough.sum() > HALF * fitted.is_ground.sum():  # a lawn, whatever lies in it
        return found, rough
    # what is judged by half a metre around says nothing of its rim
    return found, ndimage.binary_erosion(rough, iterations=ROUGH_POOL // 2, border_value=1)


def _carried_on(planes: FloatArray) -> FloatArray:
    """Planes (ny, nx, 3) of every tile: those of the ground, and beyond it the nearest one carried on."""
    known = np.isfinite(planes[..., 0])
    if not known.any():
        return planes
    out = planes.copy()
    _, (fj, fi) = ndimage.distance_transform_edt(~known, return_indices=True)
    j, i = np.nonzero(~known)
    at = planes[fj[j, i], fi[j, i]]
    su, sv = np.clip(at[:, 1], -1, 1), np.clip(at[:, 2], -1, 1)
    rise = np.clip(su * (i - fi[j, i]) + sv * (j - fj[j, i]), -0.15, 0.15)
    out[j, i] = np.column_stack([at[:, 0] + rise, su, sv])
    return out


def _inside(lattice: Lattice, tiles: Tiles) -> BoolArray:
    """Tiles that hold a node of the frame."""
    ny, nx = tiles.level.shape
    j, i = (np.arange(n) * tiles.side for n in (ny, nx))
    rows, columns = (n - lattice.pad for n in lattice.shape)
    inside = lambda k, last: (k + tiles.side > lattice.pad) & (k < last)  # noqa: E731
    return np.asarray(np.logical_and.outer(inside(j, rows), inside(i, columns)))


def _medians(
    above: FloatArray, kept: BoolArray, of_tile: NDArray[np.int64], fitted: Fitted
) -> tuple[FloatArray, FloatArray]:
    """How far the middle of all points within reach lies over the ground, m, (ny, nx), where that is more
    than its own error; NaN elsewhere. And that error, 1 sd."""
    shape = fitted.tiles.level.shape
    size = shape[0] * shape[1]
    near = np.abs(above) < REACH
    all_of, of_them = (np.bincount(of_tile, near & m, size) for m in (np.True_, ~kept))
    doubted = of_them >= np.maximum(MOST_REJECTED * all_of, 2)
    pick = near & doubted[of_tile]
    tile, value = of_tile[pick], above[pick]
    order = np.lexsort((value, tile))
    tile, value = tile[order], value[order]
    found, first, many = np.unique(tile, return_index=True, return_counts=True)
    middle = (value[first + (many - 1) // 2] + value[first + many // 2]) / 2
    quarter = value[first + (3 * many) // 4] - value[first + many // 4]
    own = np.maximum(0.7413 * quarter, fitted.noise)  # half the quartiles' distance in standard deviations
    error = MEDIAN * own / np.sqrt(many)
    # the fit's own points are off by up to its limit at most: what is farther is no noise of theirs
    least = max(LEAST_OFF, fitted.limit)
    off = np.abs(middle) > np.maximum(least, SURE * fitted.noise / np.sqrt(many))
    offset, sd = np.full(size, np.nan), np.full(size, np.nan)
    offset[found[off]], sd[found[off]] = middle[off], error[off]
    return offset.reshape(shape), sd.reshape(shape)


def _things(
    lattice: Lattice, tiles: Tiles, above: FloatArray, kept: BoolArray, of_tile: NDArray[np.int64],
    inner: BoolArray, limit: float,
) -> tuple[NDArray[np.int32], tuple[Thing, ...]]:  # fmt: skip
    """The number of what stands or hangs over each tile, -1 where nothing does, and all such, largest
    first."""
    shape = tiles.level.shape
    size = shape[0] * shape[1]
    high = ~kept & (above > limit) & (above < TALLEST)
    many, of_all = np.bincount(of_tile, high, size), np.bincount(of_tile, above < TALLEST, size)
    taken = ((many >= np.maximum(STANDS * of_all, 2)).reshape(shape)) & inner
    label, count = ndimage.label(taken, np.ones((3, 3), int))
    seen = np.bincount(of_tile, kept, size).reshape(shape) > 0
    of_point = label.ravel()[of_tile]
    mine = high & (of_point > 0)
    order = np.lexsort((above[mine], of_point[mine]))
    number, value = of_point[mine][order], above[mine][order]
    start = np.searchsorted(number, np.arange(1, count + 2))
    found = []
    for k, box in enumerate(ndimage.find_objects(label), start=1):
        n, first = int(start[k] - start[k - 1]), int(start[k - 1])
        if n < FEWEST:
            continue
        here = label[box] == k
        x, y, wide = _place(here, box, tiles, lattice)
        found.append((k, Thing(
            x, y, wide, float(value[first + int(0.98 * (n - 1))]), float(value[first + int(0.02 * (n - 1))]),
            float(here.sum()) * tiles.width**2, n, float(np.mean(~seen[box][here])),
        )))  # fmt: skip
    found.sort(key=lambda pair: -pair[1].area)
    new = np.full(count + 1, -1, np.int32)
    for at, (k, _) in enumerate(found):
        new[k] = at
    return new[label], tuple(thing for _, thing in found)


def _is_layer(thing: Thing, noise: float) -> bool:
    """Whether what stands there is a second layer of ground: all of it as high, and the ground seen under
    it."""
    thick = thing.height - thing.lowest
    return (
        thing.unseen < HALF and thing.height < FLAT and thick < 5 * noise + LEAST_OFF and thing.area > PATCH
    )


def _as_layer(thing: Thing) -> Layers:
    up = (thing.height + thing.lowest) / 2
    return Layers(thing.x, thing.y, thing.size, thing.area, up, up, 0.0)


def _layers(
    lattice: Lattice, tiles: Tiles, above: FloatArray, of_tile: NDArray[np.int64], inner: BoolArray
) -> tuple[BoolArray, tuple[Layers, ...]]:
    """Where two layers lie over one another within single tiles, by the moments of a square of tiles.

    Sarle's coefficient, (skewness squared + 1) / kurtosis, of heights about each tile's own mean: 1/3 for one
    layer of normal noise, towards 1 for two. A step or a joint puts two layers into a row of tiles only.
    """
    shape, size = tiles.level.shape, tiles.level.size
    near = np.abs(above) < NEAR
    tile, about = of_tile[near], above[near]
    n = np.bincount(tile, minlength=size)
    value = about - (np.bincount(tile, about, size) / np.maximum(n, 1))[tile]
    use = ((n >= 4) & inner.ravel())[tile]
    sums = [np.bincount(tile[use], value[use] ** k, size).reshape(shape) for k in (0, 2, 3, 4)]
    n, m2, m3, m4 = (ndimage.uniform_filter(s, POOL) for s in sums)
    n = np.maximum(n, 1e-12)
    m2, m3, m4 = np.maximum(m2 / n, 1e-12), m3 / n, m4 / n
    coefficient = (m3**2 / m2**3 + 1) / np.maximum(m4 / m2**2, 1e-9)
    enough = (n * POOL**2 >= 60) & inner
    if not enough.any():
        return np.zeros(shape, bool), ()
    usual = float(np.percentile(m2[enough], 33))
    twice = enough & ((coefficient > CRISP) | ((coefficient > LIKELY) & (m2 > WIDER * usual)))
    twice = ndimage.binary_opening(twice, np.ones((3, 3), bool))
    label, _ = ndimage.label(twice, np.ones((3, 3), int))
    found, shown = [], np.zeros(shape, bool)
    for k, box in enumerate(ndimage.find_objects(label), start=1):
        here = label[box] == k
        area = float(here.sum()) * tiles.width**2
        # two equal layers d apart have a spread of d / 2 beside their own noise
        apart = 2 * float(np.sqrt(max(np.median(m2[box][here]) - usual, 0.0)))
        if area < PATCH or apart < LEAST_APART:
            continue
        shown[box] |= here
        x, y, wide = _place(here, box, tiles, lattice)
        low, high = np.percentile(about[(label.ravel() == k)[tile]], [5, 95])
        up, down = (max(float(end) - OUTER * usual**0.5, 0.0) for end in (high, -low))
        found.append(Layers(x, y, wide, area, apart, up, down))
    return shown, tuple(sorted(found, key=lambda f: -f.area))


def _rough(
    tiles: Tiles, fitted: Fitted, kept: BoolArray, of_tile: NDArray[np.int64]
) -> tuple[BoolArray, float]:
    """Ground whose tiles stand up and down against their neighbours far beyond concrete, (ny, nx), and by how
    much, 1 sd, m; what the points' own noise does to a tile is taken off."""
    shape = tiles.level.shape
    ground = fitted.is_ground
    level = np.where(ground, tiles.level, np.nan)
    off = level - robust_planes(level, fitted.group, 2, 0.03)[..., 0]
    n = np.bincount(of_tile, kept, tiles.level.size).reshape(shape)
    own = fitted.noise**2 / np.maximum(n, 1)
    good = ground & np.isfinite(off) & (n > 0)
    # 25 tiles fit 3 figures, and the middle one weighs most: what is left of its own spread is 1 - 1/25
    square = np.where(good, np.minimum(off**2, (6 * ROUGH) ** 2) - own, 0.0)
    share = np.maximum(ndimage.uniform_filter(good.astype(float), ROUGH_POOL), 1e-9)
    pooled = np.sqrt(np.maximum(ndimage.uniform_filter(square, ROUGH_POOL), 0.0) / share)
    label, _ = ndimage.label(good & (pooled > ROUGH))
    large = np.bincount(label.ravel()) * tiles.width**2 >= ROUGH_AREA
    large[0] = False
    rough = large[label]
    return rough, float(np.median(pooled[rough])) if rough.any() else float("nan")


def _place(
    here: BoolArray, box: tuple[slice, ...], tiles: Tiles, lattice: Lattice
) -> tuple[float, float, tuple[float, float]]:
    """Site x and y of the middle of the tiles ``here`` in ``box``, and how far they reach along u and v,
    m."""
    rows, columns = np.nonzero(here)
    v, u = (
        ((index.mean() + s.start + 0.5) * tiles.side - 0.5 - lattice.pad) * lattice.pitch
        for index, s in zip((rows, columns), box, strict=True)
    )
    x, y = lattice.frame.to_site((u, v))
    return float(x), float(y), (here.shape[1] * tiles.width, here.shape[0] * tiles.width)


def _tiles_of_nodes(tiles: Tiles, lattice: Lattice) -> tuple[IntArray, IntArray]:
    """Row of tiles of each row of nodes, and column of each column: a tile's value goes to its nodes
    without a raster of all lattice cells between."""
    rows, columns = ((lattice.pad + lattice.steps * np.arange(n)) // tiles.side for n in lattice.frame.shape)
    return rows, columns


def _heights(planes: FloatArray, offset: FloatArray, tiles: Tiles, lattice: Lattice) -> FloatArray:
    """Heights (ny, nx) at the nodes: the tile's plane and its offset, NaN where there is none, m."""
    k, p, side = lattice.steps, lattice.pad, tiles.side
    at = [p + k * np.arange(n) for n in lattice.frame.shape]
    (j, y), (i, x) = ((a // side, (a % side + 0.5) / side - 0.5) for a in at)
    plane = planes[np.ix_(j, i)]
    return plane[..., 0] + plane[..., 1] * x + plane[..., 2] * y[:, None] + offset[np.ix_(j, i)]
