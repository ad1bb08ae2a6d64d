"""Crests and steps blended into the plain surface, and what a crest rises between the nodes."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np

from crestcut.base.grid import FloatArray, IntArray
from crestcut.base.kernels import njit
from crestcut.terrain.breaklines.crests import ACROSS, ALONG, COS, RHO, SIN, Crests, E, V
from crestcut.terrain.breaklines.hinge import P_D, P_E, P_G, P_H, P_K, RISE, STEP, step_basis
from crestcut.terrain.breaklines.ridges import BreakPoints
from crestcut.terrain.heights.local import CellMeans, windows
from crestcut.terrain.heights.plain import Plain

WHOLE = 0.4  # say at which the plain surface has none left
SUB = 7  # samples a side inside a cell for the highest-in-cell layer
# what a cell keeps of the knots that speak in it
_SAY, _HEIGHT, _VARIANCE, _E, _V, _COS, _SIN, _RHO, _JUMP = range(9)


def blend(
    knots: BreakPoints,
    crests: Crests,
    plain: Plain,
    means: CellMeans,
) -> tuple[FloatArray, FloatArray, FloatArray]:
    """Height, standard error and what the surface rises inside each cell above the bilinear surface of the
    lattice, all m; the last is zero where no break passes. ``crests`` : of the knots' hinges; steps are
    blended here."""
    height, se, excess = (np.empty(means.mask.shape) for _ in range(3))
    for where, own, part in windows(means, 1):
        left = where.start - own.start
        some = slice(left, left + part.mask.shape[1])
        here = replace(knots, place=knots.place - [left, 0, 0]) if left else knots
        found = _blend(here, crests.columns(some), plain.columns(some), part)
        for whole, values in zip((height, se, excess), found, strict=True):
            whole[:, where] = values[:, own]
    return height, se, excess


def _blend(
    knots: BreakPoints, crests: Crests, plain: Plain, means: CellMeans
) -> tuple[FloatArray, FloatArray, FloatArray]:
    mask, pitch, noise = means.mask, means.pitch, means.noise
    height, se = plain.height.copy(), plain.error.copy()
    excess, sums = np.zeros_like(height), np.zeros((*height.shape, 9))
    on = crests.say > 0
    shape = crests.shape[on]
    sums[on] = crests.say[on][:, None] * np.column_stack(
        [np.ones(len(shape)), crests.height[on], crests.variance[on]]
        + [shape[:, c] for c in (E, V, COS, SIN, RHO)]
        + [np.zeros(len(shape))]
    )
    steps = knots.model == STEP
    if steps.any():
        place, params = knots.place[steps], knots.params[steps]
        _add_steps(place, params, knots.inverse[steps], knots.half[steps], pitch, noise, sums)
    say = sums[..., _SAY]
    on = mask & (say > 0)
    mean = sums[on] / say[on][:, None]
    share = np.minimum(say[on] / WHOLE, 1.0)
    height[on] += share * (mean[:, _HEIGHT] - height[on])
    se[on] += share * (np.sqrt(mean[:, _VARIANCE]) - se[on])
    near = on.copy()
    near[on] = (share > 0.5) & (np.abs(mean[:, _V]) < 1.5 * pitch)
    j, i = np.nonzero(near)
    _raise(j, i, sums[near] / say[near][:, None], pitch, excess)
    return height, se, excess


@njit()
def _add_steps(
    place: FloatArray, params: FloatArray, inverse: FloatArray, half: FloatArray, pitch: float, noise: float,
    sums: FloatArray,
) -> None:  # fmt: skip
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
                s[_E] += w * p[P_E]
                s[_V] += w * (n - p[P_D] - p[P_G] * along - p[P_K] * along * along)
                s[_COS] += w * ca
                s[_SIN] += w * sa
                s[_RHO] += w * RISE
                s[_JUMP] += w * p[P_H]


@njit()
def _bend(v: float, m: FloatArray) -> float:
    """The part of a break that no plane has, m, at v beyond it."""
    s = math.sqrt(v * v + m[_RHO] ** 2)
    return m[_E] * s + (0.5 * m[_JUMP] * (1 + v / s) if s > 0 else 0.0)


@njit()
def _raise(rows: IntArray, columns: IntArray, means: FloatArray, pitch: float, out: FloatArray) -> None:
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
