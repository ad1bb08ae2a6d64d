"""What measurements would read on drawn surfaces, beside the least clearance there: so is found how far each
narrows it, the places where the clearance is least being many."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from crestcut.base.grid import FloatArray
from crestcut.chance import ActiveContacts, DrawnErrors, evidence_points, find_active_contacts, reach_of
from crestcut.contact import FAR, Passage, wheel_feet
from crestcut.measure_next.strings import StringPlan
from crestcut.terrain import Evidence, of_functionals

READ = 0.001  # m, 1 sd of a careful reading
PLACED = 0.020  # m, 1 sd of where the vehicle stands: what a witness takes by itself
ASIDE = 0.15  # m: offsets further aside say nothing of the slope across
STANDS, APART = 3, 0.15  # at most, and m that they are apart
DRAWS = 200
STEP = 0.02  # m between places looked at under a string
OUTER = 0.6  # share of the way from the middle to the end of a half of a crossbar


@dataclass(frozen=True, eq=False)
class Stand:
    """Where the vehicle may stand for a gap to be felt: place (5,) as ``Batch.places``; part, index of the
    hard part; at (2,) site m where it comes nearest; gap m, on the surface as fitted; weights (4,), how far
    it follows each tyre there; pose, index in the batch; off, variance, m2, of the gap from standing
    ``PLACED`` away from there."""

    place: FloatArray
    part: int
    at: FloatArray
    gap: float
    weights: FloatArray
    pose: int
    off: float = 0.0


@dataclass(frozen=True, eq=False)
class Readings:
    """On every draw, m: least (d,) clearance; gaps (g, d) at the stands; any (g, d) the least of any part
    there; bare (g, d) the gaps but for the parts' own heights; strings (k, d) what each would read, the last
    of an H the least gap under the part that its three strings together imply; halves (2, d) what
    its crossbar reads, (0, d) without one. Strings are without their blocks."""

    least: FloatArray
    stands: tuple[Stand, ...]
    gaps: FloatArray
    any: FloatArray
    bare: FloatArray
    strings: FloatArray
    halves: FloatArray


def draw_readings(
    passage: Passage,
    plans: Sequence[StringPlan],
    evidence: Evidence | None = None,
    seed: int = 0,
    draws: int = DRAWS,
) -> Readings | None:
    """``draws`` of them, given what was read already, the stands those that tell most, one after the other.
    None where nothing could touch."""
    surface, asked = passage.surface, [_looked_at(p) for p in plans]
    extra = np.concatenate(asked) if asked else None
    contacts = find_active_contacts(passage, reach_of(passage), evidence, extra=extra)
    if contacts is None:
        return None
    errors = DrawnErrors(passage, contacts, evidence, seed, draws // 2)
    field = -errors.fold.ground.astype(np.float32)[:, None] - errors.ground
    shift = errors.parts + errors.fold.parts[:, None]
    each = contacts.drawn(field, shift).astype(np.float64)
    least = each.min(axis=0)
    pose = contacts.pose[contacts.pair_pose[: contacts.judged]]
    chosen = _telling(each, least, _eligible(passage, contacts), passage.ride.batch.places[pose, :2])
    stands = tuple(_stand(passage, contacts, q) for q in chosen)
    at = (
        np.split(contacts.extra[len(evidence_points(evidence)) :], np.cumsum([len(a) for a in asked])[:-1])
        if asked
        else []
    )
    down = [surface.height.sample(a)[:, None] + field[i] for a, i in zip(asked, at, strict=True)]
    strings = [_read_off(plan, heights) for plan, heights in zip(plans, down, strict=True)]
    rows = [s.min(axis=0) for s in strings]
    halves = np.zeros((0, len(least)))
    if plans and len(plans[-1].least) == 2:
        halves = strings[-1]
        rows[-1] = _implied(plans[-1], halves, rows[-2], rows[-3])
    told = np.array(rows).reshape(len(plans), len(least))
    beside = [contacts.pair_pose[: contacts.judged] == contacts.pair_pose[q] for q in chosen]
    return Readings(
        least, stands, each[chosen], np.array([each[b].min(axis=0) for b in beside]),
        each[chosen] - shift[contacts.pair_part[chosen]], told, halves,
    )  # fmt: skip


def _eligible(passage: Passage, contacts: ActiveContacts) -> NDArray[np.bool_]:
    """(q,) which judged pairs a witness of the job file can speak of: the vehicle along the line, the way it
    is drawn, laden as at the worst; failing any, the worst alone."""
    worst, ride = passage.clearance.worst, passage.ride
    assert worst is not None
    plain = [
        p.variant.way == "forward" and p.variant.heading == 0 and p.variant.load == worst.variant.load
        for p in ride.poses
    ]
    pose = contacts.pose[contacts.pair_pose[: contacts.judged]]
    found = np.array(plain)[ride.batch.variant[pose]]
    return np.asarray(found if found.any() else contacts.base == contacts.base.min())


def _telling(each: FloatArray, least: FloatArray, free: NDArray[np.bool_], places: FloatArray) -> list[int]:
    """Which pairs' gaps (q, d), felt one after the other, leave least of the variance of the least clearance:
    what is known is taken out of the rest each time (Gram-Schmidt). free (q,) which may be chosen; places
    (q, 2) of the rear axle, m: none is ``APART`` or less from one before it."""
    rest, left = each - each.mean(axis=1, keepdims=True), least - least.mean()
    found: list[int] = []
    while len(found) < STANDS and free.any():
        tells = (rest @ left) ** 2 / ((rest**2).mean(axis=1) + READ**2)
        found.append(int(np.argmax(np.where(free, tells, -1.0))))
        known = rest[found[-1]]
        size = (float((known**2).mean()) + READ**2) * len(left)
        left = left - (left @ known) / size * known
        rest = rest - ((rest @ known) / size)[:, None] * known
        free = free & (np.hypot(*(places - places[found[-1]]).T) > APART)
    return found


def _stand(passage: Passage, contacts: ActiveContacts, pair: int) -> Stand:
    entries = slice(*contacts.parts.start[pair : pair + 2])
    entry = int(np.argmin(contacts.parts.value[entries])) + entries.start
    at = contacts.window.node_xy().reshape(-1, 2)[contacts.nodes[contacts.parts.nodes[entry]]]
    pose = int(contacts.pose[contacts.pair_pose[pair]])
    return Stand(
        passage.ride.batch.places[pose], int(contacts.pair_part[pair]), at, float(contacts.base[pair]),
        contacts.weights[entry], pose, _off(passage, pose, int(contacts.pair_part[pair])),
    )  # fmt: skip


def _off(passage: Passage, pose: int, part: int) -> float:
    """Variance, m2, of a part's gap where the vehicle stands off a pose by 1 sd of ``PLACED`` either way,
    from the poses swept beside it."""
    batch, pair_gap = passage.ride.batch, passage.clearance.pair_gap
    assert pair_gap is not None
    variants = [p.variant for p in passage.ride.poses]
    own = variants[batch.variant[pose]]
    like = np.array([replace(v, offset=own.offset) == own for v in variants])[batch.variant]
    like &= batch.live & (pair_gap[:, part] < FAR / 2)
    away = batch.places[like, :2] - batch.places[pose, :2]
    cos, sin = np.cos(batch.places[pose, 2]), np.sin(batch.places[pose, 2])
    along, aside = away @ np.array([cos, sin]), away @ np.array([-sin, cos])
    gap = pair_gap[like, part]
    weight = np.exp(-(along**2) / (2 * PLACED**2)) * (np.abs(aside) < 1e-6)
    mean = float(np.average(gap, weights=weight))
    found = float(np.average((gap - mean) ** 2, weights=weight))
    # offsets are further apart than that: straight between them
    beside = (np.abs(along) < PLACED / 2) & (np.abs(aside) > 1e-6) & (np.abs(aside) < ASIDE)
    if beside.any():
        slope = (gap[beside] - pair_gap[pose, part]) / aside[beside]
        found += PLACED**2 * float((slope**2).mean())
    return found


def _looked_at(plan: StringPlan) -> FloatArray:
    """Site x, y of both ends and of the places where a string is read, m."""
    a, b, read = plan.points
    share = _shares(plan)
    under = read[None] if share is None else a + share.ravel()[:, None] * (b - a)
    return np.vstack([a, b, under])


def _shares(plan: StringPlan) -> FloatArray | None:
    """(ranges, places) shares of the way; None for one read at a place."""
    if not plan.least:
        return None
    longest = max(up - low for low, up in plan.least) * float(np.hypot(*(plan.points[1] - plan.points[0])))
    return np.array([np.linspace(low, up, max(int(longest / STEP), 8)) for low, up in plan.least])


def _read_off(plan: StringPlan, heights: FloatArray) -> FloatArray:
    """(ranges, d) distance from the string, without its blocks, down to the slab, the least in each range;
    heights (2 + places, d) of ``_looked_at``, m."""
    share = _shares(plan)
    if share is None:
        return np.asarray((plan.weights @ heights)[None])
    chord = heights[0] + share.ravel()[:, None] * (heights[1] - heights[0])
    return np.asarray((chord - heights[2:]).reshape(*share.shape, -1).min(axis=1))


def _implied(crossbar: StringPlan, halves: FloatArray, right: FloatArray, left: FloatArray) -> FloatArray:
    """(d,) m, to first order and but for a constant: the part leans as the bars do, the least in each half is
    taken to lie at OUTER of it, where a leaning part is lower."""
    (low, middle), (_, up) = crossbar.least
    share = np.array([[middle + OUTER * (low - middle)], [middle + OUTER * (up - middle)]])
    return np.asarray((halves + right + share * (left - right)).min(axis=0))


def walk_narrows(drawn: Readings, passage: Passage) -> float:
    """How many times narrower the least clearance becomes once the slab is walked again, its scan's error of
    the same kind and size and independent.

    What it would tell is taken from the gaps at the stands, as sums of heights under tyres and part: best
    linear gain on the draws, with the scan's own error for noise. What it tells of the rest of the slab is
    left out, so this is the least it is worth.
    """
    error = passage.surface.error
    if error.slab is not None:
        split = error.slab.split
        error = replace(error, slab=None, warp=split.scan, warp_length=split.scan_length)
    frame = passage.surface.height.frame
    points = tuple(
        np.vstack([frame.to_site(wheel_feet(passage.vehicle, s.place[None])[0]), s.at]) for s in drawn.stands
    )
    weights = tuple(np.append(s.weights, -1.0) for s in drawn.stands)
    noise = of_functionals(error, points, weights, tuple(np.zeros(len(w)) for w in weights))
    seen = drawn.bare - drawn.bare.mean(axis=1, keepdims=True)
    least = drawn.least - drawn.least.mean()
    cross = seen @ least / len(least)
    gained = cross @ np.linalg.solve(seen @ seen.T / len(least) + noise + 1e-12 * np.eye(len(noise)), cross)
    whole = float(least.var())
    return float(np.sqrt(whole / max(whole - float(gained), 1e-12)))
