"""Loads by statics, allowances with their sources."""

from __future__ import annotations

import pytest

from crestcut.errors import CrestcutError
from crestcut.vehicle.loads import combined, elastic_tyre, load_at, tyre_allowances
from crestcut.vehicle.records import Springs
from scenes import L, vehicle

CAR = vehicle(springs=Springs(25_000, 30_000, measured=True))


def test_a_hitch_lifts_the_front_and_presses_the_rear() -> None:
    state = load_at(CAR, 750.0, L + 0.8, "trailer")
    rear = 750 * (L + 0.8) / L
    assert state.rear == pytest.approx(-rear / 60_000) and state.front == pytest.approx((rear - 750) / 50_000)
    assert state.front > 0


def test_a_corner_of_rate_k_takes_dm_g_over_k() -> None:
    middle = load_at(CAR, 2000.0, L / 2, "two people")
    assert middle.front == pytest.approx(-500 / 25_000) and middle.rear == pytest.approx(-500 / 30_000)
    both = combined("all", middle, middle)
    assert both.front == pytest.approx(2 * middle.front)


def test_allowances_say_where_they_come_from() -> None:
    wear, soft = tyre_allowances(0.005)
    assert wear.lower == pytest.approx(0.0034) and 0.002 < soft.lower < 0.005
    assert all("no source" in a.source for a in (wear, soft))
    assert elastic_tyre(0.3, 0.2) is None
    near = elastic_tyre(0.1, 0.1)
    assert near is not None and near.lower == pytest.approx(0.0029)


def test_unknown_springs_are_said() -> None:
    with pytest.raises(CrestcutError, match="not known"):
        load_at(vehicle(), 750.0, 3.0, "trailer")
    with pytest.raises(CrestcutError, match="weight of zero or more"):
        load_at(CAR, -1.0, 3.0, "trailer")
