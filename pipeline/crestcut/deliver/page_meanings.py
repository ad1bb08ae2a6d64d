"""The figures of ``result.json`` that the page shows: name, how each is written, and its meaning in plain
words."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass

from crestcut.deliver.page_shell import esc
from crestcut.deliver.summary import number
from crestcut.units import FOOT, INCH, inches, millimetres

LITRES_PER_CUBIC_FOOT = 28.316846592  # exact, from the foot


@dataclass(frozen=True)
class Meaning:
    """One figure: its key in result.json, what it is called, how it is written, and what it means."""

    key: str
    name: str
    write: Callable[[float], str]
    text: str


def length(metres: float, decimals: int = 1) -> str:
    """A length in both systems; the reader's choice shows one. Lengths of a metre and more are in m, and in
    feet and inches. What is not nothing is never written as nothing."""
    if math.isnan(metres):
        return "not measured"
    if abs(metres) >= 1.0:
        return _pair(f"{metres:.2f} m", _feet(metres))
    si, us = millimetres(metres, decimals), inches(metres)
    if metres and not float(si.split()[0]):
        si = f"under {10.0**-decimals:g} mm"
    if metres and us == "0 in":
        us = "under 1/32 in"
    return _pair(si, us)


def _feet(metres: float) -> str:
    """ "27 ft 2 3/4 in": to the quarter of an inch, as the viewer writes it."""
    feet, quarters = divmod(round(abs(metres) / FOOT * 48), 48)
    sign = "-" if metres < 0 else ""
    return f"{sign}{feet} ft" + (f" {inches(quarters / 4 * INCH, 4)}" if quarters else "")


def area(square_metres: float) -> str:
    """m2 and ft2."""
    return _pair(f"{number(square_metres)} m²", f"{number(square_metres / FOOT**2)} ft²")


def volume(cubic_metres: float) -> str:
    """Litres and cubic feet."""
    litres = cubic_metres * 1000
    return _pair(f"{number(litres)} litres", f"{number(litres / LITRES_PER_CUBIC_FOOT)} ft³")


def share(value: float) -> str:
    """A probability as a percentage; the ends are never claimed."""
    return "under 0.1 %" if value < 0.001 else "over 99.9 %" if value > 0.999 else f"{value * 100:.3g} %"


def count(value: float) -> str:
    """A whole number with thin groups."""
    return f"{value:,.0f}".replace(",", " ")


def litres(value: float) -> str:
    """Litres and cubic feet, without a sign: the words beside it say which way."""
    return volume(abs(value) / 1000)


def _pair(si: str, us: str) -> str:
    return f'<span class="si">{esc(si)}</span><span class="us">{esc(us)}</span>'


MEANINGS = (
    Meaning(
        "before.least_clearance", "Least gap today", length,
        "The smallest upright distance between slab and underside anywhere along the drive, best estimate. "
        "A figure below zero is how far the underside would have to pass through the concrete.",
    ),
    Meaning(
        "before.interval.0", "Least gap today, low end", length,
        "19 times in 20 the true least gap lies above this end and below the other.",
    ),
    Meaning(
        "before.interval.1", "Least gap today, high end", length,
        "19 times in 20 the true least gap lies below this end and above the other.",
    ),
    Meaning(
        "before.chance_of_contact", "Chance that it touches today", share,
        "Slab and vehicle are known only so well. This is the share of all slabs and vehicles that fit the "
        "measurements in which something touches, at walking pace, loaded as measured.",
    ),
    Meaning(
        "before.station", "Front axle at the worst place", length,
        "How far the front axle has come from the start of the line when the gap is least.",
    ),
    Meaning(
        "in_use.least_clearance", "Least gap in use", length,
        "The same with the allowances for load, speed, braking, wear and season taken off.",
    ),
    Meaning(
        "in_use.chance_of_contact", "Chance that it touches in use", share,
        "The same chance with the allowances of daily use taken off.",
    ),
    Meaning(
        "want", "Gap asked for under the belly", length,
        "What should be left between slab and belly once the work is done.",
    ),
    Meaning(
        "want_ends", "Gap asked for under nose and tail", length,
        "What should be left under what hangs ahead of the front axle and behind the rear one.",
    ),
    Meaning(
        "confidence", "How sure the cut must be", share,
        "The chance with which the gap asked for must be reached everywhere at once.",
    ),
    Meaning(
        "cut.deepest", "Deepest cut", length,
        "The most that is taken off at any place, measured straight down from the slab as it is.",
    ),
    Meaning(
        "cut.area", "Area cut", area,
        "Where anything is taken off, feather included.",
    ),
    Meaning(
        "cut.volume", "Volume cut", volume,
        "All the concrete that becomes dust or slurry.",
    ),
    Meaning(
        "cut.margin", "Margin in the cut", length,
        "Part of the depth: taken because slab and vehicle are known only so well. Better measurements make "
        "it smaller.",
    ),
    Meaning(
        "cut.short_by", "Still short by", length,
        "How far the least gap stays below what was asked, within the limits on depth. Zero: it is reached.",
    ),
    Meaning(
        "cut.slack", "Left to spare in the cut", length,
        "The most that any cut place could have been left higher. Near zero: no more is taken than is "
        "needed.",
    ),
    Meaning(
        "after.least_clearance", "Least gap after the cut", length,
        "The least gap on the finished slab, swept again with the whole vehicle.",
    ),
    Meaning(
        "after.interval.0", "Least gap after, low end", length,
        "19 times in 20 the true gap after the cut lies above this.",
    ),
    Meaning(
        "after.interval.1", "Least gap after, high end", length,
        "19 times in 20 the true gap after the cut lies below this.",
    ),
    Meaning(
        "after.chance_of_contact", "Chance that it touches after the cut", share,
        "The same chance once the slab is cut: slab, vehicle and cut are known only so well.",
    ),
    Meaning(
        "surface.cell", "Spacing of the heights", length,
        "The slab is known by one height at each crossing of a square net with this spacing.",
    ),
    Meaning(
        "surface.noise", "Noise of one point", length,
        "How far a single point of the scan strays from the slab. It averages away where there are many.",
    ),
    Meaning(
        "surface.systematic", "Error that does not average away", length,
        "What the scanner bends or shifts over hand and arm lengths. More points do not help; hand "
        "measurements do.",
    ),
    Meaning(
        "surface.standard_error", "Height error at the worst place, noise only", length,
        "How well the height there is known as far as noise goes; the error that does not average away "
        "comes on top.",
    ),
    Meaning(
        "scan.points", "Points in the scan", count,
        "All points kept from all files.",
    ),
)  # fmt: skip

# Columns of tables: the star stands for the row.
ROW_MEANINGS = (
    Meaning(
        "options.*.clearance", "Gap it leaves", length,
        "The least upright distance between slab and underside anywhere along the drive once this is done, "
        "best estimate.",
    ),
    Meaning(
        "options.*.chance", "Chance that it touches", share,
        "How likely it is that something still touches once this is done: slab and vehicle are known only so "
        "well.",
    ),
    Meaning(
        "options.*.enough", "How sure it is enough", share,
        "How likely it is that every gap is then what was asked for, or more. It counts as enough from the "
        "confidence asked for upwards.",
    ),
    Meaning(
        "options.*.depth", "Deepest, or thickest", length,
        "The most that is taken off, or laid down, at any place.",
    ),
    Meaning(
        "options.*.litres", "How much concrete", litres,
        "All that is taken away, or laid down.",
    ),
    Meaning(
        "vehicles.*.least_clearance", "Gap today", length,
        "The least upright distance between slab and underside of this vehicle today, best estimate.",
    ),
    Meaning(
        "vehicles.*.chance_of_contact", "Chance that it touches", share,
        "How likely it is that this vehicle touches today, as measured, at walking pace.",
    ),
    Meaning(
        "vehicles.*.after_clearance", "Gap once cut", length,
        "The least gap of this vehicle on the finished slab.",
    ),
    Meaning(
        "vehicles.*.alone", "Its own cut", length,
        "The deepest cut this vehicle would need if it drove there alone.",
    ),
    Meaning(
        "vehicles.*.litres", "Its part of the cut", litres,
        "What of the common cut is there because of this vehicle.",
    ),
)  # fmt: skip
