"""The plan shows what it must, and its scales and coordinates are true."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest
from deliver_scene import CELL, LENGTH, TRACK, WIDTH, make_report, nothing_to_cut
from matplotlib.figure import Figure

from crestcut.report.exchange.mesh import depth_grid
from crestcut.report.pictures import ink
from crestcut.report.pictures.labels import Places, Room
from crestcut.report.pictures.plan import cut_windows, draw_plan, plan_figure, whole_window
from crestcut.report.pictures.plan_contours import contour_levels, contour_lines, deepest_place
from crestcut.report.pictures.plan_coordinates import draw_coordinates
from crestcut.report.pictures.plan_layers import wheel_paths
from crestcut.report.pictures.plan_relief import shading
from crestcut.report.pictures.plan_window import Window
from crestcut.report.pictures.profile import profile_figure


def words(figure: Figure) -> str:
    import matplotlib.text

    return "\n".join(t.get_text() for t in figure.findobj(matplotlib.text.Text))


def test_everything_asked_for_is_on_it() -> None:
    text = words(plan_figure(make_report(clearance=0.098)))
    signs = (
        "line of travel",
        "wheel tracks",
        "worst point",
        "mark",
        "keep area",
        "not measured",
        "ground, not slab",
    )
    said = (
        "Courtyard apron",
        "TOUCHES",
        "worst: overlap",
        "drain\nno cut",
        "x 512306",
        "y 4481",
        "litres",
        " ft",
    )
    for word in (*signs, *said, "edge of the cut", "start", "end", "deepest 13.0 mm"):
        assert word in text, word
    assert "A" in text.split("\n") and "B" in text.split("\n")


@pytest.mark.parametrize("release", ["provisional", "not for cutting"])
def test_the_stamp_is_there_unless_released(release: str) -> None:
    stamped = words(plan_figure(make_report(release=release)))
    assert stamped.count(release.upper()) == 3, "head, and across each map"
    assert "NOT FOR CUTTING" not in words(plan_figure(make_report(release="ok")))


def test_a_slab_with_nothing_to_cut_says_that_and_is_not_stamped() -> None:
    for draw in (plan_figure, profile_figure):
        shown = words(draw(nothing_to_cut()))
        assert "NOT FOR CUTTING" not in shown and "Nothing to cut" in shown
        assert "Nothing to cut" not in words(draw(make_report(release="not for cutting")))


def test_contours_carry_numbers() -> None:
    report = make_report(clearance=0.098)
    figure = plan_figure(report)
    labels = {t.get_text() for t in figure.axes[-1].texts}
    assert {"2", "4", "6", "8", "10"} & labels, "numbered contours in the enlargement"
    assert contour_levels(np.array([[0.0, 0.0129]])) == pytest.approx(
        [0.002, 0.004, 0.006, 0.008, 0.010, 0.012]
    )
    assert contour_levels(np.array([[0.0, 0.006]])) == pytest.approx(np.arange(1, 7) / 1000)
    assert len(contour_levels(np.array([[0.0, np.nan, 0.0005]]))) == 0
    assert contour_levels(np.array([[0.038]])) == pytest.approx(np.arange(1, 8) * 0.005)


def test_contours_lie_at_their_depth_and_the_deepest_place_is_the_middle_of_a_level_floor() -> None:
    u, v = np.meshgrid(np.arange(60) * CELL, np.arange(40) * CELL)
    depth = np.clip(0.02 - 0.05 * np.hypot(u - 0.6, v - 0.4), 0.0, 0.013)
    runs = contour_lines(depth, CELL, 0.005)
    assert len(runs) == 1 and np.hypot(*(runs[0] - (0.6, 0.4)).T) == pytest.approx(0.3, abs=0.002)
    assert deepest_place(depth, CELL) == pytest.approx((0.6, 0.4), abs=CELL / 2 + 1e-9)


def test_words_keep_off_lines_off_each_other_and_on_the_drawing() -> None:
    figure = ink.new_figure(4.0, 6.0)
    axes = ink.axes_at(figure, 1.0, 1.0, 4.0, 2.0)
    axes.set_xlim(0, 40)
    axes.set_ylim(0, 20)
    room = Room(axes)
    room.lines(np.array([(0.0, 10.0), (40.0, 10.0)]), 5.0)
    for k in range(4):
        room.put(f"label number {k}", (20.0, 10.0), bold=True)
    boxes = [t.get_window_extent() for t in axes.texts]
    line = axes.transData.transform((0, 10))[1]
    assert all(b.y0 > line or b.y1 < line for b in boxes)
    assert not any(a.overlaps(b) for k, a in enumerate(boxes) for b in boxes[:k])
    frame = axes.get_window_extent()
    assert all(frame.x0 <= b.x0 and b.x1 <= frame.x1 and frame.y0 <= b.y0 and b.y1 <= frame.y1 for b in boxes)


def test_the_part_of_an_area_that_shows() -> None:
    window = Window(0.0, 0.0, 2.0, 1.0)
    shown = window.clip(np.array([(-1.0, -1.0), (1.0, -1.0), (1.0, 3.0), (-1.0, 3.0)]))
    assert shown is not None
    assert (shown.min(axis=0), shown.max(axis=0)) == (pytest.approx((0, 0)), pytest.approx((1, 1)))
    assert window.clip(np.array([(3.0, 0.0), (4.0, 0.0), (4.0, 1.0)])) is None


@pytest.mark.parametrize("angle", [0.0, 0.5, 2.2, -1.57])
@pytest.mark.parametrize("unit", ["m", "ft"])
def test_coordinate_lines_lie_where_they_say(angle: float, unit: str) -> None:
    report = make_report(unit, angle=angle, cut=False)
    figure = Figure()
    axes = figure.add_axes((0, 0, 1, 0.3))
    window = whole_window(report)
    axes.set_xlim(window.u0, window.u1)
    draw_coordinates(axes, report, window)
    runs = axes.collections[0].get_segments()
    assert len(runs) >= 8
    for uv in map(np.asarray, runs):
        assert uv[:, 0].min() >= window.u0 - 1e-6 and uv[:, 0].max() <= window.u1 + 1e-6
        plan = report.scan.frame.site_to_plan(report.surface.height.frame.to_site(uv))
        spread = np.ptp(plan, axis=0)
        held = plan[0, int(spread.argmin())]
        assert spread.min() < 1e-6, "along a line one coordinate stays"
        assert abs(held - round(held)) < 1e-6, "a round number of the scan's own unit"
    shown = [t for t in axes.texts if t.get_text().startswith("x ")]
    for text in shown[:3]:
        u, v = text.get_position()
        near = report.scan.frame.site_to_plan(report.surface.height.frame.to_site((u, v)))
        assert abs(near[0] - float(text.get_text()[2:])) < 0.35 * (1 if unit == "m" else 3.3)


def test_wheel_tracks_are_as_wide_as_the_tyres_and_as_far_apart_as_the_track() -> None:
    edges = wheel_paths(make_report(cut=False))
    across = np.array([e[:, 1].mean() for e in edges]) - WIDTH / 2
    # cross slope of 1 % rolls the vehicle by a hundredth of its height
    assert across == pytest.approx(
        [-TRACK / 2 - 0.095, -TRACK / 2 + 0.095, TRACK / 2 - 0.095, TRACK / 2 + 0.095], abs=0.004
    )
    assert np.ptp(edges[0][:, 0]) > LENGTH - 2.0


def test_windows_hold_all_of_it() -> None:
    report = make_report(clearance=0.098)
    depth = depth_grid(report)
    (window,), whole = cut_windows(report, depth), whole_window(report)
    assert window is not None
    rows, columns = np.nonzero(np.nan_to_num(depth) > 0.0001)
    assert window.u0 < columns.min() * CELL and window.u1 > columns.max() * CELL
    assert window.v0 < rows.min() * CELL and window.v1 > rows.max() * CELL
    assert whole.u1 - whole.u0 == pytest.approx(LENGTH + 0.1)
    assert cut_windows(report, np.zeros_like(depth)) == []
    apart = np.zeros_like(depth)
    apart[5:9, 10:20] = apart[5:9, round(2.5 / CELL) : round(2.6 / CELL)] = 0.01
    near, far = cut_windows(report, apart)  # each by itself, not the slab between them
    assert near.u1 < 1.0 < 2.4 < far.u1 and far.u0 > 2.0
    fitted = Window(0, 0, 2, 1).fitted(4.0)
    assert fitted.width / fitted.height == pytest.approx(4.0) and fitted.height == pytest.approx(1.0)


@pytest.mark.parametrize("metres_per_inch", [0.05, 0.21, 0.84, 1.7])
def test_scale_bar_is_true(metres_per_inch: float) -> None:
    figure = ink.new_figure(4.0)
    page = ink.paper(figure)
    assert ink.axes_size(page) == pytest.approx((ink.PAGE_WIDTH, 4.0)), "one unit is one inch"
    assert (page.get_xlim(), page.get_ylim()) == ((0, pytest.approx(ink.PAGE_WIDTH)), (0, 4.0))
    ink.scale_bar(page, 11.0, 1.0, metres_per_inch)
    metres, feet = (float(t.get_text().split()[0]) for t in page.texts)
    ends = [x for p in page.patches for x in (p.get_x(), p.get_x() + p.get_width())]
    assert np.ptp(ends) * metres_per_inch == pytest.approx(metres)
    assert np.ptp(page.lines[0].get_xdata()) * metres_per_inch == pytest.approx(feet * 0.3048)
    assert max(t.get_window_extent().x1 for t in page.texts) <= 11.1 * ink.DPI
    assert 0.7 < metres / metres_per_inch < 4.0, "between 0.7 and 4 inches on paper"


def test_relief_is_lit_from_the_upper_left() -> None:
    u = np.arange(20) * 0.01
    rise = np.tile(0.2 * u, (10, 1))
    assert shading(rise, 0.01)[5, 10] > 1.0 > shading(-rise, 0.01)[5, 10]
    assert shading(np.zeros((5, 5)), 0.01) == pytest.approx(np.ones((5, 5)))
    hole = rise.copy()
    hole[4, 4] = np.nan
    assert np.isnan(shading(hole, 0.01)[4, 4]) and np.isfinite(shading(hole, 0.01)[4, 5])


def test_the_picture_is_written_the_same_twice(tmp_path: Path) -> None:
    report = make_report(clearance=0.098, release="not for cutting")
    draw_plan(report, tmp_path / "a.png")
    draw_plan(report, tmp_path / "b.png")
    assert (tmp_path / "a.png").read_bytes() == (tmp_path / "b.png").read_bytes()
    assert (tmp_path / "a.png").stat().st_size > 50_000


def test_nothing_to_cut_still_draws() -> None:
    text = words(plan_figure(make_report(cut=False, hole=False)))
    assert "enlarged" not in text and "edge of the cut" not in text and "not measured" not in text


def test_what_words_would_cover_is_counted_point_by_point() -> None:
    rng = np.random.default_rng(5)
    places, half = Places(np.zeros(2), np.array([20.0, 8.0]), (10.0, 4.0)), (0.4, 0.1)
    drawn = rng.uniform([0.0, 0.0], [20.0, 8.0], (900, 2))
    places.area(drawn, 3.0)
    at = np.concatenate([rng.uniform([4.0, 2.0], [9.0, 4.0], (30, 2)), drawn[:5]])
    each = [(np.abs(drawn / 2 - place / 2) < np.array(half) + 0.02).all(axis=1).sum() for place in at]
    assert max(each) > 2
    np.testing.assert_array_equal(places.covered(at, half), 3.0 * np.array(each))
    assert places.covered(at[:0], half).shape == (0,)
