"""The drawing and the words of a vehicle: whole, the same twice, and with the figures that were derived."""

from __future__ import annotations

import math
from dataclasses import replace
from pathlib import Path

from crestcut.report.pictures.vehicle_drawing import draw_vehicle, vehicle_lines
from crestcut.vehicle.angles import derive_angles
from crestcut.vehicle.load import load_vehicle

CAR = Path(__file__).resolve().parents[2] / "configs/vehicles/flat_floor_hatchback.toml"


def test_same_vehicle_same_bytes(tmp_path: Path) -> None:
    car = load_vehicle(CAR)
    for name in ("a.png", "b.png"):
        draw_vehicle(car, derive_angles(car), tmp_path / name)
    first = (tmp_path / "a.png").read_bytes()
    assert first[:8] == b"\x89PNG\r\n\x1a\n" and first == (tmp_path / "b.png").read_bytes()


def test_a_bare_vehicle_is_drawn_too(tmp_path: Path) -> None:
    car = load_vehicle(CAR)
    bare = replace(car, parts=car.parts[:1], front_overhang=None, rear_overhang=None)
    draw_vehicle(bare, derive_angles(bare), tmp_path / "bare.png")
    assert (tmp_path / "bare.png").stat().st_size > 10_000
    assert any("approach angle not known" in line for line in vehicle_lines(bare, derive_angles(bare)))


def test_the_words_carry_the_derived_figures() -> None:
    car = load_vehicle(CAR)
    angles = derive_angles(car)
    text = "\n".join(vehicle_lines(car, angles))
    assert angles.breakover and angles.breakover.part == "battery tray"
    assert f"breakover angle {math.degrees(angles.breakover.angle):.1f} degrees (battery tray)" in text
    assert "running clearance 105 mm (4 1/8 in) (battery tray)" in text
    assert "may touch" in text and "four people: front -8 mm, rear -24 mm" in text
    assert all(note in text for note in car.notes)
