"""The summary says the verdict first, in plain words, and the numbers behind it are right."""

from __future__ import annotations

import dataclasses

import numpy as np
import pytest
from deliver_scene import BASE, gutter, make_report

from crestcut.alternatives.rows import Option
from crestcut.chance.records import Cause
from crestcut.cut.ruled_out import Forbids, not_into_it
from crestcut.report.words.ends import end_contact, grinding_seldom_cures
from crestcut.report.words.options import cure, option_lines
from crestcut.report.words.summary import next_steps, quantity_words, summary_lines, verdict_line
from crestcut.study.report import Report
from crestcut.work.limit_texts import limit_lines
from crestcut.work.records import Reason, ReasonCode
from crestcut.work.trade import trade_words


def nose(**options: object) -> Report:
    """A nose that comes down 25 mm too low for a rise."""
    report = make_report(ground=gutter, kind="nose", feasible=False, **options)
    least = {
        zone: dataclasses.replace(c, gap=c.gap - 0.06) if zone == "nose" else c
        for zone, c in report.before.least.items()
    }
    worst = least["nose"]
    today = dataclasses.replace(
        report.today, least_clearance=worst.gap, verdict="touches", words="about 19 in 20 that it touches"
    )
    return dataclasses.replace(report, before=dataclasses.replace(report.before, least=least), today=today)


def test_first_line_has_verdict_kind_size_and_chance() -> None:
    first = summary_lines(make_report(clearance=0.098))[0]
    assert first.startswith("TOUCHES: the lowered-floor mobility van hangs up on the crest by ")
    assert "mm (" in first and " in)" in first
    assert "about 29 in 30 that it touches" in first
    assert "rinding" not in first


def test_first_line_of_a_nose_says_why_not_to_grind_with_the_numbers() -> None:
    report = nose()
    first = summary_lines(report)[0]
    case = end_contact(report)
    assert case is not None
    assert "meets the rise with its nose" in first
    assert "Grinding is not the cure: the limits allow none, and 4.0 mm (5/32 in) are missing" in first
    assert f"{case.missing * 1000:.1f} mm" in first
    assert f"{case.fill * 1000:.1f} mm" in first
    assert f"{10 * case.lever:.1f} mm" in first


def cut_by_13_mm(feasible: bool) -> Report:
    """That nose with 13 mm taken off 3.7 m2, which helps or does not."""
    report = nose()
    assert report.plan is not None
    plan = dataclasses.replace(report.plan, deepest=0.013, area=3.7, volume=0.044, feasible=feasible)
    return dataclasses.replace(report, plan=plan)


def test_a_cut_that_is_no_cure_is_told_as_none_to_make() -> None:
    said = (
        "Grinding is not the cure: all that the limits allow, 13.0 mm (1/2 in) deep over 3.70 m2 (44.0"
        " litres), would still leave 4.0 mm (5/32 in) missing"
    )
    lines = summary_lines(cut_by_13_mm(feasible=False))
    cut = next(line for line in lines if line.startswith("Cut:"))
    assert f"{said};" in lines[0]
    assert cut.startswith(f"Cut: none to make. {said}, at x ")
    assert not any(line.startswith(("Claim:", "NOT ENOUGH", "After it")) for line in lines)
    assert any(line.startswith("What limits it: deepest 13 mm") for line in lines)


def test_a_nose_that_a_cut_does_help_is_still_warned_of() -> None:
    first, *rest = summary_lines(cut_by_13_mm(feasible=True))
    assert "Grinding is usually the wrong cure for a nose (13.0 mm (1/2 in) off 3.70 m2 in all)" in first
    assert any(line.startswith("Claim:") for line in rest)


def test_where_holes_leave_it_open_the_first_line_says_so() -> None:
    report = make_report(kind="none")
    assert report.today is not None
    today = dataclasses.replace(
        report.today, verdict="cannot tell", least_clearance=0.062, chance_of_contact=0.0004,
        words="less than 1 in 1,000 that it touches",
    ).told([
        (Cause.ERROR, "how wrong the scan may be is not measured"),
        (Cause.UNSEEN, "the underside passes over 1000 cells that the scan has no ground in"),
        (Cause.DOUBTED, "cells that are coarse"),
    ])  # fmt: skip
    holes = dataclasses.replace(report.before, unmeasured=1000)
    open_ = dataclasses.replace(report, today=today, before=holes)
    lines = summary_lines(open_)
    # 1,000 cells of 20 mm by 20 mm
    said = "CANNOT TELL: 0.40 m2 under the lowered-floor mobility van's path is not measured"
    assert lines[0].startswith(said)
    assert "62.0 mm" in lines[0] and "less than 1 in 1,000" in lines[0]
    assert "  how wrong the scan may be is not measured" in lines and "  cells that are coarse" in lines
    assert not any("1000 cells" in line for line in lines)  # its m2 are said already
    assert "scan the holes" in next_steps(open_)[0]
    near = dataclasses.replace(open_, today=dataclasses.replace(today, chance_of_contact=0.4))
    assert "at best estimate" in verdict_line(near) and "scan the holes" not in next_steps(near)[0]


def test_answers_are_asked_for_only_where_the_release_waits_for_some() -> None:
    report = make_report(release="not for cutting", feasible=False)
    short = Reason(ReasonCode.FALLS_SHORT, "no cut within the limits reaches what was asked")
    for other, asked in (
        (Reason(ReasonCode.SCAN, "the scan carries more"), False),
        (Reason(ReasonCode.READINGS, "hand measurements do not agree"), False),
        (Reason(ReasonCode.UNANSWERED, "the depth of the steel is not known"), True),
        (Reason(ReasonCode.NO_PERMIT, "no cut within the limits of the town: the permit was refused"), True),
        (Reason(ReasonCode.NEVER, "the slab is post-tensioned"), False),
    ):
        steps = next_steps(dataclasses.replace(report, release_reasons=(short, other)))
        assert any("[site] and [slab]" in step for step in steps) == asked
        assert any("ask a structural engineer" in step for step in steps) == (other.code == "never released")


def test_lever_and_fill_hold_for_a_rigid_vehicle_turned_in_full() -> None:
    """Raise the front wheels by the fill: the contact point must rise by what is missing."""
    report = nose()
    case = end_contact(report)
    contact = report.before.least["nose"]
    assert case is not None
    x, _ = report.on_vehicle(contact)
    z = 0.19
    angle = np.arcsin(case.fill / BASE)  # the rear wheels stay where they are
    lift = x * np.sin(angle) + z * (np.cos(angle) - 1)
    assert lift == pytest.approx(case.missing, rel=0.002)
    assert case.lever == pytest.approx(x / BASE, rel=1e-9)
    assert case.missing == pytest.approx(0.03175 - contact.gap)


def test_contact_is_found_on_the_vehicle() -> None:
    """The nose touches with the front edge of its apron, 3.40 m ahead of the rear axle."""
    report = nose(angle=1.1)
    x, y = report.on_vehicle(report.before.least["nose"])
    assert x == pytest.approx(3.40, abs=0.021)  # a cell
    assert -0.82 <= y <= 0.82


def test_crest_and_roomy_ends_get_no_lecture() -> None:
    assert grinding_seldom_cures(make_report()) == ""
    roomy = make_report(kind="nose")
    assert roomy.before.least["nose"].gap > 0.03175
    assert grinding_seldom_cures(roomy) == ""


def test_where_how_deep_and_what_stays_short() -> None:
    lines = "\n".join(summary_lines(make_report(clearance=0.098, feasible=False)))
    assert "under the belly" in lines and "m along the line" in lines and "x 5123" in lines
    assert "litres" in lines and "kg (" in lines and "ft2)" in lines
    assert "4.0 mm (5/32 in) short" in lines
    assert "deepest 13 mm (an eighth of the thickness); keep area 'drain'" in lines
    assert "not proved in the field" in lines


def test_claims_say_which() -> None:
    report = make_report()
    assert report.plan is not None
    assert "the least cut" in "\n".join(summary_lines(report))
    most = dataclasses.replace(report, plan=dataclasses.replace(report.plan, claim="maximal"))
    assert "nothing of it can be left standing" in "\n".join(summary_lines(most))


def test_clearing_with_less_than_asked_is_said() -> None:
    assert "less than the 12.7 mm (1/2 in) asked for" in verdict_line(make_report(clearance=0.108))
    assert "asked for" not in verdict_line(make_report(clearance=0.20))


@pytest.mark.parametrize("release", ["ok", "provisional", "not for cutting"])
def test_release_and_its_reasons(release: str) -> None:
    report = make_report(release=release)
    lines = summary_lines(report)
    assert any(line.lower().startswith(f"release: {release}") for line in lines)
    assert len(report.release_reasons) == {"ok": 0, "provisional": 1, "not for cutting": 2}[release]
    for reason in report.release_reasons:
        assert f"  - {reason.words}" in lines


def test_what_the_slab_forbids_is_said_with_whom_to_ask() -> None:
    """In the table, for 'then what', and among the limits of the sheet; never as something that works."""
    barred = {"forbids": (Forbids.POST_TENSIONED,), "needs": not_into_it([Forbids.POST_TENSIONED])}
    rows = (
        Option("as it is", "leave it as it is", -0.005, 0.9, 0.0, False, 0, 0, 0, 0, "nothing"),
        Option("more pressure", "more air", -0.001, 0.8, 0.1, False, 0, 0, 0, 0, "air"),
        Option("strips", "strips", 0.015, 0.0, 0.99, False, 0, 0, 0.02, -0.1, **barred),
        Option("new bay", "replace the bay", np.nan, np.nan, np.nan, False, 0, 0, 0.2, 0.3, **barred),
    )
    report = dataclasses.replace(nose(), options=rows)
    lines = option_lines(report)
    assert sum("works" in line for line in lines) == 1  # the head, which says what the word means
    assert any(
        "strips, replace the bay: not on this slab (post-tensioned); ask a structural" in ln for ln in lines
    )
    assert "nothing that leaves the slab alone does it; best is: more air" in cure(report)
    job = dataclasses.replace(report.job, slab=dataclasses.replace(report.job.slab, post_tensioned="yes"))
    plan = dataclasses.replace(report.plan, deepest=0.05)
    said = "\n".join(limit_lines(job, plan, (), trade_words("US")))
    assert "ask a structural engineer" in said and "Price replacing" not in said
    assert "Price replacing" in "\n".join(limit_lines(report.job, plan, (), trade_words("US")))


def test_next_steps_follow_the_state() -> None:
    assert any("[slab]" in step for step in next_steps(make_report(release="not for cutting")))
    assert any("by hand" in step for step in next_steps(make_report(release="provisional")))
    advised = dataclasses.replace(
        make_report(release="provisional"),
        advice=({"kind": "one gap felt under the vehicle", "where": "at station 5.60 m", "expect": "4 mm"},),
    )
    assert (
        next_steps(advised)[0]
        == "measure first: one gap felt under the vehicle, at station 5.60 m, expect 4 mm."
    )
    clear = make_report(clearance=0.20, cut=False)
    assert next_steps(clear) == [
        "nothing to cut; drive it slowly once with someone watching the place in profile.png."
    ]
    assert any("another line" in step for step in next_steps(nose()))


def test_nothing_measured_is_cannot_tell() -> None:
    report = make_report(cut=False)
    blind = dataclasses.replace(report, today=None, before=dataclasses.replace(report.before, least={}))
    assert verdict_line(blind).startswith("CANNOT TELL")
    assert len(summary_lines(blind)) >= 4


def test_mass_of_concrete() -> None:
    # Normal concrete, 2,400 kg/m3 (150 lb/ft3, ACI 318-19): 1 m2 by 10 mm is 24.0 kg; 1 ft2 by 1/4 in is
    # 3.125 lb at 150 lb/ft3.
    plan = make_report().plan
    assert plan is not None
    assert "1.00 m2 (10.8 ft2): 10.0 litres, 24.0 kg (52.9 lb)" in quantity_words(
        dataclasses.replace(plan, area=1.0, volume=0.010)
    )
    foot = 0.3048
    words = quantity_words(dataclasses.replace(plan, area=100 * foot**2, volume=100 * foot**2 * 0.0254 / 4))
    assert "(100 ft2)" in words
    pounds = float(words.split("kg (")[1].split(" lb")[0])
    assert pounds == pytest.approx(312.5, rel=0.002)  # 2,400 kg/m3 is 149.83 lb/ft3


def test_every_line_is_one_line() -> None:
    for line in summary_lines(nose(release="not for cutting")):
        assert "\n" not in line and "nan" not in line.lower().split()


def test_nothing_to_cut_is_nothing_to_release_and_asks_for_no_answers() -> None:
    report = dataclasses.replace(
        make_report(clearance=0.180),
        release="not for cutting",
        release_reasons=(Reason(ReasonCode.UNANSWERED, "the steel depth is not known"),),
    )
    assert report.plan is not None and report.plan.deepest == 0
    text = "\n".join(summary_lines(report))
    assert "nothing to cut, so nothing to release" in text
    assert "NOT FOR CUTTING" not in text and "answer what the release asks for" not in text


def test_a_vehicle_called_ours_gets_no_second_article() -> None:
    report = make_report(clearance=0.098)
    ours = dataclasses.replace(report, vehicle=dataclasses.replace(report.vehicle, name="our van"))
    assert verdict_line(ours).startswith("TOUCHES: our van hangs up")
