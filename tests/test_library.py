"""The package as a library: the README's example runs as it stands there."""

from __future__ import annotations

import contextlib
import io
import re
import subprocess
import sys
from dataclasses import asdict, replace
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from threadpoolctl import threadpool_info, threadpool_limits

import crestcut
from crestcut.apps.floor import floor_job
from crestcut.apps.verify import check_job
from crestcut.base.grid import GridFrame, HeightGrid
from crestcut.base.parallel import one_thread_each
from crestcut.job.answers import Method
from crestcut.job.records import Settings
from crestcut.report.view.result import result_document
from crestcut.study.making import run_job
from crestcut.terrain.ground.ground import find_ground
from crestcut.terrain.ground.raster import Lattice
from crestcut.terrain.slab.behind import YARD
from crestcut.terrain.slab.posterior import Fineness

ROOT = Path(__file__).parents[1]


EXAMPLES = re.findall(r"```python\n(.*?)```", (ROOT / "README.md").read_text(encoding="utf-8"), re.S)
(SAID,) = re.findall(r"# prints (.*)", EXAMPLES[0])
LEAST, DEEPEST = (float(x) / 1000 for x in SAID.split()[1:])  # m, of the sample


@pytest.mark.slow
def test_the_example_in_the_readme_runs_and_prints_what_it_says(tmp_path: Path) -> None:
    code = EXAMPLES[0]
    assert len([line for line in code.splitlines() if line.strip()]) <= 10
    code = code.replace('"out/apron', f'"{tmp_path}/apron')
    done = subprocess.run([sys.executable, "-c", code], cwd=ROOT, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    verdict, gap, deepest = done.stdout.split()
    assert verdict == SAID.split()[0]
    # last digits differ from one processor to another, and with them which shapes a chain of draws comes by:
    # between two of one machine's instruction sets 0.1 and 0.7 mm, over seeds 0.2 and 0.6 (1 sd)
    assert float(gap) == pytest.approx(LEAST * 1000, abs=0.6)
    assert float(deepest) == pytest.approx(DEEPEST * 1000, abs=1.8)
    assert (tmp_path / "apron" / "study.npz").stat().st_size > 1_000_000


@pytest.fixture(scope="module")
def named() -> dict[str, Any]:
    """What the README's example of the stages leaves in a notebook."""
    assert len([line for line in EXAMPLES[1].splitlines() if line.strip()]) <= 10
    left: dict[str, Any] = {}
    with contextlib.chdir(ROOT), contextlib.redirect_stdout(io.StringIO()) as said:
        exec(EXAMPLES[1], left)
    return {**left, "said": said.getvalue()}


@pytest.mark.slow
def test_the_stages_one_by_one_run_as_the_readme_has_them(named: dict[str, Any]) -> None:
    assert named["standing"].today.verdict == "touches"
    # one way only, so other tiles and draws than the job's, which is driven both ways: as over seeds
    assert named["standing"].today.least_clearance == pytest.approx(LEAST, abs=6e-4)
    # the least cut: a job's is then made of flat facets, which lie up to a millimetre or two deeper
    assert DEEPEST - 0.004 < named["plan"].deepest < DEEPEST + 0.0018
    assert f"{named['plan'].deepest * 1000:.1f} mm at the deepest" in named["said"]
    left = crestcut.assess_after(named["standing"], named["plan"], named["surface"], named["scan"])
    assert left.today.verdict == "clears" and left.today.chance_of_want >= 0.95


@pytest.mark.slow
def test_records_print_in_three_lines_with_units(named: dict[str, Any]) -> None:
    passage = named["cc"].drive(named["car"], named["surface"], named["line"])
    records = [named[n] for n in ("scan", "car", "surface", "standing", "plan")]
    records += [passage.ride, passage.clearance, named["standing"].today, named["surface"].height]
    for record in records:
        said = repr(record)
        assert said.startswith(type(record).__name__ + ": ")
        assert len(said.splitlines()) <= 3 and len(said) < 400 and "array(" not in said, said
        assert re.search(r"\d m\b|\d mm\b", said), said


@pytest.mark.slow
def test_heights_as_xarray_lie_where_the_grid_has_them(named: dict[str, Any]) -> None:
    grid = named["surface"].height
    array = grid.to_xarray()
    assert array.dims == ("v", "u") and array.attrs["units"] == array["u"].attrs["units"] == "m"
    k = 40, 300
    assert array.values[k] == grid.values[k]
    place = float(array["x"][k]), float(array["y"][k])
    assert float(grid.sample(place)) == pytest.approx(grid.values[k], abs=1e-12)


def test_xarray_is_asked_for_in_one_line_where_it_is_not(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(sys.modules, "xarray", None)
    grid = HeightGrid(GridFrame((0.0, 0.0), 0.0, 0.01, (2, 3)), np.zeros((2, 3)))
    with pytest.raises(crestcut.CrestcutError, match=r"pip install xarray"):
        grid.to_xarray()


@pytest.mark.slow
def test_a_job_and_its_stages_one_by_one_say_the_same() -> None:
    """What a job finds on its one vehicle is what the stages find, to the last digit, other settings in both:
    were one of them to take another way, this would show it."""
    job = crestcut.load_job(ROOT / "configs/jobs/courtyard_apron.toml")
    settings = crestcut.Settings(seed=3, draws=60, rounds=4, tiles=300)
    wanted, work = replace(job.wanted, want=0.010), replace(job.work, method=Method.DOTS)
    job = replace(job, settings=settings, wanted=wanted, work=work, keeps=(), cell=0.02)
    study = run_job(job)
    scan, vehicle = crestcut.read_scan(job.scan), crestcut.load_vehicle(job.vehicle.file)
    places = [(p.x, p.y) for p in job.travel.line]  # the scan's own numbers are the site's here
    line = crestcut.travel_line(places, vehicle, job.travel, job.cell)
    surface = crestcut.fit_surface(scan, vehicle, line, job.travel, job.scan.scanner, settings=settings)
    passage = crestcut.drive(vehicle, surface, line, job.travel)
    standing = crestcut.assess(passage, scan, job.wanted, settings)
    plan = crestcut.plan(standing, surface, job.cut, job.slab)
    left = crestcut.assess_after(standing, plan, surface, scan)
    report = study.report
    assert report.plan is not None
    assert np.array_equal(report.surface.height.values, surface.height.values, equal_nan=True)
    assert repr((report.today, report.in_use, report.left)) == repr((standing.today, standing.in_use, left))
    assert report.today == standing.today and report.in_use == standing.in_use and report.left == left
    assert np.array_equal(report.plan.depth.values, plan.depth.values, equal_nan=True)
    document = result_document(report)
    assert document["settings"] == asdict(settings) and document["seed"] == 3
    assert repr(study).startswith("Study: Courtyard apron\n") and len(repr(study).splitlines()) == 3


def test_settings_as_usual_are_what_a_slab_is_judged_with() -> None:
    """Told once for a call and once where the slab is judged, for commands that take no settings."""
    usual = Settings()
    assert Fineness(tiles=usual.tiles, pairs=usual.draws // 2, rounds=usual.rounds) == YARD.fine


def test_settings_out_of_reason_are_refused() -> None:
    with pytest.raises(ValueError, match=r"draws: 20 to 20000 expected, 4 found"):
        crestcut.Settings(draws=4)


def test_what_counts_as_ground_may_be_varied() -> None:
    """A layer of points 20 mm over the ground is taken away as usual, and kept where a call says that so near
    is ground."""
    rng = np.random.default_rng(5)
    points = np.column_stack([rng.uniform(0, 3, (40_000, 2)), rng.normal(0, 0.001, 40_000)])
    points[:1500, 2] += 0.020
    lattice = Lattice.around(GridFrame((0.5, 0.5), 0.0, 0.01, (200, 200)))
    placed = lattice.place(points)
    usual, wide = (find_ground(lattice, placed, s).keep.sum() for s in (Settings(), Settings(near=0.03)))
    assert wide - usual > 400


def test_what_the_library_names_is_there() -> None:
    for name in crestcut.__all__:
        assert callable(getattr(crestcut, name)), name
    assert crestcut.__version__


def test_a_job_reckons_in_one_thread_however_many_there_are() -> None:
    """Else the last digits of sums, and with them the draws, hang on the machine and on who calls."""

    def threads() -> list[int]:
        return [pool["num_threads"] for pool in threadpool_info() if pool["user_api"] == "blas"]

    with threadpool_limits(limits=2, user_api="blas"):
        before = threads()
        assert before and set(one_thread_each(threads)()) == {1}
        assert threads() == before
    for command in (run_job, check_job, floor_job):
        assert command.__wrapped__.__name__ == command.__name__  # type: ignore[attr-defined]


# what fits a slab, which a run that takes one up does without
FITTING = {"crestcut.terrain.build", "crestcut.terrain.joints.find", "scipy.optimize"}


@pytest.mark.parametrize(("code", "loaded"), [("", False), ("r.load_all()", True)])
def test_a_run_loads_what_fits_a_slab_where_it_does_and_a_ready_process_all(code: str, loaded: bool) -> None:
    code = f"import sys, crestcut.apps.run as r; {code}\nprint(*sys.modules)"
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert FITTING & set(done.stdout.split()) == (FITTING if loaded else set())
