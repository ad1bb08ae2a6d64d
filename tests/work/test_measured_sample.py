"""The sample job whose depths are released: its hand readings are what the made-up courtyard would give."""

from __future__ import annotations

import sys
from pathlib import Path

import numpy as np
import pytest

from crestcut.contact.clearance.sweep import hard_parts, sweep
from crestcut.contact.path.line import travel_line, window
from crestcut.contact.stand.ride import ride
from crestcut.job.load import load_job
from crestcut.job.records import PlanPoint, Travel
from crestcut.vehicle.load import load_vehicle
from crestcut.vehicle.records import AS_MEASURED

ROOT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT / "sample_scans"))
sys.path.insert(0, str(ROOT / "tests"))
import courtyard  # noqa: E402

from scenes import surface_of  # noqa: E402


def test_strings_and_witnesses_are_the_courtyards() -> None:
    job = load_job(ROOT / "configs/jobs/courtyard_apron_measured.toml")
    for string in job.strings:
        assert isinstance(string.a, PlanPoint) and isinstance(string.b, PlanPoint)
        ends = (string.a.x, string.a.y), (string.b.x, string.b.y)
        true = courtyard.string_down(*ends, string.blocks, string.at)
        assert string.down == pytest.approx(true, abs=0.0005)
    car = load_vehicle(job.vehicle.file)
    travel = Travel(job.travel.line, wander=0.0, heading=0.0)
    line = travel_line([(p.x, p.y) for p in travel.line if isinstance(p, PlanPoint)], car, travel, 0.01)
    surface = surface_of(courtyard.slab, window(line, car, travel, 0.01))
    rode = ride(car, surface, line, travel, (AS_MEASURED,))
    gaps = sweep(car, surface, rode).pair_gap
    assert gaps is not None and len(job.witnesses) == 3
    tray = [p.name for p in hard_parts(car)].index("battery tray")
    for witness in job.witnesses:
        assert isinstance(witness.front_axle, PlanPoint) and witness.part == "battery tray"
        gap = float(
            np.interp(witness.front_axle.x - float(line.xy[0, 0]), rode.poses[0].station, gaps[:, tray])
        )
        if witness.touched:
            assert gap < 0
        else:
            assert witness.gap == pytest.approx(gap, abs=0.0005)
