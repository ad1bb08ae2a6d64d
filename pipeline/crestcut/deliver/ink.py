"""How every drawing looks: paper, inks, heads, stamps, scale bars. matplotlib loads when it must."""

from __future__ import annotations

import math
import textwrap
from pathlib import Path
from typing import TYPE_CHECKING, Any

from crestcut.deliver.report import Report
from crestcut.units import FOOT

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure

PAGE_WIDTH = 11.69  # in: A4 on its side; a letter page shrinks it by 6 %
MARGIN = 0.45  # in
DPI = 160
INK, SOFT, FAINT, PALE = "#1b1a19", "#5d5b58", "#a19e99", "#f4f2ee"
BODY: dict[str, Any] = {"fontsize": 8.0, "color": INK}
SMALL: dict[str, Any] = {"fontsize": 7.0, "color": INK}
STYLE: Any = {"font.family": "DejaVu Sans", "hatch.linewidth": 0.5, "axes.linewidth": 0.8}


def new_figure(height: float, width: float = PAGE_WIDTH) -> Figure:
    """An empty page in inches, drawn without a display."""
    from matplotlib.backends.backend_agg import FigureCanvasAgg
    from matplotlib.figure import Figure

    figure = Figure(figsize=(width, height), dpi=DPI, facecolor="white")
    FigureCanvasAgg(figure)
    return figure


def axes_at(figure: Figure, left: float, bottom: float, width: float, height: float) -> Axes:
    """Axes placed in inches from the lower left corner of the page."""
    w, h = figure.get_size_inches()
    return figure.add_axes((left / w, bottom / h, width / w, height / h))


def text_at(figure: Figure, left: float, bottom: float, text: str, **style: Any) -> None:
    """Text placed in inches from the lower left corner of the page."""
    w, h = figure.get_size_inches()
    figure.text(left / w, bottom / h, text, **{**BODY, **style})


def save(figure: Figure, path: Path) -> None:
    """Write a PNG that holds nothing but the picture: same input, same bytes."""
    figure.savefig(path, dpi=DPI, format="png", metadata={"Software": None}, pil_kwargs={"compress_level": 3})


def halo(width: float = 1.8) -> list[Any]:
    """A white rim that keeps a line or a letter readable on any ground."""
    from matplotlib.patheffects import withStroke

    return [withStroke(linewidth=width, foreground="white")]


def _head_lines(report: Report, words: str) -> list[str]:
    return textwrap.wrap(words, 112 if report.release != "ok" else 165)[:5]


def head_room(report: Report, words: str) -> float:
    """Height that ``head`` takes, with a title line for the first picture, inches."""
    lines = max(len(_head_lines(report, words)), 3 if report.release != "ok" else 1)
    return 1.0 + 0.135 * lines


def head(figure: Figure, report: Report, drawing: str, words: str) -> None:
    """Title, what is drawn, and the verdict. A stamp stands at the right unless the release is ok."""
    height = float(figure.get_size_inches()[1])
    text_at(figure, MARGIN, height - 0.40, report.title, fontsize=14, fontweight="bold")
    text_at(figure, MARGIN, height - 0.59, drawing, fontsize=8.5, color=SOFT)
    lines = "\n".join(_head_lines(report, words))
    text_at(figure, MARGIN, height - 0.66, lines, fontsize=8.0, va="top", linespacing=1.2)
    if report.release != "ok":
        _stamp(figure, report)


def _stamp(figure: Figure, report: Report) -> None:
    width, height = (float(v) for v in figure.get_size_inches())
    box = {"boxstyle": "square,pad=0.35", "facecolor": "white", "edgecolor": INK, "linewidth": 2.0}
    figure.text(
        (width - MARGIN - 0.08) / width, (height - 0.34) / height, report.release.upper(),
        ha="right", va="center", fontsize=15, fontweight="bold", color=INK, bbox=box,
    )  # fmt: skip
    reasons = [textwrap.shorten(reason, 62, placeholder=" ...") for reason in report.release_reasons]
    more = len(reasons) - 3
    shown = reasons[:3] if more <= 0 else [*reasons[:2], f"and {more + 1} more reasons: see the summary"]
    figure.text(
        (width - MARGIN) / width, (height - 0.58) / height, "\n".join(shown),
        ha="right", va="top", fontsize=6.8, color=INK, linespacing=1.2,
    )  # fmt: skip


def watermark(axes: Axes, report: Report) -> None:
    """The release state across the drawing itself, so that a cropped picture still says it."""
    if report.release == "ok":
        return
    tall = axes.get_position().height * float(axes.figure.get_size_inches()[1])  # type: ignore[union-attr]
    axes.text(
        0.5, 0.5, report.release.upper(), transform=axes.transAxes, ha="center", va="center", rotation=12,
        fontsize=min(34.0, 24 * tall), fontweight="bold", color=INK, alpha=0.16, zorder=20, clip_on=True,
    )  # fmt: skip


def foot(figure: Figure, report: Report) -> None:
    """Where it came from and what it is not; 0.3 in from the bottom."""
    files = ", ".join(f.path.name for f in report.scan.files)
    job = report.job.path.name
    source = f"scan {files} | vehicle {report.vehicle.name} | job {job} | crestcut {report.version}"
    text_at(figure, MARGIN, 0.2, textwrap.shorten(source, 120, placeholder=" ..."), fontsize=6.8, color=SOFT)
    width = float(figure.get_size_inches()[0])
    text_at(
        figure,
        width - MARGIN,
        0.2,
        "Not field-proved: check with the vehicle.",
        fontsize=6.8,
        color=SOFT,
        ha="right",
    )


def nice_step(span: float, parts: int) -> float:
    """1, 2 or 5 times a power of ten, so that ``span`` has at most ``parts`` of it."""
    rough = span / max(parts, 1)
    power = 10.0 ** math.floor(math.log10(rough))
    return next(power * m for m in (1, 2, 5, 10) if power * m >= rough * (1 - 1e-9))


def decimals_for(step: float) -> int:
    """Decimals that a multiple of ``step`` needs."""
    return max(0, -math.floor(math.log10(step) + 1e-9))


def scale_bar(figure: Figure, right: float, bottom: float, metres_per_inch: float) -> None:
    """Metres with feet beneath them, true for this page; its right end and base are placed in inches."""
    length = nice_step(1.9 * metres_per_inch, 1) / 2
    length = next(m for m in (5, 2, 1) if m * length / metres_per_inch <= 3.4 or m == 1) * length
    feet = nice_step(length / FOOT, 1) / 2
    width = length / metres_per_inch
    axes = axes_at(figure, right - width - 0.42, bottom, width + 0.42, 0.24)
    axes.set_xlim(0, (width + 0.42) * metres_per_inch)
    axes.set_ylim(0, 0.24)
    axes.set_axis_off()
    for k in range(4):
        axes.add_patch(_box(k * length / 4, 0.14, length / 4, 0.05, INK if k % 2 == 0 else "white"))
    axes.plot([0, 0, feet * FOOT, feet * FOOT], [0.11, 0.06, 0.06, 0.11], color=INK, lw=0.8)
    axes.text(length + 0.05 * metres_per_inch, 0.165, f"{length:g} m", va="center", **SMALL)
    axes.text(feet * FOOT + 0.05 * metres_per_inch, 0.05, f"{feet:g} ft", va="center", **SMALL)


def _box(x: float, y: float, width: float, height: float, colour: str) -> Any:
    from matplotlib.patches import Rectangle

    return Rectangle((x, y), width, height, facecolor=colour, edgecolor=INK, linewidth=0.6)


def axes_width(axes: Axes) -> float:
    """Width of the axes on paper, inches."""
    return float(axes.get_position().width * axes.figure.get_size_inches()[0])  # type: ignore[union-attr]
