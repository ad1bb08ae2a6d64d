"""The figures of ``result.json`` that the page shows: name, how each is written, and its meaning in plain
words."""

from __future__ import annotations

from crestcut.report.pages.meanings import Meaning, area, count, length, litres, share, times, volume

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
        "in_use.interval.0", "Least gap in use, low end", length,
        "19 times in 20 the true least gap in use lies above this end and below the other.",
    ),
    Meaning(
        "in_use.interval.1", "Least gap in use, high end", length,
        "19 times in 20 the true least gap in use lies below this end and above the other.",
    ),
    Meaning(
        "before.scan_share", "The scan's share of the doubt", share,
        "How much of the doubt about the gap comes from the scan. The rest comes from the vehicle's "
        "measurements. Where it is large, a hand measurement on the slab helps most.",
    ),
    Meaning(
        "before.draws", "Slabs and vehicles tried", count,
        "So many slabs and vehicles, each as the measurements allow, were driven to find the chances.",
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
        "certificate.ray_cast.before.cast", "Least gap today by ray casting", length,
        "A second opinion on the mean slab: points of the underside cast straight down by a library of its "
        "own. It knows nothing of what slab and tape may be wrong by, so it is compared with the swept gap "
        "of the same slab, not with the least gap today.",
    ),
    Meaning(
        "certificate.ray_cast.after.cast", "Least gap after the cut by ray casting", length,
        "The same on the finished slab. Where the two ways disagree by more than 0.5 mm it is said first of "
        "all, and nothing is released.",
    ),
    Meaning(
        "after.least_clearance", "Least gap after the cut", length,
        "The smallest upright distance left anywhere along the drive on the finished slab, best estimate.",
    ),
    Meaning(
        "after.interval.0", "Least gap after, low end", length,
        "19 times in 20 the true gap after the cut lies above this end and below the other.",
    ),
    Meaning(
        "after.interval.1", "Least gap after, high end", length,
        "19 times in 20 the true gap after the cut lies below this end and above the other.",
    ),
    Meaning(
        "after.chance_of_contact", "Chance that it touches after the cut", share,
        "The same chance once the slab is cut: slab, vehicle and cut are known only so well.",
    ),
    Meaning(
        "after.in_use.least_clearance", "Least gap after the cut, in use", length,
        "What the cut leaves with the allowances for load, speed, braking, wear and season taken off.",
    ),
    Meaning(
        "after.in_use.interval.0", "Least gap after, in use, low end", length,
        "19 times in 20 the true gap in use after the cut lies above this end and below the other.",
    ),
    Meaning(
        "after.in_use.interval.1", "Least gap after, in use, high end", length,
        "19 times in 20 the true gap in use after the cut lies below this end and above the other.",
    ),
    Meaning(
        "after.in_use.chance_of_contact", "Chance that it touches after the cut, in use", share,
        "The same chance once the slab is cut, with the allowances of daily use taken off.",
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
        "surface.patch", "Bumps the scanner makes", length,
        "How far the scan strays over about a hand's breadth. It averages away only from place to place.",
    ),
    Meaning(
        "surface.warp", "Bending", length,
        "How far the scan bends over about an arm's length. It does not average away; a string or a level "
        "shows it.",
    ),
    Meaning(
        "surface.standard_error", "Height error at the worst place", length,
        "How far the height there may be off: two times in three by less. The error that does not average "
        "away is in it.",
    ),
    Meaning(
        "scan.points", "Points in the scan", count,
        "All points kept from all files.",
    ),
)  # fmt: skip

# Columns of tables: the star stands for the row.
ROW_MEANINGS = (
    Meaning(
        "in_use.allowances.*.lower", "Allowance for use", length,
        "The most that this takes off the gap in daily use. Anything from none to all of it is taken as "
        "equally likely.",
    ),
    Meaning(
        "advice.measure.*.narrows", "How much surer", times,
        "How many times narrower the range of the least gap becomes with this measurement and those before "
        "it; a second walk's by itself.",
    ),
    Meaning(
        "soft.*.pressed", "How far it is pressed", length,
        "A part that may touch, by the vehicle's file, meets the slab and bends so far. It is not counted in "
        "the verdict.",
    ),
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
        "options.*.in_use_clearance", "Gap it leaves in use", length,
        "The same gap with the allowances for load, speed, braking, wear and season taken off.",
    ),
    Meaning(
        "options.*.in_use_chance", "Chance that it touches in use", share,
        "How likely it is that something still touches in daily use once this is done.",
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
        "vehicles.*.after_in_use_clearance", "Gap once cut, in use", length,
        "The least gap of this vehicle on the finished slab with the allowances of daily use taken off.",
    ),
    Meaning(
        "vehicles.*.after_in_use_chance", "Chance that it touches once cut, in use", share,
        "How likely it is that this vehicle touches the finished slab in daily use.",
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

# Words that stand for no figure of the result: key, name, meaning.
TERMS = (
    ("feather", "Feather", "The cut ends in a slope instead of a step, so nobody trips and no tyre bumps. "
     "1 in 4 rises by one for every four along."),
    ("mass", "Mass", "The concrete that becomes dust or slurry, at 2,400 kilograms a cubic metre."),
)  # fmt: skip
