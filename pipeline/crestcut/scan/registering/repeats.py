"""Several scans of one slab as one Scan: each is laid on the first, or the whole is refused."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path

import numpy as np

from crestcut.base.errors import CrestcutError
from crestcut.base.grid import FloatArray
from crestcut.base.units import millimetres
from crestcut.scan.placing.system import FAR, differ
from crestcut.scan.records import Scan
from crestcut.scan.registering.coarse import find_starts
from crestcut.scan.registering.register import CELL, Fit, Reference, accuracy_95, register, turn_about_z
from crestcut.scan.registering.voxels import thin

_ANOTHER_TURN, _ANOTHER_PLACE = (
    np.radians(15.0),
    0.30,
)  # m: fits further apart than this are different answers
_CLEARLY = 0.04  # how much more of the best answer must agree than of any other
_SEARCHED_OVERLAP = 0.5  # of the smaller scan: a lesser overlap found by search may be chance
_STARTS, _STARTS_APART = 6, np.radians(10.0)  # places tried to the end


def join_repeats(scans: Sequence[Scan]) -> Scan:
    """Points of all ``scans`` in the frame of the first; ``source`` tells them apart, ``fit_error`` says how
    well each lies.

    Raises CrestcutError where one does not register, or fits in more than one place.
    """
    first = scans[0]
    reference = Reference(first.points)
    points, files, notes = [first.points], list(first.files), list(first.notes)
    passes, pass_of = list(first.passes), [first.pass_of]
    for scan in scans[1:]:
        refuse_other_system(first, scan)
        # Both in metres: their own origins differ by whole hundreds.
        here = scan.points + (scan.frame.shift - first.frame.shift)
        _refuse_far(first, here, scan.files[0].path)
        fit, searched = lay_on(reference, here, str(scan.files[0].path))
        points.append(fit.apply(here))
        files.append(replace(scan.files[0], fit_error=fit.error))
        pass_of.append(scan.pass_of + len(passes))
        passes += [replace(scan.passes[0], residual=fit.error), *scan.passes[1:]]
        notes += [*scan.notes, _said(fit, searched, here, scan.files[0].path.name, files[0].path.name)]
    counts = [len(p) for p in points]
    colours = [s.colours for s in scans]
    times = [s.time for s in scans]
    return Scan(
        points=np.concatenate(points),
        source=np.repeat(np.arange(len(points), dtype=np.int16), counts),
        frame=first.frame,
        files=tuple(files),
        colours=None
        if any(c is None for c in colours)
        else np.concatenate([c for c in colours if c is not None]),
        time=None if any(t is None for t in times) else np.concatenate([t for t in times if t is not None]),
        notes=tuple(notes),
        passes=tuple(passes),
        pass_of=np.concatenate(pass_of),
        every=min(s.every for s in scans),  # where they differ, fewer are said to be there, never more
    )


def refuse_other_system(first: Scan, scan: Scan) -> None:
    """Raise CrestcutError where two scans name different reference systems."""
    one, other = first.frame.system.plan, scan.frame.system.plan
    if differ(one, other):
        raise CrestcutError(
            f"is in {other}, {first.files[0].path.name} in {one}", str(scan.files[0].path),
            "export both in one reference system",
        )  # fmt: skip


def _refuse_far(first: Scan, here: FloatArray, path: Path) -> None:
    """Raise CrestcutError where a repeat's coordinates are those of another place."""
    apart = np.median(here, axis=0) - np.median(first.points, axis=0)
    if (far := float(np.hypot(*apart[:2]))) > FAR:
        raise CrestcutError(
            f"its coordinates lie {far / 1000:,.0f} km from those of {first.files[0].path.name}: another"
            " place, zone or reference system", str(path), "export both in one reference system",
        )  # fmt: skip


def lay_on(reference: Reference, moving: FloatArray, where: str) -> tuple[Fit, bool]:
    """The fit, and whether the scan had to be searched for since its coordinates do not agree with the
    first's."""
    fit = register(reference, moving)
    if fit.good:
        return fit, False
    fits = fits_anywhere(reference, moving)
    good = [f for f in fits if f.good and f.overlap >= _SEARCHED_OVERLAP]
    if not good:
        best = max([fit, *fits], key=lambda f: f.overlap * f.agree)
        raise CrestcutError(
            f"does not register on the first scan (at best {best.overlap:.0%} of it overlaps and"
            f" {best.agree:.0%} of that agrees)", where,
            "leave it out, or scan the same slab again with the same things standing on it",
        )  # fmt: skip
    rivals = [f for f in fits if f.agree > good[0].agree - _CLEARLY and _differ(f, good[0], moving)]
    if rivals:
        raise CrestcutError(
            "fits on the first scan in more than one place", where,
            "leave it out, or scan both in one session or with a few boxes standing on the slab",
        )  # fmt: skip
    return good[0], True


def fits_anywhere(reference: Reference, moving: FloatArray) -> list[Fit]:
    """Fits from all over, the best agreeing first. What stands on the slab decides, since a slab fits on
    itself anyhow."""
    source = thin(moving, CELL)
    few = source[:: max(1, len(source) // 2500)]
    starts = find_starts(reference.all, source)
    starts.sort(key=lambda s: -reference.seen_by_both(few @ turn_about_z(s.turn).T + s.move)[1])
    fits: list[Fit] = []
    tried: list[float] = []
    for start in starts:
        if len(tried) == _STARTS:
            break
        if any(abs((start.turn - t + np.pi) % (2 * np.pi) - np.pi) < _STARTS_APART for t in tried):
            continue
        tried.append(start.turn)
        turn, move = reference.settle_in_plan(few, start.turn, start.move)
        fit = register(reference, moving, turn, move)
        if fit.overlap >= 0.3:
            fits.append(fit)
    return sorted(fits, key=lambda f: -f.agree)


def _differ(a: Fit, b: Fit, moving: FloatArray) -> bool:
    turn = a.rotation @ b.rotation.T
    angle = float(np.arccos(np.clip((np.trace(turn) - 1.0) / 2.0, -1.0, 1.0)))
    middle = np.median(moving, axis=0, keepdims=True)
    return angle > _ANOTHER_TURN or float(np.linalg.norm(a.apply(middle) - b.apply(middle))) > _ANOTHER_PLACE


def _said(fit: Fit, searched: bool, moving: FloatArray, name: str, first: str) -> str:
    """What was done to a repeat, in one sentence."""
    middle = np.median(moving, axis=0, keepdims=True)
    moved = (fit.apply(middle) - middle)[0]
    plan = float(np.hypot(*moved[:2]))
    text = (
        f"{name}: laid on {first}, fits to {millimetres(fit.error)} rms"
        f" ({millimetres(accuracy_95(fit.error))} at 95 %) over {fit.overlap:.0%} of it (moved"
        f" {millimetres(plan)} in plan, {millimetres(float(moved[2]))} in height)"
    )
    if searched:
        text += "; its place in plan was found by what stands on the slab, to a few centimetres"
    elif fit.held:
        held = " and ".join(fit.held)
        text += f"; its {held} could not be told from the shape of the slab and was kept as scanned"
    return text
