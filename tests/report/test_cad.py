"""The drawing: audits clean, carries its unit, lies where the scan lies, and under a stamp holds nothing to
cut from.

DXF reference: $INSUNITS 1 inches, 2 feet, 4 millimetres, 5 centimetres, 6 metres. The reading side is the
library's own.
"""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import ezdxf
import numpy as np
import pytest
from deliver_scene import make_report
from test_sheets import job_without, sheet_for

from crestcut.report.exchange.cad import CUT_LAYERS, write_cad
from crestcut.study.report import Report


@pytest.fixture(scope="module")
def report() -> Report:
    return make_report(hole=False)


def read(path: Path):
    drawing = ezdxf.readfile(path)
    audit = drawing.audit()
    assert not audit.has_errors and not audit.has_fixes
    return drawing


def layer(drawing, name: str, kind: str = "*") -> list:
    return list(drawing.modelspace().query(f'{kind}[layer=="{name}"]'))


def test_released_drawing_lies_on_the_scan(report: Report, tmp_path: Path) -> None:
    sheet = sheet_for(report, job_without(report, set()))
    assert sheet.set_out is not None
    write_cad(report, sheet, tmp_path / "a.dxf")
    drawing = read(tmp_path / "a.dxf")
    assert drawing.header["$INSUNITS"] == {"m": 6, "mm": 4, "ft": 2}[report.scan.frame.unit]
    # every dot is where its station and offset put it, in the scan's own coordinates
    frame = report.surface.height.frame
    start = frame.to_grid(report.line.xy[0])
    for dot, circle in zip(sheet.set_out.dots, layer(drawing, "DOTS", "CIRCLE"), strict=True):
        site = frame.to_site((start[0] + dot.station, start[1] + dot.offset))
        assert np.allclose(circle.dxf.center.vec2, report.scan.frame.site_to_plan(site), atol=1e-9)
        assert any(t.dxf.text == f"{dot.name} {dot.depth * 1000:.1f}" for t in layer(drawing, "DOTS", "TEXT"))
    marks = {t.dxf.text for t in layer(drawing, "MARKS", "TEXT")}
    assert marks == {m.name for m in report.marks}
    for name in ("OUTLINE", "DEPTH_CONTOURS", "TRAVEL", "STOP_LINES", "STRIPS", "BLOCKS"):
        assert layer(drawing, name), name
    assert len(layer(drawing, "KEEP_AREAS", "LWPOLYLINE")) == len(report.keeps)


def test_the_outline_encloses_the_area_of_the_cut(report: Report, tmp_path: Path) -> None:
    """Shoelace formula on the drawn outline against the plan's own count of cells."""
    assert report.plan is not None
    write_cad(report, sheet_for(report, job_without(report, set())), tmp_path / "a.dxf")
    area = around = 0.0
    for ring in layer(read(tmp_path / "a.dxf"), "OUTLINE", "LWPOLYLINE"):
        x, y = np.asarray([p[:2] for p in ring.get_points()]).T
        around += float(np.hypot(x - np.roll(x, 1), y - np.roll(y, 1)).sum())
        area += abs(float(np.sum(x * np.roll(y, -1) - y * np.roll(x, -1)))) / 2
    scale = report.scan.frame.plan_scale
    # counted cells reach half a cell beyond the outermost node all round, and the line runs inside it
    rim = around * float(scale[0]) * report.surface.height.frame.cell
    assert report.plan.area - rim < area * float(np.prod(scale)) < report.plan.area


@pytest.mark.parametrize(("missing", "provisional"), [({"heating"}, False), (set(), True)])
def test_a_stamped_drawing_holds_nothing_to_cut_from(
    report: Report, tmp_path: Path, missing: set[str], provisional: bool
) -> None:
    sheet = sheet_for(report, job_without(report, missing), provisional)
    write_cad(report, sheet, tmp_path / "a.dxf")
    drawing = read(tmp_path / "a.dxf")
    for name, _ in CUT_LAYERS:
        assert not layer(drawing, name) and name not in drawing.layers
    assert any(sheet.stamp in t.dxf.text for t in layer(drawing, "TEXT", "TEXT"))
    assert layer(drawing, "OUTLINE") and layer(drawing, "TRAVEL")


def test_same_input_same_bytes_and_no_plan_is_a_drawing_too(report: Report, tmp_path: Path) -> None:
    sheet = sheet_for(report, job_without(report, set()))
    for name in ("a.dxf", "b.dxf"):
        write_cad(report, sheet, tmp_path / name)
    assert (tmp_path / "a.dxf").read_bytes() == (tmp_path / "b.dxf").read_bytes()
    bare = replace(report, plan=None)
    write_cad(bare, sheet_for(report, job_without(report, {"heating"})), tmp_path / "c.dxf")
    assert layer(read(tmp_path / "c.dxf"), "TRAVEL")


def test_the_classes_stand_in_one_order(report: Report, tmp_path: Path) -> None:
    """They come out of a set: the order of another run is another one, which one process cannot show."""
    write_cad(report, sheet_for(report, job_without(report, set())), tmp_path / "a.dxf")
    names = list(read(tmp_path / "a.dxf").classes.classes)
    assert len(names) > 3 and names == sorted(names)
