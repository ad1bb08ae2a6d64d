"""The dust line: which rule counts where the slab is, what it asks by task, place and hours, the airflow.

Only the United States' rule (29 CFR 1926.1153 Table 1) says when no respirator is asked for; where it does
not count, or the place or the hours are not known, the strictest stands. The controls are the same
everywhere.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from crestcut.base.cautions import Caution, Danger
from crestcut.base.units import INCH
from crestcut.job import Job
from crestcut.work.jig_records import Tool
from crestcut.work.records import Silica

CFM = 0.3048**3 / 60.0  # m3/s
CFM_PER_INCH = 25.0  # of wheel diameter (Table 1)
LONG_SHIFT = 4.0  # h a shift
PERMISSIBLE, ACTION = 50e-9, 25e-9  # kg/m3: 50 and 25 ug/m3 over eight hours (1926.1153(b), (d))
EUROPEAN = 100e-9  # kg/m3: 0.1 mg/m3 over eight hours (Directive (EU) 2017/2398: annex III of 2004/37/EC)
BRITISH = 100e-9  # kg/m3: 0.1 mg/m3 over eight hours (EH40/2005, as the regulator's guidance quotes it)
AUSTRALIAN = 50e-9  # kg/m3: 0.05 mg/m3 over eight hours (ministers' agreement of 2019, in force since 2020)
TIMES_OVER = (35, 55)  # times the limit that NIOSH measured at dry grinding of concrete
APF_10 = 10  # assigned protection factor: a half mask with particle filters
UNION = frozenset(
    "AT BE BG CY CZ DE DK EE ES FI FR GR HR HU IE IT LT LU LV MT NL PL PT RO SE SI SK".split()
)  # ISO 3166


@dataclass(frozen=True)
class DustRule:
    """What counts in a country. limit : kg/m3 of respirable crystalline silica over eight hours.  table :
    whether Table 1 decides on the respirator; else one is always asked for.  more : what it leaves open.
    """

    title: str
    limit: float
    table: bool
    more: str


AMERICAN_RULE = DustRule("29 CFR 1926.1153 Table 1", PERMISSIBLE, True, "a state may ask for more")
UNION_RULE = DustRule(
    "Directive (EU) 2017/2398",
    EUROPEAN,
    False,
    "the country's own limit may be lower: ask the labour inspectorate",
)
BRITISH_RULE = DustRule("EH40/2005", BRITISH, False, "the regulator asks for less wherever it can be done")
AUSTRALIAN_RULE = DustRule(
    "Australia's workplace exposure standard",
    AUSTRALIAN,
    False,
    "ask the state's regulator for its code of practice",
)
UNKNOWN_RULE = DustRule(
    "no rule known here",
    min(PERMISSIBLE, EUROPEAN, BRITISH, AUSTRALIAN),
    False,
    "ask the local authority; until then the strictest limit known here counts",
)


def dust_rule(country: str | None) -> DustRule:
    """The rule of a country (ISO 3166, two letters); where none is known, or none named, the strictest."""
    code = (country or "").upper()
    if code in UNION:
        return UNION_RULE
    return {"US": AMERICAN_RULE, "GB": BRITISH_RULE, "AU": AUSTRALIAN_RULE}.get(code, UNKNOWN_RULE)


def dust_caution(country: str | None) -> Caution:
    """Why, how much is too much, and what never to do."""
    rule = dust_rule(country)
    return Caution(
        Danger.DUST,
        "concrete dust holds crystalline silica, which scars lungs for good. Dry grinding without a shroud"
        f" gave {TIMES_OVER[0]} to {TIMES_OVER[1]} times the limit (NIOSH). The limit over eight hours:"
        f" {rule.limit * 1e6:g} mg/m3 ({rule.title}); {rule.more}. Shroud and collector fitted, a"
        " respirator that fits, the dust line of each tool kept; sweep with a HEPA vacuum, never a broom or"
        " an air line.",
    )


def airflow(wheel: float) -> float:
    """Least flow through the shroud, m3/s, for a wheel of ``wheel`` m."""
    return CFM_PER_INCH * wheel / INCH * CFM


def mask_needed(task: str, place: str | None, hours: float | None, wet: bool) -> int:
    """Assigned protection factor by Table 1, 0 for none. task : grinder | hand saw | floor machine | drill;
    hours : a shift, None = over four.
    """
    indoors = place != "outdoors"
    long = hours is None or hours > LONG_SHIFT
    if task == "grinder":
        # (xi) hand grinders not for mortar: with shroud and collector, indoors over four hours; wet ones are
        # listed for outdoors only
        return APF_10 if indoors and (long or wet) else 0
    if task == "hand saw":
        return APF_10 if indoors or long else 0
    return 0


def silica_line(tool: Tool, place: str | None, hours: float | None, country: str | None = None) -> Silica:
    """What the country's rule asks of this tool. Unknown place: indoors; unknown hours: over four."""
    flow = airflow(tool.wheel) if tool.wheel is not None and not tool.wet and tool.task == "grinder" else None
    mask = mask_needed(tool.task, place, hours, tool.wet)
    return _line(tool.name, place, hours, country, _control(tool, place != "outdoors"), mask, flow)


def drill_line(place: str | None, hours: float | None, country: str | None) -> Silica:
    """The same of the hammer drill that sinks depth dots and thickness holes: Table 1 (vii)."""
    control = (
        "commercial shroud or cowling with dust collector, the flow the drill's maker names or more, 99 %"
        " filter with filter cleaning; holes cleaned with a HEPA vacuum"
    )
    mask = mask_needed("drill", place, hours, wet=False)
    return _line("hammer drill, for dots and thickness holes", place, hours, country, control, mask, None)


def _line(
    task: str,
    place: str | None,
    hours: float | None,
    country: str | None,
    control: str,
    mask: int,
    flow: float | None,
) -> Silica:
    rule = dust_rule(country)
    return Silica(
        task,
        place if place in ("indoors", "outdoors") else "not said: taken as indoors",
        "over 4 h a shift" if hours is None or hours > LONG_SHIFT else "4 h a shift or less",
        control,
        mask if rule.table else APF_10,
        flow,
        rule.title,
    )


def dust_lines(tools: Sequence[Tool], job: Job, hours: float | None = None) -> tuple[Silica, ...]:
    """Of every tool in order, and of the drill; empty where nothing is cut. hours : a shift, None = over
    four.
    """
    place, country = job.site.place, job.site.country
    drill = (drill_line(place, hours, country),) if tools else ()
    return (*(silica_line(tool, place, hours, country) for tool in tools), *drill)


def mask_words(line: Silica) -> str:
    """The respirator. That a rule asks for none is never said without the rule it comes from."""
    if line.mask:
        return f"a respirator that fits, protection factor (APF) {line.mask} or more"
    return (
        f"no respirator by {line.rule} while all of that is fitted and works; wear one (APF {APF_10}) all"
        " the same"
    )


def _control(tool: Tool, indoors: bool) -> str:
    if tool.wet:
        return (
            "water fed to the blade without a break; slurry kept, vacuumed up wet and never washed to a drain"
        )
    if tool.task == "grinder":
        assert tool.wheel is not None
        return (
            f"commercial shroud and dust collector, {math.ceil(airflow(tool.wheel) / CFM - 1e-9)} cfm"
            f" ({airflow(tool.wheel) * 3600:.0f} m3/h) or more, 99 % filter, cyclone or filter cleaning"
        )
    extra = "; a HEPA vacuum over the floor between passes" if indoors else ""
    return f"the machine's own dust collector, 99 % filter{extra}"
