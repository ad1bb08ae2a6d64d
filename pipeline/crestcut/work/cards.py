"""Words that go along: cautions, what to do when something is hit, and what to do afterwards. Local code and
licensed people decide.
"""

from __future__ import annotations

from crestcut.job.records import Job
from crestcut.work.dust import EUROPEAN, PERMISSIBLE, TIMES_OVER
from crestcut.work.jig_records import Tool
from crestcut.work.records import Card
from crestcut.work.trade import TradeWords

HIT_CARDS = (
    Card(
        "You hit STEEL",
        (
            (
                "Stop. Let the wheel run out before you lift it. Look: a thin wire of mesh, a bar, or a"
                " strand of several wires twisted together?"
            ),
            (
                "Twisted strand, or anything under a plastic sheath: it may be a post-tension tendon. Leave"
                " the slab, keep people off it, call a structural engineer. Do not touch it again."
            ),
            (
                "Mesh or bar: measure its depth, mark it, find the rest with a covermeter. The cut ends 20 mm"
                " over the steel; ask whoever gave permission before going on. Bare steel is cleaned and"
                " covered again with a repair mortar made for it."
            ),
        ),
    ),
    Card(
        "You hit PLASTIC",
        (
            (
                "Stop. Switch off at the wall. It may be a conduit with live cable, a heating pipe under"
                " pressure, a water pipe or a tendon's sheath."
            ),
            (
                "Wet: shut the water or heating valve. A cable seen or a breaker gone: switch off the supply,"
                " call an electrician."
            ),
            "Nothing goes on until the owner and the trade concerned have seen it.",
        ),
    ),
    Card(
        "You hit COPPER or another pipe",
        (
            (
                "Stop. Water, heating or gas. You smell gas: no switch, no flame, everybody out, call the gas"
                " emergency line from outside."
            ),
            "Shut the valve, catch the water, photograph it with a scale, call a plumber or gas fitter.",
        ),
    ),
    Card(
        "The wheel drops into a VOID, or the slab sounds hollow",
        (
            (
                "Stop and step off towards the side you came from. The slab may span something, or the ground"
                " below may be washed out."
            ),
            (
                "Tap around with a hammer and chalk the hollow area. Keep vehicles off. An engineer looks"
                " before anything goes on."
            ),
        ),
    ),
)


VEHICLE = (
    "Never work under or in front of a vehicle held by a jack or its brake alone; chock it off the slab while"
    " cutting."
)


def cautions(job: Job, tools: tuple[Tool, ...]) -> tuple[str, ...]:
    """What can hurt somebody here, shortest first to need it."""
    lines = [
        "Local code, the owner and licensed people decide; this sheet does not replace any of them.",
        (
            f"Concrete dust scars lungs for good: dry grinding without a shroud gives {TIMES_OVER[0]} to"
            f" {TIMES_OVER[1]} times the limit (NIOSH), which over eight hours is {PERMISSIBLE * 1e6:g} mg/m3"
            f" (29 CFR 1926.1153), {EUROPEAN * 1e6:g} in the EU. Follow the dust line for each tool; sweep"
            " with a HEPA vacuum, never a broom or an air line."
        ),
        (
            "Guard, shroud and side handle stay on. Eyes, ears, gloves, boots, knees. Long cuts: change"
            " position and people."
        ),
        (
            "Electric tools outdoors: a residual-current device (GFCI); cord and water apart. Wet work: only"
            " tools made for it."
        ),
        (
            "Before the first cut: utilities located and marked, covermeter over the whole cut, breakers and"
            " valves known."
        ),
        (
            "Keep others 5 m away; chips and a burst wheel fly. A new wheel runs one minute in the guard"
            " before it touches anything."
        ),
        VEHICLE,
    ]
    lines.append(
        "Working wet: water only on tools made for it, a dam round the work, a wet vacuum at hand, nobody"
        " barefoot or kneeling in it."
        if any(tool.wet for tool in tools)
        else "Dry with shroud and vacuum here; where dust may not fly at all, cut wet with tools made for it."
    )
    if any(tool.wet for tool in tools):
        lines.append(
            "Slurry is caustic and sets: keep it out of drains, gutters and soil; vacuum it wet, let it set,"
            " dispose as waste."
        )
    lines.append(
        "Close drains and door gaps against dust and slurry before starting; open and rinse the drain only"
        " when all is picked up."
    )
    if job.site.place == "indoors":
        lines.append("Indoors: sheet off the room, air out through a HEPA filter, no petrol or gas engines.")
    if job.site.ground != "private":
        lines.append("Public land: permit in the pocket, barriers, signs and lights as it says.")
    return tuple(lines)


def afterwards(thickness: float | None, words: TradeWords) -> tuple[str, ...]:
    """Once the depths are there."""
    joint = (
        "a quarter of what is left of the slab"
        if thickness is None
        else f"{thickness * 250:.0f} mm (a quarter of the thickness)"
    )
    return (
        f"{words.edges.capitalize()}: break every sharp one by 3 mm with the cup; nothing may trip, cut"
        f" or spall.",
        f"Joints: re-saw those the cut made shallower, to {joint}; clean and fill them as they were.",
        (
            "Texture: a smooth ground slope is slippery when wet. Roughen it across the slope (bush hammer,"
            " light scarifying) to match."
        ),
        (
            "Look: ground concrete shows its stones and is lighter or darker for good. Show the owner a trial"
            " patch first."
        ),
        (
            "Frost or salt: the dense skin is gone; a breathable silane sealer on dry concrete, 28 days old"
            " or more, renewed as its maker says."
        ),
        (
            f"Check: the string table once more, a hose or bucket for {words.ponds}, then the vehicle at"
            " walking pace with somebody watching."
        ),
        "Record: fill in the record page and keep it with the house papers.",
        f"Look again after one winter, or in twelve months: new cracks, scaling, {words.ponds}, scrape"
        f" marks.",
    )
