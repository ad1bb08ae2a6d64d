"""Cautions on the work sheets: every danger of the tools and the place, dust by the rule of the country, and
no respirator waived but by the rule that waives it.
"""

from __future__ import annotations

import dataclasses
import itertools
from pathlib import Path

import pytest
from work_scene import scene

from crestcut.base.cautions import FELT_GAP, MEASURED_VEHICLE, Danger, terminal_lines
from crestcut.job.records import Job, Site
from crestcut.work.cards import cautions
from crestcut.work.dust import UNION, dust_lines, dust_rule, mask_words
from crestcut.work.tools import load_tools

TOOLS = load_tools(Path(__file__).parents[2] / "configs" / "tools")
COUNTRIES = ("US", "us", "GB", "AU", "DE", "FR", "CA", "ZZ", None)


def job(country: str | None = "US", place: str | None = "outdoors", ground: str | None = "private") -> Job:
    return dataclasses.replace(scene().job, site=Site(place, ground, country))


def said(of: Job, tools: tuple = TOOLS, vehicle: bool = True) -> dict[Danger, str]:
    return {c.danger: c.full for c in cautions(of, tools, vehicle)}


@pytest.mark.parametrize(
    ("danger", "words"),
    [
        (
            Danger.KICKBACK,
            ("Both hands", "both feet", "never above shoulder height", "Guard on", "rated for"),
        ),
        (Danger.LIFTING, ("two people", "floor grinder, 10 in head: 70 kg", "scarifier, 8 in drum: 65 kg")),
        (Danger.RAMP, ("maker allows", "never below it", "nobody downhill", "chocks")),
        (Danger.DRILL, ("shroud with a vacuum", "never blown out")),
        (Danger.NOISE, ("hours the town allows", "ask")),
        (Danger.BARRIERS, ("public walk", "barriers", "signs", "wheelchair", "lights")),
        (Danger.DECIDE, ("local codes", "licensed people decide")),
        (Danger.VEHICLE, ("chocked off the slab", "jack")),
    ],
)
def test_every_danger_is_named_with_what_to_do(danger: Danger, words: tuple[str, ...]) -> None:
    told = said(job())
    for word in words:
        assert word in told[danger], word


def test_what_is_not_there_is_not_warned_of() -> None:
    by_hand = tuple(t for t in TOOLS if t.by_hand and not t.wet)
    told = said(job(), by_hand, vehicle=False)
    assert Danger.RAMP not in told and Danger.VEHICLE not in told and Danger.INDOORS not in told
    assert "kg" in told[Danger.LIFTING] and "Here" not in told[Danger.LIFTING]
    assert "permit" not in told[Danger.BARRIERS]
    for ground in ("public", None):  # not said is the strictest
        assert "permit" in said(job(ground=ground))[Danger.BARRIERS]
    assert Danger.INDOORS in said(job(place="indoors"))


def test_a_felt_gap_is_never_asked_without_its_whole_caution() -> None:
    full = " ".join(c.full for c in FELT_GAP)
    short = " ".join(terminal_lines(["felt gap"]))
    for words in (full, short):
        for wanted in (
            "chocked", "parking brake on", "in gear or park", "engine off", "key out", "reaches under",
            "lies beside", "stands downhill", "uphill side", "long stick", "do not rock it", "recovery",
            "keep clear", "do not drive on", "maker's service", "fire service",
        ):  # fmt: skip
            assert wanted in words, wanted
    assert "lookout at the road" in short and "looks out" in full
    # a kind of measurement that is not known here is taken as the dangerous one; a string is none
    assert terminal_lines(["one gap felt by hand"]) == terminal_lines(["string", "felt gap"])
    assert terminal_lines(["string"]) != terminal_lines(["felt gap"]) and terminal_lines([]) == []
    assert "lookout" in terminal_lines(["string"])[0]
    measured = " ".join(c.full for c in MEASURED_VEHICLE)
    assert "chocks" in measured and "key out" in measured and "orange cables" in measured


@pytest.mark.parametrize("country", COUNTRIES)
def test_no_respirator_is_waived_but_by_the_rule_that_waives_it(country: str | None) -> None:
    for place, hours in itertools.product(("outdoors", "indoors", None), (1.0, 8.0, None)):
        lines = dust_lines(TOOLS, job(country, place), hours)
        assert len(lines) == len(TOOLS) + 1 and "drill" in lines[-1].task  # every tool, and the hammer drill
        for line in lines:
            words = mask_words(line)
            if "no respirator" in words or "no mask" in words or not line.mask:
                assert (country or "").upper() == "US" and "29 CFR 1926.1153 Table 1" in words
                assert "wear one" in words
            else:
                assert line.mask >= 10
    assert dust_lines((), job(country)) == ()


def test_nobody_else_speaks_of_masks() -> None:
    """The one place that can waive a respirator is ``dust.py``, which says by which rule."""
    root = Path(__file__).parents[2] / "pipeline" / "crestcut"
    words = ("no mask", "no respirator", "without a mask", "mask is not", "respirator is not")
    sources = [*root.rglob("*.py"), *(root / "report" / "pages" / "viewer" / "src").glob("*.js")]
    told = {
        p.relative_to(root).as_posix()
        for p in sources
        if any(w in p.read_text("utf-8").lower() for w in words)
    }
    assert told == {"work/dust.py"}


def test_each_country_has_its_own_limit_and_what_it_leaves_open() -> None:
    # mg/m3 of respirable crystalline silica over eight hours. US: 29 CFR 1926.1153(d)(1), 50 ug/m3. European
    # Union: Directive 2004/37/EC annex III as amended by (EU) 2017/2398, 0.1; members may ask for less. Great
    # Britain: EH40/2005, 0.1. Australia: workplace exposure standard since July 2020, 0.05. Each read in a
    # text that quotes it. Elsewhere the strictest of these.
    for country, limit in (("US", 0.05), ("DE", 0.1), ("GB", 0.1), ("AU", 0.05), ("CA", 0.05), (None, 0.05)):
        dust = said(job(country))[Danger.DUST]
        assert f"{limit:g} mg/m3" in dust, (country, dust)
        assert ("ask the local authority" in dust) == (country in ("CA", None))
    assert "labour inspectorate" in said(job("FR"))[Danger.DUST]
    assert len(UNION) == 27 and "GB" not in UNION and "CH" not in UNION
    assert [c for c in ("US", "GB", "AU", "DE", "CA", "") if dust_rule(c).table] == ["US"]
