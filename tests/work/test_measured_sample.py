"""The sample job whose depths are released: its hand readings, before the work and after it, are what the
made-up courtyard would give."""

from __future__ import annotations

import sys
from pathlib import Path

import numpy as np
import pytest

from crestcut.job.load import load_job
from crestcut.job.records import PlanPoint

ROOT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT / "sample_scans"))
import courtyard  # noqa: E402
import hand_cut  # noqa: E402
import readings  # noqa: E402


def test_the_job_ends_with_what_the_script_writes_for_it() -> None:
    """Byte for byte, from the places in the job and the depths in apron_cut.csv; no run."""
    kept, made = readings.MEASURED.read_text(encoding="utf-8").split(readings.START)
    assert readings.START + made == readings.written_by(load_job(readings.MEASURED))
    assert "[[string]]" not in kept and "witness]]" not in kept


def test_readings_are_the_courtyards() -> None:
    job = load_job(readings.MEASURED)
    for string in job.strings:
        assert isinstance(string.a, PlanPoint) and isinstance(string.b, PlanPoint)
        ends = (string.a.x, string.a.y), (string.b.x, string.b.y)
        true = courtyard.string_down(*ends, string.blocks, string.at)
        assert string.down == pytest.approx(true, abs=0.0005)
    assert job.after is not None and len(job.witnesses) == 3 and len(job.after.witnesses) >= 3
    for witnesses, slab in (
        (job.witnesses, readings.Slab()), (job.after.witnesses, readings.Slab(hand_cut.removed))
    ):  # fmt: skip
        for witness in witnesses:
            true = slab.expected(witness, slab.surface)
            # cards to half a millimetre, the place to 5 mm on slopes of 17 %, a sheet's thickness
            assert witness.gap == pytest.approx(true, abs=4 * np.hypot(0.0005, 0.17 * 0.005))
            assert witness.raised is None or len(set(witness.raised)) == 1
