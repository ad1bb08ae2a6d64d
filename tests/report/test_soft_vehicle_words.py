"""Parts that may touch are told in words and numbers, and change no verdict; the table for use is whole."""

from __future__ import annotations

import dataclasses
import json

import pytest
from deliver_scene import make_report

from crestcut.chance.records import Chance
from crestcut.contact.clearance.soft import SoftContact
from crestcut.report.view.result import result_document
from crestcut.report.words.summary import summary_lines

USED = Chance(-0.012, (-0.02, -0.004), 0.99, "touches", "about 1 in 100 that it clears", 0.004, 0.5, 200)


def test_a_soft_contact_is_told_apart_from_the_verdict() -> None:
    bare = make_report(clearance=0.098)
    worst = bare.before.worst
    assert worst is not None
    touch = SoftContact(
        "air deflector", 0.0083, dataclasses.replace(worst, gap=-0.0083, part="air deflector")
    )
    report = dataclasses.replace(bare, soft=(touch,))
    lines, before = summary_lines(report), summary_lines(bare)
    (said,) = (line for line in lines if line not in before)
    assert said.startswith(
        "Soft, not in the verdict: air deflector may touch and does: it is pressed by 8.3 mm"
    )
    assert "under the air deflector" in said and lines[0] == before[0]
    document = json.loads(json.dumps(result_document(report), allow_nan=False))
    (row,) = document["soft"]
    assert row["part"] == "air deflector" and row["pressed"] == pytest.approx(0.0083)
    assert {"x", "y", "station", "load", "way"} <= row.keys()
    plain = result_document(bare)
    assert plain["soft"] == [] and plain["before"] == document["before"]


def test_every_allowance_for_use_stands_in_summary_and_result_with_its_source() -> None:
    report = make_report(clearance=0.098)
    wanted = dataclasses.replace(report.job.wanted, in_use=(("tyre wear", 0.003), ("roof box", 0.002)))
    report = dataclasses.replace(report, job=dataclasses.replace(report.job, wanted=wanted), in_use=USED)
    rows = result_document(report)["in_use"]["allowances"]  # type: ignore[index]
    by_name = {row["name"]: row for row in rows}
    assert by_name["tyre wear"]["lower"] == 0.003 and by_name["tyre wear"]["source"] == "job file"
    assert by_name["roof box"]["source"] == "job file, added"
    assert "no source" in by_name["tyre pressure"]["source"] and len(rows) == 7
    lines = summary_lines(report)
    for row in rows:
        assert any(line.startswith(f"  {row['name']} ") and row["source"] in line for line in lines)
