"""Tape ties: found again within 5 mm, never from marks that cross badly, lengths over the slab."""

from __future__ import annotations

import dataclasses
import math

import numpy as np
import pytest

from crestcut.base.grid import GridFrame, HeightGrid
from crestcut.work.ties import (
    BY_LINE,
    LEAST_CROSSING,
    OFF,
    TAPE,
    crossing_error,
    place_from_ties,
    tape_length,
    tape_ties,
    with_heights,
)

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


@pytest.mark.parametrize("angle", [30.0, 50.2, 90.0, 130.0])
def test_the_error_of_two_tapes_is_that_of_many_drawn(angle: float) -> None:
    """Two tapes of 4 m that cross at an angle, both read with 1 mm: the spread of the place along its worse
    axis, drawn, is the closed form's. At the limit three of them are the 5 mm that a dot may be off."""
    draw, half = np.random.default_rng(6), math.radians(angle) / 2
    at = np.array([3.0, 2.0])
    marks = {
        "A": (at[0] - 4 * math.sin(half), at[1] - 4 * math.cos(half)),
        "B": (at[0] + 4 * math.sin(half), at[1] - 4 * math.cos(half)),
    }
    ties = dataclasses.replace(
        tape_ties((3.0, 2.0), {"A": (0.5, 2.0), "B": (3.0, 0.5)}, FLAT),  # type: ignore[type-var]
        first="A", second="B", side="left",
    )  # fmt: skip
    places = np.array([
        place_from_ties(dataclasses.replace(ties, first_distance=4 + e, second_distance=4 + f), marks)
        for e, f in draw.normal(0, TAPE, (4000, 2))
    ])  # fmt: skip
    worst = math.sqrt(np.linalg.eigvalsh(np.cov(places.T))[-1])
    assert worst == pytest.approx(crossing_error(math.radians(angle)), rel=0.05)
    assert 3 * crossing_error(LEAST_CROSSING) == pytest.approx(OFF)


def test_as_far_off_the_line_as_a_square_is_good_for() -> None:
    """Along the line: the tape's 1 mm and 2 in 1000 of the offset."""
    assert 3 * math.hypot(TAPE, 0.002 * BY_LINE) == pytest.approx(OFF)


def test_a_mark_beyond_the_raster_serves_by_the_height_that_the_scan_has_there() -> None:
    """A slope 1:10 up to a mark 2 m before the raster: the tape is as long as the slope, not as its plan."""
    slope = FLAT.like(0.1 * FRAME.node_xy()[..., 0])
    x, y = -2.0, 2.0
    scan = np.array(
        [[x + 0.01, y, 0.1 * x], [x - 0.02, y + 0.01, 0.1 * x], [x, y + 1.0, 5.0], [3.0, 3.0, 0.3]]
    )
    marks = with_heights({"M": (x, y), "N": (3.0, 3.5)}, scan)
    assert marks["M"] == pytest.approx((x, y, 0.1 * x)) and marks["N"] == (3.0, 3.5)
    assert tape_length(marks["M"], (3.0, 2.0), slope) == pytest.approx(5.0 * math.hypot(1, 0.1), rel=1e-9)
    assert math.isnan(tape_length((x, y), (3.0, 2.0), slope))
    found = tape_ties((3.0, 2.0), marks, slope)
    assert found is not None and {found.first, found.second} == {"M", "N"}
    assert tape_ties((3.0, 2.0), {"M": (x, y), "N": (3.0, 3.5)}, slope) is None
