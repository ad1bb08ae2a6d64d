"""A scan tied to control: where it lies then, at map coordinates in metres and in survey feet, and every way
in which control can be wrong."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
import scan_writers as w
from scan_scene import ground, slab_cloud
from scipy.spatial.transform import Rotation

from crestcut.base.errors import CrestcutError
from crestcut.base.grid import FloatArray
from crestcut.base.units import US_SURVEY_FOOT
from crestcut.job.records import GridPoint, Mark, MarkName, PlanPoint, ScanChoice, Surveyed
from crestcut.scan.control.tie import height_about
from crestcut.scan.load import read_scan
from crestcut.scan.placing.place import resolve_point
from crestcut.scan.placing.system import grid_over_ground, named_system
from crestcut.scan.records import Scan

TURN = Rotation.from_euler("ZYX", [2.0, 0.004, -0.003]).as_matrix()
PLACES = np.array([[0.4, 0.5], [5.6, 0.4], [5.5, 3.6], [0.5, 3.5], [2.9, 2.0]])
# system, where the scan's origin lies there (own units), metres per unit
GRIDS = {
    "m": ("EPSG:25832+7837", np.array([500_000.0, 5_800_000.0, 111.0]), 1.0),
    "us-ft": ("EPSG:2263+6360", np.array([985_432.1, 205_678.9, 364.2]), US_SURVEY_FOOT),
}


def surveyed(places: FloatArray, grid: str, ratio: float | None = None) -> FloatArray:
    """Where places (n, 3), m as scanned, are in the grid: plan lengths of the ground times its scale."""
    system, origin, unit = GRIDS[grid]
    if ratio is None:
        found = grid_over_ground(
            named_system(system), *(float(v) for v in origin[:2]), float(origin[2] * unit)
        )
        assert found is not None
        ratio = found
    return origin + places @ TURN.T * [ratio, ratio, 1.0] / unit


def control_of(places: FloatArray, at: FloatArray, plan_only: bool = False) -> tuple[Surveyed, ...]:
    return tuple(
        Surveyed(f"C{k + 1}", tuple(at[k]), tuple(place[:2] if plan_only else place))
        for k, place in enumerate(places)
    )


def on_slab(xy: FloatArray) -> FloatArray:
    return np.column_stack([xy, ground(*xy.T)])


@pytest.fixture(scope="module")
def bare(tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = tmp_path_factory.mktemp("tied") / "a.laz"
    w.write_las(path, slab_cloud(60_000, noise=0.002))
    return path


@pytest.mark.parametrize("grid", GRIDS)
def test_a_tied_scan_lies_where_its_control_does(bare: Path, grid: str) -> None:
    """To 0.05 mm, places and heights, and back: of the points that were seen, and of all others."""
    places = on_slab(PLACES)
    choice = ScanChoice((bare,), "m", crs=GRIDS[grid][0], control=control_of(places, surveyed(places, grid)))
    scan, before = read_scan(choice), read_scan(ScanChoice((bare,), "m"))
    unit = GRIDS[grid][2]
    own = scan.frame.to_own(scan.points)
    true = surveyed(before.frame.to_own(before.points), grid)
    assert np.abs(own - true).max() * unit < 5e-5
    assert np.abs(scan.frame.own_to_site(own) - scan.points).max() < 5e-9
    assert np.abs(scan.frame.to_site(scan.frame.to_file(scan.points)) - scan.points).max() < 5e-9
    assert np.abs(scan.frame.to_file(scan.points) - own).max() * unit < 5e-9
    assert np.abs(scan.points).max() < 300  # near its own origin
    assert scan.frame.unit == grid and scan.frame.system.plan == GRIDS[grid][0].split("+")[0]
    assert scan.tie is not None and scan.tie.rms < 5e-5
    # ground lengths stay: the gap is found in the vehicle's own metres
    kept = np.linalg.norm(scan.points[::7919] - scan.points[0], axis=1)
    assert kept == pytest.approx(np.linalg.norm(before.points[::7919] - before.points[0], axis=1), abs=2e-6)
    assert any("mm a km" in n for n in scan.notes)


def test_heights_of_the_scan_stand_in_for_those_not_given(bare: Path) -> None:
    places = on_slab(PLACES)
    choice = ScanChoice((bare,), "m", control=control_of(places, surveyed(places, "m", 1.0), plan_only=True))
    scan = read_scan(choice)
    assert scan.tie is not None and all(p.height_of_scan for p in scan.tie.points)
    own = scan.frame.to_own(scan.points)
    before = read_scan(ScanChoice((bare,), "m"))
    # 100 points of 2 mm about each of five: 0.2 mm each
    off = own - surveyed(before.frame.to_own(before.points), "m", 1.0)
    assert np.abs(off[:, 2]).max() < 0.0012
    assert any("no reference system" in n for n in scan.notes)


def test_height_about_a_place_leaves_out_what_stands_there() -> None:
    points = slab_cloud(60_000, noise=0.003)
    post = np.column_stack([np.random.default_rng(3).normal([3.0, 2.0], 0.01, (25, 2)), np.full(25, 0.9)])
    found = height_about(np.concatenate([points, post]), np.array([3.0, 2.02]))
    assert found == pytest.approx(float(ground(np.array(3.0), np.array(2.02))), abs=0.002)
    assert height_about(points, np.array([30.0, 2.0])) is None


def test_places_of_a_job_mean_what_they_say(bare: Path) -> None:
    """[x, y] is the scan's own, { east, north } the control's, a mark is where it was put in the scan."""
    places = on_slab(PLACES)
    at = surveyed(places, "m")
    scan = read_scan(ScanChoice((bare,), "m", crs=GRIDS["m"][0], control=control_of(places, at)))
    marks = (Mark("A", PlanPoint(*PLACES[4])),)
    said = [
        resolve_point(p, marks, scan.frame)
        for p in (PlanPoint(*PLACES[4]), GridPoint(*at[4, :2]), MarkName("A"))
    ]
    # the tilt's lever is the height beside the scan's median
    assert np.ptp(np.array(said), axis=0).max() < 0.001
    for point in (GridPoint(*PLACES[4]), PlanPoint(*at[4, :2])):
        with pytest.raises(CrestcutError, match="km from the scan"):
            resolve_point(point, marks, scan.frame)


def test_a_scale_is_taken_up_only_where_it_is_asked_for(bare: Path) -> None:
    places = on_slab(PLACES)
    at = surveyed(1.004 * places, "m", 1.0)
    choice = ScanChoice((bare,), "m", control=control_of(places, at))
    held, free = read_scan(choice), read_scan(replace(choice, free_scale=True))
    assert held.tie is not None and free.tie is not None
    assert free.tie.rms < 5e-5 < 0.003 < held.tie.rms
    assert np.ptp(free.points[:, 2]) > np.ptp(held.points[:, 2])
    assert held.tie.scale[0] == pytest.approx(1.004) == free.tie.scale[0]
    assert any("too small" in n and 'scale = "from control"' in n for n in held.notes)
    assert any("1.00400 times" in n for n in free.notes)


def test_distances_that_agree_settle_a_guessed_unit(tmp_path: Path) -> None:
    w.write_ply(tmp_path / "a.ply", slab_cloud(20_000) / 0.3048, "binary_little_endian")
    plain = read_scan(tmp_path / "a.ply")
    assert plain.files[0].unit_guessed
    scale = float(plain.frame.scale[0])
    places = on_slab(PLACES) / 0.3048
    tied = read_scan(ScanChoice((tmp_path / "a.ply",), control=control_of(places, places * scale)))
    assert not tied.files[0].unit_guessed


def test_a_lean_is_taken_from_control_and_said(bare: Path) -> None:
    places = on_slab(PLACES)
    lean = Rotation.from_euler("y", 1.0, degrees=True).as_matrix()
    scan = read_scan(ScanChoice((bare,), "m", control=control_of(places, places @ lean.T)))
    assert any("tilts the scan by 1.0 degrees" in n for n in scan.notes)


def test_doubt_of_heights_is_that_of_the_tie(bare: Path) -> None:
    """4 mm a height: amid five, 4 / sqrt 5; beyond them more."""
    places = on_slab(PLACES)
    control = [replace(c, within=0.004) for c in control_of(places, places)]
    scan = read_scan(ScanChoice((bare,), "m", control=tuple(control)))
    assert scan.tie is not None and scan.tie.stated and scan.tie.fitted.known
    middle = scan.tie.fitted.movement.at_middle
    inside, beyond = scan.tie.height_sd(middle + np.array([[0.0, 0.0, 0.0], [8.0, 0.0, 0.0]]))
    assert inside == pytest.approx(0.004 / np.sqrt(5), rel=1e-6) and beyond > 2 * inside


def _line(at: FloatArray) -> FloatArray:
    out = at.copy()
    out[:, :2] = at[0, :2] + np.linspace(0, 5, len(at))[:, None] * [1.0, 0.3]
    return out


def _moved(k: int, by: list[float]) -> Callable[[FloatArray], FloatArray]:
    def change(at: FloatArray) -> FloatArray:
        out = at.copy()
        out[k] += by
        return out

    return change


@pytest.mark.parametrize(
    ("change", "says"),
    [
        (
            _moved(1, [0.03, 0.0, -0.04]),
            r"\[\[control\]\] C2: it lies (48|49|5\d) mm from where the other 4 put it",
        ),
        (lambda at: at[:, [1, 0, 2]], "upside down"),
        (lambda at: at / 0.3048, "3.281 times those in the scan, as m and ft are"),
        (lambda at: np.column_stack([at[:, :2], at[:, 2] + 0.2 * at[:, 0]]), "tilts the scan by 11"),
    ],
)
def test_control_that_is_wrong(bare: Path, change: Callable[[FloatArray], FloatArray], says: str) -> None:
    places = on_slab(PLACES)
    rng = np.random.default_rng(1)
    at = change(places @ TURN.T) + rng.normal(0, 0.002, places.shape)
    with pytest.raises(CrestcutError, match=says) as caught:
        read_scan(ScanChoice((bare,), "m", control=control_of(places, at)))
    assert "\n" not in str(caught.value)


def test_control_on_one_line(bare: Path) -> None:
    seen = on_slab(np.column_stack([np.linspace(0.5, 3.0, 4), np.full(4, 2.0)]))
    with pytest.raises(CrestcutError, match="on one line as seen"):
        read_scan(ScanChoice((bare,), "m", control=control_of(seen, seen)))


@pytest.mark.parametrize(
    ("choice", "says"),
    [
        ({"crs": "EPSG:4326"}, "no east and north"),
        ({"crs": "EPSG:999999"}, "no reference system"),
        ({"crs": "EPSG:2263", "control_unit": "m"}, "control_unit is m, EPSG:2263 counts in us-ft"),
    ],
)
def test_systems_of_control_that_will_not_do(bare: Path, choice: dict[str, str], says: str) -> None:
    places = on_slab(PLACES)
    with pytest.raises(CrestcutError, match=says):
        read_scan(ScanChoice((bare,), "m", control=control_of(places, places), **choice))  # type: ignore[arg-type]


def test_a_datum_that_is_not_stated_is_said_and_allowed(bare: Path) -> None:
    places = on_slab(PLACES)
    control = control_of(places, surveyed(places, "m"))
    scan = read_scan(ScanChoice((bare,), "m", crs="EPSG:25832", control=control))
    assert any("vertical datum is not stated" in n for n in scan.notes)


def test_a_scan_of_another_system_than_its_control(tmp_path: Path) -> None:
    w.write_las(tmp_path / "a.laz", slab_cloud(20_000) + GRIDS["m"][1], 25833)
    places = on_slab(PLACES)
    control = control_of(places + GRIDS["m"][1], surveyed(places, "m"))
    with pytest.raises(CrestcutError, match="the scan is in EPSG:25833"):
        read_scan(ScanChoice((tmp_path / "a.laz",), crs="EPSG:25832", control=control))


def test_control_beside_the_scan_needs_its_height(bare: Path) -> None:
    places = on_slab(np.array([[0.4, 0.5], [5.6, 0.4], [5.5, 3.6], [12.0, 9.0]]))
    with pytest.raises(CrestcutError, match="shows no ground where it was seen"):
        read_scan(ScanChoice((bare,), "m", control=control_of(places, places, plan_only=True)))


def test_a_check_point_outside_the_slab(bare: Path) -> None:
    check = (Surveyed("K1", (7.0, 2.0, 0.3)),)
    with pytest.raises(CrestcutError, match=r"\[\[check\]\] K1: it lies [01]\.\d\d m outside the slab"):
        read_scan(ScanChoice((bare,), "m", checks=check))


def test_stations_are_turned_with_their_scan(bare: Path) -> None:
    places = on_slab(PLACES)
    scan = read_scan(ScanChoice((bare,), "m"))
    passes = (replace(scan.passes[0], off=(0.003, 0.0, 0.001)),)
    from crestcut.scan.control.tie import tied

    moved: Scan = tied(
        replace(scan, passes=passes), ScanChoice((bare,), control=control_of(places, places @ TURN.T))
    )
    assert moved.passes[0].off == pytest.approx(tuple(TURN @ [0.003, 0.0, 0.001]))
