"""The vehicle on boards: a gap felt over a slab that it touches, its noise, and what may not be written."""

from __future__ import annotations

import sys
from dataclasses import replace
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1]))
import numpy as np
import pytest

from crestcut.base.errors import CrestcutError
from crestcut.chance.active_contacts import find_active_contacts, wheel_weights
from crestcut.chance.assess import assess_chance
from crestcut.chance.drawn_errors import DrawnErrors
from crestcut.chance.draws import reach_of
from crestcut.chance.witness import witness_evidence
from crestcut.contact.stand.boards import LIES, THICKNESS, bridging, stand_on
from crestcut.contact.stand.ground import ridden_ground
from crestcut.job.load import load_job
from crestcut.job.records import PlanPoint, Point, Wanted, Witness
from crestcut.terrain.readings.records import Evidence
from crestcut.terrain.records import ErrorModel
from crestcut.vehicle.records import AS_MEASURED
from scenes import TRACK, TYRE, R, Scene, belly, crest, scene, vehicle

PHONE = ErrorModel(0.006, 0.0013, 0.1, 0.0043, 0.35, "residuals", "two repeats", "two repeats")
SAMPLE = Path(__file__).resolve().parents[2] / "configs" / "jobs" / "courtyard_apron.toml"
UNEQUAL = np.array([0.018, 0.018, 0.0, 0.0])


@pytest.fixture(scope="module")
def stood() -> Scene:
    """A narrow belly that overlaps a crest of 17 % by some 2 mm."""
    car = vehicle(replace(belly(half=0.25), within=0.002))
    return scene(crest(0.089), car=car, start=(-3.2, 0), end=(3.2, 0), cell=0.02)


def place(point: Point) -> tuple[float, float]:
    assert isinstance(point, PlanPoint)
    return point.x, point.y


def told(s: Scene, raised: object = None, **said: object) -> Evidence:
    if isinstance(raised, float):
        raised = (raised,) * 4
    witness = Witness("belly", PlanPoint(1.4, 0.0), "as measured", raised=raised, **said)  # type: ignore[arg-type]
    evidence = witness_evidence([witness], s.vehicle, s.surface, s.line, (AS_MEASURED,), place)
    assert evidence is not None
    return evidence


def test_equal_boards_raise_every_gap_by_their_thickness(stood: Scene) -> None:
    assert stood.before.worst is not None and stood.before.worst.gap < 0
    bare, on = (told(stood, raised, gap=0.01).readings[0] for raised in (None, 0.018))
    assert on.exactly - bare.exactly == pytest.approx(0.018, abs=1e-12)
    assert on.predicted - bare.predicted >= 0.018


@pytest.mark.parametrize("raised", [UNEQUAL, UNEQUAL[[2, 0, 2, 0]], np.array([0.0, 0.0, 0.012, 0.018])])
def test_unequal_boards_turn_the_body_as_the_stand_does(stood: Scene, raised: np.ndarray) -> None:
    """Against the closed form of equal springs: each corner of the chassis follows its wheels, which rest on
    the lower edges of their treads where boards of two thicknesses tip the axle."""
    ground, cell = ridden_ground(stood.surface)[0], stood.surface.height.frame.cell
    at = stood.surface.height.frame.to_grid(np.array([[-1.4, 0.0]]))[0]
    places = np.array([[*at, -stood.surface.height.frame.angle, 0.0, 0.0]])
    bare, on = (stand_on(stood.vehicle, ground, cell, places, r) for r in (None, raised))
    corners = np.array([[0.3, 0.4, 0.1], [0.3, -0.4, 0.1], [2.4, 0.4, 0.1], [1.4, 0.0, 0.1]])
    up = [(b.rotation[0, 0] @ corners.T).T[:, 2] + b.position[0, 0, 2] for b in (bare, on)]
    weights = wheel_weights(stood.vehicle, corners[:, 0], corners[:, 1], np.zeros(4, np.int64))
    tilt = (raised[::2] - raised[1::2]) / TRACK
    on_edge = np.repeat(np.abs(tilt) * TYRE / 2, 2)
    assert np.allclose(up[1] - up[0], weights @ (raised + on_edge), atol=2e-4)
    assert np.allclose(on.wheels, bare.wheels + on_edge, atol=2e-4)  # the slab under it is where it was


def test_draws_held_on_boards_are_those_held_to_the_gap_without(stood: Scene) -> None:
    """The same slab read with and without boards must leave the same draws: 18 mm more felt, 18 mm raised."""
    found = []
    for raised, gap in ((None, 0.004), (0.018, 0.022)):
        evidence = told(stood, raised, gap=gap, placed=0.0)
        reading = evidence.readings[0]
        thick = Evidence((replace(reading, predicted=reading.exactly),), np.array([[1e-6]]))
        found.append(assess_chance(stood.under(PHONE), Wanted(), draws=60, evidence=thick))
    assert found[1].least_clearance == pytest.approx(found[0].least_clearance, abs=2e-5)
    assert found[1].spread == pytest.approx(found[0].spread, rel=0.01)


def test_a_gap_under_unequal_boards_is_met_draw_by_draw(stood: Scene) -> None:
    """What each moved draw would read under the same boards again is what was read, as near as without them:
    both are 6 mm over what was expected."""
    left = []
    for raised in (None, tuple(UNEQUAL)):
        first = told(stood, raised, gap=0.0, placed=0.0).readings[0]
        evidence = told(stood, raised, gap=0.006 + max(first.exactly, -0.004), placed=0.0)
        passage = stood.under(PHONE)
        contacts = find_active_contacts(passage, reach_of(passage), evidence)
        assert contacts is not None
        errors = DrawnErrors(passage, contacts, evidence, 3, 60)
        field = -errors.fold.ground.astype(np.float32)[:, None] - errors.ground
        again = contacts.witnessed(field, errors.parts + errors.fold.parts[:, None])[0]
        left.append((again.mean() - evidence.readings[0].observed, again.std()))
    assert abs(left[0][0]) < 0.0008
    assert left[1] == pytest.approx(left[0], abs=1e-4)


def test_a_board_beside_a_crest_holds_the_tyre_up_by_what_a_straight_line_does(stood: Scene) -> None:
    """A tyre in the bottom of a dip of 1:10 either way: a stiff board over it spans LIES each way."""
    dip = scene(lambda x, y: 0.1 * np.abs(x - 1.4), start=(-3.2, 0), end=(3.2, 0), cell=0.02)
    at = dip.surface.height.frame.to_grid(np.array([[-1.4, 0.0]]))[0]
    mean, sd = bridging(dip.vehicle, dip.surface, np.array([*at, 0.0, 0.0, 0.0]), np.full(4, 0.018))
    a = R * 0.1 / np.hypot(1, 0.1)  # where a disk in a wedge meets it
    stiff = 0.1 * LIES - (0.1 * a + np.sqrt(R**2 - a**2) - R)
    assert mean[:2] == pytest.approx(np.full(2, stiff / 2), abs=1e-4)
    assert sd[:2] == pytest.approx(np.full(2, stiff / np.sqrt(12)), abs=1e-4)
    assert np.abs(mean[2:]).max() < 2e-5  # the rear stands on a plane
    assert np.abs(bridging(dip.vehicle, dip.surface, np.array([*at, 0, 0, 0]), np.zeros(4))).max() == 0


def test_boards_of_one_sheet_share_its_error(stood: Scene) -> None:
    """Flat under each tyre, so that nothing is bridged: the noise is the thickness's, once."""
    bare, on = (told(stood, raised, gap=0.02, placed=0.0).noise[0, 0] for raised in (None, 0.018))
    assert on - bare == pytest.approx(THICKNESS**2, rel=0.01)


@pytest.mark.parametrize(
    ("lines", "says"),
    [
        ('gap = "9 mm"\nraised = "-18 mm"', "no board"),
        ('gap = "9 mm"\nraised = "0 mm"', "no board"),
        ('gap = "9 mm"\nraised = "120 mm"', "thicker than a board"),
        ('gap = "9 mm"\nraised = ["18 mm", "18 mm"]', "never stacked"),
        ('gap = "9 mm"\nraised = "18 mm + 18 mm"', "never stacked"),
        ('gap = "9 mm"\nraised = 18', "thicker than a board"),
        ('gap = "9 mm"\nraised = {front_left = "18 mm"}', "under two"),
        ('gap = "9 mm"\nraised = {front_left = "18 mm", rear_right = "18 mm"}', "under two"),
        ('gap = "9 mm"\nraised = {front = "18 mm"}', 'no tyre is called "front"'),
        ('touched = true\nraised = "18 mm"', "boards are there so that nothing touches"),
    ],
)
def test_boards_that_cannot_be_are_refused_in_one_line(tmp_path: Path, lines: str, says: str) -> None:
    with pytest.raises(CrestcutError, match=says) as caught:
        job_with(tmp_path, f'part = "battery tray"\nfront_axle = [6.1, 2.0]\n{lines}')
    assert "witness 1" in str(caught.value) and "\n" not in str(caught.value)


def test_boards_under_two_tyres_are_read_by_name(tmp_path: Path) -> None:
    said = 'part = "battery tray"\nfront_axle = [6.1, 2.0]\ngap = "9 mm"\n'
    for raised, expected in (
        ('"18 mm"', (0.018,) * 4),
        ('{front_left = "18 mm", front_right = "12 mm"}', (0.018, 0.012, 0.0, 0.0)),
    ):
        (witness,) = job_with(tmp_path, f"{said}raised = {raised}").witnesses
        assert witness.raised == pytest.approx(expected)


def job_with(folder: Path, witness: str):  # type: ignore[no-untyped-def]
    text = SAMPLE.read_text(encoding="utf-8")
    root = SAMPLE.parents[2]
    text = text.replace("../../sample_scans", (root / "sample_scans").as_posix())
    text = text.replace("../vehicles", (root / "configs" / "vehicles").as_posix())
    path = folder / "job.toml"
    path.write_text(f"{text}\n[[witness]]\n{witness}\n", encoding="utf-8")
    return load_job(path)


@pytest.mark.parametrize(
    ("lines", "says"),
    [
        ('part = "battery tray"\ngap = "9 mm"', "want the place"),
        ('touched = true\nraised = "18 mm"', "want the place"),
        ("front_axle = [6.1, 2.0]\ntouched = true", "part is missing"),
    ],
)
def test_only_a_touch_or_none_speaks_of_the_whole_line(tmp_path: Path, lines: str, says: str) -> None:
    with pytest.raises(CrestcutError, match=says):
        job_with(tmp_path, lines)
    (witness,) = job_with(tmp_path, "touched = false").witnesses
    assert (witness.part, witness.front_axle, witness.touched) == (None, None, False)
    with pytest.raises(CrestcutError, match="wants front_axle"):
        job_with(tmp_path, "touched = false\n[[after.witness]]\ntouched = false")
