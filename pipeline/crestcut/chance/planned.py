"""What a cut leaves when scan and vehicle are known only so well, and the margin it therefore needs.

A cut is planned on the mean of what the slab may be, and judged on every draw of it: what is left is least
where the slab stands higher than its mean, or where the tyres stand lower.

To first order: a plan takes from every place what its nearest pass of the underside lacks there, and leaves
the tyres where they stand.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from scipy import special

from crestcut.base.grid import FloatArray, GridFrame, HeightGrid, IntArray
from crestcut.chance.active_contacts import ActiveContacts, Single, find_active_contacts, nearest_nodes
from crestcut.chance.drawn_errors import DrawnErrors
from crestcut.chance.draws import reach_of
from crestcut.chance.lists import block_of
from crestcut.chance.rounded import crest_cut
from crestcut.contact import Passage, hard_parts, wanted_gap
from crestcut.job import Wanted
from crestcut.terrain import Conditioned, Evidence

OPEN = 0.6  # of the reach: the margins for which places are listed
TIGHT = 0.6  # of the reach: a gap this much over a planned one is never the least; twice that changes nothing
NOTHING = -1.0e3  # m, lacking where nothing passes
NEAR = 2e-5  # m


@dataclass(frozen=True, eq=False)
class CutDraws:
    """By how much the gap over each place (block of nodes) falls short of what is asked there, metres.

    scanned : (places,) on the surface for which the cut is planned.  drawn : (places, d) on every draw of
    what slab and vehicle may be, hand measurements folded in.  measured : (places, d) the same with the
    vehicle's own errors only.  xy : (places, 2) site m.
    fold : what the readings made of the errors.  rounded : most that a mesh may have cut off the crest, m:
    so much is left standing there.  seed : that they were drawn with.
    """

    scanned: Single
    drawn: Single
    measured: Single
    xy: FloatArray
    fold: Conditioned
    rounded: float = 0.0
    seed: int = 0

    def outcome(self, margin: float, deepest: FloatArray | None = None) -> FloatArray:
        """(d,) the least that a plan leaves less the least that it promised, m.

        margin : m, what the plan keeps on top of what is asked.  deepest : (places,) limit of its depth, m.
        """
        outcome = self._outcome(self.drawn, margin, deepest)
        # anything from none to all of it, equally likely, in an order of its own
        share = np.random.default_rng(len(outcome)).permutation(len(outcome)) + 0.5
        return np.asarray(outcome - self.rounded * share / len(outcome))

    def vehicle_outcome(self, margin: float, deepest: FloatArray | None = None) -> FloatArray:
        """``outcome`` of the vehicle's own errors alone."""
        return self._outcome(self.measured, margin, deepest)

    def _outcome(self, lacking: Single, margin: float, deepest: FloatArray | None) -> FloatArray:
        depth = np.maximum(self.scanned + np.float32(margin), 0)
        if deepest is not None:
            depth = np.minimum(depth, deepest.astype(np.float32))
        promised = (depth - self.scanned).min()
        left = (depth[:, None] - lacking).min(axis=0)
        return np.asarray(left - promised, dtype=np.float64)

    def limits(self, deepest: HeightGrid) -> FloatArray:
        """(places,) of the deepest cut allowed on a grid, m; nothing where the grid has nothing."""
        at = nearest_nodes(deepest.frame, self.xy)
        return np.nan_to_num(deepest.values.ravel()[at])


def draw_cut(
    passage: Passage, wanted: Wanted, seed: int = 0, draws: int = 200, evidence: Evidence | None = None
) -> CutDraws | None:
    """Draws behind the margin and behind what a cut leaves. None where no part meets measured ground.

    passage : before the cut, on the surface as scanned.
    """
    surface, asked, reach = passage.surface, wanted_gap(wanted.want, wanted.want_ends), reach_of(passage)
    keep = np.array([asked[part.zone] for part in hard_parts(passage.vehicle)])
    contacts = find_active_contacts(passage, TIGHT * reach, evidence, keep, OPEN * reach)
    if contacts is None:
        return None
    errors = DrawnErrors(passage, contacts, evidence, seed, max(draws // 2, 2))
    fold = errors.fold
    place, xy = _places(contacts, surface.height.frame)
    nothing = np.zeros((len(contacts.nodes), 1), np.float32)
    best: Single = nothing - fold.ground.astype(np.float32)[:, None]
    parts = fold.parts[:, None] + errors.parts - keep[:, None]
    scanned = _lacking(contacts, place, len(xy), nothing, -keep[:, None])
    drawn = _lacking(contacts, place, len(xy), best - errors.ground, parts)
    measured = _lacking(contacts, place, len(xy), best, parts)
    rounded = crest_cut(surface.height, passage.clearance, surface.error.mesh_edge)
    return CutDraws(scanned[:, 0], drawn, measured, xy, fold, rounded, seed)


def _places(contacts: ActiveContacts, frame: GridFrame) -> tuple[IntArray, FloatArray]:
    """The block of each entry of the parts' lists, counted from 0, and a site x, y in each."""
    xy = contacts.window.node_xy().reshape(-1, 2)[contacts.nodes]
    j, i = np.divmod(nearest_nodes(frame, xy), frame.shape[1])
    side = block_of(frame.cell)
    block = j // side * frame.shape[1] + i // side
    entries = contacts.parts.nodes[: contacts.parts.start[contacts.judged]]
    _, first, place = np.unique(block[entries], return_index=True, return_inverse=True)
    return place, xy[entries[first]]


def _lacking(
    contacts: ActiveContacts, place: IntArray, places: int, field: Single, shift: FloatArray
) -> Single:
    """(places, d) the most by which a gap there is negative, on ground + ``field`` (n, d), parts raised by
    ``shift`` (hard parts, d), m."""
    d = max(field.shape[1], shift.shape[1])
    lift = contacts.settled(field)
    lacking = np.full((places, d), NOTHING, np.float32)
    for q in range(contacts.judged):
        entries = slice(contacts.parts.start[q], contacts.parts.start[q + 1])
        gap = contacts.gaps_of(q, field, lift[4 * contacts.pair_pose[q] :])
        gap = gap + shift[contacts.pair_part[q]].astype(np.float32)
        here = place[entries]  # each place once: a pair lists one node of a block
        lacking[here] = np.maximum(lacking[here], -gap)
    return lacking


def margin_for(cut: CutDraws, wanted: Wanted) -> float:
    """What a cut must keep on top of ``want`` on the surface as scanned, so that the least clearance after it
    reaches ``want`` with ``confidence``, over all stations together, m; never less than zero.

    Solves P(promised + outcome >= 0) = confidence on the draws, by bisection: what is left grows with the
    margin.
    """
    low, high = 0.0, 1.0
    before = -float(cut.scanned.max())  # promised where nothing need be cut
    for _ in range(40):
        margin = 0.5 * (low + high)
        left = max(margin, before) + cut.outcome(margin)
        low, high = (low, margin) if smoothed_below(left, 0.0) <= 1 - wanted.confidence else (margin, high)
        if high - low < NEAR:
            break
    return high if high > 2 * NEAR else 0.0


def margin_at_most(cut: CutDraws, over: float, rarely: float) -> float:
    """The most that a cut may keep on top of ``want`` on the surface as scanned, so that the least clearance
    after it is more than ``over`` above ``want`` with chance ``rarely`` at most, m; below zero where it must
    stop short. Solved as ``margin_for``."""
    low, high = -1.0, 1.0
    while high - low >= NEAR:
        margin = 0.5 * (low + high)
        left = margin + cut.outcome(margin)
        low, high = (margin, high) if 1 - smoothed_below(left, over) <= rarely else (low, margin)
    return low


def smoothed_below(values: FloatArray, level: float) -> float:
    """P(value < level) from draws, each blurred to a small normal, the total variance kept: a tail from few
    draws is rough."""
    mean, spread = float(values.mean()), float(values.std())
    if spread < 1e-12:
        return float(mean < level)
    width = 0.4
    centre = mean + np.sqrt(1 - width**2) * (values - mean)
    return float(special.ndtr((level - centre) / (width * spread)).mean())
