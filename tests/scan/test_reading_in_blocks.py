"""Files read some points at a time: which are held follows from the file alone, memory from what is held."""

from __future__ import annotations

import tracemalloc
from collections.abc import Callable
from pathlib import Path

import laspy
import numpy as np
import pye57
import pytest

from crestcut.base.errors import CrestcutError
from crestcut.job import ScanChoice, Surveyed
from crestcut.scan import Patch, anywhere, assess, load, read_scan
from crestcut.scan.formats import ply
from crestcut.scan.formats.e57 import read_e57
from crestcut.scan.formats.las import read_las
from crestcut.scan.formats.pcd import read_pcd
from crestcut.scan.formats.ply import read_ply
from crestcut.scan.formats.raw import RawScan
from crestcut.scan.formats.take import Cut, Take
from crestcut.scan.formats.text import read_text

COUNT = 5003
Reader = Callable[[Path, Take], RawScan]


def _cloud(count: int = COUNT) -> np.ndarray:
    rng = np.random.default_rng(3)
    xy = rng.uniform((0, 0), (12, 5), (count, 2))
    return np.column_stack([xy, 0.1 * xy[:, 0] + rng.normal(0, 0.003, count)])


def _laz(folder: Path, points: np.ndarray) -> Path:
    header = laspy.LasHeader(point_format=7, version="1.4")
    header.scales, header.offsets = np.full(3, 1e-4), np.zeros(3)
    las = laspy.LasData(header)
    las.x, las.y, las.z = points.T
    n = np.arange(len(points))
    las.gps_time = n * 1e-3
    las.red = las.green = las.blue = (n % 200).astype(np.uint16) + np.where(n == 4000, 256, 0)
    las.classification = np.where(n % 7 == 0, 7, 2).astype(np.uint8)  # 7: noise
    las.withheld = n % 11 == 0
    las.write(str(folder / "cloud.laz"))
    return folder / "cloud.laz"


def _e57(folder: Path, points: np.ndarray) -> Path:
    with pye57.E57(str(folder / "cloud.e57"), mode="w") as file:
        for k, part in enumerate(np.array_split(points, 2)):
            columns = {f"cartesian{a}": part[:, i] for i, a in enumerate("XYZ")}
            grey = (np.arange(len(part)) % 255).astype(np.uint8)
            columns |= {f"color{c}": grey for c in ("Red", "Green", "Blue")}
            turn = np.array([np.cos(0.2), 0.0, 0.0, np.sin(0.2)])
            file.write_scan_raw(columns, rotation=turn, translation=np.array([0.3 * k, 1.0, 2.0]))
    return folder / "cloud.e57"


def _ply(folder: Path, points: np.ndarray) -> Path:
    record = np.dtype([*((n, ">f8") for n in "xyz"), ("red", "u1"), ("green", "u1"), ("blue", "u1"),
                       ("time", ">f4")])  # fmt: skip
    rows = np.zeros(len(points), record)
    rows["x"], rows["y"], rows["z"] = points.T
    rows["red"], rows["time"] = np.arange(len(points)) % 200, np.arange(len(points))
    kinds = {"f8": "double", "f4": "float", "u1": "uchar"}
    lines = [f"property {kinds[record[n].str[1:]]} {n}" for n in record.names or ()]
    header = ["ply", "format binary_big_endian 1.0", f"element vertex {len(rows)}", *lines, "end_header", ""]
    (folder / "cloud.ply").write_bytes("\n".join(header).encode() + rows.tobytes())
    return folder / "cloud.ply"


def _csv(folder: Path, points: np.ndarray, top: float = 65000.0) -> Path:
    n = np.arange(len(points))
    grey = np.where(n == 4000, top, n % 2)  # sixteen bits, though most rows do not show it
    ends = np.where(n % 9 == 0, ' # a 5"\n', "\r\n").tolist()  # an inch mark opens no quotation
    rows = [
        f"{x!r};{y!r};{z!r};{g:g};{g:g};{g:g};{0.5 * k!r}".replace(".", ",") + end
        for (x, y, z), g, k, end in zip(points.tolist(), grey, n.tolist(), ends, strict=True)
    ]
    (folder / "cloud.csv").write_text("# of a yard\nx;y;z;r;g;b;time\n" + "".join(rows), newline="")
    return folder / "cloud.csv"


def _csv_of_parts(folder: Path, points: np.ndarray) -> Path:
    return _csv(folder, points, 700.75)


def _pcd(folder: Path, points: np.ndarray) -> Path:
    """With three points more than it says, which are none, as in ``_pcd_text``."""
    record = np.dtype([*((n, "<f8") for n in "xyz"), ("rgb", "<u4")])
    rows = np.zeros(len(points), record)
    rows["x"], rows["y"], rows["z"] = points.T
    rows["rgb"] = np.arange(len(points)) * 7 % (1 << 24)
    (folder / "cloud.pcd").write_bytes(_pcd_header(len(rows), "binary") + rows.tobytes() + rows[:3].tobytes())
    return folder / "cloud.pcd"


def _pcd_header(count: int, how: str) -> bytes:
    head = f"FIELDS x y z rgb\nSIZE 8 8 8 4\nTYPE F F F U\nWIDTH {count}\nHEIGHT 1\nDATA {how}\n"
    return head.encode()


def _pcd_text(folder: Path, points: np.ndarray) -> Path:
    rows = [f"{x!r} {y!r} {z!r} {k * 7}\n" for k, (x, y, z) in enumerate(points.tolist())]
    (folder / "cloud.pcd").write_bytes(_pcd_header(len(rows), "ascii") + "".join(rows + rows[:3]).encode())
    return folder / "cloud.pcd"


CASES: dict[str, tuple[Callable[[Path, np.ndarray], Path], Reader]] = {
    "laz": (_laz, read_las), "e57": (_e57, read_e57), "ply": (_ply, read_ply), "csv": (_csv, read_text),
    "csv of parts": (_csv_of_parts, read_text), "pcd": (_pcd, read_pcd), "pcd of text": (_pcd_text, read_pcd),
}  # fmt: skip


def _same(one: RawScan, other: RawScan) -> None:
    for name in ("points", "colours", "time", "classes", "station"):
        a, b = getattr(one, name), getattr(other, name)
        assert (a is None) == (b is None), name
        if a is not None:
            assert a.dtype == b.dtype
            np.testing.assert_array_equal(a, b, err_msg=name)
    assert (one.dropped, one.quantum) == (other.dropped, other.quantum)


@pytest.mark.parametrize("kind", CASES)
@pytest.mark.parametrize("cut", [False, True])
@pytest.mark.parametrize("most", [None, 300])
def test_how_many_are_read_at_a_time_changes_nothing(
    kind: str, cut: bool, most: int | None, tmp_path: Path
) -> None:
    write, read = CASES[kind]
    path = write(tmp_path, _cloud())
    part = Cut((Patch((2.0, 1.0), 0.3, (4.0, 2.0)),), np.eye(2, 4), (), (7,)) if cut else None
    whole = read(path, Take(most, 10**6, part))
    for rows in (7, 37, 1000):
        _same(read(path, Take(most, rows, part)), whole)


def test_points_of_a_laz_are_those_of_its_library(tmp_path: Path) -> None:
    path = _laz(tmp_path, _cloud())
    las = laspy.read(str(path))
    keep = ~np.asarray(las.withheld, bool)
    found = read_las(path, Take(None, 999))
    np.testing.assert_array_equal(found.points, np.column_stack([las.x, las.y, las.z])[keep])
    assert found.dropped == (~keep).sum() and found.colours is not None and found.colours.max() <= 1
    few = read_las(path, Take(1000, 999))
    assert few.tally is not None and few.tally.every == 8
    np.testing.assert_array_equal(few.points, found.points[::8])


def test_a_binary_cloud_is_what_its_library_makes_of_it(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = _ply(tmp_path, _cloud())
    some = read_ply(path, Take(None, 999))
    monkeypatch.setattr(ply, "_record", lambda *_: None)
    whole = read_ply(path)
    _same(some, whole)
    assert some.time is not None and some.colours is not None and some.format == whole.format


def test_a_text_holds_the_numbers_that_were_written(tmp_path: Path) -> None:
    points = _cloud()
    # one of 65,000 among whole numbers: the rest are next to black; one of a half: ones are white; one of
    # 700.75: no whole numbers of sixteen bits, and ones stay
    for top, of_ones in ((65000.0, 0), (0.5, 255), (700.75, 1)):
        found = read_text(_csv(tmp_path, points, top), Take(None, 37))
        np.testing.assert_array_equal(found.points, points)
        assert found.time is not None and found.colours is not None
        np.testing.assert_array_equal(found.time, 0.5 * np.arange(len(points)))
        assert found.colours[[1, 3999]].max() == of_ones


def test_a_remark_of_two_lines_is_no_row_s_end(tmp_path: Path) -> None:
    points = _cloud(400)
    said = ['"seen\ntwice"' if k % 3 == 2 else "" for k in range(len(points))]
    rows = [f"{x!r};{y!r};{z!r};{s}\n" for (x, y, z), s in zip(points.tolist(), said, strict=True)]
    (tmp_path / "cloud.csv").write_text("x;y;z;remark\n" + "".join(rows))
    for some in (1, 3, 10**6):
        np.testing.assert_array_equal(read_text(tmp_path / "cloud.csv", Take(None, some)).points, points)


@pytest.mark.parametrize("some", [1, 7, 10**6])
def test_a_quotation_left_open_is_refused_where_points_would_be_lost(some: int, tmp_path: Path) -> None:
    said = {3: '5 1/2"', 50: '"seen\ntwice"', 200: '"kerb', 300: 'a "gate"', 310: 'end"'}
    rows = [f"{x!r};{y!r};{z!r};{said.get(k, '')}\n" for k, (x, y, z) in enumerate(_cloud(400).tolist())]
    (tmp_path / "cloud.csv").write_text("x;y;z;remark\n" + "".join(rows))
    with pytest.raises(CrestcutError, match="line 203 is not closed"):
        read_text(tmp_path / "cloud.csv", Take(None, some))


def test_blocks_with_nothing_of_the_part_are_not_read_again(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    points = _cloud()
    path = _laz(tmp_path, points[np.argsort(points[:, 0])])  # in stripes, 400 points each 1 m wide
    turned = np.array([[0.6, 0.8, 0.0, 5.0], [-0.8, 0.6, 0.0, -2.0]])  # site x and y of the file's
    seen = read_las(path, Take(1000, 400)).tally
    read = []
    points_of = laspy.LasReader.read_points
    monkeypatch.setattr(laspy.LasReader, "read_points", lambda self, n: read.append(n) or points_of(self, n))
    for corner, angle in (((7.0, -3.0), 0.4), ((13.0, -9.0), -1.1), ((30.0, 30.0), 0.0)):
        part = Cut((Patch(corner, angle, (1.5, 0.8)),), turned, (), (7,))
        whole = read_las(path, Take(None, 400, part))
        of_all = len(read)
        some = read_las(path, Take(None, 400, part, seen))
        assert len(read) - of_all <= 5 and of_all == 13  # 5003 in 400s
        np.testing.assert_array_equal(some.points, whole.points)
        for name in ("colours", "time"):
            np.testing.assert_array_equal(getattr(some, name), getattr(whole, name))
        assert (len(whole.points) > 0) == (corner[0] < 20)
        read.clear()


@pytest.mark.parametrize("write", [_csv, _pcd_text])
def test_a_torn_row_far_down_is_told_as_in_a_short_file(
    write: Callable[[Path, np.ndarray], Path], tmp_path: Path
) -> None:
    path = write(tmp_path, _cloud(300))
    lines = path.read_bytes().split(b"\n")
    path.write_bytes(b"\n".join([*lines[:250], b"1.0 what", *lines[251:]]))
    told = []
    for rows in (20, 10**6):
        with pytest.raises(CrestcutError) as error:
            (read_text if write is _csv else read_pcd)(path, Take(None, rows))
        told.append(str(error.value))
    if write is _csv:
        assert told[0] == told[1] and "line 251 has" in told[0]
    path.write_bytes(b"\n".join([*lines[:200], b"1.0 what"]))
    if write is _pcd_text:  # said before what is wrong in what is there
        for rows in (20, 10**6):
            with pytest.raises(CrestcutError, match="cut short: 300 points expected, 195 found"):
                read_pcd(path, Take(None, rows))
        path.write_bytes(b"\n".join([*lines[:100], *(line + b" 7" for line in lines[100:-1])]))
        for rows in (1, 10**6):  # a row more or many at a time: a column more is seen
            with pytest.raises(CrestcutError, match="cannot be read as PCD"):
                read_pcd(path, Take(None, rows))


@pytest.mark.parametrize("up", ["z", "y"])
def test_of_a_scan_too_large_to_be_held_the_part_needed_is_whole(
    up: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    points = _cloud() + np.array([500.0, 300.0, 0.0])
    path = _laz(tmp_path, points if up == "z" else points[:, [0, 2, 1]] * [1, 1, -1])
    choice = ScanChoice((path,), "m", up, None)
    whole = read_scan(choice)
    patch = Patch((3.0, 1.0), 0.2, (3.0, 2.0))
    inside = patch.holds(*whole.points[:, :2].T)
    for rows in (100, 1717):
        monkeypatch.setattr(load, "HELD", Take(1500, rows))
        part = read_scan(choice, None, lambda _: (patch,))
        np.testing.assert_array_equal(part.points, whole.points[inside])
        assert part.every == 1 and 100 < inside.sum() < 1500
        assert part.time is not None and part.colours is not None and whole.colours is not None
        np.testing.assert_array_equal(part.colours, whole.colours[inside])
        assert part.files[0].points == whole.files[0].points  # those left out are counted all the same
        assert part.files[0].sha256 == whole.files[0].sha256
        assert np.ptp(part.all_over, axis=0)[:2] == pytest.approx((12.0, 5.0), abs=0.3)
        np.testing.assert_array_equal(part.frame.shift, whole.frame.shift)
        assert any("left out by their classes" in n for n in part.notes)
        assert [n for n in part.notes if "left out" in n] == [n for n in whole.notes if "left out" in n]


def test_a_part_of_a_scan_on_control_lies_where_the_whole_does(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = _laz(tmp_path, _cloud())
    seen = np.array([[0.5, 0.5, 0.05], [11.0, 0.5, 1.1], [11.0, 4.5, 1.1], [1.0, 4.0, 0.1]])
    c, s = np.cos(0.4), np.sin(0.4)
    at = seen @ np.array([[c, -s, 0.0], [s, c, 0.0], [0.0, 0.0, 1.0]]).T * 1.001 + [4310.0, 7120.0, 55.0]
    control = tuple(
        Surveyed(str(k), tuple(a), tuple(b))
        for k, (a, b) in enumerate(zip(at.tolist(), seen.tolist(), strict=True))
    )
    choice = ScanChoice((path,), "m", "z", None, control=control, free_scale=True)
    whole = read_scan(choice)
    x, y = np.median(whole.points[:, :2], axis=0)
    patch = Patch((float(x), float(y)), 0.2, (2.0, 2.0))
    monkeypatch.setattr(load, "HELD", Take(1500, 1000))
    part = read_scan(choice, None, lambda _: (patch,))
    inside = patch.holds(*whole.points[:, :2].T)
    assert part.frame.to_own(part.points) == pytest.approx(whole.frame.to_own(whole.points[inside]), abs=1e-7)
    assert part.every == 1 and 100 < inside.sum() < 1500


def test_classes_that_say_nothing_leave_nothing_out_of_a_part_either(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = _laz(tmp_path, _cloud())
    las = laspy.read(path)
    las.classification = (np.arange(COUNT) % 3 == 0).astype(np.uint8)  # never classified, unclassified
    las.write(path)
    choice = ScanChoice((path,), leave_classes=(1,))
    whole, patch = read_scan(choice).points, Patch((3.0, 1.0), 0.2, (3.0, 2.0))
    monkeypatch.setattr(load, "HELD", Take(1500, 1000))
    part = read_scan(choice, None, lambda _: (patch,))
    np.testing.assert_array_equal(part.points, whole[patch.holds(*whole[:, :2].T)])


def test_a_look_at_a_few_points_tells_the_density_of_all(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = _laz(tmp_path, _cloud(240_000))
    monkeypatch.setattr(load, "HELD", Take(30_000, 50_000))
    few, whole = read_scan(path, None, anywhere), read_scan(path)
    assert few.every == 8 and len(few.points) < 30_000
    assert assess(few).density_median == pytest.approx(assess(whole).density_median, rel=0.1)


def test_repeats_that_are_held_in_part_say_so_each(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    paths = []
    for name, count in (("a", 40_000), ("b", 20_000)):
        (tmp_path / name).mkdir()
        paths.append(_laz(tmp_path / name, _cloud(count)).rename(tmp_path / f"{name}.laz"))
    monkeypatch.setattr(load, "HELD", Take(10_000, 5_000))
    scan = read_scan(ScanChoice(tuple(paths)), None, anywhere)
    held = [n for n in scan.notes if "of them held" in n]
    assert held == [
        f"{f.path.name}: {f.points:,} points, one in {e} of them held"
        for f, e in zip(scan.files, (4, 2), strict=True)
    ]
    # told from what is held, never more than there are
    whole = assess(read_scan(ScanChoice(tuple(paths)))).density_median
    assert scan.every == 2 and 0.5 * whole < assess(scan).density_median < 1.05 * whole


def test_memory_follows_what_is_held(tmp_path: Path) -> None:
    path = _laz(tmp_path, _cloud(1_500_000))
    tracemalloc.start()
    try:
        read_las(path, Take(100_000, 100_000))
        few = tracemalloc.get_traced_memory()[1]
    finally:
        tracemalloc.stop()
    assert few < 40e6  # bytes; the points alone are 36 million, all that is read of them 60
