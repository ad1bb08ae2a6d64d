"""Nothing is opened but plain files, and of those that a scan names none outside its own folder."""

from __future__ import annotations

import json
import os
import signal
import socket
from collections.abc import Callable, Iterator
from pathlib import Path

import numpy as np
import pytest
import scan_writers as w
from scan_scene import slab_cloud, slab_mesh, y_up

from crestcut.base.errors import CrestcutError
from crestcut.contact.path.files import read_line
from crestcut.job.load import load_job
from crestcut.scan.load import read_file
from crestcut.vehicle.load import load_vehicle


class _TooLate(BaseException):
    """No reader may take it for a fault of the file."""


READERS: dict[str, Callable[[Path], object]] = {
    "scan.ply": read_file,
    "job.toml": load_job,
    "vehicle.toml": load_vehicle,
    "line.csv": read_line,
}


@pytest.fixture(autouse=True)
def _no_waiting() -> Iterator[None]:
    """Who opens a pipe that nobody writes to waits for ever: here for 20 s."""

    def late(*_: object) -> None:
        raise _TooLate

    before = signal.signal(signal.SIGALRM, late)
    signal.alarm(20)
    yield
    signal.alarm(0)
    signal.signal(signal.SIGALRM, before)


def line_of(read: Callable[[Path], object], path: Path) -> str:
    with pytest.raises(CrestcutError) as caught:
        read(path)
    text = str(caught.value)
    assert "\n" not in text and path.name in text and caught.value.mend, text
    return text


@pytest.mark.parametrize("name", READERS)
def test_a_pipe_is_not_waited_for(name: str, tmp_path: Path) -> None:
    os.mkfifo(tmp_path / name)
    assert "is a pipe" in line_of(READERS[name], tmp_path / name)


@pytest.mark.parametrize("name", READERS)
def test_a_socket_a_device_and_a_folder(name: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)  # the name of a socket may not be long
    with socket.socket(socket.AF_UNIX) as heard:
        heard.bind(name)
        assert "is a socket" in line_of(READERS[name], Path(name))
    os.unlink(name)
    Path(name).symlink_to("/dev/zero")
    assert "is a device" in line_of(READERS[name], Path(name))
    os.unlink(name)
    Path(name).mkdir()
    assert "is a folder" in line_of(READERS[name], Path(name))


def test_a_link_to_a_scan_is_a_scan(tmp_path: Path) -> None:
    w.write_ply(tmp_path / "a.ply", slab_cloud(), "binary_little_endian")
    (tmp_path / "b.ply").symlink_to(tmp_path / "a.ply")
    assert read_file(tmp_path / "b.ply").files[0].points == 4000


@pytest.mark.parametrize("way", ["up", "whole", "link", "address", "pipe"])
def test_a_gltf_names_nothing_outside_its_folder(way: str, tmp_path: Path) -> None:
    document, data = w.gltf_document(y_up(slab_mesh()[0]), slab_mesh()[1], np.zeros(3))
    own = tmp_path / "own"
    own.mkdir()
    (tmp_path / "secret.bin").write_bytes(data)
    (own / "linked.bin").symlink_to(tmp_path / "secret.bin")
    os.mkfifo(own / "pipe.bin")
    uri = {
        "up": "../secret.bin",
        "whole": str(tmp_path / "secret.bin"),
        "link": "linked.bin",
        "address": "http://127.0.0.1:9/secret.bin",
        "pipe": "pipe.bin",
    }[way]
    document["buffers"] = [{"byteLength": len(data), "uri": uri}]
    (own / "m.gltf").write_text(json.dumps(document))
    if way == "pipe":
        with pytest.raises(CrestcutError, match="is a pipe"):
            read_file(own / "m.gltf")
    else:
        assert "outside its own folder" in line_of(read_file, own / "m.gltf")


def test_a_gltf_may_have_its_data_beside_it(tmp_path: Path) -> None:
    document, data = w.gltf_document(y_up(slab_mesh()[0]), slab_mesh()[1], np.zeros(3))
    (tmp_path / "its data.bin").write_bytes(data)
    document["buffers"] = [{"byteLength": len(data), "uri": "its%20data.bin"}]
    (tmp_path / "m.gltf").write_text(json.dumps(document))
    assert read_file(tmp_path / "m.gltf").frame.up == "y"


def test_an_obj_opens_no_material_library(tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "m.mtl")
    w.write_obj(tmp_path / "m.obj", *slab_mesh())
    text = (tmp_path / "m.obj").read_text()
    (tmp_path / "m.obj").write_text("mtllib m.mtl\nmtllib ../x.mtl\nusemtl a\n" + text)
    assert read_file(tmp_path / "m.obj").files[0].mesh_edge


STAGE = '#usda 1.0\n(\n    upAxis = "Z"\n    metersPerUnit = 1\n{head})\n{body}\n'
NAMES = {
    "sublayer": ("    subLayers = [@{}@]\n", ""),
    "reference": ("", 'def Xform "a" (references = @{}@) {{}}'),
    "payload": ("", 'def Xform "a" (payload = @{}@</slab>) {{}}'),
}


@pytest.mark.parametrize("kind", NAMES)
@pytest.mark.parametrize("there", ["../other.usda", "/dev/null.usda", "inner.usda"])
def test_a_usd_names_nothing_outside_its_folder(kind: str, there: str, tmp_path: Path) -> None:
    pytest.importorskip("pxr")
    own = tmp_path / "own"
    own.mkdir()
    head, body = (text.format(there) for text in NAMES[kind])
    (own / "m.usda").write_text(STAGE.format(head=head, body=body))
    inner = STAGE.format(head="    subLayers = [@../deep.usda@]\n", body="")
    (own / "inner.usda").write_text(inner)
    for name in ("other.usda", "deep.usda"):
        (tmp_path / name).write_text(STAGE.format(head="", body=""))
    assert "outside its own folder" in line_of(read_file, own / "m.usda")


def test_a_usd_may_have_a_layer_beside_it(tmp_path: Path) -> None:
    pytest.importorskip("pxr")
    points = ", ".join(f"({x}, {y}, {z})" for x, y, z in slab_cloud(400))
    layer = STAGE.format(head="", body=f'def Points "slab" {{\n    point3f[] points = [{points}]\n}}')
    (tmp_path / "inner.usda").write_text(layer)
    outer = STAGE.format(head="    subLayers = [@./inner.usda@]\n", body="")
    (tmp_path / "m.usda").write_text(outer)
    assert read_file(tmp_path / "m.usda").files[0].points == 400


def test_a_usd_takes_no_values_from_clips(tmp_path: Path) -> None:
    pytest.importorskip("pxr")
    body = (
        'def Points "a" (\n    clips = {\n        dictionary default = {\n'
        '            asset[] assetPaths = [@../c.usda@]\n            string primPath = "/a"\n        }\n'
        "    }\n) {}"
    )
    (tmp_path / "m.usda").write_text(STAGE.format(head="", body=body))
    assert "clips" in line_of(read_file, tmp_path / "m.usda")
