"""Drawn errors of slab, scan and vehicle, moved until every draw says what was read by hand.

A sum of heights is met in one step (Matheron's rule; Wilson et al., JMLR 22, 2021). The least distance under
a string, and the least gap under a part of the standing vehicle, are least over places that differ from draw
to draw; only their tangents were folded in. Each draw is then moved to the maximum of its own posterior
(randomised maximum likelihood: Oliver, He & Reynolds, 1996): with gain G and tangent H, e = e0 + G z and
z = want - h(e) + H G z, a few times over.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from crestcut.base.grid import FloatArray, IntArray
from crestcut.chance.active_contacts import ActiveContacts, Single, witnesses_of
from crestcut.contact import Passage, hard_parts
from crestcut.terrain import Conditioned, Evidence, FieldMaker, Reading, Surface, fold_in

STEPS = 6  # towards a least distance or gap: what is left of the way is some hundredths of a millimetre


def white_length(surface: Surface) -> float:
    """How far neighbouring heights share their points, m: half the side of the area whose points make one
    height.

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


class DrawnErrors:
    """Drawn errors of ground and vehicle at the contacts' nodes: ``count`` of them, then their opposites.

    ground : (nodes, 2 count) m, single precision, heights less what the slab may be.  parts : (hard parts, 2
    count) m.  Both about the estimate, given what was read by hand.  steps (m, 2 count) : by gain times this
    the readings moved them, m; None where nothing did.  snapped : the readings as they were used.
    """

    def __init__(
        self, passage: Passage, contacts: ActiveContacts, evidence: Evidence | None, seed: int, count: int
    ) -> None:
        rng = np.random.default_rng(seed)
        surface, drawn_parts, parts = passage.surface, passage.parts, hard_parts(passage.vehicle)
        maker = FieldMaker(
            surface.error, contacts.window, contacts.standard_error, white_length(surface), contacts.nodes
        )
        within = np.array([p.within for p in parts]) if drawn_parts is None else drawn_parts.std(axis=1)
        names = [p.name for p in parts]
        places = contacts.window.node_xy().reshape(-1, 2)[contacts.nodes]
        evidence, at = snapped(evidence, contacts, places)
        self.ground = maker.pairs(rng, count)
        count = self.ground.shape[1] // 2
        shift = rng.standard_normal((len(parts), count)) * within[:, None]
        self.parts = np.concatenate([shift, -shift], axis=1)
        if drawn_parts is not None:  # as ``FieldMaker.pairs`` takes the slab's
            half = drawn_parts.shape[1] // 2
            self.parts = np.concatenate([drawn_parts[:, :count], drawn_parts[:, half : half + count]], axis=1)
        spread = dict(zip(names, within, strict=True))
        self.fold = fold_in(evidence, surface.error, places, spread, rng, 2 * count, drawn_parts)
        self.steps: FloatArray | None = None
        self.snapped = evidence.readings if evidence is not None else ()
        if evidence is None or self.fold.ground_gain is None:
            return
        read = ReadOff(contacts, evidence.readings, names, at)
        self.steps = steps_to(read, self.fold, self.ground, self.parts, rng)
        self.ground, self.parts, self.fold = moved_by(self.steps, self.fold, self.ground, self.parts)


def snapped(
    evidence: Evidence | None, contacts: ActiveContacts, places: FloatArray
) -> tuple[Evidence | None, list[IntArray]]:
    """Readings moved to the nodes nearest to their points (half a cell), so that draw and covariance speak
    of the same places."""
    if evidence is None:
        return None, []
    each = np.cumsum([len(r.points) for r in evidence.readings])
    at = np.split(contacts.extra[: each[-1]], each[:-1])
    readings = tuple(replace(r, points=places[i]) for r, i in zip(evidence.readings, at, strict=True))
    return replace(evidence, readings=readings), list(at)


def moved_by(
    z: FloatArray, fold: Conditioned, ground: Single, parts: FloatArray
) -> tuple[Single, FloatArray, Conditioned]:
    """Drawn errors of ground (n, d) and parts (p, d), m, moved by gain times ``z`` (m, d), about their means;
    the means go into the fold."""
    assert fold.ground_gain is not None and fold.part_gain is not None
    ground = ground + fold.ground_gain.astype(np.float32) @ z.astype(np.float32)
    parts = parts + fold.part_gain @ z
    mean, level = ground.mean(axis=1, dtype=np.float64), parts.mean(axis=1)
    return (
        ground - mean.astype(np.float32)[:, None], parts - level[:, None],
        replace(fold, ground=mean, parts=level),
    )  # fmt: skip


@dataclass(frozen=True, eq=False)
class ReadOff:
    """What is read off where. names : of the hard parts.  at : which of the contacts' nodes the points of
    each reading are."""

    contacts: ActiveContacts
    readings: Sequence[Reading]
    names: Sequence[str]
    at: Sequence[IntArray]


def steps_to(
    read: ReadOff, fold: Conditioned, ground: Single, parts: FloatArray, rng: np.random.Generator
) -> FloatArray:
    """(m, d) z: by gain times z is each draw to be moved so that it says what was read, m.

    ground, parts : as scan and tape leave them, the second half the opposite of the first.
    """
    d, readings, at = ground.shape[1], read.readings, read.at
    assert fold.ground_gain is not None and fold.part_gain is not None
    assert fold.part_weights is not None and fold.noise_root is not None
    gain, part_gain = fold.ground_gain.astype(np.float32), fold.part_gain
    noise = fold.noise_root @ rng.standard_normal((len(readings), d // 2))
    want = fold.read(d) + np.array([[r.predicted] for r in readings])
    want += np.concatenate([noise, -noise], axis=1)
    follows = np.array([-(r.weights @ fold.ground_gain[i]) for r, i in zip(readings, at, strict=True)])
    follows += fold.part_weights.T @ part_gain
    z = want - _read_off(read, ground, parts)
    sums = all(r.stood is None and r.along is None for r in readings)
    for _ in range(0 if sums else STEPS):
        moved, levels = ground + gain @ z.astype(np.float32), parts + part_gain @ z
        z = want - _read_off(read, moved, levels) + follows @ z
    return z


def _read_off(read: ReadOff, ground: Single, parts: FloatArray) -> FloatArray:
    """(m, d) what each reading would be on each draw, m, with what its place is worth on average."""
    readings, names = read.readings, read.names
    out = np.empty((len(readings), ground.shape[1]))
    for row, reading, nodes in zip(out, readings, read.at, strict=True):
        wrong: NDArray[np.float32] = ground[nodes]
        if reading.along is not None:
            row[:] = reading.predicted - reading.exactly + _under_string(reading.along, wrong)
        else:
            row[:] = reading.predicted - reading.weights @ wrong
            if reading.part is not None and reading.part in names:
                row += parts[list(names).index(reading.part)]
    stood = [i for i, _ in witnesses_of(readings, names)]
    if stood:
        over = np.array([[readings[i].predicted - readings[i].exactly] for i in stood])
        out[stood] = over + read.contacts.witnessed(-ground, parts)[: len(stood)]
    return out


def _under_string(along: FloatArray, wrong: Single) -> FloatArray:
    """(d,) least distance, m; along (k, 2) share and distance as fitted; wrong (2 + k, d) error of the fitted
    height at both ends and under the string, m."""
    share, down = along.astype(np.float32).T
    ends = np.stack([1 - share, share], axis=1) @ wrong[:2]
    return np.asarray((down[:, None] - ends + wrong[2:]).min(axis=0), dtype=np.float64)
