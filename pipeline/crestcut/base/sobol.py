"""Points spread evenly over a cube: scipy's own, digit for digit, without the third of a second that loading
all of its statistics takes."""

from __future__ import annotations

import numpy as np

from crestcut.base.grid import FloatArray

# direction numbers of the first dimensions (Joe & Kuo, SIAM J. Sci. Comput. 30, 2008): for MOST points
DIRECTIONS = ((1, 1, 1, 1, 1, 1), (1, 3, 5, 15, 17, 51), (1, 3, 3, 9, 29, 23), (1, 3, 1, 5, 31, 29))
MOST, BITS = 64, 30


def sobol(count: int, seed: int) -> FloatArray:
    """(count, 4) points of Sobol's sequence in [0, 1), count at most ``MOST``, scrambled: binary digits times
    a random lower triangular matrix and a random shift, modulo 2 (Matousek, J. Complexity 14, 1998)."""
    assert count <= MOST
    (rng,) = np.random.default_rng(seed).spawn(1)
    shift = rng.integers(2, size=(4, BITS), dtype=np.uint32)[:, ::-1]
    mix = np.tril(rng.integers(2, size=(4, BITS, BITS), dtype=np.uint32), -1) + np.eye(BITS, dtype=np.uint32)
    number, place = np.arange(6), np.arange(BITS)  # of a direction; of a digit, the first is worth a half
    digits = np.array(DIRECTIONS)[:, :, None] >> np.maximum(number[:, None] - place, 0) & 1
    digits = np.where(place <= number[:, None], digits, 0)
    steps = np.arange(count)
    taken = (steps ^ steps >> 1)[:, None] >> number & 1  # in the order of Gray's code, one changes at a time
    points = np.bitwise_and(taken @ (digits @ mix.transpose(0, 2, 1)) + shift[:, None], 1)
    return np.asarray((points @ 0.5 ** (place + 1.0)).T)
