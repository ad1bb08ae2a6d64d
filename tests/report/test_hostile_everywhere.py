"""Every command on files whose every word is written to do harm; every file that it leaves, and all that it
says, goes through one test for its kind."""

from __future__ import annotations

import csv
import io
import json
import re
import tomllib
from collections.abc import Callable
from html.parser import HTMLParser
from pathlib import Path
from xml.etree import ElementTree

import ezdxf
import pypdf
import pytest
from click.testing import CliRunner

from crestcut.apps.cli import main
from floor.floor_scene import write_scan
from verify.after_scene import JOB, VEHICLE, walked, write_ply

HARM = (
    "=1+1 \\u001b[2J\\u0007\\u202e\\u2028\\n%%d $\\\\frac{x$ </script><svg onload=alert(1)>"  # as TOML has it
)
HARM += "<meta http-equiv=refresh content='0;url=http://127.0.0.1:9/'> {0} {{ 7*7 }} ]]>"
UNSEEN = re.compile("[\x00-\x08\x0b-\x1f\x7f-\x9f\u2028\u2029\u202a-\u202e\u2066-\u2069]")
MORE = f"""
[[mark]]
name = "@A {HARM}"
at = [0.5, 0.6]
[[mark]]
name = "+B {HARM}"
at = [4.5, 0.7]
[[keep]]
kind = "-walk {HARM}"
area = [[0.1, -0.9], [0.4, -0.9], [0.4, 0.9], [0.1, 0.9]]
[[witness]]
part = "-tray {HARM}"
front_axle = [3.0, 0.0]
gap = "9 mm"
[[after.string]]
a = [2.0, 0.0]
b = [3.0, 0.0]
at = "least"
blocks = "100 mm"
down = "90 mm"
"""
FLOOR = f"""
title = "=floor {HARM}"
[scan]
files = ["floor.xyz"]
scanner = "terrestrial"
[floor]
straightedge = "1 m"
gap = "3 mm"
[surface]
cell = "20 mm"
[[mark]]
name = "=M {HARM}"
at = [0.4, 0.4]
"""


def site(folder: Path) -> Path:
    """A job, a floor, a vehicle and scans in a folder with a name like them."""
    place = folder / "=be\x1b[2Jfore<svg onload=alert(1)>"
    place.mkdir()
    scan = write_ply(walked(1), place / "=sc\x1b[2J\nan<b>.ply")
    write_ply(walked(2), place / "=after\u202e<b>.ply")
    (place / "cart.toml").write_text(
        VEHICLE.replace('"low cart"', f'"=cart {HARM}"').replace('"tray"', f'"-tray {HARM}"')
    )
    job = JOB.replace('"Low cart"', f'"=HYPERLINK {HARM}"').replace('"before.ply"', json.dumps(scan.name))
    job = job.replace("[slab]\n", f'[slab]\nconduit_note = "=note {HARM}"\nkind_note = "{HARM}"\n')
    (place / "job.toml").write_text(job + MORE)
    (place / "floor.toml").write_text(FLOOR)
    write_scan(place / "floor.xyz", (1.5, 1.2, 0.4, 0.006))  # type: ignore[arg-type]
    return place


FETCHING = ("meta", "base", "iframe", "object", "embed", "link")


class _Page(HTMLParser):
    """Tags and attributes of a page that would fetch, move or run something."""

    def __init__(self) -> None:
        super().__init__()
        self.policy, self.bad = "", list[str]()

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        given = dict(attrs)
        if tag == "meta" and given.get("http-equiv", "").lower() == "content-security-policy":  # type: ignore[union-attr]
            self.policy = given["content"] or ""
        elif tag in FETCHING and {"http-equiv", "href", "src"} & set(given):
            self.bad.append(self.get_starttag_text() or tag)
        self.bad += [f"{tag} {k}" for k in given if k.startswith("on")]
        away = (v or "" for k, v in attrs if k in ("src", "href") and re.match(r"\w+:", v or ""))
        self.bad += [f"{tag} {v}" for v in away if not v.startswith(("data:", "blob:"))]


def page(text: str) -> None:
    found = _Page()
    found.feed(text)
    assert found.bad == [] and "default-src 'none'" in found.policy and "unsafe" not in found.policy


def table(text: str) -> None:
    for cell in (c for row in csv.reader(io.StringIO(text)) for c in row if c):
        assert re.fullmatch(r"[-+]?[0-9.]+(e[-+]\d+)?", cell) or cell[0] not in "=+-@\t", cell


CHECKS: dict[str, Callable[[str], object]] = {
    ".html": page, ".csv": table, ".json": json.loads, ".geojson": json.loads, ".xml": ElementTree.fromstring,
    ".toml": tomllib.loads, ".txt": str, ".dxf": str,
}  # fmt: skip


def harmless(path: Path) -> bool:
    """Assert that a file says what it says as text alone; is it one of text?"""
    if path.suffix == ".pdf":
        text = "\n".join(p.extract_text() for p in pypdf.PdfReader(path).pages)
    elif path.suffix in (".ply",):
        text = path.read_bytes().split(b"end_header")[0].decode()
    elif path.suffix in CHECKS:
        text = path.read_text(encoding="utf-8")
        CHECKS[path.suffix](text)
        text = re.sub(r"(?s)<script>.*?</script>", "", text)  # the viewer's own, which its policy names
    else:
        assert path.suffix in (".png", ".npz", ".glb", ".tif", ".laz"), path.name
        return False
    if path.suffix in (".json", ".geojson"):  # data keep a name as it is; what JSON itself escapes is
        text = re.sub("[\u2028\u2029\u202a-\u202e]", "", text)
    assert not (bad := UNSEEN.search(text)), (path.name, text[max(0, bad.start() - 40) : bad.end() + 10])
    if path.suffix == ".dxf":
        assert not ezdxf.readfile(path).audit().has_errors
    return True


@pytest.mark.slow
def test_whatever_is_named_does_no_harm_anywhere(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    place = site(tmp_path)
    monkeypatch.chdir(place)
    after = "=after\u202e<b>.ply"
    commands = {
        "run": ["run", "job.toml"],
        "verify": ["verify", "job.toml", "--after", after],
        "survey": ["survey", "job.toml"],
        "floor": ["floor", "floor.toml"],
        "look": ["look", after],
        "vehicle": ["vehicle", "cart.toml"],
        "several": ["run", "job.toml", "floor.toml"],
    }
    read = set()
    for name, words in commands.items():
        out = place / ("run" if name == "survey" else name)
        done = CliRunner().invoke(main, [*words, "--out", str(out)])
        assert isinstance(done.exception, SystemExit | None), (name, done.exception)
        assert done.exit_code in (0, 3, 4), (name, done.output[-900:])
        assert not UNSEEN.search(done.output), name
        read |= {p.suffix for p in out.rglob("*") if p.is_file() and harmless(p)}
    assert {".html", ".csv", ".json", ".pdf", ".dxf", ".ply", ".xml"} <= read
