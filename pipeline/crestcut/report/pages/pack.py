"""Rasters small enough to travel inside a page: quantised, differenced, deflated, base64.

The viewer's raster.js undoes exactly what stands here.
"""

from __future__ import annotations

import base64
import zlib
from typing import Any

import numpy as np
from numpy.typing import ArrayLike, NDArray

NOT_MEASURED = 0xFFFF
LEVEL = 4  # of 9: the sample's page is 2 % larger than at 9 and written in less than half the time


def pack_layer(values: ArrayLike, step: float = 1e-4) -> dict[str, Any]:
    """Heights or depths (ny, nx) in metres -> {step, zero, data}.

    Codes are 16-bit multiples of ``step`` above ``zero``; a range too tall for them takes a coarser step.
    NaN keeps its own code.
    """
    z = np.asarray(values, dtype=float)
    finite = np.isfinite(z)
    low, high = (float(z[finite].min()), float(z[finite].max())) if finite.any() else (0.0, 0.0)
    step = max(step, (high - low) / (NOT_MEASURED - 1))
    codes = np.full(z.shape, NOT_MEASURED, dtype=np.uint16)
    codes[finite] = np.rint((z[finite] - low) / step).astype(np.uint16)
    change = np.diff(codes.ravel(), prepend=np.uint16(0))  # wraps in 16 bits, as the viewer's sum does
    planes = np.concatenate([change & 0xFF, change >> 8]).astype(np.uint8)
    return {"step": step, "zero": low, "data": _deflate(planes)}


def unpack_layer(layer: dict[str, Any], shape: tuple[int, int]) -> NDArray[np.float64]:
    """What the viewer sees, for tests: (ny, nx) metres, NaN where not measured."""
    planes = (
        np.frombuffer(zlib.decompress(base64.b64decode(layer["data"])), dtype=np.uint8)
        .reshape(2, -1)
        .astype(np.uint16)
    )
    codes = np.cumsum(planes[0] + (planes[1] << 8), dtype=np.uint16)
    return np.where(codes == NOT_MEASURED, np.nan, layer["zero"] + codes * layer["step"]).reshape(shape)


def pack_colours(rgb: NDArray[np.uint8], bits: int = 5) -> str:
    """Colours (ny, nx, 3) uint8, kept to ``bits`` bits a channel."""
    drop = 8 - bits
    kept = ((rgb.reshape(-1, 3) >> drop) << drop) + (1 << drop >> 1)
    change = np.diff(kept.astype(np.uint8).T, axis=1, prepend=np.uint8(0))
    return _deflate(change)


def pack_numbers(values: ArrayLike) -> str:
    """Plain numbers as float32, flattened."""
    return _deflate(np.ascontiguousarray(np.asarray(values, dtype="<f4")).view(np.uint8))


def _deflate(data: NDArray[np.uint8]) -> str:
    return base64.b64encode(zlib.compress(np.ascontiguousarray(data).tobytes(), LEVEL)).decode()
