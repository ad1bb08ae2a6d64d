"""The sample scans against the courtyard they were made from."""

from __future__ import annotations

import json
import math
import sys
from pathlib import Path

import numpy as np
import pytest
from scipy.spatial.transform import Rotation

from crestcut.contact.clearance.sweep import sweep
from crestcut.contact.path.line import travel_line, window
from crestcut.contact.stand.ride import ride
from crestcut.job.load import load_job
from crestcut.job.records import PlanPoint, ScanChoice, Travel
from crestcut.scan.load import read_scan
from crestcut.vehicle.load import load_vehicle
from crestcut.vehicle.records import AS_MEASURED
from scenes import surface_of

ROOT = Path(__file__).resolve().parents[1]
SAMPLES = ROOT / "sample_scans"
sys.path.insert(0, str(SAMPLES))
import courtyard  # noqa: E402
import make  # noqa: E402
import surveyed  # noqa: E402
from walk import WARP, WARP_HALF, Field, walk  # noqa: E402

NAMES = ("apron.laz", "apron_second_walk.laz", "apron_mesh_y_up.glb")


def test_same_seed_same_bytes(tmp_path: Path) -> None:
    for folder in (tmp_path / "a", tmp_path / "b"):
        folder.mkdir()
        scan = walk(5, 1500)
        make.write_laz(scan, folder / "s.laz")
        make.write_mesh(scan, folder / "s.glb", edge=0.3)
    for name in ("s.laz", "s.glb"):
        assert (tmp_path / "a" / name).read_bytes() == (tmp_path / "b" / name).read_bytes()
    assert not np.array_equal(walk(6, 1500).xyz[:100], scan.xyz[:100])


def test_files_stay_small_and_truth_is_what_made_them() -> None:
    assert all((SAMPLES / name).stat().st_size < 4 * 2**20 for name in NAMES)
    assert json.loads((SAMPLES / "truth.json").read_text()) == json.loads(json.dumps(make.truth()))


@pytest.mark.parametrize("name", NAMES)
def test_the_slab_is_in_the_scan(name: str) -> None:
    scan = read_scan(ScanChoice((SAMPLES / name,)))
    assert scan.frame.unit == "m" and scan.frame.up == ("y" if name.endswith("glb") else "z")
    xyz = scan.points + scan.frame.shift
    if "second" in name:
        c, s = math.cos(make.SECOND.yaw), math.sin(make.SECOND.yaw)
        xyz = (xyz - make.SECOND.move) @ np.array([[c, -s, 0], [s, c, 0], [0, 0, 1.0]])
    on = (xyz[:, 0] > 1.6) & (xyz[:, 0] < 15.5) & (np.abs(xyz[:, 1] - 2.0) < 1.2)
    off = xyz[on, 2] - courtyard.slab(xyz[on, 0], xyz[on, 1])
    assert abs(np.median(off)) < 0.0015 and 0.004 < np.std(off) < 0.009
    assert len(off) / (13.9 * 2.4) > 2000  # points per m2 under the lines of travel


def test_the_warp_is_matern_three_halves() -> None:
    """Covariance of many fields at planted distances: 1, one half at WARP_HALF, (1 + x) exp(-x) beyond."""
    fields = [Field(np.random.default_rng(seed), WARP_HALF) for seed in range(6)]
    at = np.mgrid[-7.0:30.0:0.45, -5.0:12.0:0.45].reshape(2, -1)

    def covariance(distance: float) -> float:
        pairs = [field(*at) * field(at[0] + distance, at[1]) for field in fields]
        return float(np.mean(pairs))

    for distance in (0.0, WARP_HALF, 2 * WARP_HALF):
        x = 1.6783469900166605 * distance / WARP_HALF
        assert covariance(distance) == pytest.approx((1 + x) * math.exp(-x), abs=0.05)
    assert WARP == 0.005


def least(job_name: str, wander: float | None = None) -> dict[str, float]:
    """Least gap of each zone on the true slab, metres."""
    job = load_job(ROOT / "configs/jobs" / job_name)
    car = load_vehicle(job.vehicle.file)
    travel = job.travel if wander is None else Travel(job.travel.line, wander=wander, heading=0.0)
    ends = [(p.x, p.y) for p in travel.line if isinstance(p, PlanPoint)]
    line = travel_line(ends, car, travel, 0.01)
    surface = surface_of(courtyard.slab, window(line, car, travel, 0.01))
    rode = ride(car, surface, line, travel, (AS_MEASURED,))
    return {zone: contact.gap for zone, contact in sweep(car, surface, rode).least.items()}


def test_what_the_courtyard_does_to_its_vehicles() -> None:
    """The crest catches the tray by 5 mm, the gutter the bumper by 12; the trolley clears."""
    crest = least("courtyard_apron.toml")
    assert -0.0055 < crest["belly"] < -0.0045 and crest["nose"] > 0.1 and crest["tail"] > 0.1
    gutter = least("courtyard_gutter.toml")
    assert -0.016 < gutter["nose"] < -0.006 and gutter["belly"] > 0.04
    trolley = least("kiln_trolley.toml")
    assert trolley["belly"] > 0.010


def test_the_surveyed_apron_lies_where_its_control_was_made() -> None:
    """The job's tables are the script's; what is found is what they were made with, within 3 sd."""
    path = ROOT / "configs/jobs/courtyard_apron_surveyed.toml"
    assert path.read_text(encoding="utf-8").endswith(surveyed.tables())
    scan = read_scan(load_job(path).scan)
    tie = scan.tie
    assert tie is not None and tie.stated and tie.fitted.known and not tie.fitted.suspect.named
    c, s = np.cos(surveyed.TURN), np.sin(surveyed.TURN)
    turn = np.array([[c, -s, 0.0], [s, c, 0.0], [0.0, 0.0, 1.0]])
    small = Rotation.from_matrix(tie.fitted.movement.rotation @ turn.T).as_rotvec()
    sd = np.sqrt(tie.fitted.covariance.diagonal())
    assert (np.abs(small) < 3 * sd[:3]).all()
    middle = tie.fitted.movement.middle
    seen = read_scan(ScanChoice((SAMPLES / "apron.laz",))).frame.to_own(middle)
    there = turn @ (seen * [surveyed.GRID, surveyed.GRID, 1.0])
    there += [surveyed.EAST, surveyed.NORTH, surveyed.UP]
    found = scan.frame.to_own(tie.fitted.movement.at_middle)
    assert (np.abs(found - there) < 3 * sd[3:6]).all()
    assert scan.frame.grid == pytest.approx(surveyed.GRID, abs=1e-6)
