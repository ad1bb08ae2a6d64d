"""Names, titles, notes and file names written to do harm are shown as text: no page fetches, asks, moves or
runs anything."""

from __future__ import annotations

import dataclasses
from pathlib import Path
from typing import Any

import pytest

from browser.courtyard import courtyard, draw_line
from crestcut.alternatives.rows import Option
from crestcut.chance.records import Cause, Chance
from crestcut.contact.clearance.soft import SoftContact
from crestcut.report.pages.pick import write_pick
from crestcut.report.pages.report import write_report
from crestcut.study.report import PlacedMark, Report, VehicleRow
from crestcut.work.records import Reason, ReasonCode, Worksheet
from crestcut.work.release import decide_release
from crestcut.work.sheet import make_worksheet
from crestcut.work.tools import load_tools
from report.deliver_scene import make_report
from work.work_scene import scene

AWAY = "https://crestcut.invalid/"
HARM = (
    f'<meta http-equiv=refresh content="0;url={AWAY}"><svg onload=alert(1)>'
    f'"><img src={AWAY}x onerror=alert(2)></title></style></script><script>alert(3)</script>'
    "<!--<script> {0} {name} &amp; \u2028 \u2029 ' onmouseover=alert(4) x='"
)
# words of a list that is looked things up in, and figures of speech that are no one's to write
CLOSED = {"zone", "kind", "state", "place", "hours", "task", "side", "stamp"}


def poisoned(value: Any, name: str = "") -> Any:
    """The same record with harm before each of its words."""
    if isinstance(value, str):
        return value if name in CLOSED else f"{HARM} {value}"
    if isinstance(value, tuple):
        return type(value)(*(poisoned(v) for v in value)) if hasattr(value, "_fields") else tuple(
            poisoned(v, name) for v in value
        )  # fmt: skip
    if dataclasses.is_dataclass(value) and not isinstance(value, type):
        given = {f.name: getattr(value, f.name) for f in dataclasses.fields(value) if f.init}
        return dataclasses.replace(value, **{k: poisoned(v, k) for k, v in given.items()})
    return value


def report(verdict: str) -> Report:
    """The made-up job with harm in everything that somebody else writes."""
    plain = make_report(clearance=0.16 if verdict == "clears" else 0.09, release="not for cutting")
    assert plain.plan is not None and plain.today is not None and plain.before.worst is not None
    today = Chance(0.001, (-0.01, 0.012), 0.4, "cannot tell", f"{HARM} in 5", 0.006, 0.8, 400)
    today = today.told([(Cause.ERROR, HARM)])
    parts = tuple(dataclasses.replace(p, name=f"{HARM} {p.name}") for p in plain.vehicle.parts)
    least = {z: dataclasses.replace(c, part=f"{HARM} {c.part}") for z, c in plain.before.least.items()}
    worst = max(least.values(), key=lambda c: c.gap)
    line = ((3.0, -2.0), (9.0, 1.0))
    options = tuple(
        Option(kind, HARM, 0.03, 0.01, 0.99, kind == "another line", 0.02, 0.1, 0.001, 1e-4, HARM, line=line)
        for kind in ("keep to the line", "another line", "cut")
    )
    rows = tuple(
        VehicleRow(HARM, (HARM,), HARM, today, today, today, 0.003, 1e-4, True, 0.0) for _ in range(2)
    )
    return dataclasses.replace(
        plain,
        kind="none" if verdict != "touches" else "crest",  # which names the part
        job=dataclasses.replace(plain.job, title=HARM),
        scan=dataclasses.replace(plain.scan, notes=(HARM,), files=poisoned_files(plain)),
        surface=dataclasses.replace(plain.surface, removed=((HARM, 3),), notes=(HARM,)),
        vehicle=dataclasses.replace(plain.vehicle, name=HARM, parts=parts, notes=(HARM,)),
        before=dataclasses.replace(plain.before, least=least),
        today=today if verdict == "cannot tell" else plain.today,
        plan=dataclasses.replace(plain.plan, feasible=False, binding=(HARM,)),
        advice=({"kind": HARM, "how": HARM, "where": HARM, "expect": HARM, "narrows": 2.0},),
        release_reasons=(Reason(ReasonCode.UNANSWERED, HARM),),
        marks=tuple(PlacedMark(HARM, m.xy) for m in plain.marks),
        keeps=tuple(dataclasses.replace(k, kind=HARM) for k in plain.keeps),
        notes=(HARM,),
        options=options,
        vehicles=rows,
        soft=(SoftContact(HARM, 0.004, worst),),
    )


def sheet() -> Worksheet:
    """Of a released job: jig, passes, set-out and all."""
    s = scene()
    tools = load_tools(Path(__file__).parents[2] / "configs" / "tools")
    return make_worksheet(s.order(decide_release(s.job, False, s.plan)), tools=tools)


def poisoned_files(plain: Report) -> tuple[Any, ...]:
    return tuple(dataclasses.replace(f, path=Path(HARM.replace("/", "\u2215"))) for f in plain.scan.files)


def assert_harmless(page: Any, path: Path) -> None:
    page.wait_for_timeout(300)  # a refresh of nought seconds has its turn
    assert page.url.startswith(path.as_uri())
    found = page.locator("meta[http-equiv=refresh], img[src^=http], svg[onload], [onerror], [onmouseover]")
    assert found.count() == 0
    assert page.evaluate("document.querySelectorAll('script').length") == 2
    policy = page.locator("meta[http-equiv=Content-Security-Policy]").get_attribute("content")
    assert "default-src 'none'" in policy and "unsafe" not in policy and "http" not in policy


@pytest.mark.parametrize("verdict", ["touches", "clears", "cannot tell"])
def test_a_report_of_hostile_names_is_harmless(verdict: str, open_page: Any, tmp_path: Path) -> None:
    path = write_report(report(verdict), tmp_path, poisoned(sheet()))
    page = open_page(path, "phone")
    assert_harmless(page, path)
    assert "<meta http-equiv=refresh" in page.locator("#verdict").inner_text()  # shown as it was written
    page.locator("#units-switch").select_option("inches")
    page.locator("#play").click()
    assert_harmless(page, path)


def test_a_pick_page_of_hostile_names_is_harmless(open_page: Any, tmp_path: Path) -> None:
    scan = dataclasses.replace(courtyard(HARM.replace("/", "\u2215")), notes=(HARM,))
    path = write_pick(scan, None, tmp_path)
    page = open_page(path, "phone")
    draw_line(page)
    page.get_by_label("Name of the job").fill(HARM)
    toml = HARM.replace("\\", "\\\\").replace('"', '\\"')
    job = (
        f'title = "{toml}"\n[scan]\nfiles = ["{toml}"]\n[vehicle]\nfile = "{toml}"\n[travel]\n'
        f'line = [[-512299.0, 4481202.0], "{toml}"]\ntrack = "{toml}"\n[clearance]\nwant = "{toml}"\n'
        f'[slab]\nkind = "{toml}"\npost_tensioned = "no"\npost_tensioned_from = "{toml}"\n'
        f'[[mark]]\nname = "{toml}"\nat = [-512290.0, 4481202.0]\n[[keep]]\nkind = "{toml}"\n'
        f'deepest = "{toml}"\narea = [[-512295.0, 4481202.0], [-512294.0, 4481202.0], "{toml}"]\n'
    )
    (tmp_path / "job.toml").write_text(job, encoding="utf-8")
    page.locator("#open-job").set_input_files(tmp_path / "job.toml")
    page.wait_for_function("() => document.getElementById('said').textContent.endsWith('opened')")
    car = (
        f'name = "{toml}"\nwheelbase = "{toml}"\n[[part]]\nname = "{toml}"\nback = ["1 m", "2 m"]\n'
        f'across = ["-1 m", "1 m"]\nclearance = "1 mm"\n[load."{toml}"]\nfront = "1 mm"\nrear = "1 mm"\n'
    )
    (tmp_path / "car.toml").write_text(car, encoding="utf-8")
    page.get_by_label("Which vehicle").select_option("own")
    page.locator("#v-open").set_input_files(tmp_path / "car.toml")
    assert_harmless(page, path)
