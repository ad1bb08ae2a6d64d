"""What is handed to a surveyor besides drawing and mesh: rasters, surfaces, points, sections, bands, and
``survey.json``, which says what they are, in which reference, and how true.
"""

from __future__ import annotations

import csv
import json
from collections.abc import Iterable, Sequence
from dataclasses import asdict
from importlib.util import find_spec
from pathlib import Path

import numpy as np

from crestcut.base.errors import table_cell
from crestcut.report.exchange.heights_dxf import write_heights
from crestcut.report.exchange.landxml import NamedSurface, write_landxml
from crestcut.report.exchange.levels import BayRow, Level, Levels, Raster
from crestcut.report.exchange.tin import Tin, tin_of
from crestcut.report.view.frames import frame_and_units
from crestcut.report.view.reference import reference_document
from crestcut.report.view.result import plain
from crestcut.scan import System, grid_over_ground
from crestcut.study import Report
from crestcut.work import Worksheet

SURVEY_NAME = "survey.json"
TOLERANCE = 0.0002  # m: how far a triangulated surface may be off the heights
NO_DATA = -9999.0
NO_RASTERS = "rasters need the library rasterio: install it (pip install rasterio), then run this again"
DECIMALS = 4  # of own units in tables: a tenth of a millimetre in metres


def write_survey(report: Report, sheet: Worksheet, folder: Path) -> tuple[str, ...]:
    """All files into ``folder``; notes on what was left out and why."""
    levels = Levels(report, sheet)
    frame, notes = report.scan.frame, []
    grids = {"existing": levels.existing}
    if levels.finished is not None:
        grids["finished"] = levels.finished
    else:
        notes.append(
            f"{sheet.stamp or 'nothing to cut'}: no finished surface, depths or dots to set out from"
        )
    if frame.system.plan and not frame.system.heights:
        notes.append("the vertical datum is not stated: heights are as in the scan")
    if find_spec("rasterio") is None:
        notes.append(NO_RASTERS)
    else:
        for name, grid in grids.items():
            _geotiff(levels.raster(grid), frame.system, name, folder / f"{name}.tif")
        if levels.depth is not None:
            _geotiff(levels.raster(levels.depth, depth=True), frame.system, "depth", folder / "depth.tif")
    tins = {name: tin_of(grid, TOLERANCE) for name, grid in grids.items()}
    surfaces: list[NamedSurface] = [
        (name, _words(name, tin), frame.to_own(tin.xyz), tin.faces) for name, tin in tins.items()
    ]
    about = (report.identity.job, report.identity.tool, report.job.date or "")
    write_landxml(surfaces, frame.system, frame.unit, about, folder / "surfaces.xml")
    points = list(levels.points())
    _points(points, folder)
    _sections(levels, folder / "sections.csv")
    _bands(levels, folder / "depth_bands.csv")
    bays = levels.bays()
    _bays(bays, folder / "bays.csv")
    write_heights(levels, surfaces, points, folder / "heights.dxf")
    told = {
        **_record(levels, tins, points, notes),
        "bays": [asdict(bay) for bay in bays],
        "joints_found": len(report.surface.joints),
    }
    (folder / SURVEY_NAME).write_text(json.dumps(plain(told), indent=1) + "\n", encoding="utf-8")
    return tuple(notes)


def _words(name: str, tin: Tin) -> str:
    return f"{name} surface, within {tin.worst * 1000:.2f} mm of the heights it was made from"


def _geotiff(raster: Raster, system: System, name: str, path: Path) -> None:
    """A cloud-optimised GeoTIFF (OGC 19-008r4) of 64-bit values."""
    import rasterio

    values = np.where(np.isnan(raster.values), NO_DATA, raster.values)
    where = rasterio.Affine(raster.cell, 0.0, raster.west, 0.0, -raster.cell, raster.north)
    with rasterio.open(
        path, "w", driver="COG", height=values.shape[0], width=values.shape[1], count=1, dtype="float64",
        crs=system.wkt or None, transform=where,
        nodata=NO_DATA, compress="DEFLATE", blocksize=256,
    ) as out:  # fmt: skip
        out.write(values, 1)
        out.set_band_description(1, name)


def _rows(path: Path, head: Sequence[str], rows: Iterable[Sequence[object]]) -> None:
    with path.open("w", newline="", encoding="utf-8") as file:
        out = csv.writer(file, lineterminator="\n")
        out.writerow(head)
        out.writerows(rows)


LEVEL = ("existing", "finished", "depth")


def _cells(level: Level, names: Sequence[str]) -> tuple[str, ...]:
    """Figures of a place as a table has them, empty where there is none."""
    found = (getattr(level, name) for name in names)
    return tuple("" if v is None else f"{v:.{DECIMALS}f}" for v in found)


def _points(points: Sequence[Level], folder: Path) -> None:
    """The same points twice, east first and north first, as instruments differ."""
    for first, second in (("east", "north"), ("north", "east")):
        names = (first, second, *LEVEL)
        rows = ((table_cell(p.name), *_cells(p, names), p.code) for p in points)
        _rows(folder / f"points_{first}_{second}.csv", ("point", *names, "code"), rows)


def _sections(levels: Levels, path: Path) -> None:
    names = ("east", "north", *LEVEL)
    rows = ((f"{r.chainage:.2f}", f"{r.offset:.2f}", *_cells(r.level, names)) for r in levels.sections())
    _rows(path, ("chainage_m", "offset_left_m", *names), rows)


def _bands(levels: Levels, path: Path) -> None:
    rows = (
        (f"{b.low * 1000:.0f}", f"{b.high * 1000:.0f}", f"{b.area:.3f}", f"{b.volume * 1000:.2f}")
        for b in levels.bands()
    )
    _rows(path, ("from_mm", "to_mm", "area_m2", "volume_l"), rows)


def _bays(bays: Sequence[BayRow], path: Path) -> None:
    """Pieces of slab between joints, numbered along the line, and what is cut of each."""
    rows = (
        (b.name, f"{b.east:.{DECIMALS}f}", f"{b.north:.{DECIMALS}f}", f"{b.whole:.2f}", f"{b.area:.3f}",
         f"{b.volume * 1000:.2f}", f"{b.deepest * 1000:.1f}")
        for b in bays
    )  # fmt: skip
    head = ("bay", "east", "north", "slab_m2", "cut_m2", "volume_l", "deepest_mm")
    _rows(path, head, rows)


def _record(
    levels: Levels, tins: dict[str, Tin], points: Sequence[Level], notes: Sequence[str]
) -> dict[str, object]:
    report = levels.report
    frame = report.scan.frame
    middle = levels.own(levels.existing, np.asarray(report.line.xy).mean(axis=0))[0]
    height = float(np.nanmedian(levels.existing.values)) + float(frame.shift[2])
    ratio = grid_over_ground(frame.system, float(middle[0]), float(middle[1]), height)
    reference = reference_document(report)
    bands = levels.bands()
    long = float(np.hypot(*levels.existing.frame.size))
    return {
        "schema": "crestcut.survey/1",
        **report.identity.record(),
        **frame_and_units(frame),
        "grid_over_ground": ratio,
        "grid_less_ground_over_window": None if ratio is None else (ratio - 1.0) * long,
        "height_unit_metres": float(frame.turned_scale[2]),
        "surfaces": {
            name: {"points": len(tin.xyz), "faces": len(tin.faces), "worst_off": tin.worst}
            for name, tin in tins.items()
        },
        "tie": reference["tie"],
        "checks": reference["checks"],
        "points": len(points),
        "bands": [asdict(b) for b in bands],
        "cut": {"area": sum(b.area for b in bands), "volume": sum(b.volume for b in bands)},
        "notes": list(notes),
    }
