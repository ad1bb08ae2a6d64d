"""Approach, departure and breakover as a user gets them: a vehicle file through the command, held to the
tangent formulas of 49 CFR 523.2 (2015); and what crests use of a clearance, by the sweep.
"""

from __future__ import annotations

import json
import math
from pathlib import Path

import numpy as np
import pytest
from click.testing import CliRunner

from crestcut.apps.cli import main
from crestcut.base.units import FOOT, INCH
from crestcut.vehicle.records import Part
from scenes import Ground, belly, scene, vehicle

CAR = """
name = "made-up"
wheelbase = "{length} mm"
front_track = "1500 mm"
rear_track = "1500 mm"
tyre_radius = "{radius} mm"
tyre_width = "200 mm"
width = "1750 mm"
front_overhang = "950 mm"
rear_overhang = "950 mm"
belly_clearance = "{belly} mm"
{part}
"""
PLATE = """
[[part]]
name = "plate"
back = ["{} mm", "{} mm"]
across = ["-500 mm", "500 mm"]
clearance = "{} mm"
"""


def angle(
    folder: Path, kind: str, length: int, radius: int, belly: int, plate: tuple[int, int, int] | None
) -> float:
    part = "" if plate is None else PLATE.format(*plate)
    path = folder / "car.toml"
    path.write_text(CAR.format(length=length, radius=radius, belly=belly, part=part), encoding="utf-8")
    result = CliRunner().invoke(main, ["vehicle", str(path), "--json"])
    assert result.exit_code == 0, result.output
    return math.degrees(json.loads(result.stdout)[kind]["angle"])


# Tangents to the static loaded radius arcs, d = sqrt(a^2 + (R - c)^2), asin(R/d) - asin((R-c)/d), summed over
# both axles for the breakover; values by arithmetic, closed form and brute force. mm, degrees.
@pytest.mark.parametrize(
    ("kind", "length", "radius", "belly", "plate", "degrees"),
    [
        ("breakover", 2800, 315, 120, None, 9.8939),
        ("breakover", 2800, 310, 100, None, 8.2366),
        ("breakover", 3350, 340, 127, None, 8.7393),
        # a plate from the front axle back to 900: its rear edge, nearest to the middle, allows least
        ("breakover", 2800, 315, 300, (0, 900, 120), 11.4104),
        ("approach", 2800, 330, 300, (-900, -600, 180), 11.7409),
        ("departure", 2800, 330, 300, (3400, 3700, 180), 11.7409),
    ],
)
def test_the_command_gives_the_angles_of_the_tangent_formulas(
    tmp_path: Path,
    kind: str,
    length: int,
    radius: int,
    belly: int,
    plate: tuple[int, int, int] | None,
    degrees: float,
) -> None:
    assert angle(tmp_path, kind, length, radius, belly, plate) == pytest.approx(degrees, abs=0.01)


def test_the_low_vehicle_on_a_rail_crossing_by_the_sweep() -> None:
    # TxDOT Roadway Design Manual 13.11.2 (from AASHTO): level to 2 ft beyond the rails, within 3 in at 30 ft
    # from the rail. Standard gauge 4 ft 8 1/2 in. The vehicle of Eck & Kang (Transportation Research Record
    # 1356, 1992), 36 ft of wheelbase and 5 in of clearance, has 3.538 in left when centred (arithmetic,
    # wheels without size).
    half_gauge = (4 * FOOT + 8.5 * INCH) / 2
    base, clear = 36 * FOOT, 5 * INCH
    low = vehicle(
        Part("belly", (0.0, base), (-0.3, 0.3), (clear, clear), "belly"),
        wheelbase=base, tyre_radius=0.15, tyre_width=0.1, front_track=1.0, rear_track=1.0, width=1.2,
        front_overhang=0.3, rear_overhang=0.3,
    )  # fmt: skip
    flat, fall = half_gauge + 2 * FOOT, 3 * INCH / (28 * FOOT)

    def crossing(x, y):  # type: ignore[no-untyped-def]
        return -fall * (abs(x) - flat).clip(0) + 0 * y

    half = base / 2 + 0.02
    stood = scene(crossing, low, start=(-half, 0.0), end=(half, 0.0), cell=0.01)
    worst = stood.before.worst
    assert worst is not None
    assert worst.gap / INCH == pytest.approx(3.538, abs=0.004)


@pytest.mark.parametrize(("crest", "used"), [(5, 187.698), (8, 118.707), (12, 79.837), (20, 48.298)])
def test_what_a_round_crest_uses_by_the_sweep(crest: float, used: float) -> None:
    # (Rv + R) - sqrt((Rv + R)^2 - L^2 / 4) at mid-wheelbase, L 2800, R 315; arithmetic, mm
    assert used_of(lambda x, y: np.sqrt(crest**2 - np.clip(x, -2, 2) ** 2) + 0 * y) == pytest.approx(
        used, abs=0.05
    )


@pytest.mark.parametrize(("grade", "used"), [(0.125, 86.551), (0.15, 103.541)])
def test_what_a_turn_down_from_level_uses_by_the_sweep(grade: float, used: float) -> None:
    # level into a grade g, a sharp crest of atan(g): (L/2) tan(b/2) - R (sec(b/2) - 1), L 2800, R 315;
    # arithmetic, mm, square to the chassis. What is left of the 300 is vertical in the sweep, and the chassis
    # stands at b/2: over its cosine.
    vertical = 0.3 - (0.3 - used / 1000) / math.cos(math.atan(grade) / 2)
    found = used_of(lambda x, y: -grade * np.maximum(x, 0.0) + 0 * y)
    assert found == pytest.approx(vertical * 1000, abs=0.05)


def used_of(ground: Ground) -> float:
    """What the ground takes of a level belly's 300 mm, with the wheels about its middle, mm."""
    worst = scene(ground, vehicle(belly(0.3)), start=(-1.45, 0.0), end=(1.45, 0.0)).before.worst
    assert worst is not None
    return (0.3 - worst.gap) * 1000
