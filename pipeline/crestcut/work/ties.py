"""Places on the slab by two tapes from two marks.

The tape lies on the slab and is pulled straight: it touches the high points between its ends, so its length
is that of the taut string over the ground (the upper convex hull of the profile), not the plan distance.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Mapping

import numpy as np

from crestcut.base.grid import FloatArray, HeightGrid
from crestcut.work.jig_records import Ties
from crestcut.work.site import Site

# How well two tapes must cross. A place x is found by |x - a| = ra and |x - b| = rb; errors e of the two
# lengths move it by J^-1 e, the rows of J being the unit vectors p, q along the tapes. For independent errors
# of sd s the covariance is s^2 (J^T J)^-1, and J^T J = p p^T + q q^T has the eigenvalues 1 +- cos c, c the
# angle between the tapes: along the worse axis the sd is s / sqrt(1 - |cos c|). On a feather 1:4 a dot 5 mm
# off is 1.25 mm wrong in depth, as much as a hand grinds wrong; three sd of a tape read and held to 1 mm stay
# under that from 50.2 degrees.
TAPE = 0.001  # m, one sd of a tape read and held on a mark (common practice, no source)
OFF = 0.005  # m: a dot may lie as far off, three sd
LEAST_CROSSING = math.acos(1 - (3 * TAPE / OFF) ** 2)
# A place by chainage and offset is as good while it lies near the chalked line: a square laid against it is
# out by 2 in 1000 (3-4-5, its sides each to 1 mm), so three sd of both are OFF at 0.67 m.
BY_LINE = math.sqrt((OFF / 3) ** 2 - TAPE**2) / 0.002  # m
NEAREST = 0.25  # m: a shorter tape is hard to pull square to a mark
STEP = 0.02  # m along the profile
AT_MARK = 0.06  # m about a mark within which the scan's points tell its height

Marks = Mapping[str, tuple[float, ...]]  # name -> site x, y and, where it is known, z, m


def crossing_error(angle: float) -> float:
    """One sd, m, of a place by two tapes that cross at so many radians, along its worse axis."""
    return TAPE / math.sqrt(1 - abs(math.cos(angle)))


def with_heights(
    marks: Mapping[str, tuple[float, float]], points: FloatArray
) -> dict[str, tuple[float, ...]]:
    """Marks with the height that the scan has there: a tape may start from one off the raster too.

    points : (n, 3) of the scan, site m. The median of those within ``AT_MARK``; none there, no height.
    """
    out: dict[str, tuple[float, ...]] = {}
    for name, (x, y) in marks.items():
        near = np.abs(points[:, 0] - x) <= AT_MARK
        z = points[near][np.hypot(points[near, 0] - x, points[near, 1] - y) <= AT_MARK, 2]
        out[name] = (x, y, float(np.median(z))) if len(z) else (x, y)
    return out


def tape_ties(xy: tuple[float, float], marks: Marks, height: HeightGrid) -> Ties | None:
    """The two marks that cross best over the place, the nearer pair where two cross alike; None where none
    cross well.

    xy : site metres.  Lengths are over the slab, rounded to the millimetre.
    """
    best: tuple[float, Ties] | None = None
    for a, b in itertools.combinations(sorted(marks), 2):
        pa, pb = np.asarray(marks[a][:2]), np.asarray(marks[b][:2])
        da, db = np.asarray(xy) - pa, np.asarray(xy) - pb
        ra, rb = float(np.hypot(*da)), float(np.hypot(*db))
        if min(ra, rb) < NEAREST:
            continue
        cross = float(da[0] * db[1] - da[1] * db[0]) / (ra * rb)
        angle = abs(math.atan2(cross, float(da @ db) / (ra * rb)))
        if not LEAST_CROSSING <= angle <= math.pi - LEAST_CROSSING:
            continue
        score = ra + rb + 4.0 * abs(angle - math.pi / 2)
        if best is None or score < best[0]:
            along = pb - pa
            left = along[0] * da[1] - along[1] * da[0] > 0
            over_a, over_b = tape_length(marks[a], xy, height), tape_length(marks[b], xy, height)
            if math.isnan(over_a) or math.isnan(over_b):
                continue
            ties = Ties(
                a, round(over_a, 3), b, round(over_b, 3), "left" if left else "right", math.degrees(angle)
            )
            best = (score, ties)
    return best[1] if best else None


def ties_at(site: Site, marks: Marks, height: HeightGrid | None, row: int, column: int) -> Ties | None:
    """The tapes to a node of the raster; None without heights or where no marks cross well."""
    if height is None:
        return None
    x, y = height.frame.to_site((column * site.cell, row * site.cell))
    return tape_ties((float(x), float(y)), marks, height)


def tape_length(a: tuple[float, ...], b: tuple[float, float], height: HeightGrid) -> float:
    """Length of a tape pulled taut over the slab from a mark to b, m; NaN where the height of either end is
    not known.

    a : x, y, and z, which is taken where the raster does not reach. What is not measured in between is
    bridged straight: a rise of h under a bridge of L would have lengthened it by 2 h^2 / L, 2 mm for 50 mm in
    2.5 m.
    """
    plan = math.hypot(b[0] - a[0], b[1] - a[1])
    count = max(int(plan / STEP), 1) + 1
    share = np.linspace(0, 1, count)[:, None]
    z = height.sample(np.asarray(a[:2]) * (1 - share) + np.asarray(b) * share)
    if np.isnan(z[0]) and len(a) > 2:
        z[0] = a[2]
    if np.isnan(z[[0, -1]]).any():
        return math.nan
    s = share[:, 0] * plan
    keep = ~np.isnan(z)
    hull = upper_hull(s[keep], z[keep])
    return float(np.hypot(np.diff(hull[:, 0]), np.diff(hull[:, 1])).sum())


def upper_hull(s: FloatArray, z: FloatArray) -> FloatArray:
    """Vertices (m, 2) of the upper convex hull of a profile with rising s (Andrew's monotone chain)."""
    hull: list[tuple[float, float]] = []
    for p in zip(s.tolist(), z.tolist(), strict=True):
        while len(hull) > 1:
            (x0, y0), (x1, y1) = hull[-2], hull[-1]
            if (x1 - x0) * (p[1] - y0) - (y1 - y0) * (p[0] - x0) < 0:
                break
            hull.pop()
        hull.append(p)
    return np.asarray(hull)


def place_from_ties(
    ties: Ties, marks: Marks, stretch: tuple[float, float] = (1.0, 1.0)
) -> tuple[float, float]:
    """Where two plan distances cross, on the side named. stretch : tape over plan length of each tie."""
    pa, pb = np.asarray(marks[ties.first][:2]), np.asarray(marks[ties.second][:2])
    ra, rb = ties.first_distance / stretch[0], ties.second_distance / stretch[1]
    base = float(np.hypot(*(pb - pa)))
    along = (ra**2 - rb**2 + base**2) / (2 * base)
    across = math.sqrt(max(ra**2 - along**2, 0.0)) * (1 if ties.side == "left" else -1)
    e = (pb - pa) / base
    x, y = pa + along * e + across * np.array([-e[1], e[0]])
    return float(x), float(y)
