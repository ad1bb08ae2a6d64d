"""The same sheets as one drawing: the ground in the scan's own coordinates and unit, and a layout a sheet, in
mm on paper, that sees it through a viewport at the sheet's scale.

Profile, sections and tables lie on their layouts, true to scale in mm: the model holds what has
coordinates. What is seen enlarged has letters of its own size: its layers end in ``_CUT``, and each viewport
shows its own.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Any

import numpy as np

from crestcut.base.errors import visible
from crestcut.base.grid import FloatArray
from crestcut.report.exchange.cad import BLACK, DARK, PALE, alike, new_drawing, save_alike
from crestcut.report.plots import items
from crestcut.report.plots.items import INK, Area, Colour, Item, Sheet, Stroke, View, Words
from crestcut.study import Identity

if TYPE_CHECKING:
    from ezdxf.document import Drawing

STYLE, FACE = "SHEET", "arial.ttf"
CLOSER = "_CUT"


def write_dxf(sheets: Sequence[Sheet], unit: str, about: Identity, path: Path) -> None:
    """unit : of the scan's coordinates. Same input, same bytes."""
    with alike():
        save_alike(draw_sheets(sheets, unit, about), path)


def draw_sheets(sheets: Sequence[Sheet], unit: str, about: Identity) -> Drawing:
    """The drawing with all its layouts."""
    drawing = new_drawing(unit, about)
    drawing.header["$PSLTSCALE"] = 1  # dashes are as long on paper in every viewport
    drawing.styles.add(STYLE, font=FACE)
    brush = _Brush(drawing, about.words())
    seen = [(sheet, sheet.view) for sheet in sheets if sheet.view is not None]
    frozen: dict[int, list[str]] = {}
    for k, (sheet, view) in enumerate(seen):
        before = set(brush.layers)
        brush.into(drawing.modelspace(), CLOSER * k, view)
        for item in sheet.ground:
            brush.draw(item)
        frozen[k] = sorted(brush.layers - before)
    if seen:
        _open_on(drawing, seen[0][1])
    for number, sheet in enumerate(sheets, start=1):
        name = f"{number} {sheet.name}".translate(_NO_NAME)
        if number == 1:
            drawing.layouts.rename("Layout1", name)
        layout: Any = drawing.layouts.get(name) if number == 1 else drawing.layouts.new(name)
        layout.page_setup(size=sheet.size, margins=(0, 0, 0, 0), units="mm", name="sheet", device="")
        brush.into(layout, "", None)
        for item in sheet.items:
            brush.draw(item)
        for k, (one, view) in enumerate(seen):
            if one is sheet:
                _window(layout, view, [n for j in frozen if j != k for n in frozen[j]])
    return drawing


_NO_NAME = {ord(c): " " for c in '<>/\\":;?*|,=`'}  # what no table's name may hold (DXF reference)


def _open_on(drawing: Drawing, view: View) -> None:
    """The model opens on what the plan shows."""
    x0, y0, x1, y1 = view.box
    drawing.set_modelspace_vport(max(x1 - x0, y1 - y0) / view.unit, center=view.middle)


def _window(layout: Any, view: View, hidden: Sequence[str]) -> None:
    """A viewport on the ground at true scale, turned so that travel runs from left to right."""
    x0, y0, x1, y1 = view.box
    made = layout.add_viewport(view.centre, (x1 - x0, y1 - y0), (0.0, 0.0), (y1 - y0) / view.unit)
    made.dxf.view_target_point = (*view.middle, 0.0)
    made.dxf.view_twist_angle = math.degrees(view.turn)
    for name in hidden:
        made.freeze(name)


class _Brush:
    """Puts items into the model or a layout."""

    def __init__(self, drawing: Drawing, about: str) -> None:
        self.drawing, self.about = drawing, about
        self.layers: set[str] = set()

    def into(self, space: Any, suffix: str, view: View | None) -> None:
        """Where to: ``view``: the model as seen through it; None: paper, mm."""
        self.space, self.suffix, self.view = space, suffix, view
        self.size = 1.0 if view is None else 1.0 / view.unit
        self.turn = 0.0 if view is None else -math.degrees(view.turn)

    def draw(self, item: Item) -> None:
        """One item."""
        layer = item.layer + self.suffix
        if layer not in self.layers:
            self.drawing.layers.add(layer, color=BLACK).description = self.about
            self.layers.add(layer)
        if isinstance(item, Words):
            self._words(item, {"layer": layer, **_colour(item.colour), "style": STYLE})
        elif isinstance(item, Stroke):
            about = {"layer": layer, **_colour(item.colour), "lineweight": round(item.pen * 100)}
            if item.dash:
                about["linetype"] = self._dashes(item.dash)
            self.space.add_lwpolyline(self._at(item.at).tolist(), dxfattribs=about)
        else:
            self._area(item, layer)

    def _at(self, paper: FloatArray) -> FloatArray:
        return paper if self.view is None else self.view.own(paper)

    def _words(self, item: Words, about: dict[str, Any]) -> None:
        at = tuple(self._at(np.array(item.at)).tolist())
        height, turn, text = item.height * self.size, item.turn + self.turn, visible(item.text)
        if item.clear:  # the other kind of text has no ground of its own
            escaped = text.replace("\\", "\\\\").replace("{", "\\{").replace("}", "\\}")
            made = self.space.add_mtext(escaped, {**about, "char_height": height})
            made.set_location(at, turn, 5)  # its middle
            made.set_bg_color("canvas", scale=1.1)
            return
        from ezdxf.enums import TextEntityAlignment

        name = ("MIDDLE_" * (item.up == "middle") + item.across).upper()
        line = self.space.add_text(text, height=height, rotation=turn, dxfattribs=about)
        line.set_placement(at, align=TextEntityAlignment[name])

    def _area(self, item: Area, layer: str) -> None:
        rings = [self._at(ring).tolist() for ring in item.rings]
        made = []
        if item.fill is not None:
            made.append(self.space.add_hatch(dxfattribs={"layer": layer, "hatch_style": 0}))
            made[-1].rgb = tuple(round(c * 255) for c in item.fill)
        if item.hatch is not None:
            lines = self.space.add_hatch(dxfattribs={"layer": layer})
            turn, apart = item.hatch.angle + self.turn, item.hatch.apart * self.size
            across = math.radians(turn + 90.0)
            offset = (apart * math.cos(across), apart * math.sin(across))
            lines.set_pattern_fill(
                "LINES", DARK, style=0, pattern_type=0, definition=[(turn, rings[0][0], offset, [])]
            )
            lines.dxf.lineweight = 13
            made.append(lines)
        for area in made:
            for k, ring in enumerate(rings):
                area.paths.add_polyline_path(ring, is_closed=True, flags=1 if k == 0 else 16)

    def _dashes(self, dash: tuple[float, ...]) -> str:
        """A pattern of dashes in mm, by name."""
        name = "DASH_" + "_".join(f"{round(d * 10)}" for d in dash)
        if name not in self.drawing.linetypes:
            parts = [d if k % 2 == 0 else -d for k, d in enumerate(dash)]
            self.drawing.linetypes.add(name, [sum(dash), *parts], description="lengths in mm on paper")
        return name


def _colour(colour: Colour) -> dict[str, int]:
    """Ink is the layer's, which is black on white and white on black; two greys."""
    return {} if colour == INK else {"color": PALE if colour == items.PALE else DARK}
