"""pick.html carries the whole scan from above, loads nothing, and nothing in a file name can run."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest
from click.testing import CliRunner
from page_text import PageText

from crestcut.apps.cli import main
from crestcut.base.errors import CrestcutError
from crestcut.job.records import ScanChoice
from crestcut.report.pages.pack import unpack_layer
from crestcut.report.pages.pick import footing, generic_vehicles, plan_raster, write_pick
from crestcut.scan.records import Frame, Scan, ScanFile
from crestcut.vehicle.load import load_vehicle

ROOT = Path(__file__).parents[2]
FOOT = 0.3048


def slope_scan(
    n: int = 60_000,
    unit: float = 1.0,
    shift: tuple[float, float] = (0.0, 0.0),
    name: str = "apron.laz",
    long: float = 8.0,
) -> Scan:
    """A 10 % slope with a round hole, leaves 0.5 m above a corner, and colour."""
    rng = np.random.default_rng(4)
    xy = rng.uniform((0, 0), (long, 4), (n, 2))
    xy = xy[np.hypot(xy[:, 0] - 5, xy[:, 1] - 2) > 0.4]
    z = 0.1 * xy[:, 0] + np.where((xy[:, 0] < 1) & (rng.random(len(xy)) < 0.3), 0.5, 0.0)
    frame = Frame(np.full(3, unit), np.eye(3), np.array([*shift, 0.0]), "m" if unit == 1.0 else "ft", "z")
    file = ScanFile(Path(name), "LAZ", "0" * 64, len(xy), 0, None, "written in the file", "flattest")
    grey = rng.integers(90, 200, (len(xy), 1)).repeat(3, axis=1).astype(np.uint8)
    return Scan(np.column_stack([xy, z]), np.zeros(len(xy), np.int16), frame, (file,), grey)


def test_page_stands_alone_and_is_small(tmp_path: Path) -> None:
    path = write_pick(slope_scan(), None, tmp_path)
    assert path == tmp_path / "pick.html" and [p.name for p in tmp_path.iterdir()] == ["pick.html"]
    page = PageText.read(path)
    page.assert_self_contained()
    assert path.stat().st_size < 3_000_000


def test_sixteen_metres_at_twenty_millimetres_fits_three_megabytes(tmp_path: Path) -> None:
    scan = slope_scan(700_000, long=16.0)
    frame, _, _ = plan_raster(scan)
    assert frame.cell == 0.02 and frame.shape[1] >= 800
    assert write_pick(scan, None, tmp_path).stat().st_size <= 3_000_000


def test_heights_are_those_of_the_ground_and_the_hole_stays(tmp_path: Path) -> None:
    data = PageText.read(write_pick(slope_scan(), None, tmp_path)).carried
    grid = data["grid"]
    z = unpack_layer(data["height"], (grid["ny"], grid["nx"]))
    x = np.arange(grid["nx"]) * grid["cell"] + grid["plan"][0][2]
    y = np.arange(grid["ny"]) * grid["cell"] + grid["plan"][1][2]
    inner = np.hypot(x[None, :] - 5, y[:, None] - 2) < 0.3
    assert np.isnan(z[inner]).mean() > 0.97
    away = (np.hypot(x[None, :] - 5, y[:, None] - 2) > 0.5) & (x[None, :] > 1.1)
    error = np.abs(z - 0.1 * x)[away & ~np.isnan(z)]
    assert np.quantile(error, 0.99) < 0.006  # the slope rises 4 mm over a cell
    leaves = z[:, (x > 0.1) & (x < 0.9)]
    assert np.nanmedian(leaves) < 0.15  # the ground under the leaves, not the leaves 0.5 m up


def test_a_tyre_may_stand_on_the_slope_not_in_its_hole_nor_where_nothing_is() -> None:
    scan = slope_scan()
    frame, _, _ = plan_raster(scan)
    stands, xy = footing(scan.points, frame), frame.node_xy()
    far = np.hypot(xy[..., 0] - 5, xy[..., 1] - 2)
    inside = ((xy > 0.05) & (xy < (7.95, 3.95))).all(axis=-1)
    assert np.isnan(stands[far < 0.36]).all() and (stands[(far > 0.45) & inside] == 1).mean() > 0.995
    half = footing(scan.points[scan.points[:, 0] < 4.0], frame)
    beyond = np.isnan(half)[:, xy[0, :, 0] > 4.05]
    assert beyond.all() and beyond.size > 5_000


@pytest.mark.parametrize("unit", [1.0, FOOT])
def test_grid_metres_become_the_scans_own_coordinates(tmp_path: Path, unit: float) -> None:
    scan = slope_scan(20_000, unit, shift=(512_300.25, -4_481_200.5))
    data = PageText.read(write_pick(scan, None, tmp_path)).carried
    (a, b, c), (d, e, f) = data["grid"]["plan"]
    frame, _, _ = plan_raster(scan)
    for uv in ((0.0, 0.0), (3.0, 1.0)):
        plan = (a * uv[0] + b * uv[1] + c, d * uv[0] + e * uv[1] + f)
        assert plan == pytest.approx(scan.frame.site_to_plan(frame.to_site(uv)), abs=1e-7)
    assert data["planUnit"] == scan.frame.unit and data["planScale"] == [unit, unit]


def test_what_was_said_to_look_is_carried_and_nothing_else(tmp_path: Path) -> None:
    scan = slope_scan(5_000, FOOT)
    choice = ScanChoice((scan.files[0].path,), "ft", None, "phone")
    data = PageText.read(write_pick(scan, None, tmp_path, choice=choice)).carried
    assert data["scan"]["said"] == {"unit": "ft", "scanner": "phone"}
    assert PageText.read(write_pick(scan, None, tmp_path)).carried["scan"]["said"] == {}


def test_look_hands_on_what_was_said(tmp_path: Path) -> None:
    points = slope_scan(30_000).points / FOOT
    np.savetxt(tmp_path / "a.xyz", points, fmt="%.5f")
    said = ["--unit", "ft", "--up", "z", "--scanner", "phone"]
    asked = ["look", str(tmp_path / "a.xyz"), "--out", str(tmp_path / "out"), *said]
    assert CliRunner().invoke(main, asked).exit_code == 0
    data = PageText.read(tmp_path / "out" / "pick.html").carried
    assert data["scan"]["said"] == {"unit": "ft", "up": "z", "scanner": "phone"}


def test_scan_is_named_as_seen_from_the_page(tmp_path: Path) -> None:
    scan = slope_scan(5_000, name=str(tmp_path / "scans" / "apron.laz"))
    data = PageText.read(write_pick(scan, None, tmp_path / "out" / "look")).carried
    assert data["scan"]["files"] == ["../../scans/apron.laz"]


NASTY = "</script><img src=x onerror=alert(1)>\"'&\u2028حديقة.laz"


def test_a_file_name_is_only_ever_text(tmp_path: Path) -> None:
    page = PageText.read(write_pick(slope_scan(5_000, name=NASTY), None, tmp_path))
    page.assert_self_contained()
    name = NASTY.rsplit("/", 1)[1]  # what a path keeps of it
    assert page.carried["scan"]["files"][0].endswith(NASTY.replace("\\", "/"))
    assert name.split("\u2028")[1] in page.text


def test_generic_vehicles_are_those_of_the_configs() -> None:
    shown = {v["file"]: v["text"] for v in generic_vehicles()}
    kept = {p.name: p.read_text(encoding="utf-8") for p in (ROOT / "configs" / "vehicles").glob("*.toml")}
    assert shown == kept and len(shown) >= 3


def test_generic_vehicles_are_good_vehicle_files(tmp_path: Path) -> None:
    for vehicle in generic_vehicles():
        (tmp_path / vehicle["file"]).write_text(vehicle["text"], encoding="utf-8")
        assert load_vehicle(tmp_path / vehicle["file"]).wheelbase > 0.5


def test_too_few_points_are_refused_in_one_line(tmp_path: Path) -> None:
    scan = slope_scan(12)
    with pytest.raises(CrestcutError, match="points"):
        write_pick(scan, None, tmp_path)
    assert not list(tmp_path.iterdir())


def test_same_scan_same_bytes(tmp_path: Path) -> None:
    a = write_pick(slope_scan(5_000), None, tmp_path / "a").read_bytes()
    assert a == write_pick(slope_scan(5_000), None, tmp_path / "b").read_bytes()


def test_unwritable_folder_is_said(tmp_path: Path) -> None:
    (tmp_path / "taken").write_text("a file, not a folder")
    with pytest.raises(CrestcutError, match="cannot be written"):
        write_pick(slope_scan(5_000), None, tmp_path / "taken")
