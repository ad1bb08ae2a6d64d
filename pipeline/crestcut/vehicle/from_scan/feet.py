"""Where a scanned vehicle stands: four tyres on a plane, which may itself be in view (runways, a floor).

Two cases. Where nothing is seen under the wheels, the lowest things are the tyres. Where what they stand on
is seen, it is a broad level face, and the tyres are four places that widen upwards from it: a disk of radius
R is 2 sqrt(2 R h) long at h over its lowest point. What narrows upwards stands on its head.
"""

from __future__ import annotations

import numpy as np
from scipy import ndimage

from crestcut.base.errors import CrestcutError
from crestcut.base.grid import FloatArray

FOOT = 0.03  # m over the lowest points that still counts as a tyre's foot
PLANE = 0.012  # m: what lies this near to the ground's plane is ground, or 4 of its own sd up to ``THICK``
THICK = 0.030
BAND = (0.02, 0.05, 0.08)  # m over the plane: two slices of a tyre
WIDENS = 1.08  # a tyre's slice grows by sqrt of the mean heights, 1.36; a box does not
BROAD = 0.15  # share of the scan's rectangle that tyres never fill
_PLANES = 3  # faces under the wheels: a pit's bottom, then the runways
_TRIES = 400
_MEND = "give a mesh or scan of the vehicle on its wheels, z up"


def stand_on_wheels(points: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Four feet (4, 3), and the points (m, 3) levelled so that the wheels stand on z = 0, the ground's own
    points left out.

    points : (n, 3), metres, z up within a few degrees. Raises CrestcutError where no four tyres are found.
    """
    level = points - [*points[:, :2].mean(axis=0), np.quantile(points[:, 2], 0.001)]
    try:
        return _on_its_feet(level)
    except CrestcutError as first:
        found = _on_ground(level)
        if found is None:
            raise first from None
        return found


def _on_its_feet(level: FloatArray) -> tuple[FloatArray, FloatArray]:
    try:
        feet = _feet(level)
    except CrestcutError:
        # it may stand askew in its file by more than a foot's height: level its floor first
        level = level @ to_vertical(_plane(level)).T
        level = level - [0.0, 0.0, np.quantile(level[:, 2], 0.001)]
    for _ in range(3):  # a vehicle that stands askew in its file is levelled, then looked at again
        feet = _feet(level)
        a = _plane(feet)
        level = (level - [0, 0, a[2]]) @ to_vertical(a).T
    return _feet(level), level


def _plane(points: FloatArray) -> FloatArray:
    """a, b, c of the least-squares plane z = a x + b y + c of points (n, 3)."""
    terms = np.column_stack([points[:, :2], np.ones(len(points))])
    return np.asarray(np.linalg.lstsq(terms, points[:, 2], rcond=None)[0], dtype=np.float64)


def to_vertical(plane: FloatArray) -> FloatArray:
    """Rotation (3, 3) that turns the normal of z = a x + b y + c onto z (Rodrigues; plane = (a, b, c))."""
    normal = np.array([-plane[0], -plane[1], 1.0]) / np.sqrt(plane[0] ** 2 + plane[1] ** 2 + 1)
    v = np.cross(normal, [0.0, 0.0, 1.0])
    k = np.array([[0, -v[2], v[1]], [v[2], 0, -v[0]], [-v[1], v[0], 0]])
    return np.eye(3) + k + k @ k / (1 + normal[2])


def _feet(level: FloatArray) -> FloatArray:
    low = level[level[:, 2] < np.quantile(level[:, 2], 0.001) + FOOT]
    mask, label, count, cell = _patches(low)
    spans = np.ptp(level[:, :2], axis=0)
    if mask.sum() * 0.05**2 > BROAD * spans[0] * spans[1]:
        raise CrestcutError(
            "the lowest thing is one broad face, not tyres: it lies upside down, or has none",
            "underside",
            _MEND,
        )
    if count < 4:
        raise CrestcutError(f"{count} tyres found, four expected", "underside", _MEND)
    which = label[cell[:, 0], cell[:, 1]]
    size = np.bincount(which, minlength=count + 1)[1:]
    # the foot's place is the middle of the lowest patch; its height that of the tyre's bowl over that place
    feet = []
    for k in np.argsort(-size)[:4] + 1:
        own = low[which == k]
        middle = (own[:, :2].min(axis=0) + own[:, :2].max(axis=0)) / 2
        feet.append([*middle, _bowl(level, middle)])
    return np.array(feet)


def _bowl(level: FloatArray, middle: FloatArray) -> float:
    """Height of a tyre's lowest point, m: a quadratic through all points within 80 mm of its middle, whatever
    their height, so that noise does not choose.
    """
    d = level[:, :2] - middle
    near = (np.hypot(d[:, 0], d[:, 1]) < 0.08) & (level[:, 2] < 2 * FOOT)
    x, y, z = d[near, 0], d[near, 1], level[near, 2]
    if len(z) < 12:
        return float(np.median(z)) if len(z) else 0.0
    terms = np.column_stack([np.ones(len(z)), x, y, x * x, x * y, y * y])
    return float(np.linalg.lstsq(terms, z, rcond=None)[0][0])


def _patches(low: FloatArray) -> tuple[np.ndarray, np.ndarray, int, np.ndarray]:
    """Points in 50 mm cells, joined over gaps of 0.2 m: mask, label, how many, and each point's cell."""
    cell = np.floor(low[:, :2] / 0.05).astype(int)
    cell -= cell.min(axis=0)
    mask = np.zeros(cell.max(axis=0) + 1, dtype=bool)
    mask[cell[:, 0], cell[:, 1]] = True
    label, count = ndimage.label(ndimage.binary_dilation(mask, iterations=2))
    return mask, label, count, cell


def _on_ground(level: FloatArray) -> tuple[FloatArray, FloatArray] | None:
    """The same where the wheels' ground is in view; None where no face under four tyres is found."""
    for _ in range(_PLANES):
        plane = _lowest_plane(level)
        if plane is None:
            return None
        level = (level - [0, 0, plane[2]]) @ to_vertical(plane).T
        level = level[level[:, 2] > _thickness(level[:, 2])]
        if len(level) < 500:
            return None
        feet = _tyres_over(level)
        if feet is not None:
            return feet, level
    return None


def _thickness(over: FloatArray) -> float:
    """How far up a noisy face at 0 reaches, m (sd from the median of what lies below it, which is all its
    own).
    """
    below = -over[(over < 0) & (over > -THICK)]
    sd = 1.4826 * float(np.median(below)) if len(below) > 10 else 0.0
    return float(np.clip(4.0 * sd, PLANE, THICK))


def _lowest_plane(level: FloatArray) -> FloatArray | None:
    """a, b, c of the broad near-level face z = a x + b y + c under which almost nothing lies."""
    cell = np.floor(level[:, :2] / 0.1).astype(int)
    cell -= cell.min(axis=0)
    flat = cell[:, 0] * (cell[:, 1].max() + 1) + cell[:, 1]
    order = np.lexsort((level[:, 2], flat))
    number, start, count = np.unique(flat[order], return_index=True, return_counts=True)
    least = level[order][start + (0.1 * count).astype(int)]  # of every cell, a stray point left out
    rng = np.random.default_rng(0)
    best, most = None, 0
    for _ in range(_TRIES):
        three = least[rng.choice(len(least), 3, replace=False)]
        try:
            a = np.linalg.solve(np.column_stack([three[:, :2], np.ones(3)]), three[:, 2])
        except np.linalg.LinAlgError:
            continue
        over = least[:, 2] - least[:, :2] @ a[:2] - a[2]
        near = int((np.abs(over) < PLANE).sum())
        if np.hypot(a[0], a[1]) < 0.1 and (over < -PLANE).sum() < 0.01 * len(least) and near > most:
            best, most = a, near
    if best is None or most < 0.1 * len(number):
        return None
    for _ in range(3):
        near = np.abs(level[:, 2] - level[:, :2] @ best[:2] - best[2]) < PLANE
        best = _plane(level[near])
    return np.asarray(best)


def _tyres_over(level: FloatArray) -> FloatArray | None:
    """Feet (4, 3) of the four places over the plane z = 0 that widen upwards; None where there are fewer."""
    low = level[(level[:, 2] > BAND[0]) & (level[:, 2] < BAND[2])]
    if len(low) < 40:
        return None
    _, label, count, cell = _patches(low)
    which = label[cell[:, 0], cell[:, 1]]
    feet, size = [], []
    for k in range(1, count + 1):
        own = low[which == k]
        under, over = own[own[:, 2] < BAND[1]], own[own[:, 2] >= BAND[1]]
        if len(under) < 5 or len(over) < 5:
            continue
        ends = [np.quantile(part[:, :2], (0.02, 0.98), axis=0) for part in (under, over)]
        spans = [np.ptp(e, axis=0) for e in ends]
        if spans[1].max() < WIDENS * spans[0].max():
            continue
        feet.append([*ends[1].mean(axis=0), 0.0])
        size.append(len(own))
    if len(feet) < 4:
        return None
    return np.array(feet)[np.argsort(-np.array(size))[:4]]
