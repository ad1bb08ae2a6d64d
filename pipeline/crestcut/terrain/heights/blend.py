"""Crests and steps blended into the plain surface, and what a crest rises between the nodes."""

from __future__ import annotations

import math

import numpy as np
from numba import njit

from crestcut.base.grid import BoolArray, FloatArray
from crestcut.terrain.breaklines.crests import ACROSS, ALONG, COS, RHO, SIN, Crests, E, V
from crestcut.terrain.breaklines.hinge import RISE, STEP, step_basis
from crestcut.terrain.breaklines.ridges import BreakPoints

WHOLE = 0.4  # say at which the plain surface has none left
SUB = 7  # samples a side inside a cell for the highest-in-cell layer
# what a cell keeps of the knots that speak in it
_SAY, _HEIGHT, _VARIANCE, _E, _V, _COS, _SIN, _RHO, _JUMP = range(9)


def blend(
    knots: BreakPoints,
    crests: Crests,
    plain: FloatArray,
    error: FloatArray,
    mask: BoolArray,
    pitch: float,
    noise: float,
) -> tuple[FloatArray, FloatArray, FloatArray]:
    """Height, standard error and what the surface rises inside each cell above the bilinear surface of the
    lattice, all m; the last is zero where no break passes. ``crests`` : of the knots' hinges; steps are
    blended here."""
    excess, height, se = np.zeros_like(plain), plain.copy(), error.copy()
    sums = np.zeros((*plain.shape, 9))
    on = crests.say > 0
    shape = crests.shape[on]
    sums[on] = np.column_stack(
        [np.ones(len(shape)), crests.height[on], crests.variance[on]]
        + [shape[:, c] for c in (E, V, COS, SIN, RHO)]
        + [np.zeros(len(shape))]
    )
    sums *= crests.say[..., None]
    steps = knots.model == STEP
    if steps.any():
        place, params = knots.place[steps], knots.params[steps]
        _add_steps(place, params, knots.inverse[steps], knots.half[steps], pitch, noise, sums)
    say = sums[..., _SAY]
    on = mask & (say > 0)
    means = sums[on] / say[on][:, None]
    share = np.minimum(say[on] / WHOLE, 1.0)
    height[on] += share * (means[:, _HEIGHT] - plain[on])
    se[on] += share * (np.sqrt(means[:, _VARIANCE]) - error[on])
    near = on.copy()
    near[on] = (share > 0.5) & (np.abs(means[:, _V]) < 1.5 * pitch)
    j, i = np.nonzero(near)
    _raise(j, i, sums[near] / say[near][:, None], pitch, excess)
    return height, se, excess


@njit(cache=True, nogil=True, error_model="numpy")
def _add_steps(place, params, inverse, half, pitch, noise, sums):  # type: ignore[no-untyped-def]
    ny, nx = sums.shape[:2]
    f = np.empty(9)
    for t in range(place.shape[0]):
        ci, cj = round(place[t, 0]), round(place[t, 1])
        ca, sa = math.cos(place[t, 2]), math.sin(place[t, 2])
        p, across = params[t], ACROSS * half[t]
        r = math.ceil(max(across, ALONG) / pitch)
        for j in range(max(0, cj - r), min(ny, cj + r + 1)):
            for i in range(max(0, ci - r), min(nx, ci + r + 1)):
                x, y = (i - place[t, 0]) * pitch, (j - place[t, 1]) * pitch
                n, along = x * ca + y * sa, -x * sa + y * ca
                w = 1 - (n / across) ** 2 - (along / ALONG) ** 2
                if w <= 0.0:
                    continue
                w = w * w
                value = step_basis(n, along, p, f)
                variance = 0.0
                for a in range(9):
                    for b in range(9):
                        variance += f[a] * inverse[t, a, b] * f[b]
                s = sums[j, i]
                s[_SAY] += w
                s[_HEIGHT] += w * value
                s[_VARIANCE] += w * noise * noise * max(variance, 0.0)
                s[_E] += w * p[3]
                s[_V] += w * (n - p[4] - p[5] * along - p[6] * along * along)
                s[_COS] += w * ca
                s[_SIN] += w * sa
                s[_RHO] += w * RISE
                s[_JUMP] += w * p[7]


@njit(cache=True, nogil=True, error_model="numpy")
def _bend(v, m):  # type: ignore[no-untyped-def]
    """The part of a break that no plane has, m, at v beyond it."""
    s = math.sqrt(v * v + m[_RHO] ** 2)
    return m[_E] * s + (0.5 * m[_JUMP] * (1 + v / s) if s > 0 else 0.0)


@njit(cache=True, nogil=True, error_model="numpy")
def _raise(rows, columns, means, pitch, out):  # type: ignore[no-untyped-def]
    """out := largest rise of the break inside each cell over the bilinear surface through the nodes of the
    lattice."""
    for c in range(len(rows)):
        m = means[c]
        length = math.hypot(m[_COS], m[_SIN])
        if length < 0.5:
            continue
        dx, dy = pitch * m[_COS] / length, pitch * m[_SIN] / length
        here = _bend(m[_V], m)
        best = 0.0
        for s in range(SUB * SUB):
            x, y = (s % SUB) / (SUB - 1) - 0.5, (s // SUB) / (SUB - 1) - 0.5
            di, dj = (1 if x > 0 else -1), (1 if y > 0 else -1)
            ax, ay = abs(x), abs(y)
            flat = (
                (1 - ax) * (1 - ay) * here
                + ax * (1 - ay) * _bend(m[_V] + di * dx, m)
                + (1 - ax) * ay * _bend(m[_V] + dj * dy, m)
                + ax * ay * _bend(m[_V] + di * dx + dj * dy, m)
            )
            best = max(best, _bend(m[_V] + x * dx + y * dy, m) - flat)
        out[rows[c], columns[c]] = best
