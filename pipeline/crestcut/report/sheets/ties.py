"""Places and lengths as the cells of a table: names, tapes, and one unit a column.

Where tapes and timber are in inches a sheet is in inches, elsewhere in metres and millimetres; never both in
one column.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from crestcut.base.units import FOOT, INCH, inches, number
from crestcut.work import Ties

if TYPE_CHECKING:
    from matplotlib.axes import Axes

LINE = "line"  # in place of a mark's name: by tape along the chalked line of travel and squarely off it
DRILL = 64  # parts of an inch: a dot is ground to, so a coarser stop would leave or take too much


def far(length: float, metric: bool = True, decimals: int = 3) -> str:
    """Along a tape: "3.217" m, or "126 11/16" in; to 1 mm or 1/16 in, of two decimals to 10 mm or 1/8 in."""
    if metric:
        return f"{length:.{decimals}f}"
    return inches(length, 16 if decimals > 2 else 8).removesuffix(" in")


def side(length: float, metric: bool = True, decimals: int = 3) -> str:
    """Left of the line (plus) or right of it."""
    text = far(length, metric, decimals)
    return text if text.startswith("-") or float(length) <= 0 else f"+{text}"


def deep(length: float, metric: bool = True) -> str:
    """A depth or a height: "22.0" mm, or "55/64" in."""
    return f"{length * 1000:.1f}" if metric else inches(length, DRILL).removesuffix(" in")


def unit(metric: bool = True, small: bool = False) -> str:
    """Of ``far`` and ``side``; small: of ``deep``."""
    return "in" if not metric else "mm" if small else "m"


def long_words(length: float, metric: bool = True) -> str:
    """ "0.85 m", or "33 1/2 in"; in running text."""
    return f"{far(length, metric, 2)} {unit(metric)}"


def area_words(area: float, metric: bool = True) -> str:
    """ "0.96 m2", or "10.3 ft2"."""
    return f"{number(area)} m2" if metric else f"{number(area / FOOT**2)} ft2"


def tie_cells(ties: Ties | None, blank: str = "-", metric: bool = True) -> list[str]:
    """Two tapes as five cells: mark, tape, mark, tape, side. Where no marks cross well the place goes by the
    chalked line: ``blank``, "line" on paper.
    """
    if ties is None:
        return [LINE, *[blank] * 4] if blank == "-" else [blank] * 5
    first, second = (far(d, metric) for d in (ties.first_distance, ties.second_distance))
    return [ties.first, first, ties.second, second, ties.side]


def tie_heads(metric: bool) -> list[str]:
    """Of the columns of ``tie_cells``."""
    return ["from|", f"tape|{unit(metric)}", "and from|", f"tape|{unit(metric)}", "side of|the two"]


def tie_widths(metric: bool) -> list[int]:
    """Of the columns of ``tie_cells``, in characters."""
    return [7, 9, 10, 9, 10] if metric else [7, 11, 10, 11, 10]


def name_axes(axes: Axes, station: str, metric: bool) -> None:
    """What the axes of a drawing from above hold: along the line and left of it, in the sheet's own unit."""
    from matplotlib.ticker import FuncFormatter, MultipleLocator

    axes.set_xlabel(f"{station} along the line, {unit(metric)}", fontsize=8)
    axes.set_ylabel(f"offset, left +, {unit(metric)}", fontsize=8)
    axes.tick_params(labelsize=8)
    if metric:
        return
    for axis, ends in ((axes.xaxis, axes.get_xlim()), (axes.yaxis, axes.get_ylim())):
        span = abs(ends[1] - ends[0])
        axis.set_major_locator(
            MultipleLocator(
                next((s for s in (0.5 * FOOT, FOOT, 2 * FOOT, 4 * FOOT) if span < 9 * s), 8 * FOOT)
            )
        )
        axis.set_major_formatter(FuncFormatter(lambda v, _: f"{v / INCH:.0f}"))
