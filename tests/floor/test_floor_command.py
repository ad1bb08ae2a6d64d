"""``crestcut floor`` as a user meets it: the sample's truth found again, every file whole, bad input in one
line.
"""

from __future__ import annotations

import json
import re
import sys
from pathlib import Path

import laspy
import numpy as np
import pytest
from click.testing import CliRunner, Result
from floor_scene import cap, write_scan
from PIL import Image

from crestcut.apps.cli import main
from crestcut.floor.straightedge import worst_gap
from crestcut.job.floor_schema import load_floor_job
from crestcut.terrain.records import ErrorModel
from one_line import refusal

ROOT = Path(__file__).resolve().parents[2]
SAMPLE = ROOT / "configs" / "jobs" / "kiln_room_floor.toml"
sys.path.insert(0, str(ROOT / "sample_scans"))
import kiln_room  # noqa: E402
import make  # noqa: E402

PHONE = ErrorModel(0.0, 0.0013, 0.1, 0.004, 0.4, "made up", "made up", "made up")
JOB = """
title = "Bad input"
[scan]
files = ["floor.xyz"]
scanner = "terrestrial"
[floor]
straightedge = "1 m"
gap = "3 mm"
[surface]
cell = "20 mm"
"""


def run(job: Path, out: Path, *more: str) -> Result:
    return CliRunner().invoke(main, ["floor", str(job), "--out", str(out), *more])


@pytest.fixture(scope="module")
def sample(tmp_path_factory: pytest.TempPathFactory) -> tuple[Result, Path, dict]:
    out = tmp_path_factory.mktemp("kiln_room")
    result = run(SAMPLE, out)
    return result, out, json.loads((out / "floor.json").read_text())


def test_sample_finds_what_the_room_was_made_with(sample: tuple[Result, Path, dict]) -> None:
    result, _, found = sample
    assert result.exit_code == 0, result.output
    assert found["schema"] == "crestcut.floor/1" and found["verdict"] == "does not meet"
    for made, names in ((kiln_room.HUMPS, "high"), ((kiln_room.HOLLOW,), "low")):
        spots = sorted((s for s in found[names] if s["area"] > 0.02), key=lambda s: s["x"])
        assert len(spots) == len(made)
        for spot, (x, y, _, _, tall) in zip(spots, made, strict=True):
            assert (spot["x"], spot["y"]) == pytest.approx((x, y), abs=0.08)
            assert abs(spot["stands"]) == pytest.approx(tall, abs=0.0009)
    x, y = np.meshgrid(np.arange(0.2, 6.2, 0.05), np.arange(0.2, 4.4, 0.05))
    true = worst_gap(kiln_room.floor(x, y), 0.05, 2.0)
    gap = found["figures"][0]
    # how often the interval holds the truth: test_floor_chance
    assert gap["estimate"] == pytest.approx(true, abs=0.001)
    assert gap["interval"][0] < gap["estimate"] < gap["interval"][1] < gap["interval"][0] + 0.003


def test_sample_cut_leaves_the_true_floor_flat(sample: tuple[Result, Path, dict]) -> None:
    # the depths, taken off the floor the scan was made from (and the hollow filled to its level), keep the
    # rule as
    # far as the scan's own error allows: it says so itself
    _, out, found = sample
    ply = (out / "depth_to_remove.ply").read_bytes()
    head, _, body = ply.partition(b"end_header\n")
    count = int(head.split(b"element vertex ")[1].split()[0])
    kind = np.dtype([("xyz", "<f8", 3), ("rgb", "u1", 3), ("depth", "<f4")])
    vertices = np.frombuffer(body[: count * kind.itemsize], kind)
    x, y, z = vertices["xyz"].T
    depth = vertices["depth"].astype(float)
    assert np.nanmax(depth) == pytest.approx(found["cut"]["deepest"], abs=1e-6)
    assert float(np.nansum(depth)) * 1e-4 == pytest.approx(found["cut"]["volume"], rel=0.02)
    known = ~np.isnan(depth)
    assert np.abs(z - kiln_room.floor(x, y))[known].mean() < 0.0006
    assert not known[(x > 4.1) & (x < 4.3) & (y > 2.8) & (y < 3.0)].any()  # the column is not measured
    grid = np.full((231, 321), np.nan)
    j, i = np.rint(y / 0.02).astype(int), np.rint(x / 0.02).astype(int)
    even = known & (np.abs(x / 0.02 - i) < 0.1) & (np.abs(y / 0.02 - j) < 0.1)
    grid[j[even], i[even]] = (kiln_room.floor(x, y) - depth)[even]
    general = -kiln_room.FALL * np.arange(321) * 0.02
    low = next(s for s in found["low"] if s["area"] > 0.02)
    filled = np.fmax(grid, np.where(np.isnan(grid), np.nan, general + low["level"] - 0.0002))
    assert worst_gap(filled, 0.02, 2.0) < 0.003 + 0.0011
    assert worst_gap(grid, 0.02, 2.0) > 0.005  # the hollow is still there: it is to be filled, not ground


def test_sample_files_are_whole_and_its_guides_are_those_of_its_method(
    sample: tuple[Result, Path, dict],
) -> None:
    result, out, found = sample
    names = {p.name for p in out.iterdir()}
    made = {"depth_to_remove.ply", "floor.json", "floor_plan.png", "floor_sheets.pdf"}
    assert names == {*made, "manifest.json"}
    sets = json.loads((out / "manifest.json").read_text())["sets"]
    assert list(sets) == ["floor"] and {row["file"] for row in sets["floor"]["files"]} == made
    with Image.open(out / "floor_plan.png") as picture:
        assert picture.text["Release"] == "ok" and picture.text["Dated"] == "not dated"  # type: ignore[attr-defined]
    assert b"/Subject (release: ok; dated: not dated)" in (out / "floor_sheets.pdf").read_bytes()
    assert b"comment release: ok\n" in (out / "depth_to_remove.ply").read_bytes()[:1500]
    assert found["dated"] is None and found["title"] == "Kiln room floor"
    assert found["release"]["state"] == "ok" and [j["spot"] for j in found["jigs"]] == ["H1", "H2"]
    dots = [d for spot in found["jigs"] for d in spot["dots"]]  # a small cut: no block
    assert [d["name"] for d in dots] == [f"D{k}" for k in range(1, len(dots) + 1)] and len(dots) > 8
    deepest = {s["name"]: s["deepest"] for s in found["high"]}
    for spot in found["jigs"]:
        assert "blocks" not in spot and spot["why"].startswith("dots and contours")
        assert spot["dots"][0]["depth"] == pytest.approx(deepest[spot["spot"]], abs=1e-9)
    words = "Both or neither: Grinding alone leaves the worst place at 6.0 mm"
    assert words in result.output and not found["cut"]["grinding_alone_helps"]
    assert "To fill, not to grind: 1 low spot" in result.output and "maximal" in result.output


def test_a_floor_by_board_prints_its_datum_spots_numbered_through(tmp_path: Path) -> None:
    text = (ROOT / "configs" / "jobs" / "kiln_room_floor.toml").read_text()
    text = text.replace("../../sample_scans", str(ROOT / "sample_scans"))
    work = '[work]\nmethod = "board and blocks"\ntools = ["hand_grinder_blade", "hand_grinder_cup"]\n'
    (tmp_path / "job.toml").write_text(f"{text}\n{work}")
    assert run(tmp_path / "job.toml", tmp_path / "out").exit_code == 0
    found = json.loads((tmp_path / "out" / "floor.json").read_text())
    names = [b["name"] for jig in found["jigs"] for b in jig["blocks"]]
    assert names == [f"F{k}" for k in range(1, len(names) + 1)] and len(found["jigs"]) == 2
    for jig in found["jigs"]:
        # blocks exactly as high as the cutter reaches (and the cup takes) on the level wanted, less where the
        # spot stands higher; the floor round a spot lies under its level, so they are higher
        below = jig["reach"] + jig["smoothing"]
        assert len(jig["blocks"]) >= 4 and jig["pairs"] and jig["lifts"] >= 1 and "dots" not in jig
        assert all(below - 0.001 < b["block"] < below + 0.0035 for b in jig["blocks"])


def test_the_sample_is_what_its_script_makes_and_stays_small() -> None:
    path = ROOT / "sample_scans" / "kiln_room.laz"
    assert path.stat().st_size < 4 * 2**20
    made = kiln_room.scan(4, make.ROOM_RAYS).xyz
    kept = laspy.read(path).xyz
    assert kept.shape == made.shape and np.abs(kept - made).max() < 6e-5  # 0.1 mm steps
    truth = json.loads((ROOT / "sample_scans" / "truth.json").read_text())["kiln_room"]
    assert truth == json.loads(json.dumps(make.truth()["kiln_room"]))


def test_what_to_measure_first_can_be_written_down_and_narrows_the_answer(tmp_path: Path) -> None:
    # a phone's scan of a floor that just keeps to its rule is open; the straightedge it asks for narrows it
    write_scan(tmp_path / "floor.xyz", (1.5, 1.2, 0.5, 0.0028), warp=PHONE)
    text = JOB.replace("terrestrial", "phone")
    (tmp_path / "job.toml").write_text(text)
    bare = run(tmp_path / "job.toml", tmp_path / "bare")
    first = json.loads((tmp_path / "bare" / "floor.json").read_text())
    assert first["verdict"] == "cannot tell" and "Measure first: a straightedge" in bare.output
    readings = "".join(reading(first["laid"], turn) for turn in (0.0, 0.6, -0.6, 1.57))
    (tmp_path / "hand.toml").write_text(text + readings)
    told = json.loads(run(tmp_path / "hand.toml", tmp_path / "told", "--json").stdout)
    assert told["hand_readings"] == 4 and not told["contradictions"]
    wide = [f["figures"][0]["interval"][1] - f["figures"][0]["interval"][0] for f in (first, told)]
    assert wide[1] < wide[0]


def reading(laid: dict, turn: float) -> str:
    """A true straightedge on 20 mm blocks through the place of the largest gap, as the job file takes it."""
    at, way = np.array(laid["at"]["point"]), np.subtract(laid["second"]["point"], laid["first"]["point"])
    way = way / np.hypot(*way)
    c, s = np.cos(turn), np.sin(turn)
    ends = at + np.outer([-0.45, 0.45], [c * way[0] - s * way[1], s * way[0] + c * way[1]])
    ends = np.clip(ends, 0.1, (2.85, 2.35))
    z = [float(0.003 * x + cap(np.array(x), np.array(y), (1.5, 1.2, 0.5, 0.0028))) for x, y in (*ends, at)]
    along, long = np.hypot(*(at - ends[0])), np.hypot(*(ends[1] - ends[0]))
    down = 0.020 + z[0] + (z[1] - z[0]) * along / long - z[2]
    return (
        f"[[string]]\na = {ends[0].tolist()}\nb = {ends[1].tolist()}\nat = {float(along)}\nblocks = 0.02\n"
        f'down = {down}\nwithin = "0.5 mm"\nplaced = "10 mm"\n'
    )


def test_stamped_sheets_hold_nothing_to_grind_from(tmp_path: Path) -> None:
    write_scan(tmp_path / "floor.xyz", (1.5, 1.2, 0.5, 0.009))
    (tmp_path / "job.toml").write_text(JOB)
    result = run(tmp_path / "job.toml", tmp_path / "out", "--json")
    found = json.loads(result.stdout)
    assert result.exit_code == 0 and found["release"]["state"] == "not for cutting"
    assert found["jigs"] == [] and found["high"] and "post-tensioned" in str(found["release"]["reasons"])
    again = run(tmp_path / "job.toml", tmp_path / "again", "--json")
    less = [{k: v for k, v in json.loads(r.stdout).items() if k != "seconds"} for r in (result, again)]
    assert less[0] == less[1]
    for name in ("depth_to_remove.ply", "floor_plan.png", "floor_sheets.pdf"):
        assert (tmp_path / "out" / name).read_bytes() == (tmp_path / "again" / name).read_bytes()


def test_a_cut_that_is_not_enough_leaves_with_three(tmp_path: Path) -> None:
    write_scan(tmp_path / "floor.xyz", (1.5, 1.2, 0.5, 0.012))
    (tmp_path / "job.toml").write_text(JOB + '[cut]\ndeepest = "2 mm"\n')
    result = run(tmp_path / "job.toml", tmp_path / "out")
    assert result.exit_code == 3 and "NOT ENOUGH" in result.output
    assert (tmp_path / "out" / "floor.json").exists()


CASES = {
    "nothing asked": (JOB.replace('straightedge = "1 m"\ngap = "3 mm"', ""), "nothing is asked"),
    "no floor table": (JOB.replace('[floor]\nstraightedge = "1 m"\ngap = "3 mm"', ""), r"no \[floor\]"),
    "gap alone": (JOB.replace('straightedge = "1 m"\n', ""), "go together"),
    "no unit": (JOB.replace('"3 mm"', '"3"'), "no unit"),
    "unknown class": (
        JOB.replace('straightedge = "1 m"\ngap = "3 mm"', 'class = "BS 8204 SR9"'),
        "did you mean",
    ),
    "unknown key": (JOB.replace("gap =", "gab ="), "gap"),
    "unknown reference": (JOB.replace("gap =", 'reference = "laser"\ngap ='), "laser"),
    "datum without level": (JOB.replace("gap =", "datum = [1, 1]\ngap ="), "datum"),
    "a mark nobody put": (
        JOB.replace("gap =", 'area = ["A", [2, 0], [2, 2]]\ngap ='),
        'no mark is named "A"',
    ),
    "huge gap": (JOB.replace('"3 mm"', '"3 m"'), "deeper|outside"),
}


@pytest.mark.parametrize("name", CASES)
def test_a_fault_in_the_file_is_one_line(name: str, tmp_path: Path) -> None:
    text, words = CASES[name]
    (tmp_path / "job.toml").write_text(text)
    error = refusal(load_floor_job, tmp_path / "job.toml")
    assert re.search(words, str(error)), str(error)


SCANNED = {
    "area off the scan": (
        JOB.replace("gap =", "area = [[20, 20], [22, 20], [22, 22]]\ngap ="),
        "outside the scan",
    ),
    "area hardly scanned": (
        JOB.replace("gap =", "area = [[1, 1], [9, 1], [9, 9], [1, 9]]\ngap ="),
        "% of the area",
    ),
    "too narrow": (
        JOB.replace("gap =", "area = [[1, 1], [1.2, 1], [1.2, 1.3], [1, 1.3]]\ngap ="),
        "too small",
    ),
    "straightedge too long": (JOB.replace('"1 m"', '"5 m"'), "finds no room"),
    "too few readings": (JOB.replace("gap =", "ff = 25\ngap ="), "12 readings"),
    "photogrammetry without scale": (JOB.replace("terrestrial", "photogrammetry"), "no scale"),
    "no such scan": (JOB.replace("floor.xyz", "flor.xyz"), "flor.xyz"),
}


@pytest.mark.parametrize("name", SCANNED)
def test_a_floor_that_does_not_serve_is_one_line_and_nothing_written(name: str, tmp_path: Path) -> None:
    text, words = SCANNED[name]
    write_scan(tmp_path / "floor.xyz")
    (tmp_path / "job.toml").write_text(text)
    result = run(tmp_path / "job.toml", tmp_path / "out")
    last = [line for line in result.stderr.splitlines() if not line.startswith("  ")]
    assert result.exit_code == 2 and len(last) == 1 and words in last[0], result.output
    assert not (tmp_path / "out").exists() and sorted(p.name for p in tmp_path.iterdir()) == [
        "floor.xyz",
        "job.toml",
    ]


@pytest.mark.parametrize(
    ("table", "said"),
    [('blocks = ["0.5 mm"]', "no 4 of them make a block"), ('tools = ["mine"]', "guard or shroud is off")],
)
def test_a_floors_tools_and_blocks_are_checked_before_anything_is_read(
    tmp_path: Path, table: str, said: str
) -> None:
    text = (ROOT / "configs/tools/hand_grinder_cup.toml").read_text().replace("guard = true", "guard = false")
    (tmp_path / "mine.toml").write_text(text)
    (tmp_path / "job.toml").write_text(f"{JOB}\n[work]\n{table}\n")  # there is no scan
    result = run(tmp_path / "job.toml", tmp_path / "out")
    assert result.exit_code == 2 and said in result.stderr and not (tmp_path / "out").exists()
