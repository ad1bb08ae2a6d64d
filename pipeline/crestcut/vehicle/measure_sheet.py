"""The measuring sheet: what to measure on a vehicle, read back and checked against itself.

Every length has a letter. Each is measured two or three times, on flat ground, by a straightedge through the
tyre contacts, driver in,
never under a jacked vehicle. The spread of the repeats becomes its tolerance; lengths that contradict each
other are named.
"""

from __future__ import annotations

import math
import tomllib
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import numpy as np

from crestcut.errors import CrestcutError
from crestcut.units import both, millimetres, parse_length


@dataclass(frozen=True)
class Item:
    """One line of the sheet. ``key`` of the vehicle file it becomes, empty for a check only."""

    letter: str
    what: str
    how: str
    key: str
    needed: bool = True


ITEMS = (
    Item("A", "wheelbase, left side", "hub to hub, plumb bobs to the ground", "wheelbase"),
    Item("B", "wheelbase, right side", "the same on the other side", ""),
    Item("C", "front track", "middle of tread to middle of tread, on the ground", "front_track"),
    Item("D", "rear track", "the same at the rear", "rear_track"),
    Item("E", "front hub to ground", "hub's centre down to the straightedge", "tyre_radius"),
    Item("F", "rear hub to ground", "the same at the rear", ""),
    Item("G", "tyre width", "across the tread", "tyre_width"),
    Item(
        "H", "belly to ground", "card stack slid under from the side, at the lowest place", "belly_clearance"
    ),
    Item("J", "front overhang", "front hub to the foremost point", "front_overhang"),
    Item("K", "rear overhang", "rear hub to the rearmost point", "rear_overhang"),
    Item("M", "overall length", "foremost to rearmost point, on the ground", "", False),
    Item("N", "width", "without mirrors", "width"),
    Item("P", "nose to ground", "lowest point of the nose", "", False),
    Item("Q", "nose, ahead of the front hub", "where P was measured", "", False),
    Item("R", "approach angle", "from the side photograph, in degrees", "", False),
    Item(
        "S",
        "turning radius",
        "full lock, half the circle of the outer front tyre's edge",
        "turning_radius",
        False,
    ),
)
CAUTIONS = (
    "On flat ground, engine off, in gear, brake on, wheels chocked.",
    "Never under a jacked vehicle; nobody reaches under it.",
    "The exhaust stays hot for half an hour.",
)
# tape and card stack, one reading, 1 sd (common practice, no source)
TAPE = 0.002
AGREE = 3.0  # sd: further apart is a mistake
ANGLE = math.radians(1.0)  # 1 sd of an angle read off a photograph (common practice, no source)


@dataclass(frozen=True)
class Reading:
    """Mean of the repeats and its 1 sd, metres (radians for R); ``repeats`` how many."""

    value: float
    within: float
    repeats: int


@dataclass(frozen=True)
class Measured:
    """A sheet read back: letter -> reading, and plain sentences on what looks mistaken."""

    readings: dict[str, Reading]
    doubts: tuple[str, ...]

    def vehicle_lengths(self) -> dict[str, tuple[float, float]]:
        """Key of the vehicle file -> (metres, 1 sd). Both sides' wheelbase and both axles' hub height are
        averaged.
        """
        out = {i.key: (r.value, r.within) for i in ITEMS if i.key and (r := self.readings.get(i.letter))}
        for key, pair in (("wheelbase", "AB"), ("tyre_radius", "EF")):
            two = [self.readings[letter] for letter in pair if letter in self.readings]
            if len(two) == 2:
                out[key] = (sum(r.value for r in two) / 2, math.hypot(*(r.within for r in two)) / 2)
        return out


def blank_sheet() -> str:
    """The sheet as a TOML text to fill in, one line a letter, several readings each."""
    lines = [f"# {caution}" for caution in CAUTIONS]
    lines += ["# All lengths with a unit, two or three readings each. R in degrees, as a number.", ""]
    for item in ITEMS:
        lines += [f"# {item.what}: {item.how}{'' if item.needed else ' (if you can)'}", f"{item.letter} = []"]
    return "\n".join(lines) + "\n"


def read_sheet(path: Path) -> Measured:
    """A filled-in sheet, checked against itself. Raises CrestcutError for one that cannot be read or lacks
    what is needed.
    """
    try:
        data = tomllib.loads(Path(path).read_text(encoding="utf-8"))
    except (OSError, UnicodeDecodeError, tomllib.TOMLDecodeError) as error:
        raise CrestcutError(
            f"the sheet cannot be read: {error}", Path(path).name, "fill in the printed sheet's lines"
        ) from None
    letters = {item.letter for item in ITEMS}
    for letter in data:
        if letter not in letters:
            raise CrestcutError(
                f'no letter "{letter}" on the sheet', Path(path).name, f"use {', '.join(sorted(letters))}"
            )
    readings = {k: _reading(k, v, Path(path).name) for k, v in data.items() if v != []}
    missing = [item for item in ITEMS if item.needed and item.letter not in readings]
    if missing:
        raise CrestcutError(
            f"{missing[0].letter} ({missing[0].what}) was not measured", Path(path).name, missing[0].how
        )
    return Measured(readings, tuple(_doubts(readings)))


def _reading(letter: str, value: Any, where: str) -> Reading:
    values = value if isinstance(value, list) else [value]
    at = f"{where}: {letter}"
    if letter == "R":
        good = all(isinstance(v, (int, float)) and not isinstance(v, bool) and 0 < v < 90 for v in values)
        if not good:
            raise CrestcutError("an angle in degrees expected", at, "write [12.5]")
        sizes = [math.radians(float(v)) for v in values]
    else:
        sizes = [parse_length(v, at) for v in values]
        if min(sizes) <= 0:
            raise CrestcutError("a length above zero expected", at, "measure it again")
    single = ANGLE if letter == "R" else TAPE
    # the spread of the repeats, never less than the tool gives (sd of n readings by n - 1; JCGM 100:2008
    # 4.2.2)
    spread = max(float(np.std(sizes, ddof=1)), single) if len(sizes) > 1 else single
    return Reading(float(np.mean(sizes)), spread / math.sqrt(len(sizes)), len(sizes))


def _doubts(r: dict[str, Reading]) -> list[str]:
    out = []
    for item in ITEMS:
        if item.letter in r and item.letter != "R":
            own = r[item.letter]
            spread = own.within * math.sqrt(own.repeats)
            if spread > max(0.01, 0.02 * own.value):
                out.append(f"{item.letter} ({item.what}): its readings spread by {millimetres(spread)}")
    for a, b in ("AB", "EF"):
        out += _apart(f"{a} and {b}", r[a], r[b], extra=0.005)
    if "M" in r:
        base = (r["A"].value + r["B"].value) / 2
        total = Reading(
            base + r["J"].value + r["K"].value, math.hypot(r["J"].within, r["K"].within, r["A"].within), 1
        )
        out += _apart("M and A + J + K", r["M"], total, extra=0.005)
    if {"P", "Q", "R"} <= r.keys():
        out += _approach(r)
    if r["H"].value >= r["E"].value:
        out.append(f"H: the belly at {both(r['H'].value)} would be above the hubs at {both(r['E'].value)}")
    if "S" in r and r["S"].value <= r["A"].value:
        out.append(f"S: a turning radius of {r['S'].value:.2f} m is shorter than the wheelbase")
    return out


def _apart(names: str, a: Reading, b: Reading, extra: float) -> list[str]:
    """A sentence if two readings that should agree do not, beyond ``extra`` that real vehicles differ by."""
    allowed = AGREE * math.hypot(a.within, b.within) + extra
    if abs(a.value - b.value) <= allowed:
        return []
    return [
        f"{names} differ by {both(abs(a.value - b.value))}, more than {both(allowed)}: measure both again"
    ]


def approach_angle(ahead: float, height: float, radius: float) -> float:
    """Angle between ground and the tangent from a point to the tyre, rad: asin(R/d) - asin((R-c)/d), d^2 =
    a^2 + (R-c)^2.
    """
    d = math.hypot(ahead, radius - height)
    return math.asin(min(radius / d, 1.0)) - math.asin((radius - height) / d)


def _approach(r: dict[str, Reading]) -> list[str]:
    if r["Q"].value <= r["E"].value * 0.5:
        return [f"Q: the nose point {both(r['Q'].value)} ahead of the hub lies inside the tyre"]
    expected = approach_angle(r["Q"].value, r["P"].value, r["E"].value)
    slack = AGREE * math.hypot(ANGLE / math.sqrt(r["R"].repeats), r["P"].within / r["Q"].value)
    if abs(expected - r["R"].value) <= slack:
        return []
    return [
        f"R: the photograph shows {math.degrees(r['R'].value):.1f} degrees, P and Q make "
        f"{math.degrees(expected):.1f}: one of the three is mistaken"
    ]
