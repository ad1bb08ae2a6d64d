"""``pick.html``: the slab from above, to tap the line on and to save a job file from."""

from __future__ import annotations

import math
import os
from dataclasses import asdict
from pathlib import Path, PurePosixPath
from typing import Any

import numpy as np
from markupsafe import Markup
from numpy.typing import NDArray
from scipy import ndimage

from crestcut.base.cautions import MEASURED_VEHICLE
from crestcut.base.errors import CrestcutError
from crestcut.base.grid import FloatArray, GridFrame
from crestcut.job import ScanChoice
from crestcut.report.pages.footing import footing
from crestcut.report.pages.pack import pack_colours, pack_layer
from crestcut.report.pages.pick_vehicles import generic_vehicles
from crestcut.report.pages.shell import html, joined, page, write_page
from crestcut.report.pages.worksheet import caution_list
from crestcut.scan import Health, Scan, near_ground
from crestcut.study import scan_identity
from crestcut.vehicle import RANGES, RULES

FINEST = 0.02  # m
FEWEST = 16  # points that make a picture
MOST_CELLS = 400_000  # keeps the page under about 2 MB
POINTS_PER_CELL = 4.0
MOST_POINTS = int(MOST_CELLS * POINTS_PER_CELL)  # of more, every second, third ... is enough here
INCH_UNITS = ("ft", "us-ft", "in")  # a scan in these is of someone who measures in inches
LOW_SHARE = 0.2  # of the points over a cell, counted from below: leaves and noise stand above the ground
FAR_SHARE = 0.0005  # of the points at each side that may be strays and do not stretch the picture


def write_pick(
    scan: Scan,
    health: Health | None,
    out: Path,
    choice: ScanChoice | None = None,
    home: Path | None = None,
) -> Path:
    """Write the page and return its path.

    health : what `look` found, or None.  out : the file, or its folder.  choice : how the scan was asked
    for.  home : the folder that the page will lie in, where ``out`` is only beside it.
    Raises CrestcutError where the scan has too few points to draw.
    """
    found = pick_data(scan, health, home or _folder(out), choice)
    name = ", ".join(f.path.name for f in scan.files)
    units = found["units"]
    body = html(
        '<header class="top"><div><h1>Say where it drives</h1><p>Scan: <bdi>{}</bdi></p></div>\n'
        "{}</header>\n"
        '<main><div id="app"></div><p id="said" role="status" class="away"></p>\n'
        "<noscript><p>This page needs JavaScript, which this browser has switched off. Nothing leaves your "
        "device: the page works "
        'without a network.</p></noscript><section class="card" aria-labelledby="care-title">'
        '<h2 id="care-title">Before you measure a vehicle</h2>{}</section></main>',
        name, switches(units), caution_list(MEASURED_VEHICLE),
    )  # fmt: skip
    text = page(f"Pick: {name}", "pick", body, found, units, scan_identity(scan))
    return write_page(text, out, "pick.html")


def _folder(out: Path) -> Path:
    return out.parent if out.suffix == ".html" else out


def switches(units: str) -> Markup:
    """The two choices in the header of both pages; ``units`` is what the page shows first."""
    systems = joined(
        html('<option value="{0}"{1}>{0}</option>', name, " selected" if name == units else "")
        for name in ("metric", "inches")
    )
    return html(
        '<div class="switches"><label>Units <select id="units-switch">{}</select></label>'
        '<label>Light <select id="light-switch">'
        '<option value="auto">as the '
        'device</option><option value="light">light</option><option value="dark">dark</option></select>'
        "</label></div>",
        systems,
    )


def pick_data(
    scan: Scan, health: Health | None, folder: Path, choice: ScanChoice | None = None
) -> dict[str, Any]:
    """What the viewer reads: rasters, how grid metres become plan coordinates, the scan's facts, generic
    vehicles. What ``choice`` says of unit, axis and scanner is the saved job's too: without it a run would
    guess anew, and its points would lie elsewhere."""
    frame, height, colours = plan_raster(scan)
    scale = scan.frame.plan_scale
    corner = scan.frame.site_to_plan(np.asarray(frame.origin))
    files = [_seen_from(f.path, folder) for f in scan.files]
    facts = [f"{f.path.name}: {f.points:,} points; unit {scan.frame.unit} ({f.unit_reason}); up "
             f"{scan.frame.up} ({f.up_reason})"
             for f in scan.files]  # fmt: skip
    return {
        "page": "pick",
        "grid": {
            "nx": frame.shape[1], "ny": frame.shape[0], "cell": frame.cell,
            "plan": [[1 / scale[0], 0.0, corner[0]], [0.0, 1 / scale[1], corner[1]]],
        },
        "height": pack_layer(height, 5e-4),
        "footing": pack_layer(footing(scan.points, frame), 0.5),
        "colours": None if colours is None else pack_colours(colours),
        "planUnit": scan.frame.unit,
        "planScale": [float(scale[0]), float(scale[1])],
        "scan": {
            "files": files, "said": _said(choice), "unit": scan.frame.unit, "up": scan.frame.up,
            "notes": [*facts, *scan.notes, *_sentences(health)],
        },
        "vehicles": generic_vehicles(),
        "vehicleRules": {"ranges": RANGES, "rules": [asdict(rule) for rule in RULES]},
        "units": "inches" if scan.frame.unit in INCH_UNITS else "metric",
    }  # fmt: skip


def _said(choice: ScanChoice | None) -> dict[str, str]:
    """Keys of [scan] that somebody gave."""
    keys = ("unit", "up", "scanner")
    return {} if choice is None else {k: v for k in keys if (v := getattr(choice, k)) is not None}


def plan_raster(scan: Scan) -> tuple[GridFrame, FloatArray, NDArray[np.uint8] | None]:
    """Height (ny, nx) of what lies lowest over each cell, NaN where the scan has nothing, and its mean
    colour (ny, nx, 3)."""
    if len(scan.points) < FEWEST:
        raise CrestcutError(
            f"only {len(scan.points)} points", "scan", "scan the slab again, slower and closer"
        )
    every = math.ceil(len(scan.points) / MOST_POINTS)
    xyz = scan.points[::every]
    inside = near_ground(xyz)
    low, high = np.quantile(xyz[inside, :2], [FAR_SHARE, 1 - FAR_SHARE], axis=0)
    inside &= ((xyz[:, :2] >= low) & (xyz[:, :2] <= high)).all(axis=1)
    xyz = xyz[inside]
    size = np.maximum(high - low, 0.1)
    cell = max(
        FINEST,
        math.sqrt(size[0] * size[1] / MOST_CELLS),
        math.sqrt(size[0] * size[1] * POINTS_PER_CELL / len(xyz)),
    )
    nx, ny = (np.ceil(size / cell).astype(int) + 1).tolist()
    column, row = np.rint((xyz[:, :2] - low) / cell).astype(int).T
    flat = row * nx + column
    order = np.lexsort((xyz[:, 2], flat))
    cells, start, count = np.unique(flat[order], return_index=True, return_counts=True)
    height = np.full(ny * nx, np.nan)
    height[cells] = xyz[order[start + (count * LOW_SHARE).astype(int)], 2]
    frame = GridFrame((float(low[0]), float(low[1])), 0.0, cell, (ny, nx))
    colours = None
    if scan.colours is not None:
        rgb = scan.colours[::every][inside]
        sums = np.stack([np.bincount(flat, rgb[:, k], ny * nx) for k in range(3)], axis=-1)
        colours = (
            (sums / np.maximum(np.bincount(flat, minlength=ny * nx), 1)[:, None])
            .astype(np.uint8)
            .reshape(ny, nx, 3)
        )
    return (frame, *_bridge(height.reshape(ny, nx), colours))


def _bridge(
    height: FloatArray, colours: NDArray[np.uint8] | None
) -> tuple[FloatArray, NDArray[np.uint8] | None]:
    """Fill single empty cells among measured ones: an accident of the raster, not a hole in the scan."""
    empty = np.isnan(height)
    around = ndimage.uniform_filter((~empty).astype(float), 3, mode="constant") * 9
    fill = empty & (around >= 5)
    sums = ndimage.uniform_filter(np.where(empty, 0.0, height), 3, mode="constant") * 9
    height = np.where(fill, sums / np.maximum(around, 1), height)
    if colours is not None:
        mean = (
            ndimage.uniform_filter(np.where(empty[..., None], 0.0, colours), (3, 3, 0), mode="constant") * 9
        )
        colours = np.where(fill[..., None], mean / np.maximum(around, 1)[..., None], colours).astype(np.uint8)
    return height, colours


def _seen_from(path: Path, folder: Path) -> str:
    """The scan as a job file in ``folder`` names it: relative where there is a way, with forward slashes."""
    try:
        return str(PurePosixPath(*Path(os.path.relpath(path, folder)).parts))
    except ValueError:  # another drive
        return path.resolve().as_posix()


def _sentences(health: Health | None) -> list[str]:
    return [] if health is None else [*health.decides, *health.notes]
