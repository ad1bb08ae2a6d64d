"""Strings and levels as evidence about the ground, with the uncertainty of where they were taken."""

from __future__ import annotations

from collections.abc import Callable, Sequence

import numpy as np

from crestcut.errors import CrestcutError
from crestcut.grid import FloatArray
from crestcut.job.records import LevelReading, Point, StringReading
from crestcut.surface.evidence_records import Evidence, Reading, joined
from crestcut.surface.records import Surface
from crestcut.units import millimetres

Resolve = Callable[[Point], tuple[float, float]]
PLACINGS = 64  # places tried about the stated one
STRING_WEIGHT = 0.00685  # N/m: 0.24 mm of sag over 2.9 m at 30 N
PULL = 30.0  # N, the pull the sheet asks for
LEVEL_HEIGHT = 1.0  # m, 1 sd of an instrument's unknown height about its mean reading
SCAN_TILT = 0.005  # rad, 1 sd: how far a scan's own 'up' may lean
PROUD = 4.0  # warps by which a slab must stand over a string before it is said that it would touch


def gather_evidence(
    strings: Sequence[StringReading],
    levels: Sequence[LevelReading],
    surface: Surface,
    resolve: Resolve,
    seed: int = 0,
) -> Evidence | None:
    """Every string and level as readings on the fitted surface; None if there are none.

    resolve : from a point of the job file to site x, y in metres.
    Raises CrestcutError for a place where the scan has no ground, and for a string that the slab would touch.
    """
    sets = [
        *(string_evidence(s, k + 1, surface, resolve, seed) for k, s in enumerate(strings)),
        *(level_evidence(level, k + 1, surface, resolve) for k, level in enumerate(levels)),
    ]
    return joined(*sets)


def string_evidence(
    string: StringReading, number: int, surface: Surface, resolve: Resolve, seed: int = 0
) -> Evidence:
    """One string: the distance down to the slab at a place, or the least one.

    Where the places are only so well known the expected distance and its spread come from trying places
    about the stated ones: at
    a crest the mistake is one-sided, 20 mm on an 18 % break being worth 1.4 mm on average.
    """
    name = f"[[string]] {number}"
    a, b = np.array(resolve(string.a)), np.array(resolve(string.b))
    length = float(np.hypot(*(b - a)))
    if string.at is not None and not 0 < string.at < length:
        raise CrestcutError(
            f"at is {string.at:.3f} m on a string of {length:.3f} m", name, "measure it from a towards b"
        )
    expected, share = _down(surface, a, b, string.at, string.blocks)
    if np.isnan(expected):
        raise CrestcutError(
            "an end of the string, or the slab under it, lies where the scan has no ground",
            name,
            "move it onto scanned slab",
        )
    if expected < -max(PROUD * surface.error.warp, 0.010):
        raise CrestcutError(
            f"the slab would touch this string: it stands {millimetres(-expected)} over it",
            name,
            "use higher blocks",
        )
    rng = np.random.default_rng([seed, number])
    tried = []
    for _ in range(PLACINGS):
        move = rng.normal(0.0, string.placed, (3, 2))
        at = None if string.at is None else float(np.clip(string.at + move[2, 0], 0.0, length))
        across = np.zeros(2) if at is None else move[2, 1] * np.array([-(b - a)[1], (b - a)[0]]) / length
        tried.append(_down(surface, a + move[0], b + move[1], at, string.blocks, across)[0])
    known = np.array(tried)[~np.isnan(tried)]
    predicted, spread = (
        (float(known.mean()), float(known.std())) if len(known) > PLACINGS // 2 else (expected, string.placed)
    )
    at_slab = a + share * (b - a)
    points = np.array([a, b, at_slab])
    weights = np.array([1 - share, share, -1.0])
    what = "the distance under the string"
    reading = Reading(name, what, points, weights, _error_at(surface, points), predicted, string.down)
    return Evidence((reading,), np.array([[string.within**2 + spread**2]]))


def _down(
    surface: Surface,
    a: FloatArray,
    b: FloatArray,
    at: float | None,
    blocks: float,
    across: FloatArray | None = None,
) -> tuple[float, float]:
    """Distance from the string down to the fitted slab, m, and where along it (share): at a place, or the
    least."""
    length = float(np.hypot(*(b - a)))
    share = np.linspace(0.02, 0.98, max(int(length / 0.01), 20)) if at is None else np.array([at / length])
    ends = surface.height.sample(np.array([a, b]))
    under = surface.height.sample(a + share[:, None] * (b - a) + (0.0 if across is None else across))
    sag = (
        STRING_WEIGHT * length**2 / (8 * PULL) * 4 * share * (1 - share)
    )  # parabola: w L^2 / 8 T in the middle
    down = ends[0] * (1 - share) + ends[1] * share + blocks - sag - under
    if np.isnan(down).all():
        return float("nan"), 0.5
    k = int(np.nanargmin(down))
    return float(down[k]), float(share[k])


def level_evidence(level: LevelReading, number: int, surface: Surface, resolve: Resolve) -> Evidence:
    """A level's list: distances down from one plane whose height is unknown; the scan's own tilt is not
    trusted beyond 5 mm/m."""
    name = f"[[level]] {number}"
    places = np.array([resolve(p) for p, _ in level.points], dtype=float).reshape(-1, 2)
    down = np.array([d for _, d in level.points])
    heights = surface.height.sample(places)
    if np.isnan(heights).any():
        k = int(np.argmax(np.isnan(heights)))
        raise CrestcutError(
            f"point {k + 1} lies where the scan has no ground", name, "read it on scanned slab"
        )
    predicted = -heights + (down + heights).mean()  # the instrument's height, taken from the readings' mean
    rng = np.random.default_rng(number)
    moved = surface.height.sample(places + rng.normal(0.0, level.placed, (PLACINGS, len(places), 2)))
    spread = np.nan_to_num(np.nanstd(moved, axis=0))
    error = _error_at(surface, places)
    readings = tuple(
        Reading(
            name,
            f"point {k + 1}",
            places[k : k + 1],
            np.array([-1.0]),
            error[k : k + 1],
            float(predicted[k]),
            float(down[k]),
        )
        for k in range(len(places))
    )
    away = places - places.mean(axis=0)
    noise = np.diag(level.within**2 + spread**2) + LEVEL_HEIGHT**2 + SCAN_TILT**2 * away @ away.T
    return Evidence(readings, noise)


def _error_at(surface: Surface, points: FloatArray) -> FloatArray:
    return np.nan_to_num(surface.standard_error.sample(points))
