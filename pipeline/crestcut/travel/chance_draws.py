"""Seeded draws of surface and vehicle through ride and sweep, at the poses that could decide."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Any

import numpy as np
from numpy.typing import NDArray

from crestcut.grid import FloatArray, IntArray
from crestcut.surface.draws import FieldMaker
from crestcut.surface.evidence_fold import Fold, fold_in
from crestcut.surface.evidence_records import Evidence, Reading
from crestcut.surface.records import ErrorModel, Surface
from crestcut.travel.chance_footing import Footing, Single, find_footing
from crestcut.travel.chance_rounded import crest_cut
from crestcut.travel.chance_tyres import NO_SOFT_TYRES, SoftTyres, soft_tyres
from crestcut.travel.records import Passage
from crestcut.travel.sweep import hard_parts
from crestcut.vehicle.records import Vehicle

REACH = 4.0  # standard deviations that a pair may come down against the least one and still be looked at
LEAST_REACH = 0.004  # m
STEPS = 4  # towards a gap that was felt: what is left of the way is a hundredth of a millimetre
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
        if evidence is None or self.fold.ground_gain is None:
            return
        ground, shift = self.fold.residual(ground, [ground[i] for i in at], shift, rng)
        free_ground, free_parts = self.fold.wander()
        self.ground, self.parts = _both_signs(ground) + free_ground, _both_signs(shift) + free_parts
        self._hold_witnesses(footing, evidence, names, rng)

    def _hold_witnesses(
        self, footing: Footing, evidence: Evidence, names: list[str], rng: np.random.Generator
    ) -> None:
        """Move every draw on until the gap where the vehicle stood is the one that was felt.

        It is the least gap under a whole part, so which nodes set it differs from draw to draw; what was
        folded in was only its tangent. A few steps along the same gain bring it home (randomised maximum
        likelihood: Oliver, He & Reynolds, 1996). Moved means go into the estimate.
        """
        fold, told = self.fold, [i for i, _ in witnesses_of(evidence, names)]
        if not told or fold.ground_gain is None or fold.part_gain is None:
            return
        readings = [evidence.readings[i] for i in told]
        # a place known only so well moves the gap on average too: by what was expected over the gap there
        moved_by_place = np.array([r.predicted - r.exactly for r in readings])
        noise = np.sqrt(np.diag(evidence.noise)[told])
        felt = fold.read(self.ground.shape[1])[told] + np.array([r.predicted for r in readings])[:, None]
        want = felt - moved_by_place[:, None] + noise[:, None] * rng.standard_normal(felt.shape)
        ground_gain, part_gain = fold.ground_gain[:, told].astype(np.float32), fold.part_gain[:, told]
        for _ in range(STEPS):
            field = -fold.ground.astype(np.float32)[:, None] - self.ground
            left = want - footing.witnessed(field, self.parts + fold.parts[:, None])
            self.ground = self.ground + ground_gain @ left.astype(np.float32)
            self.parts = self.parts + part_gain @ left
        ground, parts = self.ground.mean(axis=1, dtype=np.float64), self.parts.mean(axis=1)
        self.ground = self.ground - ground.astype(np.float32)[:, None]
        self.parts = self.parts - parts[:, None]
        self.fold = replace(fold, ground=fold.ground + ground, parts=fold.parts + parts)


def _both_signs(values: NDArray[Any]) -> NDArray[Any]:
    return np.concatenate([values, -values], axis=1)


def witnesses_of(evidence: Evidence | None, names: Sequence[str]) -> list[tuple[int, Reading]]:
    """The readings that are gaps under a part of the standing vehicle, with their index."""
    readings = evidence.readings if evidence is not None else ()
    return [(i, r) for i, r in enumerate(readings) if r.stood is not None and r.part in names]


def stood_in(evidence: Evidence | None, vehicle: Vehicle) -> list[tuple[FloatArray, int, float]]:
    """Where the vehicle stood witness, as ``find_footing`` takes it."""
    names = [p.name for p in hard_parts(vehicle)]
    found = witnesses_of(evidence, names)
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
    at = np.split(footing.extra, np.cumsum([len(r.points) for r in evidence.readings])[:-1])
    readings = tuple(replace(r, points=places[i]) for r, i in zip(evidence.readings, at, strict=True))
    return replace(evidence, readings=readings), list(at)


def _collect(footing: Footing, source: Source, rounded: float) -> Draws:
    """The least of many noisy gaps is too low; how much is judged on the scan alone, and what readings have
    taken from the variance they have taken from that."""
    fold, part = source.fold, footing.pair_part[: footing.judged]
    none = np.zeros((len(footing.nodes), 1), np.float32)
    still = np.zeros((len(fold.parts), 1))
    untold = footing.drawn(-source.untold_ground, source.untold_parts)
    estimate = float(_judged_apart(footing, none, source, still).mean())
    level, once = footing.drawn(none, still), untold
    if source.ground is not source.untold_ground:
        none, still = -fold.ground.astype(np.float32)[:, None], fold.parts[:, None]
        level, once = footing.drawn(none, still), footing.drawn(none - source.ground, still + source.parts)
    least, before = (np.asarray(d.gap.min(axis=0), dtype=np.float64) for d in (once, untold))
    if once is not untold:
        share = min(least.var() / max(float(before.var()), 1e-18), 1.0)
        estimate, rounded = float(least.mean() + share * (estimate - before.mean())), float(share * rounded)
    only = (level.gap + source.parts[part]).min(axis=0)
    lifted = float((once.lift - level.lift).mean())
    told = once is not untold
    return Draws(float(level.gap.min()), estimate, least, only, lifted, fold, told, rounded=rounded)


def _judged_apart(footing: Footing, none: Single, source: Source, parts: FloatArray) -> FloatArray:
    """The gap where it is least on one noisy surface, judged on another whose noise is independent of it, m.

    The least of many noisy gaps is too low because the choice follows the noise. With e drawn like the
    surface's own error, ground + SPLIT e and ground - e / SPLIT have independent errors (data fission: Leiner
    et al., JASA 2023), so a choice made on the first does not favour what the second got wrong; tyres choose
    their nodes on the first too.
    """
    error, shift = source.untold_ground, source.untold_parts
    chosen = footing.drawn(none - np.multiply(error, SPLIT, dtype=np.float32), SPLIT * shift + parts, True)
    q, d = chosen.gap.argmin(axis=0), np.arange(error.shape[1])
    entry = chosen.part[q, d]
    tyres, under = footing.tyres, footing.parts
    carried = chosen.tyre[4 * footing.pair_pose[q][:, None] + np.arange(4), d[:, None]]  # (d, 4)
    other = none + error / np.float32(SPLIT)
    stand = other[tyres.nodes[carried], d[:, None]] - tyres.value[carried]
    m = footing.pair_part[q]
    rise = (footing.weights[entry] * stand).sum(axis=1)
    ground = other[under.nodes[entry], d]
    return np.asarray(under.value[entry] + rise - ground + parts[m, 0] - shift[m, d] / SPLIT)
