"""Scenes that lie, through the whole job: none may be told as clear, and each is named with its reason."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path

import numpy as np
import pytest
from click.testing import CliRunner

import lying_scenes as scenes
from crestcut.apps.cli import main
from crestcut.base.errors import CrestcutError
from crestcut.base.grid import FloatArray
from crestcut.chance.records import Doubt
from crestcut.report.view.result import result_document
from crestcut.report.words.summary import summary_lines
from crestcut.study.making import run_job
from crestcut.study.record import Study


def run(folder: Path, points: FloatArray, **job: object) -> Study:
    scan = scenes.write_cloud(points, folder / "scan.laz")
    return run_job(scenes.write_job(folder, scan, **job))  # type: ignore[arg-type]


def doubts(done: Study) -> list[Doubt]:
    return [finding.doubt for finding in done.report.doubts]


def with_box(x: float, y: float, size: tuple[float, float, float], n: int, low: float = 0.0) -> FloatArray:
    """The slab with a box on it, nothing seen of the slab beneath unless it hangs."""
    slab, (wide, deep, high) = scenes.cloud(0), size
    box = scenes.box(
        np.random.default_rng(7), (x - wide / 2, y - deep / 2, low), (x + wide / 2, y + deep / 2, high), n
    )
    box[:, 2] += scenes.slab(box[:, 0], box[:, 1])
    if low == 0.0:
        slab = slab[(np.abs(slab[:, 0] - x) > wide / 2) | (np.abs(slab[:, 1] - y) > deep / 2)]
    return scenes.in_order(np.concatenate([slab, box]))


def test_the_slab_alone_touches_and_a_higher_vehicle_clears(tmp_path: Path) -> None:
    """Without a lie in the scan nothing is doubted: the scenes below differ by their lie alone."""
    assert run(tmp_path, scenes.in_order(scenes.cloud(0))).report.verdict != "clears"
    done = run(tmp_path, scenes.in_order(scenes.cloud(0)), belly=0.150)
    assert done.report.verdict == "clears" and done.report.doubts == ()
    assert done.report.least_clearance == pytest.approx(0.0275, abs=0.003)


@pytest.mark.parametrize("share", [1.0, 2.0])
def test_a_second_layer_at_the_crest_alone_clears_nothing(tmp_path: Path, share: float) -> None:
    """Half of the points, or two thirds, lie 15 mm lower there, and the fitted ground with them."""
    done = run(tmp_path, scenes.second_layer(0, share=share), belly=0.125)
    assert done.report.verdict == "cannot tell" and Doubt.TWICE in doubts(done)
    found = done.report.doubts[0]
    assert found.size == pytest.approx(0.015, abs=0.003)
    assert found.xy[0] == pytest.approx(scenes.CREST, abs=0.1)
    said = "\n".join(summary_lines(done.report))
    assert said.startswith("CANNOT TELL: the ground under its path is there twice")
    assert done.report.options == () and done.release.state != "ok"


def test_a_second_layer_40_mm_over_the_crest_clears_nothing(tmp_path: Path) -> None:
    again = scenes.second_layer(0, lower=-0.040)
    assert run(tmp_path, again, belly=0.150).report.verdict == "cannot tell"


@pytest.mark.parametrize("density", [3000.0, 1000.0])
def test_a_person_walking_through_is_no_gap_and_no_noise(tmp_path: Path, density: float) -> None:
    """20 places of 4,000 points, four times as many as there are of a thin scan's slab."""
    points = scenes.walker(0, density=density)
    low = run(tmp_path, points, belly=0.088).report
    assert low.verdict == "touches" and low.surface.error.white < 0.004
    assert low.least_clearance < 0
    done = run(tmp_path, points, belly=0.150)
    assert done.report.verdict == "cannot tell"
    assert done.report.least_clearance < 0.0275 + 0.003, "the truth, and what the noise may add"
    if density > 1000:  # in the thin scan the slab under the person counts as not measured
        assert set(doubts(done)) == {Doubt.STANDS}
        assert done.report.doubts[0].size == pytest.approx(1.72, abs=0.05)
        said = summary_lines(done.report)
        assert any(line.startswith("Next: move what stands about x ") for line in said)


def test_a_lawn_gets_no_verdict_on_a_slab(tmp_path: Path) -> None:
    done = run(tmp_path, scenes.lawn(0), belly=0.200)
    assert done.report.verdict == "cannot tell" and doubts(done)[0] is Doubt.NOT_SLAB
    assert not done.report.surface.slab[done.report.before.gap.measured].mean() > 0.2
    low = run(tmp_path, scenes.lawn(0), belly=0.080)
    assert low.report.verdict == "cannot tell", "no verdict at all, not even 'touches'"
    before = result_document(done.report)["before"]
    assert isinstance(before, dict)
    assert before["chance_of_contact"] is None and before["doubts"][0]["kind"] == "not a slab"


def test_a_car_parked_on_the_line_is_named_and_the_ground_beneath_is_not_measured(tmp_path: Path) -> None:
    with pytest.raises(
        CrestcutError, match=r"no measured ground.*move what stands on it, 1\.4\d m high about"
    ):
        run(tmp_path, scenes.parked(0))


def test_a_car_beside_the_line_is_named_and_takes_no_verdict_away(tmp_path: Path) -> None:
    report = run(tmp_path, scenes.parked(0, y=1.75), belly=0.150).report
    assert report.verdict == "clears"
    assert any("1.41 m high stands on the ground" in note and "not measured" in note for note in report.notes)


@pytest.mark.parametrize(
    ("scene", "verdict"),
    [
        (lambda: with_box(3.5, 0.0, (0.25, 0.25, 0.25), 3000), "cannot tell"),  # a pot under the belly
        (lambda: with_box(3.5, 1.45, (0.45, 0.45, 0.47), 3000), "clears"),  # a chair beside the line
        (lambda: with_box(3.4, 0.1, (0.06, 0.06, 0.012), 20, low=0.010), "clears"),  # a leaf
        (lambda: with_box(3.5, 0.0, (1.0, 0.6, 0.9), 3000, low=0.5), "clears"),  # a branch over it
    ],
)  # fmt: skip
def test_only_what_is_in_the_way_of_the_underside_takes_the_verdict(
    tmp_path: Path, scene: Callable[[], FloatArray], verdict: str
) -> None:
    done = run(tmp_path, scene(), belly=0.150)
    assert done.report.verdict == verdict
    assert doubts(done) == ([Doubt.STANDS] if verdict == "cannot tell" else [])
    if verdict == "cannot tell":
        assert any(
            line.startswith("Next: move what stands about x 3.") for line in summary_lines(done.report)
        )


def mesh_job(folder: Path, **mesh: object) -> Path:
    scan = scenes.write_mesh(*scenes.mesh(0, **mesh), folder / "scan.ply")  # type: ignore[arg-type]
    return scenes.write_job(folder, scan)


def test_two_triangles_over_a_crest_that_nobody_measured_are_a_hole(tmp_path: Path) -> None:
    with pytest.raises(CrestcutError, match="no measured ground under the front left tyre"):
        run_job(mesh_job(tmp_path, hole=(3.0, 4.0)))
    done = run_job(mesh_job(tmp_path, hole=(3.1, 3.9), across=(-0.45, 0.45)))  # between the wheels
    worst = done.report.before.worst
    # the belly touches what was measured beside the hole: what the hole hides can only add to it. How sure
    # that is of two heights smoothed by their mesh lies about 95 %, on either side
    assert done.report.verdict != "clears" and done.report.least_clearance < 0
    assert done.report.before.unmeasured > 0
    assert worst is not None and 0.45 < abs(worst.xy[1])
    assert any("bridged by 2 triangles far larger" in note for note in done.report.notes)


def test_a_line_with_little_to_drive_is_said_by_the_run_too(tmp_path: Path) -> None:
    done = run(tmp_path, scenes.in_order(scenes.cloud(0)), line="[[2.0, 0.0], [5.33, 0.0]]")
    assert any(note.startswith("the line leaves only 730 mm") for note in done.report.notes)
    long = run(tmp_path, scenes.in_order(scenes.cloud(0)))
    assert not any("leaves only" in note for note in long.report.notes)


def test_look_names_what_the_run_names(tmp_path: Path) -> None:
    """Car, layers, lawn and bridged holes, in the words and in the typed keys of look.json."""

    def look(scan: Path) -> tuple[str, dict[str, object]]:
        args = ["look", str(scan), "--unit", "m", "--scanner", "terrestrial"]
        said, record = (CliRunner().invoke(main, [*args, *more]) for more in ([], ["--json"]))
        assert said.exit_code == 0 == record.exit_code, said.output
        return said.stdout, json.loads(record.stdout)

    said, found = look(scenes.write_cloud(scenes.parked(0), tmp_path / "car.laz"))
    assert "something 1.41 m high stands on the ground over 7." in said and len(found["things"]) == 1  # type: ignore[arg-type]
    assert found["area"] == pytest.approx(8.6 * 3.6 - 4.2 * 1.7, abs=0.5), "the car is not measured ground"
    said, found = look(scenes.write_cloud(scenes.second_layer(0), tmp_path / "twice.laz"))
    assert "the ground is there twice, 14 mm" in said and len(found["twice"]) == 1  # type: ignore[arg-type]
    said, found = look(scenes.write_cloud(scenes.lawn(0), tmp_path / "lawn.laz"))
    assert "grade        no use: no slab here" in said and found["roughness"] > 0.005  # type: ignore[operator]
    said, found = look(scenes.write_mesh(*scenes.mesh(0, hole=(3.0, 4.0)), tmp_path / "mesh.ply"))
    assert "3.43 m2 by triangles far larger than the rest: not measured" in said
    assert found["bridged"][0]["area"] == pytest.approx(3.43, abs=0.02)  # type: ignore[index]
    said, found = look(scenes.write_cloud(scenes.cloud(0), tmp_path / "slab.laz"))
    assert found["things"] == [] == found["twice"] and found["rough_area"] == 0.0 and found["bridged"] == []
