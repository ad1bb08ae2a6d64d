"""The one colour ramp for depth: sequential, safe for colour-blind eyes, over neutral concrete grey.

It darkens evenly with depth, so it keeps its order in a black-and-white print and to an eye without red,
green or blue cones; the numbered contours carry the figures.
"""

from __future__ import annotations

from functools import cache
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import ArrayLike, NDArray

from crestcut.base.grid import FloatArray

if TYPE_CHECKING:
    from matplotlib.colors import ListedColormap

CONCRETE = (203, 202, 198)  # nothing to go: lighter than every depth
NOT_MEASURED = (246, 247, 249)  # drawn hatched wherever hatching is possible
DEPTH_ENDS = (
    (238, 176, 74),
    (203, 106, 66),
    (140, 50, 92),
    (45, 20, 78),
)  # sRGB knots: amber, clay, plum, night
STEPS = 256
SHALLOWEST = 0.00005  # m: less than this is not worth a colour

# Oklab, B. Ottosson, "A perceptual color space for image processing" (2020): linear sRGB -> cone response ->
# Lab.
_TO_CONES = np.array([
    [0.4122214708, 0.5363325363, 0.0514459929],
    [0.2119034982, 0.6806995451, 0.1073969566],
    [0.0883024619, 0.2817188376, 0.6299787005],
])  # fmt: skip
_TO_LAB = np.array([
    [0.2104542553, 0.7936177850, -0.0040720468],
    [1.9779984951, -2.4285922050, 0.4505937099],
    [0.0259040371, 0.7827717662, -0.8086757660],
])  # fmt: skip


def linear_from_srgb(rgb: ArrayLike) -> FloatArray:
    """sRGB 0..255 (..., 3) -> linear light 0..1 (IEC 61966-2-1)."""
    c = np.asarray(rgb, dtype=float) / 255.0
    return np.where(c <= 0.04045, c / 12.92, ((c + 0.055) / 1.055) ** 2.4)


def srgb_from_linear(linear: ArrayLike) -> NDArray[np.uint8]:
    """Linear light 0..1 (..., 3) -> sRGB 0..255 (IEC 61966-2-1)."""
    c = np.clip(np.asarray(linear, dtype=float), 0.0, 1.0)
    return np.rint(np.where(c <= 0.0031308, c * 12.92, 1.055 * c ** (1 / 2.4) - 0.055) * 255).astype(np.uint8)


@cache
def _ramp() -> NDArray[np.uint8]:
    """(STEPS, 3) sRGB, from the shallowest to the deepest cut, with lightness falling in even steps."""
    lab = np.cbrt(linear_from_srgb(DEPTH_ENDS) @ _TO_CONES.T) @ _TO_LAB.T
    lightness = np.linspace(lab[0, 0], lab[-1, 0], STEPS)
    # np.interp wants rising abscissae; lightness falls along the knots.
    hue = [np.interp(lightness[::-1], lab[::-1, 0], lab[::-1, k])[::-1] for k in (1, 2)]
    cones = (np.stack([lightness, *hue], axis=-1) @ np.linalg.inv(_TO_LAB).T) ** 3
    ramp = srgb_from_linear(cones @ np.linalg.inv(_TO_CONES).T)
    ramp.flags.writeable = False
    return ramp


def depth_colours(depth: ArrayLike, deepest: float) -> NDArray[np.uint8]:
    """Depths (...) in metres -> sRGB (..., 3): concrete grey where nothing goes, the ramp below it, pale
    where NaN.

    ``deepest`` (metres, above 0) takes the darkest colour; deeper keeps it.
    """
    depth = np.asarray(depth, dtype=float)
    share = np.clip(np.nan_to_num(depth / deepest if deepest > 0 else depth * 0.0), 0.0, 1.0)
    colours = _ramp()[np.rint(share * (STEPS - 1)).astype(int)].copy()
    colours[depth < SHALLOWEST] = CONCRETE
    colours[np.isnan(depth)] = NOT_MEASURED
    return colours


def depth_colourmap() -> ListedColormap:
    """The same ramp for colour bars."""
    from matplotlib.colors import ListedColormap

    return ListedColormap(_ramp() / 255.0, name="depth")
