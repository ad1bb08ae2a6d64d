"""Seeded draws of surface and vehicle through ride and sweep, at the poses that could decide."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from crestcut.base.grid import FloatArray, IntArray
from crestcut.chance.active_contacts import ActiveContacts, Stood, find_active_contacts
from crestcut.chance.held import moved_by, steps_to, witnesses_of
from crestcut.chance.rounded import crest_cut
from crestcut.chance.tyres import NO_SOFT_TYRES, SoftTyres, soft_tyres
from crestcut.contact import Passage, hard_parts
from crestcut.terrain import Conditioned, ErrorModel, Evidence, FieldMaker, Surface, fold_in
from crestcut.vehicle import Vehicle

REACH = 4.0  # standard deviations that a pair may come down against the least one and still be looked at
LEAST_REACH = 0.004  # m


@dataclass(frozen=True, eq=False)
class Draws:
    """Least clearances on drawn surfaces with drawn vehicles, metres.

    base : least gap on the surface that is drawn, the mean of all (hand measurements folded in): smoother
    than any draw, so a little more hopeful.  least : (n,) least gap of each.  vehicle : (n,) the same with
    the vehicle's own errors only.  fold : what the readings made of it.  evidence : the readings that were
    folded in.  tyres : what their giving may change at the worst station.  rounded : what a mesh may have
    cut off the crest at the worst place, m.
    """

    base: float
    least: FloatArray
    vehicle: FloatArray
    fold: Conditioned
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
    if error.slab is not None:
        patch, warp = error.worked
        own = error.slab.spread**2 + patch**2 + warp**2
    else:
        own = error.warp**2 + error.patch**2
    return max(REACH * float(np.sqrt(own + tolerance**2)), LEAST_REACH)


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
    footing = find_active_contacts(
        vehicle, surface, passage.ride, clearance, np.zeros(len(parts)), reach_of(vehicle, error),
        extra=extra, stood=stood_in(evidence, vehicle),
    )  # fmt: skip
    if footing is None:
        return None
    source = Source(vehicle, surface, footing, error, seed, max(draws // 2, 2), evidence, passage.parts)
    if passage.contradictions:
        source.fold = replace(source.fold, contradictions=passage.contradictions)
    used = None if source.fold.contradictions else evidence
    tyres = soft_tyres(passage)
    rounded = crest_cut(surface.height, clearance, error.mesh_edge)
    return replace(_collect(footing, source, rounded), tyres=tyres, evidence=used)


class Source:
    """Drawn errors of ground and vehicle at a footing's nodes: ``count`` of them, then their opposites.

    ground : (nodes, 2 count) m, single precision, heights less what the slab may be.  parts : (hard parts, 2
    count) m.  Both about the estimate, given what was read by hand.  steps (m, 2 count) : by gain times this
    the readings moved them, m; None where nothing did.  snapped : the readings as they were used.
    """

    def __init__(
        self,
        vehicle: Vehicle,
        surface: Surface,
        footing: ActiveContacts,
        error: ErrorModel,
        seed: int,
        count: int,
        evidence: Evidence | None,
        drawn_parts: FloatArray | None = None,
    ) -> None:
        rng = np.random.default_rng(seed)
        parts = hard_parts(vehicle)
        maker = FieldMaker(
            error, footing.window, footing.standard_error, white_length(surface), footing.nodes
        )
        within = np.array([p.within for p in parts]) if drawn_parts is None else drawn_parts.std(axis=1)
        names = [p.name for p in parts]
        places = footing.window.node_xy().reshape(-1, 2)[footing.nodes]
        evidence, at = snapped(evidence, footing, places)
        self.ground = maker.pairs(rng, count)
        count = self.ground.shape[1] // 2
        shift = rng.standard_normal((len(parts), count)) * within[:, None]
        self.parts = np.concatenate([shift, -shift], axis=1)
        if drawn_parts is not None:  # as ``FieldMaker.pairs`` takes the slab's
            half = drawn_parts.shape[1] // 2
            self.parts = np.concatenate([drawn_parts[:, :count], drawn_parts[:, half : half + count]], axis=1)
        spread = dict(zip(names, within, strict=True))
        self.fold = fold_in(evidence, error, places, spread, rng, 2 * count, drawn_parts)
        self.steps: FloatArray | None = None
        self.snapped = evidence.readings if evidence is not None else ()
        if evidence is None or self.fold.ground_gain is None:
            return
        self.steps = steps_to(footing, evidence, names, at, self.fold, self.ground, self.parts, rng)
        self.ground, self.parts, self.fold = moved_by(self.steps, self.fold, self.ground, self.parts)


def stood_in(evidence: Evidence | None, vehicle: Vehicle) -> list[Stood]:
    """Where the vehicle stood witness, as ``find_active_contacts`` takes it."""
    names = [p.name for p in hard_parts(vehicle)]
    found = witnesses_of(evidence.readings, names) if evidence is not None else []
    return [
        Stood(r.stood, names.index(r.part or ""), r.exactly, r.raised)
        for _, r in found
        if r.stood is not None
    ]


def evidence_points(evidence: Evidence | None) -> FloatArray:
    """Site x, y of every point of every reading, (k, 2): the ground there must be drawn too."""
    return (
        np.concatenate([r.points for r in evidence.readings])
        if evidence and evidence.readings
        else np.zeros((0, 2))
    )


def snapped(
    evidence: Evidence | None, footing: ActiveContacts, places: FloatArray
) -> tuple[Evidence | None, list[IntArray]]:
    """Readings moved to the nodes nearest to their points (half a cell), so that draw and covariance speak
    of the same places."""
    if evidence is None:
        return None, []
    each = np.cumsum([len(r.points) for r in evidence.readings])
    at = np.split(footing.extra[: each[-1]], each[:-1])
    readings = tuple(replace(r, points=places[i]) for r, i in zip(evidence.readings, at, strict=True))
    return replace(evidence, readings=readings), list(at)


def _collect(footing: ActiveContacts, source: Source, rounded: float) -> Draws:
    """The least gap of every draw. What is drawn is what slab and vehicle may be, the scan's own error not in
    it, so nothing is to be taken off for the choice of the least."""
    fold, part = source.fold, footing.pair_part[: footing.judged]
    none, still = -fold.ground.astype(np.float32)[:, None], fold.parts[:, None]
    level = footing.drawn(none, still)
    least = footing.drawn(none - source.ground, still + source.parts).min(axis=0)
    only = (level + source.parts[part]).min(axis=0)
    return Draws(
        float(level.min()), np.asarray(least, dtype=np.float64), np.asarray(only, dtype=np.float64),
        fold, rounded=rounded,
    )  # fmt: skip
