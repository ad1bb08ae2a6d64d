"""Drawn errors moved until every draw says what was read by hand.

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
from crestcut.terrain import Conditioned, Reading

STEPS = 6  # towards a least distance or gap: what is left of the way is some hundredths of a millimetre


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
    """What is read off where. names : of the hard parts.  at : which of the footing's nodes the points of
    each reading are."""

    footing: ActiveContacts
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
        out[stood] = over + read.footing.witnessed(-ground, parts)[: len(stood)]
    return out


def _under_string(along: FloatArray, wrong: Single) -> FloatArray:
    """(d,) least distance, m; along (k, 2) share and distance as fitted; wrong (2 + k, d) error of the fitted
    height at both ends and under the string, m."""
    share, down = along.astype(np.float32).T
    ends = np.stack([1 - share, share], axis=1) @ wrong[:2]
    return np.asarray((down[:, None] - ends + wrong[2:]).min(axis=0), dtype=np.float64)
