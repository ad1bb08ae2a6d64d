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

WORK_CARDS = (
    Card(
        "TOO DEEP, or an edge broken out",
        (
            "Stop. Measure how much too deep and how far it reaches; photograph it with a rule. Do not grind"
            " the rest"
            " down to it.",
            "Up to 3 mm and no wider than a hand: leave it, ease its rim so that nothing trips.",
            "More, or steel shows: not covered up. Call whoever gave the permission; steel as on its card."
            " It is filled"
            " with a repair mortar for traffic, as its maker says, and cured before anything drives on it.",
            "A broken edge: square it off, no feather edge of mortar. Find out why before you go on: a wrong"
            " block, a"
            " worn stop, the wrong dot.",
        ),
    ),
    Card(
        "A DOT IS GONE early",
        (
            "The bottom of a dot is the finished surface: where it has gone, stop there, and there only.",
            "Set a straightedge over the dots on both sides of it. It rocks: that place is still proud, the"
            " dot was"
            " drilled too shallow or chipped out. It bridges: too deep, see that card.",
            "Find the place again by its tapes or the chalked line, from the list. Drill it anew to what is"
            " still to go"
            " (the list, less what the straightedge shows is gone), never deeper than the list.",
            "In doubt the string decides, not the dot.",
        ),
    ),
    Card(
        "BLADE or CUP WORN",
        (
            "Switch off, unplug, wait until it stands. Hot: gloves.",
            "Worn is: it reaches less than the jig sheet says, it glazes and smokes, segments are cracked or"
            " gone, it"
            " shakes. A cracked or shaking one is not used again.",
            "Only what the grinder's plate allows: size, bore, speed. Guard and shroud back on before the"
            " plug goes in;"
            " one minute running in the guard, nobody in its line.",
            "A new one reaches farther: measure the reach, set blocks and depth stop again, try it beside a"
            " dot that is"
            " still there.",
        ),
    ),
    Card(
        "STOP FOR TODAY: how to go on",
        (
            "Tool unplugged and locked away; filter and bags sealed, dust vacuumed, slurry picked up before"
            " rain does.",
            "No edge that trips: ease them, or plates and lights over them, barriers across both ends."
            " Nobody drives on"
            " it; if somebody must, only after the vehicle's own gap was looked at.",
            "Write down: last step and lift done, settings done (J numbers), dots still to be seen (D"
            " numbers), reach of"
            " the blade, who, when.",
            "Chalk washes off: spray or nail marks, stop lines and block lines. Next time first: two marks"
            " by tape, the"
            " reach, one string reading on a place already done.",
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
