"""How deep the cut may be at every node, and what says so."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from crestcut.base.grid import HeightGrid
from crestcut.cut.area import inside
from crestcut.cut.feather import feather_in
from crestcut.cut.records import Limits
from crestcut.terrain import Surface


@dataclass(frozen=True)
class KeepArea:
    """An area that is cut less or not at all: site x, y corners (m), and the deepest cut in it (m)."""

    kind: str
    corners: tuple[tuple[float, float], ...]
    deepest: float


def cut_limits(
    surface: Surface, deepest: float, deepest_reason: str, feather: float, keeps: Sequence[KeepArea]
) -> Limits:
    """The depth allowed everywhere: the slab's own limit, keep areas, and nothing at all outside measured
    slab.

    The limit of a keep area reaches out with the feather: a cut beside it must taper down to it. The slab's
    outline does not: there is no concrete beyond it to taper into.
    """
    frame = surface.height.frame
    reasons = [deepest_reason]
    allowed = np.full(frame.shape, deepest)
    reason = np.zeros(frame.shape, dtype=np.int16)
    for keep in keeps:
        name = f"keep area ({keep.kind})"
        mask = inside(frame, keep.corners) & (allowed > keep.deepest)
        allowed[mask] = keep.deepest
        reasons.append(name)
        reason[mask] = len(reasons) - 1
    tapered = feather_in(allowed, feather, frame.cell)
    if len(keeps):
        near = tapered < allowed - 1e-12
        reasons.append("feather beside a keep area")
        reason[near] = len(reasons) - 1
    never = (("ground that is not slab", ~surface.slab), ("not measured", ~surface.height.measured))
    for name, mask in never:
        reasons.append(name)
        tapered[mask] = 0.0
        reason[mask] = len(reasons) - 1
    return Limits(HeightGrid(frame, tapered), reason, tuple(reasons))
