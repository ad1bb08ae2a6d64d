"""The profile is to scale: wheels on the ground, the gap as drawn is the gap as swept."""

from __future__ import annotations

import dataclasses
from pathlib import Path

import numpy as np
import pytest
from deliver_scene import BASE, CREST, GRADE, RADIUS, crest, gutter, make_report
from matplotlib.figure import Figure

from crestcut.base.units import both
from crestcut.report.pictures.profile import draw_profile, profile_figure, stretch_for
from crestcut.report.pictures.profile_layers import runs
from crestcut.report.pictures.section import Section, section_at
from crestcut.study.report import Report


def worst_section(report: Report) -> Section:
    worst = report.before.worst
    assert worst is not None
    return section_at(report, worst)


def words(figure: Figure) -> str:
    import matplotlib.text

    return "\n".join(t.get_text() for t in figure.findobj(matplotlib.text.Text))


@pytest.mark.parametrize("ground", [crest, gutter])
@pytest.mark.parametrize("angle", [0.0, 0.5, -2.0])
def test_gap_drawn_is_the_gap_swept(ground: object, angle: float) -> None:
    report = make_report(ground=ground, kind="crest", angle=angle)
    worst = report.before.worst
    assert worst is not None
    section = worst_section(report)
    plate = next(p for p in section.plates if p.name == worst.part)
    assert plate.cut
    z = np.interp(section.at, *zip(*sorted(zip(plate.s, plate.z, strict=True)), strict=True))
    drawn = z - np.interp(section.at, section.s, section.ground)
    # the scene's sweep takes parts by whole cells and forgoes the shift of a pitched plate: 0.2 mm at 8 %
    assert drawn == pytest.approx(worst.gap, abs=0.0004)
    assert section.z_low - section.z_ground == pytest.approx(worst.gap)


@pytest.mark.parametrize("angle", [0.0, 0.5])
def test_stations_are_those_of_the_line(angle: float) -> None:
    section = worst_section(make_report(angle=angle))
    # the line starts 0.3 m into the grid; the crest lies at CREST
    assert section.at == pytest.approx(CREST - 0.3, abs=0.021)
    top = section.s[np.nanargmax(section.ground)]
    assert top == pytest.approx(CREST - 0.3, abs=0.011)
    fall = np.nanmax(section.ground) - np.interp(CREST - 0.3 + 1.0, section.s, section.ground)
    assert fall == pytest.approx(GRADE * 1.0, abs=0.001)


def test_wheels_stand_on_the_ground_a_wheelbase_apart() -> None:
    section = worst_section(make_report())
    near = sorted((w for w in section.wheels if w.near), key=lambda w: w.s)
    assert len(near) == 2 and len(section.wheels) == 4
    apart = np.hypot(near[1].s - near[0].s, near[1].z - near[0].z)
    assert apart == pytest.approx(BASE, abs=0.001)
    for wheel in near:
        under = np.interp(wheel.s, section.s, section.track)
        # point-footed wheels on a slope of 8 %: the hub leans away from the foot
        assert wheel.z - RADIUS == pytest.approx(under, abs=RADIUS * GRADE**2 + 0.001)


def test_track_is_the_ground_under_the_nearer_wheels() -> None:
    """A cross slope of 1 % tells by how far the track lies beside the contact."""
    report = make_report(hole=False)
    worst = report.before.worst
    assert worst is not None
    section = worst_section(report)
    side = float(report.on_vehicle(worst)[1])
    beside = np.copysign(report.vehicle.front_track / 2, side) - side
    assert abs(beside) > 0.08
    inside = ~np.isnan(section.ground) & ~np.isnan(section.track)
    assert (section.track - section.ground)[inside] == pytest.approx(0.01 * beside, abs=1e-4)


def test_driven_the_other_way_the_nose_points_back() -> None:
    report = make_report()
    forward = worst_section(report)
    assert forward.ahead == 1
    turned = dataclasses.replace(report.line, xy=report.line.xy[::-1].copy(), yaw=report.line.yaw + np.pi)
    back = worst_section(dataclasses.replace(report, ride=dataclasses.replace(report.ride, line=turned)))
    assert back.ahead == -1
    assert back.at == pytest.approx(report.line.length - forward.at, abs=1e-6)
    assert np.interp(back.at + 0.5, back.s, back.ground) == pytest.approx(
        np.interp(forward.at - 0.5, forward.s, forward.ground), abs=1e-6
    )


def test_clearance_line_lies_under_every_pose() -> None:
    report = make_report()
    section = worst_section(report)
    for plate in section.plates:
        if plate.cut and plate.name == "belly":
            s = np.linspace(*sorted(plate.s), 50)[3:-3]
            z = np.interp(s, *zip(*sorted(zip(plate.s, plate.z, strict=True)), strict=True))
            reach = np.interp(s, section.s, section.reach)
            assert (reach <= z + 0.0005).all()
            return
    pytest.fail("the belly is not in the section")


def test_a_hole_stays_a_hole() -> None:
    report = make_report()
    worst = report.before.worst
    assert worst is not None
    frame = report.surface.height.frame
    over = dataclasses.replace(worst, xy=tuple(frame.to_site((CREST, 2.6)).tolist()))
    gaps = runs(np.isnan(section_at(report, over).ground))
    section = section_at(report, over)
    holes = [(section.s[a], section.s[b]) for a, b in gaps if a > 0 and b < len(section.s) - 1]
    assert len(holes) == 1
    assert np.mean(holes[0]) == pytest.approx(7.0 - 0.3, abs=0.03)
    assert np.ptp(holes[0]) == pytest.approx(0.5, abs=0.05)


def test_runs() -> None:
    assert runs(np.array([True, True, False, True])) == [(0, 1), (3, 3)]
    assert runs(np.zeros(3, bool)) == []


def test_true_scale_strip_is_true_and_the_stretch_is_said() -> None:
    report = make_report(clearance=0.098)
    figure = profile_figure(report)
    _, strip, detail = figure.axes
    width, height = figure.get_size_inches()

    def per_inch(axes: object) -> tuple[float, float]:
        box = axes.get_position()
        along = np.ptp(axes.get_xlim()) / (box.width * width)
        return along, np.ptp(axes.get_ylim()) / (box.height * height)

    along, up = per_inch(strip)
    assert along == pytest.approx(up, rel=1e-6)
    along, up = per_inch(detail)
    text = words(figure)
    said = int(text.split("heights drawn ")[1].split(" times")[0])
    assert along / up == pytest.approx(said, rel=1e-6)
    for word in (
        f"overlap {both(-report.least_clearance)}",
        "to be cut",
        "clearance line",
        "cut 13.0 mm (1/2 in)",
        "belly",
        "front axle at",
    ):
        assert word in text, word


def test_stretch_is_one_where_it_is_tall() -> None:
    assert stretch_for((0.0, 1.0, 0.0, 3.0)) == 1
    assert stretch_for((0.0, 1.0, 0.0, 0.1)) > 2


@pytest.mark.parametrize("release", ["ok", "provisional"])
def test_picture_and_stamp(release: str) -> None:
    report = make_report(release=release, clearance=0.098)
    assert ("PROVISIONAL" in words(profile_figure(report))) == (release == "provisional")


def test_nothing_swept_still_draws(tmp_path: Path) -> None:
    report = make_report(cut=False)
    blind = dataclasses.replace(report, today=None, before=dataclasses.replace(report.before, least={}))
    draw_profile(blind, tmp_path / "profile.png")
    draw_profile(blind, tmp_path / "again.png")
    assert (tmp_path / "profile.png").read_bytes() == (tmp_path / "again.png").read_bytes()
    assert (tmp_path / "profile.png").stat().st_size > 5_000
