"""Published classes of flatness, for a reader to compare with. None of them decides whether a floor will
serve.

DIN 18202:2013, table 3 row 3 (finished floors): 2, 4, 10, 12 and 15 mm at 0.1, 1, 4, 10 and 15 m between two
points, between them linear, then whole millimetres: 2 m -> 6, 6 m -> 11. BS 8204: SR1, SR2, SR3 with 3, 5, 10
mm under a 2 m straightedge. ACI 117-10: overall FF/FL 20/15, 25/20, 35/25, 45/35, 60/40, each part of the
floor at least 3/5 of it. FF 12, 20, 25, 32, 50 go with about 1/2, 5/16, 1/4, 3/16, 1/8 in under a 10 ft
straightedge; the source calls that rough.
"""

from __future__ import annotations

import math

import numpy as np

from crestcut.base.units import INCH

DIN_LENGTHS, DIN_GAPS = (0.1, 1.0, 4.0, 10.0, 15.0), (0.002, 0.004, 0.010, 0.012, 0.015)  # m
BS_CLASSES = (("SR1", 0.003), ("SR2", 0.005), ("SR3", 0.010))  # m under BS_LENGTH
BS_LENGTH = 2.0  # m
ACI_CLASSES = ((20, 15), (25, 20), (35, 25), (45, 35), (60, 40))  # overall FF, FL
LOCAL_SHARE = 3 / 5  # least of a part over the overall number (ACI 117-10)
TEN_FEET = 120 * INCH  # m
ROUGHLY = (
    (12.0, 1 / 2),
    (20.0, 5 / 16),
    (25.0, 1 / 4),
    (32.0, 3 / 16),
    (50.0, 1 / 8),
)  # FF, in under TEN_FEET


def din_gap(apart: float) -> float:
    """What row 3 allows between points ``apart`` m from each other, m, in whole millimetres."""
    linear = float(np.interp(apart, DIN_LENGTHS, DIN_GAPS)) * 1000
    return math.floor(linear + 0.5 + 1e-9) / 1000


def bs_class(gap: float) -> str:
    """The best class that a gap (m) under 2 m keeps to; "none"."""
    return next((name for name, most in BS_CLASSES if gap <= most + 1e-12), "none")


def aci_class(ff: float, fl: float) -> str:
    """The best overall class that both numbers reach; "none"."""
    kept = [f"{a}/{b}" for a, b in ACI_CLASSES if ff >= a and fl >= b]
    return kept[-1] if kept else "none"


def rough_gap(ff: float) -> float:
    """What roughly goes with an FF under a 10 ft straightedge, m; by 1/FF between the published pairs."""
    inverse = [1 / number for number, _ in reversed(ROUGHLY)]
    return float(np.interp(1 / ff, inverse, [inch for _, inch in reversed(ROUGHLY)])) * INCH
