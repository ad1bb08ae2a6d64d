"""A mesh carries its errors in its own heights: what is said of a gap over one, held to the slab it shows."""

from __future__ import annotations

import sys
from pathlib import Path

import numpy as np
import pytest

from crestcut.chance.assess import chance_of
from crestcut.chance.draws import Draws, draw_clearances
from crestcut.chance.records import Chance
from crestcut.chance.rounded import crest_cut
from crestcut.contact.clearance.sweep import sweep
from crestcut.contact.path.line import travel_line, window
from crestcut.contact.records import Clearance, Passage
from crestcut.contact.stand.ride import ride
from crestcut.job.records import PlanPoint, ScanChoice, Travel, Wanted
from crestcut.scan.load import read_scan
from crestcut.scan.records import Scan
from crestcut.terrain.build import build_surface
from crestcut.terrain.slab.behind import slab_behind
from crestcut.vehicle.load import load_vehicle
from crestcut.vehicle.records import AS_MEASURED
from scenes import crest, scene, surface_of

ROOT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT / "sample_scans"))
import courtyard  # noqa: E402

CAR = load_vehicle(ROOT / "configs/vehicles/flat_floor_hatchback.toml")
LINES = (((1.6, 2.0), (9.9, 2.0)), ((1.334, 2.712), (9.814, 2.712)))
Ends = tuple[tuple[float, float], tuple[float, float]]


def true_gap(ends: Ends) -> float:
    """Over the slab the samples were made from, m."""
    travel = Travel(tuple(PlanPoint(*e) for e in ends))
    line = travel_line(list(ends), CAR, travel, 0.01)
    surface = surface_of(courtyard.slab, window(line, CAR, travel, 0.01))
    worst = sweep(CAR, surface, ride(CAR, surface, line, travel, (AS_MEASURED,))).worst
    assert worst is not None
    return worst.gap


def said(scan: Scan, ends: Ends) -> tuple[Clearance, Draws, Chance]:
    travel = Travel(tuple(PlanPoint(*e) for e in ends))
    local = [(x - float(scan.frame.shift[0]), y - float(scan.frame.shift[1])) for x, y in ends]
    line = travel_line(local, CAR, travel, 0.01)
    fitted = build_surface(scan, window(line, CAR, travel, 0.01))
    surface = slab_behind(fitted, fitted.error)
    rode = ride(CAR, surface, line, travel, (AS_MEASURED,))
    swept = sweep(CAR, surface, rode)
    passage = Passage(CAR, surface, rode, swept)
    drawn = draw_clearances(passage)
    assert drawn is not None
    return swept, drawn, chance_of(drawn, passage, Wanted())


@pytest.mark.parametrize("ends", LINES)
def test_the_sample_mesh_holds_the_truth_and_says_what_it_may_have_cut(ends: Ends) -> None:
    """What its triangles may have cut off the crest is taken off the gap, and nothing else moves it far from
    the sweep of the mean slab."""
    truth = true_gap(ends)
    swept, drawn, chance = said(read_scan(ScanChoice((ROOT / "sample_scans/apron_mesh_y_up.glb",))), ends)
    assert swept.worst is not None and drawn.rounded > 0.002
    assert chance.interval[0] < truth < chance.interval[1]
    assert swept.worst.gap - drawn.rounded - 0.001 < chance.least_clearance < swept.worst.gap
    assert any("triangles" in reason for reason in chance.reasons)


def test_a_mesh_without_error_is_hardly_corrected(tmp_path: Path) -> None:
    """The slab itself in 60 mm triangles: the estimate stays within 2 mm of the truth."""
    import trimesh

    x, y = np.meshgrid(np.arange(0.0, 12.0, 0.06), np.arange(0.4, 4.9, 0.06))
    number = np.arange(x.size).reshape(x.shape)
    a, b, c, d = number[:-1, :-1], number[:-1, 1:], number[1:, :-1], number[1:, 1:]
    faces = np.concatenate([np.stack(t, -1).reshape(-1, 3) for t in ((a, b, d), (a, d, c))])
    vertices = np.column_stack([x.ravel(), y.ravel(), courtyard.slab(x, y).ravel()])
    trimesh.Trimesh(vertices, faces, process=False).export(tmp_path / "slab.ply")
    truth = true_gap(LINES[0])
    _, _, chance = said(read_scan(ScanChoice((tmp_path / "slab.ply",))), LINES[0])
    assert chance.interval[0] < truth < chance.interval[1]
    assert chance.least_clearance == pytest.approx(truth, abs=0.002)


def test_a_chord_across_a_fold_is_what_may_be_cut() -> None:
    """16 % change of slope, 60 mm edges: k t / 4 = 2.4 mm; nothing from points, nothing in a dip."""
    hump = scene(crest(0.08, 0.0))
    height = hump.surface.height
    assert crest_cut(height, hump.before, 0.06) == pytest.approx(0.16 * 0.06 / 4, rel=0.1)
    assert crest_cut(height, hump.before, 0.0) == 0.0
    assert crest_cut(height.like(-height.values), hump.before, 0.06) == 0.0
