"""Joints: narrow straight grooves that a tyre rides over, so that they must not pull the slab down.

A strip as wide as a cell and 0.4 m long is laid through a low cell in every direction; where its mean lies
under the strips beside it by more than noise is likely to, the points about it are asked for a straight joint
(``lines``). Its points are raised by its depth, or left out where that is in doubt (``points``).
Grooves that no straight strip fits lose their low cells.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from crestcut.base.grid import BoolArray, FloatArray
from crestcut.job import Settings
from crestcut.terrain.ground.ground import AS_USUAL, limit_of
from crestcut.terrain.heights.local import CellMeans, Local, fit_local
from crestcut.terrain.heights.plain import HALVES
from crestcut.terrain.joints.lines import REACH, Points, Strip, at_bin, is_joint, others, trace
from crestcut.terrain.joints.points import left_out, settle
from crestcut.terrain.joints.search import (
    AT_LEAST,
    HALF_LENGTH,
    PLENTY,
    SURE,
    few_points,
    mark_low,
    seen_in_cells,
    seen_in_lines,
    stands_out,
)

GROOVE = 0.006  # m: a sag of two 20 % slopes is 6 mm lower in its middle than 30 mm beside it
WINDOW = 0.10  # m, half window of the surface that residuals are taken from
MOST = 60  # lines looked at, and as many for each 10 m2


@dataclass(frozen=True, eq=False)
class Joints:
    """What is done about joints. number, rise (m), out: points (by their number) in straight joints, how much
    each is raised, and whether it is left out instead. groove : cells (rows, columns) whose low points go.

    strips, spreads : the joints whose points were raised and the standard errors of their depths, m.
    """

    number: NDArray[np.int64]
    rise: FloatArray
    out: BoolArray
    groove: BoolArray
    strips: tuple[Strip, ...] = ()
    spreads: tuple[float, ...] = ()
    left_out: int = 0

    @property
    def any(self) -> bool:
        """Is there anything to do?"""
        return len(self.number) > 0 or bool(self.groove.any())

    @property
    def ends(self) -> FloatArray:
        """(n, 2, 2) x, y of both ends of each strip, m from the lattice's first cell."""
        found = [
            [s.x + t * np.cos(s.angle), s.y + t * np.sin(s.angle)]
            for s in self.strips for t in (s.start, s.end)
        ]  # fmt: skip
        return np.array(found).reshape(-1, 2, 2)

    def settled(self, placed: FloatArray, keep: BoolArray) -> tuple[FloatArray, BoolArray]:
        """The placed points (n, 3) once those in joints are raised, and which are to be kept."""
        raised, kept = placed.copy(), keep.copy()
        raised[self.number, 2] += self.rise
        kept[self.number] = ~self.out
        return raised, kept

    def widened(self, error: FloatArray, choice: NDArray[np.int8], pitch: float) -> FloatArray:
        """Standard errors (m) with the depths' own: a strip raised by a depth wrong by s moves the height at
        its middle by its share of the window's weight times s.

        ``choice`` : index into ``plain.HALVES`` at every cell. A parabola fitted under a biweight of half
        width h weighs its middle with (15 / 16 h) / (1 - m2^2 / m4), moments m2 = h^2 / 7, m4 = h^4 / 21: a
        strip w wide has the share 1.64 w / h, falling off as the biweight does.
        """
        extra = np.zeros_like(error)
        half = np.array(HALVES)[choice]
        j, i = np.arange(float(error.shape[0]))[:, None], np.arange(float(error.shape[1]))
        for strip, spread in zip(self.strips, self.spreads, strict=True):
            t, u = strip.along_across(i * pitch, j * pitch)
            share = np.minimum(1.64 * strip.width / half, 1.0) * np.maximum(1 - (u / half) ** 2, 0.0) ** 2
            extra += np.where((t > strip.start) & (t < strip.end), share * spread, 0.0) ** 2
        return np.sqrt(error**2 + extra)


def find_joints(
    means: CellMeans,
    placed: FloatArray,
    keep: BoolArray,
    settings: Settings = AS_USUAL,
) -> Joints:
    """Joints of the cells that the ``placed`` points (n, 3) were summed into where ``keep``; low points that
    were not kept may be a joint's too."""
    count, mask, pitch, noise = means.count, means.mask, means.pitch, means.noise
    fit = _wide(means)
    residual = np.where(count > 0, means.z - np.nan_to_num(fit.z), 0.0)
    in_cells = seen_in_cells(count, residual, mask, pitch, noise)
    density = float(count.sum()) / (max(int(mask.sum()), 1) * pitch**2)
    few = few_points(density, noise)
    strips, refused = list[Strip](), list[Strip]()
    if few or len(in_cells):
        every = 1 if few else max(1, int(min((stands_out(density, noise) / PLENTY) ** 2, density / AT_LEAST)))
        points = Points.over(fit.z, placed, keep, pitch, every=every)
        in_lines = seen_in_lines(points.x, points.y, points.above, pitch, noise) if few else in_cells[:0]
        strips, refused = _strips(np.concatenate([in_cells, in_lines]), points, mask, pitch, noise)
    groove = np.zeros(mask.shape, np.bool_)
    long = int(2.5 * HALF_LENGTH / pitch + 0.5)
    for j, i, angle, fall, sure in in_cells:
        if (
            fall > GROOVE
            and sure > SURE
            and not any(_near(line, i * pitch, j * pitch, 0.025) for line in (*strips, *refused))
        ):
            mark_low(count, residual, int(j), int(i), angle, long, fall, groove)
    none = np.zeros(0, np.int64)
    if not strips:
        return Joints(none, np.zeros(0), none > 0, groove, left_out=int(count[groove].sum()))
    open_cells = replace(means, count=np.where(_over(strips, mask.shape, pitch, 0.0), 0.0, count))
    near = _over(strips, mask.shape, pitch, REACH)
    again = Points.over(_wide(open_cells).z, placed, keep, pitch, near)
    joints = _raise(strips, again, groove, noise, limit_of(noise, settings))
    left_out = count[groove].sum() + keep[joints.number[joints.out]].sum()
    return replace(joints, left_out=int(left_out))


def _wide(means: CellMeans) -> Local:
    half = max(2, round(WINDOW / means.pitch))
    return fit_local(means, half, every=max(1, half // 3))


def _near(strip: Strip, x: float, y: float, reach: float) -> bool:
    t, u = strip.along_across(np.array(x), np.array(y))
    return bool(abs(u) < reach + strip.width / 2 and strip.start - reach < t < strip.end + reach)


def _strips(
    seen: FloatArray, points: Points, mask: BoolArray, pitch: float, noise: float
) -> tuple[list[Strip], list[Strip]]:
    """Straight joints among what was seen, surest first, and straight lines that are something else; what
    lies beside a line that was looked at is not looked at again."""
    left = seen[np.argsort(-seen[:, 4], kind="stable")]
    joints: list[Strip] = []
    refused: list[Strip] = []
    area = float(mask.sum()) * pitch**2
    for _ in range(MOST + int(MOST * area / 10)):
        if not len(left):
            break
        row, column, angle = left[0, :3]
        strip = trace(points, column * pitch, row * pitch, angle, noise)
        if strip is not None and any(_same(strip, other) for other in joints):
            line, reach = strip, 0.03
        elif strip is not None:
            which, t, u = points.beside(strip, REACH)
            verdict = others(t, u, points.above[which], strip, noise, points.across(strip))
            if verdict.chance <= strip.chance(area):
                refused.append(strip)
            elif is_joint(strip, verdict, strip.chance(area)):
                joints.append(strip)
            line, reach = strip, 0.03
        else:
            line, reach = Strip(column * pitch, row * pitch, angle, -0.5, 0.5, 0.0, 0.0, 0.0, 0.0), 0.015
        t, u = line.along_across(left[:, 1] * pitch, left[:, 0] * pitch)
        turned = np.abs((left[:, 2] - line.angle + np.pi / 2) % np.pi - np.pi / 2)
        done = (np.abs(u) < reach) & (t > line.start - reach) & (t < line.end + reach) & (turned < 0.25)
        done[0] = True
        left = left[~done]
    return joints, refused


def _same(one: Strip, other: Strip) -> bool:
    """Does one's middle lie in the other, and about along it?"""
    turned = abs((one.angle - other.angle + np.pi / 2) % np.pi - np.pi / 2)
    return turned < 0.05 and _near(other, one.x, one.y, 0.01)


def _over(strips: list[Strip], shape: tuple[int, ...], pitch: float, reach: float) -> BoolArray:
    """Cells that a strip or ``reach`` (m) beside it goes into."""
    j, i = np.arange(float(shape[0]))[:, None], np.arange(float(shape[1]))
    out = np.zeros(shape, np.bool_)
    for strip in strips:
        t, u = strip.along_across(i * pitch, j * pitch)
        out |= (np.abs(u) < strip.width / 2 + reach + 0.71 * pitch) & (t > strip.start) & (t < strip.end)
    return out


def _raise(strips: list[Strip], points: Points, groove: BoolArray, noise: float, farthest: float) -> Joints:
    """Joint by joint; a point that one has raised counts as raised for the next, which crosses it.

    farthest : m off the slab that a point of it may lie."""
    above = points.above.copy()
    rise, gone = np.zeros(len(above)), np.zeros(len(above), np.bool_)
    kept, spreads = [], []
    for strip in strips:
        which, t, u = points.beside(strip, REACH)
        there = ~gone[which]
        which, t, u = which[there], t[there], u[there]
        verdict = others(t, u, above[which], strip, noise, points.across(strip))
        if verdict.stepped or not is_joint(strip, verdict, strip.chance(0.0)):
            continue  # beside a step either side may be the slab; or it was seen through another joint
        if verdict.folded:  # a joint along a crest: its depth and how round the crest is cannot be told apart
            raised = left_out(t, u, above[which] - at_bin(verdict.base, u), strip, noise)
        else:
            raised = settle(t, u, above[which] - at_bin(verdict.base, u), strip, noise, farthest)
        above[which] += raised.rise
        rise[which] += raised.rise
        gone[which] |= raised.out
        if raised.whole:
            kept.append(strip)
            spreads.append(raised.spread)
    touched = gone | (rise != 0)
    return Joints(points.number[touched], rise[touched], gone[touched], groove, tuple(kept), tuple(spreads))
