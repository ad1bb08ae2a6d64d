"""What to measure first: a felt gap at the worst station beats all strings, and three as an H beat one."""

from __future__ import annotations

import sys
from dataclasses import replace
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1]))
import pytest

from crestcut.surface.records import ErrorModel
from crestcut.travel.advice import measure_first
from scenes import belly, crest, scene, vehicle

WARP = ErrorModel(0.006, 0.0013, 0.1, 0.005, 0.5, "", "", "")


def test_a_felt_gap_comes_first_and_narrows_two_and_a_half_times() -> None:
    s = scene(
        crest(0.08), car=vehicle(replace(belly(), within=0.003)), start=(-3.2, 0), end=(3.2, 0), cell=0.02
    )
    advice = measure_first(s.vehicle, s.surface, s.ride, s.before, WARP)
    assert s.before.worst is not None
    assert advice[0].kind == "felt gap" and advice[0].narrows > 2.5
    assert advice[0].expect == pytest.approx(s.before.worst.gap)
    assert all(a.narrows <= b.narrows for a, b in zip(advice, advice[1:], strict=False))


def test_nothing_to_narrow_nothing_to_ask() -> None:
    s = scene(
        crest(0.08), car=vehicle(replace(belly(), within=1e-6)), start=(-3.2, 0), end=(3.2, 0), cell=0.02
    )
    assert measure_first(s.vehicle, s.surface, s.ride, s.before, replace(WARP, warp=1e-7, patch=1e-7)) == ()
