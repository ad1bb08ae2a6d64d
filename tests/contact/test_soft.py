"""Soft parts are reported apart and leave the verdict alone."""

from __future__ import annotations

from dataclasses import replace

import pytest

from crestcut.contact.clearance.soft import soft_contacts
from scenes import belly, crest, lip, scene, vehicle


def test_a_soft_lip_that_touches_is_said_and_not_judged() -> None:
    flap = replace(lip(0.01), name="rubber flap", soft=True)
    high = replace(lip(0.3), name="bumper", soft=True)
    s = scene(crest(-0.06), vehicle(belly(), flap, high), cell=0.02)
    assert "nose" not in s.before.least
    found = soft_contacts(s.vehicle, s.surface, s.ride)
    assert [c.part for c in found] == ["rubber flap"] and found[0].pressed > 0.01
    assert "may touch and does" in found[0].words


def test_no_soft_part_no_word() -> None:
    s = scene(crest(0.05), cell=0.02)
    assert soft_contacts(s.vehicle, s.surface, s.ride) == ()
    assert s.before.worst is not None and s.before.worst.gap == pytest.approx(0.12 - 1.4 * 0.05, abs=2e-3)
