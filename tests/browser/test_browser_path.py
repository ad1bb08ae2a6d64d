"""A newcomer on the sample site: look at a scan, tap the line, save the job, run it, read the report."""

from __future__ import annotations

import json
import re
import subprocess
import sys
import tomllib
from pathlib import Path
from typing import Any

import pytest

from browser.conftest import grave_faults, overflow, saving, until
from report.page_text import PageText, at_key

ROOT = Path(__file__).parents[2]
LINE = ((1.6, 2.0), (9.9, 2.0))  # from the foot of the apron over the crest into the yard


def crestcut(*arguments: str, cwd: Path) -> subprocess.CompletedProcess[str]:
    command = [sys.executable, "-c", "from crestcut.apps.cli import main; main()", *arguments]
    return subprocess.run(command, cwd=cwd, capture_output=True, text=True, timeout=300)


@pytest.mark.slow
def test_from_look_to_report(open_page: Any, tmp_path: Path) -> None:
    scan = ROOT / "sample_scans" / "apron.laz"
    looked = crestcut("look", str(scan), "--out", str(tmp_path), cwd=tmp_path)
    assert looked.returncode == 0, looked.stderr

    page = open_page(tmp_path / "pick.html", "phone")
    page.locator("#tool-line").check(force=True)
    for x, y in LINE:
        place = page.evaluate(
            "([x, y]) => { const { map, stage } = crestcut; const [u, v] = map.plan.toGrid([x, y]);"
            " const p = stage.project(u, v, NaN), box = stage.holder.getBoundingClientRect();"
            " return [p[0] + box.left, p[1] + box.top]; }",
            [x, y],
        )
        page.touchscreen.tap(*place)
    page.get_by_label("Name of the job").fill("Yard entry")
    page.get_by_label("Which vehicle").select_option("flat_floor_hatchback.toml")
    with saving(page, tmp_path) as job:
        page.locator("#save-job").click()
    with saving(page, tmp_path):
        page.locator("#save-vehicle").click()
    written = tomllib.loads(job[0].read_text(encoding="utf-8"))
    assert (tmp_path / written["scan"]["files"][0]).resolve() == scan.resolve()
    for (x, y), (a, b) in zip(LINE, written["travel"]["line"], strict=True):
        assert abs(x - a) < 0.06 and abs(y - b) < 0.06  # a finger's pixel

    ran = crestcut("run", job[0].name, "--out", "out", cwd=tmp_path)
    assert ran.returncode in (0, 3), ran.stderr
    report, result = (
        tmp_path / "out" / "report.html",
        json.loads((tmp_path / "out" / "result.json").read_text()),
    )
    assert report.stat().st_size <= 3_000_000
    text = PageText.read(report)
    text.assert_self_contained()
    assert len(text.data) >= 12
    for key, value in text.data.items():
        assert float(value) == at_key(result, key), key

    page = open_page(report, "phone")
    assert page.locator("h1").inner_text() == "Yard entry"
    assert re.match(r"Touches|Clears|Cannot tell", page.locator("#verdict").inner_text())
    assert (
        result["release"]["state"].upper() in page.locator("#view .overlay").inner_html()
    )  # nothing was answered
    assert overflow(page) <= 0 and grave_faults(page) == []
    before = page.locator("#station-words").inner_text()
    page.locator("#station").focus()
    page.keyboard.press("Home")
    until(page, f"document.getElementById('station-words').textContent !== {before!r}")
