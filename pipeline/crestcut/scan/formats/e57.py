"""E57 (ASTM E2807): all scans of a file in their poses, metres."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import numpy as np
from numpy.typing import NDArray

from crestcut.base.errors import CrestcutError
from crestcut.base.grid import FloatArray
from crestcut.scan.formats.e57_check import check_e57
from crestcut.scan.formats.raw import RawScan, UnitFound, eight_bit, unreadable
from crestcut.scan.placing.rounding import quantum_of
from crestcut.scan.placing.system import named_system


def read_e57(path: Path) -> RawScan:
    """Points of every scan of the file, each turned and moved by its pose in float64; invalid returns counted
    as dropped."""
    import pye57

    crs, origin = check_e57(path)
    system = named_system(crs)
    try:
        file = pye57.E57(str(path))
        count = file.scan_count
        parts = [_scan(file, index) for index in range(count)]
    except CrestcutError:
        raise
    except Exception as error:
        why = (str(error).strip().splitlines() or ["damaged"])[0]
        raise unreadable(path, "E57", why.split(" (Error")[0]) from None
    counts = [len(p) for p, _, _, _ in parts]
    if not sum(counts):
        raise CrestcutError("no points in the file", str(path), "export the scan again")
    colours = [c for _, c, _, _ in parts]
    return RawScan(
        format=f"E57, {count} scan{'s' if count > 1 else ''}",
        points=np.concatenate([p for p, _, _, _ in parts]),
        colours=None
        if any(c is None for c in colours)
        else eight_bit(np.concatenate([c for c in colours if c is not None])),
        unit=UnitFound("m", (1.0, 1.0, 1.0), "metres, as the E57 standard has it"),
        dropped=sum(d for _, _, d, _ in parts),
        quantum=max(q for _, _, _, q in parts),
        system=system,
        origin=origin,
        station=np.repeat(np.arange(count, dtype=np.int16), counts) if count > 1 else None,
    )


def _scan(file: Any, index: int) -> tuple[FloatArray, NDArray | None, int, float]:
    """(points in file coordinates, colours or None, dropped, what they were rounded to) of one scan."""
    header = file.get_header(index)
    fields = set(header.point_fields)
    data = file.read_scan_raw(index)
    if {"cartesianX", "cartesianY", "cartesianZ"} <= fields:
        points = np.stack([data[f"cartesian{a}"] for a in "XYZ"], axis=1).astype(np.float64)
        invalid = data.get("cartesianInvalidState")
    elif {"sphericalRange", "sphericalAzimuth", "sphericalElevation"} <= fields:
        distance, azimuth, elevation = (data[f"spherical{n}"] for n in ("Range", "Azimuth", "Elevation"))
        flat = distance * np.cos(elevation)
        points = np.stack(
            [flat * np.cos(azimuth), flat * np.sin(azimuth), distance * np.sin(elevation)], axis=1
        )
        invalid = data.get("sphericalInvalidState")
    else:
        raise CrestcutError(f"scan {index + 1} has no coordinates", "", "export it with positions")
    quantum = quantum_of(points)
    keep = np.ones(len(points), bool) if invalid is None else np.asarray(invalid) == 0
    if header.has_pose():
        # pye57 turns in the type of the data: the pose is applied here in float64.
        points = points @ header.rotation_matrix.T + np.asarray(header.translation, dtype=float)
    colours = None
    if {"colorRed", "colorGreen", "colorBlue"} <= fields:
        colours = np.stack([data[f"color{c}"] for c in ("Red", "Green", "Blue")], axis=1)[keep]
    return points[keep], colours, int((~keep).sum()), quantum
