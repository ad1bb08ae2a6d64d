"""Depth contours with their numbers, the edge of the cut, and its deepest place."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from crestcut.base.grid import FloatArray
from crestcut.base.units import millimetres
from crestcut.report.pictures import ink
from crestcut.report.pictures.colours import SHALLOWEST
from crestcut.report.pictures.labels import Room
from crestcut.study import Report

if TYPE_CHECKING:
    from matplotlib.axes import Axes

TYPE = 6.8  # points
TIGHT = 0.045  # in: where contours lie closer than this a number would cover its neighbours
APART = 0.35  # in between two numbers, at least
LONG = 2.6  # in of one contour that carry a second number


def contour_levels(depth: FloatArray) -> FloatArray:
    """Depths with a contour, metres: 1, 2 or 5 mm apart, at most eight."""
    deepest = float(np.nanmax(depth, initial=0.0))
    if deepest < 0.001:
        return np.zeros(0)
    step = next((s for s in (0.001, 0.002, 0.005) if deepest / s <= 8), ink.nice_step(deepest, 8))
    return np.arange(1, int(deepest / step + 1e-6) + 1, dtype=np.float64) * step


def contour_lines(values: FloatArray, cell: float, level: float) -> list[FloatArray]:
    """Lines of one level over a grid of nodes, each (n, 2) u, v in metres."""
    from contourpy import contour_generator

    if min(values.shape) < 2:
        return []
    found = contour_generator(z=values, name="serial").lines(level)
    return [np.asarray(run, dtype=float) * cell for run in found]


def deepest_place(depth: FloatArray, cell: float) -> tuple[float, float]:
    """u, v of the deepest node; of a floor that is level with it, the node nearest to its middle."""
    rows, columns = np.nonzero(depth >= depth.max() - 0.00005)
    k = int(np.argmin((rows - rows.mean()) ** 2 + (columns - columns.mean()) ** 2))
    return float(columns[k] * cell), float(rows[k] * cell)


def draw_contours(axes: Axes, report: Report, depth: FloatArray, detail: bool, room: Room) -> None:
    """The edge of the cut; where ``detail``, every contour with its number and the deepest place too."""
    filled = np.nan_to_num(depth)
    if filled.max(initial=0.0) < SHALLOWEST or min(filled.shape) < 2:
        return
    cell = report.surface.height.frame.cell
    rows, columns = (np.nonzero(filled.any(axis=k))[0] for k in (1, 0))
    j0, i0 = max(rows[0] - 1, 0), max(columns[0] - 1, 0)
    part = filled[j0 : rows[-1] + 2, i0 : columns[-1] + 2]
    corner = np.array([i0, j0]) * cell
    edge = [run + corner for run in contour_lines(part, cell, SHALLOWEST)]
    effects = ink.halo(2.6 if detail else 1.8)
    ink.strokes(axes, edge, effects, colors=ink.INK, linewidths=1.3 if detail else 0.9, zorder=6)
    for run in edge:
        room.lines(run)
    _keep_words_off(room, part, corner, cell, axes)
    if not detail:
        return
    levels = contour_levels(depth)
    drawn = [[run + corner for run in contour_lines(part, cell, float(level))] for level in levels]
    # Dark lines on the light half of the ramp, light ones on the dark half.
    for colour, half in (
        (ink.INK, levels < 0.5 * levels.max(initial=0)),
        (ink.PALE, levels >= 0.5 * levels.max(initial=0)),
    ):
        runs = [run for k in np.flatnonzero(half) for run in drawn[k]]
        ink.strokes(axes, runs, colors=colour, linewidths=0.6, zorder=6)
        for run in runs:
            room.lines(run, 0.35)
    at = deepest_place(filled, cell)
    ink.line(axes, np.array([at]), ink.halo(), ls="none", marker="+", ms=6, mew=1.0, zorder=9)
    room.taken(at, (0.06, 0.06))
    _number(axes, part, corner, cell, levels, drawn, room)
    if room.shows(at):
        room.put(f"deepest {millimetres(float(filled.max()))}", at, bold=True)


def _keep_words_off(room: Room, part: FloatArray, corner: FloatArray, cell: float, axes: Axes) -> None:
    """Words stand beside the cut rather than on its colours: a tenth of an inch of it counts a little."""
    inch = float(np.ptp(axes.get_xlim())) / ink.axes_size(axes)[0]
    step = max(1, round(0.1 * inch / cell))
    rows, columns = np.nonzero(part[::step, ::step] > 0)
    room.area(np.stack([columns, rows], axis=1) * step * cell + corner, 0.25)


def _number(
    axes: Axes, part: FloatArray, corner: FloatArray, cell: float, levels: FloatArray,
    drawn: list[list[FloatArray]], room: Room,
) -> None:  # fmt: skip
    """A number on every contour that has room for one: where its neighbours stand farthest off."""
    if len(levels) == 0:
        return
    inch = float(np.ptp(axes.get_xlim())) / ink.axes_size(axes)[0]
    slope = np.hypot(*np.gradient(part, cell))
    spacing = (levels[0] / np.maximum(slope, 1e-9)) / inch  # in between neighbouring contours
    placed: list[FloatArray] = []
    for level, runs in zip(levels, drawn, strict=True):
        for run in sorted(runs, key=len, reverse=True)[:2]:
            length = float(np.hypot(*np.diff(run, axis=0).T).sum()) / inch
            for _ in range(2 if length > LONG else 1 if length > 0.3 else 0):
                at = _roomiest(run, spacing, corner, cell, inch, placed)
                if at is None:
                    break
                placed.append(at)
                room.taken((float(at[0]), float(at[1])), (0.08, 0.06))
                axes.text(
                    at[0], at[1], f"{level * 1000:g}", ha="center", va="center", fontsize=TYPE, color=ink.INK,
                    path_effects=ink.halo(2.2), zorder=9, clip_on=True,
                )  # fmt: skip


def _roomiest(
    run: FloatArray,
    spacing: FloatArray,
    corner: FloatArray,
    cell: float,
    inch: float,
    placed: list[FloatArray],
) -> FloatArray | None:
    """The point of a contour where a number covers least; None where all of it is crowded."""
    points = run[:: max(1, len(run) // 80)]
    i, j = np.rint((points - corner) / cell).astype(int).T
    free = np.minimum(spacing[j, i], 0.3)
    away = np.full(len(points), 3.0)
    for other in placed:
        away = np.minimum(away, np.hypot(*(points - other).T) / inch)
    price = np.where((free < TIGHT) | (away < APART), -1.0, free + 0.08 * np.minimum(away, 1.5))
    best = int(np.argmax(price))
    return np.asarray(points[best]) if price[best] > 0 else None
