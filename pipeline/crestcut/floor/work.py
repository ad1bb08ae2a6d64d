"""The hand work on a floor: board and blocks for every high spot, order of work, amounts, and what to measure
first.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

import numpy as np
from scipy import ndimage

from crestcut.base.errors import CrestcutError
from crestcut.base.grid import FloatArray
from crestcut.base.units import both, both_at_most, millimetres
from crestcut.cut import stop_rules
from crestcut.floor.records import Judged, Levelling, Spot
from crestcut.job import FloorJob, Method
from crestcut.work import (
    EVEN,
    HIT_CARDS,
    IDLE,
    INCHES,
    SKIN,
    WORK_CARDS,
    Amount,
    Chosen,
    Dot,
    FloorJig,
    Pass,
    Range,
    Reason,
    ReasonCode,
    Release,
    ReleaseState,
    Site,
    Step,
    Stock,
    Tool,
    TradeWords,
    Water,
    Worksheet,
    cautions,
    choose_method,
    dots_of,
    dust_lines,
    hours_of,
    limit_lines,
    make_floor_jig,
    numbered,
    section_left,
    stock_of,
    tools_at_hand,
    trade_words,
    work_out,
)

SMALL = 0.0025  # m2: a speck is gone with the first pass of the cup
AROUND = 1.6  # m about a high spot in which its datum spots lie
WIDEST = 2.0  # m: wider a high spot is not swept by a board turned about its blocks
MOST = 12  # high spots with a page of their own
# of the volume: what the first tool takes, and what it leaves to the cup (common practice, no source)
SHARES = (0.7, 0.3)
DOT = Range(1.5 / 60, 3 / 60)  # h each (common practice, no source)


@dataclass(frozen=True, eq=False)
class SpotJig:
    """What guides the work on one high spot: board and blocks, or drill dots on a square. ``jig`` None where
    the method needs none or none serves, and ``why`` then says so. dots : their station and offset are the
    raster's u and v, m.
    """

    spot: Spot
    jig: FloorJig | None
    why: str = ""
    dots: tuple[Dot, ...] = ()


@dataclass(frozen=True, eq=False)
class FloorSheet:
    """What the sheets are made from: head, release, passes, amounts and cautions as for any slab; and the
    high spots.
    """

    sheet: Worksheet
    spots: tuple[SpotJig, ...]


def worth(spots: Sequence[Spot]) -> tuple[Spot, ...]:
    """The spots that are worth a line of their own."""
    return tuple(s for s in spots if s.deepest >= SKIN and s.area >= SMALL)


def make_floor_sheet(
    job: FloorJob,
    judged: Judged,
    release: Release,
    marks: Mapping[str, tuple[float, float]],
    tools: Sequence[Tool] | None = None,
) -> FloorSheet:
    """Guides and passes only when released; all else always. marks : site x, y, m.

    Raises CrestcutError for a tool file that is not understood or has guard or shroud off.
    """
    base, levelling = job.base, judged.levelling
    metric = (base.site.country or "").upper() not in INCHES
    tools = tools_at_hand(base.path, base.work.tools) if tools is None else tools
    deepest, volume, area = levelling.deepest, levelling.volume, levelling.area
    way = choose_method(base.work, tools, Amount(deepest, volume, 0.0), metric) if deepest > SKIN else None
    chosen, why = ((), "nothing to grind") if way is None else (way.tools, way.why)
    release = _gated(release, judged)
    spots: tuple[SpotJig, ...] = ()
    if release.state == ReleaseState.OK and way is not None:
        spots = _guides(judged, way, stock_of(base.work.blocks, metric), metric, marks)
    passes = _passes(judged, chosen, spots) if release.state == ReleaseState.OK and deepest > SKIN else ()
    notes = (
        [] if tools or deepest <= SKIN else ["No tool files were found (configs/tools): no jig and no times."]
    )
    if worth(levelling.high) and not levelling.alone_helps:
        notes.append(not_alone(levelling))
    words = trade_words(base.site.country)
    nothing = Water((), (), None, None, "", "", (), "", ())
    return FloorSheet(
        Worksheet(
            title=base.title,
            stamp=release.stamp,
            release=release,
            source=f"job {base.path.name}, {base.date_words} | floor",
            metric=metric,
            words=words,
            first=(),
            marks=tuple((name, *_uv(judged, xy)) for name, xy in sorted(marks.items())),
            jig=None,
            floor=next((s.jig for s in spots if s.jig is not None), None),
            passes=passes,
            method=None if way is None else way.method,
            why_tools=why,
            set_out=None,
            quantities=work_out(volume, area, chosen, passes),
            silica=dust_lines(chosen, base),
            limits=_limits(job, judged, words),
            water=nothing,
            walks=(),
            cautions=cautions(base, tuple(chosen), vehicle=False),
            cards=(*HIT_CARDS, *(WORK_CARDS if passes else ())),
            afterwards=_afterwards(judged),
            notes=tuple(notes),
            check_with="straightedge and level",
        ),
        spots,
    )


def _limits(job: FloorJob, judged: Judged, words: TradeWords) -> tuple[str, ...]:
    """What limits the cut, and where another way is the better buy."""
    slab, deepest, lines = (
        job.base.slab,
        judged.levelling.deepest,
        list(limit_lines(job.base, None, (), words)),
    )
    if slab.thickness is not None and deepest > 0:
        lines.append(section_left(slab.thickness, deepest))
    rules = stop_rules(slab, job.base.site, deepest, judged.levelling.volume)
    if rules:
        lines.append(f"Price a levelling compound over the whole floor as well: {'; '.join(rules)}.")
    return tuple(lines)


def _gated(release: Release, judged: Judged) -> Release:
    """A cut that does not reach the rule, or hand measurements that do not agree, are not handed out."""
    levelling, more = judged.levelling, list[Reason]()
    if not levelling.reached:
        words = f"no cut within the limits reaches what was asked: {both(levelling.short_by)} are missing"
        more.append(Reason(ReasonCode.FALLS_SHORT, words))
    more += [Reason(ReasonCode.READINGS, words) for words in judged.contradictions]
    if not more:
        return release
    return replace(release, state=ReleaseState.NOT_FOR_CUTTING, reasons=(*release.reasons, *more))


def _uv(judged: Judged, xy: tuple[float, float]) -> tuple[float, float]:
    u, v = judged.surface.height.frame.to_grid(xy)
    return float(u), float(v)


def not_alone(levelling: Levelling) -> str:
    """Of grinding that leaves the worst figure as it was."""
    low = ", ".join(s.name for s in worth(levelling.low)) or "the low places"
    return (
        f"Grinding alone leaves the worst place at {millimetres(levelling.ground_only)},"
        f" {millimetres(levelling.today)}"
        f" today: grind only if {low} {'are' if ',' in low else 'is'} filled as well, which brings it to"
        f" {millimetres(levelling.filled)}."
    )


def _guides(
    judged: Judged, way: Chosen, stock: Stock, metric: bool, marks: Mapping[str, tuple[float, float]]
) -> tuple[SpotJig, ...]:
    """What the method needs at each high spot worth it, dots and datum spots numbered through the whole
    floor."""
    blade = way.tools[0] if way.method == Method.BOARD and way.tools else None
    out: list[SpotJig] = []
    for k, spot in enumerate(judged.levelling.high[:MOST]):
        if spot not in worth(judged.levelling.high):
            continue
        jig, why = None, f"{way.method}: by its dots"
        if blade is not None:
            before = sum(len(one.jig.spots) for one in out if one.jig is not None)
            jig, why = _spot_jig(judged, k, blade, stock, (metric, before), marks)
        dots: tuple[Dot, ...] = ()
        if jig is None:
            site, _ = _site_of(judged, k)
            before = sum(len(one.dots) for one in out)
            dots = tuple(dots_of(site, marks, judged.surface.height, before))
        out.append(SpotJig(spot, jig, why, dots))
    return tuple(out)


def _spot_jig(
    judged: Judged, k: int, blade: Tool, stock: Stock, how: tuple[bool, int],
    marks: Mapping[str, tuple[float, float]],
) -> tuple[FloorJig | None, str]:  # fmt: skip
    """The jig, or none and why. how : metric, and how many datum spots are numbered already."""
    spot, (metric, before) = judged.levelling.high[k], how
    u0, v0, u1, v1 = spot.box
    if min(u1 - u0, v1 - v0) > WIDEST:
        return None, f"wider than a board sweeps ({WIDEST:g} m): to its dots"
    site, level = _site_of(judged, k)
    if level is None:
        return None, f"the level round it bends by more than {millimetres(EVEN)}: to its dots"
    try:
        return make_floor_jig(site, level, blade, metric, marks, judged.surface.height, stock, before), ""
    except CrestcutError as error:
        return None, f"{error.what}: to its dots"


def _site_of(judged: Judged, k: int) -> tuple[Site, FloatArray | None]:
    """The floor with this spot alone to be ground, and the plane (ny, nx) that its board cuts to; None where
    what is to be left round it is not plane enough for a board.
    """
    levelling, ground = judged.levelling, judged.surface.height.values
    frame = judged.surface.height.frame
    assert levelling.spot_of is not None
    mine = levelling.spot_of == k
    spot = levelling.high[k]
    finished = np.where(mine, ground - np.nan_to_num(levelling.depth.values), ground)
    standing = judged.surface.height.measured & (np.nan_to_num(levelling.depth.values) <= 0)
    u, v = (np.arange(n, dtype=np.float64) * frame.cell for n in (frame.shape[1], frame.shape[0]))
    site = Site(ground, finished, standing, frame.cell, u, v, None, 0.25)
    near = ndimage.distance_transform_edt(~mine) * frame.cell <= AROUND if mine.any() else mine
    rows, columns = np.nonzero(near)
    thin = slice(None, None, max(1, len(rows) // 20_000))
    rows, columns = rows[thin], columns[thin]
    target = levelling.general.values[rows, columns] + spot.level
    places = np.stack([columns * frame.cell, rows * frame.cell, np.ones(len(rows))], axis=1)
    fit, *_ = np.linalg.lstsq(places, target, rcond=None)
    if float(np.abs(target - places @ fit).max(initial=0.0)) > EVEN:
        return site, None
    grid_v, grid_u = np.meshgrid(v, u, indexing="ij")
    return site, np.asarray(grid_u * fit[0] + grid_v * fit[1] + fit[2])


def lifts_of(spot: Spot, jig: FloorJig) -> int:
    """How often the cutter is let down further until the spot is at its level: the blade's step, or what a
    worn blade reaches below the board.
    """
    step = min(jig.tool.step, max(jig.worn, 1e-4))
    return max(math.ceil(spot.deepest / step - 1e-9), 1)


def _passes(judged: Judged, tools: Sequence[Tool], spots: Sequence[SpotJig]) -> tuple[Pass, ...]:
    """The work in order. Hours are common practice, no source."""
    levelling = judged.levelling
    steps = [
        Step(
            "Chalk, straightedge",
            "Lay the straightedge over every high spot of the plan, both ways; chalk where it rocks. Where"
            " floor and"
            " plan do not agree, stop: the scan is wrong there, or was taken before something was done.",
            Range(0.3, 0.8),
        ),
    ]
    if not levelling.alone_helps:
        first = Step("Agree on the filling", f"{not_alone(levelling)} Not agreed: do not start.", IDLE)
        steps.insert(0, first)
    dots = sum(len(s.dots) for s in spots)
    if dots:
        steps.append(
            Step(
                "Hammer drill with a depth stop",
                f"Drill the {dots} dots of the list to their depths (shrouded bit or vacuum held to it),"
                " paint their"
                " bottoms: they are the level, grind until each is just gone.",
                DOT.times(dots),
            )
        )
    boards = [s for s in spots if s.jig is not None]
    for tool, share in zip(tools, SHARES[: len(tools)] if len(tools) > 1 else (1.0,), strict=True):
        taken = levelling.volume * share
        if tool.use == "kerf" and boards:
            most = max(lifts_of(s.spot, s.jig) for s in boards if s.jig is not None)
            what = (
                f"Board on its blocks over a pair of datum spots, let the blade down"
                f" {both_at_most(tool.step)} at a time,"
                f" {most} lift{'s' if most > 1 else ''} at the highest; slots {millimetres(tool.pitch, 0)}"
                " apart; turn the"
                " board about one block to sweep the spot; fins off with a flat chisel or the cup."
            )
        else:
            what = (
                "Grind from the middle of each high spot outwards in crossing passes, straightedge after"
                " every pass;"
                " run out to nothing at its chalk line. Nothing may trip."
            )
        steps.append(Step(tool.name, what, Range(0, 0), hours_of(tool, taken), 0.0, taken, tool.key))
    if worth(levelling.low):
        steps.append(
            Step(
                "Repair mortar or levelling compound",
                "Fill the low spots of the list to their level once all dust is gone; feather to nothing as"
                " the"
                " product's"
                " own sheet says. They are not to be reached by grinding.",
                Range(0.5, 2.0),
            )
        )
    steps.append(
        Step(
            "Straightedge",
            "Lay it in every direction over ground and filled spots and one length beyond. It, not this plan,"
            " says"
            " when the floor is done.",
            Range(0.3, 0.8),
        )
    )
    return numbered(steps)


def _afterwards(judged: Judged) -> tuple[str, ...]:
    lines = [
        "Straightedge over every spot in every direction; write the largest gap beside each.",
        "Dust: HEPA vacuum twice, the second time a day later; never a broom or an air line.",
        "Joints: re-saw those the cut made shallower, to a quarter of the slab's thickness; clean and fill"
        " them.",
        "A ground floor is smoother and thirstier than it was: whoever lays a covering on it says what"
        " primer it wants.",
        "Record: fill in this page and keep it with the house papers.",
    ]
    if judged.levelling.low:
        lines.insert(1, "Filled spots: no traffic until the product's own sheet allows it.")
    return tuple(lines)
