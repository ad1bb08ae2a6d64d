"""Loads from the vehicle file through ride and sweep: published drops from empty to gross weight,
and a corner of rate k that takes a share of mass m drops by m g / k.
"""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from crestcut.contact.clearance.sweep import sweep
from crestcut.contact.stand.ride import ride
from crestcut.vehicle.load import load_state, load_vehicle
from crestcut.vehicle.records import Vehicle
from scenes import STRAIGHT, scene

G = 9.80665  # m/s2, standard acceleration of free fall (3rd CGPM, 1901)


def written(folder: Path, clearance: int, rate: float, load: str) -> Vehicle:
    path = folder / "car.toml"
    path.write_text(
        f"""
        name = "made-up"
        wheelbase = "2800 mm"
        front_track = "1500 mm"
        rear_track = "1500 mm"
        tyre_radius = "330 mm"
        tyre_width = "200 mm"
        width = "1750 mm"
        belly_clearance = "{clearance} mm"
        front_overhang = "900 mm"
        rear_overhang = "800 mm"
        [[part]]
        name = "axle beam"
        back = ["2750 mm", "2850 mm"]
        across = ["-400 mm", "400 mm"]
        clearance = "170 mm"
        on = "rear axle"
        [springs]
        front = {{ rate = {rate} }}
        rear = {{ rate = {rate} }}
        [load]
        gross = {load}
        """
    )
    return load_vehicle(path)


def gaps_on_flat(car: Vehicle) -> dict[str, float]:
    """Least gap of the belly and of the beam, standing on level ground under the load, by the sweep."""
    flat = scene(lambda x, y: 0 * x, car, cell=0.02)
    rode = ride(car, flat.surface, flat.line, STRAIGHT, (load_state(car, "gross"),))
    gaps = {}
    for part in car.parts:
        worst = sweep(replace(car, parts=(part,)), flat.surface, rode).worst
        assert worst is not None
        gaps[part.name] = worst.gap
    return gaps


@pytest.mark.parametrize(("empty", "laden"), [(205, 156), (225, 184), (189, 149)])
def test_published_cars_from_empty_to_gross_weight(tmp_path: Path, empty: int, laden: int) -> None:
    # Three cars' published clearances, empty -> gross weight, mm (read; the source was not noted, the cars
    # are left unnamed). Their loads are not published with them: 450 kg is assumed amidships, and the rate
    # that makes the drop follows by k = m g / drop of a corner.
    rate = 450 / 4 * G / ((empty - laden) / 1000)
    gaps = gaps_on_flat(written(tmp_path, empty, rate, '{ kg = 450, back = "1400 mm" }'))
    assert gaps["belly"] == pytest.approx(laden / 1000, abs=1e-9)
    assert gaps["axle beam"] == pytest.approx(0.170, abs=1e-9)  # what an axle carries does not sink with it


def test_several_loads_at_once_and_a_hitch(tmp_path: Path) -> None:
    # Statics (lever about the axles): 80 kg on the front axle, 75 kg on a hitch 4.1 m behind the front axle
    # of a 2.8 m wheelbase: the rear takes 75 x 4.1 / 2.8 kg, the front 80 - 75 x 1.3 / 2.8.
    rate = 25_000.0
    load = '[{ kg = 80, back = "0 m" }, { kg = 75, back = "4.1 m" }, { front = "-2 mm" }]'
    car = written(tmp_path, 200, rate, load)
    state = load_state(car, "gross")
    assert state.rear == pytest.approx(-75 * 4.1 / 2.8 * G / (2 * rate))
    assert state.front == pytest.approx(-(80 - 75 * 1.3 / 2.8) * G / (2 * rate) - 0.002)
    least = 0.2 + min(state.front, state.rear)
    assert gaps_on_flat(car)["belly"] == pytest.approx(
        least, abs=2e-4
    )  # the chassis pitches about its wheels
    newtons = '[{ newtons = 735.49875, back = "4.1 m" }, { kg = 80, back = 0.0 }, { front = "-2 mm" }]'
    assert load_state(written(tmp_path, 200, rate, newtons), "gross").rear == pytest.approx(state.rear)
