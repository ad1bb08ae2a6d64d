"""One figure, one answer: terminal, page, sheets, pictures, tables and result.json of a real run, compared.

The sheets are read as they are drawn: the words on every page that goes into the PDF.
"""

from __future__ import annotations

import csv
import json
import re
from dataclasses import dataclass
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest
from matplotlib.text import Text

from crestcut.apps.floor import floor_and_write
from crestcut.apps.run import run_and_write
from crestcut.base.units import both, inches_at_least, litres, millimetres, number
from crestcut.report.pictures.plan import plan_figure
from crestcut.report.pictures.profile import profile_figure
from crestcut.report.sheets import all_sheets as sheets
from crestcut.report.sheets import floor as floor_sheets
from crestcut.report.words.floor import floor_lines
from crestcut.report.words.summary import summary_lines
from report.page_text import PageText, at_key

JOBS = Path(__file__).resolve().parents[1] / "configs" / "jobs"
MM = r"(-?\d+\.\d) mm \([^)]*\)"


def words_on(figure: Any) -> str:
    """Every word on a page, one line after another, as a person reads them: wrapped lines joined."""
    return " ".join(" ".join(t.get_text() for t in figure.findobj(Text)).replace("\u00a0", " ").split())


@dataclass(frozen=True)
class Answers:
    """What one run says, wherever it says it."""

    terminal: list[str]
    page: PageText
    pages: dict[str, str]  # of the sheets, by name
    captions: tuple[str, str]
    result: dict[str, Any]
    sheet: dict[str, Any]
    tables: dict[str, list[dict[str, str]]]

    def line(self, start: str) -> str:
        return next(line for line in self.terminal if line.startswith(start))

    @property
    def options(self) -> dict[str, tuple[str, str]]:
        """Mark and figures of each row of the terminal's table, by name."""
        found, lines = {}, self.terminal
        for k, text in enumerate(lines):
            if (mark := text[2:8].strip()) in ("works", "slowly", "no") and text.startswith("  "):
                name, *size = re.split(r"  +", text[10:])
                figures = lines[k + 1].strip() if lines[k + 1].startswith("          ") else ""
                found[name] = mark, "  ".join([*size, figures])
        return found


def read_pages(made: list[tuple[str, Any]]) -> dict[str, str]:
    read: dict[str, str] = {}
    for name, figure in made:
        read[name] = f"{read.get(name, '')} {words_on(figure)}".strip()
    return read


@pytest.fixture(scope="module", params=["courtyard_apron_measured", "courtyard_apron"])
def said(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> Answers:
    out, drawn = tmp_path_factory.mktemp("run") / "out", {}
    pages = sheets.pages

    def kept(*of: Any) -> Any:
        made = list(pages(*of))
        drawn.update(read_pages(made), count=str(len(made)))
        return iter(made)

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(sheets, "pages", kept)
        done, _ = run_and_write(JOBS / f"{request.param}.toml", out)
    tables = {}
    for path in out.glob("work_*.csv"):
        rows = [line for line in path.read_text(encoding="utf-8").splitlines() if not line.startswith("#")]
        tables[path.stem] = list(csv.DictReader(rows))
    return Answers(
        summary_lines(done.report),
        PageText.read(out / "report.html"),
        drawn,
        (words_on(plan_figure(done.report)), words_on(profile_figure(done.report))),
        json.loads((out / "result.json").read_text(encoding="utf-8")),
        json.loads((out / "worksheet.json").read_text(encoding="utf-8")),
        tables,
    )


def test_how_much_is_cut_is_one_answer(said: Answers) -> None:
    cut, sheet, plan = said.result["cut"], said.pages["first"], said.captions[0]
    deep, area, much = both(cut["deepest"]), f"{number(cut['area'])} m2", litres(cut["volume"])
    kilograms = f"{number(cut['volume'] * 2400)} kg"
    line = said.line("Cut:")
    assert (
        line.startswith(f"Cut: {deep} at the deepest, over {area} (") and f": {much}, {kilograms} (" in line
    )
    low = much.removesuffix(" litres")
    assert re.search(
        rf"Concrete:?\s+{re.escape(area)}, {low} to [\d.]+ litres, {kilograms.split()[0]} to ", sheet
    )
    assert f"Deepest {deep}" in plan and f"{area}, {much}, {kilograms}" in plan
    assert f"Cut, hatched: {deep}" in said.captions[1]
    assert said.options["cut"][1].startswith(f"{millimetres(cut['deepest'])} deep, {much} out")
    for key in ("cut.deepest", "cut.area", "cut.volume"):
        assert float(said.page.data[key]) == at_key(said.result, key)
    for words in (area.replace("m2", "m²"), much, kilograms, deep.split(" (")[0]):
        assert words in said.page.text, words
    least = cut["guided"]["least"]  # why these tools
    assert f"{millimetres(least['deepest'])} and {litres(least['volume'])} that must go at least" in sheet
    more = f"{litres(cut['volume'] - least['volume'])} more than the cut has to be"
    assert (more in said.line("Claim: ")) == (
        cut["volume"] > least["volume"]
    )  # dots and contours cut the least
    if said.tables:
        # a dot is never deeper than the plan
        dot, cut_mm = float(said.tables["work_dots"][0]["depth_mm"]), float(deep.split(" mm")[0])
        assert cut_mm - 0.2 < dot <= cut_mm


def test_what_the_cut_leaves_stands_beside_it_at_walking_pace_and_in_use(said: Answers) -> None:
    after = said.result["after"]
    for start, state in (("After it, at walking pace:", after), ("After it, in use,", after["in_use"])):
        line = said.line(start)
        gap, odds = both(state["least_clearance"]), state["chance_in_words"]
        assert f"{state['verdict']}, least gap {gap}, 95 % between " in line and line.endswith(f"; {odds}.")
        assert line in said.pages["first"]
        ends = re.search(r"between (.*?) and (.*?);", line)
        assert ends is not None and list(ends.groups()) == [millimetres(v) for v in state["interval"]]
        for caption in said.captions:
            assert gap in caption
    for caption in said.captions:
        assert (
            f"{both(after['in_use']['least_clearance'])} in use ({after['in_use']['chance_in_words']})"
            in caption
        )
    row = next(o for o in said.result["options"] if o["kind"] == "cut")
    assert row["clearance"] == pytest.approx(after["least_clearance"], abs=1e-12)
    assert row["in_use_clearance"] == pytest.approx(after["in_use"]["least_clearance"], abs=1e-12)
    assert row["in_use_chance"] == after["in_use"]["chance_of_contact"]
    for key in ("after.least_clearance", "after.in_use.least_clearance", "after.in_use.chance_of_contact"):
        assert float(said.page.data[key]) == at_key(said.result, key)


def test_each_row_of_the_options_prints_what_decides_it(said: Answers) -> None:
    confidence = said.result["confidence"]
    assert list(said.options) == [o["name"] for o in said.result["options"]]
    for k, row in enumerate(said.result["options"]):
        mark, figures = said.options[row["name"]]
        assert (mark != "no") == row["reaches"] and (mark == "works") == (row["answer"] == "both")
        if row["volume"]:
            assert f"{litres(abs(row['volume']))} {'out' if row['volume'] > 0 else 'laid'}" in figures
        if row["clearance"] is None:
            continue
        gaps = re.findall(rf"(?:gap|in use) {MM}", figures)
        assert gaps == [f"{row[key] * 1000:.1f}" for key in ("clearance", "in_use_clearance")]
        sure = re.search(r"(under 0\.1|over 99\.9|[\d.]+) % sure", figures)
        assert sure is not None
        # as printed it says the same as the mark: a row is not judged by another rule than it prints
        printed = {"under 0.1": 0.0, "over 99.9": 99.95}.get(sure[1]) or float(sure[1].split()[-1])
        assert (printed >= confidence * 100) == row["reaches"] or sure[1] == "under 0.1", row["name"]
        assert printed <= row["enough"] * 100 + 0.06 or sure[1] == "under 0.1"
        if row["reaches"]:
            assert (row["in_use_chance"] <= 1 - confidence + 1e-9) == row["reaches_in_use"]
        for key in ("clearance", "in_use_clearance", "in_use_chance", "enough"):
            assert float(said.page.data[f"options.{k}.{key}"]) == pytest.approx(row[key], abs=1e-15)


def spans(text: str) -> list[tuple[float, float]]:
    return [(float(a), float(b or a)) for a, b in re.findall(r"\(([\d.]+)(?: to ([\d.]+))? h\)", text)]


def test_the_time_is_the_sum_of_the_steps_as_printed(said: Answers) -> None:
    told = re.search(r"(?:Time:|Hours)\s+([\d.]+) to ([\d.]+) h for all steps", said.pages["first"])
    assert told is not None
    hours = said.sheet["quantities"]["hours"]
    assert [float(v) for v in told.groups()] == [hours["low"], hours["high"]]
    assert f"All steps, from chalk to check {told[1]} to {told[2]} h" in said.page.text
    if "order" in said.pages:
        steps = spans(said.pages["order"])
        assert len(steps) == len(said.sheet["passes"])
        for k, total in enumerate(told.groups()):
            assert round(sum(step[k] for step in steps), 1) == float(total)


def test_the_sheets_are_ten_pages_at_most_and_the_options_tell_their_hours(said: Answers) -> None:
    assert 4 <= int(said.pages["count"]) <= 10
    cut = next(o for o in said.result["options"] if o["kind"] == "cut")
    hours = said.sheet["quantities"]["hours"]
    assert cut["hours"] == pytest.approx([hours["low"], hours["high"]], rel=0.01)
    assert f"{hours['low']:.1f} to {hours['high']:.1f} h of work" in said.options["cut"][1]
    fixed = [o for o in said.result["options"] if o["reaches"] and o["kind"] in ("strips", "cut", "new bay")]
    assert [sum(o["cost"]) for o in fixed] == sorted(sum(o["cost"]) for o in fixed)
    assert (
        said.result["options"][0]["kind"] == "loose boards"
    )  # here nothing that is not fixed works but them


def test_bags_and_the_bay_are_one_answer(said: Answers) -> None:
    bags = re.search(r"in (\d+) to (\d+) bags of 10 to 20 kg", said.pages["first"])
    assert bags is not None
    assert [int(v) for v in bags.groups()] == list(said.sheet["quantities"]["bags"].values())
    assert f"Dust or slurry {bags[0].removeprefix('in ')}" in said.page.text
    row = next((o for o in said.result["options"] if o["kind"] == "new bay"), None)
    if row is None:  # no rule bites: nobody speaks of it
        assert not any("replace the bay" in line for line in [*said.terminal, said.page.text])
        return
    bay = re.search(r"At least (.*?)(?:; see the release)?\.$", said.line("  replace the bay: "))
    assert bay is not None
    sheets_say = said.pages["first"] + said.pages.get("order", "")
    assert f"(at least {bay[1]})" in sheets_say and f"At least {bay[1]}" in said.page.text
    long, wide, area, volume = map(float, re.findall(r"[\d.]+(?= x| m =| m2| m3)", bay[1]))
    assert round(long * wide, 2) == area
    assert round(row["volume"], 2) == volume


def test_what_must_be_read_is_the_same_on_sheet_page_and_table(said: Answers) -> None:
    if not said.tables:
        assert (
            said.sheet["set_out"] is None and "AT LEAST" not in said.pages["ground"]
        )  # provisional: nothing to cut from
        return
    strings, text = said.sheet["set_out"]["strings"], said.pages["ground"]
    rows = re.findall(r"AT LEAST, in((?: +[\d/ ]+\.\.\.\.\.)+)", text)
    printed = [" ".join(v.split()) for row in rows for v in row.split(".....") if v.strip()]
    assert printed == [inches_at_least(s["least"]).removesuffix(" in") for s in strings]
    least = [f"{s['least'] * 1000:.1f}" for s in strings]
    assert least == [row["at_least_mm"] for row in said.tables["work_strings"]]
    for value in set(least):
        assert f"{value} mm" in said.page.text, value
    assert ("work_jig" in said.tables) == (said.sheet["jig"] is not None)
    if said.sheet["jig"] is not None:
        rows = [f"{r['rear'] * 1000:.1f}" for r in said.sheet["jig"]["rows"]]
        assert [row["rear_block_mm"] for row in said.tables["work_jig"]] == rows
    dots = said.sheet["set_out"]["dots"]
    assert [row["depth_mm"] for row in said.tables["work_dots"]] == [f"{d['depth'] * 1000:.1f}" for d in dots]


def test_the_stick_is_the_sum_of_what_makes_it_up(said: Answers) -> None:
    if "jig" not in said.pages:
        return
    text = said.pages["jig"]
    drawn = re.search(r"stick ((?:\d+ )?\d+/\d+) in:\s+reach, cup, and a hair to be sure", text)
    jig = said.sheet["jig"]
    stick = round((jig["reach"] + jig["smoothing"]) * 1000 + 0.25 + 0.0499, 1)
    told = re.search(r"Stick: saw one ([\d.]+) mm \(((?:\d+ )?\d+/\d+) in\) long", text)
    assert told is not None and float(told[1]) == stick
    assert drawn is not None and sum(map(Fraction, drawn[1].split())) == sum(map(Fraction, told[2].split()))
    assert f"Stick that must pass under it: {told[1]} mm {told[2]} in" in said.page.text
    assert sum(map(Fraction, told[2].split())) * 25.4 >= stick - 1e-9  # sawn by the inch it is no shorter


def test_of_a_floor_too(tmp_path: Path) -> None:
    drawn: dict[str, str] = {}
    pages = floor_sheets.pages

    def kept(*of: Any) -> Any:
        made = list(pages(*of))
        drawn.update(read_pages(made), count=str(len(made)))
        return iter(made)

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(floor_sheets, "pages", kept)
        report = floor_and_write(JOBS / "kiln_room_floor.toml", tmp_path / "out")[0]
    lines = floor_lines(report)
    result = json.loads((tmp_path / "out" / "floor.json").read_text(encoding="utf-8"))
    cut = result["cut"]
    whole = f"{number(cut['area'])} m2, {litres(cut['volume'])}, {both(cut['deepest'])} at the deepest"
    assert any(f", {whole};" in line for line in lines) and whole in drawn["found"]
    assert f"Concrete {number(cut['area'])} m2, {number(cut['volume'] * 1000)} to " in drawn["release"]
    # what stands less what is ground is what it is ground to, as printed
    for spot in result["high"]:
        row = re.search(
            rf"{spot['name']} +[\d.]+ +[\d.]+ +([+-][\d.]+) +([\d.]+) +([+-][\d.]+)", drawn["found"]
        )
        assert row is not None
        stands, ground, left = map(float, row.groups())
        assert round(stands - ground, 1) == left and ground == round(spot["deepest"] * 1000, 1)
        assert any(spot["name"] in line and litres(spot["volume"]) in line for line in lines)
        assert f"{spot['name']}: {both(spot['deepest'])} at its highest" in drawn["dots"]
    told = re.search(r"(?:Time:|Hours)\s+([\d.]+) to ([\d.]+) h for all steps", drawn["release"])
    assert told is not None
    steps = spans(drawn["order"])
    for k, total in enumerate(told.groups()):
        assert round(sum(step[k] for step in steps), 1) == float(total)
