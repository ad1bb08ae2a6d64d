"""How every drawing looks: paper, inks, heads, stamps, scale bars. matplotlib loads when it must."""

from __future__ import annotations

import math
import re
import textwrap
from collections.abc import Iterator, Sequence
from contextlib import AbstractContextManager, contextmanager
from pathlib import Path
from typing import TYPE_CHECKING, Any

import numpy as np

from crestcut.base.errors import visible
from crestcut.base.grid import FloatArray
from crestcut.base.language import ENGLISH, here, say
from crestcut.base.units import FOOT
from crestcut.study import Identity

if TYPE_CHECKING:  # a report's own imports take seconds, and a vehicle's drawing has none
    from matplotlib.axes import Axes
    from matplotlib.backends.backend_pdf import PdfPages
    from matplotlib.figure import Figure

    from crestcut.study import Report

PAGE_WIDTH = 11.69  # in: A4 on its side; a letter page shrinks it by 6 %
MARGIN = 0.45  # in
DPI = 160
STAMP_LINES = 4
INK, SOFT, FAINT, PALE = "#1b1a19", "#5d5b58", "#a19e99", "#f4f2ee"
BODY: dict[str, Any] = {"fontsize": 8.0, "color": INK}
SMALL: dict[str, Any] = {"fontsize": 7.0, "color": INK}
Sign = tuple[str, str, dict[str, Any]]  # line, marker or patch; its words; its style
STYLE: Any = {
    "font.family": "DejaVu Sans", "hatch.linewidth": 0.5, "axes.linewidth": 0.8,
    "text.hinting": "none", "text.parse_math": False,  # a name with two dollar signs is a name
}  # fmt: skip


def styled(more: Any = None) -> AbstractContextManager[None]:
    """Within it pages and pictures are made and written: matplotlib's settings are ``STYLE`` and ``more``."""
    from matplotlib import rc_context

    return rc_context({**STYLE, **(more or {})})


@contextmanager
def book(path: Path, about: Identity, more: Any = None) -> Iterator[PdfPages]:
    """A PDF to add pages to, which are made within it, ``styled``. Same pages, same bytes."""
    from matplotlib.backends.backend_pdf import PdfPages

    class Book(PdfPages):
        def savefig(self, figure: Any = None, **named: Any) -> None:
            in_language(figure)
            super().savefig(figure, **named)

    with styled(more), Book(path, metadata=about.pdf()) as pdf:
        yield pdf


def in_language(figure: Figure) -> None:
    """Every text of a page or picture that is not yet in the language it is made in."""
    from matplotlib.text import Text

    words = here()
    if words.language == ENGLISH:
        return
    for text in figure.findobj(Text):
        assert isinstance(text, Text)
        if text.get_text().strip() and not getattr(text, "said", False):
            text.set_text(words.say(text.get_text()))


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


def paper(figure: Figure) -> Axes:
    """Axes in inches over the whole page, under all others: keys, bars and rules of the page itself."""
    width, height = (float(v) for v in figure.get_size_inches())
    axes = figure.add_axes((0.0, 0.0, 1.0, 1.0), zorder=-1, xlim=(0.0, width), ylim=(0.0, height))
    axes.set_autoscale_on(False)
    axes.set_axis_off()
    return axes


def save(figure: Figure, path: Path, about: Identity) -> None:
    """Write a PNG that holds the picture and, as text, what it says of itself: same input, same
    bytes."""
    from PIL import Image
    from PIL.PngImagePlugin import PngInfo

    in_language(figure)
    canvas: Any = figure.canvas
    canvas.draw()
    # Straight from the canvas: without its opacity, and packed lightly, a page is written in half the time.
    picture = Image.frombuffer("RGBA", canvas.get_width_height(), canvas.buffer_rgba(), "raw", "RGBA", 0, 1)
    told = PngInfo()
    for keyword, text in about.png().items():
        told.add_text(keyword, text)
    picture.convert("RGB").save(path, "png", compress_level=1, dpi=(DPI, DPI), pnginfo=told)


def line(axes: Axes, xy: FloatArray, effects: Any = None, **style: Any) -> None:
    """A polyline (n, 2) in data coordinates. ``axes.plot`` would do, at five times the cost."""
    from matplotlib.lines import Line2D

    drawn = Line2D(xy[:, 0], xy[:, 1], **{"color": INK, "path_effects": effects, **style})
    axes.add_artist(drawn)


def strokes(axes: Axes, runs: Sequence[FloatArray], effects: Any = None, **style: Any) -> None:
    """Many polylines of one style."""
    from matplotlib.collections import LineCollection

    axes.add_collection(LineCollection(runs, path_effects=effects, **style), autolim=False)


def halo(width: float = 1.8) -> list[Any]:
    """A white rim that keeps a line or a letter readable on any ground."""
    from matplotlib.patheffects import withStroke

    return [withStroke(linewidth=width, foreground="white")]


def _head_lines(report: Report, words: str) -> list[str]:
    room = 112 if report.stamp else 165
    return textwrap.wrap(words, room, max_lines=6, placeholder=" ...")


def head_room(report: Report, words: str) -> float:
    """Height that ``head`` takes, with a title line for the first picture, inches."""
    stamp = len(_reasons(report)) if report.stamp else 1
    lines = max(len(_head_lines(report, words)), stamp)
    return 1.0 + 0.135 * lines


def head(figure: Figure, report: Report, drawing: str, words: str) -> None:
    """Title, what is drawn, and the verdict. A stamp stands at the right unless it is released; where nothing
    is to be cut there is nothing to release, and that is said there instead, or that it is not sure."""
    height = float(figure.get_size_inches()[1])
    text_at(figure, MARGIN, height - 0.40, report.identity.job, fontsize=14, fontweight="bold")
    text_at(figure, MARGIN, height - 0.59, drawing, fontsize=8.5, color=SOFT)
    lines = "\n".join(_head_lines(report, words))
    text_at(figure, MARGIN, height - 0.66, lines, fontsize=8.0, va="top", linespacing=1.2)
    if report.stamp:
        _stamp(figure, report)
    elif report.nothing_planned:
        right = float(figure.get_size_inches()[0]) - MARGIN
        said = "Nothing shown as short; not sure" if report.unsure else "Nothing to cut"
        text_at(figure, right, height - 0.40, said, fontsize=14, ha="right", color=SOFT)


def _reasons(report: Report) -> list[str]:
    """As many of the reasons for the stamp as fit beside the verdict."""
    shown: list[str] = []
    for k, reason in enumerate(report.release_reasons):
        lines = wrapped([reason.words], 62).split("\n")
        more = len(report.release_reasons) - k
        if len(shown) + len(lines) > STAMP_LINES - (more > 1):
            shown.append(f"and {more} more: see the summary" if k else textwrap.shorten(reason.words, 62))
            break
        shown += lines
    return shown


def _stamp(figure: Figure, report: Report) -> None:
    width, height = (float(v) for v in figure.get_size_inches())
    box = {"boxstyle": "square,pad=0.35", "facecolor": "white", "edgecolor": INK, "linewidth": 2.0}
    figure.text(
        (width - MARGIN - 0.08) / width, (height - 0.34) / height, report.stamp,
        ha="right", va="center", fontsize=15, fontweight="bold", color=INK, bbox=box,
    )  # fmt: skip
    figure.text(
        (width - MARGIN) / width, (height - 0.58) / height, "\n".join(_reasons(report)),
        ha="right", va="top", fontsize=6.8, color=INK, linespacing=1.2,
    )  # fmt: skip


def watermark(axes: Axes, report: Report) -> None:
    """The release state across the drawing itself, so that a cropped picture still says it."""
    if not report.stamp:
        return
    wide, tall = axes_size(axes)
    size = min(34.0, 24 * tall, 95 * wide / len(report.stamp))  # the whole of it in a narrow map too
    axes.text(
        0.5, 0.5, report.stamp, transform=axes.transAxes, ha="center", va="center", rotation=12,
        fontsize=size, fontweight="bold", color=INK, alpha=0.14, zorder=20, clip_on=True,
    )  # fmt: skip


def foot(figure: Figure, report: Report) -> None:
    """Where it came from and what it is not; 0.3 in from the bottom."""
    files = visible(", ".join(f.path.name for f in report.scan.files))
    job = visible(f"{report.job.path.name}, {report.job.date_words}")
    source = f"scan {files} | vehicle {report.vehicle.name} | job {job} | crestcut {report.version}"
    text_at(figure, MARGIN, 0.2, textwrap.shorten(source, 150, placeholder=" ..."), fontsize=6.8, color=SOFT)
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


def scale_bar(
    page: Axes, right: float, bottom: float, metres_per_inch: float, most: float = 3.4
) -> tuple[float, float]:
    """Metres with feet beneath them on the page's ``paper``; its right end and base in inches, and how long
    it may be, where there is less room.

    Returns how many metres and feet the two bars are long.
    """
    from matplotlib.patches import Rectangle

    length = nice_step(min(1.9, 0.6 * most) * metres_per_inch, 1) / 2
    length = next(m for m in (5, 2, 1) if m * length / metres_per_inch <= most or m == 1) * length
    feet = nice_step(length / FOOT, 1) / 2
    wide, wide_ft = length / metres_per_inch, feet * FOOT / metres_per_inch
    left = right - wide - 0.42
    for k in range(4):
        face = INK if k % 2 == 0 else "white"
        quarter = (left + k * wide / 4, bottom + 0.14)
        page.add_artist(Rectangle(quarter, wide / 4, 0.05, facecolor=face, edgecolor=INK, linewidth=0.6))
    foot_line = [(0, 0.11), (0, 0.06), (wide_ft, 0.06), (wide_ft, 0.11)]
    line(page, np.array(foot_line) + np.array([left, bottom]), lw=0.8)
    page.text(left + wide + 0.05, bottom + 0.165, f"{length:g} m", va="center", **SMALL)
    page.text(left + wide_ft + 0.05, bottom + 0.05, f"{feet:g} ft", va="center", **SMALL)
    return length, feet


def key(page: Axes, left: float, top: float, signs: Sequence[Sign], columns: int, width: float) -> float:
    """What the signs mean, in columns from the top left, inches on the page's ``paper``; returns its foot."""
    from matplotlib.lines import Line2D
    from matplotlib.patches import Rectangle

    rows = -(-len(signs) // columns)
    for k, (kind, words, style) in enumerate(signs):
        x, y = left + (k // rows) * width / columns, top - 0.08 - 0.165 * (k % rows)
        if kind == "line":
            page.add_artist(Line2D([x, x + 0.3], [y, y], **style))
        elif kind == "marker":
            page.add_artist(Line2D([x + 0.15], [y], ls="none", **style))
        else:
            page.add_artist(Rectangle((x, y - 0.045), 0.3, 0.09, **style))
        page.text(x + 0.38, y - 0.005, words, va="center", **{**SMALL, "fontsize": 7.2})
    return top - 0.165 * rows


def wrapped(facts: Sequence[str], width: int = 50) -> str:
    """Facts as lines of at most ``width`` characters; a length keeps its inches beside it."""
    lines = []
    for fact in facts:
        tied = re.sub(r" (?=%|(mm|in|ft|m|kg|litres)\b)|(?<=\d) (?=\d+/)|(?<=mm) (?=\()", "\u00a0", say(fact))
        lines += textwrap.wrap(tied, width, subsequent_indent="  ")
    return "\n".join(lines).replace("\u00a0", " ")


def axes_size(axes: Axes) -> tuple[float, float]:
    """Width and height of the axes on paper, inches."""
    box, page = axes.get_position(), axes.figure.get_size_inches()  # type: ignore[union-attr]
    return float(box.width * page[0]), float(box.height * page[1])
