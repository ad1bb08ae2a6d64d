"""What a total station would have read on the courtyard: prints the control and check tables at the end of
``configs/jobs/courtyard_apron_surveyed.toml``. Invented, like the place: ``python sample_scans/surveyed.py``.
"""

from __future__ import annotations

import courtyard
import numpy as np

EAST, NORTH, UP, TURN = 500_123.412, 5_800_045.871, 112.906, np.radians(37.2)  # of the walk's origin
GRID = 0.9996 * (1 - 111.5 / 6_371_000)  # UTM on its central meridian, 111.5 m up
SURVEYED, SEEN = 0.002, 0.004  # m, 1 sd: of a coordinate as surveyed, and as picked in the scan
CONTROL = {"A": (3.20, 0.62), "B": (6.40, 0.62), "C": (6.40, 4.30), "P1": (1.95, 3.90), "P2": (9.60, 1.10)}
CHECKS = {"K1": (2.40, 2.10), "K2": (4.30, 1.60), "K3": (5.40, 2.50), "K4": (7.30, 2.00), "K5": (8.90, 2.30)}


def tables() -> str:
    """The end of the job file."""
    rows = []
    rng = np.random.default_rng(20)
    for kind, points in (("control", CONTROL), ("check", CHECKS)):
        for name, (x, y) in points.items():
            east = GRID * (np.cos(TURN) * x - np.sin(TURN) * y) + EAST
            north = GRID * (np.sin(TURN) * x + np.cos(TURN) * y) + NORTH
            at = np.array([east, north, float(courtyard.ground(x, y)) + UP]) + rng.normal(0, SURVEYED, 3)
            rows.append(f'[[{kind}]]\nname = "{name}"\nat = [{at[0]:.3f}, {at[1]:.3f}, {at[2]:.3f}]')
            if kind == "control":
                # A, B and C are chalk crosses, marks of the job: the walk's own places of them
                seen = np.array([x, y]) + rng.normal(0, SEEN, 2)
                rows.append(
                    f'seen = "{name}"' if len(name) == 1 else f"seen = [{seen[0]:.3f}, {seen[1]:.3f}]"
                )
            rows.append('within = "5 mm"' if kind == "control" else 'within = "2 mm"')
    return "\n".join(rows) + "\n"


if __name__ == "__main__":
    print(tables(), end="")
