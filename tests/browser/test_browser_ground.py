"""pick.html says where a wheel leaves the ground as a run of that very line does: refused, left unjudged, or
neither."""

from __future__ import annotations

import re
from pathlib import Path
from typing import Any

import pytest

from browser.courtyard import courtyard, draw_line, mistakes, plan
from crestcut.base.errors import CrestcutError
from crestcut.contact.path.line import travel_line, window
from crestcut.contact.stand.ride import ride
from crestcut.job.records import Travel
from crestcut.terrain.build import build_surface
from crestcut.vehicle.load import load_state, load_vehicle

HATCHBACK = Path(__file__).parents[2] / "configs" / "vehicles" / "flat_floor_hatchback.toml"
# the courtyard is 12 x 4.5 m with a hole of 0.35 m at (9.5, 3.2); half a track is about 0.74 m
LINES = {
    "well inside": ((1.0, 1.7), (8.0, 1.7)),
    "a front wheel over the hole": ((1.0, 2.5), (11.5, 2.5)),
    "ends off the scan": ((1.0, 1.8), (12.3, 1.8)),
    "starts off the scan": ((-0.4, 1.8), (8.0, 1.8)),
    "a wheel on the rim": ((1.0, 0.90), (8.0, 0.90)),
    "beside the hole": ((1.0, 1.90), (11.0, 1.95)),
    # driven against the arrow the front axle swings off the scan before the bend
    "a bend": ((1.0, 1.0), (5.5, 1.0), (11.0, 3.6)),
    "a bend, farther in": ((1.0, 1.9), (5.5, 1.9), (8.5, 2.5)),
}


def program(ends: tuple[tuple[float, float], ...]) -> tuple[str, float]:
    """What a run says of the line: its refusal, or the share of places it leaves unjudged."""
    scan, car, travel = courtyard(), load_vehicle(HATCHBACK), Travel(line=(), ways=("forward", "turned"))
    line = travel_line([(float(x), float(y)) for x, y in ends], car, travel, 0.01)
    surface = build_surface(scan, window(line, car, travel, 0.01))
    try:
        rode = ride(car, surface, line, travel, (load_state(car, "as measured"),))
    except CrestcutError as error:
        return str(error), 0.0
    return "", float(1 - rode.batch.live.mean())


def mends(said: str) -> dict[str, float]:
    """Where to end and start the line instead, m: the same to the tenth of a metre."""
    found = re.findall(r"(end it|start it) ([\d.]+) (mm|m)", said)
    return {which: float(size) / (1000 if unit == "mm" else 1) for which, size, unit in found}


@pytest.mark.parametrize("name", LINES)
def test_what_a_run_refuses_or_leaves_out_is_said_before(name: str, pick: Path, open_page: Any) -> None:
    refused, lost = program(LINES[name])
    page = open_page(pick, "laptop")
    page.evaluate(
        "line => { crestcut.model.doc.travel.line = line; crestcut.model.changed(); }",
        [list(plan(*p)) for p in LINES[name]],
    )
    stops = [m for m in mistakes(page) if "outside the scan" not in m]
    cares = [m for m in page.locator("#mistakes .care").all_inner_texts() if "not judged" in m]
    assert bool(stops) == bool(refused), (stops, refused)
    assert any("against the arrow" in s for s in stops) == ("against its direction" in refused)
    assert mends("".join(stops)) == pytest.approx(mends(refused), abs=1e-9), (stops, refused)
    if not refused:
        assert bool(cares) == (lost > 0), (cares, lost)
        part = float(re.findall(r"(\d+) %", cares[0])[0]) / 100 if cares else 0.0
        assert part == pytest.approx(lost, abs=0.03), (cares, lost)


def test_less_wander_or_a_shorter_line_as_said_is_taken(pick: Path, open_page: Any) -> None:
    page = open_page(pick, "laptop")
    draw_line(page, ((1.0, 1.0), (8.0, 1.0)), touch=False)
    said = "".join(page.locator("#mistakes .care").all_inner_texts())
    offered = re.search(r"or give (\d+) mm of wander", said)
    assert offered and "not judged" in page.locator("#line-said").inner_text(), said
    # signs are drawn with the next frame, later than the words on a busy machine; asked by a function,
    # since the page's policy forbids to evaluate a string
    drawn = "() => document.querySelector('#view, .view .overlay').innerHTML.includes('off the line')"
    page.wait_for_function(drawn, timeout=10_000)
    page.evaluate("mm => crestcut.model.set(['travel', 'wander'], `${mm} mm`)", offered[1])
    assert "not judged" not in "".join(page.locator("#mistakes .care").all_inner_texts())
