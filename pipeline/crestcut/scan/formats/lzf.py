"""LZF, the compression of PCD files; why no library reads these: ``pcd``. Compiled, since it goes byte by
byte."""

from __future__ import annotations

import numpy as np
from numba import njit
from numpy.typing import NDArray


@njit(cache=True)
def unpack(source: NDArray[np.uint8], target: NDArray[np.uint8]) -> int:
    """Fill ``target`` (m,) from compressed ``source`` (n,); bytes written, or -1 where the stream is damaged.

    Format as in liblzf (M. Lehmann): a control byte below 32 opens a run of that many literals plus one; any
    other holds the length less two in its top three bits (7: one more length byte) and the high part of the
    distance back in the rest.
    """
    i, o = 0, 0
    n, m = source.size, target.size
    while i < n:
        control = int(source[i])
        i += 1
        if control < 32:
            run = control + 1
            if i + run > n or o + run > m:
                return -1
            target[o : o + run] = source[i : i + run]
            i += run
            o += run
            continue
        length = control >> 5
        if length == 7:
            if i >= n:
                return -1
            length += int(source[i])
            i += 1
        if i >= n:
            return -1
        start = o - ((control & 31) << 8) - int(source[i]) - 1
        i += 1
        length += 2
        if start < 0 or o + length > m:
            return -1
        # A copy may overlap what it writes: byte by byte, never as a slice.
        for k in range(length):
            target[o + k] = target[start + k]
        o += length
    return o
