"""The drawing of the plots: its viewports by its library's reader, its places in the scan's coordinates."""

from __future__ import annotations

from pathlib import Path

import ezdxf
import numpy as np
import pytest
from plots_scene import ASKED, handed_over

from crestcut.base.paper import scale_ratio
from crestcut.report.plots.items import Words
from crestcut.report.plots.sheets import DXF_NAME, sheets_of
from crestcut.report.plots.subject import Subject


@pytest.fixture(scope="module", params=list(ASKED))
def handed(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> tuple[Subject, Path]:
    return handed_over(request.param, tmp_path_factory.mktemp("plots"))


def test_the_drawing_has_a_layout_a_sheet_with_a_true_viewport(handed: tuple[Subject, Path]) -> None:
    subject, folder = handed
    drawing = ezdxf.readfile(folder / DXF_NAME)
    audit = drawing.audit()
    assert not audit.has_errors and not audit.has_fixes
    frame, sheets = subject.levels.frame, sheets_of(subject)
    assert drawing.header["$INSUNITS"] == {"m": 6, "us-ft": 21}[frame.unit]
    names = drawing.layouts.names_in_taborder()[1:]
    assert len(names) == len(sheets)
    for name, sheet in zip(names, sheets, strict=True):
        layout = drawing.layouts.get(name)
        about = layout.dxf_layout.dxf
        assert (about.paper_width, about.paper_height) == pytest.approx(sheet.size)
        assert about.plot_paper_units == 1  # mm
        windows = [v for v in layout.query("VIEWPORT") if v.dxf.id != 1]
        assert len(windows) == (sheet.view is not None)
        for window in windows:
            said = next(w.text for w in sheet.items if isinstance(w, Words) and w.text.startswith("scale "))
            ratio = scale_ratio(said.removeprefix("scale "))
            assert window.get_scale() == pytest.approx(float(frame.plan_scale[0]) * 1000.0 / ratio, rel=1e-12)
            assert sheet.view is not None
            for mark in subject.report.marks:
                own = frame.site_to_plan(mark.xy)
                through = window.get_transformation_matrix().transform((*own, 0.0))
                assert (through.x, through.y) == pytest.approx(tuple(sheet.view.paper(own)), abs=1e-5)
        text = {t.dxf.text for t in layout.query("TEXT")}
        assert {"Courtyard apron", "Kiln Yard Trust"} <= text


def test_the_model_lies_in_the_scans_own_coordinates(handed: tuple[Subject, Path]) -> None:
    """Dots where the surveyor's points have them; what each viewport shows is of its own size."""
    subject, folder = handed
    drawing = ezdxf.readfile(folder / DXF_NAME)
    space = drawing.modelspace()
    dots = np.array([(p.east, p.north) for p in subject.levels.points() if p.code == "DOT"])
    for layer in ("DOTS", "DOTS_CUT"):
        rings = [np.array(r.get_points("xy")) for r in space.query(f'LWPOLYLINE[layer=="{layer}"]')]
        middle = np.array([r[:-1].mean(axis=0) for r in rings if len(r) == 33])
        assert middle == pytest.approx(dots, abs=1e-6)
    windows = [v for name in drawing.layouts.names_in_taborder()[1:3]
               for v in drawing.layouts.get(name).query("VIEWPORT") if v.dxf.id != 1]  # fmt: skip
    hidden = [set(v.frozen_layers) for v in windows]
    assert "DOTS_CUT" in hidden[0] and "DOTS" not in hidden[0]
    assert "DOTS" in hidden[1] and "DOTS_CUT" not in hidden[1]
