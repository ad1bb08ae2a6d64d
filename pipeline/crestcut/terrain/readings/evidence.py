"""Strings and levels as evidence about the ground, with the uncertainty of where they were taken."""

from __future__ import annotations

import numpy as np

from crestcut.base.errors import CrestcutError
from crestcut.job import ByHand, LevelReading
from crestcut.terrain.readings.records import Evidence, Reading, joined
from crestcut.terrain.readings.strings import Resolve, error_at, strings_evidence
from crestcut.terrain.records import Surface

PLACINGS = 64  # places tried about the stated one
LEVEL_HEIGHT = 1.0  # m, 1 sd of an instrument's unknown height about its mean reading
SCAN_TILT = 0.005  # rad, 1 sd: how far a scan's own 'up' may lean


def gather_evidence(
    read: ByHand,
    surface: Surface,
    resolve: Resolve,
    seed: int = 0,
) -> Evidence | None:
    """Every string and level as readings on the fitted surface; None if there are none.

    resolve : from a point of the job file to site x, y in metres.
    Raises CrestcutError for a place where the scan has no ground, and for a string that the slab would touch.
    """
    lists = (level_evidence(level, k + 1, surface, resolve) for k, level in enumerate(read.levels))
    return joined(strings_evidence(read.strings, surface, resolve, seed), *lists)


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
    error = error_at(surface, places)
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
