"""Words that go along: cautions, what to do when something is hit, and what to do afterwards. Local code and
licensed people decide.
"""

from __future__ import annotations

from dataclasses import replace

from crestcut.base import cautions as said
from crestcut.base.cautions import Caution
from crestcut.job import Job
from crestcut.work.dust import dust_caution
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


TOO_HEAVY = 25.0  # kg: more is for two people (common practice, no source)


def cautions(job: Job, tools: tuple[Tool, ...], vehicle: bool = True) -> tuple[Caution, ...]:
    """What can hurt somebody here, first what is needed first. vehicle : whether one comes near."""
    wet = any(tool.wet for tool in tools)
    machines = [tool.name for tool in tools if not tool.by_hand]
    return (
        said.DECIDE,
        dust_caution(job.site.country),
        said.KICKBACK,
        said.GUARD,
        said.CHIPS,
        said.INSIDE,
        said.WEAKER,
        said.DRILL,
        *((said.on_a_ramp(machines),) if machines else ()),
        said.lifting((tool.name, tool.mass) for tool in tools if tool.mass > TOO_HEAVY),
        said.ELECTRIC,
        said.SLURRY if wet else said.DRY,
        said.DRAINS,
        *((said.INDOORS,) if job.site.place == "indoors" else ()),
        *((said.VEHICLE,) if vehicle else ()),
        _barriers(job.site.ground),
        said.NOISE,
    )


def _barriers(ground: str | None) -> Caution:
    """Barriers; on ground that is public, or not said to be private, with the permit."""
    if ground == "private":
        return said.BARRIERS
    return replace(said.BARRIERS, full=f"permit in the pocket, and as it says; {said.BARRIERS.full}")


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
