"""A scan laid on control: from then on its own coordinates are east, north and height of the control.

What it means for the rest. A rigid movement changes no gap under a vehicle. Two things of it do, and both are
small: a tilt turns the vertical, by which loads shift between the axles (a degree, 1.7 %, is about a seventh
of what a 12 % grade shifts, 7 mm an axle) and gaps are read; and a scale of the scan, since the vehicle's
lengths are its own (0.1 % of a hump of 100 mm is 0.1 mm; planes that meet at a crest keep their angle). Both
are taken into the points, so the ride sees them; their doubt is not, since it is far below that of the
surface. The movement's own doubt is one of heights *in the control's system* and is stated there.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace

import numpy as np

from crestcut.base.errors import CrestcutError
from crestcut.base.grid import FloatArray
from crestcut.base.units import METRES_PER, millimetres
from crestcut.job import ScanChoice, Surveyed
from crestcut.scan.control.fit import Fitted, fit_points, spread
from crestcut.scan.placing.system import (
    NO_SYSTEM,
    System,
    asked_system,
    differ,
    grid_over_ground,
    unit_name,
)
from crestcut.scan.records import Frame, Scan, Scanned, Tie, TiedPoint

SHIFT_STEP = 100.0  # m: the origin moves by whole hundreds
NEAR, ENOUGH = (0.08, 0.15, 0.25), 12  # m about a point, points there: what its height is taken from
GROSS = 3.0  # median deviations from the plane about a point: things beside it
ACROSS, NARROW = 0.02, 0.02  # m, share of their length: control that lies nearer to one line fixes no tilt
TOLD_TILT, MOST_TILT = math.radians(0.5), math.radians(5.0)  # phones know the vertical to some tenths
OTHER_UNIT = 0.05  # share of size: no scanner errs by so much
WRONG = 0.020  # m: a control point that is off by more is not taken along
SAID_SCALE = 0.002  # m over the control: what the scan's size is off by is said
OUTSIDE = 0.15  # m in plan from the nearest point of the scan


def tied(scan: Scan, choice: ScanChoice) -> Scan:
    """The scan in the control's coordinates.

    Raises CrestcutError for control in another reference system than the scan, in degrees, on one line, not
    seen in the scan, of another size or another vertical, or with a point that does not belong.
    """
    control, name = choice.control, scan.files[0].path.name
    system, unit, factors = _reference(scan, choice)
    own = np.array([c.at for c in control])
    # a scan's metre is the ground's, a grid's is not; one that came in the grid's coordinates is in its metre
    ratio = None
    if not scan.frame.system.plan:
        east, north, up = own.mean(axis=0)
        ratio = grid_over_ground(system, float(east), float(north), float(up * factors[2]))
    frame = Frame(
        np.array(factors), np.eye(3), np.zeros(3), unit, "z", system, 1.0 if ratio is None else ratio
    )
    at = frame.own_to_site(own)
    shift = np.trunc(np.median(at, axis=0) / SHIFT_STEP) * SHIFT_STEP + 0.0
    at -= shift
    seen = np.array([_seen(scan, c) for c in control])
    for places, whose in ((seen, "as seen in the scan"), (at, "as surveyed")):
        long, across = spread(places)
        if across < max(ACROSS, NARROW * long):
            raise CrestcutError(
                f"the control lies on one line {whose} ({across * 1000:.0f} mm beside it over"
                f" {long * 2:.1f} m): the scan could turn about it", "[[control]]",
                "survey a point well to one side of the others",
            )  # fmt: skip
    sd = _sds(control)
    sized = fit_points(seen, at, sd, True)
    _refuse_other_size(sized)
    fitted = sized if choice.free_scale else fit_points(seen, at, sd, False)
    _refuse_other_vertical(fitted)
    points = tuple(
        TiedPoint(c.name, c.at, _triple(v), _triple(r), c.seen is None or len(c.seen) == 2)
        for c, v, r in zip(control, fitted.residuals, fitted.redundancy, strict=True)
    )
    size = sized.movement.scale, sized.movement.scale * float(np.sqrt(sized.covariance[6, 6]))
    found = Tie(points, fitted, choice.free_scale, size, sd is not None)
    _refuse_wrong(found)
    level = float(np.median(scan.points[:, 2]))
    movement = fitted.movement
    frame = replace(frame, shift=shift, scanned=Scanned(scan.frame, movement, level))
    turned = [
        replace(p, off=None if p.off is None else _triple(movement.rotation @ np.array(p.off)))
        for p in scan.passes
    ]
    # distances that agree with a survey's are in the unit that was guessed, and up is up
    files = [
        replace(f, unit_guessed=False, unit_alternatives=(), up_guessed=False, up_shown="control")
        for f in scan.files
    ]
    return replace(
        scan, points=movement.apply(scan.points), frame=frame, files=tuple(files), passes=tuple(turned),
        notes=(*scan.notes, *_said(found, frame, name)), tie=found,
    )  # fmt: skip


def _reference(scan: Scan, choice: ScanChoice) -> tuple[System, str, tuple[float, float, float]]:
    """System, unit as printed, and metres per unit along east, north and up, of the control."""
    own, unit = scan.frame.system, choice.control_unit
    if choice.crs is None:
        if own.plan:  # the file's own
            x, y, z = (float(v) for v in scan.frame.turned_scale)
            return own, scan.frame.unit, (x, y, z)
        metres = METRES_PER[unit or "m"]
        return NO_SYSTEM, unit or "m", (metres, metres, metres)
    system, factors = asked_system(choice.crs)
    if differ(own.plan, system.plan) or differ(own.heights, system.heights):
        raise CrestcutError(
            f"the scan is in {own.words}, [scan] crs says {system.words}", "[[control]]",
            "name the system that scan and control are in, or export the scan in its own coordinates",
        )  # fmt: skip
    if unit is not None and not math.isclose(METRES_PER[unit], factors[0], rel_tol=1e-9):
        raise CrestcutError(
            f"[scan] control_unit is {unit}, {system.plan} counts in {unit_name(factors[0])}", "[[control]]",
            "take control_unit out, or name the system that the control is in",
        )  # fmt: skip
    return system, unit_name(factors[0]), factors


def _sds(control: Sequence[Surveyed]) -> FloatArray | None:
    """(n, 3) m, or None where nobody said."""
    if any(c.within is None for c in control):
        return None
    plan = np.array([c.within for c in control], dtype=float)
    up = np.array([c.within_height or c.within for c in control], dtype=float)
    return np.column_stack([plan, plan, up])


def _seen(scan: Scan, control: Surveyed) -> FloatArray:
    """(3,) site m as scanned."""
    seen = control.seen
    assert seen is not None
    where = f"[[control]] {control.name}"
    if len(seen) == 3:
        return scan.frame.own_to_site(seen)
    xy = scan.frame.plan_to_site(seen)
    height = height_about(scan.points, xy)
    if height is None:
        raise CrestcutError(
            "the scan shows no ground where it was seen", where, "give its height too: seen = [x, y, z]"
        )
    return np.array([*xy, height])


def height_about(points: FloatArray, xy: FloatArray) -> float | None:
    """Height m of the plane through the points (n, 3) about a place, things beside it left out; None where
    there are too few."""
    for radius in NEAR:
        about = points[np.hypot(*(points[:, :2] - xy).T) < radius]
        if len(about) >= ENOUGH:
            break
    else:
        return None
    design = np.column_stack([about[:, :2] - xy, np.ones(len(about))])
    plane = np.array([0.0, 0.0, np.median(about[:, 2])])  # level: over so little a slope hides nothing
    for _ in range(5):
        off = np.abs(about[:, 2] - design @ plane)
        keep = off <= GROSS * 1.4826 * max(float(np.median(off)), 1e-6)
        plane = np.linalg.lstsq(design[keep], about[keep, 2], rcond=None)[0]
    return float(plane[2])


def refuse_outside(scan: Scan, checks: Sequence[Surveyed]) -> None:
    """Raise CrestcutError for a check point that the scan does not reach."""
    for check in checks:
        xy = scan.frame.plan_to_site(check.at[:2])
        near = float(np.hypot(*(scan.points[:, :2] - xy).T).min())
        if near > OUTSIDE:
            raise CrestcutError(
                f"it lies {near:.2f} m outside the slab that was scanned", f"[[check]] {check.name}",
                "take it out, or check its east and north and the reference system",
            )  # fmt: skip


def _refuse_other_size(sized: Fitted) -> None:
    scale = sized.movement.scale
    if abs(scale - 1.0) <= OTHER_UNIT:
        return
    near = [
        f"{a} and {b}" for a in ("m", "ft", "mm", "cm", "in") for b in ("m", "ft", "mm", "cm", "in")
        if a != b and abs(METRES_PER[a] / METRES_PER[b] / scale - 1.0) < OTHER_UNIT
    ]  # fmt: skip
    likely = f", as {near[0]} are" if near else ""
    raise CrestcutError(
        f"its distances are {scale:.4g} times those in the scan{likely}: another unit, or points mixed up",
        "[[control]]", "write [scan] unit or control_unit, or check which point is which",
    )  # fmt: skip


def _refuse_other_vertical(fitted: Fitted) -> None:
    tilt = fitted.movement.tilt
    if tilt > math.pi / 2:
        raise CrestcutError(
            "it fits the scan upside down alone", "[[control]]",
            "write at = [east, north, height], east first, and seen = [x, y] as in the scan",
        )  # fmt: skip
    if tilt > MOST_TILT:
        raise CrestcutError(
            f"it tilts the scan by {math.degrees(tilt):.1f} degrees, and a scanner knows the vertical better",
            "[[control]]", "check the heights, and which point is which; or write [scan] up",
        )  # fmt: skip


def _refuse_wrong(found: Tie) -> None:
    """Raise CrestcutError for the point that does not belong."""
    suspect = found.fitted.suspect
    if not suspect.named or suspect.size < WRONG:
        return
    point, others = found.suspect, len(found.points) - 1
    east, north, up = (millimetres(v, 0) for v in suspect.off)
    raise CrestcutError(
        f"it lies {millimetres(suspect.size, 0)} from where the other {others} put it (east {east}, north"
        f" {north}, up {up}; its residual is {millimetres(point.off, 0)})", f"[[control]] {point.name}",
        "measure it again, or take it out",
    )  # fmt: skip


def _said(found: Tie, frame: Frame, name: str) -> list[str]:
    """Notes for the user."""
    fitted, worst = found.fitted, found.worst
    middle = fitted.movement.at_middle[None]
    notes = [
        f"{name}: tied to {len(found.points)} control points, residuals {millimetres(found.rms)} rms, the"
        f" largest {millimetres(worst.off)} at {worst.name} (redundancy {fitted.freedom}); by the tie alone"
        f" heights are good to {millimetres(float(found.height_sd(middle)[0]))} (1 sd) amid the control"
    ]
    suspect = fitted.suspect
    if suspect.named:
        notes.append(
            f"control {found.suspect.name} looks off by {millimetres(suspect.size)}: measure it again"
        )
    elif suspect.size > WRONG:
        notes.append(
            f"control {found.suspect.name} fits worst, {millimetres(suspect.size)} from where the others put"
            " it, but with so few nothing tells which is wrong: survey one more"
        )
    if found.stated and not fitted.known:
        notes.append(
            f"the control fits {fitted.factor:.1f} times worse than its stated sds: its residuals count"
        )
    if fitted.movement.tilt > TOLD_TILT:
        notes.append(
            f"the control tilts the scan by {math.degrees(fitted.movement.tilt):.1f} degrees: heights and"
            " falls are the control's; if its heights are not to be trusted, nor are falls and water"
        )
    notes += _size_said(found, frame)
    if abs(frame.grid - 1.0) > 1e-6:
        parts = (frame.grid - 1.0) * 1e6
        notes.append(
            f"on the grid of {frame.system.plan} lengths are {parts:+.0f} mm a km of those on the ground"
        )
    if not frame.system.plan:
        notes.append("no reference system is named ([scan] crs): coordinates are the control's")
    elif not frame.system.heights:
        notes.append("the vertical datum is not stated: heights are the control's")
    return notes


def _size_said(found: Tie, frame: Frame) -> list[str]:
    from scipy import stats

    scale, sd = found.scale
    long = spread(frame.own_to_site([p.at for p in found.points]))[0]
    parts = (scale - 1.0) * 100
    if found.free:
        return [f"the control makes the scan {1 + parts / 100:.5f} times its size (sd {sd * 100:.3f} %)"]
    free = max(found.fitted.freedom - 1, 1)
    sure = abs(scale - 1.0) > float(stats.t.ppf(0.975, free)) * sd
    if not sure or abs(scale - 1.0) * 2 * long < SAID_SCALE:
        return []
    more = "small" if parts > 0 else "large"
    return [
        f"by the control the scan is {abs(parts):.2f} % (sd {sd * 100:.2f}) too {more}; kept as scanned,"
        ' unless scale = "from control" stands under [scan]'
    ]


def _triple(values: FloatArray) -> tuple[float, float, float]:
    x, y, z = (float(v) for v in values)
    return x, y, z
