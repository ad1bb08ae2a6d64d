"""Fixes that add instead of taking away: strips in the wheel tracks, a fillet in the gutter."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np
from scipy import ndimage

from crestcut.alternatives.trials import Baseline, Trieds, spare
from crestcut.base.grid import BoolArray, FloatArray
from crestcut.contact import hard_parts, wheel_feet

STRIPS = (0.006, 0.010, 0.015, 0.020, 0.025, 0.030, 0.040, 0.050)  # m, thicknesses tried
STRIP_TAPER = 0.25  # rise over run at their ends and edges (common practice, no source)
STRIP_NAME, BOARDS_NAME = "ramp strips in the wheel tracks", "loose boards, for a test drive"
FILLETS = (0.5, 1.0, 1.5, 2.0, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0, 12.0, 16.0, 20.0)  # m, radii tried
HALF_DISK = 2.0  # m: no more of a fillet's disk than this either side
LEAST_FILL = 0.002  # m: a hollow less deep is the ground's own unevenness
# wheels (order WHEELS) that lift each zone
HELPFUL = {"belly": slice(0, 4), "nose": slice(0, 2), "tail": slice(2, 4)}
GAINS = 0.001  # m: a thicker strip or a wider fillet that gains less than this is the last one tried


@dataclass(frozen=True, eq=False)
class Added:
    """Something laid on the ground: height added (ny, nx) m, and what each vehicle then clears.

    size : thickness of strips, radius of a fillet, m.  pieces : (length along the travel, width) of each, m.
    """

    name: str
    size: float
    added: FloatArray
    cell: float
    tried: Trieds

    @property
    def litres(self) -> float:
        """Volume laid, litres."""
        return float(self.added.sum()) * self.cell**2 * 1000

    @property
    def thickest(self) -> float:
        """Greatest height laid, m."""
        return float(self.added.max(initial=0.0))

    @property
    def pieces(self) -> tuple[tuple[float, float], ...]:
        """Length along the travel and width of every piece, m; crumbs left out."""
        labels, _ = ndimage.label(self.added > 1e-4)
        boxes = [(s[1], s[0]) for s in ndimage.find_objects(labels)]
        sizes = [((u.stop - u.start) * self.cell, (v.stop - v.start) * self.cell) for u, v in boxes]
        return tuple(s for s in sizes if min(s) > 0.1)


def strips(benches: Sequence[Baseline]) -> Added | None:
    """Strips where tyres stand while a gap is short, the thinnest of ``STRIPS`` that leaves all enough.

    Where none does, the one that leaves the most. None where no pose is short, or nothing may be laid where
    the tyres stand.
    """
    taper = strip_taper(benches)
    if taper is None:
        return None
    # wheels raised by d raise a part by at most d times its lever: thinner than this cannot do
    needed = max((b.target - b.before.excess) / lever(b) for b in benches)
    return _thinnest(benches, taper, [t for t in STRIPS if t >= min(needed, STRIPS[-1])], STRIP_NAME)


def loose_boards(benches: Sequence[Baseline], sizes: Sequence[float]) -> Added | None:
    """Boards laid loose where strips would be fixed, their ends square: the thinnest of ``sizes``, m, that
    leaves all enough; as ``strips``.
    """
    taper = strip_taper(benches)
    if taper is None or not sizes:
        return None
    square = np.where(taper > 0, np.inf, 0.0)
    needed = max((b.target - b.before.excess) / lever(b) for b in benches)
    return _thinnest(benches, square, [t for t in sorted(sizes) if t >= min(needed, max(sizes))], BOARDS_NAME)


def _thinnest(
    benches: Sequence[Baseline], taper: FloatArray, sizes: Sequence[float], name: str
) -> Added | None:
    """Of thicknesses, thinnest first, the first that leaves all enough; else the one that leaves the most."""
    best: Added | None = None
    for thick in sizes:
        trial = replace(lay_strips(benches, thick, taper), name=name)
        left = spare(benches, trial.tried)
        gain = left - spare(benches, best.tried) if best else np.inf
        if gain > 0:
            best = trial
        if left >= 0 or gain < GAINS:
            break
    return best


def strip_taper(benches: Sequence[Baseline]) -> FloatArray | None:
    """What the ends and edges of strips take off their thickness, (ny, nx) m, 0 on them; None for none.

    They lie where any of the vehicles needs them and none has its underside short of room.
    """
    where = np.logical_or.reduce([under_tyres(b) for b in benches])
    where &= ~np.logical_or.reduce([_wants_room(b) for b in benches])
    if not where.any():
        return None
    return np.asarray(STRIP_TAPER * benches[0].ground.cell * ndimage.distance_transform_edt(~where))


def strip_heights(bench: Baseline, thick: float, taper: FloatArray) -> FloatArray:
    """(ny, nx) m; nothing lies on areas to be kept, nor off what may be rolled on."""
    return np.where(bench.kept | ~bench.surface.rollable, 0.0, np.maximum(thick - taper, 0.0))


def lay_strips(benches: Sequence[Baseline], thick: float, taper: FloatArray) -> Added:
    """Strips of that thickness, m, with every vehicle stood on them."""
    added = strip_heights(benches[0], thick, taper)
    # a gap falls by the strip under the part, and by what the far axle's rise tips an end down: lever - 1
    # of it
    tried = tuple(b.tried(added=added, falls=thick * lever(b)) for b in benches)
    return Added(STRIP_NAME, thick, added, benches[0].ground.cell, tried)


def lever(bench: Baseline) -> float:
    """How far the part furthest out moves per unit at the axle next to it, 1 or more."""
    base = bench.vehicle.wheelbase
    return max([1.0] + [1.0 + max(p.x[1] - base, -p.x[0], 0.0) / base for p in hard_parts(bench.vehicle)])


def under_tyres(bench: Baseline) -> BoolArray:
    """(ny, nx) nodes under a tyre's foot at any pose that lacks room.

    For a nose only the front wheels count, for a tail only the rear ones: raising the others tips it down.
    """
    short = bench.pair_excess() < bench.target
    zones = np.array([p.zone for p in hard_parts(bench.vehicle)])
    feet = np.concatenate([
        wheel_feet(bench.vehicle, bench.places[short[:, zones == zone].any(axis=1)])[:, wheels].reshape(-1, 2)
        for zone, wheels in HELPFUL.items()
    ])  # fmt: skip
    shape, cell = bench.ground.ridden.shape, bench.ground.cell
    foot = np.zeros(shape, dtype=np.uint8)
    i, j = np.rint(feet[:, 0] / cell).astype(int), np.rint(feet[:, 1] / cell).astype(int)
    on = (i >= 0) & (j >= 0) & (i < shape[1]) & (j < shape[0])
    foot[j[on], i[on]] = 1
    half = max(round(bench.vehicle.tyre_width / 2 / cell), 1)
    wide = ndimage.maximum_filter(foot, size=2 * half + 1).astype(bool)
    return wide & bench.surface.rollable & ~bench.kept


def _wants_room(bench: Baseline) -> BoolArray:
    """(ny, nx) nodes over which the underside is short at some pose: whatever is laid there it meets."""
    short = np.zeros(bench.ground.ridden.shape, dtype=bool)
    for zone, lowest in bench.clearance.lowest.items():
        short |= lowest.values - bench.surface.top.values < bench.gaps[zone] + bench.target
    return short


def fillet(benches: Sequence[Baseline], end: str) -> Added | None:
    """A round filling of the hollow that lets nose or tail down, the smallest of ``FILLETS`` that does.

    The ground is closed by a disk along the travel (ISO 16610-41: what a wheel of that size does not touch
    is filled up), where the axle next to that ``end`` ("nose" | "tail") stands while it is short, as wide as
    the wheels go. Where no radius does, the one that leaves the most; None where no hollow lies under those
    wheels. By halving: a wider filling lifts more.
    """
    hollow = np.logical_or.reduce([_lane(b, end) for b in benches])
    # wheels raised by d raise an end by at most d times its lever: a filling less deep than this cannot do
    needed = max((b.target - b.before.excess) / lever(b) for b in benches)
    fills = [(radius, _filled(benches[0], radius, hollow)) for radius in FILLETS]
    deep = [(r, f) for r, f in fills if f.max(initial=0.0) >= max(needed, LEAST_FILL)]
    if not deep:
        deep = [(r, f) for r, f in fills[-1:] if f.max(initial=0.0) >= LEAST_FILL]
    best: Added | None = None
    low, high = 0, len(deep) - 1
    while low <= high:
        k = (low + high) // 2
        radius, added = deep[k]
        tried = tuple(b.tried(added=added, falls=lever(b) * float(added.max())) for b in benches)
        trial = Added("fillet in the gutter", radius, added, benches[0].ground.cell, tried)
        if spare(benches, tried) >= 0:
            best, high = trial, k - 1
        else:
            better = best is None or spare(benches, tried) > spare(benches, best.tried)
            best, low = trial if better else best, k + 1
    return best


def _lane(bench: Baseline, end: str) -> BoolArray:
    """(ny, nx) where that axle's wheels stand while the end is short, all across the lane the wheels take."""
    zones = np.array([p.zone == end for p in hard_parts(bench.vehicle)])
    short = (bench.pair_excess()[:, zones] < bench.target).any(axis=1)
    feet = wheel_feet(bench.vehicle, bench.places[short])[:, slice(0, 2) if end == "nose" else slice(2, 4)]
    mask = np.zeros(bench.ground.ridden.shape, dtype=bool)
    if not len(feet):
        return mask
    cell, half = bench.ground.cell, bench.vehicle.tyre_width / 2
    (u0, v0), (u1, v1) = feet.reshape(-1, 2).min(axis=0), feet.reshape(-1, 2).max(axis=0)
    rows = slice(max(int((v0 - half) / cell), 0), int((v1 + half) / cell) + 1)
    mask[rows, max(int((u0 - half) / cell), 0) : int((u1 + half) / cell) + 1] = True
    return mask


def _filled(bench: Baseline, radius: float, lane: BoolArray) -> FloatArray:
    """Height laid into the hollow under ``lane``, (ny, nx) m: closing by a disk of ``radius`` along the
    rows.
    """
    if not lane.any():
        return np.zeros(lane.shape)
    cell, z = bench.ground.cell, bench.surface.height.values
    may = bench.surface.rollable & ~np.isnan(z) & ~bench.kept
    n = int(min(radius, HALF_DISK) / (2 * cell))
    columns = np.flatnonzero(lane.any(axis=0))
    first, last = max(columns[0] - 4 * n, 0) // 2 * 2, min(columns[-1] + 4 * n, z.shape[1])
    # every second node will do: a disk's sag over 20 mm is 0.1 mm at 0.5 m radius
    rows = np.flatnonzero(lane.any(axis=1))
    below, above = rows[0] // 2 * 2, rows[-1] + 2
    low = np.where(may, z, -1e6)[below:above:2, first:last:2]
    drop = np.sqrt(radius**2 - (np.arange(-n, n + 1) * 2 * cell) ** 2) - radius
    closed = -_dilated(-_dilated(low, drop), drop)
    fill = np.zeros(z.shape)
    part = fill[below:above, first:last]
    part[:] = doubled(np.maximum(closed - low, 0.0), part.shape)
    # only the hollows that those wheels stand in, each as a whole along the travel
    labels, _ = ndimage.label(fill > LEAST_FILL)
    kept = np.isin(labels, np.setdiff1d(labels[lane], [0])) & may
    kept[: rows[0]], kept[rows[-1] + 1 :] = False, False
    return np.where(kept, fill, 0.0)


def _dilated(low: FloatArray, drop: FloatArray) -> FloatArray:
    """max over k of low[:, i + k] + drop[k], the raster's ends repeated. Row by row, by shifts (one pass
    each).
    """
    n = len(drop) // 2
    wide = np.pad(low, ((0, 0), (n, n)), mode="edge")
    out = np.full(low.shape, -np.inf)
    for k in range(2 * n + 1):
        np.maximum(out, wide[:, k : k + low.shape[1]] + drop[k], out=out)
    return out


def doubled(coarse: FloatArray, shape: tuple[int, int]) -> FloatArray:
    """Every second node -> all, linearly."""
    j, i = (np.minimum(np.arange(n) / 2, m - 1) for n, m in zip(shape, coarse.shape, strict=True))
    j0, i0 = j.astype(int), i.astype(int)
    j1, i1 = (np.minimum(k + 1, m - 1) for k, m in zip((j0, i0), coarse.shape, strict=True))
    b, a = (j - j0)[:, None], (i - i0)[None, :]
    across = lambda rows: (1 - a) * coarse[rows][:, i0] + a * coarse[rows][:, i1]  # noqa: E731
    return (1 - b) * across(j0) + b * across(j1)
