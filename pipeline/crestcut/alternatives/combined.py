"""Cut and strips together: what is still to be cut once strips lie in the wheel tracks."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from crestcut.alternatives.fixes import STRIPS, Added, doubled, lever, strip_heights, strip_taper
from crestcut.alternatives.trials import AWAY, Baseline, Trieds
from crestcut.base.grid import FloatArray, GridFrame, HeightGrid
from crestcut.contact import (
    Batch,
    Clearance,
    Passage,
    Ride,
    TravelLine,
    contact_ground,
    gaps_of_poses,
    hard_parts,
    plates_of,
    settle_batch,
)
from crestcut.cut import CutPlan, Limits, Problem, feather_in, prepare, solve
from crestcut.terrain import Surface

COARSE = 0.002  # m asked for beyond, for what is lost between the nodes of the coarse grid


@dataclass(frozen=True, eq=False)
class CutAndStrips:
    """size : of the strips, m.  laid, depth : (ny, nx) m of strips, and to cut beside them.  tried : what
    both leave.
    """

    size: float
    laid: FloatArray
    depth: FloatArray
    cell: float
    tried: Trieds

    @property
    def deepest(self) -> float:
        """Deepest cut beside the strips, m."""
        return float(self.depth.max(initial=0.0))

    @property
    def litres_laid(self) -> float:
        """Volume of the strips, litres."""
        return float(self.laid.sum()) * self.cell**2 * 1000

    @property
    def litres(self) -> float:
        """Volume of concrete cut away, litres."""
        return float(self.depth.sum()) * self.cell**2 * 1000


def cut_and_strips(
    benches: Sequence[Baseline], strips: Added, plan: CutPlan, feather: float
) -> CutAndStrips | None:
    """The cut beside strips about half as thick as would do alone; nothing is cut under them. None where it
    is no shallower.

    Sought on every second node and station, then stood up and swept on all of them.
    """
    half, taper = max([t for t in STRIPS if t <= strips.size / 2], default=STRIPS[0]), strip_taper(benches)
    if taper is None:
        return None
    laid = strip_heights(benches[0], half, taper)
    depth = _coarse_cut(benches, laid, half, plan, feather)
    if depth.max(initial=0.0) >= plan.deepest - COARSE:
        return None
    falls = [half + lever(b) * float(depth.max()) for b in benches]
    tried = tuple(b.tried(added=laid - depth, falls=f) for b, f in zip(benches, falls, strict=True))
    return CutAndStrips(half, laid, depth, benches[0].ground.cell, tried)


def _coarse_cut(
    benches: Sequence[Baseline], laid: FloatArray, half: float, plan: CutPlan, feather: float
) -> FloatArray:
    """The depth (ny, nx) m needed beside and between strips ``half`` m thick, within what the plan allows."""
    surface = _coarse(benches[0], laid)
    may = np.where(laid > 0, 0.0, plan.limits.deepest.values)
    limits = Limits(
        surface.height.like(feather_in(may[::2, ::2], feather, surface.height.frame.cell) * surface.slab),
        np.zeros(surface.height.frame.shape, np.int16), ("",),
    )  # fmt: skip
    problems = []
    for b in benches:
        # no gap falls by more than a strip under the part and the deepest cut under the wheels
        falls = half + float(plan.limits.deepest.values.max()) * lever(b)
        problems.append(_problem(b, surface, limits, feather, falls + b.margin - b.before.excess))
    return np.minimum(doubled(np.maximum(solve(*problems).depth, 0.0), may.shape), may)


def _problem(bench: Baseline, surface: Surface, limits: Limits, feather: float, reach: float) -> Problem:
    """One vehicle over the coarse surface, those poses only that could bind."""
    line, cell = bench.ride.line, surface.height.frame.cell
    thin = TravelLine(line.xy[::2], line.yaw[::2], 2 * line.step)
    places = bench.places[bench.within(reach)][::2]
    batch = settle_batch(bench.vehicle, surface.height.values, cell, places, np.zeros(len(places), np.int64))
    before = Clearance({}, surface.height, {}, 0, _pair_gaps(bench, surface, batch, thin.step))
    keep = {zone: gap + bench.margin + COARSE for zone, gap in bench.gaps.items()}
    passage = Passage(bench.vehicle, surface, Ride(thin, (), batch, 0), before)
    return prepare(passage, limits, keep, feather)


def _coarse(bench: Baseline, laid: FloatArray) -> Surface:
    """Every second node, with the strips down. Holes that tyres bridge are bridged already: they are not
    sought anew.
    """
    surface, ground = bench.surface, bench.ground.raised(laid)
    frame = surface.height.frame
    rows, columns = (-(-n // 2) for n in frame.shape)
    wide = GridFrame(frame.origin, frame.angle, 2 * frame.cell, (rows, columns))
    grid = lambda values: HeightGrid(wide, values[::2, ::2])  # noqa: E731
    return replace(
        surface, height=grid(ground.ridden), top=grid(surface.top.values + laid),
        standard_error=grid(surface.standard_error.values),
        rollable=np.ones(wide.shape, dtype=bool), slab=surface.slab[::2, ::2],
    )  # fmt: skip


def _pair_gaps(bench: Baseline, surface: Surface, batch: Batch, step: float) -> FloatArray:
    """(n, hard parts) least gap of each pose and part, m."""
    plates = plates_of(hard_parts(bench.vehicle), step)
    gaps = gaps_of_poses(contact_ground(surface), surface.height.frame.cell, batch, plates)
    return np.minimum(gaps, AWAY)
