"""Real features that most draws of a slab have, each told once."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np

from crestcut.base.grid import FloatArray
from crestcut.terrain.slab.features import PRESENT, Dictionary
from crestcut.terrain.slab.shapes import Columns, Shape

ALIKE = 0.15  # m: shapes of one kind no farther apart are one feature


@dataclass(frozen=True, eq=False)
class Feature:
    """A real feature that most draws have: kind, (2,) grid u, v of its middle in m, NaN along its line;
    height m (of a hump above zero, of a step the far side over the near one), size m, chance 0..1."""

    kind: Shape
    at: tuple[float, float]
    height: float
    size: float
    chance: float


def named(words: Dictionary, amplitude: FloatArray) -> Iterator[Feature]:
    """Humps, hollows, ruts and steps that most draws have; near-same shapes count as one."""
    columns = words.columns
    for kind in (Shape.BUMP, Shape.RUT, Shape.STEP):
        index = np.flatnonzero((columns.kind == kind) & (amplitude != 0).any(axis=1))
        places = 2 if kind == Shape.BUMP else 1
        while len(index):
            has = amplitude[index] != 0
            first = index[int(np.argmax(has.sum(axis=1)))]
            size = float(columns.sizes[first, places])
            apart = np.abs(columns.sizes[index, :places] - columns.sizes[first, :places])
            near = (apart <= max(size, ALIKE)).all(axis=1) & (columns.line[index] == columns.line[first])
            some = has[near].any(axis=0)
            chance = float(some.mean())
            if chance >= PRESENT:
                height = float(amplitude[index[near]][:, some].sum(axis=0).mean())
                yield Feature(kind, _place(columns, int(first)), height, size, chance)
            index = index[~near]


def _place(columns: Columns, number: int) -> tuple[float, float]:
    """Grid u, v of a shape's middle, m; NaN where it runs right across the slab."""
    u, v = columns.sizes[number, :2]
    if columns.kind[number] == Shape.BUMP:
        return float(u), float(v)
    line = columns.lines[columns.line[number]]
    if len(line.at) > 1:
        middle = line.at[len(line.at) // 2]
        return float(middle[0]), float(middle[1])
    along_u = abs(np.sin(line.normal[0])) > abs(np.cos(line.normal[0]))
    return (float("nan"), float(u)) if along_u else (float(u), float("nan"))
