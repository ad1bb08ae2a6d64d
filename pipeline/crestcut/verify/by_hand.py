"""The finished work from hand measurements alone: a felt gap, a string, a level, and no new scan.

The slab is the one that was scanned, less a share of the planned depth. That share is unknown, from nothing
to a little more than all; what was read by hand says which shares are likely (a flat prior, and the
likelihood of the readings with scan and vehicle as uncertain as they are: Rasmussen & Williams 2006, 5.4.1).
A cut followed by hand is besides a little uneven, over a tenth and over half a metre.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

import numpy as np
from scipy import special

from crestcut.cut.plan import cut_surface
from crestcut.errors import CrestcutError
from crestcut.grid import FloatArray, HeightGrid
from crestcut.standing import Driver
from crestcut.surface.evidence_fold import own_covariance
from crestcut.surface.evidence_records import Evidence, Reading
from crestcut.surface.records import ErrorModel, Surface
from crestcut.verify.records import Share

MOST, STEP = 1.3, 0.05  # share of the planned depth: the greatest looked at, and the steps between
WORK = 0.0015  # m, 1 sd over about 0.1 m: a hand grinder riding on a jig (common practice, no source)
UNEVEN = 0.10  # of the depth, 1 sd over half a metre: one stretch taken lower than another (likewise)
NODES = ((-(3**0.5), 1 / 6), (0.0, 2 / 3), (3**0.5, 1 / 6))  # Gauss-Hermite, three points


@dataclass(frozen=True, eq=False)
class Shares:
    """What the readings make of the share: Share, and shares with their weights that stand for all."""

    share: Share
    nodes: tuple[tuple[float, float], ...]


def worked(surface: Surface, planned: HeightGrid, share: float) -> Surface:
    """The slab with a share of the planned depth gone, and as uncertain as a hand leaves it."""
    depth = share * np.nan_to_num(planned.values)
    lower = cut_surface(surface, depth)
    return replace(lower, error=uneven(surface.error, float(depth.max(initial=0.0))), scanned=None)


def uneven(error: ErrorModel, deepest: float) -> ErrorModel:
    """The error of a scanned surface that was then cut by hand to a plan."""
    if deepest <= 0:
        return error
    if error.slab is not None:
        return replace(error, worked=(WORK, UNEVEN * deepest))
    patch, warp = np.hypot(error.patch, WORK), np.hypot(error.warp, UNEVEN * deepest)
    return replace(error, patch=float(patch), warp=float(warp))


def likely_shares(
    surface: Surface, planned: HeightGrid, driver: Driver, read: Callable[[Surface], Evidence | None]
) -> Shares:
    """How much of the planned depth the readings say is gone.

    surface, driver : what the readings from before the work have told of them is in their draws.  read : the
    readings since, as evidence on a slab worked to some share.
    Raises CrestcutError where the readings fit on no such slab (a string that it would touch).
    """
    shares = np.arange(0.0, MOST + STEP / 2, STEP)
    log, refused = np.full(len(shares), -np.inf), None
    for k, share in enumerate(shares):
        ground = worked(surface, planned, float(share))
        try:
            evidence = read(ground)
        except CrestcutError as error:  # a string set over the finished cut would touch the slab as it was
            refused = error
            continue
        log[k] = 0.0 if evidence is None else log_likelihood(evidence, ground.error, driver)
    if not np.isfinite(log).any():
        raise refused or CrestcutError("the readings fit on no slab", "[after]", "measure them again")
    fine = np.linspace(0.0, MOST, 521)
    known = np.isfinite(log)
    curve = np.interp(fine, shares[known], log[known])
    curve[fine < shares[known][0] - 1e-9] = -np.inf
    weight = np.exp(curve - curve.max())
    weight /= weight.sum()
    best = float(weight @ fine)
    sd = float(np.sqrt(weight @ (fine - best) ** 2))
    nodes = tuple((float(np.clip(best + z * sd, 0.0, MOST)), w) for z, w in NODES)
    return Shares(Share(best, sd), nodes if sd > 1e-4 else ((best, 1.0),))


def log_likelihood(evidence: Evidence, error: ErrorModel, driver: Driver) -> float:
    """Of the readings given ground and vehicle as uncertain as they are: what was read to a figure by its
    density, a bound by its chance given those."""
    readings = evidence.readings
    own, *_ = own_covariance(evidence, error, driver.within, driver.parts)
    missed = np.array([r.observed - r.predicted for r in readings])
    exact = [i for i, r in enumerate(readings) if r.relation == "is"]
    inner = own[np.ix_(exact, exact)]
    total = -0.5 * float(missed[exact] @ np.linalg.solve(inner, missed[exact])) if exact else 0.0
    total -= 0.5 * float(np.linalg.slogdet(inner)[1]) if exact else 0.0
    return total + sum(_bound(r, i, own, missed, exact) for i, r in enumerate(readings) if r.relation != "is")


def _bound(reading: Reading, i: int, own: FloatArray, missed: FloatArray, exact: Sequence[int]) -> float:
    gain = np.linalg.solve(own[np.ix_(exact, exact)], own[exact, i]) if exact else np.zeros(0)
    mean, variance = float(gain @ missed[exact]), float(own[i, i] - gain @ own[exact, i])
    over = (mean - missed[i]) / float(np.sqrt(max(variance, 1e-12)))
    return float(special.log_ndtr(over if reading.relation == "at least" else -over))
