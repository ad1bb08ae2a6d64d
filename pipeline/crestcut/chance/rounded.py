"""A mesh lays straight triangles across a crest: the crest itself stands higher than the mesh."""

from __future__ import annotations

import numpy as np

from crestcut.base.grid import HeightGrid
from crestcut.base.units import millimetres
from crestcut.contact import Clearance

BASE = 0.15  # m: slopes before and after a place are taken over so much, and over no less than an edge
LEAST = 0.0002  # m: less is not worth a word


def crest_cut(height: HeightGrid, clearance: Clearance, edge: float) -> float:
    """Most by which triangles with sides of ``edge`` (m) may have cut the ground under the worst place, m.

    A chord of length t across a fold of k passes k t / 4 below it when it lies evenly, and k t f (1 - f) when
    the fold is at the share f of it. The fold is the sharpest of those in four directions through the place,
    each 22.5 degrees or less from the truth: 8 % too little at most. Zero in a dip, for points (edge 0), and
    where nothing is measured beside the place. A vertex that lies on the crest cuts nothing: the least gap is
    sought over many places and finds such vertices, so the truth is between none and all of this.
    """
    worst = clearance.worst
    if worst is None or not edge > 0:
        return 0.0
    base, way = max(BASE, edge), np.arange(4) * np.pi / 4
    beside = base * np.column_stack([np.cos(way), np.sin(way)])
    middle = float(height.sample(np.array(worst.xy)))
    fold = (2 * middle - height.sample(worst.xy + beside) - height.sample(worst.xy - beside)) / base
    fold = fold[np.isfinite(fold)]
    most = float(max(fold.max(initial=0.0), 0.0)) * edge / 4
    return most if most > LEAST else 0.0


def in_words(most: float) -> tuple[str, ...]:
    """What is said of it."""
    if not most > 0:
        return ()
    said = f"the mesh's triangles may have cut the crest there by up to {millimetres(most)}"
    return (f"{said}: anything from none to all of it is taken off the gap",)
