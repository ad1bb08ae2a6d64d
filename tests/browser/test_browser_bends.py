"""The bent line that pick.html draws is the one that ``contact/path/path.py`` drives, and a bend too tight
is said at once."""

from __future__ import annotations

import math
from pathlib import Path
from typing import Any

import numpy as np
import pytest

from browser.courtyard import draw_line, mistakes
from crestcut.base.errors import CrestcutError
from crestcut.contact.path.path import beside, drivable, least_radius
from crestcut.vehicle.load import load_vehicle

STEP = 0.05  # m
TWIN = """lines => lines.map(([points, left, least, step]) => {
  try { return crestcut.path.drivable(crestcut.path.beside(points, left), least, step); }
  catch (e) { return { corner: e.corner, leaves: e.leaves, needs: e.needs }; } })"""


def polylines() -> list[tuple[list[tuple[float, float]], float, float | None]]:
    """Points, metres to the left, tightest radius: right angles, gentle bends, S, half turns, repeats, and
    random ones."""
    rng = np.random.default_rng(11)
    fixed: list[tuple[list[tuple[float, float]], float, float | None]] = [
        ([(0, 0), (8, 0)], 0.0, 4.0),
        ([(0, 0), (8, 0), (8, 8)], 0.0, 4.0),
        ([(0, 0), (8, 0), (8, 8)], 0.75, None),
        ([(0, 0), (8, 0), (8, 8)], -0.75, 4.0),
        ([(0, 0), (5, 0.2), (10, 0)], 0.0, 4.0),
        ([(0, 0), (5, 0), (5, 0), (10, 1)], 0.0, 4.0),
        ([(0, 0), (6, 0), (12, 6), (18, 6)], 0.0, 4.0),
        ([(0, 0), (2, 0), (2, 2), (4, 2)], 0.0, 4.0),
        ([(0, 0), (6, 0), (9, 0)], 0.0, 4.0),
        ([(0, 0), (20, 0), (1, 3)], 0.0, None),
        ([(3, 3), (-6, 3), (-12, -4), (-12, -12)], 0.6, 3.0),
    ]
    for n in (3, 3, 4, 4, 5, 6):
        steps = np.cumsum(rng.uniform(-1.2, 1.2, n - 1))
        legs = rng.uniform(2, 9, (n - 1, 1)) * np.stack([np.cos(steps), np.sin(steps)], axis=1)
        points = np.vstack([[0, 0], np.cumsum(legs, axis=0)])
        fixed += [([tuple(p) for p in points], float(rng.uniform(-0.8, 0.8)), r) for r in (None, 2.0, 5.0)]
    return fixed


def test_the_page_rounds_a_line_as_the_program_does(pick: Path, open_page: Any) -> None:
    page, lines = open_page(pick, "laptop"), polylines()
    drawn = page.evaluate(TWIN, [[points, left, least, STEP] for points, left, least in lines])
    refused = 0
    for (points, left, least), found in zip(lines, drawn, strict=True):
        try:
            xy, yaw, _ = drivable(beside(points, left), least, STEP)
        except CrestcutError as error:
            refused += 1
            assert f"point {found['corner'] + 1} leaves" in str(error)
            assert f"{found['leaves']:.2f} m, the vehicle turns no tighter than {least:.2f} m" in str(error)
            continue
        assert len(found) == len(xy)
        assert np.abs(np.array(found) - np.column_stack([xy, yaw])).max() < 1e-9
    assert 2 <= refused <= len(lines) / 2


def test_least_radius_is_that_of_the_program(pick: Path, open_page: Any) -> None:
    page = open_page(pick, "laptop")
    for car in (Path(__file__).parents[2] / "configs" / "vehicles").glob("*.toml"):
        vehicle = load_vehicle(car)
        page.get_by_label("Which vehicle").select_option(car.name)
        found = page.evaluate("crestcut.path.leastRadius(crestcut.model.sizes)")
        assert found == (pytest.approx(least_radius(vehicle)) if vehicle.turning_radius else None)


def test_a_bend_tighter_than_it_turns_is_said_at_once(pick: Path, open_page: Any) -> None:
    page = open_page(pick, "laptop")
    draw_line(page, ((1.0, 1.0), (6.0, 1.2), (6.4, 4.0)), touch=False)
    said = [m for m in mistakes(page) if "turns no tighter than" in m]
    assert len(said) == 1 and "line point 2" in said[0]
    assert page.locator(".overlay .tight").count() == 1
    page.get_by_label("Which vehicle").select_option("kiln_trolley.toml")  # its file names no turning radius
    assert not [m for m in mistakes(page) if "turns no tighter than" in m]
    assert "give its turning radius" in page.locator("#mistakes .care").first.inner_text()


def test_the_vehicle_follows_the_rounded_line(pick: Path, open_page: Any) -> None:
    page = open_page(pick, "laptop")
    draw_line(page, ((1.0, 1.0), (5.5, 1.0), (11.0, 3.6)), touch=False)
    page.locator("#f-travel-ways-turned").evaluate("box => box.click()")  # that way the nose leaves the scan
    assert mistakes(page) == []
    heading = """share => { const { map, model } = crestcut; map.along = share; map.stage.draw();
      const { path } = map.route, at = path.place(share * (path.long - model.sizes.wheelbase));
      const box = document.querySelector('.overlay .body').getBBox();
      const [x, y] = map.stage.project(...at.at, NaN);
      return [at.yaw, x > box.x && x < box.x + box.width && y > box.y && y < box.y + box.height]; }"""
    turned = [page.evaluate(heading, share) for share in (0.0, 0.5, 1.0)]
    yaw = [t[0] for t in turned]
    assert yaw[0] == pytest.approx(0.0, abs=0.02) and 0.0 < yaw[2] - yaw[0] <= math.atan2(2.6, 5.5) + 0.02
    assert yaw[0] <= yaw[1] <= yaw[2] and all(t[1] for t in turned)  # the rear axle stays under the body
