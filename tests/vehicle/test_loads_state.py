"""Loads by statics, allowances with their sources."""

from __future__ import annotations

import pytest

from crestcut.base.errors import CrestcutError
from crestcut.vehicle.loads import combined, elastic_tyre, in_use_table, load_at, tyre_allowances
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


def test_the_table_for_use_takes_the_job_s_own_figures() -> None:
    usual = {a.name: a for a in in_use_table()}
    assert {"tyre wear", "tyre pressure", "braking on the crest"} <= usual.keys()
    assert all("no source" in a.source for a in usual.values())
    own = {
        a.name: a for a in in_use_table([("braking on the crest", 0.001), ("roof box", 0.006)], tread=0.005)
    }
    assert own["braking on the crest"].lower == 0.001 and own["braking on the crest"].source == "job file"
    assert own["roof box"].lower == 0.006 and "added" in own["roof box"].source
    assert own["tyre wear"].lower == pytest.approx(0.0034) and "5 mm measured" in own["tyre wear"].source
    assert own["tyre pressure"] == usual["tyre pressure"] and len(own) == len(usual) + 1
    # a cart without springs neither sinks under a load nor dips when it is braked
    assert {a.name for a in in_use_table(rigid=True)} == {
        "tyre wear",
        "slab moved by season",
    }
