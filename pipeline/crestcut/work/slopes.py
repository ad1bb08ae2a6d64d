"""Edges and finished slopes where people walk: 2010 ADA Standards 303, 402 and 403.3 as the default. Inches
govern there.
"""

from __future__ import annotations

import math

import numpy as np

from crestcut.base.grid import BoolArray, FloatArray, GridFrame
from crestcut.base.units import INCH
from crestcut.work.ground_records import WalkSlope

VERTICAL = INCH / 4  # 303.2
BEVELLED = INCH / 2  # 303.3
BEVEL = 1 / 2  # 303.3: not steeper than 1:2
RUNNING, CROSS = 1 / 20, 1 / 48  # 402, 403.3
RAMP, FLARE = 1 / 12, 1 / 10  # 405.2, 406.3
DRAINS = 0.25 / 12  # ACI 302.1R-04: 1/4 in per ft drains, with some birdbaths
RESIDENTIAL = 0.025  # AS/NZS 3727.1: crossfall of residential paving
BASE = 0.61  # m: a 2 ft level (common practice, no source)
EXACT = 1e-9


def edge_rule(rise: float, slope: float = math.inf) -> str:
    """What a change of level of ``rise`` m with a bevel of ``slope`` (rise over run, inf = vertical) is: ok,
    bevel it, or ramp.
    """
    if rise <= VERTICAL + EXACT:
        return "ok"
    if rise <= BEVELLED + EXACT:
        return "ok" if slope <= BEVEL + EXACT else "bevel to 1:2 or flatter"
    return "ok" if slope <= RAMP + EXACT else "ramp 1:12 or flatter"


def diagonal_slope(along: float, across: float) -> float:
    """Steepest slope of a plane that falls ``along`` one way and ``across`` the other."""
    return math.hypot(along, across)


def walk_slope(
    kind: str, before: FloatArray, after: FloatArray, mask: BoolArray, frame: GridFrame, feather: float
) -> WalkSlope | None:
    """Slopes of one walk before and after; its long side is taken as the way people walk. None where too
    little of it is measured.

    before, after : (ny, nx) heights, m.  mask : (ny, nx) the walk.  feather : rise over run of the cut's
    edge.
    """
    rows, columns = np.nonzero(mask & ~np.isnan(before))
    if len(rows) < 9:
        return None
    along_is_u = np.ptp(columns) >= np.ptp(rows)
    grade_u = [_steepest(z, mask, frame.cell, axis=1) for z in (before, after)]
    grade_v = [_steepest(z, mask, frame.cell, axis=0) for z in (before, after)]
    run, cross = (grade_u, grade_v) if along_is_u else (grade_v, grade_u)
    depth = np.nan_to_num(before - after)
    step = float(depth[mask].max(initial=0.0))
    said = _said(run, cross, edge_rule(step, feather) if step > 0 else "ok", step)
    return WalkSlope(kind, run[0], cross[0], run[1], cross[1], step, said)


def _steepest(z: FloatArray, mask: BoolArray, cell: float, axis: int) -> float:
    """Steepest slope over a 2 ft base (or the walk's width, if less) inside the mask; NaN if none fits."""
    inside = np.where(mask, z, np.nan)
    room = int(mask.any(axis=1 - axis).sum()) - 1
    count = min(round(BASE / cell), room)
    if count < 1:
        return math.nan
    ahead = np.moveaxis(inside, axis, 0)
    slope = np.abs(ahead[count:] - ahead[:-count]) / (count * cell)
    return float(np.nanmax(slope)) if (~np.isnan(slope)).any() else math.nan


def _said(run: list[float], cross: list[float], edge: str, step: float) -> tuple[str, ...]:
    said = []
    if run[1] > RUNNING + EXACT:
        new = "and was before" if run[0] > RUNNING + EXACT else "and was not before the cut"
        said.append(f"running slope {run[1]:.1%} is steeper than 1:20 (402): a ramp by 405, {new}")
    if cross[1] > CROSS + EXACT:
        new = "and was before" if cross[0] > CROSS + EXACT else "and was not before the cut"
        said.append(f"cross slope {cross[1]:.1%} is steeper than 1:48 (403.3), {new}")
    if cross[1] < DRAINS - EXACT and run[1] < DRAINS - EXACT:
        said.append(
            "flatter than 1/4 in a foot (ACI 302.1R) both ways, and than the 2.5 % of AS/NZS 3727.1: water"
            " may stand"
        )
    said.append(
        "1:48 is both the steepest cross slope for walking and the least that drains: there is no room"
        " between the two"
    )
    if edge != "ok":
        said.append(f"the edge of the cut, {step * 1000:.1f} mm: {edge} (303)")
    return tuple(said)
