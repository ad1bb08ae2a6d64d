"""What a scan's wrong scale, and a wrong 'up', do to the least gap.

The vehicle is measured with a tape, the slab with the scan. Of a scan s times as large the ground is
z_s(x) = s z(x / s), so d z_s / ds = z - x . grad z at s = 1 (Euler's theorem on homogeneous functions). The
gap is the ground under the wheels less that under the part, weighted, and any plane cancels in it. So it
stays where z is made of planes that meet (degree one: the sharp crest), falls by (s - 1) h over a hump h high
that fits between the axles, and rises by (s - 1) h over a round crest that rises by h between them: a
parabola has degree two.
"""

from __future__ import annotations

import math

import numpy as np
import pytest

from scenes import Ground, L, arc, belly, crest, scene, vehicle

CELL, HUMP, ROUND = 0.04, 0.060, 12.0


def hump(x: np.ndarray, y: np.ndarray) -> np.ndarray:
    return np.asarray(HUMP * np.cos(np.clip(x / 0.6, -0.5, 0.5) * np.pi) ** 2)


def least(ground: Ground, half: float = 0.1) -> float:
    worst = scene(ground, vehicle(belly(0.13), tyre_width=2 * half), cell=CELL).before.worst
    assert worst is not None
    return worst.gap


@pytest.mark.parametrize(
    ("ground", "rise"),
    [(crest(0.08), 0.0), (hump, -HUMP), (arc(ROUND), L**2 / 8 / ROUND)],
    ids=["a sharp crest", "a hump between the axles", "a round crest"],
)
@pytest.mark.parametrize("s", [1.01, 0.99])
def test_a_scan_of_another_scale_moves_the_gap_by_what_is_not_of_degree_one(
    ground: Ground, rise: float, s: float
) -> None:
    changed = least(lambda x, y: s * ground(x / s, y / s)) - least(ground)
    assert changed == pytest.approx((s - 1) * rise, abs=0.08 * 0.01 * abs(rise) + 2e-5)


@pytest.mark.parametrize("degrees", [1.0, 3.0, 5.7])
def test_an_up_that_leans_moves_no_gap(degrees: float) -> None:
    """Slab and vehicle lean together, tyres too, so to first order nothing moves. Of second order is that a
    gap is measured vertically: it grows by 1 / cos of the lean."""
    lean, flat = math.tan(math.radians(degrees)), least(crest(0.08))
    longer = math.hypot(1.0, lean)
    if degrees < 2:
        assert least(lambda x, y: crest(0.08)(x, y) + lean * x) == pytest.approx(flat, abs=5e-5)
    for half in (0.1, 0.06):
        # the ridge turned about the line of travel, not sheared: its height is square to the slab's own
        across = least(lambda x, y: crest(0.08)(x, y) * longer + lean * y, half)
        assert across == pytest.approx(flat * longer, abs=5e-5)
