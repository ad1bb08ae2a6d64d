"""The board on two blocks: how high the blocks of each setting stand, lift by lift.

A board on blocks as high as the underside's clearance has its own underside on the clearance line. A cutter
that reaches p below the board cuts p below that line, and the cup takes s more. To leave the concrete
``want`` below the clearance line c the blocks are c - want + p + s high (common practice); with c = 5 1/2 in,
p = 7/16 in, s = 1/16 in and want = 1/2 in they are 5 1/2 in again.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

import numpy as np

from crestcut.base.errors import CrestcutError
from crestcut.base.grid import FloatArray, HeightGrid
from crestcut.base.units import both, millimetres
from crestcut.cut import Facet
from crestcut.work.jig_records import Block, Board, Jig, JigRow, Lift, Rails, Tool
from crestcut.work.rails import make_rails
from crestcut.work.site import Site, cut_rows, under_board
from crestcut.work.ties import Marks
from crestcut.work.timber import Stock, choose_board, choose_spacer
from crestcut.work.workable import OVER_RIDGE, Workable

SMOOTHING = 0.0015875  # m: 1/16 in, what the cup takes after the slots (common practice, no source)
CLEARS = 0.0005  # m: air that is enough to leave it down
LEAST_REACH = 0.003  # m below the board, worn: less cuts nothing
BY_HAND = "by hand with the shrouded cup, to the dots and the contour table"


def block_height(clearance: float, want: float, reach: float, smoothing: float) -> float:
    """Block height from the clearance line's height over the concrete at the block, all m."""
    return clearance - want + reach + smoothing


def reach_below(tool: Tool, board: Board) -> tuple[float, float]:
    """Reach below the board with guard and shroud fitted: worn, new; m. Raises CrestcutError where the worn
    wheel hardly reaches.
    """
    if tool.reach is None:
        raise CrestcutError(
            f"the {tool.name} has no base that rides on a board", "jig", "take a tool with a reach"
        )
    worn, new = tool.reach.low - board.thickness, tool.reach.high - board.thickness
    if worn < LEAST_REACH:
        raise CrestcutError(
            f"the {tool.name} reaches {both(worn)} below the board with guard and shroud fitted",
            "jig",
            "take a thinner board or a larger tool: guard and shroud stay on",
        )
    return worn, new


def make_jig(
    site: Site,
    work: Workable,
    tool: Tool,
    stock: Stock,
    metric: bool = False,
    marks: Marks | None = None,
    height: HeightGrid | None = None,
) -> Jig:
    """The whole jig sheet. stock : what the facets' blocks were made of.  marks, height : for the tapes to
    the rails' spots; None prints none.

    Raises CrestcutError where the tool's reach does not serve.
    """
    spans = [(b - a) * site.cell for f in work.facets for a, b in zip(f.rear_at, f.front_at, strict=True)]
    board = choose_board(max(spans, default=0.5), tool.mass, metric)
    worn, new = reach_below(tool, board)
    below = new + SMOOTHING
    spacer = choose_spacer(_lift_depth(worn, tool), metric)
    rows = tuple(_row(site, k, f, below, spacer[1]) for k, f in enumerate(work.facets, start=1))
    rails, by_hand = make_rails(site, work, below, marks or {}, height)
    heights = sorted({h for row in rows for h in (row.rear, row.front)})
    return Jig(
        tool,
        board,
        new,
        worn,
        SMOOTHING,
        rows,
        _lifts(site, work.facets, rows, spacer[1], tool),
        tuple(Block(h, stock.stack(h)) for h in heights),
        spacer,
        tool.pitch,
        rails,
        _instead(rails, by_hand),
    )


def below_board(tool: Tool, metric: bool = False) -> float:
    """Finished concrete below the board, m, whatever its length. Raises CrestcutError as ``reach_below``."""
    return reach_below(tool, choose_board(1.0, tool.mass, metric))[1] + SMOOTHING


def lifts_needed(tool: Tool, deepest: float, metric: bool = False) -> int:
    """How often a board is let down for a cut so deep, m. Raises CrestcutError as ``reach_below``."""
    worn, new = reach_below(tool, choose_board(1.0, tool.mass, metric))
    over = deepest - (new + SMOOTHING - OVER_RIDGE)
    return 1 + max(math.ceil(over / choose_spacer(_lift_depth(worn, tool), metric)[1] - 1e-9), 0)


def _row(site: Site, number: int, facet: Facet, below: float, spacer: float) -> JigRow:
    """The blocks of one facet; ``below`` : finished line under the board's underside, m."""
    deepest = max(float(np.nanmax(cut, initial=0.0)) for cut in cut_rows(facet, site.ground))
    ridge = max(float(np.nanmax(over - below, initial=-1.0)) for over in under_board(facet, site.ground))
    raised = ridge + OVER_RIDGE if ridge > -CLEARS else 0.0
    start, stop, rear_at, front_at = (
        (site.station_at(ends[0]), site.station_at(ends[1]))
        for ends in (facet.start, facet.stop, facet.rear_at, facet.front_at)
    )
    return JigRow(
        number, float(site.offset[facet.low]), float(site.offset[facet.high]), start, stop, rear_at, front_at,
        facet.rear + below, facet.front + below, deepest, raised, math.ceil(raised / spacer - 1e-9),
        _part(site, facet),
    )  # fmt: skip


def _part(site: Site, facet: Facet) -> str:
    """The underside's part that sets most of this setting."""
    if site.part is None or not site.parts:
        return ""
    first, last = (max(int(min(ends)), 0) for ends in (facet.start, facet.stop))
    seen = site.part[facet.low : facet.high + 1, first : last + 1]
    seen = seen[seen >= 0]
    return site.parts[int(np.bincount(seen).argmax())] if len(seen) else ""


def _instead(rails: Sequence[Rails], by_hand: int) -> tuple[str, ...]:
    """Each place no board can follow, and what serves there."""
    said = [
        f"Piece {r.name}, offsets {r.low:+.2f} to {r.high:+.2f} m, stations {r.first:.2f} to {r.last:.2f}:"
        f" {r.why}."
        + (
            f" There: the shrouded base on two rails (next sheet); the last {millimetres(r.leaves)} at"
            f" most by the drill dots."
            if r.spots
            else f" There: {BY_HAND}."
        )
        for r in rails
    ]
    if by_hand:
        said.append(f"{by_hand} small piece{'s' if by_hand > 1 else ''} at the fringe: {BY_HAND}.")
    return tuple(said)


def _lift_depth(worn: float, tool: Tool) -> float:
    """What a worn wheel takes under a board that still clears the next ridge, m."""
    return min(worn - OVER_RIDGE, 2 * tool.step) if worn > OVER_RIDGE + 0.001 else worn / 2


def _lifts(
    site: Site, facets: Sequence[Facet], rows: Sequence[JigRow], spacer: float, tool: Tool
) -> tuple[Lift, ...]:
    """Spacers off one by one: no lift deeper than the worn wheel clears, fins knocked off in between."""
    most = max((r.spacers for r in rows), default=-1)
    all_rows = [[np.nan_to_num(cut) for cut in cut_rows(facet, site.ground)] for facet in facets]
    slots = [_slots(each, max(round(tool.pitch / site.cell), 1)) for each in all_rows]
    lifts = []
    for number, spacers in enumerate(range(most, -1, -1), start=1):
        raised, above = spacers * spacer, math.inf if spacers == most else (spacers + 1) * spacer
        # what the cutter leaves below it in this lift, and what of that the one before has left
        deep, gone = (
            [[np.clip(d - SMOOTHING - raised, 0.0, above - raised) for d in each] for each in where]
            for where in (slots, all_rows)
        )
        used = [(r.lane, each) for r, each in zip(rows, deep, strict=True) if r.spacers >= spacers]
        cuts = [d for _, each in used for d in each if d.max(initial=0.0) > 0]
        deepest = max((float(d.max()) for d in cuts), default=0.0)
        levels = np.arange(max(math.ceil(deepest / tool.step - 1e-9), 1)) * tool.step
        metres = sum(float((d > level).sum()) for d in cuts for level in levels) * site.cell
        area = sum(float((d > 0).sum()) for d in cuts) * site.cell * tool.pitch
        taken = sum(float(d.sum()) for each in gone for d in each) * site.cell**2
        lifts.append(
            Lift(
                number,
                spacers,
                raised,
                deepest,
                tuple(lane for lane, _ in used),
                len(cuts),
                metres,
                area,
                taken,
            )
        )
    return tuple(lifts)


def _slots(rows: list[FloatArray], step: int) -> list[FloatArray]:
    """Of a facet's rows those where a slot runs, every ``step``-th, and the last at its edge."""
    return [rows[k] for k in sorted({*range(0, len(rows), step), len(rows) - 1})]
