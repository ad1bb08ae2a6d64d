"""What a compiled reader dies of is one line: the process that asked for the file lives on."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest
import scan_writers as w
from scan_scene import slab_cloud

from crestcut.base.errors import CrestcutError
from crestcut.scan.formats import child as cage
from crestcut.scan.formats.raw import RawScan
from crestcut.scan.load import read_file


def _laz(path: Path) -> Path:
    w.write_las(path, slab_cloud())
    return path


def test_a_bad_chunk_table_is_one_line(tmp_path: Path) -> None:
    path = _laz(tmp_path / "a.laz")
    data = bytearray(path.read_bytes())
    points = int.from_bytes(data[96:100], "little")  # LAS 1.4: offset to point data
    table = int.from_bytes(data[points : points + 8], "little")  # LAZ: there stands the chunk table's place
    data[table + 4 : table + 8] = b"\xff" * 4  # and after its version the number of chunks
    path.write_bytes(data)
    # in a process of its own, since without the cage it is this one that would be aborted
    program = "import sys\nfrom pathlib import Path\nfrom crestcut.scan.load import read_file\n"
    program += "from crestcut.base.errors import CrestcutError\ntry:\n    read_file(Path(sys.argv[1]))\n"
    program += "except CrestcutError as error:\n    print(error)\n"
    done = subprocess.run([sys.executable, "-c", program, str(path)], capture_output=True, text=True)
    assert done.returncode == 0 and done.stderr == ""
    assert "a.laz: cannot be read as LAS or LAZ" in done.stdout and done.stdout.count("\n") == 1


def _aborts(path: Path) -> RawScan:
    os.abort()


def _loops(path: Path) -> RawScan:
    while True:
        pass


def _hoards(path: Path) -> RawScan:
    return RawScan("", bytearray(1 << 42))  # type: ignore[arg-type]


def _fails(path: Path) -> RawScan:
    raise KeyError("vlr")


def _prints(path: Path) -> RawScan:
    print("noise of a library")
    return RawScan("said", slab_cloud())


@pytest.mark.parametrize(
    ("reader", "said"),
    [("_aborts", "gave up"), ("_loops", "too long"), ("_hoards", "more memory"), ("_fails", "KeyError")],
)
def test_every_death_has_its_line(
    reader: str, said: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(cage, "SECONDS", 2.0)
    monkeypatch.setenv("PYTHONPATH", str(Path(__file__).parent))
    path = _laz(tmp_path / "a.laz")
    with pytest.raises(CrestcutError, match=said) as caught:
        cage.read_caged(f"test_cage:{reader}", path, "LAS or LAZ")
    assert "\n" not in str(caught.value) and "a.laz" in str(caught.value) and caught.value.mend


def test_what_a_library_prints_is_no_answer(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("PYTHONPATH", str(Path(__file__).parent))
    assert cage.read_caged("test_cage:_prints", _laz(tmp_path / "a.laz"), "LAZ").format == "said"


def test_the_readers_own_line_comes_through_whole(tmp_path: Path) -> None:
    path = _laz(tmp_path / "a.laz")
    path.write_bytes(path.read_bytes()[:3000])
    with pytest.raises(CrestcutError) as caught:
        read_file(path)
    assert caught.value.where == str(path) and caught.value.mend == "copy or export it again"


@pytest.mark.skipif(sys.platform != "linux", reason="the tie to the parent's life is the system's own")
def test_a_reader_dies_with_who_asked(tmp_path: Path) -> None:
    path = _laz(tmp_path / "a.laz")
    program = "import sys\nfrom pathlib import Path\nfrom crestcut.scan.formats.child import read_caged\n"
    program += "read_caged('test_cage:_loops', Path(sys.argv[1]), 'LAZ')"
    paths = os.pathsep.join([str(Path(__file__).parent), os.environ.get("PYTHONPATH", "")])
    asked = subprocess.Popen(
        [sys.executable, "-c", program, str(path)], env={**os.environ, "PYTHONPATH": paths}
    )
    children = Path(f"/proc/{asked.pid}/task/{asked.pid}/children")
    while not (found := children.read_text().split()):
        time.sleep(0.02)
    status = Path(f"/proc/{found[0]}/cmdline")
    while b"test_cage" not in status.read_bytes():
        time.sleep(0.02)
    asked.send_signal(signal.SIGKILL)
    asked.wait()
    for _ in range(400):
        if not status.exists() or not status.read_bytes():  # gone, or only its number is left
            return
        time.sleep(0.05)
    os.kill(int(found[0]), signal.SIGKILL)
    raise AssertionError("the reader lived on")
