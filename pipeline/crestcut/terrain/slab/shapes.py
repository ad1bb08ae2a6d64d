"""What a slab is made of besides its waves: the shapes a trend and its real features may have.

Each is a column of heights for an amplitude of one. Averaged over a square tile of side s a shape is rounder
than at a point: what bends across a line is averaged over s along the line's normal (exact for a line along
the grid; askew a tile's width has the same variance s^2 / 12 with ends less sharp), a bump over s each way.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from enum import IntEnum
from typing import Self

import numpy as np
from scipy import special

from crestcut.base.grid import BoolArray, FloatArray, GridFrame, IntArray
from crestcut.base.parallel import in_threads
from crestcut.terrain.breaklines.breaks import Break
from crestcut.terrain.slab.between import along_axes, between_nodes

FACE = 0.01  # m, half the width of a step's face
COARSE = 0.05  # m between the nodes on which wide shapes are reckoned
NARROW = 0.30  # m: shapes narrower than this are reckoned at every node
BESIDE = 0.35  # m from its line: there the roundest hinge is cubic over ``COARSE`` to a thousandth
NODES_AT_ONCE = 4096  # so many of every shape stay near the processor
AT_ONCE = 256  # bumps reckoned at a time: each step on the way is as large as the answer


class Shape(IntEnum):
    """Its sizes in brackets, metres but where said. ``v`` : distance beyond the shape's line less offset."""

    LEVEL = 0  # 1
    TILT_U = 1  # u
    TILT_V = 2  # v
    BOW_UU = 3  # u^2 / 2
    BOW_UV = 4  # u v
    BOW_VV = 5  # v^2 / 2
    HINGE = 6  # (offset, rounding rho): sqrt(v^2 + rho^2)
    CURVE = 7  # (offset, length): |v|, within half the length of the line a parabola that meets it
    STEP = 8  # (offset, face): (1 + v / sqrt(v^2 + face^2)) / 2
    RUT = 9  # (offset, size): exp(-v^2 / (2 size^2)), endless along its line
    BUMP = 10  # (u, v, size): exp(-r^2 / (2 size^2))
    HINGE_ALONG = 11  # HINGE times the place along its line, m
    ACROSS = 12  # v: along a line that bends no plane is a plane on either side


Row = tuple[Shape, tuple[float, ...], int, float]  # kind, sizes, line or -1, sd of the amplitude
BOWS = (Shape.BOW_UU, Shape.BOW_UV, Shape.BOW_VV)
TREND = (Shape.LEVEL, Shape.TILT_U, Shape.TILT_V, *BOWS)


@dataclass(frozen=True, eq=False)
class Columns:
    """(m,) shapes: kind; sizes (m, 3); line (m,) index into ``lines``, -1 where it has none; sd (m,) of the
    amplitude before anything is seen, in its own unit; centre (2,) grid u, v of the trend's middle, m."""

    kind: IntArray
    sizes: FloatArray
    line: IntArray
    sd: FloatArray
    lines: tuple[Break, ...]
    centre: tuple[float, float]

    def __len__(self) -> int:
        return len(self.kind)

    def take(self, index: IntArray) -> Self:
        """Some of them."""
        return type(self)(
            self.kind[index], self.sizes[index], self.line[index], self.sd[index], self.lines, self.centre
        )

    def at(self, uv: FloatArray, spread: FloatArray | float = 0.0) -> FloatArray:
        """(n, m) their values at uv (n, 2), m; spread : (n,) s^2 / 12 of the tiles averaged over, m2, all or
        none above zero."""
        out = np.empty((len(uv), len(self)))
        for on, values in self._some(uv, spread):
            out[:, on] = values
        return out

    def sums(self, uv: FloatArray, by: FloatArray) -> FloatArray:
        """(n,) all of them at uv (n, 2), by (m,) of each, without a table of every one."""
        out = np.zeros(len(uv))
        for on, values in self._some(uv):
            out += np.broadcast_to(values, (len(uv), len(on))) @ by[on]
        return out

    def _some(
        self, uv: FloatArray, spread: FloatArray | float = 0.0
    ) -> Iterator[tuple[IntArray, FloatArray]]:
        """Which columns, and their values as of ``at``, those together that have most in common."""
        wide = np.broadcast_to(np.asarray(spread, dtype=float), (len(uv),))
        rel = uv - np.asarray(self.centre)
        for kind in TREND:
            if len(on := np.flatnonzero(self.kind == kind)):
                yield on, _trend(kind, rel, wide)[:, None]
        bumps = np.flatnonzero(self.kind == Shape.BUMP)
        if len(bumps):
            (u, of_u), (v, of_v) = (self._bells(uv, wide, bumps, axis) for axis in (0, 1))
            for on in np.array_split(np.arange(len(bumps)), -(-len(bumps) // AT_ONCE)):
                yield bumps[on], u[:, of_u[on]] * v[:, of_v[on]]
        for number in np.unique(self.line[self.line >= 0]):
            across, along = self.lines[number].across(uv)
            for kind in np.unique(self.kind[self.line == number]):
                on = np.flatnonzero((self.line == number) & (self.kind == kind))
                yield on, _on_line(Shape(kind), self.sizes[on], across, along, wide)

    def _bells(
        self, uv: FloatArray, wide: FloatArray, on: IntArray, axis: int
    ) -> tuple[FloatArray, IntArray]:  # fmt: skip
        """(n, c) one axis of bumps ``on``, and which of them is whose (k,): those on a lattice share it with
        all in their row or column."""
        each, of = np.unique(self.sizes[on][:, [axis, 2]], axis=0, return_inverse=True)
        return _averaged(_BELL, uv[:, axis, None] - each[:, 0], each[:, 1], wide[:, None]), of.ravel()

    def over(self, frame: GridFrame, by: FloatArray) -> FloatArray:
        """(ny, nx) the sum of all, each times its ``by`` (m,), at every node of a frame.

        Cubic between nodes ``COARSE`` apart, but for narrow shapes: those along an axis are reckoned at every
        place on the other (steps are offered every 50 mm), others at every node ``BESIDE`` their line or
        nearer: farther off they bend as little as wide ones.
        """
        ny, nx = frame.shape
        axes = np.arange(nx) * frame.cell, np.arange(ny) * frame.cell
        narrow, left = self._narrow(), np.ones(len(self), bool)
        of_axis = []
        for axis, place in enumerate(axes):
            on = np.array([k >= 0 and _along_axis(self.lines[k], axis) for k in self.line], bool) & narrow
            uv = np.zeros((len(place), 2))
            uv[:, axis] = place
            of_axis.append(self.take(np.flatnonzero(on)).sums(uv, by[on]))
            left &= ~on
        columns_, rows = (int(np.ceil(s / COARSE - 1e-9)) + 1 for s in frame.size)
        coarse = GridFrame((0.0, 0.0), 0.0, COARSE, (rows, columns_))
        places = coarse.node_xy().reshape(-1, 2)
        wide = np.flatnonzero(left & ~narrow)
        values = self.take(wide)._sums_in_parts(places, by[wide])
        lines = []
        for number in np.unique(self.line[left & narrow]):
            index = np.flatnonzero(left & narrow & (self.line == number))
            some = self.take(index)
            own = some._sums_in_parts(places, by[index])
            values += own
            lines.append((some, by[index], own))
        out = along_axes(values.reshape(coarse.shape), COARSE, frame)
        out += of_axis[0] + of_axis[1][:, None]
        for some, of_some, own in lines:
            near = some._beside(coarse)[np.ix_(*(np.rint(at / COARSE).astype(int) for at in axes[::-1]))]
            j, i = np.nonzero(near)
            uv = np.column_stack([axes[0][i], axes[1][j]])
            out[j, i] += some._sums_in_parts(uv, of_some) - between_nodes(coarse, uv) @ own
        return out

    def _narrow(self) -> BoolArray:
        """(m,) whose bends are too close for nodes ``COARSE`` apart."""
        kind, size = self.kind, self.sizes[:, 1]
        sharp = np.isin(kind, (Shape.HINGE, Shape.HINGE_ALONG, Shape.ACROSS, Shape.STEP))
        return np.asarray(
            sharp | (kind == Shape.CURVE) & (size < NARROW) | (kind == Shape.RUT) & (size < 0.5 * NARROW)
        )

    def _beside(self, coarse: GridFrame) -> BoolArray:
        """(rows, columns) which nodes are near the line, that of all: no fine node nearest to others is."""
        line, offset = self.lines[self.line[0]], self.sizes[:, 0]
        across = line.across(coarse.node_xy().reshape(-1, 2))[0].reshape(coarse.shape)
        reach = BESIDE + coarse.cell
        return (across > offset.min() - reach) & (across < offset.max() + reach)

    def _sums_in_parts(self, uv: FloatArray, by: FloatArray) -> FloatArray:
        parts = [slice(first, first + NODES_AT_ONCE) for first in range(0, len(uv), NODES_AT_ONCE)]
        return np.concatenate([np.zeros(0), *in_threads(lambda part: self.sums(uv[part], by), parts)])


def _along_axis(line: Break, axis: int) -> bool:
    """Is it endless, and its distance that along an axis of the grid alone?"""
    return len(line.at) == 1 and float(line.normal[0]) == (0.0, math.pi / 2)[axis]


def columns(
    rows: Sequence[Row],
    lines: tuple[Break, ...],
    centre: tuple[float, float],
) -> Columns:
    """Of (kind, sizes, line or -1, sd of the amplitude)."""
    sizes = np.zeros((len(rows), 3))
    for k, row in enumerate(rows):
        sizes[k, : len(row[1])] = row[1]
    kind, line = (np.array([row[c] for row in rows], dtype=np.int64) for c in (0, 2))
    return Columns(kind, sizes, line, np.array([row[3] for row in rows], dtype=float), lines, centre)


def _trend(kind: Shape, rel: FloatArray, wide: FloatArray) -> FloatArray:
    u, v = rel.T
    match kind:
        case Shape.LEVEL:
            return np.ones(len(u))
        case Shape.TILT_U:
            return u
        case Shape.TILT_V:
            return v
        case Shape.BOW_UU:
            return np.asarray((u * u + wide) / 2)
        case Shape.BOW_VV:
            return np.asarray((v * v + wide) / 2)
        case _:
            return np.asarray(u * v)


def _on_line(
    kind: Shape, sizes: FloatArray, across: FloatArray, along: FloatArray, wide: FloatArray
) -> FloatArray:
    """(n, k) of shapes of sizes (k, 3), at places so far across the line and along it."""
    if kind == Shape.ACROSS:  # straight across: its mean over a tile is its value
        return across[:, None]
    value = _averaged(_ACROSS[kind], across[:, None] - sizes[:, 0], sizes[:, 1], wide[:, None])
    return np.asarray(value * along[:, None]) if kind == Shape.HINGE_ALONG else value


Bend = Callable[[FloatArray, FloatArray], FloatArray]  # (v, size), m


def _averaged(of: tuple[Bend, Bend], v: FloatArray, size: FloatArray, wide: FloatArray) -> FloatArray:
    """A shape's value at v, or its mean over v +- s / 2 from its integral; wide = s^2 / 12."""
    value, integral = of
    if not wide.any():
        return value(v, size)
    half = np.sqrt(3 * wide)
    return np.asarray((integral(v + half, size) - integral(v - half, size)) / (2 * half))


def _hinge(v: FloatArray, rho: FloatArray) -> FloatArray:
    return np.sqrt(v * v + rho * rho)  # lengths of metres, which neither over- nor underflow


def _hinge_integral(v: FloatArray, rho: FloatArray) -> FloatArray:
    return np.asarray(0.5 * (v * _hinge(v, rho) + rho * rho * np.arcsinh(v / np.maximum(rho, 1e-9))))


def _curve(v: FloatArray, length: FloatArray) -> FloatArray:
    return np.asarray(np.where(np.abs(v) < length / 2, v * v / length + length / 4, np.abs(v)))


def _curve_integral(v: FloatArray, length: FloatArray) -> FloatArray:
    beyond = np.sign(v) * (v * v / 2 + length * length / 24)
    return np.asarray(np.where(np.abs(v) < length / 2, v * (v * v / (3 * length) + length / 4), beyond))


def _step(v: FloatArray, face: FloatArray) -> FloatArray:
    return np.asarray(0.5 * (1 + v / _hinge(v, face)))


def _step_integral(v: FloatArray, face: FloatArray) -> FloatArray:
    return np.asarray(0.5 * (v + _hinge(v, face)))


def _bell(v: FloatArray, size: FloatArray) -> FloatArray:
    return np.asarray(np.exp(-0.5 * (v / size) ** 2))


def _bell_integral(v: FloatArray, size: FloatArray) -> FloatArray:
    return np.asarray(size * np.sqrt(np.pi / 2) * special.erf(v / (size * np.sqrt(2))))


_BELL = (_bell, _bell_integral)
_ACROSS: dict[Shape, tuple[Bend, Bend]] = {
    Shape.HINGE: (_hinge, _hinge_integral), Shape.HINGE_ALONG: (_hinge, _hinge_integral),
    Shape.CURVE: (_curve, _curve_integral), Shape.STEP: (_step, _step_integral), Shape.RUT: _BELL,
}  # fmt: skip
