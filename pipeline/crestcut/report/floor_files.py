"""Every file of a floor's answer."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from crestcut.floor import Levelling
from crestcut.report.exchange.mesh import PLY_NAME, write_depth_ply
from crestcut.report.pictures.floor_plan import PLAN_NAME, draw_floor_plan
from crestcut.report.sheets.floor import write_floor_sheets
from crestcut.report.view.floor_report import FloorReport
from crestcut.report.view.floor_result import FLOOR_NAME, write_floor_json
from crestcut.scan import Scan
from crestcut.study import Identity
from crestcut.terrain import Surface


@dataclass(frozen=True, eq=False)
class _MeshOf:
    """What the mesh of a depth is written from."""

    surface: Surface
    scan: Scan
    plan: Levelling
    identity: Identity


def write_floor(report: FloorReport, folder: Path) -> None:
    """``depth_to_remove.ply``, ``floor_plan.png``, ``floor_sheets.pdf`` and ``floor.json`` in ``folder``."""
    judged = report.judged
    mesh = _MeshOf(judged.surface, report.scan, judged.levelling, report.identity)
    write_depth_ply(mesh, folder / PLY_NAME)
    draw_floor_plan(report, folder / PLAN_NAME)
    write_floor_sheets(report, folder)
    write_floor_json(report, folder / FLOOR_NAME)
