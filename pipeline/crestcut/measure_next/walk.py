"""What a second walk over the same slab would be worth, before it is made."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from crestcut.contact import wheel_feet
from crestcut.measure_next.draws import Readings
from crestcut.terrain import ErrorModel, Surface, of_functionals
from crestcut.vehicle import Vehicle


def walk_narrows(drawn: Readings, vehicle: Vehicle, surface: Surface, error: ErrorModel) -> float:
    """How many times narrower the least clearance becomes once the slab is walked again, its scan's error of
    the same kind and size and independent.

    What it would tell is taken from the gaps at the stands, as sums of heights under tyres and part: best
    linear gain on the draws, with the scan's own error for noise. What it tells of the rest of the slab is
    left out, so this is the least it is worth.
    """
    if error.slab is not None:
        split = error.slab.split
        error = replace(error, slab=None, warp=split.scan, warp_length=split.scan_length)
    frame = surface.height.frame
    points = tuple(
        np.vstack([frame.to_site(wheel_feet(vehicle, s.place[None])[0]), s.at]) for s in drawn.stands
    )
    weights = tuple(np.append(s.weights, -1.0) for s in drawn.stands)
    noise = of_functionals(error, points, weights, tuple(np.zeros(len(w)) for w in weights))
    seen = drawn.bare - drawn.bare.mean(axis=1, keepdims=True)
    least = drawn.least - drawn.least.mean()
    cross = seen @ least / len(least)
    gained = cross @ np.linalg.solve(seen @ seen.T / len(least) + noise + 1e-12 * np.eye(len(noise)), cross)
    whole = float(least.var())
    return float(np.sqrt(whole / max(whole - float(gained), 1e-12)))
