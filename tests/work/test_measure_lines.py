"""What the measure-first sheet has one type into the job file is taken there, and says the same."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest

from crestcut.base.grid import GridFrame, HeightGrid
from crestcut.job.load import load_job
from crestcut.job.records import Job, PlanPoint
from crestcut.measure_next.advice import Advice
from crestcut.scan.records import Frame
from crestcut.work.asked import row_of
from crestcut.work.measure_first import measures

CONFIGS = Path(__file__).resolve().parents[2] / "configs"
SAMPLE = CONFIGS / "jobs" / "courtyard_apron.toml"
FLAT = HeightGrid(GridFrame((0.0, 0.0), 0.0, 0.1, (60, 120)), np.zeros((60, 120)))
WHEELS = [[6.14, 2.75], [6.14, 1.25], [3.52, 2.75], [3.52, 1.25]]


def _job_with(item: dict[str, object], reading: str, folder: Path) -> Job:
    (one,) = measures([item], {}, FLAT, (0.0, 0.0))
    typed = "\n".join(one.write).replace("   or   touched = true", "").replace("...", reading)
    text = SAMPLE.read_text(encoding="utf-8")
    text = text.replace("../../sample_scans", (CONFIGS.parent / "sample_scans").as_posix())
    path = folder / "job.toml"
    path.write_text(
        text.replace("../vehicles", (CONFIGS / "vehicles").as_posix()) + f"\n{typed}\n", encoding="utf-8"
    )
    return load_job(path)


def test_felt_gap(tmp_path: Path) -> None:
    how = "stand the vehicle there and feel the gap under the battery tray with a stack of cards"
    item = {
        "kind": "felt gap", "how": how, "part": "battery tray", "where_xy": [*WHEELS, [4.83, 1.64]],
        "expect_m": 0.003,
    }  # fmt: skip
    (witness,) = _job_with(item, "4.5", tmp_path).witnesses
    assert witness.part == "battery tray"
    assert isinstance(witness.front_axle, PlanPoint)
    assert (witness.front_axle.x, witness.front_axle.y) == pytest.approx((6.14, 2.0))
    assert witness.gap == pytest.approx(0.0045)


def test_felt_gap_on_boards(tmp_path: Path) -> None:
    """The line that is typed carries the boards; the sheet says how long each is, and never asks to stack."""
    boards = {
        "name": "1x (3/4 in)", "thickness": 0.01905, "before": 0.6, "beyond": 0.35, "backwards": False,
        "dry_only": True,
    }  # fmt: skip
    item = {
        "kind": "felt gap", "how": "", "part": "battery tray", "where_xy": [*WHEELS, [4.83, 1.64]],
        "expect_m": 0.015, "boards": boards,
    }  # fmt: skip
    (witness,) = _job_with(item, "15.5", tmp_path).witnesses
    assert witness.raised == pytest.approx((0.01905,) * 4)
    assert witness.gap == pytest.approx(0.0155) and witness.touched is None
    (one,) = measures([item], {}, FLAT, (0.0, 0.0))
    said = " ".join(one.cautions)
    for words in ("600 mm", "350 mm", "never one on another", "uphill", "Dry ground only", "a string"):
        assert words in said


def test_string_at_a_place(tmp_path: Path) -> None:
    item = {
        "kind": "string", "how": "stretch a string", "placed_m": 0.01, "seek_m": [],
        "where_xy": [[6.0, 1.3], [3.5, 1.3], [4.8, 1.3]], "expect_m": 0.04,
        "blocks": "160.0 mm (6 5/16 in)", "blocks_m": 0.16,
    }  # fmt: skip
    (string,) = _job_with(item, "41", tmp_path).strings
    assert (string.at, string.between) == (pytest.approx(1.2), None)
    assert (string.blocks, string.down, string.placed) == pytest.approx((0.16, 0.041, 0.01))


def test_crossbar_is_read_in_both_halves(tmp_path: Path) -> None:
    item = {
        "kind": "string", "how": "measure twice", "seek_m": [[0.18, 0.74], [0.74, 1.30]],
        "where_xy": [[4.9, 2.9], [4.9, 1.42], [4.9, 2.5]], "expect_m": 0.1,
        "blocks_m": 0.1,
    }  # fmt: skip
    first, second = _job_with(item, "98", tmp_path).strings
    assert first.at is None and second.at is None  # the least of a stretch, not a place
    assert first.between == pytest.approx((0.18, 0.74))
    assert second.between == pytest.approx((0.74, 1.30))


def test_a_string_that_is_asked_for_is_written_as_its_words_say() -> None:
    """From the advice of a real ride to the line for the file, through no sentence."""
    where = ((1.0, 0.0), (3.0, 0.0), (2.0, 0.0))
    asked = Advice("string", where, 0.07, 2.0, "", blocks=0.1, seek=((0.7, 1.3),))
    frame = Frame(np.ones(3), np.eye(3), np.zeros(3), "m", "z")
    (one,) = measures([row_of(asked, frame, {}, False)], {}, FLAT, (0.0, 0.0))
    assert (
        'blocks = "100 mm"' in one.write and 'placed = "10 mm"' in one.write and 'at = "least"' in one.write
    )
