"""Hand measurements folded into a floor's heights: strings and straightedges bend it, levels tilt it.

As ``readings.condition``, but a scan's own tilt is here an error of the floor, not of the reading: how far
a scan's 'up' leans is nothing to a straightedge and everything to a level. The tilt t about the floor's
middle c adds (x - c) . t to the error at x, so tilt^2 (x - c) . (y - c) to its covariance.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np
from scipy import linalg

from crestcut.base.grid import FloatArray, GridFrame, HeightGrid, IntArray
from crestcut.terrain import SCAN_TILT, ErrorModel, Evidence, Reading, contradictions, of_functionals, towards

# rad, 1 sd: how far the scan's own 'up' may lean; a tripod's compensator holds it (common practice, no
# source)
TILTS = {"terrestrial": 5e-5, "total-station": 3e-5}
# rad, 1 sd of a floor's own fall: F_L 20 is 2 mm/m, to a drain it is 10 (common practice, no source)
FALL = 0.005
LEVEL = "[[level]]"


@dataclass(frozen=True, eq=False)
class Folded:
    """mean : (n,) expected error of the heights, m.  errors : (n, d) drawn ones about it.  told : readings
    used. contradictions : in words; then nothing was used.
    """

    mean: FloatArray
    errors: FloatArray
    told: int
    contradictions: tuple[str, ...] = ()


def tilt_of(scanner: str | None) -> float:
    """How far a scan's 'up' may lean, rad, 1 sd."""
    return TILTS.get(scanner or "", SCAN_TILT)


def fold_floor(
    evidence: Evidence | None,
    error: ErrorModel,
    frame: GridFrame,
    errors: FloatArray,
    tilt: float,
    rng: np.random.Generator,
) -> Folded:
    """Drawn errors (nodes of ``frame``, d) m, the tilt in them, given what was read.

    Readings are taken at the nodes nearest to their places, so that draws and covariances speak of the same
    ones.
    """
    nothing = Folded(np.zeros(len(errors)), errors, 0)
    if evidence is None or not evidence.readings:
        return nothing
    places = frame.node_xy().reshape(-1, 2)
    centre = places.mean(axis=0)
    at = [_nearest(frame, r.points) for r in evidence.readings]
    readings = tuple(replace(r, points=places[n]) for r, n in zip(evidence.readings, at, strict=True))
    points, weights = tuple(r.points for r in readings), tuple(r.weights for r in readings)
    lever = np.array([w @ (p - centre) for p, w in zip(points, weights, strict=True)])  # (m, 2)
    noise = _without_tilt(evidence)
    own = of_functionals(error, points, weights, tuple(r.standard_error for r in readings)) + noise
    own += tilt**2 * lever @ lever.T
    missed = np.array([r.observed - r.predicted for r in readings])
    against = contradictions(readings, own, missed)
    if against:
        return replace(nothing, contradictions=against)
    together = towards(error, places, points, weights) + tilt**2 * (places - centre) @ lever.T
    gain = -linalg.cho_solve(linalg.cho_factor(own), together.T).T
    would = -np.array([w @ errors[n] for w, n in zip(weights, at, strict=True)])
    root = np.linalg.cholesky(noise + 1e-16 * np.eye(len(noise)))
    would += root @ rng.standard_normal(would.shape)
    return Folded(gain @ missed, errors - gain @ would, len(readings))


def tilted(height: HeightGrid, tilt: float, count: int, rng: np.random.Generator) -> tuple[FloatArray, float]:
    """Drawn tilts of the scan about the middle of a raster, (nodes, 2 count) m, in pairs about their mean,
    and 1 sd of them, rad.

    height : as scanned.  tilt : rad, 1 sd before anything is seen. What is seen is the floor's own fall and
    the scan's lean together; each takes its share.
    """
    places = height.frame.node_xy().reshape(-1, 2)
    away = places - places.mean(axis=0)
    known = height.measured.ravel()
    flat = np.column_stack([np.ones(known.sum()), away[known]])
    seen = np.linalg.lstsq(flat, height.values.ravel()[known])[0][1:]
    share = tilt**2 / (tilt**2 + FALL**2)
    left = FALL * float(np.sqrt(share))
    half = left * rng.standard_normal((2, count))
    return away @ (share * seen[:, None] + np.concatenate([half, -half], axis=1)), left


def _nearest(frame: GridFrame, points: FloatArray) -> IntArray:
    q = np.rint(frame.to_grid(points) / frame.cell).astype(np.int64)
    row, column = (np.clip(q[:, 1 - k], 0, frame.shape[k] - 1) for k in (0, 1))
    return np.asarray(row * frame.shape[1] + column)


def _without_tilt(evidence: Evidence) -> FloatArray:
    """The readings' own errors (m, m), m2, less the tilt that every list of levels carries for the scan."""
    noise = np.array(evidence.noise)
    lists: dict[str, list[int]] = {}
    for k, reading in enumerate(evidence.readings):
        if reading.name.startswith(LEVEL):
            lists.setdefault(reading.name, []).append(k)
    for members in lists.values():
        away = _places(evidence.readings, members)
        away = away - away.mean(axis=0)
        noise[np.ix_(members, members)] -= SCAN_TILT**2 * away @ away.T
    return noise


def _places(readings: tuple[Reading, ...], members: list[int]) -> FloatArray:
    return np.array([readings[k].points[0] for k in members])
