"""The lines along which a slab breaks: crests, sags and steps found in a fit, as curves in plan."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Self

import numpy as np
from scipy import sparse
from scipy.spatial import cKDTree

from crestcut.base.grid import FloatArray, IntArray, frozen_array
from crestcut.terrain.breaklines.hinge import HINGE, P_D, P_E, P_H, STEP
from crestcut.terrain.breaklines.ridges import SPACING, BreakPoints

FEWEST = 6  # knots of a line: below that it is no line
SMOOTH = 0.30  # m along a line over which its places are averaged


@dataclass(frozen=True, eq=False)
class Break:
    """One line.

    at : (k, 2) grid u, v, m, in order along it.  normal : (k,) angle of its normal from u, rad, all on one
    side.  fold : change of slope across it is twice this, negative at a crest; 0 of a step alone.  rounding :
    rho of the hinge, m.  step : height of the far side (along the normal) over the near one, m.
    placed : 1 sd of the line's place, m.
    """

    at: FloatArray
    normal: FloatArray
    fold: float
    rounding: float
    step: float
    placed: float

    def __post_init__(self) -> None:
        object.__setattr__(self, "at", frozen_array(self.at, ndim=2, name="at"))
        object.__setattr__(self, "normal", frozen_array(self.normal, ndim=1, name="normal"))

    @classmethod
    def straight(cls, normal: float, offset: float) -> Self:
        """The endless line u cos(normal) + v sin(normal) = offset, nothing known of what breaks there."""
        foot = offset * np.array([[np.cos(normal), np.sin(normal)]])
        return cls(foot, np.array([normal]), 0.0, 0.0, 0.0, 0.0)

    @property
    def length(self) -> float:
        """Along the line, m."""
        return float(np.hypot(*np.diff(self.at, axis=0).T).sum()) if len(self.at) > 1 else 0.0

    @property
    def curvature(self) -> float:
        """In plan, 1/m, above zero where the line bends towards its normal: of the parabola through it."""
        mean = np.angle(np.exp(1j * self.normal).mean())
        c, s = np.cos(mean), np.sin(mean)
        place = self.at - self.at.mean(axis=0)
        n, along = place[:, 0] * c + place[:, 1] * s, -place[:, 0] * s + place[:, 1] * c
        return 2 * float(np.polyfit(along, n, 2)[0]) if len(n) > 2 else 0.0

    def across(self, uv: FloatArray) -> tuple[FloatArray, FloatArray]:
        """Distance beyond the line along its normal and place along it, (n,) each, m; uv (n, 2).

        Beyond its ends the line runs on straight. Place is counted from the line's middle.
        """
        # so few places that trying all of them is a third of the work of a search tree
        near = np.argmax(uv @ self.at.T - 0.5 * (self.at**2).sum(axis=1), axis=1)
        c, s = np.cos(self.normal)[near], np.sin(self.normal)[near]
        away = uv - self.at[near]
        past = -away[:, 0] * s + away[:, 1] * c
        run = np.concatenate([[0.0], np.cumsum(self._run())])
        return away[:, 0] * c + away[:, 1] * s, run[near] - run[-1] / 2 + past

    def _run(self) -> FloatArray:
        """(k - 1,) how far each piece goes along the line (its tangent is the normal turned left), m."""
        step, angle = np.diff(self.at, axis=0), self.normal[:-1]
        return np.asarray(-step[:, 0] * np.sin(angle) + step[:, 1] * np.cos(angle))


def breaks_of(knots: BreakPoints, pitch: float, pad: int) -> tuple[Break, ...]:
    """Every line of the knots found in one fit, the longest first.

    pitch : m, of the lattice the knots lie on.  pad : its cells before the first node of the frame.
    """
    found = []
    for model in (HINGE, STEP):
        on = np.flatnonzero(knots.model == model)
        uv = (knots.place[on, :2] - pad) * pitch
        for members in _joined(uv, knots.place[on, 2]):
            if len(members) >= FEWEST:
                found.append(_line(knots, on[members], uv[members], model == STEP))
    return tuple(sorted(found, key=lambda b: -b.length))


def _joined(uv: FloatArray, angle: FloatArray) -> Sequence[IntArray]:
    """Members of each line: knots that follow each other along the break."""
    if not len(uv):
        return ()
    a, b = cKDTree(uv).query_pairs(3 * SPACING, output_type="ndarray").T
    gap = uv[b] - uv[a]
    joined = np.abs(gap[:, 0] * np.cos(angle[a]) + gap[:, 1] * np.sin(angle[a])) < SPACING
    joined &= np.abs(np.sin(angle[a] - angle[b])) < 0.5
    graph = sparse.coo_matrix((np.ones(joined.sum()), (a[joined], b[joined])), shape=(len(uv),) * 2)
    number, label = sparse.csgraph.connected_components(graph, directed=False)
    return [np.flatnonzero(label == r) for r in range(number)]


def _line(knots: BreakPoints, index: IntArray, uv: FloatArray, stepped: bool) -> Break:
    angle, p = knots.place[index, 2].copy(), knots.params[index]
    d, e, jump = p[:, P_D].copy(), p[:, P_E], p[:, P_H].copy()
    back = np.cos(angle - angle[0]) < 0
    angle[back] += np.pi
    d[back] *= -1
    jump[back] *= -1
    on = uv + d[:, None] * np.column_stack([np.cos(angle), np.sin(angle)])
    mean = np.angle(np.exp(1j * angle).mean())
    along = -on[:, 0] * np.sin(mean) + on[:, 1] * np.cos(mean)
    order = np.argsort(along, kind="stable")
    on, angle, along = on[order], np.unwrap(angle[order]), along[order]
    # a parabola through the neighbours: a mean would be pulled inwards at the ends, and a straight piece into
    # a curve in plan, by half its curvature times the variance of the weight (4 mm of a radius of 3 m)
    away = (along[None] - along[:, None]) / SMOOTH
    powers = np.stack([np.ones_like(away), away, away**2], axis=1)
    near = powers * np.exp(-0.5 * (2 * away) ** 2)[:, None]
    gram = near @ powers.transpose(0, 2, 1) + 1e-12 * np.eye(3)

    def smooth(values: FloatArray) -> FloatArray:
        return np.asarray(np.linalg.solve(gram, (near @ values)[..., None])[:, 0, 0])

    fold = 0.0 if stepped else float(np.median(e))
    rounding = 0.0 if stepped else float(np.median(np.abs(p[:, P_H])))
    at = np.column_stack([smooth(on[:, 0]), smooth(on[:, 1])])
    placed = float(np.median(knots.spread[index, 0]))
    return Break(at, smooth(angle), fold, rounding, float(np.median(jump)) if stepped else 0.0, placed)
