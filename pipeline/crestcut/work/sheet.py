"""The worksheet: everything the person on the slab needs, from one plan."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace

from crestcut.base.grid import FloatArray
from crestcut.cut import CutPlan
from crestcut.job import Method
from crestcut.work import cards
from crestcut.work.dust import dust_lines
from crestcut.work.ground_places import walks, water_places
from crestcut.work.guided_plan import amount_of, is_metric
from crestcut.work.jig import make_jig
from crestcut.work.jig_records import Jig, Tool
from crestcut.work.limit_texts import limit_lines
from crestcut.work.measure_first import measures
from crestcut.work.method import Chosen, choose_method
from crestcut.work.order import WorkOrder, make_site, wheel_stations
from crestcut.work.passes import make_passes
from crestcut.work.quantities import work_out
from crestcut.work.records import Pass, ReleaseState, SetOut, Worksheet
from crestcut.work.setout import make_set_out
from crestcut.work.site import Site, station_offset
from crestcut.work.timber import stock_of
from crestcut.work.tools import tools_at_hand
from crestcut.work.trade import trade_words
from crestcut.work.water import water_report
from crestcut.work.workable import SKIN, make_workable


def make_worksheet(
    order: WorkOrder,
    advice: Sequence[Mapping[str, object]] = (),
    to_site: Callable[[FloatArray], FloatArray] | None = None,
    tools: Sequence[Tool] | None = None,
    hours: float | None = None,
) -> Worksheet:
    """Jig, passes and set-out when released; quantities, dust line, water, slopes, limits and cautions
    always.

    advice : hand measurements worth making first.  to_site : turns the advice's places, given in the scan's
    own coordinates, into site metres; None: they are.  tools : default: the files of ``configs/tools``.
    hours : of grinding in a shift, None = more than four.
    Raises CrestcutError for a tool file that is not understood or has guard or shroud off.
    """
    job, plan, surface, release = order.job, order.plan, order.surface, order.release
    site, words = make_site(surface, order.line, plan, job), trade_words(job.site.country)
    metric = is_metric(job)
    tools = tools_at_hand(job.path, job.work.tools) if tools is None else tools
    # of a cut that falls short nothing is handed out, and nothing is priced
    cut = plan if plan is not None and plan.deepest > SKIN and plan.feasible else None
    deepest, volume, area = (cut.deepest, cut.volume, cut.area) if cut is not None else (0.0, 0.0, 0.0)
    chosen = None if cut is None else _chosen(order, cut, site, tools)
    used = () if chosen is None else chosen.tools
    made = None if cut is None or chosen is None else _cutting(order, cut, site, chosen, metric)
    notes = () if used or cut is None else ("No tool files were found (configs/tools): no jig and no times.",)
    jig, set_out, passes = made if made is not None else (None, None, ())
    if release.state != ReleaseState.OK:
        jig, set_out = None, None
    height, frame = surface.height, surface.height.frame
    start = (-float(site.station[0]), -float(site.offset[0]))
    gutter, building = water_places(order, site)
    return Worksheet(
        title=job.title or job.path.stem,
        stamp=release.stamp,
        release=release,
        source=f"job {job.path.name}, {job.date_words} | vehicle {order.vehicle.name}",
        metric=metric,
        words=words,
        first=measures(advice, order.marks, height, start, to_site)
        if release.state != ReleaseState.OK
        else (),
        marks=tuple((name, *station_offset(site, frame, xy)) for name, xy in sorted(order.marks.items())),
        jig=jig,
        floor=None,
        passes=passes if set_out is not None else (),
        method=None if chosen is None else chosen.method,
        why_tools="no cut is proposed" if chosen is None else chosen.why,
        set_out=set_out,
        quantities=work_out(volume, area, used, passes, _flats(cut)),
        silica=dust_lines(used, job, hours),
        limits=limit_lines(job, plan, order.keeps, words),
        water=water_report(
            height.values, site.finished, frame, site.station, site.offset, gutter, building, words
        ),
        walks=walks(order, site),
        cautions=cards.cautions(job, used),
        cards=(*cards.HIT_CARDS, *(cards.WORK_CARDS if set_out is not None else ())),
        afterwards=cards.afterwards(job.slab.thickness, words),
        notes=notes,
        left=order.left if deepest > SKIN else None,
        vehicle=order.vehicle.name,
        today=order.today,
    )


def steps_of(order: WorkOrder) -> tuple[Pass, ...]:
    """The work in order, as ``make_worksheet`` has it, whether it may be printed or not; empty where no cut
    is proposed.
    """
    job, plan = order.job, order.plan
    if plan is None or plan.deepest <= SKIN or not plan.feasible:
        return ()
    site = make_site(order.surface, order.line, plan, job)
    chosen = _chosen(order, plan, site, tools_at_hand(job.path, job.work.tools))
    return _cutting(order, plan, site, chosen, is_metric(job))[2]


def _flats(plan: CutPlan | None) -> float:
    """What flat facets take beyond the least cut, m3."""
    return 0.0 if plan is None or plan.guided is None else plan.volume - plan.guided.volume


def _chosen(order: WorkOrder, plan: CutPlan, site: Site, tools: Sequence[Tool]) -> Chosen:
    """The method that the plan was made for; where nobody chose one, dots serve any cut."""
    wish, made = order.job.work, plan.guided
    amount, metric = amount_of(site, plan), is_metric(order.job)
    if made is None:
        return choose_method(replace(wish, method=Method.DOTS), tools, amount, metric, "no board was tried")
    told = choose_method(wish, tools, amount, metric)
    if told.method == made.method:
        return told
    because = f"{told.method} speaks for it, but no two blocks of stock guide a board here"
    return choose_method(replace(wish, method=made.method), tools, amount, metric, because)


def _cutting(
    order: WorkOrder, plan: CutPlan, site: Site, chosen: Chosen, metric: bool
) -> tuple[Jig | None, SetOut, tuple[Pass, ...]]:
    """Jig (None where the method needs none), set-out and order of work."""
    vehicle, marks, height = order.vehicle, order.marks, order.surface.height
    blade = next((tool for tool in chosen.tools if tool.use == "kerf"), None)
    wheels = wheel_stations(plan, order.ride, vehicle, site)
    facets = plan.guided.facets if plan.guided is not None else ()
    work = make_workable(site, facets)
    jig = None
    if blade is not None and facets:
        jig = make_jig(site, work, blade, stock_of(order.job.work.blocks, metric), metric, marks, height)
    tracks = (("front tyres", vehicle.front_track / 2), ("rear tyres", vehicle.rear_track / 2))
    out = make_set_out(site, work, wheels, tracks, marks, height, metric)
    return jig, out, make_passes(site, work, chosen.method, chosen.tools, jig, out)
