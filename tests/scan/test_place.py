"""Points by coordinates, marks and tapes: planted places come back, on level ground, on a slope and over a
crest.
"""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import assume, example, given
from hypothesis import strategies as st

from crestcut.base.errors import CrestcutError
from crestcut.job.records import Mark, MarkName, PlanPoint, TapeTies
from crestcut.scan.placing.place import resolve_area, resolve_line, resolve_point
from crestcut.scan.records import Frame

METRES = Frame(np.ones(3), np.eye(3), np.zeros(3), "m", "z")
MARKS = (Mark("A", PlanPoint(2.0, 1.0)), Mark("B", PlanPoint(5.0, 1.5)))


def ties(place: tuple[float, float], height_at=None) -> TapeTies:  # type: ignore[no-untyped-def]
    """What two tapes would read to a place, and on which side it lies."""
    z = height_at or (lambda x, y: 0.0)
    a, b = ((m.at.x, m.at.y) for m in MARKS)
    cross = (b[0] - a[0]) * (place[1] - a[1]) - (b[1] - a[1]) * (place[0] - a[0])
    read = [math.dist((*m, z(*m)), (*place, z(*place))) for m in (a, b)]
    return TapeTies("A", read[0], "B", read[1], "left" if cross > 0 else "right")


def off_the_line(x: float, y: float) -> bool:
    """Is the place seen from both marks at an angle that fixes it?"""
    a, b = np.array([2.0, 1.0]) - (x, y), np.array([5.0, 1.5]) - (x, y)
    angle = abs(math.atan2(a[0] * b[1] - a[1] * b[0], float(a @ b)))
    return math.radians(18) < angle < math.radians(162)


@given(st.floats(-2, 9), st.floats(-4, 6))
def test_ties_on_level_ground(x: float, y: float) -> None:
    assume(off_the_line(x, y))
    assert resolve_point(ties((x, y)), MARKS, METRES) == pytest.approx((x, y), abs=1e-8)


@example(1.25, 1.25, 0.1875, 0.0)  # the level first guess crosses at 12 degrees, the place itself at 20
@given(st.floats(-1, 8), st.floats(-3, 5), st.floats(-0.2, 0.2), st.floats(-0.1, 0.1))
def test_tapes_along_a_slope_are_longer_than_the_plan(
    x: float, y: float, along: float, across: float
) -> None:
    assume(off_the_line(x, y))

    def height(px: float, py: float) -> float:
        return along * px + across * py

    assert resolve_point(ties((x, y), height), MARKS, METRES, height) == pytest.approx((x, y), abs=1e-5)


def test_leaving_the_slope_out_is_wrong_by_what_it_costs() -> None:
    def height(x: float, y: float) -> float:
        return 0.17 * x

    place = (6.5, 3.5)
    right = resolve_point(ties(place, height), MARKS, METRES, height)
    level = resolve_point(ties(place, height), MARKS, METRES)
    assert math.dist(right, place) < 1e-5 and 0.02 < math.dist(level, place) < 0.2


def test_over_a_crest() -> None:
    def height(x: float, y: float) -> float:
        return 0.17 * min(x - 4.0, 0.0)

    place = (6.4, 3.2)
    assert resolve_point(ties(place, height), MARKS, METRES, height) == pytest.approx(place, abs=1e-5)


def test_the_other_side() -> None:
    tie = ties((4.0, 3.0))
    other = TapeTies(tie.first, tie.first_distance, tie.second, tie.second_distance, "right")
    mirrored = resolve_point(other, MARKS, METRES)
    # the mirror image in the line A to B
    u = np.array([3.0, 0.5]) / math.hypot(3.0, 0.5)
    d = np.array([2.0, 2.0])
    assert mirrored == pytest.approx(tuple(np.array([2.0, 1.0]) + 2 * (d @ u) * u - d))


def test_coordinates_and_marks_are_in_the_scans_own_unit_and_place() -> None:
    feet = Frame(np.full(3, 0.3048), np.eye(3), np.array([500.0, 100.0, 0.0]), "ft", "z")
    marks = (Mark("A", PlanPoint(1700.0, 400.0)),)
    want = (1700 * 0.3048 - 500.0, 400 * 0.3048 - 100.0)
    assert resolve_point(PlanPoint(1700.0, 400.0), marks, feet) == pytest.approx(want)
    assert resolve_point(MarkName("A"), marks, feet) == pytest.approx(want)


@pytest.mark.parametrize(
    ("tie", "says"),
    [
        (TapeTies("A", 1.0, "B", 1.0, "left"), "miss each other by 1.041 m"),
        (TapeTies("A", 9.0, "B", 1.0, "left"), "miss each other"),
        (TapeTies("A", 1.53, "B", 1.53, "left"), "cross at"),
        (TapeTies("A", 2.0, "C", 2.0, "left"), 'no mark is named "C"'),
        (TapeTies("a", 2.0, "B", 2.0, "left"), 'did you mean "A"'),
    ],
)
def test_ties_that_lead_nowhere(tie: TapeTies, says: str) -> None:
    with pytest.raises(CrestcutError) as caught:
        resolve_point(tie, MARKS, METRES, where="travel.line 1")
    assert says in str(caught.value) and str(caught.value).startswith("travel.line 1: ") and caught.value.mend


def test_marks_put_twice() -> None:
    with pytest.raises(CrestcutError, match="put 2 times"):
        resolve_point(MarkName("A"), (*MARKS, MARKS[0]), METRES)


def test_unmeasured_heights_take_the_tape_as_level() -> None:
    tie = ties((4.0, 3.0))
    assert resolve_point(tie, MARKS, METRES, lambda x, y: math.nan) == resolve_point(tie, MARKS, METRES)


def test_lines_and_areas() -> None:
    corners = (PlanPoint(0, 0), PlanPoint(2, 0), PlanPoint(2, 1), MarkName("A"))
    with pytest.raises(CrestcutError, match=r"keep 1\.area: its outline crosses itself"):
        resolve_area(
            (PlanPoint(0, 0), PlanPoint(2, 1), PlanPoint(2, 0), PlanPoint(0, 1)),
            MARKS,
            METRES,
            where="keep 1.area",
        )
    with pytest.raises(CrestcutError, match="enclose nothing"):
        resolve_area((PlanPoint(0, 0), PlanPoint(1, 1), PlanPoint(2, 2)), MARKS, METRES)
    assert len(resolve_area(corners, MARKS, METRES)) == 4
    with pytest.raises(CrestcutError, match="points 1 and 2 are one place"):
        resolve_line((MarkName("A"), PlanPoint(2.0, 1.0)), MARKS, METRES)
