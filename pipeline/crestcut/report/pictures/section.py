"""The upright plane through a contact, along the vehicle: ground, cut, underside, wheels. No drawing here."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from crestcut.base.grid import FloatArray
from crestcut.contact import Contact
from crestcut.study import Report
from crestcut.vehicle import Part

CARRIERS = {"body": 0, "front axle": 1, "rear axle": 2}


@dataclass(frozen=True)
class Wheel:
    """A tyre seen from the side: hub s and z, loaded radius, metres. near : on the side of the section."""

    s: float
    z: float
    radius: float
    near: bool


@dataclass(frozen=True)
class Plate:
    """An underside part seen from the side: s and z of its rear and front edge, m; cut : by the section."""

    name: str
    s: tuple[float, float]
    z: tuple[float, float]
    cut: bool


@dataclass(frozen=True, eq=False)
class Section:
    """s : (n,) metres along the line of travel from its start.  Heights (n,) are site metres, NaN not
    measured or never reached.

    ground, finished : the slab as it is and after the cut.  track : the ground in the nearer wheel track.
    reach : the clearance line, the lowest height any underside part reaches over each point at any station of
    any way of driving.  at : s of the contact. z_ground, z_low : ground and underside at the contact.  ahead
    : +1 if the vehicle drives towards greater s, else -1.
    """

    s: FloatArray
    ground: FloatArray
    finished: FloatArray
    track: FloatArray
    reach: FloatArray
    wheels: tuple[Wheel, ...]
    plates: tuple[Plate, ...]
    body: FloatArray
    at: float
    z_ground: float
    z_low: float
    ahead: int

    def span(self) -> tuple[float, float]:
        """s of the vehicle's rearmost and foremost drawn points, in rising order."""
        ends = [v for p in self.plates for v in p.s] + [
            w.s + e * w.radius for w in self.wheels for e in (-1, 1)
        ]
        ends += list(self.body[:, 0])
        return min(ends), max(ends)


def section_at(report: Report, contact: Contact, margin: float = 1.5) -> Section:
    """The section through ``contact`` at its station, ``margin`` m beyond the vehicle or more."""
    frame = report.surface.height.frame
    poses, k = report.poses_of(contact)
    forward = frame.angle + float(np.arctan2(poses.rotation[k][1, 0], poses.rotation[k][0, 0]))
    at, tangent = _along_line(report, contact.xy)
    ahead = 1 if np.cos(forward - tangent) >= 0 else -1
    way = ahead * np.array([np.cos(forward), np.sin(forward)])
    view = _View(report, contact, way, at)
    y = report.on_vehicle(contact)[1]
    plates = tuple(_plate(view, report, part, y, contact.part) for part in report.vehicle.parts)
    wheels = _wheels(view, report, y)
    body = _body(view, report)
    ends = [v for p in plates for v in p.s] + [w.s for w in wheels] + list(body[:, 0])
    s = np.arange(min(*ends, at) - margin, max(*ends, at) + margin, frame.cell / 2)
    if report.line.length <= 1.8 * np.ptp(ends) + 2 * margin:
        s = np.arange(min(s[0], 0.0), max(s[-1], report.line.length), frame.cell / 2)
    xy = np.asarray(contact.xy) + (s - at)[:, None] * way
    ground = report.surface.height.sample(xy)
    finished = report.plan.finished.sample(xy) if report.plan is not None else ground
    reach = [np.full(len(s), np.nan), *(grid.sample(xy) for grid in report.before.lowest.values())]
    side = np.array([-np.sin(forward), np.cos(forward)])
    over = (np.copysign(report.vehicle.front_track / 2, y) - y) * side
    # The kernel's contact counts the highest ground in the cell, a little above what is drawn between nodes.
    z_ground = float(report.surface.top.sample(contact.xy))
    return Section(
        s, ground, finished, report.surface.height.sample(xy + over), np.fmin.reduce(reach), wheels, plates,
        body, at, z_ground, z_ground + contact.gap, ahead,
    )  # fmt: skip


def _along_line(report: Report, xy: tuple[float, float]) -> tuple[float, float]:
    """How far along the line the nearest point to ``xy`` lies, m, and the line's direction there, rad."""
    line = report.line
    k = int(np.argmin(np.linalg.norm(line.xy - np.asarray(xy), axis=1)))
    tangent = float(line.yaw[k])
    rest = (np.asarray(xy) - line.xy[k]) @ np.array([np.cos(tangent), np.sin(tangent)])
    return k * line.step + float(rest), tangent


class _View:
    """Chassis points -> (s, z) of the section."""

    def __init__(self, report: Report, contact: Contact, way: FloatArray, at: float) -> None:
        index, k = contact.pose
        row = sum(len(p.station) for p in report.ride.poses[:index]) + k
        batch = report.ride.batch
        self._position, self._rotation = batch.position[row], batch.rotation[row]
        self._frame, self._origin, self._way, self._at = (
            report.surface.height.frame,
            np.asarray(contact.xy),
            way,
            at,
        )

    def __call__(self, chassis: tuple[float, float, float], on: str = "body") -> tuple[float, float]:
        carrier = CARRIERS.get(on, 0)
        p = self._rotation[carrier] @ np.asarray(chassis) + self._position[carrier]
        return self._at + float((self._frame.to_site(p[:2]) - self._origin) @ self._way), float(p[2])


def _plate(view: _View, report: Report, part: Part, y: float, hit: str) -> Plate:
    inside = part.y[0] - 1e-6 <= y <= part.y[1] + 1e-6
    across = float(np.clip(y, *part.y))
    ends = [view((x, across, z), part.on) for x, z in zip(part.x, part.z, strict=True)]
    return Plate(part.name, (ends[0][0], ends[1][0]), (ends[0][1], ends[1][1]), inside or part.name == hit)


def _wheels(view: _View, report: Report, y: float) -> tuple[Wheel, ...]:
    car = report.vehicle
    wheels = []
    for x, track, on in ((car.wheelbase, car.front_track, "front axle"), (0.0, car.rear_track, "rear axle")):
        for side in (-1.0, 1.0):
            s, z = view((x, side * track / 2, car.tyre_radius), on)
            wheels.append(Wheel(s, z, car.tyre_radius, bool(side * y >= 0) if y else side > 0))
    return tuple(wheels)


def _body(view: _View, report: Report) -> FloatArray:
    """A plain outline above the underside, (n, 2) s and z: it shows which way it faces, not its looks."""
    car = report.vehicle
    back = (
        min([-car.tyre_radius, *(p.x[0] for p in car.parts)])
        if car.rear_overhang is None
        else -car.rear_overhang
    )
    nose = [car.wheelbase + car.tyre_radius, *(p.x[1] for p in car.parts)]
    front = max(nose) if car.front_overhang is None else car.wheelbase + car.front_overhang
    ends = {p.zone: p for p in car.parts}
    low = car.belly_clearance
    rear_low = ends["tail"].z[0] if "tail" in ends else low
    front_low = ends["nose"].z[1] if "nose" in ends else low
    top = max(2.0 * car.tyre_radius, low + 0.12)
    rim = [
        (back, rear_low),
        (back, 0.8 * top),
        (back + 0.06, top),
        (front - 0.10, top),
        (front, 0.75 * top),
        (front, front_low),
    ]
    if "nose" in ends:
        rim.append((max(ends["nose"].x[0], car.wheelbase), ends["nose"].z[0]))
    rim += [(car.wheelbase, low), (0.0, low)]
    if "tail" in ends:
        rim.append((min(ends["tail"].x[1], 0.0), ends["tail"].z[1]))
    return np.array([view((x, 0.0, z)) for x, z in rim])
