"""The full-size strip: the deepest strip's depths, to lay on the slab. Check bars both ways."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from crestcut.base.units import INCH
from crestcut.report.pictures import ink
from crestcut.report.sheets.paper import SIDE, Paper
from crestcut.work import SetOut, Worksheet

if TYPE_CHECKING:
    from matplotlib.figure import Figure

PIECE = 0.22  # m of the strip on one page
MOST_PIECES = 8
AIR = 0.01  # m of ruler before the first and past the last depth
LEAST = 0.0005  # m: shallower has no figure
ACROSS = (-0.02, 0.06)  # m, left and right of the untouched surface


def strip_pages(sheet: Worksheet, out: SetOut) -> list[Figure]:
    """The strip with the deepest place: lay it along the strip, the stop marks on the chalk."""
    deepest = max(out.kerfs, key=lambda k: k.depth, default=None)
    if deepest is None:
        return []
    places = [(k.station, k.depth) for k in out.kerfs if k.lane == deepest.lane]
    edge = min((row for row in out.outline), key=lambda row: abs(row[0] - deepest.offset))
    places = sorted({(edge[1], 0.0), *places, (edge[2], 0.0)})
    last = places[-1][0]
    starts = _starts(np.asarray(places), deepest.station)
    figures: list[Figure] = []
    for k, start in enumerate(starts, start=1):
        paper = Paper(
            sheet, f"Full-size depths, strip {deepest.lane}, piece {k} of {len(starts)}. Print at 100 %."
        )
        _piece(paper, np.asarray(places), start, min(start + PIECE, last + AIR))
        figures += paper.figures
    return figures


def _starts(places: np.ndarray, deepest: float) -> list[float]:
    """Where each piece begins, m: from just before the stop line on, none without a depth; of a very long
    strip those round its deepest place.
    """
    first, last = places[0, 0] - AIR, places[-1, 0]
    starts = [float(first + k * PIECE) for k in range(max(int(np.ceil((last - first) / PIECE - 1e-6)), 1))]
    starts = [s for s in starts if _depths(places, np.linspace(s, s + PIECE, 45)).max() > LEAST]
    most = int(
        np.clip(
            sum(s <= deepest for s in starts) - 1 - MOST_PIECES // 2, 0, max(len(starts) - MOST_PIECES, 0)
        )
    )
    return starts[most : most + MOST_PIECES]


def _depths(places: np.ndarray, stations: np.ndarray) -> np.ndarray:
    return np.interp(stations, places[:, 0], places[:, 1], left=0.0, right=0.0)


def _piece(paper: Paper, places: np.ndarray, start: float, end: float) -> None:
    """One piece, stations down the page to ``end``, depths full size to the right."""
    tall, wide = PIECE / INCH, (ACROSS[1] - ACROSS[0]) / INCH
    axes = ink.axes_at(paper.figure, SIDE + 0.7, paper.tall - 1.25 - tall, wide, tall)
    axes.set_xlim(*ACROSS)
    axes.set_ylim(start + PIECE, start)
    axes.set_axis_off()
    stations = np.arange(np.ceil(start * 100 - 1e-6), np.floor(end * 100 + 1e-6) + 1) / 100
    line = np.unique(np.concatenate([stations, places[:, 0], [start, end]]))
    line = line[(line >= start - 1e-9) & (line <= end + 1e-9)]
    depth = _depths(places, line)
    axes.fill_betweenx(line, 0, depth, facecolor="white", edgecolor=ink.INK, hatch="///", lw=0.8)
    axes.plot([0, 0], [start, end], color=ink.INK, lw=1.4)
    ticks = np.array([abs(s * 20 - round(s * 20)) < 1e-6 for s in stations])
    for long, mask in ((0.004, ticks), (0.002, ~ticks)):
        if mask.any():
            ys = np.repeat(stations[mask], 3)
            xs = np.tile([-long, 0.0, np.nan], int(mask.sum()))
            axes.plot(xs, ys, color=ink.INK, lw=0.8)
    for station in stations:
        y = 1.25 + (station - start) / INCH
        if abs(station * 20 - round(station * 20)) < 1e-6:
            paper.put(
                SIDE + 0.7 + (-0.0055 - ACROSS[0]) / INCH,
                y + 0.04,
                f"{station:.2f} m",
                fontsize=8.5,
                ha="right",
            )
        value = float(_depths(places, station))
        if value > LEAST:
            paper.put(
                SIDE + 0.7 + (value + 0.0015 - ACROSS[0]) / INCH,
                y + 0.035,
                f"{value * 1000:.1f}",
                fontsize=7.5,
            )
    _check_bars(paper)


def _check_bars(paper: Paper) -> None:
    """100 mm both ways: a printer that scales shows here."""
    bar = 0.1 / INCH
    left, top = paper.wide - SIDE - bar, 1.9
    paper.line(left, top, left + bar, top, 2.0)
    paper.line(left, top + 0.2, left, top + 0.2 + bar, 2.0)
    paper.put(left, top - 0.09, "this bar is 100 mm (3 15/16 in) long", fontsize=8.5)
    paper.put(left + 0.1, top + 0.2 + bar / 2, "and this one too", fontsize=8.5)
    paper.put(left, top + bar + 0.55, "If not, print again without scaling.", fontsize=8.5)
    paper.put(left, top + bar + 0.95, "Cut out along the thick line and lay it on", fontsize=8.5)
    paper.put(left, top + bar + 1.12, "edge beside the slot: the hatching shows", fontsize=8.5)
    paper.put(left, top + bar + 1.29, "how deep it must be there, in mm.", fontsize=8.5)
