"""What can hurt somebody, by kind of work: the one place these words stand for terminal, pages and sheets.

Where a line names no source it is common practice, no source. Local codes and licensed people decide.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum

FELT, STRING = "felt gap", "string"  # kinds of measurement: under a standing vehicle, on the bare slab


class Danger(StrEnum):
    """What a caution is about; who prints cautions picks by this, never by their words."""

    DECIDE = "who decides"
    DUST = "dust"
    KICKBACK = "kickback"
    GUARD = "guard"
    CHIPS = "chips"
    ELECTRIC = "electricity"
    INSIDE = "what lies inside"
    WEAKER = "the slab"
    DRILL = "hammer drill"
    LIFTING = "lifting"
    RAMP = "machines on a ramp"
    NOISE = "noise"
    BARRIERS = "barriers"
    VEHICLE = "the vehicle"
    WET = "wet work"
    DRAINS = "drains"
    INDOORS = "indoors"
    STANDING = "how it stands"
    KEEP_CLEAR = "keep clear"
    READING = "reading"
    LOOKOUT = "lookout"
    HUNG_UP = "hung up"
    BATTERY = "high-voltage battery"
    HOT = "hot parts"


@dataclass(frozen=True)
class Caution:
    """One danger. full : for page and sheet.  short : a clause for the terminal, empty where it has none."""

    danger: Danger
    full: str
    short: str = ""

    @property
    def head(self) -> str:
        """What it is about, as a heading."""
        return self.danger[:1].upper() + self.danger[1:]

    @property
    def line(self) -> str:
        """Heading and full words in one."""
        return f"{self.head}: {self.full}"


# a vehicle that somebody feels under, on a slope
FELT_GAP = (
    Caution(
        Danger.STANDING,
        "roll on at a creep, somebody watching from the side; stop at the first touch. Then every wheel"
        " chocked both ways, parking brake on, in gear or park, engine off, key out and taken along. Never a"
        " jack.",
        "wheels chocked both ways, parking brake on, in gear or park, engine off, key out",
    ),
    Caution(
        Danger.KEEP_CLEAR,
        "nobody reaches under it, lies beside it or stands downhill of it: no hand, arm or head, not for a"
        " moment.",
        "nobody reaches under it, lies beside it or stands downhill of it",
    ),
    Caution(
        Danger.READING,
        "from the uphill side, standing, with the feeler (cards, a wedge) fixed to a long stick. On a crest,"
        " where it might roll either way: from the side, the stick's length off, never from in front of or"
        " behind it.",
        "read from the uphill side with a feeler on a long stick",
    ),
    Caution(
        Danger.LOOKOUT,
        "where a road or a walk is near, somebody who does nothing else looks out and stops the work.",
        "a lookout at the road",
    ),
    Caution(
        Danger.HUNG_UP,
        "it touches and will not roll on: do not rock it, push it or drive it off. Chock it as it stands, all"
        " out on the uphill side, keep clear, call vehicle recovery and say that it hangs on its underside.",
        "do not rock it or drive it off; chock it, keep clear, call recovery",
    ),
    Caution(
        Danger.BATTERY,
        "a tray that touches may be damaged unseen. Where it is the low part, creep on a hand's breadth at a"
        " time, stop while a card still passes; if a touch is expected, take a string over blocks instead."
        " Has it touched: stop, do not drive on, the maker's service looks first. Smoke or hissing: get away,"
        " call the fire service.",
        "its tray touched: stop, do not drive on, let the maker's service look first; smoke or hissing: get"
        " away, call the fire service",
    ),
)
# a string, straightedge or level on the slab
READ_ON_THE_SLAB = (
    Caution(
        Danger.LOOKOUT,
        "the vehicle stands off the slab, chocked; where a road or a walk is near, somebody who does nothing"
        " else looks out.",
        "the vehicle off the slab and chocked, a lookout at the road",
    ),
)
# a vehicle on level ground, measured
MEASURED_VEHICLE = (
    Caution(
        Danger.KEEP_CLEAR,
        "nothing here needs a jack. NEVER reach or lie under a vehicle, on a jack or ramps least of all;"
        " nobody in front of, behind or lying beside it.",
    ),
    Caution(
        Danger.STANDING,
        "level ground, chocks, parking brake on, in gear or park, engine off, key out.",
    ),
    Caution(Danger.READING, "hands stay outside the sills: cards go in on a long stick."),
    Caution(Danger.HOT, "exhaust, brakes and battery coolers after driving: wait an hour."),
    Caution(
        Danger.BATTERY,
        "do not press on its tray or on orange cables. Dented or scraped: do not drive on, let the maker's"
        " service look.",
    ),
    Caution(Danger.LOOKOUT, "one, where a road is near."),
)

DECIDE = Caution(
    Danger.DECIDE,
    "local codes, the owner and licensed people decide; nothing printed here replaces any of them.",
)
KICKBACK = Caution(
    Danger.KICKBACK,
    "a wheel that binds throws the grinder back or up. Both hands on it, both feet on the ground, body out of"
    " the wheel's line, never above shoulder height; up to speed before it touches, never twisted in a slot."
    " Guard on, and a disc rated for at least the speed on the tool's plate.",
)
GUARD = Caution(
    Danger.GUARD,
    "guard, shroud and side handle stay on; a set-up that works only without them is not used. Eyes, ears,"
    " gloves, boots, knees. Long cuts: change position and people, vibration harms hands.",
)
CHIPS = Caution(
    Danger.CHIPS,
    "keep others 5 m away: chips and a burst wheel fly. A new wheel runs one minute in the guard before it"
    " touches anything.",
)
ELECTRIC = Caution(
    Danger.ELECTRIC,
    "outdoors and in the wet a residual-current device (GFCI); cord and water apart.",
)
INSIDE = Caution(
    Danger.INSIDE,
    "before the first cut: utilities located and marked, covermeter over the whole cut, breakers and valves"
    " known. Strands, heating pipes, cables and conduit can lie near the top: stop at once when steel,"
    " plastic or copper shows.",
)
WEAKER = Caution(
    Danger.WEAKER,
    "thinner concrete is weaker concrete. Over a room or void, or deeper than an eighth of the slab, a"
    " licensed engineer decides first.",
)
DRILL = Caution(
    Danger.DRILL,
    "depth dots and thickness holes make the same dust: a shroud with a vacuum on the drill, holes cleaned"
    " with the vacuum, never blown out. Side handle on: a bit that catches steel turns the drill.",
)
NOISE = Caution(
    Danger.NOISE,
    "a grinder is heard streets away. Work in the hours the town allows, which this program does not know:"
    " ask, and tell the neighbours. Ears protected, helpers' too.",
)
BARRIERS = Caution(
    Danger.BARRIERS,
    "beside a public walk or road: barriers nobody can step through along the whole work, signs before both"
    " ends, a way round that a wheelchair can take, lights where anything stays open at night. No edge is"
    " left that trips.",
)
VEHICLE = Caution(
    Danger.VEHICLE,
    "chocked off the slab while cutting; never work under or in front of one held by a jack or its brake"
    " alone. Afterwards at walking pace first, with somebody watching from the side.",
)
DRAINS = Caution(
    Danger.DRAINS,
    "close drains and door gaps against dust and slurry before starting; open and rinse the drain only when"
    " all is picked up.",
)
SLURRY = Caution(
    Danger.WET,
    "water only on tools made for it, a dam round the work, a wet vacuum at hand, nobody barefoot or kneeling"
    " in it. Slurry is caustic and sets: keep it out of drains, gutters and soil, let it set, dispose as"
    " waste.",
)
DRY = Caution(
    Danger.WET,
    "dry with shroud and vacuum here; where dust may not fly at all, cut wet with tools made for it.",
)
INDOORS = Caution(
    Danger.INDOORS,
    "sheet off the room, air out through a HEPA filter, no petrol or gas engines.",
)


def lifting(heavy: Iterable[tuple[str, float]] = ()) -> Caution:
    """Two-person lifts. heavy : names and masses, kg, of what is used here and is too much for one."""
    named = "; ".join(f"{name}: {mass:.0f} kg" for name, mass in heavy)
    return Caution(
        Danger.LIFTING,
        "two people for anything over 25 kg, or too long or awkward for one: machines, full dust bags, the"
        f" long board.{f' Here {named}.' if named else ''}",
    )


def on_a_ramp(names: Iterable[str]) -> Caution:
    """Walk-behind machines on a slope."""
    return Caution(
        Danger.RAMP,
        f"{', '.join(names)}: on a slope it runs away or tips. No steeper than its maker allows; the operator"
        " never below it, nobody downhill; a second person with cord and hose, chocks at hand, head lowered"
        " and motor off before it is left. Up and down from the van by a ramp rated for it, two people.",
    )


def for_measuring(kinds: Iterable[str]) -> tuple[Caution, ...]:
    """The cautions of measurements of these kinds; nothing asked, none; a kind not known here is taken as one
    under the vehicle.
    """
    asked = set(kinds)
    if asked - {STRING}:
        return FELT_GAP
    return READ_ON_THE_SLAB if asked else ()


def terminal_lines(kinds: Iterable[str]) -> list[str]:
    """The same in short, a line each; what comes before the reading in one."""
    told = for_measuring(kinds)
    after = [c for c in told if c.danger in (Danger.HUNG_UP, Danger.BATTERY)]
    before = [c.short for c in told if c not in after]
    lines = [f"Caution, {c.danger}: {c.short}." for c in after]
    return [f"Caution: {'; '.join(before)}.", *lines] if before else lines
