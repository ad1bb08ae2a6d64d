"""Bad input at the command line: one line with the thing and the mend, exit code 2, nothing half-written.

Every entry of the list of bad input that the main job must take goes through ``crestcut run`` here, on a
small slab under the kiln trolley; the rooms' own tests go deeper into each.
"""

from __future__ import annotations

import json
from pathlib import Path

import laspy
import numpy as np
import pytest
from click.testing import CliRunner

from crestcut.apps.cli import main

VEHICLE = """
name = "kiln trolley"
wheelbase = "980 mm"
front_track = "640 mm"
rear_track = "640 mm"
tyre_radius = "99 mm"
tyre_width = "42 mm"
width = "700 mm"
belly_clearance = "88 mm"
rigid = true
centre_of_mass = { back = "510 mm", left = "0 mm", up = "420 mm" }
[[part]]
name = "jack foot"
back = ["430 mm", "550 mm"]
across = ["-60 mm", "60 mm"]
clearance = "52 mm"
"""
JOB = """
title = "Bad input"
[scan]
files = ["slab.laz"]
scanner = "phone"
[vehicle]
file = "trolley.toml"
[travel]
line = [[0.4, 1.0], [4.6, 1.0]]
wander = "50 mm"
heading = 0
[clearance]
want = "5 mm"
want_ends = "10 mm"
"""


def slab() -> np.ndarray:
    """(n, 3) metres: 5 x 2 m of concrete with a crest of 5 % a side, a point each 12 mm, 1 mm of noise."""
    x, y = np.meshgrid(np.arange(0, 5.0, 0.012), np.arange(0, 2.0, 0.012))
    noise = np.random.default_rng(3).normal(0, 0.001, x.shape)
    return np.stack([x, y, 0.3 - 0.05 * np.abs(x - 2.5) + noise], axis=-1).reshape(-1, 3)


def write_laz(path: Path, points: np.ndarray) -> None:
    header = laspy.LasHeader(point_format=0, version="1.4")
    header.scales = np.full(3, 1e-4 if np.ptp(points) < 100 else 1e-2)
    las = laspy.LasData(header)
    las.x, las.y, las.z = points.T
    las.write(path)


@pytest.fixture
def site(tmp_path: Path) -> Path:
    """A folder with a good job, vehicle and scan, for a test to spoil."""
    (tmp_path / "job.toml").write_text(JOB)
    (tmp_path / "trolley.toml").write_text(VEHICLE)
    return tmp_path


def refused(site: Path) -> str:
    """Run the job; what it says in its one line. Nothing may be written and nothing else be printed."""
    before = sorted(p.name for p in site.iterdir())
    result = CliRunner().invoke(main, ["run", str(site / "job.toml"), "--out", str(site / "out")])
    assert isinstance(result.exception, SystemExit), result.exception
    assert result.exit_code == 2 and result.stdout == ""
    assert sorted(p.name for p in site.iterdir()) == before, "nothing half-written"
    progress, last = result.stderr.rstrip("\n").splitlines()[:-1], result.stderr.rstrip("\n").splitlines()[-1]
    assert all(line.startswith("  ") and line.endswith(" ...") for line in progress), (
        "no traceback, no warning"
    )
    assert last.startswith("crestcut: ") and "; " in last, "what, where; and what to do"
    assert len(last) < 400
    return last.removeprefix("crestcut: ")


def spoil(site: Path, name: str, old: str, new: str) -> None:
    text = (site / name).read_text()
    assert old in text
    (site / name).write_text(text.replace(old, new))


# --- the file -------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("name", "content", "says"),
    [
        ("slab.laz", None, "slab.laz"),
        ("slab.laz", b"", "empty"),
        ("slab.laz", b"\x89PNG\r\n\x1a\n" + bytes(200), "slab.laz"),
        ("slab.ply", b"%PDF-1.7 a foreign file " * 20, "slab.ply"),
        ("slab.e57", b"ASTM-E57" + bytes(100), "slab.e57"),
        ("slab.docx", b"PK\x03\x04" + bytes(300), "slab.docx"),
    ],
)
def test_a_scan_that_is_missing_empty_or_foreign(
    site: Path, name: str, content: bytes | None, says: str
) -> None:
    spoil(site, "job.toml", "slab.laz", name)
    if content is not None:
        (site / name).write_bytes(content)
    said = refused(site)
    assert says in said and name in said


@pytest.mark.parametrize("share", [0.02, 0.5, 0.999])
def test_a_truncated_scan(site: Path, share: float) -> None:
    write_laz(site / "slab.laz", slab())
    whole = (site / "slab.laz").read_bytes()
    (site / "slab.laz").write_bytes(whole[: int(share * len(whole))])
    assert "slab.laz" in refused(site)


@pytest.mark.parametrize("name", ["job.toml", "trolley.toml"])
@pytest.mark.parametrize("how", ["missing", "empty", "binary", "broken"])
def test_a_job_or_vehicle_that_cannot_be_read(site: Path, name: str, how: str) -> None:
    if how == "missing":
        (site / name).unlink()
    else:
        content = {"empty": b"", "binary": b"\xff\xfe\x00job", "broken": b'title = "no end\n'}[how]
        (site / name).write_bytes(content)
    assert name in refused(site)


# --- the points -----------------------------------------------------------------------------------


@pytest.mark.parametrize("bad", ["nan", "inf", "-inf"])
def test_points_that_are_no_numbers(site: Path, bad: str) -> None:
    spoil(site, "job.toml", "slab.laz", "slab.xyz")
    (site / "slab.xyz").write_text(f"{bad} {bad} {bad}\n" * 3000)
    assert "slab.xyz" in refused(site)


def test_all_points_on_a_line(site: Path) -> None:
    along = np.linspace(0, 5, 5000)
    write_laz(site / "slab.laz", np.stack([along, 0.5 * along, 0.1 * along], axis=1))
    said = refused(site)
    assert "slab.laz" in said and "line" in said


def test_millimetres_taken_for_metres(site: Path) -> None:
    """A slab of 5,000 by 2,000 'metres': said to be metres by the job, which cannot be."""
    spoil(site, "job.toml", "[scan]", '[scan]\nunit = "m"')
    write_laz(site / "slab.laz", slab() * 1000.0)
    said = refused(site)
    assert "slab.laz" in said and "mm" in said


def test_metres_taken_for_millimetres(site: Path) -> None:
    spoil(site, "job.toml", "[scan]", '[scan]\nunit = "mm"')
    write_laz(site / "slab.laz", slab())
    assert "unit" in refused(site)


def test_an_up_axis_declared_against_the_shape_is_told_before_the_line_fails_of_it(site: Path) -> None:
    """y up, with the job saying z: the slab stands on its edge, and no wheel finds ground."""
    spoil(site, "job.toml", "[scan]", '[scan]\nup = "z"')
    points = slab()
    write_laz(site / "slab.laz", np.stack([points[:, 0], points[:, 2], -points[:, 1]], axis=1))
    result = CliRunner().invoke(main, ["run", str(site / "job.toml"), "--out", str(site / "out")])
    told = [line for line in result.stderr.splitlines() if line.startswith("  mind: ")]
    assert len(told) == 1 and "up axis z is declared, but the shape says y" in told[0]
    refused(site)


# --- the line -------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("line", "says"),
    [
        ("[[1.0, 1.0], [1.8, 1.0]]", "wheelbase"),
        ("[[1.0, 1.0], [1.0, 1.0]]", "line"),
        ("[[10.4, 1.0], [14.6, 1.0]]", "line"),
        ("[[0.4, 1.0], [9.6, 1.0]]", "line"),
        ("[[0.4, 1.9], [4.6, 1.9]]", "tyre"),
        ('[[0.4, 1.0], "D"]', "D"),
        ("[[0.4, 1.0]]", "line"),
    ],
)
def test_a_line_too_short_or_off_the_slab(site: Path, line: str, says: str) -> None:
    write_laz(site / "slab.laz", slab())
    spoil(site, "job.toml", "[[0.4, 1.0], [4.6, 1.0]]", line)
    assert says in refused(site)


def test_a_hole_wider_than_a_tyres_contact(site: Path) -> None:
    points = slab()
    hole = np.hypot(points[:, 0] - 3.0, points[:, 1] - 1.32) < 0.2
    write_laz(site / "slab.laz", points[~hole])
    said = refused(site)
    assert "tyre" in said and "scan" in said


# --- the vehicle and the figures ------------------------------------------------------------------


@pytest.mark.parametrize(
    ("name", "old", "new", "says"),
    [
        ("trolley.toml", '["-60 mm", "60 mm"]', '["-460 mm", "460 mm"]', "jack foot"),
        ("trolley.toml", 'clearance = "52 mm"', 'clearance = "-52 mm"', "below the ground"),
        ("trolley.toml", 'wheelbase = "980 mm"', 'wheelbase = "980 m"', "wheelbase"),
        ("trolley.toml", 'wheelbase = "980 mm"', 'wheelbase = "0 mm"', "wheelbase"),
        ("trolley.toml", 'tyre_radius = "99 mm"', 'tyre_radius = "99"', "tyre_radius"),
        ("trolley.toml", 'tyre_radius = "99 mm"', 'tyre_radius = "9,9 cm"', "tyre_radius"),
        ("trolley.toml", 'tyre_radius = "99 mm"', "tyre_radius = nan", "tyre_radius"),
        ("trolley.toml", "tyre_width", "tire_width", "tyre_width"),
        ("job.toml", "wander", "wonder", 'did you mean "wander"'),
        ("job.toml", "[clearance]", "[clearence]", 'did you mean "clearance"'),
        ("job.toml", 'want = "5 mm"', 'want = "-5 mm"', "want"),
        ("job.toml", 'want = "5 mm"', 'want = "5 m"', "want"),
        ("job.toml", 'want = "5 mm"', 'want = "5,5 mm"', "want"),
        ("job.toml", 'wander = "50 mm"', 'wander = "-50 mm"', "wander"),
        ("job.toml", "heading = 0", "heading = 95", "heading"),
        ("job.toml", "heading = 0", "heading = inf", "heading"),
        ("job.toml", "[travel]", '[cut]\ndeepest = "-13 mm"\n[travel]', "deepest"),
        ("job.toml", "[travel]", '[cut]\ndeepest = "2 m"\n[travel]', "deepest"),
        ("job.toml", "[travel]", '[surface]\ncell = "0 mm"\n[travel]', "cell"),
        ("job.toml", "[travel]", '[slab]\nthickness = "100"\n[travel]', "thickness"),
        ("job.toml", "[travel]", '[slab]\nkind = "hollow-core planks"\n[travel]', "plain concrete"),
        ("job.toml", "[travel]", '[slab]\nheating_from = "no radar available"\n[travel]', "thermal camera"),
        ("job.toml", 'scanner = "phone"', 'scanner = "fone"', "phone"),
    ],
)
def test_figures_that_cannot_be(site: Path, name: str, old: str, new: str, says: str) -> None:
    spoil(site, name, old, new)
    said = refused(site)
    assert says in said and name in said


def test_a_part_over_a_wheel_track_lower_than_what_is_wanted(site: Path) -> None:
    """No cut can help there: the ground under the part is the ground the wheels stand on."""
    spoil(site, "trolley.toml", '["-60 mm", "60 mm"]', '["-330 mm", "-300 mm"]')
    spoil(site, "trolley.toml", 'clearance = "52 mm"', 'clearance = "4 mm"')
    said = refused(site)
    assert "jack foot" in said and "wheel" in said


# --- the place to write ---------------------------------------------------------------------------


def test_a_file_where_the_folder_should_be(site: Path) -> None:
    write_laz(site / "slab.laz", slab())
    (site / "out").write_text("mine")
    assert "--out" in refused(site)
    assert (site / "out").read_text() == "mine"


@pytest.mark.parametrize(
    ("options", "says"),
    [
        (["--unit", "furlong"], 'unit "furlong" is not known'),
        (["--up", "w"], 'up axis "w" is not known'),
        (["--scanner", "sonar"], 'scanner "sonar" is not known'),
    ],
)
def test_look_refuses_what_it_does_not_know(site: Path, options: list[str], says: str) -> None:
    write_laz(site / "slab.laz", slab()[::10])
    result = CliRunner().invoke(main, ["look", str(site / "slab.laz"), *options, "--out", str(site / "out")])
    assert result.exit_code == 2 and result.stdout == "" and not (site / "out").exists()
    assert says in result.stderr.splitlines()[-1] and "use" in result.stderr.splitlines()[-1]


def test_what_the_others_spoil_is_good(site: Path) -> None:
    """The same slab with y up, undeclared, and points among it that are no numbers: found out, and said."""
    spoil(site, "job.toml", "slab.laz", "slab.xyz")
    lines = [f"{x:.4f} {z:.4f} {-y:.4f}" for x, y, z in slab()[::2]]
    lines[10:10] = ["nan nan nan", "inf 1.0 0.2"]
    (site / "slab.xyz").write_text("\n".join(lines))
    looked = CliRunner().invoke(main, ["look", str(site / "slab.xyz"), "--json"])
    found = json.loads(looked.stdout)
    assert found["up"] == "y" and "guessed" in found["files"][0]["up_reason"]
    assert found["files"][0]["dropped"] == 2
    result = CliRunner().invoke(main, ["run", str(site / "job.toml"), "--out", str(site / "out")])
    assert result.exit_code in (0, 3), result.stderr
    written = json.loads((site / "out" / "result.json").read_text())
    assert written["before"]["verdict"] == "clears" and written["scan"]["up"] == "y"
    # by hand: 52 mm under the foot, less the crest: (L/2) tan(b/2) - R (sec(b/2) - 1), b/2 = atan(0.05)
    crest = 0.49 * 0.05 - 0.099 * (np.sqrt(1 + 0.05**2) - 1)
    assert written["before"]["swept_gap"] == pytest.approx(0.052 - crest, abs=0.002)
    low, high = written["before"]["interval"]
    assert low < 0.052 - crest < high
