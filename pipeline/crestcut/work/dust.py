"""The dust line: 29 CFR 1926.1153 Table 1 by task, place and hours, and the airflow that goes with it.

Where the place or the hours are not known the stricter column counts. Elsewhere the local limit counts (the
European Union's for respirable crystalline silica is 0.1 mg/m3, Directive (EU) 2017/2398): the controls stay
the same.
"""

from __future__ import annotations

import math

from crestcut.units import INCH
from crestcut.work.jig_records import Tool
from crestcut.work.records import Silica

CFM = 0.3048**3 / 60.0  # m3/s
CFM_PER_INCH = 25.0  # of wheel diameter (Table 1)
LONG_SHIFT = 4.0  # h a shift
PERMISSIBLE, ACTION = 50e-9, 25e-9  # kg/m3: 50 and 25 ug/m3 over eight hours (1926.1153(b), (d))
EUROPEAN = 100e-9  # kg/m3: 0.1 mg/m3 over eight hours (Directive (EU) 2017/2398)
TIMES_OVER = (35, 55)  # times the limit that NIOSH measured at dry grinding of concrete
APF_10 = 10  # assigned protection factor: a half mask with particle filters


def airflow(wheel: float) -> float:
    """Least flow through the shroud, m3/s, for a wheel of ``wheel`` m."""
    return CFM_PER_INCH * wheel / INCH * CFM


def mask_needed(task: str, place: str | None, hours: float | None, wet: bool) -> int:
    """Assigned protection factor, 0 for none. task : grinder | hand saw | floor machine; hours : a shift,
    None = over four.
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


def silica_line(tool: Tool, place: str | None, hours: float | None) -> Silica:
    """What Table 1 asks of this tool here. Unknown place: indoors; unknown hours: more than four."""
    indoors = place != "outdoors"
    flow = airflow(tool.wheel) if tool.wheel is not None and not tool.wet and tool.task == "grinder" else None
    return Silica(
        tool.name,
        (
            "indoors"
            if place == "indoors"
            else "outdoors"
            if place == "outdoors"
            else "not said: taken as indoors"
        ),
        "over 4 h a shift" if hours is None or hours > LONG_SHIFT else "4 h a shift or less",
        _control(tool, indoors),
        mask_needed(tool.task, place, hours, tool.wet),
        flow,
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
