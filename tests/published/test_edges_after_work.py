"""Steps left at the edge of a finished cut, by the 2010 ADA Standards 303: what is passed, what is named."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from crestcut.base.grid import GridFrame
from crestcut.verify.edges import edges_left
from crestcut.verify.records import Edge
from crestcut.verify.removed import removed_between
from scenes import surface_of

FRAME = GridFrame((0.0, 0.0), 0.0, 0.01, (140, 200))
INCH = 0.0254


def left(rise: float, run: float, feather: float = 0.25) -> tuple[Edge, ...]:
    """What is said of a cut ``rise`` m deep, 0.6 m square, whose edge slopes over ``run`` m."""
    before = surface_of(lambda x, y: 0.0 * x, FRAME)

    def cut(x: np.ndarray, y: np.ndarray) -> np.ndarray:
        out = np.maximum(np.abs(x - 1.0), np.abs(y - 0.7)) - 0.3
        return -rise * np.clip(-out / max(run, 1e-9), 0.0, 1.0)

    after = surface_of(cut, FRAME)
    planned = before.height.like(-after.height.values)
    exact = replace(after, height=after.height)
    return edges_left(before, exact, removed_between(before, exact, planned, 0.0), feather)


# 2010 ADA Standards 303.2: vertical up to 1/4 in; 303.3: to 1/2 in bevelled not steeper than 1:2; 303.4:
# above that ramped
@pytest.mark.parametrize(
    ("inches", "run", "said"),
    [
        (0.24, 0.0, None),
        (0.30, 0.0, "bevel to 1:2 or flatter"),
        (0.48, 0.0, "bevel to 1:2 or flatter"),
        (0.60, 0.0, "ramp 1:12 or flatter"),
    ],
)
def test_an_upright_edge(inches: float, run: float, said: str | None) -> None:
    found = left(inches * INCH, run)
    if said is None:
        assert not found
        return
    assert found and found[0].rise == pytest.approx(inches * INCH, abs=1e-4)
    assert found[0].said == said


def test_an_edge_as_flat_as_the_feather_is_no_step() -> None:
    assert not left(0.5 * INCH, 4 * 0.5 * INCH)


def test_an_edge_a_little_steeper_than_the_feather_is_a_step_whatever_its_run() -> None:
    for run in (0.02, 0.03, 0.04, 0.06):
        assert left(1.1 * 0.25 * run + 0.002, run) or 1.1 * 0.25 * run + 0.002 < 0.25 * INCH, run
