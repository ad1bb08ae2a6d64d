"""Scenes to try what is cheaper than a cut on, and the thing done by hand and swept in full."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest

from crestcut.alternatives.trials import Baseline, bench
from crestcut.base.grid import FloatArray
from crestcut.contact.clearance.sweep import sweep, wanted_gap
from crestcut.contact.path.line import travel_line
from crestcut.contact.records import Clearance
from crestcut.contact.stand.ride import ride
from crestcut.job.records import Travel, Wanted
from crestcut.terrain.records import Surface
from crestcut.vehicle.records import AS_MEASURED, LoadState, Vehicle
from scenes import STRAIGHT, Ground, Scene, belly, crest, lip, scene, stand, vehicle

WANTED = Wanted(want=0.01, want_ends=0.02)


WANDERING = Travel(line=(), wander=0.15, heading=math.radians(2), ways=("forward", "turned"))


LADEN = LoadState("laden", -0.010, -0.020)


CAR = vehicle(belly(), lip(0.2), loads=(AS_MEASURED, LADEN))


def uneven(seed: int) -> Ground:
    """A crest turned a little, with humps and hollows of a few millimetres."""
    rng = np.random.default_rng(seed)
    waves = rng.uniform(0.4, 2.0, (6, 2)) * rng.choice([-1, 1], (6, 2)) * 2
    phase, size = rng.uniform(0, 6.28, 6), rng.uniform(0.0005, 0.002, 6)
    ridge = crest(rng.uniform(0.08, 0.095), rng.uniform(-0.3, 0.3))

    def ground(x: FloatArray, y: FloatArray) -> FloatArray:
        rough = sum(a * np.sin(k * x + m * y + p) for (k, m), p, a in zip(waves, phase, size, strict=True))
        return ridge(x, y) + rough

    return ground


def benched(
    s: Scene, travel: Travel = STRAIGHT, loads: tuple[LoadState, ...] = (AS_MEASURED,), **more: object
) -> Baseline:
    rode = ride(s.vehicle, s.surface, s.line, travel, loads)
    swept = sweep(s.vehicle, s.surface, rode)
    return bench(s.vehicle, s.surface, rode, swept, WANTED, loads, **more)  # type: ignore[arg-type]


def wide(seed: int, car: Vehicle = CAR, cell: float = 0.02) -> Scene:
    """A window wide enough for other lines."""
    s = scene(uneven(seed), car, replace(STRAIGHT, wander=0.9), cell=cell)
    return stand(car, STRAIGHT, s.line, s.surface)


def excess(found: Clearance) -> float:
    gaps = wanted_gap(WANTED.want, WANTED.want_ends)
    return min(c.gap - gaps[zone] for zone, c in found.least.items())


def by_hand(s: Scene, added: FloatArray | float = 0.0, car: Vehicle | None = None, travel: Travel = STRAIGHT,
            loads: tuple[LoadState, ...] = (AS_MEASURED,), ends: object = None) -> Clearance:  # fmt: skip
    """The whole ride and sweep once more, with the thing done: nothing is left out, nothing thinned."""
    car = car or s.vehicle
    surface: Surface = replace(
        s.surface, height=s.surface.height.like(s.surface.height.values + added),
        top=s.surface.top.like(s.surface.top.values + added),
    )  # fmt: skip
    line = s.line if ends is None else travel_line(ends, car, travel, s.line.step)  # type: ignore[arg-type]
    return sweep(car, surface, ride(car, surface, line, travel, loads))


def same(tried: object, swept: Clearance, within: float = 1e-9) -> None:
    assert swept.worst is not None
    assert tried.gap == pytest.approx(swept.worst.gap, abs=within)  # type: ignore[attr-defined]
    assert tried.excess == pytest.approx(excess(swept), abs=within)  # type: ignore[attr-defined]
