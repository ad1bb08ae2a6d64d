"""Both pictures of a job in one call, and what loads all that draws before there is anything to draw."""

from __future__ import annotations

import io
from dataclasses import replace
from pathlib import Path

from crestcut.report.pictures import ink
from crestcut.report.pictures.plan import draw_plan
from crestcut.report.pictures.profile import draw_profile
from crestcut.study import Report


def light(report: Report) -> Report:
    """The report without what no picture shows, two thirds of its weight: it has to be handed over."""
    scan = replace(
        report.scan,
        points=report.scan.points[:0],
        source=report.scan.source[:0],
        pass_of=report.scan.source[:0],
        colours=None,
        time=None,
    )
    plan = report.plan
    if plan is not None:
        plan = replace(plan, after=replace(plan.after, lowest={}, pair_gap=None))
    return replace(report, scan=scan, before=replace(report.before, pair_gap=None), plan=plan)


def draw_pictures(report: Report, folder: Path) -> None:
    """Write ``plan.png`` and ``profile.png`` into ``folder``."""
    draw_plan(report, folder / "plan.png")
    draw_profile(report, folder / "profile.png")


def warm_up() -> None:
    """Draw a page for nobody, so that the first real one finds libraries, fonts and canvases at hand."""
    import ezdxf  # noqa: F401
    import matplotlib
    import trimesh  # noqa: F401
    from matplotlib.backends.backend_pdf import PdfPages

    from crestcut.report.sheets import all_sheets as sheets  # noqa: F401

    with matplotlib.rc_context(ink.STYLE):
        figure = ink.new_figure(1.0, 1.0)
        axes = ink.axes_at(figure, 0.2, 0.2, 0.6, 0.6)
        axes.contour([[0.0, 1.0], [0.0, 1.0]], levels=[0.5])
        for weight in ("normal", "bold"):
            ink.text_at(figure, 0.1, 0.1, "warm", fontweight=weight)
        ink.text_at(figure, 0.1, 0.1, "warm", family="DejaVu Sans Mono", path_effects=ink.halo())
        figure.savefig(io.BytesIO(), format="png")
        with PdfPages(io.BytesIO()) as pdf:
            pdf.savefig(figure)
