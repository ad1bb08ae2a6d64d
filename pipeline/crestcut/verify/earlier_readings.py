"""Slab and vehicle moved to where what was read by hand puts them, for maps and for a further pass.

A scan that is 8 mm out over the crest and a gap felt there disagree; the chances weigh both, and so must the
map of what is still to go. Errors given Gaussian readings are a shift and a smaller spread (kriging, as in
``readings.condition``): here the shift is made, and the readings are kept, agreeing, for the spread.
``chance.conditioned`` moves the slab's own draws; what a hand left uneven since is not among those.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import numpy as np
from scipy.ndimage import map_coordinates

from crestcut.base.grid import FloatArray, GridFrame
from crestcut.chance import moved_vehicle
from crestcut.standing import LoadedVehicle
from crestcut.terrain import Evidence, Surface, fold_in

COARSE = 0.05  # m between places where the shift is worked out: half of what patches change over
DRAWS = 200  # for what bounds leave free


def told_by(
    surface: Surface, driver: LoadedVehicle, evidence: Evidence | None, seed: int
) -> tuple[Surface, LoadedVehicle]:
    """Ground and parts at their expected places given the readings; both as they were where there are none,
    or where they contradict."""
    if evidence is None:
        return surface, driver
    frame, step = surface.height.frame, max(round(COARSE / surface.height.frame.cell), 1)
    coarse = _coarse(frame, step)
    places = coarse.node_xy().reshape(-1, 2)
    rng = np.random.default_rng(seed)
    fold = fold_in(evidence, surface.error, places, driver.within, rng, DRAWS, driver.parts)
    if fold.contradictions:
        return surface, driver
    shift = _fine(fold.ground.reshape(coarse.shape), step, frame.shape)
    ground = replace(
        surface,
        height=surface.height.like(surface.height.values - shift),
        top=surface.top.like(surface.top.values - shift),
    )
    return ground, replace(driver, vehicle=moved_vehicle(driver.vehicle, fold.parts))


def agreeing(evidence: Evidence | None) -> Evidence | None:
    """The same readings, come out just as expected: they still narrow, and no longer shift. Bounds are left
    out: what they narrow is spent in the shift."""
    if evidence is None:
        return None
    kept = [k for k, r in enumerate(evidence.readings) if r.relation == "is"]
    if not kept:
        return None
    readings = tuple(replace(evidence.readings[k], observed=evidence.readings[k].predicted) for k in kept)
    return Evidence(readings, evidence.noise[np.ix_(kept, kept)])


def _coarse(frame: GridFrame, step: int) -> GridFrame:
    rows, columns = (-(-(n - 1) // step) + 1 for n in frame.shape)
    return replace(frame, cell=frame.cell * step, shape=(rows, columns))


def _fine(values: FloatArray, step: int, shape: tuple[int, ...]) -> FloatArray:
    """Straight lines between coarse nodes, (rows, columns) of ``shape``."""
    at: Sequence[FloatArray] = np.meshgrid(*(np.arange(n) / step for n in shape), indexing="ij")
    return np.asarray(map_coordinates(values, at, order=1, mode="nearest"))
