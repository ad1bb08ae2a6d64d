"""Joints: found for what they are, their points raised by their depth, nothing else taken for one."""

from __future__ import annotations

import math
from collections.abc import Callable

import numpy as np
import pytest
from surface_scene import Crest, crest_scan, scan_of

from crestcut.base.grid import BoolArray, FloatArray, GridFrame
from crestcut.scan.records import Scan
from crestcut.terrain.build import build_surface, level_means, measured_cells
from crestcut.terrain.ground.ground import find_ground
from crestcut.terrain.ground.raster import Lattice, sum_cells
from crestcut.terrain.heights.plain import HALVES
from crestcut.terrain.joints.find import Joints, find_joints
from crestcut.terrain.joints.lines import Strip
from crestcut.terrain.joints.points import settle
from crestcut.terrain.joints.search import LOW, mark_low, seen_in_lines
from crestcut.terrain.joints.sums import SEGMENT, Groove, gains
from crestcut.terrain.records import ErrorModel, Surface

NO_ERROR = ErrorModel(0.0, 0.0, 0.1, 0.0, 0.4, "", "", "")
SLAB = Crest("sharp", 0.0, at=(5.0, 0.0))  # its crest is out of sight


def off_line(xy: FloatArray, angle: float, at: float = 0.0) -> FloatArray:
    """Distance from a line at ``angle`` (rad) to the rows, ``at`` m beside the middle."""
    return xy[:, 1] * np.cos(angle) - xy[:, 0] * np.sin(angle) - at


def joints_of(scan: Scan, frame: GridFrame) -> tuple[Joints, Lattice]:
    """What is found on a scan, up to there as the surface is built."""
    lattice = Lattice.around(frame)
    placed = lattice.place(scan.points)
    ground = find_ground(lattice, placed)
    cells = sum_cells(lattice, placed, ground.keep)
    mask = measured_cells(cells.points, lattice.pitch)
    means = level_means(cells, mask, lattice.pitch, ground.noise)
    return find_joints(means, placed, ground.keep), lattice


def tyre(surface: Surface, radius: float = 0.315) -> FloatArray:
    """Lowest point of a tyre 0.2 m wide rolled along the middle row, m."""
    h, cell = surface.height.values, surface.height.frame.cell
    half, middle, k = int(0.1 / cell), h.shape[0] // 2, int(0.2 / cell)
    profile = h[middle - half : middle + half + 1].max(axis=0)
    drop = radius - np.sqrt(radius**2 - (np.arange(-k, k + 1) * cell) ** 2)
    return np.array([(profile[i - k : i + k + 1] - drop).max() for i in range(k, len(profile) - k)])


@pytest.mark.parametrize(
    ("angle", "width", "depth", "noise", "density"),
    [
        (1.9, 0.012, 0.025, 0.008, 3000.0),
        (1.6, 0.012, 0.012, 0.008, 3000.0),
        (0.3, 0.005, 0.006, 0.002, 3000.0),
        (2.5, 0.015, 0.006, 0.001, 3000.0),
        (1.2, 0.008, 0.006, 0.008, 60_000.0),
    ],
)
def test_a_joint_is_measured_and_its_points_keep_their_noise(
    angle: float, width: float, depth: float, noise: float, density: float
) -> None:
    """Place, depth and width against the truth, and its points against the same ones without it."""
    scan, frame = crest_scan(SLAB, 7, noise, density)
    inside = np.abs(off_line(scan.points[:, :2], angle)) < width / 2
    sunk = scan_of(scan.points - depth * inside[:, None] * (0, 0, 1))
    joints, _ = joints_of(sunk, frame)
    assert len(joints.strips) == 1
    turned = (joints.strips[0].angle - angle + np.pi / 2) % np.pi - np.pi / 2
    assert abs(turned) < 0.004
    rise = np.zeros(len(scan.points))
    rise[joints.number] = joints.rise
    raised = rise > 0.5 * depth
    # the mean of the noise in the joint goes into its depth: how far that may be off
    within = 4 * np.hypot(noise / np.sqrt(inside.sum()), joints.spreads[0])
    assert np.median(rise[raised]) == pytest.approx(depth, abs=within)
    # where the edges are is known to a few points
    assert (raised & inside).sum() >= 0.93 * inside.sum() - 2
    assert (raised & ~inside).sum() <= 0.03 * inside.sum() + 1


@pytest.mark.parametrize(
    ("noise", "depth", "seed"), [(0.001, 0.006, 1), (0.001, 0.006, 2), (0.008, 0.025, 16)]
)
def test_joints_that_cross_do_not_move_a_tyre(noise: float, depth: float, seed: int) -> None:
    """By more than 0.2 mm with the same noise; taken away by hand, the points of seed 16 move it by 0.3."""
    scan, frame = crest_scan(SLAB, seed, noise)
    xy = scan.points[:, :2]
    inside = (np.abs(off_line(xy, 1.8)) < 0.006) | (np.abs(off_line(xy, 0.45, 0.1)) < 0.006)
    bare = tyre(build_surface(scan, frame, error=NO_ERROR))
    sunk = scan_of(scan.points - depth * inside[:, None] * (0, 0, 1))
    jointed = build_surface(sunk, frame, error=NO_ERROR)
    assert any(note.startswith("2 straight joints bridged") for note in jointed.notes)
    assert np.abs(tyre(jointed) - bare).max() <= 2e-4
    assert not any("joint" in what for what, _ in jointed.removed)  # raised, not left out


SHAPES: dict[str, Callable[[FloatArray], FloatArray]] = {
    "nothing": lambda v: 0 * v,
    "sag of two 20 % slopes": lambda v: 0.2 * np.abs(v),
    "crest": lambda v: -0.2 * np.maximum(v, 0),
    "crest of 3 m radius": lambda v: -(v**2) / 6,
    "step": lambda v: np.where(v > 0, -0.025, 0.0),
    "gutter 120 mm wide": lambda v: -0.02 * np.clip(1 - np.abs(v) / 0.06, 0, 1),
}


@pytest.mark.parametrize("shape", SHAPES)
@pytest.mark.parametrize("noise", [0.002, 0.008])
def test_what_is_no_joint_is_not_taken_for_one(shape: str, noise: float) -> None:
    for seed in range(3):
        angle = 0.4 + seed

        def extra(xy: FloatArray, angle: float = angle) -> FloatArray:
            return SHAPES[shape](off_line(xy, angle))

        joints, _ = joints_of(*crest_scan(SLAB, 40 + seed, noise, extra=extra))
        assert not joints.strips and not joints.any


def test_the_surface_says_where_its_joints_run() -> None:
    """Both ends in the grid's own u and v, on the line that was sawn, to a millimetre beside it."""
    angle, at = 1.7, 0.1
    scan, frame = crest_scan(SLAB, 7, 0.002, 6000.0)
    inside = np.abs(off_line(scan.points[:, :2], angle, at)) < 0.004
    surface = build_surface(scan_of(scan.points - 0.008 * inside[:, None] * (0, 0, 1)), frame, error=NO_ERROR)
    assert surface.joints.shape == (1, 2, 2)
    ends = frame.to_site(surface.joints[0])
    assert np.abs(off_line(ends, angle, at)).max() < 0.001
    assert np.linalg.norm(ends[1] - ends[0]) > 0.8 * min(frame.size)


def test_a_joint_of_two_depths_is_left_out_rather_than_raised() -> None:
    """Sealant stands in every other decimetre: no one depth is true of it."""
    scan, frame = crest_scan(SLAB, 3, 0.001, 20_000)
    inside = np.abs(off_line(scan.points[:, :2], np.pi / 2)) < 0.006
    deep = np.where(np.floor(scan.points[:, 1] / 0.1) % 2 > 0, 0.004, 0.010)
    joints, _ = joints_of(scan_of(scan.points - (deep * inside)[:, None] * (0, 0, 1)), frame)
    assert not joints.strips
    out = np.zeros(len(inside), bool)
    out[joints.number] = joints.out
    assert (out & inside).sum() > 0.9 * inside.sum()


def strip(length: float = 2.0, width: float = 0.012, depth: float = 0.025) -> Strip:
    return Strip(0, 0, 0.0, -length / 2, length / 2, -width / 2, width / 2, depth, 500.0)


def test_points_are_raised_to_their_mean_without_the_joint() -> None:
    """Over many draws the surface of the raised points is that of the bare ones: no bias, and a spread near
    what the depth's own error leaves (strip mean lost, edges known to a few points)."""
    rng = np.random.default_rng(5)
    off = []
    for _ in range(60):
        n = int(3000 * 2.0 * 0.2)
        t, u, noise = rng.uniform(-1, 1, n), rng.uniform(-0.1, 0.1, n), 0.008 * rng.standard_normal(n)
        inside = np.abs(u) < 0.006
        raised = settle(t, u, noise - 0.025 * inside, strip(), 0.008, 0.028)
        assert raised.whole
        off.append((raised.rise - 0.025 * inside)[~raised.out].sum() / inside.sum())
        assert raised.spread == pytest.approx(0.008 / np.sqrt(inside.sum()), rel=0.15)
    ideal = 0.008 / np.sqrt(72)  # the mean of the noise of 72 points
    assert abs(np.mean(off)) < 4 * np.std(off) / np.sqrt(len(off))
    assert np.std(off) < 1.8 * ideal


def test_lines_find_a_joint_that_cells_do_not() -> None:
    """Brute force beside it: the mean of the points within 6 mm of the line, over those beside it."""
    rng = np.random.default_rng(11)
    xy = rng.uniform(0, 2.4, (17_000, 2))
    across = off_line(xy - 1.2, 0.77)
    above = 0.008 * rng.standard_normal(len(xy)) - 0.008 * (np.abs(across) < 0.006)
    found = seen_in_lines(xy[:, 0], xy[:, 1], above, 0.01, 0.008)
    best = found[found[:, 4].argmax()]
    assert best[2] == pytest.approx(0.77, abs=0.012)
    at = np.array([[best[1], best[0]]]) * 0.01 - 1.2
    assert abs(off_line(at, 0.77)[0]) < 0.006
    along = (xy - 1.2) @ (np.cos(best[2]), np.sin(best[2])) - at[0] @ (np.cos(best[2]), np.sin(best[2]))
    line: BoolArray = np.abs(along) < 1.024
    v = np.abs(off_line(xy - 1.2 - at[0], float(best[2])))
    fall = above[line & (v > 0.01) & (v < 0.05)].mean() - above[line & (v < 0.006)].mean()
    assert best[3] == pytest.approx(fall, rel=0.25)


def test_the_depths_own_error_widens_the_standard_error_by_its_share() -> None:
    """Against the weight that a parabola under the window gives to the strip, by brute force."""
    half = HALVES[0]
    u = (np.arange(-3199, 3200) + 0.5) * 1e-4
    k = (1 - (u / half) ** 2) ** 2 * (np.abs(u) < half)
    f = np.stack([np.ones_like(u), u / half, (u / half) ** 2])
    weights = np.linalg.solve(f * k @ f.T, f * k)[0]
    share = weights[np.abs(u) < 0.006].sum()
    joint = Strip(0.5, 0.5, 0.0, -0.5, 0.5, -0.006, 0.006, 0.025, 500.0)
    none = np.zeros(0, np.int64)
    joints = Joints(none, np.zeros(0), none > 0, np.zeros((101, 101), bool), (joint,), (0.001,))
    widest = np.zeros((101, 101), np.int8)
    alone, both = (joints.widened(np.full((101, 101), e), widest, 0.01) for e in (0.0, 1e-4))
    assert alone[50, 50] == pytest.approx(0.001 * share, rel=0.03)
    assert alone[95, 50] == 0.0
    assert both[50, 50] == pytest.approx(np.hypot(1e-4, alone[50, 50]))


@pytest.mark.parametrize(("j", "i", "angle"), [(0, 1, 0.3), (11, 17, 2.2), (6, 9, 1.2), (4, 4, 0.0)])
def test_low_cells_beside_a_strip_are_marked_as_one_by_one(j: int, i: int, angle: float) -> None:
    """Over the rim too: a cell before the first is none, not the last."""
    rng = np.random.default_rng(7)
    count, residual = rng.integers(0, 3, (12, 18)).astype(float), rng.normal(0.0, 0.004, (12, 18))
    found, wanted = np.zeros((12, 18), np.bool_), np.zeros((12, 18), np.bool_)
    wanted[0, 0] = found[0, 0] = True  # what is marked already stays
    mark_low(count, residual, j, i, angle, 6, 0.003, found)
    for t in range(-6, 7):
        y, x = math.floor(j + t * math.sin(angle) + 0.5), math.floor(i + t * math.cos(angle) + 0.5)
        for yy in range(max(0, y - 1), min(12, y + 2)):
            for xx in range(max(0, x - 1), min(18, x + 2)):
                wanted[yy, xx] |= count[yy, xx] > 0 and residual[yy, xx] < -LOW * 0.003
    assert wanted.sum() > 2
    assert np.array_equal(found, wanted)


def test_what_a_groove_gains_along_its_line_is_the_sum_over_its_points() -> None:
    rng = np.random.default_rng(3)
    t, u, above = rng.uniform(-0.73, 0.91, 400), rng.uniform(-0.05, 0.05, 400), rng.normal(-0.002, 0.004, 400)
    groove, first = Groove(0.02, math.hypot(1.0, 0.02), -0.02, 0.015, 0.6, 0.001, 0.004), -8
    sums, wanted, on = np.zeros(18), np.zeros(18), 0
    number = gains(t, u, above, groove, 2 * 0.003**2, first, sums)
    for along, across, z in zip(t, u, above, strict=True):
        off = (across - groove.lean * along) / groove.slant
        if not groove.right < off < groove.left or abs(along) > groove.longest:
            continue
        slab, strip = (z - groove.level) ** 2, (z - groove.level + groove.depth) ** 2
        wanted[math.floor(along / SEGMENT) - first] += min(max((slab - strip) / (2 * 0.003**2), -4.0), 4.0)
        on += 1
    assert number == on
    assert 0 < on < 400
    np.testing.assert_allclose(sums, wanted, rtol=1e-12)
    assert (np.abs(np.diff(sums)) > 1).any()
