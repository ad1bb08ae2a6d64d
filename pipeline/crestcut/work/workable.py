"""The planned surface as a board can make it: strips across the cut, in each the fewest straight settings.

A board is straight, and a strip of concrete a hand wide is cut from one pair of block heights, so the sheets
are drawn from a surface made of such strips. It follows the plan within a quarter of a millimetre where the
plan is smooth. A plan from a wavering scan wavers with it: there the strips may lie up to 0.4 of the scan's
own error (1.5 mm at most, and no more than the ground's own waver asks for) *deeper*, never higher, because
following noise to the quarter millimetre buys nothing. What only the feather asks for is no setting: it is
ground away evenly from the strips' edge to the stop lines.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from crestcut.base.grid import BoolArray, FloatArray
from crestcut.base.units import millimetres
from crestcut.cut import feather_out
from crestcut.work.site import Setting, Site
from crestcut.work.strips import CLOSE, Fitter, lay_strips
from crestcut.work.timber import LEAST_BLOCK

SKIN = 0.0003  # m: shallower is not worth letting a cutter down
# of the scan's own error; m: how much deeper a strip may lie on a wavering plan
OF_ERROR, MOST_DEEPER = 0.4, 0.0015
WAVES = 6.0  # times the waver: two of it for each of the two blocks and the place between them
OVER_RIDGE = 0.002  # m: air between board and ridge where the board has to be raised
LONGEST_RAISE = 0.040  # m
WIDEST = 0.10  # m: a strip is no wider than a hand


@dataclass(frozen=True, eq=False)
class Workable:
    """finished (ny, nx) m: what the sheets ask for.  core : what settings or hand cut; the rest of the cut
    is its feather.

    strips : first and last row of each.  left : (first row, last row, first column, last column, why) of
    pieces no board can follow.
    """

    finished: FloatArray
    core: BoolArray
    strips: tuple[tuple[int, int], ...]
    settings: tuple[Setting, ...]
    left: tuple[tuple[int, int, int, int, str], ...]
    short: int  # pieces too short for a board
    deeper: float  # m: how much deeper than the plan a strip may lie


def make_workable(
    site: Site, wheels: tuple[float, float], below: float | None = None, widest: float = WIDEST
) -> Workable:
    """Strips and settings for the whole cut. wheels : stations where the blocks stand if they can, m.

    below : finished concrete under the board, m: settings whose board would lie on concrete that stays, or
    whose blocks would have no height, are left to something else. None: no board is used.
    """
    most = float(site.depth.max(initial=0.0))  # nowhere deeper than the plan's deepest place
    site = replace(site, allowed=np.minimum(np.inf if site.allowed is None else site.allowed, most))
    deeper = min(OF_ERROR * site.error - CLOSE, WAVES * waver(site), MOST_DEEPER)
    deeper = deeper if deeper > CLOSE else 0.0  # less is a smooth plan
    core = core_of(site)
    fitter = Fitter(site, core, wheels, deeper)
    strips: list[tuple[int, int]] = []
    settings: list[Setting] = []
    left: list[tuple[int, int, int, int, str]] = []
    short = 0
    for low, high, fits in lay_strips(fitter, core, widest):
        strips.append((low, high))
        for run, found, why in fits:
            if why == "short":
                short += 1
            elif why:
                left.append((low, high, *run, why))
            for setting in found:
                refused = "" if below is None else refusal(site, setting, below)
                if refused:
                    left.append((low, high, min(setting.start), max(setting.stop), refused))
                else:
                    settings.append(replace(setting, strip=len(strips) - 1))
    finished = _finished(site, core, settings)
    return Workable(finished, core, tuple(strips), tuple(settings), tuple(left), short, deeper)


def refusal(site: Site, setting: Setting, below: float) -> str:
    """Why a board cannot lie where this setting puts it; empty where it can. below : as for
    ``make_workable``.
    """
    if min(setting.rear, setting.front) + below < LEAST_BLOCK:
        return "a block would be lower than the thinnest stock"
    stays = ridge_over(site, setting, below, stays=True)
    if stays > -OVER_RIDGE / 2:
        return "the board would lie on concrete that stays"
    raised = ridge_over(site, setting, below) + OVER_RIDGE
    return (
        f"the ridge stands {millimetres(raised)} over the board's last place"
        if raised > LONGEST_RAISE
        else ""
    )


def ridge_over(site: Site, s: Setting, below: float, stays: bool = False) -> float:
    """How far the highest ground under the board stands over its underside, m; ``stays`` : uncut ground
    alone.
    """
    rows, part = slice(s.low, s.high + 1), slice(s.rear_at, s.front_at + 1)
    share = (np.arange(s.rear_at, s.front_at + 1) - s.rear_at) / (s.front_at - s.rear_at)
    ground = site.ground[rows, part]
    under = (ground[:, :1] + s.rear) * (1 - share) + (ground[:, -1:] + s.front) * share + below
    over = ground - under
    if stays:
        over = np.where(site.standing[rows, part], over, -1.0)
    return float(np.nanmax(over))


def waver(site: Site) -> float:
    """How much the scanned ground wavers across a strip, m: robust sd of its second difference over half a
    strip's width.
    """
    n = max(round(WIDEST / 2 / site.cell), 1)
    z = np.where(site.standing, site.ground, np.nan)
    if len(z) <= 2 * n:
        return 0.0
    off = np.abs(z[n:-n] - (z[2 * n :] + z[: -2 * n]) / 2)
    off = off[~np.isnan(off)]
    return 1.4826 * float(np.median(off)) if len(off) else 0.0


def core_of(site: Site) -> BoolArray:
    """Nodes that are cut for their own sake: deeper than their neighbours' feather reaches. (ny, nx)."""
    depth = site.depth
    padded = np.pad(depth, 1)
    held = np.zeros(depth.shape)
    for dj in (0, 1, 2):
        for di in (0, 1, 2):
            if (dj, di) != (1, 1):
                away = np.hypot(dj - 1, di - 1) * site.feather * site.cell
                held = np.maximum(held, padded[dj : dj + depth.shape[0], di : di + depth.shape[1]] - away)
    # a way of eight directions is up to 8 % of a step longer than the straight one that the feather was
    # measured by
    core = (depth > SKIN) & (depth > held + 0.08 * site.feather * site.cell)
    # what only looked like a feather is not reached by one
    reached, _ = feather_out(np.where(core, depth, 0.0), site.feather, site.cell)
    return core | ((depth > SKIN) & (depth - reached > CLOSE))


def _finished(site: Site, core: BoolArray, settings: list[Setting]) -> FloatArray:
    """The plan on the core, the settings over it, feathered out to the ground, nowhere over the limits."""
    depth = np.where(core, site.depth, 0.0)
    done = np.zeros(depth.shape, bool)
    for s in settings:
        for row in range(s.low, s.high + 1):
            first, last = s.columns(row)
            part = slice(first, last + 1)
            cut = np.maximum(np.nan_to_num(site.ground[row, part] - s.level(site.ground, row)), 0.0)
            depth[row, part] = np.where(done[row, part], np.maximum(depth[row, part], cut), cut)
            done[row, part] = True
    assert site.allowed is not None  # at least the plan's deepest
    most = np.maximum(site.allowed, site.depth)
    depth = np.minimum(depth, most)
    shaped, _ = feather_out(depth, site.feather, site.cell)
    shaped = np.minimum(shaped, most)
    return site.ground - np.where(np.isnan(site.ground), 0.0, shaped)


def covered(work: Workable) -> BoolArray:
    """Nodes that a setting cuts, (ny, nx)."""
    out = np.zeros(work.core.shape, bool)
    for s in work.settings:
        for row in range(s.low, s.high + 1):
            first, last = s.columns(row)
            out[row, first : last + 1] = True
    return out
