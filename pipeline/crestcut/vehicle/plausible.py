"""What a vehicle's lengths can be, each by itself and beside the others: the one source for vehicle files,
measuring sheets and the page that asks for them (``report/pages/viewer/src/pick_check_vehicle.js`` reads it).

The limits are common practice, no source: wide enough for carts, racing karts and long vans; outside them two
figures were swapped, a diameter was given for a radius, or a unit was mixed up.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from crestcut.base.units import both, inches

# m: least, most. The lower ends let small carts in, the upper ends the longest low loader.
RANGES: dict[str, tuple[float, float]] = {
    "wheelbase": (0.3, 12.0),
    "track": (0.2, 3.0),
    "tyre_radius": (0.03, 0.9),
    "tyre_width": (0.01, 0.6),
    "width": (0.2, 3.5),
    "clearance": (0.0, 0.8),
    "overhang": (0.0, 5.0),
    "turning_radius": (0.3, 30.0),
}
ROSE = 0.05  # m that an axle's body rises by under a load: the sign was forgotten


@dataclass(frozen=True)
class Rule:
    """One thing that is mistaken, or looks so.

    stop : it cannot be, and is refused; else it is said aloud.  at : the key it is said of.  letters : of the
    measuring sheet.  over : each a sum of sizes with their factors; the rule speaks where every one is above
    zero.  words : with the sizes it names in braces.  carts : whether it holds of rigid carts too.
    """

    stop: bool
    at: str
    letters: str
    over: tuple[Mapping[str, float], ...]
    words: str
    carts: bool = False


RULES = (
    Rule(True, "wheelbase", "A", ({"width": 0.7, "wheelbase": -1.0},),
         "a wheelbase of {wheelbase} under a body {width} wide cannot be: the two look swapped"),
    Rule(False, "wheelbase", "A", ({"most_track": 1.15, "wheelbase": -1.0},
                                   {"wheelbase": 1.0, "width": -0.7}),
         "a wheelbase of {wheelbase} is short beside a track of {most_track}: was one taken for the other?"),
    Rule(True, "tyre_radius", "E", ({"tyre_radius": 1.0, "wheelbase": -0.2},
                                    {"tyre_radius": 0.35, "belly_clearance": -1.0}),
         "hubs {tyre_radius} up, with the belly at {belly_clearance}: that is a tyre's diameter, not the "
         "middle of the hub above the ground"),
    Rule(False, "tyre_radius", "E", ({"tyre_radius": 1.0, "wheelbase": -0.18},
                                     {"belly_clearance": 1.0, "tyre_radius": -0.35}),
         "hubs {tyre_radius} up are high for a wheelbase of {wheelbase}: is that a tyre's diameter?"),
    Rule(True, "belly_clearance", "H", ({"belly_clearance": 1.0, "tyre_radius": -1.0},),
         "the belly at {belly_clearance} would be above the hubs at {tyre_radius}"),
    Rule(False, "belly_clearance", "H", ({"belly_clearance": 1.0, "tyre_radius": -2.0},),
         "the belly at {belly_clearance} is higher than the wheels, {tyre_radius} to the hubs", carts=True),
    Rule(True, "width", "N", ({"most_track": 1.0, "width": -1.0},),
         "a body {width} wide is narrower than the track of {most_track}"),
    Rule(False, "rear_track", "D", ({"most_track": 0.85, "least_track": -1.0},),
         "tracks of {most_track} and {least_track} are far apart: measure both again", carts=True),
    Rule(False, "tyre_width", "G", ({"tyre_width": 1.0, "tyre_radius": -1.2},),
         "tyres {tyre_width} wide with the hubs only {tyre_radius} up: were the two swapped?", carts=True),
    Rule(True, "turning_radius", "S", ({"wheelbase": 1.0, "turning_radius": -1.0},),
         "a turning radius of {turning_radius} is shorter than the wheelbase of {wheelbase}"),
    Rule(False, "front_overhang", "J", ({"front_overhang": 1.0, "wheelbase": -0.8},),
         "a front overhang of {front_overhang} is long for a wheelbase of {wheelbase}", carts=True),
    Rule(False, "rear_overhang", "K", ({"rear_overhang": 1.0, "wheelbase": -0.8},),
         "a rear overhang of {rear_overhang} is long for a wheelbase of {wheelbase}", carts=True),
)  # fmt: skip


@dataclass(frozen=True)
class Finding:
    """A rule that speaks, in words with its figures."""

    rule: Rule
    words: str


def findings(sizes: Mapping[str, float | None], rigid: bool) -> tuple[Finding, ...]:
    """Every rule that speaks of the sizes (m, by the keys of a vehicle file; None or missing: not known)."""
    known = {key: value for key, value in sizes.items() if value is not None}
    tracks = [known[key] for key in ("front_track", "rear_track") if key in known]
    if tracks:
        known |= {"most_track": max(tracks), "least_track": min(tracks)}
    return tuple(
        Finding(rule, rule.words.format_map({key: _shown(value) for key, value in known.items()}))
        for rule in RULES
        if (rule.carts or not rigid) and all(_speaks(sum_, known) for sum_ in rule.over)
    )


def _shown(metres: float) -> str:
    return both(metres) if metres < 1.0 else f"{metres:.2f} m ({inches(metres)})"


def _speaks(terms: Mapping[str, float], known: Mapping[str, float]) -> bool:
    if not all(key in known for key in terms):
        return False
    return sum(factor * known[key] for key, factor in terms.items()) > 1e-9
