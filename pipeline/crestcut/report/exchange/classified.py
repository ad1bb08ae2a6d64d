"""A scan as LAS or LAZ with each point's class: what was found to be ground, and what was not."""

from __future__ import annotations

from pathlib import Path

import numpy as np

from crestcut.base.errors import CrestcutError, Say
from crestcut.base.grid import BoolArray
from crestcut.report.folder.files import Staging
from crestcut.scan import Scan
from crestcut.study import scan_identity

GROUND, OTHER = 2, 1  # LAS 1.4 R15, table 17: ground, unclassified
QUANTUM = 1e-4  # own units that places are rounded to; offsets are whole, so that of file and scan agree


def write_classified(
    scan: Scan, ground: BoolArray, path: Path, say: Say = lambda _: None
) -> tuple[Path, ...]:
    """Write ``path``, points in the scan's own order and coordinates, z up. ground (n,): of each point.

    Raises CrestcutError for a name that is neither, or one of the scan's own files.
    """
    import laspy

    if path.suffix.lower() not in (".las", ".laz"):
        raise CrestcutError("is neither LAS nor LAZ", str(path), "name a file like classified.laz")
    if any(path.resolve() == file.path.resolve() for file in scan.files):
        raise CrestcutError("is the scan itself", str(path), "name another file")
    own = scan.frame.to_own(scan.points)
    coloured = scan.colours is not None
    header = laspy.LasHeader(point_format=7 if coloured else 6, version="1.4")  # both hold a time
    header.scales = np.full(3, QUANTUM)
    header.offsets = np.floor(own.min(axis=0))
    header.generating_software = scan_identity(scan).tool
    header.creation_date = None
    if scan.frame.system.wkt:
        from pyproj import CRS

        header.add_crs(CRS.from_wkt(scan.frame.system.wkt))
    las = laspy.LasData(header)
    las.x, las.y, las.z = own.T
    las.classification = np.where(ground, GROUND, OTHER).astype(np.uint8)
    if scan.time is not None:
        las.gps_time = scan.time
    if scan.colours is not None:
        las.red, las.green, las.blue = (scan.colours.astype(np.uint16) * 257).T
    staging = Staging(path.parent, "look --classified", say)
    with staging as folder:
        staging.about = scan_identity(scan)
        las.write(folder / path.name)
    return staging.moved
