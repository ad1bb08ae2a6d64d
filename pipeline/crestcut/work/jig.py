"""The board on two blocks: how high the blocks stand, lift by lift, and where a straight board cannot follow.

A board on blocks as high as the underside's clearance has its own underside on the clearance line. A cutter
that reaches p below the board cuts p below that line, and the cup takes s more. To leave the concrete
``want`` below the clearance line c the blocks are c - want + p + s high (common practice); with c = 5 1/2 in,
p = 7/16 in, s = 1/16 in and want = 1/2 in they are 5 1/2 in again.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from crestcut.errors import CrestcutError
from crestcut.grid import BoolArray, FloatArray
from crestcut.units import both, millimetres
from crestcut.work.lanes import Lanes, Segment
from crestcut.work.records import Board, Jig, JigRow, Lift, Stack, Tool
from crestcut.work.timber import SCREW, choose_board, choose_stack

SMOOTHING = 0.0015875  # m: 1/16 in, what the cup takes after the slots (common practice, no source)
OVER_RIDGE = 0.002  # m: air between board and ridge where the board has to be raised
CLEARS = 0.0005  # m: air that is enough to leave it down
SHORT = 0.08  # m: a shorter setting is cut by hand to the slot depths
FOOT = 0.045  # m: half the length of concrete a block stands on
FARTHEST = 4.6  # m between the blocks: beyond it timber is not straight enough
LEAST_REACH = 0.003  # m below the board, worn: less cuts nothing
MANY_SETTINGS = 8  # settings in one lane: more and a board does not serve
LONGEST_RAISE = 0.040  # m
# m of block heights one stack serves: the screw's 22 mm less 1/4 in, the finest step of stock
STACK_SPAN = 0.0155


@dataclass(frozen=True, eq=False)
class Site:
    """What the jig needs of slab and line, on the raster: heights before and after (m), where the cut is,
    stations and offsets (m).
    """

    ground: FloatArray
    finished: FloatArray
    standing: BoolArray  # measured slab that is not cut
    cell: float
    station: FloatArray  # (nx,)
    offset: FloatArray  # (ny,)


def block_height(clearance: float, want: float, reach: float, smoothing: float) -> float:
    """Block height from the clearance line's height over the concrete at the block, all m."""
    return clearance - want + reach + smoothing


def floor_blocks(
    reach: float, smoothing: float, datum: Sequence[float], level: float = 0.0
) -> tuple[float, ...]:
    """Blocks on datum spots of a floor: exactly the reach (and smoothing) high where the spot is at the level
    wanted, less where the
    spot stands above it. datum : heights of the spots over the level's zero, m."""
    return tuple(reach + smoothing + level - spot for spot in datum)


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


def make_jig(site: Site, lanes: Lanes, tool: Tool, wheels: tuple[float, float], metric: bool = False) -> Jig:
    """The whole jig sheet. wheels : stations of rear and front axle at the worst place, where the blocks
    stand if they can.

    Raises CrestcutError where the tool's reach does not serve.
    """
    rows, cannot = [], []
    board = choose_board(min(max(abs(wheels[1] - wheels[0]), 0.5), FARTHEST), tool.mass, metric)
    worn, new = reach_below(tool, board)
    counts = np.bincount([s.lane for s in lanes.segments], minlength=len(lanes.rows))
    by_hand = 0
    for segment in lanes.segments:
        if (segment.last - segment.first) * site.cell < SHORT:
            by_hand += 1
            continue
        if counts[segment.lane] > MANY_SETTINGS:
            cannot.append(
                f"{_lane_words(site, segment)}: too curved for a straight board ({counts[segment.lane]}"
                " settings)"
            )
            continue
        row, why = _row(site, segment, new + SMOOTHING, wheels)
        if row is None:
            cannot.append(f"{_lane_words(site, segment)}: {why}")
        else:
            rows.append(row)
    longest = max((r.front_at - r.rear_at for r in rows), default=board.length - 0.2)
    board = choose_board(longest, tool.mass, metric)
    step = float(np.median([r.stop - r.start for r in rows])) if rows else 0.0
    return Jig(
        tool,
        board,
        new,
        worn,
        SMOOTHING,
        tuple(rows),
        _lifts(rows, worn, tool),
        _stacks(rows, metric),
        step,
        _instead(cannot, by_hand),
    )


def _lane_words(site: Site, segment: Segment) -> str:
    return f"lane {segment.lane} ({site.offset[segment.row]:+.2f} m)"


def _instead(cannot: Sequence[str], by_hand: int) -> tuple[str, ...]:
    """Each reason once, and what serves there."""
    words = (
        f"{by_hand} pieces of lanes are shorter than {millimetres(SHORT, 0)} (feather and corners): cut them"
        " by hand, tilted, to the slot depths; a depth gauge must read the figure or more."
    )
    short = (words,) if by_hand else ()
    if not cannot:
        return short
    serves = (
        "There: a shrouded base on two rails set by the drill dots, or the cup down to the drill dots; the"
        " string decides."
    )
    return (*dict.fromkeys(cannot), serves, *short)


def _row(
    site: Site, segment: Segment, above: float, wheels: tuple[float, float]
) -> tuple[JigRow | None, str]:
    """The blocks of one setting; ``above`` : the board's underside over the finished line. None and the
    reason where they cannot stand.
    """
    rear = _block_column(site, segment, wheels[0], -1)
    front = _block_column(site, segment, wheels[1], +1)
    if rear is None or front is None or (front - rear) * site.cell > FARTHEST:
        return (
            None,
            "no untouched, measured concrete for the blocks on both sides (an overhang, an edge or a hole)",
        )
    columns = np.arange(rear, front + 1)
    underside = segment.level(columns) + above
    over = site.ground[segment.row, rear : front + 1] - underside
    stays = site.standing[segment.row, rear : front + 1]
    if np.nanmax(np.where(stays, over, -1.0), initial=-1.0) > -OVER_RIDGE / 2:
        return None, "the board would lie on concrete that stays"
    ridge = float(np.nanmax(over))
    raised = ridge + OVER_RIDGE if ridge > -CLEARS else 0.0
    ground = site.ground[segment.row]
    row = JigRow(
        segment.lane,
        float(site.offset[segment.row]),
        float(site.station[segment.first]),
        float(site.station[segment.last]),
        float(site.station[rear]),
        float(site.station[front]),
        float(underside[0] - ground[rear]),
        float(underside[-1] - ground[front]),
        segment.deepest,
        raised,
    )
    if min(row.rear, row.front) < SCREW.low:
        return None, "the blocks would have no height"
    if raised > LONGEST_RAISE:
        return None, f"the ridge stands {millimetres(raised)} over the board's last place"
    return row, ""


def _block_column(site: Site, segment: Segment, wanted: float, side: int) -> int | None:
    """The column where a block stands: at the wheel's station if that lies outside the cut on untouched
    concrete, else the nearest
    place beyond it that does; None if there is none."""
    foot = max(round(FOOT / site.cell), 1)
    start = round((wanted - site.station[0]) / site.cell)
    edge = segment.first - foot - 1 if side < 0 else segment.last + foot + 1
    start = min(start, edge) if side < 0 else max(start, edge)
    standing = site.standing[segment.row]
    last = len(standing) - 1 - foot
    column = min(max(start, foot), last)
    while foot <= column <= last:
        beyond = column <= edge if side < 0 else column >= edge
        if beyond and standing[column - foot : column + foot + 1].all():
            return column
        column += side
    return None


def _lifts(rows: Sequence[JigRow], worn: float, tool: Tool) -> tuple[Lift, ...]:
    """How many times the board comes down: no lift lower than the worn wheel clears by itself, fins knocked
    off in between.
    """
    if not rows:
        return ()
    raised = max(r.raise_first for r in rows)
    depth = min(worn - OVER_RIDGE, 2 * tool.step) if worn > OVER_RIDGE + 0.001 else worn / 2
    count = math.ceil(raised / depth - 1e-9)
    first = max(r.deepest for r in rows) - SMOOTHING - raised
    lifts = [Lift(1, raised, max(first, 0.0))]
    lifts += [Lift(k + 1, raised * (count - k) / count, raised / count) for k in range(1, count + 1)]
    return tuple(lifts)


def _stacks(rows: Sequence[JigRow], metric: bool) -> tuple[tuple[str, Stack], ...]:
    """Blocks for both ends, in as few stacks as the screws allow."""
    out: list[tuple[str, Stack]] = []
    for end in ("rear", "front"):
        heights = sorted(getattr(r, end) for r in rows)
        while heights:
            low = heights[0]
            group = [h for h in heights if h - low <= STACK_SPAN]
            out.append((end, choose_stack(low, group[-1], metric)))
            heights = heights[len(group) :]
    return tuple(out)
