"""A scan whose unit, rounding or stations are in doubt: the verdict says so, and is no better than that."""

from __future__ import annotations

import json
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
from click.testing import CliRunner

from crestcut.apps.cli import main
from crestcut.base.grid import GridFrame, HeightGrid
from crestcut.base.units import FOOT
from crestcut.scan.records import Frame, Scan, ScanFile, ScanPass
from crestcut.terrain.doubts import Drive, doubts_of, driven
from crestcut.terrain.records import DoubtKind
from scan.scan_writers import write_ply
from test_bad_input import JOB, VEHICLE, slab

SLAB_IN_METRES = np.array([[0.0, 0.0, 0.0], [16.6, 0.0, 0.1], [16.6, 5.5, 0.2], [0.0, 5.5, 0.1]])


def verdict_of(
    folder: Path, points: np.ndarray, line: str, scan: str = ""
) -> tuple[str, list[str], list[str]]:
    """Today's verdict and reasons of the trolley's job over the points, and the lines of the terminal."""
    write_ply(folder / "slab.ply", points, "binary_little_endian", real="float")
    (folder / "trolley.toml").write_text(VEHICLE)
    job = JOB.replace("[[0.4, 1.0], [4.6, 1.0]]", line).replace("slab.laz", "slab.ply")
    (folder / "job.toml").write_text(job.replace("[vehicle]", f"{scan}\n[vehicle]"))
    result = CliRunner().invoke(main, ["run", str(folder / "job.toml"), "--out", str(folder / "out")])
    assert result.exit_code in (0, 3), result.output
    told = json.loads((folder / "out" / "result.json").read_text())["before"]
    return told["verdict"], told["reasons"], result.stdout.splitlines()


IN_FEET = "[[1.4, 3.3], [15.0, 3.3]]"


def test_feet_taken_for_metres_decide_nothing(tmp_path: Path) -> None:
    verdict, reasons, lines = verdict_of(tmp_path, slab() / FOOT, IN_FEET)
    assert verdict == "cannot tell"
    words = next(r for r in reasons if "in ft the scan would be a slab too" in r)
    assert 'unit = "m" or unit = "ft"' in words
    assert lines[0].startswith("CANNOT TELL: the unit of the scan is a guess, and another would do;")
    assert all("were the scan right" in line for line in lines if "1 in" in line)
    assert f"  {words}" in lines and f"Next: {words}; then run again." in lines
    page = (tmp_path / "out" / "report.html").read_text()
    assert "Cannot tell: the unit of the scan is a guess" in page


def test_feet_that_are_said_decide(tmp_path: Path) -> None:
    verdict, reasons, lines = verdict_of(tmp_path, slab() / FOOT, IN_FEET, 'unit = "ft"\nup = "z"')
    assert verdict == "clears" and not any("guessed" in r for r in [*reasons, *lines])


def test_metres_that_nothing_else_could_be_decide_and_say_they_were_guessed(tmp_path: Path) -> None:
    verdict, reasons, lines = verdict_of(tmp_path, slab(), "[[0.4, 1.0], [4.6, 1.0]]")
    assert verdict == "clears"
    said = "the unit (m) and the axis that points up (z) were guessed"
    assert any(said in r for r in reasons) and any(said in line for line in lines)


def scan_of(**said: object) -> Scan:
    file = ScanFile(Path("slab.xyz"), "XYZ", "0", 4, 0, None, "", "")
    frame = Frame(np.ones(3), np.eye(3), np.zeros(3), "m", "z")
    shown = {"up_shown": "what stands on the slab", **said}
    return Scan(SLAB_IN_METRES, np.zeros(4, np.int16), frame, (replace(file, **shown),))  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("over", "words"),
    [(0.2, "200 mm (7 7/8 in) over a string"), (-0.05, "under a string"), (0.002, "pictures")],
)
def test_a_bare_slab_says_what_hangs_on_up_being_up(over: float, words: str) -> None:
    x = np.linspace(-1.0, 1.0, 41)
    height = HeightGrid(
        GridFrame((0.0, 0.0), 0.0, 0.05, (21, 41)), np.tile(0.1 * x + over * (1 - abs(x)), (21, 1))
    )
    (doubt,) = doubts_of(scan_of(up_shown=""), "phone", height)
    assert doubt.kind is DoubtKind.UP and not doubt.decides and words in doubt.words
    assert doubts_of(scan_of(), "phone", height) == ()
    (doubt,) = doubts_of(scan_of(faces_down=True), "phone", height)
    assert doubt.kind is DoubtKind.FACES and doubt.decides


@pytest.mark.parametrize(
    ("drive", "left"),
    [
        (Drive(8.3, 2.62, 1.74), ()),  # 2.5 m in feet: less than the wheelbase
        (Drive(14.0, 2.62, 1.74), ()),  # long enough, but the slab is 1.68 m wide in feet
        (Drive(14.0, 2.62, 1.60), ("ft",)),
        (Drive(7.5, 0.98, 0.70), ("ft",)),
    ],
)
def test_another_unit_counts_where_the_vehicle_has_room_in_it(drive: Drive, left: tuple[str, ...]) -> None:
    scan = scan_of(unit_guessed=True, unit_alternatives=("ft",))
    (doubt,) = driven(doubts_of(scan, "phone"), scan, [drive])
    assert doubt.kind is DoubtKind.GUESSED and doubt.units == left and doubt.decides == bool(left)


def test_a_repeat_that_states_its_unit_settles_it() -> None:
    scan = scan_of(unit_guessed=True, unit_alternatives=("ft",))
    told = replace(
        scan, files=(*scan.files, replace(scan.files[0], unit_guessed=False, unit_alternatives=()))
    )
    assert doubts_of(told, "phone") == ()


@pytest.mark.parametrize(
    ("quantum", "doubted"), [(0.001, False), (0.002, False), (0.0021, True), (0.5, True)]
)
def test_coarse_coordinates_decide_nothing(quantum: float, doubted: bool) -> None:
    found = [d for d in doubts_of(scan_of(quantum=quantum), "phone") if d.kind is DoubtKind.ROUNDED]
    assert bool(found) == doubted and all(d.decides for d in found)


@pytest.mark.parametrize(("up", "doubted"), [(0.003, False), (0.015, True), (-0.015, True)])
def test_stations_that_disagree_decide_nothing(up: float, doubted: bool) -> None:
    passes = (ScanPass("scan 1", 2), ScanPass("scan 2", 2, 0.002, (0.001, -0.001, up)))
    of = np.array([0, 0, 1, 1], np.int16)
    found = doubts_of(replace(scan_of(), passes=passes, pass_of=of), "terrestrial")
    assert [d.kind for d in found] == [DoubtKind.STATIONS] * doubted
    assert all(d.decides for d in found)
