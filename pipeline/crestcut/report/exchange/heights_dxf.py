"""``heights.dxf``: existing and finished surface in space, in the scan's own coordinates and unit: triangles,
contours, breaklines and points, each on layers of their own."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np

from crestcut.base.errors import visible
from crestcut.base.grid import FloatArray, HeightGrid
from crestcut.report.exchange.cad import BLACK, DARK, PALE, alike, new_drawing, save_alike
from crestcut.report.exchange.landxml import NamedSurface
from crestcut.report.exchange.levels import Level, Levels

if TYPE_CHECKING:
    from ezdxf.document import Drawing

# own units of height between contours
STEP = {"m": 0.010, "cm": 1.0, "mm": 10.0, "ft": 0.05, "us-ft": 0.05, "in": 0.5}
TALL = 0.02  # m, of a capital


def write_heights(
    levels: Levels, surfaces: Sequence[NamedSurface], points: Sequence[Level], path: Path
) -> None:
    """Write the drawing. Same input, same bytes."""
    with alike():
        save_alike(draw_heights(levels, surfaces, points), path)


def draw_heights(levels: Levels, surfaces: Sequence[NamedSurface], points: Sequence[Level]) -> Drawing:
    """Triangles, contours, breaklines and points in space, on layers of their own."""
    frame = levels.frame
    drawing = new_drawing(frame.unit, levels.report.identity)
    space = drawing.modelspace()
    for name, words, corner, faces in surfaces:
        drawing.layers.add(f"{name.upper()}_TIN", color=PALE).description = words
        # one entity with shared corners: 3DFACEs of the same take ten times the room
        with space.add_mesh(dxfattribs={"layer": f"{name.upper()}_TIN"}).edit_data() as mesh:
            mesh.vertices, mesh.faces = corner.tolist(), faces.tolist()
    for name, grid in (("EXISTING", levels.existing), ("FINISHED", levels.finished)):
        if grid is None:
            continue
        layer = drawing.layers.add(f"{name}_CONTOURS", color=DARK)
        layer.description = f"every {step_of(frame.unit):g} {frame.unit} of height"
        for height, ring in height_contours(levels, grid, step_of(frame.unit)):
            about = {"layer": f"{name}_CONTOURS", "elevation": height}
            space.add_lwpolyline(ring.tolist(), dxfattribs=about)
    drawing.layers.add("BREAKLINES", color=BLACK)
    for line in levels.report.surface.breaks:
        own = levels.own(levels.existing, levels.existing.frame.to_site(line.at))
        own = own[~np.isnan(own[:, 2])]
        if len(own) > 1:
            space.add_polyline3d(own.tolist(), dxfattribs={"layer": "BREAKLINES"})
    drawing.layers.add("POINTS", color=BLACK)
    size = TALL / float(frame.plan_scale[0])
    for p in points:
        at = (p.east, p.north, p.existing if p.finished is None else p.finished)
        space.add_point(at, dxfattribs={"layer": "POINTS"})
        text = space.add_text(visible(p.name), height=size, dxfattribs={"layer": "POINTS"})
        text.dxf.insert = (at[0] + size / 2, at[1] + size / 2, at[2])
    return drawing


def step_of(unit: str) -> float:
    """Of height between contours, own units: round numbers."""
    return STEP.get(unit, STEP["m"])


def height_contours(levels: Levels, grid: HeightGrid, step: float) -> Iterator[tuple[float, FloatArray]]:
    """Every ``step`` of height in own coordinates, each with a line (n, 2) along it, own units."""
    from contourpy import contour_generator

    frame = levels.frame
    heights = (grid.values + float(frame.shift[2])) / float(frame.turned_scale[2])
    lines = contour_generator(z=np.ma.masked_invalid(heights))
    low, high = (int(np.ceil(float(v) / step)) for v in (np.nanmin(heights), np.nanmax(heights)))
    for k in range(low, high):
        for ring in lines.lines(k * step):
            if len(ring) > 2:
                yield k * step, frame.site_to_plan(grid.frame.to_site(np.asarray(ring) * grid.frame.cell))
