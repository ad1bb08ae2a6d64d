"""The compiled loop that judges blocks and chalk lines, against the same written over whole arrays."""

from __future__ import annotations

import numpy as np
import pytest

from crestcut.work.guides import AIR, Around, Cells, judged

BELOW = 0.031  # m


def over_arrays(
    around: Around, cells: Cells, chalked: tuple[int, int, int, int], up: tuple[float, float]
) -> tuple[float, float, float, float, np.ndarray]:
    ground, wide = around.ground, around.ground.shape[1]
    at = np.stack([a + (b - a) * cells.share for a, b in (chalked[:2], chalked[2:])])
    near = np.clip(np.rint(at).astype(int), 0, wide - 1)
    off = ~around.sound[cells.rows, near] | (at < 0) | (at > wide - 2)
    at = np.clip(at, 0, wide - 2)
    left = np.floor(at).astype(int)
    part, beyond = at - left, np.minimum(left + 1, wide - 1)
    ends = ground[cells.rows, left] * (1 - part)
    ends = ends + np.where(part > 0, ground[cells.rows, beyond], 0.0) * part + np.array(up)[:, None]
    share = (cells.columns - at[0][:, None]) / (at[1] - at[0])[:, None]
    level = ends[0][:, None] * (1 - share) + ends[1][:, None] * share
    touches = 0.0
    for k in (0, len(cells.rows) // 2, len(cells.rows) - 1):
        row, (a, b) = cells.rows[k], at[:, k]
        columns = np.arange(int(a) + 1, int(b))
        under = np.interp(columns, (a, b), ends[:, k]) + BELOW
        over = np.where(around.standing[row, columns], ground[row, columns] + AIR - under, 0.0)
        touches = max(touches, float(np.max(over[~np.isnan(over)], initial=0.0)))
    proud, deep = float((level - cells.plan).max()), float((cells.lowest - level).max())
    return float(off.any(axis=0).mean()), proud, deep, touches, (cells.plan - level)[cells.core]


@pytest.mark.filterwarnings("ignore::RuntimeWarning")  # chalk lines that meet: nothing between them
def test_compiled_as_over_arrays_to_the_last_bit() -> None:
    rng, told = np.random.default_rng(4), np.zeros(4, int)
    for n in range(300):
        ground = 0.02 * rng.standard_normal((30, 50)).cumsum(axis=1)
        ground[rng.random(ground.shape) < 0.002 * (n % 3)] = np.nan
        around = Around(ground, rng.random(ground.shape) < 0.97, rng.random(ground.shape) < 0.6)
        rows = np.unique(rng.integers(3, 27, int(rng.integers(1, 12))))
        columns = np.arange(15, 15 + int(rng.integers(2, 20)))
        core = rng.random((len(rows), len(columns))) < 0.7
        part = np.ix_(rows, columns)
        plan, lowest = (
            np.where(core, ground[part] - 0.01, np.inf),
            np.where(core, ground[part] - 0.05, -np.inf),
        )
        share = (rows - rows[0]) / max(int(rows[-1] - rows[0]), 1)
        cells = Cells(rows, share, columns, core, plan, lowest)
        a, b, c, d = (int(v) for v in rng.integers([-3, -3, 30, 30], [20, 20, 53, 53]))
        beyond, up = np.empty(int(core.sum())), (float(rng.uniform(0, 0.1)), float(rng.uniform(0, 0.1)))
        found = judged(around, cells, (a, b, c, d), up, BELOW, beyond)
        *expected, taken = over_arrays(around, cells, (a, b, c, d), up)
        np.testing.assert_array_equal(found, expected)
        np.testing.assert_array_equal(beyond, taken)
        told += np.array(expected) > 0
    assert (told > 20).all()  # each of them happened
