"""Rays cast from the underside against the sweep: they agree on known grounds, and say it loudly if not."""

from __future__ import annotations

import sys
from collections.abc import Sequence
from dataclasses import replace
from importlib.abc import MetaPathFinder
from pathlib import Path
from types import ModuleType, SimpleNamespace

import numpy as np
import pytest
from click.testing import CliRunner

from crestcut.apps.cli import main
from crestcut.base.grid import FloatArray
from crestcut.contact.clearance.sweep import wanted_gap
from crestcut.contact.path.line import window
from crestcut.cut import ray_casting
from crestcut.cut.plan import cut_surface
from crestcut.cut.ray_casting import (
    DIFFERS,
    Absence,
    Judged,
    NotCast,
    RayCast,
    _Cast,
    _columns_of,
    _triangles,
    contradiction,
    load_caster,
    ray_cast,
)
from crestcut.cut.records import CutPlan
from crestcut.job.records import Travel, Wanted
from crestcut.report.pages.report import report_text
from crestcut.report.view.result import result_document
from crestcut.report.words.summary import summary_lines
from crestcut.terrain.records import Surface
from crestcut.vehicle.records import Part
from crestcut.work.release import decide_release
from report.deliver_scene import make_report
from scenes import L, Scene, arc, belly, crest, lip, scene, stand, surface_of, vehicle

ROOT = Path(__file__).resolve().parents[2]
GRADE = 0.1


def step(x: FloatArray, y: FloatArray) -> FloatArray:
    return np.where(x > 0.113, 0.02, 0.0) + 0.0 * y


def cast(s: Scene, plan: CutPlan, surface: Surface | None = None) -> RayCast:
    return ray_cast(load_caster(), surface or s.surface, plan.depth.values, [judged(s, plan)])


def judged(s: Scene, plan: CutPlan) -> Judged:
    kept = dict(wanted_gap(Wanted().want, Wanted().want_ends))
    return Judged(s.vehicle, s.ride, s.before, plan.after, kept)


def test_on_a_plane_the_gap_is_the_belly_s_own_clearance() -> None:
    s = scene(lambda x, y: 0 * x)
    found = cast(s, s.plan())
    (only,) = found.vehicles
    assert only.before.cast == pytest.approx(0.12, abs=1e-6) and found.differs is None and found.pairs > 0
    assert only.before.swept == pytest.approx(only.before.cast, abs=1e-6) and only.after == only.before


def test_on_a_crest_rays_find_what_the_triangle_of_tyres_and_crest_leaves() -> None:
    """Tyres on two slopes, half a wheelbase each side of the crest: hubs lie GRADE L / 2 below it and R / cos
    of the slope above the ground; the belly's middle is level there."""
    s = scene(crest(GRADE), vehicle(belly(0.12)))
    plan = s.plan()
    (only,) = cast(s, plan).vehicles
    hub = s.vehicle.tyre_radius
    expected = 0.12 - GRADE * L / 2 + hub * (np.hypot(1, GRADE) - 1)
    assert only.before.cast == pytest.approx(expected, abs=2e-4)
    assert only.before.swept == pytest.approx(only.before.cast, abs=2e-4)
    # once cut both see what was asked for, the rays from another side: they know nothing of the plan
    assert plan.deepest > 0.03 and plan.feasible
    assert only.after.cast == pytest.approx(Wanted().want, abs=DIFFERS)
    assert cast(s, plan).differs is None


def test_rays_are_cast_as_the_vehicle_stands_on_the_cut_slab() -> None:
    """A floor over the wheel tracks too: its cut lets the tyres down, and the floor with them."""
    s = scene(arc(15.0), vehicle(belly(0.065, 0.85)))
    plan = s.plan()
    found = cast(s, plan)
    (only,) = found.vehicles
    assert only.after.swept == pytest.approx(only.after.cast, abs=DIFFERS) and found.differs is None
    # as it stood before, no tyre let down, there would seem to be more room
    lower = cut_surface(s.surface, plan.depth.values)
    stale = _Cast(load_caster(), lower, judged(s, plan), plan.after, False).gap()
    assert stale.cast is not None and stale.cast > only.after.cast + 2 * DIFFERS


@pytest.mark.parametrize("cell", [0.01, 0.02])
def test_over_a_step_driven_askew_both_agree_but_for_what_a_plate_s_edge_is_due(cell: float) -> None:
    travel = Travel(line=(), wander=0.1, heading=0.05)
    s = scene(step, vehicle(belly(0.05), lip(0.08)), travel, cell=cell)
    found = cast(s, s.plan(deepest=0.03))
    assert found.differs is None
    for gap in (found.vehicles[0].before, found.vehicles[0].after):
        assert gap.swept is not None and gap.cast is not None
        assert abs(gap.swept - gap.cast) < DIFFERS or gap.due[0] - DIFFERS < gap.swept < gap.due[1] + DIFFERS  # type: ignore[index]


def test_a_lip_that_meets_a_rise_with_its_edge_may_differ_by_what_is_due_and_no_more() -> None:
    """Nodes lie a cell apart: where only the lip's front edge meets a rise, what the sweep reads is up to a
    cell off it."""
    nose = Part("front lip", (L + 0.7, L + 0.909), (-0.7, 0.7), (0.15, 0.15), "nose")
    s = scene(lambda x, y: 0.2 * np.maximum(x, 0.0), vehicle(belly(0.3), nose), cell=0.04)
    plan = replace(
        s.plan(deepest=0.001), depth=s.surface.height.like(0 * s.surface.height.values), after=s.before
    )
    found = cast(s, plan)
    gap = found.vehicles[0].before
    assert gap.swept is not None and gap.cast is not None and gap.due is not None
    assert abs(gap.swept - gap.cast) > DIFFERS and found.differs is None
    assert gap.due[0] <= gap.swept <= gap.due[1] and gap.due[1] - gap.due[0] < 0.2 * 0.04 * 2


@pytest.mark.parametrize("across", [(0.0155, 0.0235), (0.0096, 0.5)], ids=["narrow", "edge"])
def test_a_ridge_beside_a_plate_that_the_sweep_reads_is_due(across: tuple[float, float]) -> None:
    """Nodes stand 40 mm apart, the middle ones on a ridge along the line. A plate narrower than that has no
    row of its own and is swept over the nearest, up to half a cell off its middle; any plate is swept a
    quarter of a step wider. So the sweep reads the ridge that the rays beside it miss. The rail a row further
    on is read by none of them, and is not due."""
    bar = Part("bar", (0.4, 2.4), across, (0.2, 0.2), "belly")
    s = scene(lambda x, y: 0.02 * (np.abs(y + 0.04) < 0.01) - 0.3 * np.abs(y), vehicle(bar), cell=0.04)
    plan = replace(
        s.plan(deepest=0.001), depth=s.surface.height.like(0 * s.surface.height.values), after=s.before
    )
    found = cast(s, plan)
    gap = found.vehicles[0].before
    assert gap.swept is not None and gap.cast is not None and gap.due is not None
    assert gap.cast - gap.swept == pytest.approx(0.3 * across[0], abs=1e-4)
    assert found.differs is None and gap.due[0] == pytest.approx(gap.swept, abs=DIFFERS)
    for end, sign in ((0, -1), (1, 1)):  # as far as that and ``DIFFERS``, on either side
        for more in (0.6, 1.4):
            assert s.before.pair_gap is not None
            off = gap.due[end] - gap.swept + sign * more * DIFFERS
            moved = replace(s.before, pair_gap=s.before.pair_gap + off)
            differs = cast(replace(s, before=moved), replace(plan, after=moved)).differs
            assert (differs is None) == (more < 1)
            assert differs is None or differs.beyond == pytest.approx(more * DIFFERS, abs=3e-5)


def test_heights_that_are_not_those_that_were_swept_are_told_everywhere() -> None:
    s = scene(crest(GRADE), vehicle(belly(0.12), lip()))
    plan = s.plan()
    assert s.before.worst is not None
    frame = s.surface.height.frame
    at = np.hypot(*(frame.node_xy() - np.array(s.before.worst.xy)).transpose(2, 0, 1)) < 0.05
    for size in (0.0004, 0.0008):
        raised = replace(s.surface, top=s.surface.top.like(s.surface.top.values + size * at))
        found = cast(s, plan, raised)
        assert (found.differs is None) == (size < DIFFERS)
    worst = found.differs
    assert worst is not None and worst.part == "belly" and 0 < worst.beyond < 0.001
    words = contradiction(found)
    assert "belly" in words and "ray casting" in words
    report = make_report()
    release = decide_release(report.job, False, plan, contradicted=words)
    assert release.state == "not for cutting"
    assert [r.code for r in release.reasons if r.words == words] == ["ray casting contradicts the sweep"]
    shown = replace(report, ray_cast=found)
    told = result_document(shown)["certificate"]["ray_cast"]["differs"]  # type: ignore[index]
    assert told["code"] == "ray casting contradicts the sweep" and told["part"] == "belly"
    assert words in summary_lines(shown)[1] and "DISAGREE" in summary_lines(shown)[1]
    assert words in report_text(shown)


def test_a_sweep_that_lost_a_pair_is_told() -> None:
    s = scene(crest(GRADE), vehicle(belly(0.12)))
    plan = s.plan()
    assert s.before.pair_gap is not None
    lost = replace(s.before, pair_gap=s.before.pair_gap + 0.002)
    assert cast(replace(s, before=lost), plan).differs is not None


def test_holes_and_nodes_that_stand_alone_are_no_contradiction() -> None:
    rng = np.random.default_rng(3)
    whole = scene(crest(GRADE), vehicle(belly(0.12, 0.25)))
    frame = window(whole.line, whole.vehicle, whole.travel, 0.01, margin=0.2)
    aside = np.abs(frame.node_xy()[..., 1])
    holes = (rng.random(frame.shape) < 0.97) & (aside < 0.3)
    s = stand(whole.vehicle, whole.travel, whole.line, surface_of(crest(GRADE), frame, holes))
    assert cast(s, s.plan()).differs is None


class _Refusing(MetaPathFinder):
    """A system that lacks a library."""

    def find_spec(self, name: str, path: Sequence[str] | None, target: ModuleType | None = None) -> None:
        if name == "open3d":
            raise ImportError("libGL.so.1: cannot open shared object file: No such file or directory")


def test_where_the_library_is_missing_or_cannot_load_it_is_said_why(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(sys.modules, "open3d", None)
    absent = load_caster()
    assert isinstance(absent, NotCast) and absent.code is Absence.NOT_INSTALLED
    monkeypatch.delitem(sys.modules, "open3d")
    monkeypatch.setattr(sys, "meta_path", [_Refusing(), *sys.meta_path])
    absent = load_caster()
    assert isinstance(absent, NotCast) and absent.code is Absence.CANNOT_LOAD
    assert "libGL.so.1" in absent.words and "\n" not in absent.words
    document = result_document(replace(make_report(), ray_cast=absent))["certificate"]
    assert document == {
        "ray_cast": None, "ray_cast_absent": {"code": "open3d cannot load", "words": absent.words}
    }  # fmt: skip


@pytest.mark.parametrize("system", ["linux", "darwin"])
def test_packages_of_linux_are_named_on_linux_alone(monkeypatch: pytest.MonkeyPatch, system: str) -> None:
    monkeypatch.delitem(sys.modules, "open3d", raising=False)
    monkeypatch.setattr(sys, "meta_path", [_Refusing(), *sys.meta_path])
    monkeypatch.setattr(ray_casting, "sys", SimpleNamespace(modules=sys.modules, platform=system))
    absent = load_caster()
    assert isinstance(absent, NotCast) and ("apt-get" in absent.words) == (system == "linux")


@pytest.mark.slow
def test_the_job_goes_on_without_it(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    absent = NotCast(Absence.NOT_INSTALLED, "open3d not installed")
    monkeypatch.setattr("crestcut.study.making.load_caster", lambda: absent)
    args = ["run", str(ROOT / "configs/jobs/kiln_trolley.toml"), "--out", str(tmp_path / "out")]
    done = CliRunner().invoke(main, args)
    assert done.exit_code == 0 and (tmp_path / "out/report.html").exists()
    assert [line for line in done.stderr.splitlines() if absent.words in line] != []


def test_of_a_long_ground_only_the_columns_about_the_plates_become_triangles() -> None:
    """Two places far apart: as many nodes as lie about them, at their own places on the ground, and the
    triangles that the whole ground would have there."""
    rng = np.random.default_rng(2)
    top = rng.normal(5.0, 0.1, (12, 400))
    top[rng.random(top.shape) < 0.1] = np.nan
    wanted = np.zeros((11, 399), bool)
    wanted[3:8, 20:31] = wanted[2:9, 380:399] = True
    parts = _columns_of(wanted)
    assert [(p.start, p.stop) for p in parts] == [(20, 32), (380, 400)]
    some = [_triangles(top, 5.0, 0.01, wanted, part) for part in parts]
    nodes, faces = _triangles(top, 5.0, 0.01, wanted, slice(0, 400))
    ours = np.concatenate([corners[three] for corners, three in some])
    assert sum(len(corners) for corners, _ in some) == 12 * 32 and len(faces) > 150
    places = lambda t: sorted(map(tuple, t.reshape(len(t), 9)))  # noqa: E731
    assert places(ours) == places(nodes[faces])
