"""``profile.png``: the slab along the line, the vehicle at its worst station, the low point enlarged."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Any

import numpy as np

from crestcut.base.units import both
from crestcut.chance import left_words
from crestcut.report.pictures import ink
from crestcut.report.pictures.colours import SHALLOWEST
from crestcut.report.pictures.labels import Room
from crestcut.report.pictures.profile_layers import (
    REACH_STYLE,
    cut_words,
    dimension_gap,
    draw_cut,
    draw_ground,
    draw_missing,
    draw_plates,
    draw_steel,
    draw_vehicle,
    gap_words,
    keep_clear,
    signs,
)
from crestcut.report.pictures.section import Section, section_at
from crestcut.report.words.summary import estimate_words, place_words, verdict_line
from crestcut.study import Report

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure
    from matplotlib.ticker import Locator

FOOT_ROOM, GAP = 0.75, 0.85  # in
LEFT = ink.MARGIN + 0.45
WIDE = ink.PAGE_WIDTH - ink.MARGIN - LEFT  # in
DETAIL_TALL, KEY_WIDTH = 3.3, 2.7  # in
STRETCHES = (1, 2, 3, 4, 5, 8, 10, 15, 20)


def draw_profile(report: Report, path: Path) -> None:
    """Write the profile through the worst contact; where nothing was swept, a page that says so."""
    with ink.styled():
        ink.save(profile_figure(report), path, report.identity)


def profile_figure(report: Report) -> Figure:
    """The profile as a matplotlib figure."""
    worst = report.before.worst
    words = verdict_line(report)
    room = ink.head_room(report, words)
    if worst is None:
        figure = ink.new_figure(room + 1.0)
        ink.head(figure, report, "Profile along the line of travel", words)
        ink.foot(figure, report)
        return figure
    section = section_at(report, worst)
    window = _strip_window(section)
    tall = WIDE * (window[3] - window[2]) / (window[1] - window[0])
    bottom = FOOT_ROOM + DETAIL_TALL + GAP
    figure = ink.new_figure(bottom + tall + room)
    page = ink.paper(figure)
    what = f"Profile along the line of travel, through the low point; front axle at {worst.station:.2f} m"
    ink.head(figure, report, what, words)
    strip = ink.axes_at(figure, LEFT, bottom, WIDE, tall)
    shown = _detail_window(report, section)
    _strip(strip, report, section, window, shown)
    page.text(
        LEFT, bottom + tall + 0.07, "True scale: lengths and heights alike", **ink.BODY, fontweight="bold"
    )
    steel = _detail(figure, report, section, shown)
    _key(page, report, steel)
    ink.foot(figure, report)
    return figure


def _strip_window(section: Section) -> tuple[float, float, float, float]:
    """s0, s1, z0, z1 of the true-scale strip: the whole vehicle, and as much slab as was sampled."""
    ground = section.ground[~np.isnan(section.ground)]
    top = float(section.body[:, 1].max())
    low = float(min(ground.min(initial=section.z_ground), section.z_low))
    return float(section.s[0]), float(section.s[-1]), low - 0.16, top + 0.10


def _strip(
    axes: Axes, report: Report, section: Section, window: tuple[float, ...], shown: tuple[float, ...]
) -> None:
    from matplotlib.patches import Rectangle

    axes.set_xlim(window[0], window[1])
    axes.set_ylim(window[2], window[3])
    draw_missing(axes, section)
    draw_ground(axes, section)
    draw_cut(axes, section, words=False)
    draw_vehicle(axes, section)
    draw_plates(axes, section)
    size = (shown[1] - shown[0], shown[3] - shown[2])
    style: dict[str, Any] = {"fill": False, "ec": ink.INK, "lw": 0.8, "ls": ":"}
    axes.add_artist(Rectangle((shown[0], shown[2]), *size, zorder=9, **style))
    arrow = {"arrowstyle": "-|>", "color": ink.INK, "lw": 1.2}
    middle = sum(section.span()) / 2
    reach, high = 0.35 * section.ahead, window[3] - 0.05
    axes.annotate("", (middle + reach, high), (middle - reach, high), arrowprops=arrow, zorder=9)
    axes.set_xlabel("metres along the line of travel, from its start", fontsize=7.2, labelpad=2)
    axes.set_ylabel("height, m", fontsize=7.2, labelpad=2)
    axes.yaxis.set_major_locator(_locator(0.2))
    axes.tick_params(labelsize=6.8, length=2.5)
    ink.watermark(axes, report)


def _locator(step: float) -> Locator:
    from matplotlib.ticker import MultipleLocator

    return MultipleLocator(step)


def _detail_window(report: Report, section: Section) -> tuple[float, float, float, float]:
    """About the low point, wide enough for the cut that belongs to it."""
    half = 0.5
    cut = section.ground - section.finished >= SHALLOWEST
    near = cut & (np.abs(section.s - section.at) < 0.8)
    s0, s1 = section.at - half, section.at + half
    if near.any():
        s0, s1 = min(s0, section.s[near].min() - 0.12), max(s1, section.s[near].max() + 0.12)
    inside = (section.s >= s0) & (section.s <= s1)
    heights = np.concatenate(
        [section.ground[inside], section.finished[inside], [section.z_ground, section.z_low]]
    )
    highest = np.nanmax([section.z_low, section.z_ground, np.nanmax(heights)])
    air = max(0.012, 0.22 * (highest - float(np.nanmin(heights))))
    return float(s0), float(s1), float(np.nanmin(heights)) - 0.5 * air, float(highest) + air


def stretch_for(window: tuple[float, float, float, float]) -> int:
    """How many times the heights are drawn taller than the lengths: the most that fits, of a short list."""
    width = (WIDE - KEY_WIDTH - 0.3) / (window[1] - window[0])  # in per m
    fits = [k for k in STRETCHES if (window[3] - window[2]) * width * k <= DETAIL_TALL]
    return max(fits, default=1)


def _detail(
    figure: Figure, report: Report, section: Section, window: tuple[float, float, float, float]
) -> bool:
    """Draw the enlargement; True if the steel shows in it."""
    s0, s1, z0, z1 = window
    wide = WIDE - KEY_WIDTH - 0.3
    stretch = stretch_for(window)
    span = DETAIL_TALL / (wide / (s1 - s0) * stretch)
    z0, z1 = (z0 + z1 - span) / 2, (z0 + z1 + span) / 2
    axes = ink.axes_at(figure, LEFT, FOOT_ROOM, wide, DETAIL_TALL)
    axes.set_xlim(s0, s1)
    axes.set_ylim(z0, z1)
    draw_missing(axes, section)
    draw_ground(axes, section, track=False)
    steel = draw_steel(axes, report, section)
    draw_cut(axes, section, words=True)
    reach = np.stack([section.s, section.reach], axis=1)
    ink.line(axes, reach, ink.halo(2.0), zorder=6, **REACH_STYLE)
    room = Room(axes)
    keep_clear(room, section, report.job.slab.steel_depth if steel else None)
    worst = report.before.worst
    assert worst is not None
    dimension_gap(axes, section, room)
    gap_words(section, axes, report.least_clearance, room)
    draw_plates(axes, section, room)
    cut_words(axes, section, room)
    axes.set_xlabel("metres along the line of travel, from its start", fontsize=7.2, labelpad=2)
    axes.set_ylabel("height, m", fontsize=7.2, labelpad=2)
    axes.tick_params(labelsize=6.8, length=2.5)
    ink.watermark(axes, report)
    scale = "to true scale" if stretch == 1 else f"heights drawn {stretch} times taller than lengths"
    ink.text_at(
        figure, LEFT, FOOT_ROOM + DETAIL_TALL + 0.07, f"The low point, enlarged: {scale}", fontweight="bold"
    )
    return steel


def _key(page: Axes, report: Report, steel: bool) -> None:
    left = LEFT + WIDE - KEY_WIDTH
    top = ink.key(page, left, FOOT_ROOM + DETAIL_TALL, signs(report, steel), 1, KEY_WIDTH) - 0.15
    style = {**ink.BODY, "fontsize": 7.2}
    page.text(left, top, ink.wrapped(_facts(report)), va="top", linespacing=1.35, **style)


def _facts(report: Report) -> list[str]:
    worst, plan = report.before.worst, report.plan
    facts = []
    if worst is not None:
        gap = report.least_clearance
        say = f"Overlap {both(-gap)}" if gap < 0 else f"Gap {both(gap)}"
        facts += [f"{say}; asked for {both(report.wanted(worst.zone))}"]
        facts += [f"Low point: {place_words(report, worst)}"]
    facts += estimate_words(report)
    if plan is not None and plan.deepest > 0:
        facts.append(f"Cut, hatched: {both(plan.deepest)} at its deepest anywhere")
        if report.left is not None:
            facts.append(f"After it: {left_words(report.left)}")
    if report.vehicle.springs and not report.vehicle.springs.measured and not report.vehicle.rigid:
        facts.append("Springs not measured: equal springs taken")
    return facts
