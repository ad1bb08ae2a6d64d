"""A run on names that hold control characters, formulas, half formulas and markup: whole files, and none of
it reaches a terminal, a spreadsheet or a drawing as anything but text."""

from __future__ import annotations

import csv
import json
import re
from dataclasses import replace
from pathlib import Path

import ezdxf
import pytest
from click.testing import CliRunner, Result

from crestcut.apps.cli import main
from crestcut.base.errors import CrestcutError, visible
from crestcut.report.sheets.all_sheets import write_tables
from crestcut.study.identity import Identity
from crestcut.work.release import decide_release
from crestcut.work.sheet import make_worksheet
from crestcut.work.tools import load_tools
from verify.after_scene import JOB, VEHICLE, walked, write_ply
from work.work_scene import scene

TOOLS = Path(__file__).parents[2] / "configs" / "tools"

HARM = "\\u001b[31m\\u0007$\\\\frac{x$\\n=1+1 %%d \\u202e\\u2028<svg onload=alert(1)>"  # as TOML writes it
UNSEEN = re.compile("[\x00-\x08\x0b-\x1f\x7f-\x9f\u202a-\u202e\u2066-\u2069\u2028\u2029]")
MARKS = "".join(
    f'[[mark]]\nname = "{name} {HARM}"\nat = [{x}, {y}]\n'
    for name, x, y in (("=A", 0.5, 0.6), ("@B", 4.5, 0.7), ("+C", 2.5, -0.8))
)
KEEP = f'[[keep]]\nkind = "@walk {HARM}"\narea = [[0.1, -0.9], [0.4, -0.9], [0.4, 0.9], [0.1, 0.9]]\n'


@pytest.fixture(scope="module")
def ran(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, Result]:
    folder = tmp_path_factory.mktemp("hostile")
    scan = write_ply(walked(1), folder / "be\x1b[2J\nfore.ply")
    cart = VEHICLE.replace('"low cart"', f'"=cart {HARM}"').replace('"tray"', f'"-tray {HARM}"')
    (folder / "cart.toml").write_text(cart)
    named = JOB.replace('"Low cart"', f'"=HYPERLINK {HARM}"').replace('"before.ply"', json.dumps(scan.name))
    (folder / "job.toml").write_text(named + MARKS + KEEP)
    out = folder / "out"
    return out, CliRunner().invoke(main, ["run", str(folder / "job.toml"), "--out", str(out)])


def test_the_terminal_shows_control_characters_written_out(ran: tuple[Path, Result]) -> None:
    result = ran[1]
    assert result.exit_code == 0, result.output
    assert not UNSEEN.search(result.output) and "\\x1b[31m" in result.output
    assert "be\\x1b[2J\\nfore.ply" in result.output


def test_no_cell_begins_a_formula(tmp_path: Path) -> None:
    s = scene()
    sheet = make_worksheet(s.order(decide_release(s.job, False, s.plan)), tools=load_tools(TOOLS))
    assert sheet.set_out is not None and sheet.jig is not None
    ties = replace(next(d.ties for d in sheet.set_out.dots if d.ties), first="=A()", second="@B")
    dots = tuple(replace(d, name="+D", ties=ties) for d in sheet.set_out.dots)
    rows = tuple(replace(r, part="-tray") for r in sheet.jig.rows)
    hostile = replace(sheet, set_out=replace(sheet.set_out, dots=dots), jig=replace(sheet.jig, rows=rows))
    write_tables(hostile, Identity("Apron", "ok", None, "0"), tmp_path)
    named = set()
    for path in tmp_path.glob("*.csv"):
        with path.open(encoding="utf-8", newline="") as file:
            for cell in (cell for row in csv.reader(file) for cell in row if cell):
                assert re.fullmatch(r"[-+]?[0-9.]+", cell) or cell[0] not in "=+-@", (path.name, cell)
                named |= {cell} if cell[0] == "'" else set()
    assert named == {"'=A()", "'@B", "'+D", "'-tray"}  # there, as text


def test_drawing_and_mesh_stay_whole(ran: tuple[Path, Result]) -> None:
    text = (ran[0] / "set_out.dxf").read_text(encoding="utf-8")
    assert not UNSEEN.search(text)
    drawing = ezdxf.readfile(ran[0] / "set_out.dxf")
    assert not drawing.audit().has_errors
    words = [t.dxf.text for t in drawing.modelspace().query("TEXT")]
    assert any("\\x1b[31m" in w and "=A" in w for w in words)
    head = (ran[0] / "depth_to_remove.ply").read_bytes().split(b"end_header")[0].decode("ascii")
    assert not UNSEEN.search(head) and "HYPERLINK" in head
    pdf = (ran[0] / "work_sheets.pdf").read_bytes()
    assert pdf.startswith(b"%PDF") and pdf.rstrip().endswith(b"%%EOF")


def test_an_error_shows_them_too() -> None:
    assert visible("a\x1b[2J\u202eb\x85") == "a\\x1b[2J\\u202eb\\x85"
    assert visible("ö 東京 \u200f") == "ö 東京 \u200f"  # letters of any script stay
    assert "\x1b" not in str(CrestcutError("no such file", "a\x1b[2J.ply"))
