"""Files -> Scan: read, put in metres with z up near a local origin, and, where several, registered on the
first."""

from __future__ import annotations

import hashlib
import importlib
import sys
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import numpy as np
from numpy.typing import NDArray

from crestcut.base.errors import CrestcutError, Say
from crestcut.base.grid import FloatArray
from crestcut.job import ScanChoice
from crestcut.scan.formats.child import read_caged
from crestcut.scan.formats.mesh import bridges, bridging, edge_lengths
from crestcut.scan.formats.raw import RawScan, UnitFound
from crestcut.scan.formats.sniff import sniff
from crestcut.scan.formats.take import ALL, MOST, Cut, Patch, Take
from crestcut.scan.placing.rounding import FINEST, decimals_of, quantum_of, rounded
from crestcut.scan.placing.system import NO_SYSTEM, asked_system, differ, unit_name
from crestcut.scan.placing.unit import Size, alternatives, settle_unit, size_of
from crestcut.scan.placing.up import (
    ROTATION,
    Standing,
    guess_up,
    hangs_below,
    looking_up,
    standing_of,
    stands_above,
)
from crestcut.scan.records import Bridge, Frame, Scan, ScanFile, ScanPass
from crestcut.scan.registering.stations import disagreement, station_passes
from crestcut.scan.sample import sample_faces
from crestcut.scan.used import AS_SAID, Classes, counted, finite, of_classes

SHIFT_STEP = 100.0  # m: the origin moves by whole hundreds, so a scan in local numbers keeps them
HELD = Take(MOST)  # of a file, where what is needed of it can be told
FEW = 100_000  # points: what is kept of the whole of a scan where a part of it is held
Needs = Callable[[Frame], tuple[Patch, ...]]


def anywhere(frame: Frame) -> tuple[Patch, ...]:
    """As ``needs``: a few points of the whole of a scan."""
    return ()


_READERS = {
    "las": "las:read_las", "ply": "ply:read_ply", "pcd": "pcd:read_pcd", "text": "text:read_text",
    "e57": "e57:read_e57", "glb": "gltf:read_gltf", "gltf": "gltf:read_gltf", "obj": "mesh:read_obj",
    "stl": "mesh:read_stl", "usd": "usd:read_usd",
}  # fmt: skip
_IN_BLOCKS = frozenset({"las", "e57", "ply", "pcd", "text"})  # read some points at a time
_COMPILED = {"las": "LAS or LAZ", "e57": "E57", "usd": "USDZ"}  # libraries that may die of a file
FACING = 0.5  # of a mesh's area more seen from one side than from the other
_THINNEST = 1e-3  # second side over the first: below it all points are on a line


def read_scan(
    choice: ScanChoice | Path | str, progress: Say | None = None, needs: Needs | None = None
) -> Scan:
    """All files of ``choice``, or one file, as one Scan in site metres, z up; the first file's frame is the
    scan's frame.

    ``progress`` is called with a plain sentence before each slow step. needs : what of the plan is needed,
    once the frame is known: of a file too large to be held (``MOST``) the points there alone are held, of the
    whole of it a few where nothing is named; None: all points, however many.
    Raises CrestcutError with one line for a file that is missing, empty, cut short, foreign, without enough
    points, on a line, or of a size that is no slab; and for repeats that do not register.
    """
    if not isinstance(choice, ScanChoice):
        choice = ScanChoice((Path(choice),))
    say = progress or (lambda _: None)
    if not choice.files:
        raise CrestcutError("no scan file given", "", "name one or more")
    scans = []
    asked = ALL if needs is None else HELD
    classes = Classes(choice.use_classes, choice.leave_classes)
    # with control a job's system is the control's, and the scan's once it is laid on it
    crs = None if choice.control else choice.crs
    for path in choice.files:
        say(f"reading {path.name}")
        scans.append(read_file(path, choice.unit, choice.up, crs, classes, asked))
    scan = scans[0]
    if len(scans) > 1:
        from crestcut.scan.registering.repeats import join_repeats

        say(f"registering {len(scans)} repeats")
        scan = join_repeats([_some_said(s) for s in scans])
    if choice.control or choice.checks:
        from crestcut.scan.control.tie import refuse_outside, tied

        scan = tied(scan, choice) if choice.control else scan
        scan = _part(scan, classes, needs, say)
        refuse_outside(scan, choice.checks)
        return scan
    return _part(scan, classes, needs, say)


def _part(scan: Scan, classes: Classes, needs: Needs | None, say: Say) -> Scan:
    """The scan, of which a part of the points is held, with the points that are needed instead: all of them,
    or as many as can be. Of repeats those that are held stay, since they are laid on one another."""
    if scan.every == 1 or needs is None or len(scan.files) > 1:
        return scan
    patches = needs(scan.frame)
    if not patches:
        return _some_said(scan)
    path, whole = scan.files[0].path, scan.points[:: -(-len(scan.points) // FEW)].copy()
    scan = replace(scan, points=whole, source=scan.source[: len(whole)], pass_of=np.empty(0, np.int16),
                   colours=None, time=None)  # fmt: skip
    came = scan.frame if scan.frame.scanned is None else scan.frame.scanned.frame
    turn, move = came.rotation * came.scale, -came.shift
    movement = None if scan.frame.scanned is None else scan.frame.scanned.movement
    if movement is not None:
        by = movement.scale * movement.rotation
        turn, move = by @ turn, by @ (move - movement.middle) + movement.at_middle
    say(f"reading what is needed of {path.name}")
    plan = np.column_stack([turn, move])[:2]
    told = classes if scan.classed else Classes((), ())
    raw = _read(path, replace(HELD, cut=Cut(patches, plan, told.use, told.leave), seen=scan.tally))
    points = (raw.points * came.scale) @ came.rotation.T - came.shift
    points = points if movement is None else movement.apply(points)
    every = 1 if raw.tally is None else raw.tally.every
    held = "all there" if every == 1 else f"one in {every} there"
    said = f"{path.name}: {scan.files[0].points:,} points, {len(points):,} held where they are needed, {held}"
    source = np.zeros(len(points), np.int16)
    return replace(
        scan, points=points, source=source, pass_of=source if raw.station is None else raw.station,
        colours=raw.colours, time=raw.time, every=every, whole=whole, tally=None, notes=(*scan.notes, said),
    )  # fmt: skip


def _some_said(scan: Scan) -> Scan:
    """One file's scan, with a note where but some of its points are held."""
    if scan.every == 1:
        return scan
    (file,) = scan.files
    said = f"{file.path.name}: {file.points:,} points, one in {scan.every} of them held"
    return replace(scan, notes=(*scan.notes, said))


def read_file(
    path: Path, unit: str | None = None, up: str | None = None, crs: str | None = None,
    classes: Classes = AS_SAID, asked: Take = ALL,
) -> Scan:  # fmt: skip
    """One file as a Scan of its own.

    crs : the reference system that it is in, as a job names it; None: the file's own, if it says one.
    asked : how many points of it are held.
    """
    where = str(path)
    if up is not None and up not in ROTATION:
        raise CrestcutError(f'up axis "{up}" is not known', where, "use x, y, z, -x, -y or -z")
    raw = _read(path, asked)
    every = 1 if raw.tally is None else raw.tally.every
    counts = None if raw.tally is None or every == 1 else counted(raw, raw.tally, classes)
    raw, bad = finite(of_classes(raw, classes, where), where)
    raw = raw if crs is None else _in_system(raw, crs, where)
    size = size_of(raw.points, every)
    _refuse_thin(raw.points, size, where)
    standing = standing_of(raw.points)
    found, notes = settle_unit(size, unit, raw.unit, where)
    axis, up_reason, up_notes = _settle_up(raw, standing, up, where)
    guessed = unit is None and raw.unit is None
    notes = (*raw.notes, *notes, *up_notes)
    scale, turn = np.asarray(found.scale), ROTATION[axis]
    turned = (raw.points * scale) @ turn.T
    shift = np.trunc(np.median(turned, axis=0) / SHIFT_STEP) * SHIFT_STEP + 0.0
    points = turned - shift
    facing = 0.0 if raw.faces is None else looking_up(points, raw.faces)
    # in another unit than the file's own, its coordinates are none of the system's
    kept = raw.unit is None or np.allclose(scale, raw.unit.scale, rtol=1e-9)
    if not kept and raw.system.plan:
        notes = (*notes, f"{path.name}: in {found.name} its coordinates are none of {raw.system.plan}")
    frame = Frame(scale, turn, shift, found.name, axis, raw.system if kept else NO_SYSTEM)
    points, colours, edge, holes = _strewn(points, raw, where)
    notes = (*notes, *_bridge_note(holes, frame, path.name))
    quantum = _quantum(raw, turned, max(found.scale))
    if quantum > FINEST:
        notes = (*notes, f"{path.name}: {rounded(quantum)}")
    count, bad = counts or (len(points), bad)
    record = ScanFile(
        path, raw.format, scan_digest(path), count, raw.dropped + bad, edge, found.reason, up_reason,
        unit_guessed=guessed,
        unit_alternatives=alternatives(size, found) if guessed else (),
        up_guessed=up is None and raw.up is None,
        up_shown=_up_shown(raw, standing, axis, facing),
        faces_down=facing < -FACING,
        quantum=quantum,
        bridges=holes,
        size=path.stat().st_size,
        origin=raw.origin,
    )  # fmt: skip
    passes = _passes(points, raw, path.name)
    notes = (*notes, *filter(None, [disagreement(passes)]))
    source = np.zeros(len(points), np.int16)
    return Scan(
        points=points,
        source=source,
        passes=passes,
        pass_of=source if raw.station is None else raw.station,
        frame=frame,
        files=(record,),
        colours=colours,
        time=raw.time if raw.faces is None else None,
        notes=notes,
        every=every,
        classed=raw.classes is not None,
        tally=None if every == 1 else raw.tally,
    )


def _strewn(
    points: FloatArray, raw: RawScan, where: str
) -> tuple[FloatArray, NDArray[np.uint8] | None, float | None, tuple[Bridge, ...]]:
    """Points over the faces of a mesh and their colours, the median length of its edges and the holes that
    it bridges; of a cloud its own points. points (n, 3) site metres, of ``raw``."""
    if raw.faces is None:
        return points, raw.colours, None, ()
    edge = float(np.median(edge_lengths(points, raw.faces)))
    over = bridging(points, raw.faces)
    holes = bridges(points, raw.faces[over])
    points, colours = sample_faces(points, raw.faces[~over], raw.colours)
    if len(points) == 0:
        raise CrestcutError("its faces have no area", where, "export the scan again")
    return points, colours, edge, holes


def _passes(points: FloatArray, raw: RawScan, name: str) -> tuple[ScanPass, ...]:
    """The stations of a file that holds several, with as many points as they have in it, held or not."""
    if raw.station is None:
        return ()
    passes = station_passes(points, raw.station, name)
    if raw.tally is None or raw.tally.every == 1:
        return passes
    each = raw.tally.by_station.tolist()
    return tuple(replace(p, points=n) for p, n in zip(passes, each, strict=False))


def _in_system(raw: RawScan, crs: str, where: str) -> RawScan:
    """The scan in the reference system that a job names, whose unit is the file's where the file says none.
    Raises CrestcutError where the file says another."""
    system, factors = asked_system(crs)
    for said, asked, what in (
        (raw.system.plan, system.plan, "plan"), (raw.system.heights, system.heights, "heights")
    ):  # fmt: skip
        if differ(said, asked):
            raise CrestcutError(
                f"the file is in {said}, [scan] crs says {asked} ({what})", where,
                "take [scan] crs out, or export the scan in that system",
            )  # fmt: skip
    unit = raw.unit
    if unit is not None and not np.allclose(unit.scale, factors, rtol=1e-9):
        raise CrestcutError(
            f"the file is in {unit.name}, [scan] crs counts in {unit_name(factors[0])}", where,
            "export the scan in that system's unit, or name the system it is in",
        )  # fmt: skip
    if unit is None:
        unit = UnitFound(unit_name(factors[0]), factors, f"of {system.plan}, named in the job")
    whole = raw.system if raw.system.heights and not system.heights else system
    return replace(raw, unit=unit, system=whole)


def _bridge_note(holes: tuple[Bridge, ...], frame: Frame, name: str) -> tuple[str, ...]:
    """Words on the holes that triangles bridge: how much, and where the largest lies."""
    if not holes:
        return ()
    first, faces = holes[0], sum(h.faces for h in holes)
    x, y = frame.site_to_plan((first.x, first.y))
    return (
        f"{name}: {sum(h.area for h in holes):.2f} m2 are bridged by {faces:,} "
        f"{'triangle' if faces == 1 else 'triangles'} far larger than the rest of the mesh and count as not "
        f"measured; the largest place is {first.size[0]:.2f} x {first.size[1]:.2f} m about x {x:.2f}, "
        f"y {y:.2f}: scan it",
    )


def read_triangles(path: Path, frame: Frame) -> tuple[FloatArray, NDArray[np.int64]] | None:
    """Corners (n, 3) in site metres and triangles (m, 3) of a mesh file that ``read_file`` gave ``frame``
    for; None for a cloud.
    """
    raw, _ = finite(_read(path), str(path))
    return None if raw.faces is None else (frame.to_site(raw.points), raw.faces)


def _read(path: Path, asked: Take = ALL) -> RawScan:
    """The file as its reader has it; readers are imported late, since most pull in a large library."""
    kind = sniff(path)
    module, name = _READERS[kind].split(":")
    some = asked if kind in _IN_BLOCKS else None
    if (compiled := compiled_of(kind, path)) and sys.executable:
        return read_caged(f"crestcut.scan.formats.{module}:{name}", path, compiled, some)
    reader: Callable[..., RawScan] = getattr(importlib.import_module(f"crestcut.scan.formats.{module}"), name)
    return reader(path) if some is None else reader(path, some)


def compiled_of(kind: str, path: Path) -> str | None:
    """What a file that a compiled library reads is called in messages; None where none does."""
    if kind in ("glb", "gltf"):
        return "glTF" if b"KHR_draco" in path.read_bytes() else None
    return _COMPILED.get(kind)


def _quantum(raw: RawScan, turned: FloatArray, scale: float) -> float:
    """What the coordinates are rounded to, m; turned (n, 3): z up, m.  scale : m per file unit."""
    told = quantum_of(raw.points) if raw.quantum is None else raw.quantum
    # the lattice of a mesh or grid lies in plan; heights of few decimals are rounding
    heights = 0.0 if raw.faces is not None else decimals_of(turned[:, 2] / scale)
    return scale * max(told, heights)


def _refuse_thin(points: FloatArray, size: Size, where: str) -> None:
    """Points that all sit in one place or on one line carry no surface."""
    if not size.across > 0.0:
        raise CrestcutError("all points are in one place", where, "export the scan again")
    thin = points[:: max(1, len(points) // 100_000)]
    spread = np.linalg.svd(thin - thin.mean(axis=0), compute_uv=False)
    if spread[1] < _THINNEST * spread[0]:
        raise CrestcutError(
            "all points are on one line", where, "a surface needs points beside it; scan lanes across"
        )


def _settle_up(
    raw: RawScan, standing: Standing, declared: str | None, where: str
) -> tuple[str, str, tuple[str, ...]]:
    """(axis, reason, notes on contradictions): declared, else written, else guessed from the shape."""
    guess, reason, sure = guess_up(raw.points, standing)
    stated = declared or (raw.up.axis if raw.up else None)
    if stated is None:
        return guess, reason, ()
    said = "declared" if declared else (raw.up.reason if raw.up else "")
    notes = []
    if declared and raw.up and raw.up.axis != declared:
        notes.append(f"{where}: up axis {declared} was declared, though the file says {raw.up.reason}")
    same = guess.lstrip("-") == stated.lstrip("-")
    if sure and not same:
        notes.append(f"{where}: up axis {stated} is {said}, but the shape says {reason}")
    if same and hangs_below(standing(stated)):
        other = stated.removeprefix("-") if stated.startswith("-") else f"-{stated}"
        notes.append(
            f"{where}: up axis {stated} is {said}, but what stands out from the slab stands out downwards: "
            f'if the scan is upside down, write up = "{other}"'
        )
    return stated, said, tuple(notes)


def _up_shown(raw: RawScan, standing: Standing, axis: str, facing: float) -> str:
    """What of the file shows that ``axis`` points up, beside whoever says so; "" where nothing does."""
    if raw.up is not None and raw.up.axis == axis:
        return raw.up.reason
    if raw.system.heights and axis == "z":
        return f"heights in {raw.system.heights}"
    if facing > FACING:
        return "its faces look up"
    return "what stands on the slab" if stands_above(standing(axis)) else ""


def scan_digest(path: Path) -> str:
    """sha256 of all that a scan's file holds: of its bytes, and of a glTF's files with numbers after them (as
    ``cat m.gltf m.bin | sha256sum``)."""
    parts = [path]
    if sniff(path) in ("glb", "gltf"):
        from crestcut.scan.formats.gltf import buffers_beside

        parts += buffers_beside(path)
    found = hashlib.sha256()
    for part in parts:
        with part.open("rb") as file:
            hashlib.file_digest(file, lambda: found)
    return found.hexdigest()
