"""Hand work against what is published: the board over two blocks, timber, dust, edges, slopes, masses."""

from __future__ import annotations

import dataclasses
import math
from pathlib import Path

import numpy as np
import pytest

from crestcut.base.grid import GridFrame, HeightGrid
from crestcut.base.units import FOOT, INCH, inches
from crestcut.cut.records import Facet
from crestcut.cut.slab_limits import mass_of
from crestcut.job.answers import Method
from crestcut.job.records import Job, PlanPoint, ScanChoice, Travel, VehicleChoice
from crestcut.job.records import Site as JobSite
from crestcut.work.cards import cautions
from crestcut.work.dust import (
    ACTION,
    AUSTRALIAN,
    BRITISH,
    EUROPEAN,
    PERMISSIBLE,
    airflow,
    drill_line,
    mask_needed,
    silica_line,
)
from crestcut.work.floor_jig import floor_blocks
from crestcut.work.jig import SMOOTHING, block_height, make_jig
from crestcut.work.jig_records import Range, Tool
from crestcut.work.passes import make_passes
from crestcut.work.quantities import ACTION_VALUE, LIMIT_VALUE, trigger_limit, work_out
from crestcut.work.setout import make_set_out
from crestcut.work.site import Site
from crestcut.work.slopes import (
    CROSS,
    DRAINS,
    FLARE,
    RAMP,
    RESIDENTIAL,
    RUNNING,
    diagonal_slope,
    edge_rule,
    walk_slope,
)
from crestcut.work.timber import (
    DRESSED_INCH,
    GRAVITY,
    SOFTWOOD_DENSITY,
    SOFTWOOD_STIFFNESS,
    sag_own_weight,
    sag_point_load,
    second_moment,
    stock_of,
    string_sag,
)
from crestcut.work.tools import load_tool, load_tools
from crestcut.work.workable import make_workable

TOOLS = Path(__file__).parents[2] / "configs" / "tools"


def work_job() -> Job:
    return Job(
        Path("j.toml"), "", ScanChoice((Path("a.laz"),)), VehicleChoice(Path("v.toml")),
        Travel((PlanPoint(0, 0), PlanPoint(9, 0))), site=JobSite("outdoors", "private"),
    )  # fmt: skip


SOME = Range(1.0, 2.0)
GRINDER = Tool(
    "g", "4 1/2 in grinder", "grinder", "kerf", 4.5 * INCH,
    Range(1.15 * INCH, (0.75 + 7 / 16) * INCH), 0.0024,
    0.02, 0.006, SOME, SOME, SOME, 2.8, 0.02, True, False, "common practice, no source",
)  # fmt: skip


def test_the_hand_method_on_paper() -> None:
    """Blocks 5 1/2 in under a 3/4 in board, a grinder 7/16 in below it, 1/16 in by smoothing: 1/2 in gained
    (common practice).
    """
    blocks = block_height(5.5 * INCH, 0.5 * INCH, 7 / 16 * INCH, 1 / 16 * INCH)
    assert blocks == pytest.approx(5.5 * INCH, abs=1e-12)
    assert INCH / 16 == SMOOTHING


@pytest.mark.parametrize("fall", [0.0, 0.02])
def test_the_hand_method_out_of_the_jig_sheet(fall: float) -> None:
    """A crest that just touches a clearance line 5 1/2 in over the ground where the tyres stand; want 1/2 in.

    The printed blocks must be 5 1/2 in, the reach 7/16 in and the gain 1/2 in, also on a cross fall.
    """
    cell, base = 0.01, 2.8
    u, v = np.arange(-0.5, 3.3 + 1e-9, cell), np.arange(-0.3, 0.3 + 1e-9, cell)
    line = 5.5 * INCH + fall * v[:, None] + 0 * u
    ground = fall * v[:, None] + 5.5 * INCH * (1 - np.abs(u - base / 2) / (base / 2))
    inside = np.abs(v)[:, None] <= 0.2
    finished = np.where(inside, np.minimum(ground, line - 0.5 * INCH), ground)
    site = Site(ground, finished, ground - finished <= 0, cell, u, v)
    low, high = (int(np.argmin(np.abs(v - at))) for at in (-0.2, 0.2))
    rear, front = (int(np.argmin(np.abs(u - at))) for at in (0.0, base))
    cut = np.flatnonzero(site.depth[low] > 0)
    ends = [(float(k), float(k)) for k in (cut[0], cut[-1], rear, front)]
    # the finished line stands 5 1/2 - 1/2 in over the concrete where the blocks do
    facet = Facet(low, high, *ends, 5.0 * INCH, 5.0 * INCH)
    jig = make_jig(site, make_workable(site, (facet,)), GRINDER, stock_of(None, False))
    assert jig.board.thickness == pytest.approx(0.75 * INCH)
    assert jig.reach == pytest.approx(7 / 16 * INCH)
    assert jig.below == pytest.approx(0.5 * INCH)
    (row,) = jig.rows
    assert row.rear_at == pytest.approx((0.0, 0.0), abs=1e-9) and row.front_at == pytest.approx((base, base))
    assert row.deepest == pytest.approx(0.5 * INCH, abs=1e-4)
    assert [inches(b.height) for b in jig.blocks] == ["5 1/2 in"] == [inches(row.rear)]


RATES = Range(20.0, 50.0), Range(0.6, 1.8)  # m of slot and litres an hour of configs/tools, as printed


def test_hours_are_those_of_the_printed_metres_litres_and_rates() -> None:
    """By hand, from the sheet's own figures: 2.0 m of cut, 0.3 m long, 6 mm deep, in slots 20 mm apart; rates
    of the tool files, and the minutes for each thing done between (common practice, no source).
    """
    cell = 0.01
    u, v = np.arange(0, 1.5, cell), np.arange(0, 2.6, cell)
    inside = ((np.abs(u - 0.75) <= 0.155)[None, :]) & ((v >= 0.295) & (v <= 2.305))[:, None]
    ground = np.zeros(inside.shape)
    site = Site(ground, np.where(inside, -0.006, 0.0), ~inside, cell, u, v, feather=100.0)
    ends = [(float(a), float(a)) for a in (60, 90, 45, 105)]
    work = make_workable(site, (Facet(30, 230, *ends, -0.006, -0.006),))
    blade, cup = (load_tool(TOOLS / f"hand_grinder_{name}.toml") for name in ("blade", "cup"))
    assert (blade.speed, cup.rate) == RATES and (blade.pitch, blade.step) == (0.02, 0.006)
    jig = make_jig(site, work, blade, stock_of(None, True), metric=True)
    out = make_set_out(
        site, work, (0.3, 1.2), (), {}, HeightGrid(GridFrame((0.0, 0.0), 0.0, cell, ground.shape), ground)
    )
    passes = make_passes(site, work, Method.BOARD, (blade, cup), jig, out)
    dots, readings = len(out.dots), len(out.strings)
    slots, metres = 101, 101 * 0.31
    litres = 2.01 * 0.31 * 1.5875
    by_hand = [  # low and high of each step, h
        (0.3 + dots * 1.5 / 60 + 2 * 2 / 60, 0.6 + dots * 3 / 60 + 2 * 4 / 60),
        (metres / 50 + 5 / 60 + slots * 15 / 3600 + metres * 0.02 / 4,
         metres / 20 + 10 / 60 + slots * 40 / 3600 + metres * 0.02 / 2),
        (litres / 1.8 + 5 / 60, litres / 0.6 + 10 / 60),
        (0.1, 0.3),
        (0.3 + readings / 60, 0.6 + readings * 2 / 60),
    ]  # fmt: skip
    assert len(passes) == len(by_hand)
    for step, (low, high) in zip(passes, by_hand, strict=True):
        assert (step.hours.low, step.hours.high) == (
            pytest.approx(low, abs=0.051),
            pytest.approx(high, abs=0.051),
        )
    whole = work_out(1.0, 1.0, (blade, cup), passes)
    assert whole.hours.low == pytest.approx(sum(p.hours.low for p in passes), rel=0.01)
    assert whole.hours.high == pytest.approx(sum(h for _, h in by_hand), rel=0.01)
    assert whole.kerf_metres == pytest.approx(metres) == sum(p.slot for p in passes)
    (blade_wear, cup_wear) = (span for _, span in whole.wheels)
    assert blade_wear.high == pytest.approx(2.01 * 0.31 * (6 - 1.5875) / blade.life.low, rel=0.01)
    # the last slot is half a pitch over
    assert cup_wear.high == pytest.approx(litres / cup.life.low, rel=0.02)


def test_blocks_on_a_floor_are_the_reach() -> None:
    """On a floor, blocks exactly p high bring the blade to the floor's level (common practice, no source)."""
    assert floor_blocks(0.011, 0.0, [0.0, 0.002]) == (0.011, pytest.approx(0.009))


def test_dressed_sizes() -> None:
    """American Softwood Lumber Standard PS 20, dry dressed sizes (read; edition and table not noted): 1x6
    3/4 x 5 1/2, 2x4 1 1/2 x 3 1/2, 2x6 1 1/2 x 5 1/2, 2x8 1 1/2 x 7 1/4 in. Hardwood charts differ.
    """
    dressed = {
        "1x (3/4 in)": 0.75, "2x (1 1/2 in)": 1.5, "2x4 on edge (3 1/2 in)": 3.5,
        "2x6 on edge (5 1/2 in)": 5.5, "2x8 on edge (7 1/4 in)": 7.25,
        "1/4 in sheet": 0.25, "1/2 in sheet": 0.5,  # sheets as they are named
    }  # fmt: skip
    assert dressed == DRESSED_INCH


@pytest.mark.parametrize(("b", "h", "moment"), [(1.5, 3.5, 5.359), (1.5, 5.5, 20.797), (3.5, 1.5, 0.984)])
def test_second_moments(b: float, h: float, moment: float) -> None:
    """Section properties of dressed lumber, NDS Supplement table 1B (the table from memory, the figures
    read): 2x4 5.359, 2x6 20.797, 2x4 flat 0.984 in4; b h^3 / 12 by arithmetic.
    """
    assert second_moment(b, h) == pytest.approx(moment, abs=6e-4)


def test_beam_formula() -> None:
    """Simply supported beam, 5 w L^4 / 384 E I: w 500 N/m, L 4 m, E 200 GPa, I 1000 cm4 -> 0.833 mm
    (arithmetic). P at the middle: P L^3 / 48 E I.
    """
    assert sag_own_weight(500, 4, 200e9, 1000e-8) * 1000 == pytest.approx(0.833, abs=5e-4)
    assert sag_point_load(1, 48 ** (1 / 3), 1, 1) == pytest.approx(1.0)


@pytest.mark.parametrize(("b", "h", "sag"), [(5.5, 0.75, 0.254), (0.75, 5.5, 0.0047), (1.5, 3.5, 0.0116)])
def test_boards_hang_through(b: float, h: float, sag: float) -> None:
    """A 96 in span under its own weight, E 1.4 million psi and 26 lb/ft3 (both from memory): 1x6 flat 0.254
    in, on edge 0.0047, 2x4 on edge 0.0116 (arithmetic).
    """
    load = SOFTWOOD_DENSITY * GRAVITY * b * h * INCH**2
    found = sag_own_weight(load, 96 * INCH, SOFTWOOD_STIFFNESS, second_moment(b * INCH, h * INCH))
    assert found / INCH == pytest.approx(sag, rel=0.01)


def test_string_sag() -> None:
    """w L^2 / 8 T with a builder's line of 0.7 g/m (common practice, no source): 0.24 mm at 30 N over 2.9 m,
    0.72 at 10 N (arithmetic).
    """
    assert string_sag(2.9, 30) * 1000 == pytest.approx(0.24, abs=0.005)
    assert string_sag(2.9, 10) * 1000 == pytest.approx(0.72, abs=0.03)


@pytest.mark.parametrize(("wheel", "cfm"), [(7, 175), (5, 125), (4.5, 112.5)])
def test_airflow(wheel: float, cfm: float) -> None:
    """29 CFR 1926.1153(c)(1) Table 1 (xi) (read): 25 cfm or more per inch of wheel: 7 in 175, 5 in 125
    (read), 4 1/2 in 112.5 (arithmetic). A cubic foot a minute is 4.719 474 E-04 m3/s (NIST SP 811 appendix
    B.8; exact from the foot).
    """
    assert airflow(wheel * INCH) == pytest.approx(cfm * 4.719474e-4, rel=1e-6)


# 29 CFR 1926.1153(c)(1) Table 1, as California's title 8, 1532.3 repeats it (read): task, hours a shift,
# place, assigned protection factor, 0 = "None". (ii) hand saw with water; (vii) drill; (xi) grinder other
# than for mortar; (xii) walk-behind milling machine or floor grinder. Where hours or place are not known the
# stricter column counts.
@pytest.mark.parametrize(
    ("task", "place", "hours", "mask"),
    [
        ("grinder", "outdoors", 3, 0), ("grinder", "outdoors", 6, 0), ("grinder", "indoors", 4, 0),
        ("grinder", "indoors", 4.1, 10), ("hand saw", "outdoors", 4, 0), ("hand saw", "outdoors", 4.1, 10),
        ("hand saw", "indoors", 1, 10), ("hand saw", "indoors", 5, 10), ("floor machine", "outdoors", 8, 0),
        ("floor machine", "indoors", 8, 0), ("drill", "outdoors", 8, 0), ("drill", "indoors", 8, 0),
        ("grinder", None, None, 10), ("hand saw", None, 1, 10), ("hand saw", "outdoors", None, 10),
    ],
)  # fmt: skip
def test_respirators_of_table_1(task: str, place: str | None, hours: float | None, mask: int) -> None:
    assert mask_needed(task, place, hours, wet=task == "hand saw") == mask


def test_dust_limits() -> None:
    """Respirable crystalline silica over eight hours: 50 ug/m3, action level 25 (29 CFR 1926.1153 (d)(1),
    (b)); 0.1 mg/m3 (Directive 2004/37/EC annex III, as amended by (EU) 2017/2398); 0.1 (EH40/2005); 0.05
    (Australia, since July 2020). All read.
    """
    micrograms = [limit * 1e9 for limit in (PERMISSIBLE, ACTION, EUROPEAN, BRITISH, AUSTRALIAN)]
    assert micrograms == pytest.approx([50, 25, 100, 100, 50])


def test_dust_controls_are_the_tables() -> None:
    """29 CFR 1926.1153(c)(1) Table 1 (read): (xi) grinder with shroud and collector, 99 % filter, cyclone or
    filter cleaning; (xii) floor machine with a collector, indoors a HEPA vacuum between passes; (vii) drill
    with shroud and collector, 99 % filter with cleaning, holes by a HEPA vacuum. NIOSH: dry grinding of
    concrete gave 35 to 55 times the limit (read).
    """
    tools = {t.task + t.use: t for t in load_tools(Path(__file__).parents[2] / "configs" / "tools")}
    grinder = silica_line(tools["grinderkerf"], "outdoors", 5, "US")
    assert "113 cfm" in grinder.control and "191 m3/h" in grinder.control  # 112.5 cfm, rounded up; 191.1
    assert "99 % filter" in grinder.control and "cyclone" in grinder.control
    assert grinder.mask == 0 and grinder.airflow == pytest.approx(112.5 * 4.719474e-4, rel=1e-6)
    machine = tools["floor machineface"]
    assert "HEPA" in silica_line(machine, "indoors", 5, "US").control
    assert "HEPA" not in silica_line(machine, "outdoors", 5, "US").control
    saw = silica_line(tools["hand sawkerf"], None, None, "US")
    assert "water" in saw.control and saw.mask == 10 and saw.airflow is None
    drill = drill_line("outdoors", 8, "US")
    assert all(w in drill.control for w in ("shroud", "99 %", "filter cleaning", "HEPA")) and drill.mask == 0
    said = " ".join(c.full for c in cautions(work_job(), ()))
    assert "35 to 55 times" in said


# Directive 2002/44/EC, article 3(1) (read): exposure limit value 5 m/s2, action value 2.5 m/s2, both A(8);
# annex A with ISO 5349-1: A(8) = a sqrt(T / 8 h). Minutes of trigger a day by arithmetic from these.
@pytest.mark.parametrize(
    ("vibration", "action", "limit"), [(2.5, 480, 1920), (5, 120, 480), (9, 37.04, 148.15), (10, 30, 120)]
)
def test_vibration(vibration: float, action: float, limit: float) -> None:
    assert trigger_limit(vibration, ACTION_VALUE) * 60 == pytest.approx(action, rel=2e-4)
    assert trigger_limit(vibration, LIMIT_VALUE) * 60 == pytest.approx(limit, rel=2e-4)
    tool = dataclasses.replace(GRINDER, vibration=Range(1.0, vibration))
    (note,) = [n for n in work_out(0.001, 0.1, (tool,), ()).notes if "Vibration" in n]
    assert f"{round(action)} min of trigger a day reach the action value" in note
    assert f"{round(limit)} min the limit (2002/44/EC)" in note


@pytest.mark.parametrize(
    ("rise", "slope", "said"),
    [
        (0.25, math.inf, "ok"), (0.26, math.inf, "bevel"), (0.50, 1 / 2, "ok"), (0.50, 1 / 1.9, "bevel"),
        (0.51, 1 / 2, "ramp"), (0.51, 1 / 12, "ok"),
    ],
)  # fmt: skip
def test_edges(rise: float, slope: float, said: str) -> None:
    """2010 ADA Standards 303.2: 1/4 in vertical; 303.3: to 1/2 in bevelled, not steeper than 1:2; 303.4:
    above it a ramp (405.2: 1:12). All read; inches govern.
    """
    assert edge_rule(rise * INCH, slope).startswith(said)


@pytest.mark.parametrize(
    ("along", "across", "words", "quiet"),
    [
        (0.0499, 0.0207, (), ("402", "403.3", "stand")),  # 1:20 and 1:48 just kept
        (0.0501, 0.0207, ("steeper than 1:20 (402)",), ("403.3",)),
        (0.0499, 0.0210, ("steeper than 1:48 (403.3)",), ("402",)),
        (0.010, 0.012, ("water may stand", "2.5 %"), ("402", "403.3")),
    ],
)
def test_walks(along: float, across: float, words: tuple[str, ...], quiet: tuple[str, ...]) -> None:
    """2010 ADA Standards 402.2, 403.3: 1:20 running, 1:48 cross (read). AS/NZS 3727.1 asks 2.5 % of
    residential paving, ACI 302.1R-04 1/4 in a foot (read, clauses not noted): the ADA's steepest cross slope
    is the ACI's least.
    """
    u, v = np.meshgrid(np.arange(0, 3, 0.02), np.arange(0, 1.2, 0.02))
    plane = along * u + across * v
    frame = GridFrame((0.0, 0.0), 0.0, 0.02, plane.shape)
    found = walk_slope("public walk", plane, plane, np.ones(plane.shape, bool), frame, 0.25)
    assert found is not None
    assert (found.along_after, found.across_after) == (pytest.approx(along), pytest.approx(across))
    said = " ".join(found.said)
    assert all(w in said for w in words) and not any(f"({q})" in said for q in quiet if q.isdigit())
    assert "no room between the two" in said and RESIDENTIAL == 0.025 > DRAINS
    assert (RUNNING, RAMP, FLARE) == (1 / 20, 1 / 12, 1 / 10)


def test_slopes() -> None:
    """ACI 302.1R-04: 1/4 in a foot is 2.083 %, which is ADA 403.3's 1:48; 1/2 % one way and 1/2 % the other
    are 0.71 % along the diagonal (read). Ramp 1:12 (ADA 405.2), flare 1:10 (406.3), running slope 1:20
    (402.2).
    """
    assert pytest.approx(0.02083, abs=5e-6) == DRAINS
    assert pytest.approx(DRAINS, abs=1e-12) == CROSS
    assert diagonal_slope(0.005, 0.005) == pytest.approx(0.0071, abs=5e-5)


def test_masses() -> None:
    """Normal concrete 2,400 kg/m3, 150 lb/ft3 (read; clause not noted): 1 m2 x 10 mm is
    24.0 kg, 1 ft2 x 1/4 in 3.125 lb (arithmetic).
    """
    assert mass_of(0.010) == pytest.approx(24.0)
    assert mass_of(FOOT**2 * INCH / 4) / 0.45359237 == pytest.approx(3.125, rel=2e-3)
