"""The floor case: a high spot taken down to a level, the board on blocks that stand on printed datum spots.

On a floor the clearance line is the level wanted itself, so a block on a spot at that level is exactly as
high as the cutter reaches, and a spot that stands h above the level has a block h lower.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Sequence

import numpy as np

from crestcut.base.errors import CrestcutError
from crestcut.base.grid import BoolArray, FloatArray, HeightGrid
from crestcut.base.units import both
from crestcut.work.jig import SMOOTHING, reach_below
from crestcut.work.jig_records import Block, FloorJig, Spot, Tool
from crestcut.work.site import FARTHEST, FOOT, Site
from crestcut.work.ties import Marks, ties_at
from crestcut.work.timber import SCREW, Stock, choose_board, stock_of

AROUND = 12  # datum spots round a high spot
CLEAR = 0.10  # m from the high spot's edge to a datum spot
EVEN = 0.0015  # m: what counts as a plane floor
PAIRS = 6  # boards that cross the high spot


def floor_blocks(
    reach: float, smoothing: float, datum: Sequence[float], level: float = 0.0
) -> tuple[float, ...]:
    """Blocks on datum spots of a floor: exactly the reach (and smoothing) high where the spot is at the level
    wanted, less where the spot stands above it. datum : heights of the spots over the level's zero, m."""
    return tuple(reach + smoothing + level - spot for spot in datum)


def make_floor_jig(
    site: Site,
    level: FloatArray,
    tool: Tool,
    metric: bool = False,
    marks: Marks | None = None,
    height: HeightGrid | None = None,
    stock: Stock | None = None,
    before: int = 0,
) -> FloorJig:
    """Datum spots round the largest high spot of a floor, and the pairs of them that a board bridges.

    site : ``finished`` is the floor once the high spots are gone.  level : (ny, nx) the level wanted, m: any
    surface a straight board can lie on, so a plane.  marks, height : for the tapes to the spots.  stock :
    what the blocks are made of; None: of a timber yard.  before : datum spots that are numbered already.
    Raises CrestcutError where nothing is high, or no sound floor for blocks is found around it.
    """
    high = site.depth > 0
    if not high.any():
        raise CrestcutError("nothing stands over the level wanted", "floor", "there is nothing to grind")
    rows, columns = np.nonzero(high)
    centre = float(rows.mean()), float(columns.mean())
    worn, new = reach_below(tool, choose_board(1.0, tool.mass, metric))
    # a spot that stands so high that its block would have no height is no spot
    places = [
        (j, i)
        for j, i in _round(site, high, centre)
        if new + SMOOTHING - float(site.ground[j, i] - level[j, i]) >= SCREW.low
    ]
    if len(places) < 2:
        raise CrestcutError(
            "no sound floor for blocks round the high spot", "floor", "scan a wider piece of the floor"
        )
    pairs = _pairs(places, centre, site.cell)
    span = max((math.dist(places[a], places[b]) * site.cell for a, b in pairs), default=1.0)
    board = choose_board(min(span, FARTHEST), tool.mass, metric)
    over = [float(site.ground[j, i] - level[j, i]) for j, i in places]
    blocks = floor_blocks(new, SMOOTHING, over)
    timber = _timber(stock or stock_of(None, metric), min(blocks))
    spots = tuple(
        Spot(
            f"F{before + k + 1}",
            float(site.station[i]),
            float(site.offset[j]),
            block,
            ties_at(site, marks or {}, height, j, i),
        )
        for k, ((j, i), block) in enumerate(zip(places, blocks, strict=True))
    )
    return FloorJig(
        tool, board, new, worn, SMOOTHING, spots, tuple((f"F{before + a + 1}", f"F{before + b + 1}") for a, b
        in pairs), float(site.depth.max()), float(site.depth.sum()) * site.cell**2 * 1000, timber,
    )  # fmt: skip


def _timber(stock: Stock, least: float) -> Block:
    """What every block is sawn of: as thick as leaves a screw in its top to be set on every spot.

    Raises CrestcutError where the thinnest of the stock is too thick.
    """
    height = max((h for h in stock.heights if h <= least - SCREW.low + 1e-9), default=None)
    if height is None:
        raise CrestcutError(
            f"the thinnest block of stock is {both(min(stock.heights))} and a block of {both(least)} with"
            " its screw is"
            " asked for", "[work] blocks", "name thinner pieces, or a tool that reaches farther",
        )  # fmt: skip
    if least - height > SCREW.high:
        raise CrestcutError(
            f"no block of stock comes within {both(SCREW.high)} of {both(least)}", "[work] blocks",
            "name thicker pieces",
        )  # fmt: skip
    return Block(height, stock.stack(height))


def _round(site: Site, high: BoolArray, centre: tuple[float, float]) -> list[tuple[int, int]]:
    """The first sound place beyond the high spot's edge, every 30 degrees round its centre."""
    foot, clear = max(round(FOOT / site.cell), 1), round(CLEAR / site.cell)
    out: list[tuple[int, int]] = []
    for turn in np.arange(AROUND) * 2 * math.pi / AROUND:
        way = math.sin(turn), math.cos(turn)
        edge = None
        for step in range(1, sum(high.shape)):
            j, i = round(centre[0] + way[0] * step), round(centre[1] + way[1] * step)
            if not (foot <= j < high.shape[0] - foot and foot <= i < high.shape[1] - foot):
                break
            if high[j, i]:
                edge = step
            elif (
                step >= (edge or 0) + clear
                and site.standing[j - foot : j + foot + 1, i - foot : i + foot + 1].all()
            ):
                if not any(math.hypot(j - b, i - a) < 2 * foot for b, a in out):
                    out.append((j, i))
                break
    return out


def _pairs(
    places: Sequence[tuple[int, int]], centre: tuple[float, float], cell: float
) -> list[tuple[int, int]]:
    """Pairs whose board passes nearest over the middle of the high spot."""
    found = []
    for a, b in itertools.combinations(range(len(places)), 2):
        p, q = np.asarray(places[a], float), np.asarray(places[b], float)
        long = float(np.hypot(*(q - p)))
        if long * cell > FARTHEST:
            continue
        away = abs(float((q - p)[0] * (centre[1] - p[1]) - (q - p)[1] * (centre[0] - p[0]))) / long
        share = float((np.asarray(centre) - p) @ (q - p)) / long**2
        if 0.2 < share < 0.8:
            found.append((away * cell, a, b))
    return [(a, b) for _, a, b in sorted(found)[:PAIRS]]
