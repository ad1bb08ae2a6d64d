"""Tape ties: found again within 5 mm, never from marks that cross badly, lengths over the slab."""

from __future__ import annotations

import dataclasses
import math

import numpy as np
import pytest

from crestcut.base.grid import GridFrame, HeightGrid
from crestcut.work.ties import LEAST_CROSSING, place_from_ties, tape_length, tape_ties

FRAME = GridFrame((0.0, 0.0), 0.0, 0.02, (201, 401))
FLAT = HeightGrid(FRAME, np.zeros(FRAME.shape))
MARKS = {"A": (0.5, 0.4), "B": (7.0, 0.6), "C": (1.0, 3.6), "D": (6.8, 3.5)}


def test_places_come_back_within_5_mm_with_1_mm_of_tape_error() -> None:
    draw = np.random.default_rng(4)
    missed, shown = 0, 0
    worst = 0.0
    for _ in range(400):
        at = (float(draw.uniform(0.6, 7.2)), float(draw.uniform(0.6, 3.4)))
        ties = tape_ties(at, MARKS, FLAT)
        if ties is None:
            missed += 1
            continue
        shown += 1
        for e in ((1, 1), (1, -1), (-1, 1), (-1, -1)):
            off = dataclasses.replace(
                ties,
                first_distance=ties.first_distance + e[0] * 1e-3,
                second_distance=ties.second_distance + e[1] * 1e-3,
            )
            worst = max(worst, math.dist(place_from_ties(off, MARKS), at))
    assert shown > 350 and worst < 0.005


def test_badly_crossing_marks_are_never_printed() -> None:
    draw = np.random.default_rng(5)
    for _ in range(300):
        at = (float(draw.uniform(0, 8)), float(draw.uniform(0, 4)))
        pair = {k: (float(draw.uniform(0, 8)), float(draw.uniform(0, 4))) for k in "PQ"}
        ties = tape_ties(at, pair, FLAT)
        a, b = (np.subtract(at, pair[k]) for k in "PQ")
        angle = math.acos(np.clip(a @ b / np.linalg.norm(a) / np.linalg.norm(b), -1, 1))
        good = LEAST_CROSSING <= angle <= math.pi - LEAST_CROSSING
        near = min(np.linalg.norm(a), np.linalg.norm(b)) < 0.25
        assert (ties is not None) == (good and not near)


def test_the_tape_goes_over_the_crest_and_bridges_the_dip() -> None:
    x = FRAME.node_xy()[..., 0]
    crest = FLAT.like(0.4 - 0.1 * np.abs(x - 4.0))
    assert tape_length((1.0, 2.0), (7.0, 2.0), crest) == pytest.approx(6 * math.hypot(1, 0.1), rel=1e-9)
    dip = FLAT.like(0.1 * np.abs(x - 4.0))
    assert tape_length((1.0, 2.0), (7.0, 2.0), dip) == pytest.approx(6.0, rel=1e-12)


def test_no_marks_no_ties() -> None:
    assert tape_ties((3.0, 2.0), {}, FLAT) is None
    assert tape_ties((3.0, 2.0), {"A": (0.0, 0.0)}, FLAT) is None
