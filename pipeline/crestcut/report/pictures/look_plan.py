"""The plan picture of a scan: seen from above in colour or relief, holes hatched, with its own coordinates
round it."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Any

import numpy as np
from numpy.typing import NDArray

from crestcut.base.errors import visible
from crestcut.base.grid import BoolArray, FloatArray
from crestcut.base.units import FOOT
from crestcut.report.words.look_grade import grade
from crestcut.scan import HEADROOM, Health, Scan, near_ground
from crestcut.study import scan_identity

if TYPE_CHECKING:
    from matplotlib.axes import Axes

_PIXELS = 700  # cells along the longer side at most
_FINEST = 0.010  # m
_LIGHT = np.array([-0.5, 0.5, 1.0]) / np.sqrt(1.5)  # from the upper left, as maps are lit
_GENTLE = 0.30  # rise over run: steeper is the side of a thing
_RELIEF = 3.0  # slopes are steepened this much for the shading only
_BRIGHT = 170.0  # of 255: the 90th percentile of colours is lifted to this
_PAPER = (1.0, 1.0, 1.0)
_INK = "#2b2b2b"
_NUMBERED = 5  # holes that get their number, as the words do


def draw_plan(scan: Scan, health: Health, path: Path, scanner: str | None = None) -> None:
    """Write the picture as PNG. Axes are the scan's own plan coordinates in its own unit, z up."""
    import matplotlib

    matplotlib.use("Agg")
    from matplotlib.figure import Figure

    cell, x0, y0, image, height = _picture(scan, health)
    ny, nx = height.shape
    low, high = scan.frame.site_to_plan((x0, y0)), scan.frame.site_to_plan((x0 + nx * cell, y0 + ny * cell))
    width = 10.0
    tall = float(np.clip(width * 0.94 * ny / nx + 1.35, 3.2, 13.0))
    figure = Figure(figsize=(width, tall), dpi=130, layout="constrained", facecolor=_PAPER)
    axes = figure.add_subplot()
    box = (low[0], high[0], low[1], high[1])
    axes.imshow(image, origin="lower", extent=box, interpolation="nearest", zorder=1)
    axes.set_aspect(float(scan.frame.plan_scale[1] / scan.frame.plan_scale[0]))
    _contours(axes, height, cell, box)
    _hatch_holes(axes, scan, health)
    _dress(axes, scan, box)
    _scale_bar(axes, scan, box)
    _title(axes, scan, health, scanner)
    figure.savefig(path, metadata=scan_identity(scan).png())


def _picture(scan: Scan, health: Health) -> tuple[float, float, float, NDArray[np.uint8], FloatArray]:
    """(cell, x and y of the lower left corner, picture (ny, nx, 3), heights (ny, nx)), site metres."""
    points = scan.points
    low, high = np.percentile(points[:, :2], [0.1, 99.9], axis=0)
    keep = np.all((points[:, :2] >= low) & (points[:, :2] <= high), axis=1) & near_ground(points)
    cell = max(
        _FINEST, float((high - low).max()) / _PIXELS, float(np.sqrt(3.0 / max(health.density_median, 1e-9)))
    )
    nx, ny = (np.floor((high - low) / cell).astype(int) + 1).tolist()
    i, j = np.floor((points[keep, :2] - low) / cell).astype(int).T
    flat = j * nx + i
    # Seen from above, below ceilings and trees: the highest point of each cell shows.
    height = np.full(nx * ny, -np.inf)
    np.maximum.at(height, flat, points[keep, 2])
    height[~np.isfinite(height)] = np.nan
    height = _bridge(height.reshape(ny, nx))
    shade = _shade(height, cell)
    if scan.colours is None:
        colour: FloatArray = np.full((ny, nx, 3), 205.0)
    else:
        colour = _mean_colour(scan.colours[keep].astype(float), flat, (ny, nx))
        # A scan taken in a dark place is lifted, so that lines and numbers stand out on it.
        colour = colour * np.clip(_BRIGHT / max(float(np.percentile(colour, 90.0)), 1.0), 1.0, 3.0)
    image = np.where(np.isnan(height)[..., None], 255.0, colour * shade[..., None])
    return cell, float(low[0]), float(low[1]), np.clip(image, 0, 255).astype(np.uint8), height


def _bridge(height: FloatArray) -> FloatArray:
    """Single empty cells take the mean of their neighbours, for the picture only: pepper is not a hole."""
    from scipy.ndimage import uniform_filter

    known = ~np.isnan(height)
    share = uniform_filter(known.astype(float), 3, mode="constant")
    mean = uniform_filter(np.where(known, height, 0.0), 3, mode="constant") / np.maximum(share, 1e-9)
    return np.where(known, height, np.where(share > 0.4, mean, np.nan))


def _mean_colour(colours: FloatArray, flat: NDArray, shape: tuple[int, int]) -> FloatArray:
    """Mean colour (ny, nx, 3) 0..255 of each cell; empty cells take their neighbours'."""
    from scipy.ndimage import distance_transform_edt

    count = np.bincount(flat, minlength=shape[0] * shape[1])
    total = np.stack([np.bincount(flat, colours[:, k], shape[0] * shape[1]) for k in range(3)], axis=1)
    mean = (total / np.maximum(count, 1)[:, None]).reshape(*shape, 3)
    index = distance_transform_edt((count == 0).reshape(shape), return_distances=False, return_indices=True)
    return np.asarray(mean[tuple(index)])


def _shade(height: FloatArray, cell: float) -> FloatArray:
    """Brightness (ny, nx) about 1 of a surface lit from the upper left; smoothed, so that noise does not
    sparkle."""
    from scipy.ndimage import gaussian_filter

    known = ~np.isnan(height)
    spread = max(0.03 / cell, 1.0)
    weight = gaussian_filter(known.astype(float), spread)
    smooth = gaussian_filter(np.where(known, height - np.nanmedian(height), 0.0), spread) / np.maximum(
        weight, 1e-6
    )
    dy, dx = np.gradient(smooth, cell)
    normal = np.stack([-dx * _RELIEF, -dy * _RELIEF, np.ones_like(dx)], axis=-1)
    normal /= np.linalg.norm(normal, axis=-1, keepdims=True)
    return np.asarray(np.clip(0.45 + 0.65 * np.clip(normal @ _LIGHT, 0.0, 1.0) / _LIGHT[2], 0.3, 1.25))


def _contours(axes: Axes, height: FloatArray, cell: float, box: tuple[float, ...]) -> None:
    """Numbered height lines over the gentle ground; round what stands on it they would only scribble."""
    from scipy.ndimage import binary_dilation, gaussian_filter

    known = ~np.isnan(height)
    spread = max(0.06 / cell, 1.5)
    weight = gaussian_filter(known.astype(float), spread)
    base = np.nanmedian(height)
    smooth = gaussian_filter(np.where(known, height - base, 0.0), spread) / np.maximum(weight, 1e-6)
    steep = np.hypot(*np.gradient(smooth, cell)) > _GENTLE
    gentle = known & (weight > 0.7) & ~binary_dilation(steep, iterations=max(1, round(0.05 / cell)))
    if gentle.sum() < 50:
        return
    bottom, top = np.percentile(smooth[gentle], [1.0, 95.0])
    step = _round_step((top - bottom) / 8.0, least=0.01)
    levels = np.arange(1, np.floor((top - bottom) / step) + 1) * step
    if len(levels) == 0:
        return
    ny, nx = height.shape
    x = box[0] + (np.arange(nx) + 0.5) * (box[1] - box[0]) / nx
    y = box[2] + (np.arange(ny) + 0.5) * (box[3] - box[2]) / ny
    over = np.where(gentle, smooth - bottom, np.nan)
    lines = axes.contour(x, y, over, levels=levels, colors="#14304f", linewidths=0.8, zorder=3)
    for text in axes.clabel(lines, fontsize=7, fmt=_height_label, inline=True):
        text.set_bbox({"facecolor": "white", "edgecolor": "none", "alpha": 0.65, "pad": 0.6})


def _height_label(height: float) -> str:
    return f"{height * 1000:.0f}" if height < 1.0 else f"{height:.1f} m"


def _round_step(wanted: float, least: float) -> float:
    """The next of 1, 2, 5 times a power of ten at or above ``wanted``."""
    wanted = max(wanted, least)
    power = 10.0 ** np.floor(np.log10(wanted))
    return float(next(f * power for f in (1.0, 2.0, 5.0, 10.0) if f * power >= wanted * (1 - 1e-9)))


def _hatch_holes(axes: Axes, scan: Scan, health: Health) -> None:
    mask: BoolArray = health.hole_mask
    if not mask.any():
        return
    frame = health.hole_frame
    x, y = (
        (frame.origin[k] + np.arange(-1, mask.shape[1 - k] + 1) * frame.cell + scan.frame.shift[k])
        / scan.frame.plan_scale[k]
        for k in (0, 1)
    )
    padded = np.pad(mask.astype(float), 1)
    axes.contourf(x, y, padded, levels=[0.5, 1.5], colors=["#ffffff"], alpha=0.55, zorder=4)
    axes.contourf(x, y, padded, levels=[0.5, 1.5], colors="none", hatches=["////"], zorder=5)
    axes.contour(x, y, padded, levels=[0.5], colors=[_INK], linewidths=0.9, zorder=5)
    for number, hole in enumerate(health.holes[:_NUMBERED], 1):
        at = scan.frame.site_to_plan((hole.x, hole.y))
        axes.text(
            at[0],
            at[1],
            str(number),
            ha="center",
            va="center",
            fontsize=9,
            weight="bold",
            color=_INK,
            zorder=8,
            bbox={"boxstyle": "circle,pad=0.25", "facecolor": "white", "edgecolor": _INK, "linewidth": 0.8},
        )


def _dress(axes: Axes, scan: Scan, box: tuple[float, ...]) -> None:
    """Coordinate grid and axis names."""
    from matplotlib.ticker import MultipleLocator, ScalarFormatter

    step = _round_step(max(box[1] - box[0], box[3] - box[2]) / 12.0, least=0.0 + 1e-6)
    for axis in (axes.xaxis, axes.yaxis):
        axis.set_major_locator(MultipleLocator(step))
        plain = ScalarFormatter(useOffset=False)
        plain.set_scientific(False)
        axis.set_major_formatter(plain)
    axes.grid(True, color="white", linewidth=1.4, alpha=0.45, zorder=2)
    axes.grid(True, which="major", color=_INK, linewidth=0.4, alpha=0.5, zorder=2)
    axes.set_axisbelow(False)
    names = _axis_names(scan.frame.up)
    axes.set_xlabel(f"{names[0]}  [{scan.frame.unit}]", color=_INK)
    axes.set_ylabel(f"{names[1]}  [{scan.frame.unit}]", color=_INK)
    axes.tick_params(labelsize=8, colors=_INK)
    if max(abs(v) for v in box) >= 1e5:
        axes.tick_params(axis="x", labelrotation=30)
    axes.set_xlim(box[0], box[1])
    axes.set_ylim(box[2], box[3])


def _axis_names(up: str) -> tuple[str, str]:
    """What the plan axes are called: the file's own axes where its z is up, else named after the turn."""
    turned: dict[str, tuple[str, str]] = {
        "z": ("x", "y"), "-z": ("x", "minus y"), "y": ("x", "minus z"), "-y": ("x", "z"),
        "x": ("y", "z"), "-x": ("z", "y"),
    }  # fmt: skip
    if up == "z":
        return turned[up]
    return f"x of the plan (the file's {turned[up][0]})", f"y of the plan (the file's {turned[up][1]})"


def _scale_bar(axes: Axes, scan: Scan, box: tuple[float, ...]) -> None:
    """A bar of round metres, feet beside it, over the upper right corner where it hides nothing."""
    from matplotlib.lines import Line2D
    from matplotlib.transforms import ScaledTranslation

    across = (box[1] - box[0]) * float(scan.frame.plan_scale[0])
    length = _round_step(across / 8.0, least=0.1)
    share = length / across
    above = axes.transAxes + ScaledTranslation(0, 7 / 72, axes.figure.dpi_scale_trans)
    style: dict[str, Any] = {"transform": above, "clip_on": False, "solid_capstyle": "butt"}
    axes.add_artist(Line2D([1.0 - share, 1.0], [1, 1], color=_INK, lw=5.5, **style))
    for k in (1, 3):
        quarter = [1.0 - share * (4 - k) / 4, 1.0 - share * (3 - k) / 4]
        axes.add_artist(Line2D(quarter, [1, 1], color="white", lw=4.0, **style))
    text = f"{length:g} m  ({length / FOOT:.1f} ft)"
    at: dict[str, Any] = {
        "xycoords": "axes fraction",
        "textcoords": "offset points",
        "ha": "center",
        "va": "bottom",
    }
    axes.annotate(text, (1.0 - share / 2, 1), (0, 12), fontsize=8.5, color=_INK, **at)


def _title(axes: Axes, scan: Scan, health: Health, scanner: str | None) -> None:
    names = visible(", ".join(f.path.name for f in scan.files))
    title = f"{names}, seen from above"
    axes.set_title(title, loc="left", fontsize=12, color=_INK, pad=37, parse_math=False)
    holes = f"{len(health.holes)} holes hatched" if health.holes else "no holes"
    shown = "colour and relief" if scan.colours is not None else "relief"
    text = f"{shown} up to {HEADROOM:g} m over the ground · height lines in mm over the lowest · {holes}"
    worth = "{}: {}".format(*grade(scan, health, scanner))
    style: dict[str, Any] = {"xycoords": "axes fraction", "textcoords": "offset points", "va": "bottom"}
    for line, rise, weight in ((worth, 20.0, "bold"), (text, 6.0, "normal")):
        axes.annotate(line, (0, 1), (0, rise), fontsize=8.5, fontweight=weight, color=_INK, **style)
