"""How much lower than its rigid disk an elastic tyre rides on a crest, by radius, load and change of slope.

python tests/bench/elastic_tyre.py
"""

from __future__ import annotations

import sys
from pathlib import Path

HERE = Path(__file__).resolve().parents[1]
sys.path[:0] = [str(HERE), str(HERE / "vehicle")]


def main() -> None:
    from test_elastic_tyre import lower_than_the_disk

    from crestcut.vehicle.loads import APEX, APEX_GRADE

    print(f"radial springs, mm lower than the disk; the allowance is {APEX * 1000:g} mm at {APEX_GRADE:.0%}")
    for pressed in (0.015, 0.020, 0.025, 0.030):
        for loaded in (0.28, 0.315, 0.35):
            row = "  ".join(
                f"{grade:.0%} {lower_than_the_disk(loaded, pressed, grade) * 1000:4.1f}"
                for grade in (0.05, 0.10, 0.15, 0.20)
            )
            print(f"loaded radius {loaded * 1000:.0f} mm, pressed by {pressed * 1000:.0f} mm: {row}")


if __name__ == "__main__":
    main()
