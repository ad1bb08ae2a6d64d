"""The board on two blocks: how high the blocks stand, lift by lift, and where a straight board cannot follow.

A board on blocks as high as the underside's clearance has its own underside on the clearance line. A cutter
that reaches p below the board cuts p below that line, and the cup takes s more. To leave the concrete
``want`` below the clearance line c the blocks are c - want + p + s high (common practice); with c = 5 1/2 in,
p = 7/16 in, s = 1/16 in and want = 1/2 in they are 5 1/2 in again.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import replace

import numpy as np

from crestcut.base.errors import CrestcutError
from crestcut.base.grid import HeightGrid
from crestcut.base.units import both, millimetres
from crestcut.work.jig_records import Board, Jig, JigRow, Lift, Rails, Stack, Tool
from crestcut.work.rails import make_rails
from crestcut.work.site import FARTHEST, Setting, Site
from crestcut.work.strips import SHORTEST
from crestcut.work.timber import choose_board, choose_spacer, choose_stack
from crestcut.work.workable import OVER_RIDGE, Workable, ridge_over

SMOOTHING = 0.0015875  # m: 1/16 in, what the cup takes after the slots (common practice, no source)
CLEARS = 0.0005  # m: air that is enough to leave it down
LEAST_REACH = 0.003  # m below the board, worn: less cuts nothing
# m of block heights one stack serves: the screw's 22 mm less 1/4 in, the finest step of stock
STACK_SPAN = 0.0155
BY_HAND = "by hand with the shrouded cup, to the depth chart; a depth gauge must read the figure or more"


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
    metric: bool = False,
    marks: Mapping[str, tuple[float, float]] | None = None,
    height: HeightGrid | None = None,
) -> Jig:
    """The whole jig sheet. marks, height : for the tapes to the rails' spots; None prints none.

    Raises CrestcutError where the tool's reach does not serve, or no stock builds a block.
    """
    spans = [(s.front_at - s.rear_at) * site.cell for s in work.settings]
    board = choose_board(min(max(spans, default=0.5), FARTHEST), tool.mass, metric)
    worn, new = reach_below(tool, board)
    below = new + SMOOTHING
    drafts = [_row(site, work, setting, below) for setting in work.settings]
    depth = _lift_depth(worn, tool)
    spacer = choose_spacer(depth, metric)
    stacks, number_of = _stacks(drafts, metric)
    rows = tuple(_finished(row, number_of, spacer[1]) for row in drafts)
    rails, by_hand = make_rails(site, work, below, marks or {}, height)
    return Jig(
        tool,
        board,
        new,
        worn,
        SMOOTHING,
        rows,
        _lifts(rows, spacer[1]),
        stacks,
        spacer,
        tool.pitch,
        rails,
        _instead(rails, work.short + by_hand),
        work.deeper,
    )


def below_board(tool: Tool, metric: bool = False) -> float:
    """Finished concrete below the board, m, whatever its length. Raises CrestcutError as ``reach_below``."""
    return reach_below(tool, choose_board(1.0, tool.mass, metric))[1] + SMOOTHING


def _row(site: Site, work: Workable, s: Setting, below: float) -> JigRow:
    """The blocks of one setting; ``below`` : finished line under the board's underside, m."""
    ridge = ridge_over(site, s, below)
    deepest = 0.0
    for line in range(s.low, s.high + 1):
        first, last = s.columns(line)
        if last >= first:
            part = slice(first, last + 1)
            deepest = max(deepest, float(np.nanmax(site.ground[line, part] - work.finished[line, part])))
    offset, station = site.offset, site.station
    return JigRow(
        s.strip + 1,
        float(offset[s.low] + offset[s.high]) / 2,
        float(offset[s.low]),
        float(offset[s.high]),
        (float(station[s.start[0]]), float(station[s.start[1]])),
        (float(station[s.stop[0]]), float(station[s.stop[1]])),
        float(station[s.rear_at]),
        float(station[s.front_at]),
        s.rear + below,
        s.front + below,
        "",
        "",
        deepest,
        ridge + OVER_RIDGE if ridge > -CLEARS else 0.0,
        0,
        _part(site, s),
    )


def _part(site: Site, s: Setting) -> str:
    """The underside's part that sets most of this setting."""
    if site.part is None or not site.parts:
        return ""
    seen = site.part[s.low : s.high + 1, min(s.start) : max(s.stop) + 1]
    seen = seen[seen >= 0]
    return site.parts[int(np.bincount(seen).argmax())] if len(seen) else ""


def _finished(row: JigRow, number_of: Mapping[float, str], spacer: float) -> JigRow:
    """The row with its stacks and spacers."""
    return replace(
        row,
        rear_stack=number_of[row.rear],
        front_stack=number_of[row.front],
        spacers=math.ceil(row.raise_first / spacer - 1e-9),
    )


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
        said.append(f"{by_hand} pieces shorter than {millimetres(SHORTEST, 0)} at the fringe: {BY_HAND}.")
    return tuple(said)


def _lift_depth(worn: float, tool: Tool) -> float:
    """What a worn wheel takes under a board that still clears the next ridge, m."""
    return min(worn - OVER_RIDGE, 2 * tool.step) if worn > OVER_RIDGE + 0.001 else worn / 2


def _lifts(rows: Sequence[JigRow], spacer: float) -> tuple[Lift, ...]:
    """Spacers off one by one: no lift deeper than the worn wheel clears, fins knocked off in between."""
    if not rows:
        return ()
    most = max(r.spacers for r in rows)
    lifts = []
    for number, spacers in enumerate(range(most, -1, -1), start=1):
        # what a row has left over the underside of its cutter in this lift, at most a spacer beyond its
        # first lift
        deep = [
            r.deepest - SMOOTHING - spacers * spacer if spacers == r.spacers else spacer
            for r in rows
            if spacers <= r.spacers
        ]
        lifts.append(Lift(number, spacers, spacers * spacer, max(max(deep, default=0.0), 0.0)))
    return tuple(lifts)


def _stacks(rows: Sequence[JigRow], metric: bool) -> tuple[tuple[Stack, ...], dict[float, str]]:
    """Blocks for both ends, in as few stacks as the screws allow; and which one makes each height."""
    heights = sorted({h for r in rows for h in (r.rear, r.front)})
    stacks: list[Stack] = []
    number_of: dict[float, str] = {}
    while heights:
        group = [h for h in heights if h - heights[0] <= STACK_SPAN]
        stacks.append(choose_stack(group[0], group[-1], metric, len(stacks) + 1))
        number_of |= dict.fromkeys(group, stacks[-1].number)
        heights = heights[len(group) :]
    return tuple(stacks), number_of
