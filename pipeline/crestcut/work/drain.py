"""A cut shaped to drain: where it would hold water, the cheapest swale out of it.

Lowering ground can only lower the level that water stands at, so ponds get deeper on the cut alone. Each such
pond is breached: from its deepest place the cheapest way (least concrete, Dijkstra's search over the nodes)
is carved to where its bed meets ground from which water runs off, the bed falling by ``fall`` all along; the
feather then opens the swale to both sides. Carving until no water stands deeper than before is least-cost
breaching as used for terrain models (Lindsay 2016, Hydrological Processes 30, from memory); one pond, a level
bed and no feather make it exactly least; with a fall the depth at a node depends on the way there, and the
way taken is the cheapest that the same search finds.
"""

from __future__ import annotations

import heapq
import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from crestcut.base.grid import BoolArray, FloatArray
from crestcut.base.units import both, litres
from crestcut.cut import Drain, feather_out
from crestcut.work.water import flood, open_edge

DEEPER = 1e-4  # m: this much more water than before is not counted
FALLS = (1.0, 0.5, 0.25, 0.0)  # of the fall asked for, tried in turn where limits are in the way
MOST_PONDS = 200  # carved before giving up
CUT = 5e-5  # m: shallower is not a cut


@dataclass(frozen=True, eq=False)
class Shaped:
    """depth : (ny, nx) m, never less than it was.  left : deepest water over what stood before, m, still on
    the cut.

    fall : least fall of any bed that was carved, rise over run; NaN where none was.  swales : how many.
    stuck : (row, column) of ponds that the limits keep from draining.
    """

    depth: FloatArray
    left: float
    fall: float
    swales: int
    stuck: tuple[tuple[int, int], ...]


def drain_words(drain: Drain) -> str:
    """What shaping the cut to drain came to, in a sentence."""
    asked = f"1:{1 / drain.fall:.0f}"
    if not drain.reached:
        limits = f" ({'; '.join(drain.why)})" if drain.why else ""
        return (
            f"Asked to drain at {asked}: within the limits{limits} {both(drain.left)} of water more than"
            " before would stand on the cut."
        )
    if drain.swales == 0:
        return (
            f"Asked to drain at {asked}: no water stands deeper on the cut than before; nothing had to be"
            " added."
        )
    got = f"1:{1 / drain.got:.0f}" if drain.got > 0 else "level"
    steep = "" if drain.got >= drain.fall - 1e-9 else f" (the flattest bed is {got})"
    return (
        f"Shaped to drain at {asked}{steep}: {litres(drain.volume)} more, {drain.swales} swale"
        f"{'s' if drain.swales > 1 else ''}; no water stands deeper on the cut than before."
    )


def more_water(ground: FloatArray, depth: FloatArray, edge: BoolArray | None = None) -> FloatArray:
    """How much deeper water stands on the cut than before it, (ny, nx) m, 0 elsewhere. ground : before
    the cut.
    """
    edge = open_edge(ground) if edge is None else edge
    on_cut = (depth > CUT) & ~np.isnan(ground)
    after = np.where(on_cut, _standing(ground - depth, edge), 0.0)
    if not after.any():  # none is no more than there was
        return after
    return np.where(on_cut, np.maximum(after - _standing(ground, edge), 0.0), 0.0)


def _standing(z: FloatArray, edge: BoolArray) -> FloatArray:
    level, _ = flood(z, edge)
    return np.where(np.isnan(z) | np.isinf(level), 0.0, level - np.nan_to_num(z))


def shape_to_drain(
    ground: FloatArray, depth: FloatArray, allowed: FloatArray, fall: float, feather: float, cell: float
) -> Shaped:
    """Deepen a cut until no water stands deeper on it than before, within ``allowed``.

    ground, depth, allowed : (ny, nx) m; ground NaN where not measured.  fall, feather : rise over run.
    cell : m.
    """
    edge = open_edge(ground)
    depth = np.maximum(np.nan_to_num(depth), 0.0)
    before = _standing(ground, edge)
    got, swales = math.nan, 0
    stuck: list[tuple[int, int]] = []
    shut = np.zeros(ground.shape, bool)
    for _ in range(MOST_PONDS):
        level, _ = flood(ground - depth, edge)
        more = (
            np.where(np.isinf(level) | np.isnan(ground), 0.0, level - np.nan_to_num(ground - depth)) - before
        )
        more = np.where((depth > CUT) & ~shut, more, 0.0)
        if more.max(initial=0.0) <= DEEPER:
            break
        pit = tuple(int(k) for k in np.unravel_index(int(more.argmax()), more.shape))
        found = _swale(ground, depth, allowed, level, pit, fall, cell)  # type: ignore[arg-type]
        if found is None:
            stuck.append(pit)  # type: ignore[arg-type]
            shut |= (level >= level[pit] - 1e-9) & (more > 0) & (np.abs(level - level[pit]) < 1e-9)
            continue
        bed, share = found
        swales += 1
        got = min(share * fall, got) if got == got else share * fall
        for (row, column), z in bed:
            depth[row, column] = max(depth[row, column], ground[row, column] - z)
        depth = np.minimum(feather_out(depth, feather, cell)[0], np.maximum(allowed, depth))
        depth = np.where(np.isnan(ground), 0.0, depth)
    left = more_water(ground, depth, edge)
    return Shaped(depth, float(left.max(initial=0.0)), got, swales, tuple(stuck))


Bed = list[tuple[tuple[int, int], float]]


def _swale(
    ground: FloatArray, depth: FloatArray, allowed: FloatArray, level: FloatArray, pit: tuple[int, int],
    fall: float, cell: float,
) -> tuple[Bed, float] | None:  # fmt: skip
    """The bed from a pit to where water runs off, with the steepest of ``FALLS`` that the limits leave
    room for.
    """
    for share in FALLS:
        bed = cheapest_bed(ground, depth, allowed, level, pit, share * fall, cell)
        if bed is not None:
            return bed, share
    return None


def cheapest_bed(
    ground: FloatArray, depth: FloatArray, allowed: FloatArray, level: FloatArray, pit: tuple[int, int],
    fall: float, cell: float,
) -> Bed | None:  # fmt: skip
    """Nodes of the way and the height of its bed at each, m; None where no way within ``allowed`` runs off.

    level : height that water stands at, or the ground's own where none does.  The way ends at the first node
    whose water is already no higher than the bed.
    """
    z = ground - depth
    rows, columns = z.shape
    start = float(z[pit])
    cost = {pit: 0.0}
    beds = {pit: start}
    came: dict[tuple[int, int], tuple[int, int]] = {}
    heap = [(0.0, pit)]
    done: set[tuple[int, int]] = set()
    while heap:
        spent, at = heapq.heappop(heap)
        if at in done:
            continue
        done.add(at)
        if at != pit and level[at] <= beds[at] + 1e-9:
            return _way(came, beds, pit, at)
        for dj, di in STEPS:
            near = at[0] + dj, at[1] + di
            if not (0 <= near[0] < rows and 0 <= near[1] < columns) or near in done or math.isnan(z[near]):
                continue
            # over a natural dip the bed goes on at its own height: the dip fills and passes the water on
            bed = beds[at] - fall * cell * math.hypot(dj, di)
            if z[near] > bed and ground[near] - bed > max(allowed[near], depth[near]) + 1e-9:
                continue
            there = spent + max(float(z[near]) - bed, 0.0) * cell**2
            if there < cost.get(near, math.inf) - 1e-15:
                cost[near], beds[near], came[near] = there, bed, at
                heapq.heappush(heap, (there, near))
    return None


STEPS: Sequence[tuple[int, int]] = [(j, i) for j in (-1, 0, 1) for i in (-1, 0, 1) if (j, i) != (0, 0)]


def _way(
    came: dict[tuple[int, int], tuple[int, int]],
    beds: dict[tuple[int, int], float],
    pit: tuple[int, int],
    at: tuple[int, int],
) -> Bed:
    out: Bed = [(at, beds[at])]
    while at != pit:
        at = came[at]
        out.append((at, beds[at]))
    return out[::-1]
