"""An E57 file that promises points it has not, or sends its reader elsewhere, is refused in one line."""

from __future__ import annotations

import os
import threading
from collections.abc import Callable
from http.server import BaseHTTPRequestHandler, HTTPServer
from pathlib import Path

import numpy as np
import pytest
import scan_writers as w
from e57_edit import edit_xml
from scan_scene import slab_cloud

from crestcut.base.errors import CrestcutError
from crestcut.scan.load import read_file

STILL = (np.array([1.0, 0.0, 0.0, 0.0]), np.zeros(3))


@pytest.fixture
def e57(tmp_path: Path) -> Path:
    path = tmp_path / "a.e57"
    w.write_e57(path, [slab_cloud(154)], [STILL])
    return path


def refusal(path: Path) -> str:
    with pytest.raises(CrestcutError) as caught:
        read_file(path)
    assert "\n" not in str(caught.value) and path.name in str(caught.value) and caught.value.mend
    return str(caught.value)


def test_the_editor_alone_breaks_nothing(e57: Path) -> None:
    before = read_file(e57).points
    edit_xml(e57, lambda text: text.replace("<points", " <points"))
    np.testing.assert_array_equal(read_file(e57).points, before)


@pytest.mark.parametrize("count", [155, 300, 2_000_000_000, 10**18])
def test_points_that_are_not_there_are_not_invented(e57: Path, count: int) -> None:
    edit_xml(e57, lambda text: text.replace('recordCount="154"', f'recordCount="{count}"'))
    text = refusal(e57)
    assert f"{count:,} points expected" in text and "154 found" in text


@pytest.mark.parametrize("count", ["many", "-3", ""])
def test_a_count_that_is_none(e57: Path, count: str) -> None:
    edit_xml(e57, lambda text: text.replace('recordCount="154"', f'recordCount="{count}"'))
    refusal(e57)


def _document_type(there: str) -> Callable[[str], str]:
    return lambda text: text.replace("?>", f'?>\n<!DOCTYPE e57Root SYSTEM "{there}">', 1)


def _entity(there: str) -> Callable[[str], str]:
    kind = f'<!DOCTYPE e57Root [<!ENTITY a SYSTEM "{there}">]>'
    return lambda text: text.replace("?>", f"?>\n{kind}", 1)


def _schema(there: str) -> Callable[[str], str]:
    at = f'xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance" xsi:schemaLocation="urn:a {there}"'
    return lambda text: text.replace("<e57Root", f"<e57Root {at}", 1)


@pytest.mark.parametrize("change", [_document_type, _entity, _schema])
def test_its_xml_fetches_nothing(e57: Path, change: Callable[[str], Callable[[str], str]]) -> None:
    asked: list[str] = []

    class Heard(BaseHTTPRequestHandler):
        def do_GET(self) -> None:
            asked.append(self.path)
            self.send_error(404)

        def log_message(self, *_: object) -> None:
            pass

    with HTTPServer(("127.0.0.1", 0), Heard) as server:
        threading.Thread(target=server.serve_forever, daemon=True).start()
        edit_xml(e57, change(f"http://127.0.0.1:{server.server_port}/a.dtd"))
        text = refusal(e57)
        server.shutdown()
    assert not asked and ("document type" in text or "schema" in text)


def test_a_pipe_as_document_type_is_not_waited_for(e57: Path, tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "pipe.dtd")
    edit_xml(e57, _document_type((tmp_path / "pipe.dtd").as_uri()))
    assert "document type" in refusal(e57)


def test_xml_that_is_none(e57: Path) -> None:
    edit_xml(e57, lambda text: text[: len(text) // 2])
    assert "XML" in refusal(e57)


def test_what_a_file_says_of_its_making(tmp_path: Path) -> None:
    """Sensor by its names, the day by seconds of GPS: 1,000,000,000 were full on 14 September 2011."""
    path = tmp_path / "a.e57"
    w.write_e57(path, [slab_cloud(5000)], [(np.array([1.0, 0.0, 0.0, 0.0]), np.zeros(3))])
    assert read_file(path).files[0].origin.made == ""  # zero seconds are no day
    named = (
        '<sensorVendor type="String">Kiln works</sensorVendor><sensorModel type="String">S 1</sensorModel>'
        "<temperature"
    )

    def change(text: str) -> str:
        text = text.replace("<temperature", named, 1)
        return text.replace(
            '<dateTimeValue type="Float"/>', '<dateTimeValue type="Float">1e9</dateTimeValue>', 1
        )

    edit_xml(path, change)
    origin = read_file(path).files[0].origin
    assert (origin.sensor, origin.made) == ("Kiln works S 1", "2011-09-14")
    assert "pye57" in origin.software
