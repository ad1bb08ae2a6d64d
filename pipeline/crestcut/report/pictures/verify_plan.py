"""``checked.png``: the work from above, twice: what is gone, and what is still to go."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np

from crestcut.base.units import both, litres, millimetres, number
from crestcut.report.exchange.mesh import depth_grid
from crestcut.report.pictures import ink, plan_layers
from crestcut.report.pictures.plan import colour_bar
from crestcut.report.pictures.plan_contours import contour_levels
from crestcut.report.pictures.plan_relief import ground_picture
from crestcut.report.pictures.plan_window import Window
from crestcut.report.view.verify_report import report_gone, report_now
from crestcut.report.words.verify import fight_lines, told_chance, verdict_words
from crestcut.study import Report
from crestcut.verify import Check

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure

FOOT_ROOM, NAME_ROOM = 0.62, 0.30  # in
BETWEEN, KEY_WIDTH = 0.55, 2.75  # in
TALLEST, LOWEST = 5.2, 2.4  # in
AIR = 0.25  # m about the work
Box = tuple[float, float, float, float]  # left, bottom, width, height, in


@dataclass(frozen=True, eq=False)
class Panels:
    """Both maps with one colour scale: the slab with what is gone, and the slab now with what is to go."""

    gone: Report
    still: Report
    deepest: float
    window: Window


def panels_of(report: Report, check: Check) -> Panels:
    """What the two maps show."""
    gone, still = report_gone(report, check), report_now(report, check)
    assert gone.plan is not None and still.plan is not None
    deepest = max(gone.plan.deepest, still.plan.deepest, report.plan.deepest if report.plan else 0.0)
    return Panels(gone, still, deepest, _window(report, gone, still))


def _window(report: Report, *shown: Report) -> Window:
    """All that is gone or to go, with air; where that is nothing, a stretch about the tightest place."""
    frame = report.surface.height.frame
    cut = np.zeros(frame.shape, bool)
    for one in (report, *shown):
        cut |= np.nan_to_num(depth_grid(one)) > 0.0005
    rows, columns = np.nonzero(cut)
    if len(rows) == 0:
        worst = shown[-1].before.worst
        u, v = frame.to_grid(worst.xy) if worst is not None else np.array(frame.size) / 2
        return Window(u - 1.0, v - 1.0, u + 1.0, v + 1.0)
    cell = frame.cell
    return Window(columns.min() * cell, rows.min() * cell, columns.max() * cell, rows.max() * cell).grown(AIR)


def draw_checked(report: Report, check: Check, path: Path) -> None:
    """Write the picture. Coordinates on it are those of the scan before the work."""
    with ink.styled():
        ink.save(checked_figure(report, check), path, report_now(report, check).identity)


def checked_figure(report: Report, check: Check) -> Figure:
    """Both maps side by side, and the key, as a matplotlib figure."""
    shown, words = panels_of(report, check), verdict_words(report, check)
    left = ink.MARGIN + 0.55
    wide = (ink.PAGE_WIDTH - left - ink.MARGIN - KEY_WIDTH - 2 * BETWEEN) / 2
    tall = float(np.clip(wide / (shown.window.width / shown.window.height), LOWEST, TALLEST))
    figure = ink.new_figure(FOOT_ROOM + tall + NAME_ROOM + ink.head_room(shown.still, words))
    page = ink.paper(figure)
    ink.head(figure, shown.still, "The work from above, checked; travel runs from left to right", words)
    draw_panels(figure, page, shown, check, (left, FOOT_ROOM, wide, tall), BETWEEN)
    key = left + 2 * wide + 2 * BETWEEN
    top = ink.key(page, key, FOOT_ROOM + tall, plan_layers.signs(shown.still), 2, KEY_WIDTH) - 0.22
    if shown.deepest > 0:
        levels = contour_levels(np.array([shown.deepest]))
        colour_bar(page, shown.deepest, levels, key, top - 0.3, KEY_WIDTH, "depth: mm below, inches above")
        top -= 0.85
    facts = ink.wrapped(checked_facts(report, check))
    page.text(key, top, facts, **{**ink.BODY, "fontsize": 7.2}, va="top", linespacing=1.35)
    ink.foot(figure, shown.still)
    return figure


def draw_panels(figure: Figure, page: Axes, shown: Panels, check: Check, first: Box, between: float) -> None:
    """Both maps, the first in ``first`` (in from the lower left), the second to the right of it."""
    left, bottom, wide, tall = first
    told = "as the two scans tell it" if check.removed is not None else "as the readings by hand make likely"
    names = ("Gone: not known" if check.fights else f"Gone, {told}", _still_name(check))
    for k, (report, name) in enumerate(zip((shown.gone, shown.still), names, strict=True)):
        x = left + k * (wide + between)
        window = shown.window.fitted(wide / tall)
        axes = ink.axes_at(figure, x, bottom, wide, tall)
        depth = depth_grid(report)
        plan_layers.draw_map(axes, report, depth, _picture(report, depth, shown), window, detail=True)
        page.text(x, bottom + tall + 0.07, name, **ink.BODY, fontweight="bold")


def _picture(report: Report, depth: np.ndarray, shown: Panels) -> np.ndarray:
    """Ground with depths on the scale that both maps share."""
    from dataclasses import replace

    assert report.plan is not None
    return ground_picture(replace(report, plan=replace(report.plan, deepest=shown.deepest)), depth)


def _still_name(check: Check) -> str:
    if check.fights:
        return "Still to go: not known"
    if check.still.deepest <= 0:
        return "Still to go: nothing" if check.cautious else "Still to go: nothing, at best estimate"
    return "Still to go: the next pass" if check.cautious else "Still to go, at best estimate"


def checked_facts(report: Report, check: Check) -> list[str]:
    """The figures beside the maps."""
    first, still = check.first, check.still
    if check.fights:
        return [
            "Least gap now: not known", f"Asked for {both(first.asked)}", *fight_lines(check),
            f"Coordinates are those of the scan before the work, in {report.scan.frame.unit}",
        ]  # fmt: skip
    low, high = first.today.interval
    facts = [
        f"Least gap now {both(first.today.least_clearance)}",
        f"95 % between {millimetres(low)} and {millimetres(high)}",
        f"Asked for {both(first.asked)}",
        f"In use {both(first.in_use.least_clearance)}, "
        + (told_chance(first.in_use)[2:] or first.in_use.verdict),
    ]
    planned = report.plan.volume if report.plan is not None else 0.0
    if check.removed is not None:
        sd = check.removed.volume_sd * 1000
        facts.append(f"Gone {litres(max(check.removed.volume, 0.0))}, give or take {number(2 * sd)}")
        facts.append(f"Planned {litres(planned)}")
        facts.append(f"One depth is known to {millimetres(2 * check.removed.typical)} either way")
    elif check.share is not None:
        facts.append(
            f"Gone {check.share.best:.0%} of the planned depth, give or take {2 * check.share.sd:.0%},"
            " if the plan was followed evenly"
        )
    if check.clearance == "not yet" and check.short is not None:
        facts.append(f"Short of it by {both(check.short.best)}")
    if still.deepest > 0:
        name = "The next pass" if check.cautious else "Still to go, at best estimate,"
        facts.append(f"{name} {both(still.deepest)} at the deepest, {litres(still.volume)}")
    facts += [f"Step left: {millimetres(e.rise)} in 60 mm" for e in check.edges[:2]]
    facts.append(f"Coordinates are those of the scan before the work, in {report.scan.frame.unit}")
    return facts
