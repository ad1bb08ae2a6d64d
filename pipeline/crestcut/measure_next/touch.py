"""What feeling a gap is worth where there may be none: a touch tells only that it is not above zero."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from crestcut.base.grid import FloatArray

CARD = 0.0005  # m: thinner than a card
FEW = 10  # draws: of fewer no spread is spoken of


@dataclass(frozen=True)
class Worth:
    """touch : chance that no card goes in, 0..1.  given_touch, given_clear, given_reading : how many times
    narrower the least clearance is known once it touches, once it is known to clear a card and no more, once
    the gap is read; NaN where too few draws do so.  narrows : what is to be expected over the outcomes: the
    root of the variance over its mean after them (law of total variance).
    """

    touch: float
    given_touch: float
    given_clear: float
    given_reading: float
    narrows: float


def worth_of(least: FloatArray, gap: FloatArray, read: float) -> Worth:
    """From draws (d,) of the least clearance and of the gap where it is felt, m; read : 1 sd of a reading, m.

    A reading's part is the linear one among the draws that have a gap.
    """
    touches, card = gap <= 0, gap >= CARD
    whole = float(least.var())
    told, kept = _left(least[touches]), _reading_leaves(least[~touches], gap[~touches], read)
    # outcomes of too few draws tell nothing that could be counted on
    each = [whole if np.isnan(x) else x for x in (told, kept)]
    share = float(touches.mean())
    mean = share * each[0] + (1 - share) * each[1]
    known = [float(np.sqrt(whole / max(x, 1e-12))) for x in (told, _left(least[card]), kept, mean)]
    return Worth(share, *known)


def noise_alike(least: FloatArray, gap: FloatArray, narrows: float) -> float:
    """Variance, m2, of the error of a plain reading of ``gap`` that would narrow the least as much."""
    with_gap = float(np.cov(least, gap, bias=True)[0, 1])
    gained = float(least.var()) * (1 - 1 / narrows**2)
    return max(with_gap**2 / max(gained, 1e-15) - float(gap.var()), 0.0)


def _left(least: FloatArray) -> float:
    return float(least.var()) if len(least) >= FEW else float("nan")


def _reading_leaves(least: FloatArray, gap: FloatArray, read: float) -> float:
    """Variance of the least, m2, once the gap is read."""
    if len(least) < FEW:
        return float("nan")
    both = np.cov(least, gap, bias=True)
    return float(both[0, 0] - both[0, 1] ** 2 / (both[1, 1] + read**2))
