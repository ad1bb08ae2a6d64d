"""How far off are places set out by the printed tape ties? Monte Carlo with 1 mm (1 sd) of error on every
tape.

Run: python tests/bench/work_ties.py
"""

from __future__ import annotations

import dataclasses
import math

import numpy as np
from history import figure

from crestcut.base.grid import GridFrame, HeightGrid
from crestcut.work.ties import place_from_ties, tape_ties


def main() -> None:
    draw = np.random.default_rng(0)
    frame = GridFrame((0.0, 0.0), 0.0, 0.02, (251, 501))
    flat = HeightGrid(frame, np.zeros(frame.shape))
    misses, crossings, refused = [], [], 0
    for _ in range(60):
        marks = {n: (float(draw.uniform(0, 10)), float(draw.uniform(0, 5))) for n in "ABCD"}
        for _ in range(40):
            at = (float(draw.uniform(0.2, 9.8)), float(draw.uniform(0.2, 4.8)))
            ties = tape_ties(at, marks, flat)
            if ties is None:
                refused += 1
                continue
            crossings.append(ties.crossing)
            for e in draw.normal(0, 0.001, (20, 2)):
                off = dataclasses.replace(
                    ties,
                    first_distance=ties.first_distance + e[0],
                    second_distance=ties.second_distance + e[1],
                )
                misses.append(math.dist(place_from_ties(off, marks), at) * 1000)
    miss = np.asarray(misses)
    print(
        f"{len(crossings)} places printed, {refused} refused; crossing {min(crossings):.0f} to"
        f" {max(crossings):.0f} degrees"
    )
    figure("miss, median", float(np.median(miss)), "mm", "less")
    figure("miss, 99 %", float(np.quantile(miss, 0.99)), "mm", "less")
    figure(f"miss, largest of {len(miss)}", float(miss.max()), "mm", "less")
    figure("within 5 mm", 100 * float(np.mean(miss <= 5)), "%", "more")


if __name__ == "__main__":
    main()
