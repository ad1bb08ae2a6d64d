"""One wheel climbing first: where a break lies askew to the way, an axle's two wheels meet it one after
the other."""

from __future__ import annotations

import math
from collections.abc import Sequence

import numpy as np

from crestcut.base.grid import FloatArray
from crestcut.base.units import millimetres
from crestcut.contact.records import Poses
from crestcut.vehicle import Vehicle

ABREAST = 0.10  # m along the way: both wheels meet a break as good as together
BREAK = 0.04  # change of grade within ``REACH`` to either side that counts as a break
REACH = 0.40  # m
MATTERS = 0.008  # m of an axle's one side over the other, beyond the other axle's: below, nothing is said


def climb_notes(vehicle: Vehicle, poses: Sequence[Poses]) -> tuple[str, ...]:
    """Which front wheel meets the strongest break of the line first, and how the body leans over it; nothing
    where both meet it together or it hardly matters. Read off the line itself: no offset, no heading, first
    way and load.
    """
    on_line = [p for p in poses if p.variant.offset == 0 and p.variant.heading == 0 and p.live.all()]
    if not on_line:
        return ()
    pose = on_line[0]
    met_left, met_right = (_strongest_break(pose.station, pose.wheels[:, wheel]) for wheel in (0, 1))
    twist = (pose.wheels[:, 0] - pose.wheels[:, 1]) - (pose.wheels[:, 2] - pose.wheels[:, 3])
    worst = int(np.argmax(np.abs(twist)))
    if met_left is None or met_right is None or abs(twist[worst]) < MATTERS:
        return ()
    (left, grade), (right, other) = met_left, met_right
    apart = abs(left - right)
    if apart < ABREAST or apart > vehicle.front_track * 3 or np.sign(grade) != np.sign(other):
        return ()
    first = "left" if (left < right) == (pose.station[-1] > pose.station[0]) else "right"
    lean = math.degrees(math.asin(min(float(np.abs(pose.rotation[:, 2, 1]).max()), 1.0)))
    turned = "" if pose.variant.way == "forward" else " (driven turned)"
    return (
        f"The break at {0.5 * (left + right):.1f} m along the line lies askew: the {first} front wheel meets "
        f"it {apart:.2f} m before the other{turned}. The axles are twisted against each other by up to "
        f"{millimetres(abs(float(twist[worst])), 0)} from side to side, with the front axle at "
        f"{pose.station[worst]:.2f} m, and the body leans by up to {lean:.1f} degrees on the way",
    )


def _strongest_break(station: FloatArray, height: FloatArray) -> tuple[float, float] | None:
    """Station (m) where a wheel's path changes its grade most within REACH to either side, and by how
    much; None where nowhere."""
    step = abs(float(station[-1] - station[0])) / max(len(station) - 1, 1)
    n = max(round(REACH / step), 1) if step > 0 else 0
    if n == 0 or len(height) < 2 * n + 1:
        return None
    change = (height[2 * n :] - 2 * height[n:-n] + height[: -2 * n]) / (n * step)
    k = int(np.argmax(np.abs(change)))
    return (float(station[n + k]), float(change[k])) if abs(change[k]) >= BREAK else None
