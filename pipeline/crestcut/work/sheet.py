"""The worksheet: everything the person on the slab needs, from one plan."""

from __future__ import annotations

import contextlib
from collections.abc import Callable, Mapping, Sequence

from crestcut.base.errors import CrestcutError
from crestcut.base.grid import FloatArray
from crestcut.cut import CutPlan
from crestcut.work import cards
from crestcut.work.dust import dust_lines
from crestcut.work.floor_jig import floor_level, make_floor_jig
from crestcut.work.ground_places import walks, water_places
from crestcut.work.jig import below_board, make_jig
from crestcut.work.jig_records import FloorJig, Jig, Tool
from crestcut.work.limit_texts import limit_lines
from crestcut.work.measure_first import measures
from crestcut.work.order import WorkOrder, make_site, wheel_stations
from crestcut.work.passes import make_passes
from crestcut.work.quantities import work_out
from crestcut.work.records import ReleaseState, SetOut, Worksheet
from crestcut.work.setout import make_set_out
from crestcut.work.site import Site, station_offset
from crestcut.work.tools import choose_tools, load_tools, tool_folder
from crestcut.work.trade import INCHES, trade_words
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
    metric = (job.site.country or "").upper() not in INCHES
    if tools is None:
        folder = tool_folder(job.path)
        tools = load_tools(folder) if folder else ()
    deepest, volume, area = (plan.deepest, plan.volume, plan.area) if plan is not None else (0.0, 0.0, 0.0)
    chosen, why = choose_tools(tools, deepest, volume) if deepest > SKIN else ((), "nothing to cut")
    notes = (
        [] if tools or deepest <= SKIN else ["No tool files were found (configs/tools): no jig and no times."]
    )
    jig, floor, set_out = None, None, None
    if release.state == ReleaseState.OK and plan is not None and deepest > SKIN:
        jig, floor, set_out, said = _cutting(order, plan, site, chosen, metric)
        notes += said
    passes = make_passes(plan, chosen, jig, job.cut.feather) if plan is not None else ()
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
        floor=floor,
        passes=passes if set_out is not None else (),
        why_tools=why,
        set_out=set_out,
        quantities=work_out(deepest, volume, area, chosen, jig, passes),
        silica=dust_lines(chosen, job, hours),
        limits=limit_lines(job, plan, order.keeps, words),
        water=water_report(
            height.values, site.finished, frame, site.station, site.offset, gutter, building, words
        ),
        walks=walks(order, site),
        cautions=cards.cautions(job, chosen),
        cards=cards.HIT_CARDS,
        afterwards=cards.afterwards(job.slab.thickness, words),
        notes=tuple(notes),
        left=order.left if deepest > SKIN else None,
    )


def _cutting(
    order: WorkOrder, plan: CutPlan, site: Site, tools: Sequence[Tool], metric: bool
) -> tuple[Jig | None, FloorJig | None, SetOut, list[str]]:
    """Jig and floor jig (None where the tools or the reach do not serve, with the reason) and set-out."""
    notes: list[str] = []
    vehicle, marks, height = order.vehicle, order.marks, order.surface.height
    blade = next((tool for tool in tools if tool.use == "kerf"), None)
    wheels = wheel_stations(plan, order.ride, vehicle, site)
    below, jig, floor = None, None, None
    try:
        below = None if blade is None else below_board(blade, metric)
        work = make_workable(site, wheels, below)
        if blade is not None:
            jig = make_jig(site, work, blade, metric, marks, height)
    except CrestcutError as error:
        notes.append(f"No jig sheet: {error}.")
        jig, work = None, make_workable(site, wheels)
    level = floor_level(site, work.core)
    if blade is not None and level is not None:
        with contextlib.suppress(CrestcutError):  # the board on its blocks serves then
            floor = make_floor_jig(site, level, blade, metric, marks, height)
    tracks = (("front tyres", vehicle.front_track / 2), ("rear tyres", vehicle.rear_track / 2))
    return jig, floor, make_set_out(site, work, wheels, tracks, marks, height), notes
