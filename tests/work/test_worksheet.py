"""One plan to a worksheet: what is in it, what is withheld, and whether somebody who follows it gets the
slab that was planned.
"""

from __future__ import annotations

import dataclasses
import itertools
import math
from pathlib import Path

import numpy as np
import pytest
from work_scene import Scene, scene
from worker_sim import SLOPPY, work

from crestcut.base.errors import CrestcutError
from crestcut.base.units import parse_length
from crestcut.contact.clearance.sweep import wanted_gap
from crestcut.job.records import Site as Place
from crestcut.job.records import Slab
from crestcut.work.ground_records import Spill
from crestcut.work.jig import make_jig
from crestcut.work.jig_records import Jig, Range, stick_words
from crestcut.work.order import make_site
from crestcut.work.records import Release, SetOut, Worksheet
from crestcut.work.release import decide_release
from crestcut.work.sheet import make_worksheet
from crestcut.work.site import Site
from crestcut.work.timber import stock_of
from crestcut.work.tools import load_tool, tool_folder
from crestcut.work.water import headline
from crestcut.work.workable import make_workable

PLANS = ({}, {"grade": 0.085, "skew": 0.4, "rounding": 0.05, "clearance": 0.094, "fall": -0.015})


def sheet_of(s: Scene, release: Release | None = None) -> Worksheet:
    return make_worksheet(s.order(release))


def jigged(s: Scene) -> tuple[Jig, SetOut, Site]:
    """What somebody who cuts by jig and set-out has of a scene, and the slab they have it for."""
    sheet = sheet_of(s)
    assert sheet.jig is not None and sheet.set_out is not None
    return sheet.jig, sheet.set_out, make_site(s.surface, s.line, s.plan, s.job)


@pytest.mark.parametrize("shape", PLANS)
def test_the_exact_worker_cuts_the_plan(shape: dict[str, float]) -> None:
    s = scene(**shape)
    jig, set_out, site = jigged(s)
    done = work(site, jig, set_out)
    cut = np.nan_to_num(s.plan.depth.values) > 0
    assert np.abs(done - site.finished)[cut].max() <= 0.0005
    volume = float((site.ground - done).sum()) * site.cell**2
    assert volume == pytest.approx(s.plan.volume, rel=0.02)
    assert np.array_equal(done[~cut], site.ground[~cut]) or np.abs(done - site.ground)[~cut].max() < 5e-4


@pytest.mark.parametrize("shape", PLANS)
def test_a_sloppy_worker_who_checks_leaves_nothing_proud(shape: dict[str, float]) -> None:
    s = scene(**shape)
    jig, set_out, site = jigged(s)
    gaps = wanted_gap(s.job.wanted.want, s.job.wanted.want_ends)
    limit = np.fmin.reduce([grid.values - gaps[zone] for zone, grid in s.plan.after.lowest.items()])
    cut = np.nan_to_num(s.plan.depth.values) > 0
    unchecked = work(site, jig, set_out, SLOPPY, seed=1, checks=False)
    assert np.nanmax((unchecked - limit)[cut]) > 0.001  # the slips are real: without the checks it would fail
    done = work(site, jig, set_out, SLOPPY, seed=1)
    assert np.nanmax((done - limit)[cut]) <= 0.0005
    assert np.maximum(site.finished - done, 0)[cut].mean() <= 0.002


def test_strings_read_what_the_finished_surface_gives() -> None:
    s = scene()
    sheet = sheet_of(s)
    assert sheet.set_out is not None and sheet.set_out.strings
    site = make_site(s.surface, s.line, s.plan, s.job)
    for row in sheet.set_out.strings[::5]:
        j = int(np.argmin(np.abs(site.offset - row.offset)))
        a, b = (int(np.argmin(np.abs(site.station - v))) for v in (row.rear_at, row.front_at))
        k = int(np.argmin(np.abs(site.station - row.rear_at - row.at)))
        string = np.interp(k, [a, b], site.ground[j, [a, b]]) + row.blocks
        t = (k - a) / (b - a)
        # a parabola under the chord, w L^2 / 8 T at its middle (twine of 0.7 g/m at 30 N)
        string -= 4 * t * (1 - t) * 0.00685 * (row.front_at - row.rear_at) ** 2 / (8 * 30.0)
        # what passes is nowhere proud of the plan, and no more than half a millimetre is asked beyond it
        assert -1e-9 <= row.least - (string - site.finished[j, k]) <= 0.0005 + 1e-9
        assert row.most >= string - site.finished[j, k] + 0.003 - 1e-9
        assert np.all(
            np.interp(np.arange(a, b), [a, b], site.ground[j, [a, b]]) + row.blocks
            > site.ground[j, a:b] + 0.04
        )


def test_blocks_stand_on_untouched_concrete_and_dots_are_as_deep_as_the_plan() -> None:
    s = scene(**PLANS[1])
    sheet = sheet_of(s)
    assert sheet.jig is not None and sheet.set_out is not None
    depth = s.plan.depth.values
    site = make_site(s.surface, s.line, s.plan, s.job)
    for row in sheet.jig.rows:
        j, k = (int(np.argmin(np.abs(site.offset - v))) for v in (row.low, row.high))
        for ends in (row.rear_at, row.front_at):  # and on every slot between, along their chalk lines
            for line, at in zip(range(j, k + 1), np.linspace(*ends, k - j + 1), strict=True):
                i = int(np.argmin(np.abs(site.station - at)))
                assert depth[line, i - 4 : i + 5].max() == 0.0
    assert sheet.set_out.dots[0].depth == pytest.approx(s.plan.deepest, abs=0.0005)
    for dot in sheet.set_out.dots:
        j, i = (
            int(np.argmin(np.abs(site.offset - dot.offset))),
            int(np.argmin(np.abs(site.station - dot.station))),
        )
        assert depth[j, i] == pytest.approx(dot.depth, abs=0.0005)


def test_the_stick_is_never_too_short_as_it_is_printed() -> None:
    """1/4 mm on the safe side of the finished concrete, up to what it is sawn to, in both systems."""
    for country in ("US", "GB"):
        s = scene()
        here = dataclasses.replace(s.job, site=dataclasses.replace(s.job.site, country=country))
        jig = make_worksheet(dataclasses.replace(s.order(), job=here)).jig
        assert jig is not None
        mm, inch = (parse_length(text) for text in stick_words(jig).removesuffix(")").split(" ("))
        assert jig.below + 0.00025 - 1e-9 <= mm <= jig.below + 0.00035 and inch >= mm - 1e-9


def test_a_deep_cut_comes_in_lifts_that_a_worn_wheel_can_make() -> None:
    s = scene(grade=0.085, clearance=0.103, margin=0.001)
    sheet = sheet_of(s)
    assert sheet.jig is not None
    jig = sheet.jig
    assert len(jig.lifts) > 1 and jig.lifts[-1].raised == 0.0
    raised = [lift.raised for lift in jig.lifts]
    assert raised == sorted(raised, reverse=True)
    assert all(a - b <= jig.worn + 1e-9 for a, b in itertools.pairwise(raised))
    assert max(r.deepest for r in jig.rows) + 0.0005 > jig.below


@pytest.mark.parametrize("provisional", [True, False])
def test_a_stamped_worksheet_holds_nothing_to_cut_from(provisional: bool) -> None:
    s = scene()
    job = s.job if provisional else dataclasses.replace(s.job, slab=Slab(), site=Place())
    sheet = sheet_of(s, decide_release(job, provisional, s.plan))
    assert sheet.stamp == ("PROVISIONAL" if provisional else "NOT FOR CUTTING")
    assert sheet.jig is None and not sheet.passes and sheet.set_out is None
    assert sheet.quantities.volume == pytest.approx(s.plan.volume)
    with pytest.raises(ValueError, match="stamp"):
        dataclasses.replace(sheet, stamp="")


def test_no_plan_and_no_cut_still_make_a_worksheet() -> None:
    s = scene()
    for plan in (None, scene(clearance=0.16).plan):
        sheet = make_worksheet(dataclasses.replace(s.order(decide_release(s.job, False)), plan=plan))
        assert sheet.jig is None and sheet.set_out is None and not sheet.passes


def test_water_and_walk_are_said_before_and_after() -> None:
    sheet = sheet_of(scene())
    water = sheet.water
    assert water.building == "door seal" and water.spill_before is not None and water.spill_after is not None
    assert water.spill_after.height <= water.spill_before.height
    assert "Spill level" in water.headline and sheet.walks[0].kind == "public walk"
    assert any("1:48" in line for line in sheet.walks[0].said)


@pytest.mark.parametrize(
    ("change", "word"),
    [
        (("guard = true", "guard = false"), "guard or shroud"), (("shroud = true", ""), "guard or shroud"),
        (('pitch = "20 mm"', 'pich = "20 mm"'), 'did you mean "pitch"'),
        (('wheel = "4 1/2 in"', "wheel = '4'"), "no unit"),
       
        (("rate = [0.8, 2.0]", "rate = [2.0, 0.8]"), "least comes after"),
        (('use = "kerf"', 'use = "saw"'), "one of"),
        (("mass = 2.8", ""), '"mass" is missing'),
    ],
)  # fmt: skip
def test_bad_tool_files_are_refused(tmp_path, change: tuple[str, str], word: str) -> None:
    folder = tool_folder(tmp_path / "jobs" / "job.toml")
    assert folder is not None
    text = (folder / "hand_grinder_blade.toml").read_text()
    assert change[0] in text
    bad = tmp_path / "bad.toml"
    bad.write_text(text.replace(*change))
    with pytest.raises(CrestcutError, match=word):
        load_tool(bad)


def test_what_the_cut_takes_off_the_spill_level_is_the_difference_as_printed() -> None:
    def told(before: float, after: float) -> str:
        return headline(Spill(before, 3.0, 1.0), Spill(after, 3.0, 1.0), (), (), "the gutter", "the door")

    assert "590 mm before, 587 mm after the cut. The cut takes 3 mm off" in told(0.5896, 0.5874)
    assert "590 mm before, 590 mm after the cut. Ponds" in told(0.5904, 0.5896)


def test_sheet_angles_do_not_matter() -> None:
    """The same slab and line, turned in the site, make the same jig."""
    a, b = (sheet_of(scene(angle=angle)).jig for angle in (0.35, 0.35 + math.pi / 3))
    assert a is not None and b is not None and len(a.rows) == len(b.rows)
    assert np.allclose([(r.rear, r.front) for r in a.rows], [(r.rear, r.front) for r in b.rows], atol=5e-4)


def test_a_worn_wheel_that_does_not_reach_is_refused() -> None:
    folder = tool_folder(Path("jobs/job.toml"))
    assert folder is not None
    short = dataclasses.replace(load_tool(folder / "hand_grinder_blade.toml"), reach=Range(0.020, 0.023))
    ground = np.zeros((5, 50))
    site = Site(ground, ground, np.ones((5, 50), bool), 0.01, np.arange(50) * 0.01, np.arange(5) * 0.01)
    with pytest.raises(CrestcutError, match="guard and shroud stay on"):
        make_jig(site, make_workable(site), short, stock_of(None, False))
