"""How wrong the heights of a scan may be, and where each figure came from.

Three parts: white noise of single points (from residuals), patch over about a tenth of a metre, and warp, the
smooth drift that no averaging removes. Patch and warp show themselves only where the same slab was seen
twice: in repeats, or in one walk that came back over its own ground (known by time stamps, or by the order of
the points in the file). Where nothing was seen twice a prior by kind of scanner stands, and says so.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from itertools import combinations

import numpy as np
from numpy.typing import NDArray

from crestcut.base.grid import FloatArray, GridFrame, HeightGrid, IntArray
from crestcut.scan import Scan
from crestcut.terrain.doubts import doubts_of
from crestcut.terrain.error.fit import PassFit, fit_difference
from crestcut.terrain.error.priors import Prior, prior_for
from crestcut.terrain.error.shown import as_smooth_as
from crestcut.terrain.error.uneven import unevenness
from crestcut.terrain.records import ErrorModel, Known

POINTS = 200_000  # thinned to about so many, in file order: enough for every figure here
CLOSE = 0.05  # m: points farther from the fitted heights are not of the slab
BIN = 0.05  # m: cells in which passes are compared
ENOUGH_POINTS = 3  # of each pass in a cell
ENOUGH_CELLS = 150  # seen by both passes
ENOUGH_SHARE = 0.10  # of all cells, seen by both passes: a file sorted by place shares only a seam
MOST_PAIRS = 3  # of passes that are compared
SEGMENTS = 24  # of a walk, in its order
STEP_SHARE = 0.2  # neighbours in a coherent file are this much nearer than points at random
# stands for the error model while it is still being estimated
NOT_YET = ErrorModel(*(float("nan"),) * 5, *("not estimated yet",) * 3)
# of the prior's warp is kept when one walk is compared with itself: what all of it shares does not show
UNSEEN = 0.5


@dataclass(frozen=True, eq=False)
class _Seen:
    """Points on the slab, in the order they were measured."""

    xy: FloatArray  # (n, 2) grid u, v, m
    residual: FloatArray  # (n,) about the fitted heights, m
    of: NDArray[np.int16]  # pass
    ordered: str  # "time stamps", "the order of the points", or ""


@dataclass(frozen=True, eq=False)
class _Cells:
    """Per pass and cell: how many points (passes, n), the sum of their residuals and its mean where there are
    enough (passes, n), m; index (n, 2) column and row from cell ``first`` (2,) on."""

    count: FloatArray
    total: FloatArray
    mean: FloatArray
    index: IntArray
    first: IntArray

    @property
    def xy(self) -> FloatArray:
        """(n, 2) u, v from the first, m."""
        return np.asarray(self.index * BIN, dtype=float)


def estimate_error(scan: Scan, height: HeightGrid, scanner: str | None) -> ErrorModel:
    """White, patch and warp of a fitted surface.

    height : the fitted heights, NaN where there is no slab; points over NaN do not count.  scanner : phone,
    photogrammetry, terrestrial, total-station, or None.  Sources of the figures are in the record, ready to
    print.
    """
    edges = [f.mesh_edge for f in scan.files if f.mesh_edge is not None]
    meshed = bool(edges) and len(edges) == len(scan.files)
    prior, phrase = prior_for(scanner, float(np.median(edges)) if meshed else None)
    if meshed and (shown := as_smooth_as(height, prior)) != prior:
        prior, phrase = shown, f"{phrase}, no rougher than its own heights are"
    known = Known.UNNAMED if scanner is None else Known.NAMED
    model = _estimated(scan, height, prior, phrase, known, meshed=bool(edges))
    return replace(
        model, mesh_edge=float(np.median(edges)) if edges else 0.0, doubts=doubts_of(scan, scanner, height)
    )


def _estimated(
    scan: Scan, height: HeightGrid, prior: Prior, phrase: str, known: Known, meshed: bool
) -> ErrorModel:
    seen = _on_slab(scan, height, meshed)
    white, white_source = _white(seen.residual)
    if white > prior.white:
        most, named = prior.white, phrase
        prior, phrase = prior_for(None)
        known = Known.UNNAMED
        phrase += (
            f"; not the {named}, as single points scatter by {white * 1000:.0f} mm and theirs by "
            f"{most * 1000:.0f} at most"
        )
    repeats, why, alike = _repeats(seen, len(scan.passes), len(scan.files), prior)
    if repeats is not None:
        return _from_repeats(repeats, prior, white, white_source, height.frame)
    phrase += why
    if seen.ordered and not alike:
        return _from_walk(seen, prior, phrase, known, white, white_source, height.frame)
    return ErrorModel(
        white, prior.patch, prior.patch_length, prior.warp, prior.warp_length, white_source, phrase, phrase,
        known=known,
    )  # fmt: skip


def _on_slab(scan: Scan, height: HeightGrid, meshed: bool) -> _Seen:
    """Thin the scan, keep what lies on the slab, and put it in order of time if there are times."""
    index = np.arange(0, len(scan.points), max(len(scan.points) // POINTS, 1))
    ordered = ""
    if scan.time is not None and np.ptp(scan.time) > 0:
        index, ordered = index[np.argsort(scan.time[index], kind="stable")], "time stamps"
    elif not meshed and _coherent(scan.points):
        ordered = "the order of the points"
    points = scan.points[index]
    residual = points[:, 2] - height.sample(points[:, :2])
    known = np.isfinite(residual)
    # what stands on the slab or hangs over it is no noise of it, however many points it has
    close = known & (np.abs(residual) < CLOSE)
    spread = _robust(residual[close]) if close.any() else 0.0
    near = known & (np.abs(residual) <= max(4 * spread, 0.002))
    return _Seen(height.frame.to_grid(points[near, :2]), residual[near], scan.pass_of[index][near], ordered)


def _coherent(points: FloatArray) -> bool:
    """Whether neighbours in the file are neighbours on the slab: a walk is, a shuffled or hashed cloud is
    not."""
    if len(points) < 1000:
        return False
    at = np.linspace(0, len(points) - 2, 2000).astype(int)
    step = np.median(np.linalg.norm(points[at + 1] - points[at], axis=1))
    apart = np.median(np.linalg.norm(points[np.random.default_rng(0).permutation(at)] - points[at], axis=1))
    return bool(step < STEP_SHARE * apart)


def _robust(values: FloatArray) -> float:
    return 1.4826 * float(np.median(np.abs(values - np.median(values))))


def _white(residual: FloatArray) -> tuple[float, str]:
    if len(residual) < 30:
        return float("nan"), "not measured: too few points on the slab"
    return _robust(residual), "from the residuals of the points"


def _cells(seen: _Seen, label: IntArray, passes: int) -> _Cells:
    """Mean residual of each pass in each cell that any pass saw."""
    cell = np.floor(seen.xy / BIN).astype(np.int64)
    first: IntArray = cell.min(axis=0)
    cell -= first
    wide = int(cell[:, 0].max()) + 1
    used, key = np.unique(cell[:, 1] * wide + cell[:, 0], return_inverse=True)
    flat = label * len(used) + key
    count = np.bincount(flat, minlength=passes * len(used)).reshape(passes, -1).astype(float)
    total = np.bincount(flat, weights=seen.residual, minlength=passes * len(used)).reshape(passes, -1)
    mean = np.where(count >= ENOUGH_POINTS, total / np.maximum(count, 1), np.nan)
    index: IntArray = np.column_stack([used % wide, used // wide])
    return _Cells(count=count, total=np.asarray(total, dtype=float), mean=mean, index=index, first=first)


def _both(cells: _Cells, a: int, b: int) -> NDArray[np.bool_]:
    return np.isfinite(cells.mean[a]) & np.isfinite(cells.mean[b])


def _fit(
    cells: _Cells,
    a: int,
    b: int,
    patch_length: float,
    warp_length: float | None = None,
    patch: float | None = None,
) -> PassFit | None:
    """One pass's parts from the difference of passes a and b; None where too little was seen by both."""
    both = _both(cells, a, b)
    if both.sum() < max(ENOUGH_CELLS, ENOUGH_SHARE * len(both)):
        return None
    noise = 1 / cells.count[a, both] + 1 / cells.count[b, both]
    difference = cells.mean[a, both] - cells.mean[b, both]
    return fit_difference(
        cells.xy[both], difference, noise, patch_length, warp_length=warp_length, patch=patch
    )


def _fused(cells: _Cells) -> float:
    """Mean over cells of the sum of squared shares of the passes: 1 where one pass saw the cell, 1/2 where
    two did.

    The height of a cell is the mean of its points, so its error's variance is this times that of one pass. Of
    two passes each counts half, however many points it has (``unevenness``).
    """
    count = cells.count[:, cells.count.sum(axis=0) >= ENOUGH_POINTS]
    if len(count) == 2:
        count = (count >= ENOUGH_POINTS).astype(float)
        count = count[:, count.any(axis=0)]
    share = count / count.sum(axis=0)
    return float((share**2).sum(axis=0).mean())


def _uneven(cells: _Cells, fit: PassFit, frame: GridFrame) -> HeightGrid | None:
    """Of two passes."""
    i, j = cells.index.T
    shape = (2, int(j.max()) + 1, int(i.max()) + 1)
    count, residual = np.zeros(shape), np.zeros(shape)
    count[:, j, i] = cells.count
    residual[:, j, i] = cells.total
    return unevenness(frame, cells.first, count, residual, BIN, fit)


def _repeats(
    seen: _Seen, passes: int, files: int, prior: Prior
) -> tuple[tuple[_Cells, list[PassFit]] | None, str, bool]:
    """What repeats show; if nothing, why, to follow the phrase that names the prior, and whether they are too
    much alike."""
    if passes < 2 or len(seen.residual) == 0:
        return None, "", False
    cells = _cells(seen, seen.of.astype(np.int64), passes)
    what = f"{files} files" if files == passes else f"{passes} passes"
    pairs = [(k, k + 1) for k in range(passes - 1)]
    if files < passes:  # stations stand where their scanner did: neighbours in the file need not overlap
        seen_by = np.isfinite(cells.mean).astype(np.int64)
        pairs = sorted(combinations(range(passes), 2), key=lambda p: -int(seen_by[p[0]] @ seen_by[p[1]]))
    pairs = pairs[:MOST_PAIRS]
    found = [f for f in (_fit(cells, a, b, 0.10) for a, b in pairs) if f is not None]
    if not found:
        most = max(int(_both(cells, a, b).sum()) for a, b in pairs)
        why = (
            f"; the {what} are no measure of it: only {most} of {len(cells.index)} places 5 cm wide hold "
            f"{ENOUGH_POINTS} points of two of them"
        )
        return None, why, False
    # copies of one walk differ by less than its error, or not at all: the least of the pairs tells
    least = min(f.warp for f in found)
    if least < UNSEEN * prior.warp:
        why = (
            f"; the {what} are no measure of it: two of them differ by only {least * 1000:.1f} mm, as "
            "copies of one walk do; if each is a scan of its own, name the scanner under [scan] scanner"
        )
        return None, why, True
    return (cells, found), "", False


def _from_repeats(
    repeats: tuple[_Cells, list[PassFit]], prior: Prior, white: float, white_source: str, frame: GridFrame
) -> ErrorModel:
    cells, fits = repeats
    fused = _fused(cells) ** 0.5
    warp = float(np.sqrt(np.mean([f.warp**2 for f in fits])))
    patch = float(np.sqrt(np.mean([f.patch**2 for f in fits])))
    length = float(np.exp(np.mean([np.log(f.warp_length) for f in fits])))
    source = f"from {len(cells.count)} repeats, {warp * 1000:.1f} mm each"
    return ErrorModel(
        white,
        patch * fused,
        prior.patch_length,
        warp * fused,
        length,
        white_source,
        f"from {len(cells.count)} repeats",
        source,
        known=Known.REPEATS,
        uneven=_uneven(cells, fits[0], frame) if len(cells.count) == 2 else None,
    )


def _from_walk(
    seen: _Seen, prior: Prior, phrase: str, known: Known, white: float, white_source: str, frame: GridFrame
) -> ErrorModel:
    """Warp from the first half of the walk against the second, patch from every other short stretch against
    the rest."""
    segment = np.arange(len(seen.residual)) * SEGMENTS // len(seen.residual)
    halves = _cells(seen, (segment >= SEGMENTS // 2).astype(np.int64), 2)
    stretches = _cells(seen, segment % 2, 2)
    by_stretch = _fit(stretches, 0, 1, prior.patch_length, warp_length=prior.patch_length)
    # what neighbouring stretches do not share is short: both parts of that fit are patch
    one = float(np.hypot(by_stretch.patch, by_stretch.warp)) if by_stretch else prior.patch
    by_half = _fit(halves, 0, 1, prior.patch_length, patch=one)
    patch, patch_source, warp, length, warp_source = (
        prior.patch,
        phrase,
        prior.warp,
        prior.warp_length,
        phrase,
    )
    if by_stretch is not None:
        patch = one * _fused(stretches) ** 0.5
        patch_source = f"from {seen.ordered}, every other stretch of {SEGMENTS} against the rest"
    if by_half is not None:
        length = by_half.warp_length
        warp_source = (
            f"from {seen.ordered}, one half of the walk against the other ({by_half.warp * 1000:.1f} mm each)"
        )
        warp = by_half.warp * _fused(halves) ** 0.5
        if warp < UNSEEN * prior.warp:
            warp = UNSEEN * prior.warp
            warp_source += (
                f"; not less than half of the {phrase}, as what the whole walk shares does not show"
            )
    return ErrorModel(
        white, patch, prior.patch_length, warp, length, white_source, patch_source, warp_source,
        known=known if by_half is None else Known.WALK,
        uneven=None if by_half is None else _uneven(halves, by_half, frame),
    )  # fmt: skip
