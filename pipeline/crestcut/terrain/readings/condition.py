"""Hand measurements folded into drawn errors of ground and vehicle.

With e the error of the fitted ground and d that of a part's height, a reading differs from what was predicted
by r = -sum w e + d + noise. Everything is Gaussian, so e and d given r are a shift and a smaller spread:
kriging. Draws are moved by Matheron's rule. A bound ("it touched", "it cleared 10 mm") is a reading whose r
is drawn from the part of its range that the bound leaves (Gibbs; Geweke, Computing Science and Statistics 23,
1991).
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np
from scipy import linalg, special

from crestcut.base.grid import FloatArray
from crestcut.base.units import millimetres
from crestcut.terrain.error.covariance import of_functionals, sums_of
from crestcut.terrain.error.draws import towards
from crestcut.terrain.readings.records import Evidence, Reading
from crestcut.terrain.records import ErrorModel

CONTRADICTS = 3.3  # standard deviations: 1 in 1,000
UNLIKELY = 1e-3
SWEEPS = 20  # of the Gibbs chain between draws that are used


@dataclass(frozen=True, eq=False)
class Conditioned:
    """What the readings make of the errors.

    ground : (n,) expected error of the fitted heights at the places asked for, m.  parts : (p,) expected
    error of part heights, m.
    contradictions : plain sentences; where there are any, no reading was used.
    """

    ground: FloatArray
    parts: FloatArray
    contradictions: tuple[str, ...] = ()
    ground_gain: FloatArray | None = None  # (n, m)
    part_gain: FloatArray | None = None  # (p, m)
    part_weights: FloatArray | None = None  # (p, m)
    own: FloatArray | None = None  # (m, m) covariance of the readings, m2
    noise_root: FloatArray | None = None
    missed: FloatArray | None = None  # (m,) mean of r
    drawn: FloatArray | None = None  # (count, m) r where bounds leave it free, less its mean

    def read(self, count: int) -> FloatArray:
        """(m, count) by how much each reading came out over what was expected, m: as read, or drawn where
        only a bound is known."""
        assert self.missed is not None
        free = np.zeros((len(self.missed), count)) if self.drawn is None else self.drawn.T
        return np.asarray(self.missed[:, None] + free)


def fold_in(
    evidence: Evidence | None,
    error: ErrorModel,
    places: FloatArray,
    within: Mapping[str, float],
    rng: np.random.Generator,
    count: int,
    parts: FloatArray | None = None,
) -> Conditioned:
    """Fold ``evidence`` into the errors at ``places`` (n, 2), site metres.

    within : 1 sd of each part's height, m, in the order the parts come.  count : draws wanted, for bounds.
    parts : (p, d) drawn heights of them about their means, m, in step with the slab's draws, where earlier
    readings have told of both.
    """
    nothing = Conditioned(np.zeros(len(places)), np.zeros(len(within)))
    if evidence is None or not evidence.readings:
        return nothing
    readings = evidence.readings
    own, belongs, together = own_covariance(evidence, error, within, parts)
    missed = np.array([r.observed - r.predicted for r in readings])
    against = contradictions(readings, own, missed)
    if against:
        return Conditioned(nothing.ground, nothing.parts, against)
    points, weights = [r.points for r in readings], [r.weights for r in readings]
    solve = linalg.cho_factor(own)
    along = towards(error, places, points, weights)
    if parts is not None and error.slab is not None:
        along += error.slab.at_site(places) @ (parts.T @ belongs / parts.shape[1])
    ground_gain = linalg.cho_solve(solve, -along.T).T
    part_gain = linalg.cho_solve(solve, together.T).T
    r, drawn = missed, None
    if any(reading.relation != "is" for reading in readings):
        every = _bounded(readings, own, missed, rng, count)
        r = every.mean(axis=0)
        drawn = np.asarray(every - r, dtype=np.float64)
    root = np.asarray(np.linalg.cholesky(evidence.noise + 1e-18 * np.eye(len(readings))), dtype=np.float64)
    return Conditioned(
        ground_gain @ r, part_gain @ r, (), ground_gain, part_gain, belongs, own, root, r, drawn
    )


def own_covariance(
    evidence: Evidence, error: ErrorModel, within: Mapping[str, float], parts: FloatArray | None = None
) -> tuple[FloatArray, FloatArray, FloatArray]:
    """Covariance (m, m), m2, of the readings with ground, parts and the readings' own errors in it; which
    part each is of (p, m), 1 or 0; covariance (p, m), m2, of the parts' heights with the readings.

    within, parts : as for ``fold_in``.
    """
    readings = evidence.readings
    points, weights = tuple(r.points for r in readings), tuple(r.weights for r in readings)
    belongs = np.array([[float(r.part == name) for r in readings] for name in within]).reshape(
        len(within), len(readings)
    )
    ground = of_functionals(error, points, weights, tuple(r.standard_error for r in readings))
    if parts is None or error.slab is None:
        together = np.array(list(within.values()))[:, None] ** 2 * belongs
        return ground + evidence.noise + belongs.T @ together, belongs, together
    # a part that hangs lower goes with ground that lies lower, where a gap between them was read
    cross = parts @ sums_of(error.slab, points, weights).T / parts.shape[1]
    together = parts @ parts.T @ belongs / parts.shape[1] + cross
    return ground + evidence.noise + belongs.T @ together + cross.T @ belongs, belongs, together


def contradictions(readings: Sequence[Reading], own: FloatArray, missed: FloatArray) -> tuple[str, ...]:
    """Readings that scan, vehicle and all other readings together make unbelievable, each in a sentence.

    Each is compared with what all others leave of it: (S^-1 r)_i / sqrt((S^-1)_ii) is its miss in standard
    deviations.
    """
    said = []
    exact = [i for i, r in enumerate(readings) if r.relation == "is"]
    inverse = linalg.inv(own[np.ix_(exact, exact)]) if exact else np.zeros((0, 0))
    for k, i in enumerate(exact):
        miss = float((inverse @ missed[exact])[k] / inverse[k, k])
        if abs(miss) * np.sqrt(inverse[k, k]) > CONTRADICTS:
            said.append(
                _against(readings[i], readings[i].observed - miss, 1 / np.sqrt(inverse[k, k]), len(exact))
            )
    for i, reading in enumerate(readings):
        if reading.relation == "is":
            continue
        gain = own[i, exact] @ inverse
        mean, variance = float(gain @ missed[exact]), float(own[i, i] - gain @ own[exact, i])
        sd = float(np.sqrt(max(variance, 1e-12)))
        above = (mean - missed[i]) / sd
        if special.ndtr(-above if reading.relation == "at most" else above) < UNLIKELY:
            said.append(_against(reading, reading.predicted + mean, sd, len(exact) + 1))
    return tuple(said)


def _against(reading: Reading, expected: float, sd: float, readings: int) -> str:
    others = "the scan and the other readings say" if readings > 1 else "the scan says"
    bound = "" if reading.relation == "is" else f"{reading.relation} "
    observed, expected = reading.observed + reading.lowered, expected + reading.lowered
    return (
        f"{reading.name}: {reading.what} {bound}{millimetres(observed)} contradicts what {others}, "
        f"{millimetres(expected)} give or take {millimetres(2 * sd)}; measure it again, and check where it "
        "was taken"
    )


def _bounded(
    readings: Sequence[Reading], own: FloatArray, missed: FloatArray, rng: np.random.Generator, count: int
) -> FloatArray:
    """Draws (count, m) of r: fixed where it was read, within its bound where only a bound is known."""
    free = [i for i, r in enumerate(readings) if r.relation != "is"]
    exact = [i for i, r in enumerate(readings) if r.relation == "is"]
    gain = (
        np.linalg.solve(own[np.ix_(exact, exact)], own[np.ix_(exact, free)]).T
        if exact
        else np.zeros((len(free), 0))
    )
    mean = gain @ missed[exact]
    inverse = np.linalg.inv(own[np.ix_(free, free)] - gain @ own[np.ix_(exact, free)])
    low = np.array([missed[i] if readings[i].relation == "at least" else -np.inf for i in free])
    high = np.array([missed[i] if readings[i].relation == "at most" else np.inf for i in free])
    x = np.clip(mean, low, high)
    out = np.tile(missed, (count, 1))
    for row in range(count):
        for _ in range(1 if len(free) == 1 else SWEEPS):
            for k in range(len(free)):
                sd = 1 / np.sqrt(inverse[k, k])
                centre = (
                    mean[k] - (inverse[k] @ (x - mean) - inverse[k, k] * (x[k] - mean[k])) / inverse[k, k]
                )
                a, b = special.ndtr((low[k] - centre) / sd), special.ndtr((high[k] - centre) / sd)
                x[k] = np.clip(centre + sd * special.ndtri(a + (b - a) * rng.random()), low[k], high[k])
        out[row, free] = x
    return out
