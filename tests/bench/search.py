"""The search for another line on 20 scenes with a planted way round, against trying every line 25 mm apart.

python tests/bench/search.py [scenes]
"""

from __future__ import annotations

import sys
import time
from pathlib import Path

import numpy as np
from history import figure

HERE = Path(__file__).resolve().parents[1]
sys.path[:0] = [str(HERE), str(HERE / "contact")]


def main() -> None:
    from test_search import planted

    from crestcut.contact.clearance.search import FINE, clearances, search_lines

    search_lines(planted(0)[0], 0.2)
    short, slowest = 0.0, 0.0
    axis = np.arange(-0.7, 0.701, 0.025)
    grid = np.stack(np.meshgrid(axis, axis), -1).reshape(-1, 2)
    for seed in range(int(sys.argv[1]) if len(sys.argv) > 1 else 20):
        lines, _ = planted(seed)
        start = time.perf_counter()
        best = search_lines(lines, 0.7)[0]
        seconds = time.perf_counter() - start
        every = float(clearances(lines, grid, FINE).max())
        short, slowest = max(short, every - best.clearance), max(slowest, seconds)
        print(
            f"scene {seed}: found {best.clearance * 1e3:.2f} mm in {seconds:.1f} s, "
            f"every line {every * 1e3:.2f} mm"
        )
    figure("short of the exhaustive search", short * 1e3, "mm", "less")
    figure("slowest search", slowest, "s", "less")


if __name__ == "__main__":
    main()
