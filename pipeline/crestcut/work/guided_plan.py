"""The planned cut as few flat facets that a board on two blocks can guide; the vehicles are swept over it
anew.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from crestcut.base.errors import CrestcutError
from crestcut.base.grid import BoolArray, FloatArray
from crestcut.base.memory import let_go
from crestcut.base.units import litres
from crestcut.cut import (
    ENOUGH,
    CutPlan,
    Facet,
    FleetPlan,
    Guided,
    Limits,
    Member,
    cut_surface,
    depth_for_fleet,
)
from crestcut.job import Job, Method
from crestcut.terrain import Surface
from crestcut.work.drain import DEEPER, more_water
from crestcut.work.drain_plan import excess_of, retold, swept_on
from crestcut.work.facets import lay_facets
from crestcut.work.guides import Guide
from crestcut.work.jig import below_board
from crestcut.work.method import Amount, Chosen, choose_method, slope_under
from crestcut.work.order import make_site
from crestcut.work.site import Site
from crestcut.work.timber import Stock, stock_of
from crestcut.work.tools import tools_at_hand
from crestcut.work.trade import INCHES
from crestcut.work.workable import SKIN, core_of, depth_by

MOST_SETTINGS = 8  # on one sheet: more, and nobody keeps them apart (common practice, no source)
WORTH = 0.03  # of the plan's volume: what one setting more must save
AIM = 0.10  # of the plan's volume: what flat facets may take beyond it before another setting is tried
ENOUGH_CLOSE = 0.05  # of the plan's volume: nobody asks for less
TOO_MUCH = 0.30  # of the plan's volume: more, and the contours are the better guide
GUIDES = 0.50  # of the plan's volume that facets must reach for a board to be worth bringing
PUDDLE = 0.001  # m: water that much deeper than on the plan is no longer the slab's roughness
ROUNDS = 4  # of facets and cutting again: a tyre that rolls lower lets the underside down


@dataclass(frozen=True, eq=False)
class Made:
    """depth (ny, nx) m, of the facets and what hands cut beside them; by_hand : m3 that no facet covers."""

    depth: FloatArray
    facets: tuple[Facet, ...]
    by_hand: float


def guided_words(plan: CutPlan) -> str:
    """Of a plan that was made of facets: how many, and what they cost."""
    assert plan.guided is not None
    more, count = litres(plan.volume - plan.guided.volume), len(plan.guided.facets)
    facets = f"{count} flat facet{'s' if count > 1 else ''}"
    return f"made of {facets} for a board, {more} more than the cut has to be"


def is_metric(job: Job) -> bool:
    """Whether timber and tape are sold in millimetres where the slab is."""
    return (job.site.country or "").upper() not in INCHES


def check_work(job: Job) -> None:
    """Raise CrestcutError for tools that are not there or not whole, at work or priced, and for blocks of
    nothing."""
    tools_at_hand(job.path, job.work.tools)
    for key, priced in (("hire", job.prices.hire), ("blades", job.prices.blades)) if job.prices else ():
        tools_at_hand(job.path, [name for name, _ in priced], f"[prices] {key}")
    stock_of(job.work.blocks, is_metric(job))


def chosen_of(job: Job, amount: Amount) -> Chosen:
    """Method and tools of a job. Raises CrestcutError as ``choose_method`` and ``tools_at_hand``."""
    return choose_method(job.work, tools_at_hand(job.path, job.work.tools), amount, is_metric(job))


def amount_of(site: Site, plan: CutPlan) -> Amount:
    """The least cut and the ground it is in."""
    least = plan.guided or plan
    return Amount(least.deepest, least.volume, slope_under(site.ground, site.depth > SKIN, site.cell))


def guided(
    fleet: FleetPlan, members: Sequence[Member], surface: Surface, limits: Limits, job: Job
) -> FleetPlan:
    """The fleet's plan with its method, and where that is the board: made of facets, swept again.

    Claim and slack stay those of the cut before. Where no board serves it is left as it is, by dots.
    Raises CrestcutError for tools or blocks that cannot be, and a method asked for that cannot.
    """
    plan = fleet.plan
    stock = stock_of(job.work.blocks, is_metric(job))
    if plan.deepest <= SKIN or not plan.feasible:
        return fleet
    site = make_site(surface, members[0].ride.line, plan, job)
    chosen = chosen_of(job, amount_of(site, plan))
    told = Guided(chosen.method, (), plan.deepest, plan.area, plan.volume)
    if chosen.method == Method.BOARD and chosen.tools:
        found = _by_board(
            fleet, members, surface, site, limits, job, stock, below_board(chosen.tools[0], is_metric(job))
        )
        if found is not None:
            return found
        if job.work.method == Method.BOARD:
            raise CrestcutError(
                "no board on two blocks guides this cut: nowhere do sound concrete on both sides, the"
                " limits and"
                " blocks of this stock allow it",
                "[work] method", f'write "{Method.DOTS}", or name more blocks',
            )  # fmt: skip
        told = replace(told, method=Method.DOTS)
    return replace(fleet, plan=replace(plan, guided=told))


def _by_board(
    fleet: FleetPlan, members: Sequence[Member], surface: Surface, site: Site, limits: Limits, job: Job,
    stock: Stock, below: float,
) -> FleetPlan | None:  # fmt: skip
    """None where facets reach too little of the cut, take too much, or hold water."""
    plan, cell = fleet.plan, site.cell
    core, wanted = core_of(site), site.depth
    for _ in range(ROUNDS):
        target = replace(site, finished=site.ground - wanted)
        made = facets_of(target, core, stock, below)
        if made is None or made.by_hand > (1 - GUIDES) * plan.volume:
            return None
        del target
        let_go()  # guides and their pieces name each other
        rides, after = swept_on(members, surface, made.depth)
        excess = excess_of(members, after, job.wanted)
        if min(excess) >= min(-ENOUGH, *fleet.excess):
            break
        lower = cut_surface(surface, made.depth)
        room = np.maximum(limits.deepest.values - made.depth, 0.0)
        standing = [
            Member(m.vehicle, ride, clear, m.margin)
            for m, ride, clear in zip(members, rides, after, strict=True)
        ]
        rest = Limits(limits.deepest.like(room), limits.reason, limits.reasons)
        more = depth_for_fleet(standing, lower, rest, job.wanted, job.cut.feather)
        wanted = np.where(more > 0, np.maximum(made.depth + more, wanted), wanted)
        core = core | core_of(replace(site, finished=site.ground - wanted))
    else:
        return None
    if float(made.depth.sum()) * cell**2 > (1 + TOO_MUCH) * plan.volume:
        return None
    holds = PUDDLE if plan.drain is None else DEEPER
    water = more_water(site.ground, made.depth).max()
    if water > holds and water > more_water(site.ground, site.depth).max() + holds:
        return None
    told = Guided(Method.BOARD, made.facets, plan.deepest, plan.area, plan.volume, made.by_hand)
    return retold(fleet, surface, made.depth, after, excess, guided=told)


def facets_of(site: Site, core: BoolArray, stock: Stock, below: float) -> Made | None:
    """As few settings as come near the plan; None where there is no facet at all."""
    volume = float(site.depth.sum()) * site.cell**2
    laid = lay_facets(site, core, MOST_SETTINGS)
    guide = Guide(site, core, stock.heights, below)  # one: with a setting more half of the pieces stay
    best: tuple[float, Made] | None = None
    for k, facets in enumerate(laid):
        # another setting is worth bringing where it saves something; which one that is the laying knows
        # closely
        if (
            best is not None
            and laid[k - 1].more - facets.more < WORTH * volume
            and best[0] <= (1 + AIM) * volume
        ):
            break
        guide.used.clear()
        found = tuple(f for f in map(guide.facet, facets.pieces) if f is not None)
        if not found:
            continue
        depth, done = depth_by(site, found, core, site.depth)
        by_hand = float(site.depth[core & ~done].sum()) * site.cell**2
        cost = float(depth.sum()) * site.cell**2 + by_hand
        if best is None or cost < best[0] - WORTH * volume:
            best = cost, Made(depth, found, by_hand)
        if best[0] <= (1 + ENOUGH_CLOSE) * volume:
            break
    return None if best is None else best[1]
