"""What somebody knows of the whole line: 'it scrapes along here', or 'it never has'.

No place is named, so it is no reading. On every draw of slab and vehicle the least gap of the whole line is
below zero or not; draws that agree weigh as much as the person is to be trusted, the others the rest
(importance weights), and draws are taken anew by weight.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import numpy as np

from crestcut.base.errors import CrestcutError
from crestcut.base.grid import BoolArray, FloatArray, IntArray
from crestcut.base.units import millimetres
from crestcut.chance.active_contacts import find_active_contacts
from crestcut.chance.conditioned import Updated, moved_vehicle
from crestcut.chance.drawn_errors import DrawnErrors
from crestcut.chance.draws import reach_of
from crestcut.chance.planned import smoothed_below
from crestcut.contact import FAR, Clearance, Passage, hard_parts
from crestcut.job import Witness

TRUST = 0.95  # that somebody who says it scrapes, or never has, is right (common practice, no source)
UNLIKELY = 1e-3  # share of the draws below which what is said contradicts the scan, as for readings


def heard(passage: Passage, witnesses: Sequence[Witness], seed: int) -> Updated:
    """Slab and vehicle given what is said of the whole line; as they are where nothing is.

    'It scrapes' is held against every place that the job's driver may be at, 'it never has' against the line
    itself: of the rest of what the driver may do nobody can tell. passage : as readings left it, the slab
    judged (``slab.behind``).
    Raises CrestcutError for an unknown part or load.
    """
    vehicle, surface = passage.vehicle, passage.surface
    nothing = Updated(surface, vehicle, passage.parts)
    said = [(k + 1, w) for k, w in enumerate(witnesses) if w.front_axle is None]
    if not said:
        return nothing
    slab = surface.error.slab
    assert slab is not None
    log_weight, against, parts = np.zeros(slab.count), [], passage.parts
    for number, witness in said:
        least, drawn = _least(passage, witness, number, seed)
        parts = drawn if parts is None else parts
        right = least <= 0 if witness.touched else least >= 0
        touch = smoothed_below(least, 0.0)
        if (touch if witness.touched else 1 - touch) < UNLIKELY:
            against.append(_contradicts(witness, number, least))
        log_weight += np.log(np.where(right, TRUST, 1 - TRUST))
    if against:
        return replace(nothing, contradictions=tuple(against))
    assert parts is not None
    chosen = resampled(np.exp(log_weight - log_weight.max()), seed)
    taken = slab.taken(chosen)
    rise = taken.mean_over(surface.height.frame) - slab.mean_over(surface.height.frame)
    height, top = (g.like(g.values + rise) for g in (surface.height, surface.top))
    moved = replace(surface, height=height, top=top, error=replace(surface.error, slab=taken))
    up = parts[:, chosen].mean(axis=1)
    return Updated(moved, moved_vehicle(vehicle, up), parts[:, chosen] - up[:, None])


def resampled(weight: FloatArray, seed: int) -> IntArray:
    """Which draws are taken, as many as there are, by weight (n,): systematically, so that each is taken as
    often as its weight says to within one (Kitagawa, J. Comput. Graph. Stat. 5, 1996); those of one weight
    side by side, so that all of them together are too."""
    n, order = len(weight), np.argsort(weight, kind="stable")
    start = np.random.default_rng([seed, 7]).random()
    ends = np.cumsum(weight[order]) / weight.sum() * n
    found: IntArray = order[np.minimum(np.searchsorted(ends, np.arange(n) + start), n - 1)]
    # stages that take fewer draws take them from both halves: no half is to hold one end of the weights
    return np.asarray(np.random.default_rng([seed, 8]).permutation(found))


def _least(passage: Passage, witness: Witness, number: int, seed: int) -> tuple[FloatArray, FloatArray]:
    """(d,) least gap that what is said is about, m, and the drawn heights of all parts (parts, d), m."""
    surface, spoken = passage.surface, _spoken_of(passage, witness, f"[[witness]] {number}")
    contacts = find_active_contacts(replace(passage, clearance=spoken), reach_of(passage))
    if contacts is None:
        raise CrestcutError(
            "nothing of the vehicle is over measured ground there", f"[[witness]] {number}", "check part"
        )
    assert surface.error.slab is not None
    count = surface.error.slab.count // 2
    errors = DrawnErrors(passage, contacts, None, seed, count)
    gap = contacts.drawn(-errors.ground, errors.parts).min(axis=0)
    return np.asarray(gap, dtype=np.float64), errors.parts


def _spoken_of(passage: Passage, witness: Witness, name: str) -> Clearance:
    """The clearance with nothing in it but poses and parts that the witness speaks of."""
    names = [p.name for p in hard_parts(passage.vehicle)]
    variants = [p.variant for p in passage.ride.poses]
    for what, found, known in (
        ("part", witness.part, names), ("load", witness.load, [v.load for v in variants])
    ):  # fmt: skip
        if found is not None and found not in known:
            raise CrestcutError(
                f'no {what} "{found}" is driven on this line', name, "name it as the job does"
            )
    driven = [
        v.load == witness.load and (bool(witness.touched) or v.offset == v.heading == 0) for v in variants
    ]
    poses: BoolArray = np.array(driven)[passage.ride.batch.variant]
    parts = np.array([witness.part in (None, n) for n in names])
    assert passage.clearance.pair_gap is not None
    spoken = np.where(poses[:, None] & parts, passage.clearance.pair_gap, FAR)
    return replace(passage.clearance, pair_gap=spoken)


def heard_notes(witnesses: Sequence[Witness]) -> list[str]:
    """What is made of what was said, in words."""
    said = {_said(w) for w in witnesses if w.front_axle is None}
    return [f"'{words}' is taken to be right with {TRUST:.0%}" for words in sorted(said)]


def _said(witness: Witness) -> str:
    return "it scrapes along this line" if witness.touched else "it never has scraped along this line"


def _contradicts(witness: Witness, number: int, least: FloatArray) -> str:
    return (
        f"[[witness]] {number}: '{_said(witness)}' contradicts what scan and readings say, a least gap of "
        f"{millimetres(float(np.median(least)))} give or take {millimetres(2 * float(least.std()))}; ask "
        "again, or see which it is with the vehicle itself"
    )
