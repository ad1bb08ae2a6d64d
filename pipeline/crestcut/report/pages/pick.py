"""``pick.html``: the slab from above, to tap the line on and to save a job file from."""

from __future__ import annotations

import math
import os
import tomllib
from dataclasses import asdict
from importlib import resources
from pathlib import Path, PurePosixPath
from typing import Any

import numpy as np
from numpy.typing import NDArray
from scipy import ndimage

from crestcut.base.cautions import MEASURED_VEHICLE
from crestcut.base.errors import CrestcutError
from crestcut.base.grid import BoolArray, FloatArray, GridFrame
from crestcut.base.memory import trimmed
from crestcut.base.paper import FEET
from crestcut.contact import over_small_holes
from crestcut.cut import CAREFUL_SHARE, DEFAULT_DEEPEST, REFUSED_SHARE
from crestcut.job import ScanChoice, what_may_be_written
from crestcut.report.pages.pack import pack_colours, pack_layer
from crestcut.report.pages.shell import page, write_page
from crestcut.scan import Health, Scan, near_ground
from crestcut.study import scan_identity
from crestcut.terrain import (
    Lattice,
    count_cells,
    measured_cells,
    most_cells,
    pitch_for,
    rollable_ground,
)
from crestcut.vehicle import RANGES, RULES

FINEST = 0.02  # m
FINE = 0.01  # m: of the lattice on which ground is told from the rest
MOST_FINE_CELLS = 6_000_000  # of it: a larger yard is told apart on wider cells
FEWEST = 16  # points that make a picture
MOST_CELLS = 400_000  # keeps the page under about 2 MB
POINTS_PER_CELL = 4.0
MOST_POINTS = int(MOST_CELLS * POINTS_PER_CELL)  # of more, every second, third ... is enough here
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
    text = page(
        "pick.html", f"Pick: {name}", found, found["units"], scan_identity(scan), scan=name,
        care=MEASURED_VEHICLE,
    )  # fmt: skip
    return write_page(text, out, "pick.html")


def _folder(out: Path) -> Path:
    return out.parent if out.suffix == ".html" else out


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
        "job": what_may_be_written(),
        "slab": {"deepest": DEFAULT_DEEPEST, "careful": CAREFUL_SHARE, "refused": REFUSED_SHARE},
        "vehicleRules": {"ranges": RANGES, "rules": [asdict(rule) for rule in RULES]},
        "units": "inches" if scan.frame.unit in FEET else "metric",
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


def generic_vehicles() -> list[dict[str, Any]]:
    """Made-up vehicles for a first look, copies of those in configs/vehicles, in the order of their names:
    ``{"file": name, "doc": the file as an object, "text": the file itself}``."""
    folder = resources.files("crestcut.report.pages").joinpath("viewer/vehicles")
    found = sorted((f for f in folder.iterdir() if f.name.endswith(".toml")), key=lambda f: f.name)
    texts = [(f.name, f.read_text(encoding="utf-8")) for f in found]
    return [{"file": name, "doc": tomllib.loads(text), "text": text} for name, text in texts]


def footing(points: FloatArray, frame: GridFrame) -> FloatArray:
    """(ny, nx) at the nodes of ``frame``: 1 measured ground of a kind a tyre may roll on, holes that a tyre
    bridges included; 0.5 where that is in doubt; NaN elsewhere.

    points : (n, 3) site metres. The same separation, the same outline and the same bridging as a run's; only
    the window and its cells differ, so that the rim may lie a cell off. A run lays its square tiles along its
    line, which is not known yet, and a bank between slab and lawn may then fall to either side: both the
    tiles along the frame and those at 45 degrees to it are tried, and where they differ there is doubt.
    """
    ny, nx = frame.shape
    steps = max(1, round(frame.cell / FINE))
    most = min(MOST_FINE_CELLS, most_cells(len(points)))
    while steps > 1 and ny * nx * steps**2 > most:
        steps -= 1
    cell = frame.cell / steps
    straight = GridFrame(frame.origin, frame.angle, cell, ((ny - 1) * steps + 1, (nx - 1) * steps + 1))
    nodes = frame.node_xy()
    along, askew = (_at(_stands(points, f), f, nodes) for f in (straight, _askew(straight)))
    # a rim of a cell or two is the raster's, not a doubt
    doubt = ndimage.binary_opening(along ^ askew, np.ones((3, 3), bool))
    return np.where(doubt, 0.5, np.where(along, 1.0, np.nan))


def _askew(frame: GridFrame) -> GridFrame:
    """A frame at 45 degrees to ``frame`` that covers it."""
    ny, nx = frame.shape
    side = math.ceil((nx + ny) / math.sqrt(2)) + 1  # both sides of the square around the turned rectangle
    middle = frame.to_site(np.array([(nx - 1) / 2, (ny - 1) / 2]) * frame.cell)
    angle = frame.angle + math.pi / 4
    half = (side - 1) / 2 * frame.cell
    c, s = math.cos(angle), math.sin(angle)
    origin = (float(middle[0] - half * (c - s)), float(middle[1] - half * (s + c)))
    return GridFrame(origin, angle, frame.cell, (side, side))


def _at(mask: BoolArray, frame: GridFrame, xy: FloatArray) -> BoolArray:
    """``mask`` at the nodes nearest to site ``xy`` (..., 2)."""
    i, j = np.moveaxis(np.rint(frame.to_grid(xy) / frame.cell).astype(int), -1, 0)
    ny, nx = frame.shape
    inside = (i >= 0) & (j >= 0) & (i < nx) & (j < ny)
    return inside & mask[np.where(inside, j, 0), np.where(inside, i, 0)]


def _stands(points: FloatArray, frame: GridFrame) -> BoolArray:
    """(ny, nx): may a tyre stand at the nodes, with tiles along this frame's axes?"""
    trimmed()  # what was drawn, and finding it the other way, left holes
    area = float(np.prod(frame.shape)) * frame.cell**2
    lattice = Lattice.around(frame, pitch_for(area, len(points)))
    placed = lattice.place(points)
    keep, rollable = rollable_ground(lattice, placed)
    known = measured_cells(count_cells(lattice, placed, keep), lattice.pitch) & rollable
    return ~np.isnan(over_small_holes(np.where(lattice.nodes(known), 0.0, np.nan), frame.cell))
