"""The vehicle on boards of known thickness, so that a gap can be felt where it would touch.

A board is straight: over a hollow it leaves the slab, beside a crest it leans on it. How far it holds the
tyre above where the bare slab would is between nothing (it bends down to the slab) and what a stiff board
does, and which is not known: it is drawn evenly between the two.
"""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from crestcut.base.grid import FloatArray
from crestcut.contact.records import Batch
from crestcut.contact.stand.ride import settle_batch, wheel_feet
from crestcut.contact.stand.tyres import VOID
from crestcut.terrain import Surface
from crestcut.vehicle import Vehicle

THICKNESS = 0.0005  # m, 1 sd of a board's thickness, measured where the tyre stands (common practice)
LIES = 0.30  # m to either side of a tyre over which a board may lie stiffly: a longer one bends under it
STEP = 0.01  # m between the places looked at under a board
ABREAST = 3  # lines of them across the tyre


def stand_on(
    vehicle: Vehicle, ground: FloatArray, cell: float, places: FloatArray, raised: FloatArray | None
) -> Batch:
    """The vehicle at ``places`` (n, 5), all near the first, with boards ``raised`` (4,) m under its tyres;
    ``wheels`` are heights on the slab itself.

    A disk over ground that is higher by a constant stands higher by that constant, so under unequal boards
    each tyre's quarter of the ground is raised and the vehicle settles on that as on any other.
    """
    nought = np.zeros(len(places), np.int64)
    if raised is None or np.ptp(raised) == 0:
        batch = settle_batch(vehicle, ground, cell, places, nought)
        up = 0.0 if raised is None else float(raised[0])
        return replace(batch, position=batch.position + np.array([0.0, 0.0, up]))
    cos, sin = np.cos(places[0, 2]), np.sin(places[0, 2])
    v, u = np.indices(ground.shape) * cell
    middle = places[0, :2] + 0.5 * vehicle.wheelbase * np.array([cos, sin])
    du, dv = u - middle[0], v - middle[1]
    behind, right = du * cos + dv * sin < 0, dv * cos - du * sin < 0
    under = np.asarray(raised)[2 * behind + right]
    batch = settle_batch(vehicle, np.ascontiguousarray(ground + under), cell, places, nought)
    return replace(batch, wheels=batch.wheels - raised)


def bridging(
    vehicle: Vehicle, surface: Surface, place: FloatArray, raised: FloatArray
) -> tuple[FloatArray, FloatArray]:
    """Mean and sd, (4,) each, m, of how far a board holds each tyre above its thickness over the slab; zero
    without a board.

    The board is the straight line that rests on the slab on both sides of the loaded tyre; with b what that
    holds the disk up on a draw of the slab and s even between 0 and 1, s b has mean E b / 2 and variance
    E b^2 / 3 - (E b)^2 / 4.
    """
    frame, radius = surface.height.frame, vehicle.tyre_radius
    along = np.arange(-LIES, LIES + STEP / 2, STEP)
    across = np.linspace(-0.5, 0.5, ABREAST) * vehicle.tyre_width
    ahead = np.array([np.cos(place[2]), np.sin(place[2])])
    left = np.array([-ahead[1], ahead[0]])
    mean, sd = np.zeros(4), np.zeros(4)
    for wheel, foot in enumerate(wheel_feet(vehicle, place[None])[0]):
        if not raised[wheel] > 0:
            continue
        places = foot + along[:, None, None] * ahead + across[:, None] * left
        xy = frame.to_site(places.reshape(-1, 2))
        heights = np.nan_to_num(surface.height.sample(xy), nan=VOID)[:, None]
        if surface.error.slab is not None:
            heights = heights + surface.error.slab.at_site(xy)
        held = _held_up(heights.reshape(len(along), ABREAST, -1).max(axis=1), along, radius)
        mean[wheel] = held.mean() / 2
        sd[wheel] = np.sqrt((held**2).mean() / 3 - mean[wheel] ** 2)
    return mean, sd


def _held_up(profile: FloatArray, along: FloatArray, radius: float) -> FloatArray:
    """(d,) how far a stiff board on profiles (n, d) holds a disk that stands over its middle above where the
    profile itself carries it, m."""
    middle = len(along) // 2
    back, ahead = along[: middle + 1, None], along[None, middle:]
    run = np.where(ahead > back, ahead - back, 1.0)
    low, high = profile[: middle + 1, None], profile[None, middle:]
    chord = (low * ahead[..., None] - high * back[..., None]) / run[..., None]
    chord = np.where((ahead > back)[..., None], chord, profile[middle])
    slope = np.where((ahead > back)[..., None], (high - low) / run[..., None], 0.0)
    carried = chord + radius * (np.hypot(1.0, slope) - 1)
    flat = carried.reshape(-1, profile.shape[1])
    best = chord.reshape(flat.shape).argmax(axis=0)
    on_board = np.take_along_axis(flat, best[None], axis=0)[0]
    near = np.abs(along) < radius
    on_slab = (profile[near] + np.sqrt(radius**2 - along[near, None] ** 2)).max(axis=0) - radius
    return np.asarray(np.maximum(on_board - on_slab, 0.0))
