"""The vehicle itself as a witness: a gap felt, a scrape, or a height that passed, where its front axle
stood."""

from __future__ import annotations

from collections.abc import Callable, Sequence

import numpy as np

from crestcut.base.errors import CrestcutError
from crestcut.base.grid import FloatArray, HeightGrid
from crestcut.chance.active_contacts import wheel_weights
from crestcut.contact import (
    FRAMES,
    THICKNESS,
    VOID,
    TravelLine,
    bridging,
    contact_ground,
    plate_heights,
    plates_of,
    ridden_ground,
    stand_on,
    wheel_feet,
)
from crestcut.job import Point, Witness
from crestcut.terrain import Evidence, Reading, Surface, joined
from crestcut.vehicle import LoadState, Vehicle

PLACINGS = 32  # places of the front axle tried about the stated one


def witness_evidence(
    witnesses: Sequence[Witness],
    vehicle: Vehicle,
    surface: Surface,
    line: TravelLine,
    loads: Sequence[LoadState],
    resolve: Callable[[Point], tuple[float, float]],
    seed: int = 0,
) -> Evidence | None:
    """Every witness as a reading of one part's least gap where the vehicle stood; None if there are none.
    What speaks of the whole line is no reading: ``whole_line``.

    The vehicle is taken to stand along the line, the way it is drawn. Raises CrestcutError for an unknown
    part or load, and for a place where the scan has no ground.
    """
    return joined(
        *(
            _one(w, k + 1, vehicle, surface, line, loads, resolve, seed)
            for k, w in enumerate(witnesses)
            if w.front_axle is not None
        )
    )


def _one(
    witness: Witness,
    number: int,
    vehicle: Vehicle,
    surface: Surface,
    line: TravelLine,
    loads: Sequence[LoadState],
    resolve: Callable[[Point], tuple[float, float]],
    seed: int,
) -> Evidence:
    name = f"[[witness]] {number}"
    part = next((p for p in vehicle.parts if p.name == witness.part), None)
    load = next((x for x in loads if x.name == witness.load), None)
    if part is None or load is None:
        what = f'no part "{witness.part}"' if part is None else f'no load "{witness.load}"'
        raise CrestcutError(f"{what} on this vehicle", name, "name it as the vehicle file does")
    frame = surface.height.frame
    assert witness.front_axle is not None
    raised = None if witness.raised is None else np.array(witness.raised)
    front = np.array(resolve(witness.front_axle))
    yaw = float(line.yaw[int(np.argmin(((line.xy - front) ** 2).sum(axis=1)))])
    rear = front - vehicle.wheelbase * np.array([np.cos(yaw), np.sin(yaw)])
    moves = np.random.default_rng([seed, number]).normal(0.0, witness.placed, (PLACINGS, 2))
    uv = frame.to_grid(rear + np.vstack([np.zeros((1, 2)), moves]))
    rest = np.tile([yaw - frame.angle, load.front, load.rear], (len(uv), 1))
    places = np.column_stack([uv, rest])
    batch = stand_on(vehicle, ridden_ground(surface)[0], frame.cell, places, raised)
    if not batch.live[0]:
        raise CrestcutError("the vehicle would stand where the scan has no ground", name, "check front_axle")
    body, plate = FRAMES.index(part.on), plates_of((part,), 0.0).edges[0]
    ground = HeightGrid(frame, contact_ground(surface))
    found = [
        _least(plate, ground, batch.position[k, body], batch.rotation[k, body])
        for k in np.flatnonzero(batch.live)
    ]
    gaps = np.array([f[0] for f in found])
    if not np.isfinite(gaps[0]):
        raise CrestcutError(f"the scan has no ground under the {part.name} there", name, "check front_axle")
    tried = gaps[1:][np.isfinite(gaps[1:])]
    predicted, spread = (
        (float(tried.mean()), float(tried.std()))
        if len(tried) > PLACINGS // 2
        else (float(gaps[0]), witness.placed)
    )
    local = (found[0][1] - batch.position[0, body]) @ batch.rotation[0, body]
    weights = np.append(wheel_weights(vehicle, local[:1], local[1:2], np.array([body]))[0], -1.0)
    points = np.vstack([frame.to_site(wheel_feet(vehicle, places[:1])[0]), frame.to_site(found[0][1][:2])])
    relation, observed = _said(witness)
    held, own = boards_add(vehicle, surface, places[0], weights[:4], raised)
    error = np.nan_to_num(surface.standard_error.sample(points))
    reading = Reading(
        name,
        f"the gap under the {part.name},",
        points,
        weights,
        error,
        predicted + held,
        observed,
        part.name,
        relation,
        places[0],
        float(gaps[0]),
        raised=raised,
    )
    return Evidence((reading,), np.array([[witness.within**2 + spread**2 + own]]))


def boards_add(
    vehicle: Vehicle, surface: Surface, place: FloatArray, weights: FloatArray, raised: FloatArray | None
) -> tuple[float, float]:
    """What boards under the tyres add to a gap besides their thickness, m, and the variance of that and of
    their thickness, m2; weights (4,) : how far the gap follows each tyre.

    Boards of one thickness are cut from one sheet and share its error.
    """
    if raised is None:
        return 0.0, 0.0
    mean, sd = bridging(vehicle, surface, place, raised)
    sheets = [float(weights[raised == t].sum()) for t in np.unique(raised) if t > 0]
    own = THICKNESS**2 * sum(w**2 for w in sheets) + float(((weights * sd) ** 2).sum())
    return float(weights @ mean), own


def _said(witness: Witness) -> tuple[str, float]:
    if witness.gap is not None:
        return "is", witness.gap
    if witness.cleared is not None:
        return "at least", witness.cleared
    return ("at most" if witness.touched else "at least"), 0.0


def _least(
    plate: FloatArray, ground: HeightGrid, position: FloatArray, rotation: FloatArray
) -> tuple[float, FloatArray]:
    """Least gap of one plate at one pose, m (inf over nothing measured), and where, grid u, v, z."""
    heights, i0, j0 = plate_heights(plate, position, rotation, ground.frame)
    cell, patch = ground.frame.cell, ground.values[j0 : j0 + heights.shape[0], i0 : i0 + heights.shape[1]]
    gap = np.where(np.isnan(heights) | (patch < VOID / 2), np.inf, heights - patch)
    j, i = np.unravel_index(int(np.argmin(gap)), gap.shape)
    return float(gap[j, i]), np.array([(i0 + i) * cell, (j0 + j) * cell, patch[j, i]])
