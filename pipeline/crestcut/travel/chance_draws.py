"""Seeded draws of surface and vehicle through ride and sweep, at the poses that could decide."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Any

import numpy as np
from numpy.typing import NDArray

from crestcut.grid import FloatArray, IntArray
from crestcut.surface.draws import FieldMaker
from crestcut.surface.evidence_fold import Fold, fold_in
from crestcut.surface.evidence_records import Evidence
from crestcut.surface.records import ErrorModel, Surface
from crestcut.travel.chance_footing import Drawn, Footing, Single, find_footing
from crestcut.travel.chance_held import hold_readings, witnesses_of
from crestcut.travel.chance_rounded import crest_cut
from crestcut.travel.chance_tyres import NO_SOFT_TYRES, SoftTyres, soft_tyres
from crestcut.travel.records import Passage
from crestcut.travel.sweep import hard_parts
from crestcut.vehicle.records import Vehicle

REACH = 4.0  # standard deviations that a pair may come down against the least one and still be looked at
LEAST_REACH = 0.004  # m
SPLIT = 1.4  # how the noise is shared between choosing and judging; 0.3 to 1.4 tried on simulated crests


@dataclass(frozen=True, eq=False)
class Draws:
    """Least clearances on drawn surfaces with drawn vehicles, metres.

    base : least gap on the surface as estimated (hand measurements folded in): too low, as the least of
    many noisy gaps is.
    estimate : the same without that bias.  once : (n,) least gap with one more error drawn.  vehicle : (n,)
    the same with the vehicle's own errors only.  tyre_bias : how much a drawn error lifts the tyres on
    average, m.  fold : what the readings made of it.  told : whether any were folded in: then ``once`` are
    what may be, else its mirror image is, as errors are drawn onto a surface that has one already.  tyres :
    what their giving may change at the worst station.  evidence : the readings that were folded in.
    rounded : what a mesh may have cut off the crest at the worst place, m, as far as the readings left it
    open.
    """

    base: float
    estimate: float
    once: FloatArray
    vehicle: FloatArray
    tyre_bias: float
    fold: Fold
    told: bool = False
    evidence: Evidence | None = None
    tyres: SoftTyres = NO_SOFT_TYRES
    rounded: float = 0.0


def white_length(surface: Surface) -> float:
    """How far neighbouring heights share their points, m: the side of the area whose points make one height.

    A height of standard error s from points of noise w holds (w / s)^2 points; the scan's density says how
    wide that is.
    """
    cell = surface.height.frame.cell
    error = surface.standard_error.values
    known = np.isfinite(error) & (error > 0)
    if not known.any() or not surface.error.white > 0 or surface.points_used == 0:
        return 0.03
    density = surface.points_used / (known.sum() * cell**2)
    held = (surface.error.white / float(np.median(error[known]))) ** 2
    return float(np.clip(0.5 * np.sqrt(held / density), cell, 0.15))


def reach_of(vehicle: Vehicle, error: ErrorModel) -> float:
    """How far two gaps may move against each other, m."""
    tolerance = max((p.within for p in hard_parts(vehicle)), default=0.0)
    return max(REACH * float(np.sqrt(error.warp**2 + error.patch**2 + tolerance**2)), LEAST_REACH)


def draw_clearances(
    passage: Passage,
    error: ErrorModel,
    seed: int = 0,
    draws: int = 200,
    evidence: Evidence | None = None,
) -> Draws | None:
    """Gaps of the pairs that could be least, ``draws`` times. None where no part meets measured ground.

    Surfaces are drawn from ``error`` (given what was measured by hand), the heights of parts from their
    ``within``.
    """
    vehicle, surface, clearance = passage.vehicle, passage.surface, passage.clearance
    parts = hard_parts(vehicle)
    extra = evidence_points(evidence)
    footing = find_footing(
        vehicle, surface, passage.ride, clearance, np.zeros(len(parts)), reach_of(vehicle, error),
        extra=extra, stood=stood_in(evidence, vehicle),
    )  # fmt: skip
    if footing is None:
        return None
    source = Source(vehicle, surface, footing, error, seed, max(draws // 2, 2), evidence)
    used = None if source.fold.contradictions else evidence
    tyres = soft_tyres(passage)
    rounded = crest_cut(surface.height, clearance, error.mesh_edge)
    return replace(_collect(footing, source, rounded), tyres=tyres, evidence=used)


class Source:
    """Drawn errors of ground and vehicle at a footing's nodes: ``count`` of them, then their opposites.

    ground : (nodes, 2 count) m, single precision.  parts : (hard parts, 2 count) m.  Both about the estimate,
    given what was read by hand.  untold_ground, untold_parts : the same as the scan alone leaves them.
    """

    def __init__(
        self,
        vehicle: Vehicle,
        surface: Surface,
        footing: Footing,
        error: ErrorModel,
        seed: int,
        count: int,
        evidence: Evidence | None,
    ) -> None:
        rng = np.random.default_rng(seed)
        parts = hard_parts(vehicle)
        maker = FieldMaker(
            error, footing.window, footing.standard_error, white_length(surface), footing.nodes
        )
        within = np.array([p.within for p in parts])
        names = [p.name for p in parts]
        places = footing.window.node_xy().reshape(-1, 2)[footing.nodes]
        evidence, at = snapped(evidence, footing, places)
        self.fold = fold_in(evidence, error, places, dict(zip(names, within, strict=True)), rng, 2 * count)
        ground = maker.draw_many(rng, count)
        shift = rng.standard_normal((len(parts), count)) * within[:, None]
        self.untold_ground, self.untold_parts = _both_signs(ground), _both_signs(shift)
        self.ground, self.parts = self.untold_ground, self.untold_parts
        self.stood = bool(stood_in(evidence, vehicle))
        if evidence is None or self.fold.ground_gain is None:
            return
        self.ground, self.parts, self.fold = hold_readings(
            footing, evidence, names, at, self.fold, self.ground, self.parts, rng
        )


def _both_signs(values: NDArray[Any]) -> NDArray[Any]:
    return np.concatenate([values, -values], axis=1)


def stood_in(evidence: Evidence | None, vehicle: Vehicle) -> list[tuple[FloatArray, int, float]]:
    """Where the vehicle stood witness, as ``find_footing`` takes it."""
    names = [p.name for p in hard_parts(vehicle)]
    found = witnesses_of(evidence.readings, names) if evidence is not None else []
    return [(r.stood, names.index(r.part or ""), r.exactly) for _, r in found if r.stood is not None]


def evidence_points(evidence: Evidence | None) -> FloatArray:
    """Site x, y of every point of every reading, (k, 2): the ground there must be drawn too."""
    return (
        np.concatenate([r.points for r in evidence.readings])
        if evidence and evidence.readings
        else np.zeros((0, 2))
    )


def snapped(
    evidence: Evidence | None, footing: Footing, places: FloatArray
) -> tuple[Evidence | None, list[IntArray]]:
    """Readings moved to the nodes nearest to their points (half a cell), so that draw and covariance speak
    of the same places."""
    if evidence is None:
        return None, []
    each = np.cumsum([len(r.points) for r in evidence.readings])
    at = np.split(footing.extra[: each[-1]], each[:-1])
    readings = tuple(replace(r, points=places[i]) for r, i in zip(evidence.readings, at, strict=True))
    return replace(evidence, readings=readings), list(at)


def _collect(footing: Footing, source: Source, rounded: float) -> Draws:
    """The least of many noisy gaps is too low; how much is judged on the scan alone, and what readings have
    taken from the variance that the ground is to blame for they have taken from that. Tyres stand too high on
    noise: a gap felt under the vehicle has that in it, the distance under a string has not."""
    fold, part = source.fold, footing.pair_part[: footing.judged]
    none = np.zeros((len(footing.nodes), 1), np.float32)
    still = np.zeros((len(fold.parts), 1))
    untold = footing.drawn(-source.untold_ground, source.untold_parts)
    estimate, high = _judged_apart(footing, none, source, still, untold)
    level, once = footing.drawn(none, still), untold
    told = source.ground is not source.untold_ground
    if told:
        none, still = -fold.ground.astype(np.float32)[:, None], fold.parts[:, None]
        level, once = footing.drawn(none, still), footing.drawn(none - source.ground, still + source.parts)
    least, before = (np.asarray(d.gap.min(axis=0), dtype=np.float64) for d in (once, untold))
    if told:
        open_yet = _ground_variance(least, source.parts)
        share = min(open_yet / max(_ground_variance(before, source.untold_parts), 1e-18), 1.0)
        high *= not source.stood
        low = before.mean() - estimate - high
        estimate, rounded = float(least.mean() - share * low - high), float(share * rounded)
    only = (level.gap + source.parts[part]).min(axis=0)
    lifted = float((once.lift - level.lift).mean())
    return Draws(float(level.gap.min()), estimate, least, only, lifted, fold, told, rounded=rounded)


def _ground_variance(least: FloatArray, parts: FloatArray) -> float:
    """Variance of drawn least gaps (d,), m2, less what goes along with the drawn heights of parts (p, d)."""
    away, shift = least - least.mean(), (parts - parts.mean(axis=1, keepdims=True)).T
    along, *_ = np.linalg.lstsq(shift, away, rcond=None)
    return float(((away - shift @ along) ** 2).mean())


def _judged_apart(
    footing: Footing, none: Single, source: Source, parts: FloatArray, untold: Drawn
) -> tuple[float, float]:
    """The gap where it is least on one noisy surface, judged on another whose noise is independent of it, and
    by how much too high drawn errors (untold) lift the part there by its tyres; both on average, m.

    The least of many noisy gaps is too low because the choice follows the noise. With e drawn like the
    surface's own error, ground + SPLIT e and ground - e / SPLIT have independent errors (data fission: Leiner
    et al., JASA 2023), so a choice made on the first does not favour what the second got wrong; tyres choose
    their nodes on the first too.
    """
    error, shift = source.untold_ground, source.untold_parts
    chosen = footing.drawn(none - np.multiply(error, SPLIT, dtype=np.float32), SPLIT * shift + parts, True)
    q, d = chosen.gap.argmin(axis=0), np.arange(error.shape[1])
    entry = chosen.part[q, d]
    carried = chosen.tyre[4 * footing.pair_pose[q][:, None] + np.arange(4), d[:, None]]
    m = footing.pair_part[q]
    rise, gap = footing.judged_on(none + np.divide(error, SPLIT, dtype=np.float32), entry, carried)
    lift = untold.lift[4 * footing.pair_pose[q][:, None] + np.arange(4), d[:, None]]
    high = (footing.weights[entry] * lift).sum(axis=1) - rise
    return float((gap + parts[m, 0] - shift[m, d] / SPLIT).mean()), float(high.mean())
