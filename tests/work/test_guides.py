"""Blocks and chalk lines: judged by a compiled loop, against the same over whole arrays; facets by rows."""

from __future__ import annotations

import numpy as np
import pytest
from scipy import ndimage

from crestcut.cut import Facet
from crestcut.work.guides import AIR, Around, Cells, Guide, judged
from crestcut.work.site import Site, facet_depth
from crestcut.work.timber import stock_of

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


def row_by_row(ground: np.ndarray, facets: list[Facet]) -> tuple[np.ndarray, np.ndarray]:
    depth, done = np.zeros(ground.shape), np.zeros(ground.shape, bool)
    places = np.arange(ground.shape[1])
    for f in facets:
        for row in range(f.low, f.high + 1):
            share = (row - f.low) / max(f.high - f.low, 1)
            first, last, *ends = (a + (b - a) * share for a, b in (f.start, f.stop, f.rear_at, f.front_at))
            at = places[(places >= first - 1e-6) & (places <= last + 1e-6)]
            rear, front = np.interp(ends, places, ground[row]) + np.array([f.rear, f.front])
            level = rear + (front - rear) * (at - ends[0]) / (ends[1] - ends[0])
            depth[row, at] = np.fmax(depth[row, at], ground[row, at] - level)
            done[row, at] = True
    return depth, done


def test_facets_cut_what_their_two_chalk_lines_say_row_by_row_to_the_last_bit() -> None:
    rng = np.random.default_rng(11)
    for n in range(60):
        ground = 0.02 * rng.standard_normal((20, 40)).cumsum(axis=1)
        ground[rng.random(ground.shape) < 0.01 * (n % 2)] = np.nan
        facets = []
        for _ in range(2):
            low = int(rng.integers(0, 18))
            start, stop, rear, front = rng.uniform([-2, 20, -2, 26], [20, 41, 14, 41], (2, 4)).T.tolist()
            if n % 3 == 0:  # blocks on nodes, as they are placed
                rear, front = np.rint(rear).tolist(), np.rint(front).tolist()
            heights = rng.uniform(-0.02, 0.02, 2).tolist()
            facets.append(Facet(low, int(rng.integers(low, 20)), start, stop, rear, front, *heights))
        for found, expected in zip(facet_depth(ground, facets), row_by_row(ground, facets), strict=True):
            np.testing.assert_array_equal(found, expected)


def test_a_guide_that_has_seen_a_piece_finds_what_a_new_one_does() -> None:
    """A ridge on a rough ramp, its top cut off: blocks already in use are taken where they serve, so what is
    found of a piece hangs on those found before."""
    v, u = np.mgrid[:40, :160] * 0.02
    ground = 0.05 * u + 0.03 * np.exp(-(((u - 1.6) / 0.35) ** 2))
    ground += 0.002 * ndimage.gaussian_filter(np.random.default_rng(7).standard_normal(u.shape), 2) / 0.14
    finished = np.minimum(ground, 0.05 * u + 0.012)
    core = ground - finished > 0.0003
    site = Site(ground, finished, ~core, 0.02, u[0], v[:, 0])
    heights = stock_of(None, True).heights
    even, odd = set(range(0, len(heights), 2)), set(range(1, len(heights), 2))
    found: list[list[Facet | None]] = []
    kept = Guide(site, core, heights, BELOW)
    for used in (set(), odd, even, odd):
        found.append([])
        for low in range(0, 40, 10):
            piece, new = (low, low + 9, 50.0, 110.0, 0.0, 0), Guide(site, core, heights, BELOW)
            new.used, kept.used = set(used), set(used)
            found[-1].append(kept.facet(piece))
            assert found[-1][-1] == new.facet(piece)
            assert kept.used == new.used
    assert found[1] == found[3] != found[2] != found[0]
