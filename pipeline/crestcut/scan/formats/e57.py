"""E57 (ASTM E2807): all scans of a file in their poses, metres."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path
from typing import Any

import numpy as np
from numpy.typing import NDArray

from crestcut.base.errors import CrestcutError
from crestcut.base.grid import FloatArray
from crestcut.scan.formats.e57_check import check_e57
from crestcut.scan.formats.raw import RawScan, UnitFound, unreadable
from crestcut.scan.formats.take import ALL, Block, Take, take
from crestcut.scan.placing.rounding import Rounding
from crestcut.scan.placing.system import named_system

_BOX = ("cartesianX", "cartesianY", "cartesianZ")
_SPHERE = ("sphericalRange", "sphericalAzimuth", "sphericalElevation")
_COLOURS = ("colorRed", "colorGreen", "colorBlue")


def read_e57(path: Path, asked: Take = ALL) -> RawScan:
    """Points of every scan of the file, each turned and moved by its pose in float64; invalid returns counted
    as dropped."""
    import pye57

    crs, origin = check_e57(path)
    system = named_system(crs)
    try:
        file = pye57.E57(str(path))
        count = file.scan_count
        rounding = [Rounding() for _ in range(count)]
        head = RawScan(
            format=f"E57, {count} scan{'s' if count > 1 else ''}",
            points=np.empty((0, 3)),
            unit=UnitFound("m", (1.0, 1.0, 1.0), "metres, as the E57 standard has it"),
            system=system,
            origin=origin,
        )
        # colours of some scans alone are none
        coloured = all(set(_COLOURS) <= set(file.get_header(k).point_fields) for k in range(count))
        blocks = (
            block for k in range(count) for block in _blocks(file, k, asked.rows, rounding[k], coloured)
        )
        found = take(head, blocks, asked)
    except CrestcutError:
        raise
    except Exception as error:
        why = (str(error).strip().splitlines() or ["damaged"])[0]
        raise unreadable(path, "E57", why.split(" (Error")[0]) from None
    if found.tally is None or not found.tally.by_class.sum():
        raise CrestcutError("no points in the file", str(path), "export the scan again")
    station = found.station if count > 1 else None
    return replace(found, station=station, quantum=max(r.quantum for r in rounding))


def _blocks(file: Any, index: int, rows: int, rounding: Rounding, coloured: bool) -> Iterator[Block]:
    """All points of one scan in file coordinates, so many at a time; ``rounding`` sees them as written."""
    header = file.get_header(index)
    if not header.point_count:
        return
    fields = set(header.point_fields)
    axes = next((names for names in (_BOX, _SPHERE) if set(names) <= fields), None)
    if axes is None:
        raise CrestcutError(f"scan {index + 1} has no coordinates", "", "export it with positions")
    invalid = f"{'cartesian' if axes is _BOX else 'spherical'}InvalidState"
    wanted = [*axes, *[invalid] * (invalid in fields), *(_COLOURS if coloured else ())]
    data, buffers = file.make_buffers(wanted, min(rows, header.point_count))
    reader = header.points.reader(buffers)
    while some := reader.read():
        points = _points([data[name][:some] for name in axes], axes is _BOX)
        rounding.see(points)
        state = data.get(invalid)
        if header.has_pose():
            # pye57 turns in the type of the data: the pose is applied here in float64; term by term, since a
            # matrix product may round the last rows of a block otherwise than the first
            x, y, z = points.T
            turn, move = header.rotation_matrix, np.asarray(header.translation, dtype=float)
            turned = [a * x + b * y + c * z + m for (a, b, c), m in zip(turn, move, strict=True)]
            points = np.stack(turned, axis=1)
        yield Block(
            points=points,
            colours=np.stack([data[c][:some] for c in _COLOURS], axis=1) if coloured else None,
            good=None if state is None else state[:some] == 0,
            station=np.full(some, index, np.int16),
        )
    reader.close()


def _points(axes: list[NDArray], box: bool) -> FloatArray:
    """(n, 3) x, y, z of three columns: themselves, or range, azimuth and elevation."""
    if box:
        return np.stack(axes, axis=1).astype(np.float64)
    distance, azimuth, elevation = axes
    flat = distance * np.cos(elevation)
    return np.stack([flat * np.cos(azimuth), flat * np.sin(azimuth), distance * np.sin(elevation)], axis=1)
