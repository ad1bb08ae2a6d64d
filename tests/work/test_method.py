"""Which way of working, with which tools; few settings under the plan; and what is refused in one line."""

from __future__ import annotations

import dataclasses
import re
from pathlib import Path

import numpy as np
import pytest
from work_scene import scene
from worker_sim import work

from crestcut.base.errors import CrestcutError
from crestcut.contact.clearance.sweep import sweep, wanted_gap
from crestcut.cut.plan import cut_surface, ride_on
from crestcut.job.answers import Method
from crestcut.job.load import load_job
from crestcut.job.records import WorkWish
from crestcut.study.making import run_job
from crestcut.work.method import Amount, choose_method, slope_under
from crestcut.work.order import make_site
from crestcut.work.release import decide_release
from crestcut.work.sheet import make_worksheet
from crestcut.work.site import facet_depth
from crestcut.work.timber import stock_of
from crestcut.work.tools import load_tools, tools_at_hand

ROOT = Path(__file__).resolve().parents[2]
TOOLS = load_tools(ROOT / "configs" / "tools")
SMALL, MIDDLE, LARGE = Amount(0.006, 0.001, 0.02), Amount(0.012, 0.005, 0.02), Amount(0.012, 0.020, 0.02)
PLANS = (
    {},
    {"grade": 0.085, "skew": 0.4, "rounding": 0.05, "clearance": 0.094, "fall": -0.015, "country": "GB"},
)


@pytest.mark.parametrize("shape", PLANS)
def test_few_flat_facets_lie_under_the_least_cut_and_are_swept_again(shape: dict[str, float]) -> None:
    s, bare = scene(**shape), scene(**(shape | {"method": Method.DOTS}))
    made, least = s.plan.guided, bare.plan
    assert made is not None and least.guided is not None and not least.guided.facets
    assert made.method == Method.BOARD and 1 <= len(made.facets) <= 8
    assert (made.deepest, made.volume) == (least.deepest, least.volume)
    assert least.volume < s.plan.volume <= 1.15 * least.volume
    depth = s.plan.depth.values
    assert np.nanmin(depth - least.depth.values) >= -5e-5  # nothing is left standing over the least cut
    assert np.nanmax(depth - s.plan.limits.deepest.values) <= 1e-9
    lower = cut_surface(s.surface, np.nan_to_num(depth))
    swept = sweep(s.vehicle, lower, ride_on(s.ride, s.vehicle, lower))
    asked = wanted_gap(s.job.wanted.want, s.job.wanted.want_ends)
    assert min(c.gap - asked[zone] for zone, c in swept.least.items()) >= -5e-5 and s.plan.feasible
    unit = 0.001 if shape.get("country") == "GB" else 0.0254 / 16
    sheet = make_worksheet(s.order())
    assert sheet.jig is not None and sheet.method == Method.BOARD
    assert sheet.quantities.flats == pytest.approx(s.plan.volume - least.volume)
    for row in sheet.jig.rows:
        assert (
            row.high - row.low >= 0.14 and min(b - a for a, b in zip(row.start, row.stop, strict=True)) > 0.1
        )
        assert all(h / unit == pytest.approx(round(h / unit), abs=1e-6) for h in (row.rear, row.front))
    core, done = facet_depth(s.surface.height.values, made.facets)
    assert (core > 0)[done].mean() > 0.9  # no setting cuts air


def test_each_method_is_one_order_of_work_and_its_hours_add_up() -> None:
    for method, first, never in (
        (Method.DOTS, "deepest contour first", ("Lift", "Slots", "board", "machine")),
        (Method.BOARD, "Slots", ("contour", "lanes")),
        (Method.MACHINE, "lanes", ("Lift", "Slots", "board")),
    ):
        s = scene(grade=0.03, clearance=0.0375, method=method, margin=0.002)
        sheet = make_worksheet(s.order())
        said = [p.what for p in sheet.passes]
        assert sheet.method == method and any(first in what for what in said[1:])
        assert not any(word in what for what in said for word in never), method
        assert (sheet.jig is not None) == (method == Method.BOARD)
        assert sheet.set_out is not None and bool(sheet.set_out.contours) == (method != Method.BOARD)
        hours = sheet.quantities.hours
        assert hours.low == pytest.approx(sum(p.hours.low for p in sheet.passes))
        assert hours.high == pytest.approx(sum(p.hours.high for p in sheet.passes))
        taken = sum(p.taken for p in sheet.passes)
        assert taken == pytest.approx(s.plan.volume, rel=0.01)  # every litre by one step, and by no two
        assert {name for name, _ in sheet.quantities.wheels} == {p.tool for p in sheet.passes if p.key}


def test_who_grinds_to_contours_and_dots_leaves_the_plan() -> None:
    s = scene(method=Method.DOTS)
    sheet = make_worksheet(s.order())
    assert sheet.jig is None and sheet.set_out is not None
    site = make_site(s.surface, s.line, s.plan, s.job)
    done = work(site, None, sheet.set_out)
    cut = site.depth > 0
    off = (done - site.finished)[cut]
    assert np.abs(off).mean() < 0.0004 and np.abs(off).max() < 0.0025


def test_no_machine_where_the_slope_is_not_known() -> None:
    """Ground that nothing was measured of beside the cut: not level, unknown."""
    alone = np.full((60, 60), np.nan)
    alone[30, 30] = 1.0
    slope = slope_under(alone, ~np.isnan(alone), 0.01)
    assert np.isnan(slope)
    found = choose_method(WorkWish(), TOOLS, dataclasses.replace(LARGE, slope=slope))
    assert found.method == Method.BOARD and "was not measured" in found.why and "nan" not in found.why


def test_a_small_cut_takes_a_small_tool_and_a_large_one_a_machine_where_it_can_stand() -> None:
    names = {a: [t.key for t in choose_method(WorkWish(), TOOLS, a).tools] for a in (SMALL, MIDDLE, LARGE)}
    assert names[SMALL] == ["hand_grinder_cup"]
    assert names[MIDDLE] == ["hand_grinder_blade", "hand_grinder_cup"]
    assert names[LARGE] == ["scarifier", "hand_grinder_cup"]
    steep = choose_method(WorkWish(), TOOLS, dataclasses.replace(LARGE, slope=0.17))
    assert steep.method == Method.BOARD and "17% steep" in steep.why
    deep = choose_method(WorkWish(Method.BOARD), TOOLS, Amount(0.035, 0.005, 0.0))
    assert deep.tools[0].key == "wet_saw"  # the grinder would need more than three lifts
    bare = choose_method(
        WorkWish(), [t for t in TOOLS if t.key != "hand_grinder_blade" and not t.wet], MIDDLE
    )
    assert bare.method == Method.DOTS and "nothing at hand cuts slots" in bare.why


@pytest.mark.parametrize(
    ("wish", "tools", "amount", "said"),
    [
        (
            WorkWish(Method.MACHINE), TOOLS, dataclasses.replace(LARGE, slope=0.17),
            r"17% steep.*stands on 8%.*board",
        ),
        (
            WorkWish(), [t for t in TOOLS if t.use == "kerf"], MIDDLE,
            r"\[work\] tools: none of .* hire a hand grinder",
        ),
        (WorkWish(Method.BOARD), [t for t in TOOLS if t.use == "face"], MIDDLE, "nothing at hand cuts slots"),
        (
            WorkWish(Method.BOARD),
            [
                dataclasses.replace(t, reach=None if t.reach is None else t.reach.times(0.7))
                for t in TOOLS if not t.wet
            ],
            MIDDLE, r"reaches .* below the board",
        ),
    ],
)  # fmt: skip
def test_a_method_that_cannot_be_is_refused_with_what_to_hire(wish, tools, amount, said: str) -> None:
    with pytest.raises(CrestcutError) as refused:
        choose_method(wish, tools, amount)
    assert re.search(said, str(refused.value)) and "\n" not in str(refused.value)


@pytest.mark.parametrize(
    ("table", "said"),
    [
        ('blocks = ["0.5 mm"]', "no 4 of them make a block"),
        ('tools = ["hand_grindr"]', 'no tool "hand_grindr"'),
        ('tools = ["../hand_grinder_cup"]', "no tool"),
        ('tools = ["mine"]', "guard or shroud is off"),
    ],
)
def test_what_nobody_has_is_refused_before_anything_is_worked_out(
    tmp_path: Path, table: str, said: str
) -> None:
    text = (ROOT / "configs/tools/hand_grinder_cup.toml").read_text().replace("guard = true", "guard = false")
    (tmp_path / "mine.toml").write_text(text)
    written = (ROOT / "configs/jobs/courtyard_apron.toml").read_text()
    (tmp_path / "job.toml").write_text(written + f"\n[work]\n{table}\n")
    with pytest.raises(CrestcutError, match=said):
        run_job(tmp_path / "job.toml", lambda _: pytest.fail("something was begun"))


@pytest.mark.parametrize(
    ("table", "said"),
    [
        ('method = "by magic"', "write one of dots and contours, board and blocks, machine, then finish"),
        ("blocks = []", "blocks"), ('blocks = ["9"]', "unit"), ('tool = ["x"]', 'did you mean "tools"'),
    ],
)  # fmt: skip
def test_a_work_table_that_is_not_understood(tmp_path: Path, table: str, said: str) -> None:
    written = (ROOT / "configs/jobs/courtyard_apron.toml").read_text()
    (tmp_path / "job.toml").write_text(written + f"\n[work]\n{table}\n")
    with pytest.raises(CrestcutError, match=re.escape(said)):
        load_job(tmp_path / "job.toml")


def test_own_tool_files_lie_beside_the_job_and_blocks_are_what_one_has(tmp_path: Path) -> None:
    mine = (
        (ROOT / "configs/tools/hand_grinder_cup.toml").read_text().replace("5 in diamond cup", "my own cup")
    )
    (tmp_path / "mine.toml").write_text(mine)
    (found,) = tools_at_hand(tmp_path / "job.toml", ("mine",))
    assert "my own cup" in found.name
    stock = stock_of((0.0035, 0.018), True)
    assert stock.heights[:3] == pytest.approx((0.007, 0.0105, 0.014))
    assert stock.stack(0.0215) == ("18.0 mm (23/32 in) piece", "3.5 mm (1/8 in) piece")


def test_of_a_cut_that_is_not_proposed_nothing_is_priced() -> None:
    s = scene()
    short = dataclasses.replace(s.plan, feasible=False, short_by=0.01)
    order = dataclasses.replace(s.order(decide_release(s.job, False, short)), plan=short)
    sheet = make_worksheet(order)
    assert sheet.quantities.volume == 0 and sheet.quantities.hours.high == 0 and not sheet.silica
    assert not any("litres" in line or "Section left" in line for line in sheet.limits)
