"""The record of a job written beside its results, and read back.

One zip that ``numpy.load`` opens: every array under its number, and ``record`` (JSON, UTF-8) that says where
each belongs. Values are named by the record or choice of this package that they are; a file can make nothing
else. What follows from the rest is not kept but made again by the same functions: the scan (read again
from its files, which must be the same, and by a later run of the job only where more is asked of its points
than is remembered), how the vehicle stood, and what it cleared.
"""

from __future__ import annotations

import hashlib
import io
import json
import platform
import zipfile
import zlib
from collections.abc import Callable, Mapping, Sequence
from dataclasses import fields, is_dataclass, replace
from enum import Enum
from importlib import import_module, metadata
from pathlib import Path
from typing import Any, TypeVar

import numpy as np

from crestcut import __version__
from crestcut.base.errors import CrestcutError, Say
from crestcut.base.grid import GridFrame
from crestcut.contact import Clearance, DrawnLine
from crestcut.job import Job, ScanChoice
from crestcut.scan import Remembered, Scan, mark_place, read_scan, remember, remembered_of, scan_digest, sniff
from crestcut.standing import LoadedVehicle, line_drawn, lines_of, points_needed, rides_of, swept_of
from crestcut.study.identity import code_digest
from crestcut.study.record import Laid, Study, shown_part
from crestcut.study.report import Report
from crestcut.terrain import Drive, Surface
from crestcut.work import AT_MARK

T = TypeVar("T")
STUDY_NAME = "study.npz"
SCHEMA = "crestcut.study/3"
LEVEL = 1  # of compression: more makes nothing much smaller, and takes six times as long
PART, SMALLER = 1 << 16, 0.8  # bytes that tell whether packing makes an array smaller: of heights hardly
# rooms whose code, and libraries whose version, heights and split depend on
ROOMS, LIBRARIES = ("base", "scan", "terrain"), ("numpy", "scipy", "numba")
# what scans are read with, and formats whose files hold all that is read of them
READERS = ("laspy", "lazrs", "pye57", "pyproj", "trimesh", "DracoPy")
WHOLE = frozenset({"las", "ply", "pcd", "text", "e57", "stl", "glb", "gltf"})
# made again when read: (class, field)
MADE_AGAIN = frozenset({(Report, "scan"), (Report, "ride"), (Report, "before")})
NOT_KEPT = frozenset({(Clearance, "lowest")})  # of the plan's certificate: empty when read


def write_study(study: Study, path: Path) -> None:
    """The record of a job as ``path``, without what is made again when it is read."""
    arrays: list[np.ndarray[Any, Any]] = []
    told = {
        "schema": SCHEMA,
        "version": __version__,
        "scans": [f.sha256 for f in study.report.scan.files],
        "study": _plain(replace(study, report=replace(study.report, seconds={})), arrays, {}),
    }
    with zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED, compresslevel=LEVEL) as archive:
        _put(archive, "record", np.frombuffer(json.dumps(told).encode(), np.uint8))
        for number, array in enumerate(arrays):
            _put(archive, str(number), array)


def read_study(
    path: Path | str, say: Say = lambda _: None, held: tuple[ScanChoice, Scan] | None = None
) -> Study | None:
    """The record back, its scan read again from its files; None where another version wrote it.

    held : as of ``run_job``.

    Raises CrestcutError for a file that is no such record, for scans that are not those it was made from, and
    whatever ``read_scan`` raises.
    """
    path = Path(path)
    try:
        with path.open("rb") as file, np.load(file, allow_pickle=False) as archive:
            told = json.loads(archive["record"].tobytes())
            arrays = {name: archive[name] for name in archive.files if name != "record"}
        if told["schema"] != SCHEMA or told["version"] != __version__:
            return None
        raw = _made(told["study"], arrays)
    except (
        OSError,
        ValueError,
        KeyError,
        TypeError,
        AttributeError,
        ImportError,
        zipfile.BadZipFile,
    ) as error:
        raise CrestcutError(
            f"is no record of a job ({type(error).__name__})", str(path), "run the job again into that folder"
        ) from None
    return _completed(raw, tuple(told["scans"]), path, say, held)


def surface_key(scan: Scan, frame: GridFrame, drives: Sequence[Drive], job: Job) -> str:
    """A hash of all that the slab judged apart from the scan is made from: the scan as it was read, the
    window, who drives there, scanner, flatness and settings, this program and its libraries.

    The scan by content: a file may name others beside it, and how files are read hangs on their readers'
    versions. Files by name too, since words on a scan name them. Code by content: a version stays while code
    changes.
    """
    parts = (frame, tuple(drives), job.scan.scanner, job.slab.flatness, job.settings)
    return _hash([*_made_by(LIBRARIES), content_of(scan), *(_plain(part, [], {}) for part in parts)])


def content_of(scan: Scan) -> str:
    """A hash of a scan as it was read."""
    if (told := remembered_of(scan)) is not None:
        return told.content
    arrays: list[np.ndarray[Any, Any]] = []
    return _hash(_names(_plain(scan, arrays, {})), arrays)


def files_key(choice: ScanChoice, scan: Scan | None = None) -> str:
    """A hash of all that reading a scan depends on: its files, how they are to be read, this program and the
    readers' libraries; "" where a file may name others, or a part alone is held, which hangs on the line.

    scan : as it was read; None: its files are hashed. Files by their whole paths: words on a scan name them.
    """
    if any(sniff(path) not in WHOLE for path in choice.files) or (
        scan is not None and scan.whole is not None
    ):
        return ""
    digests = [scan_digest(p) for p in choice.files] if scan is None else [f.sha256 for f in scan.files]
    return _hash([*_made_by((*LIBRARIES, *READERS)), *digests, _plain(choice, [], {})])


def _made_by(libraries: Sequence[str]) -> list[str]:
    """This program and those libraries, as far as heights and split depend on them."""
    return [__version__, code_digest(ROOMS), platform.machine(), *map(_version, libraries)]


def _version(library: str) -> str:
    try:
        return metadata.version(library)
    except metadata.PackageNotFoundError:
        return ""


def _hash(told: Any, arrays: Sequence[np.ndarray[Any, Any]] = ()) -> str:
    found = hashlib.sha256(json.dumps(told).encode())
    for array in arrays:
        found.update(f"{array.dtype.str} {array.shape}".encode())
        found.update(np.ascontiguousarray(array).data)
    return found.hexdigest()


def remembered(job: Job, scan: Scan, surface: Surface) -> Remembered:
    """What is asked of the scan's points once ``surface`` is made: heights at the marks, a page's colours."""
    told = remembered_of(scan)
    made_from = files_key(job.scan, scan) if told is None else told.made_from
    places = np.array([mark_place(m.name, job.marks, scan.frame) for m in job.marks]).reshape(-1, 2)
    return remember(scan, made_from, content_of(scan), places, AT_MARK, shown_part(surface.height)[0])


def kept_slab(path: Path | None, made_from: str) -> Laid | None:
    """The slab that the record ``path`` keeps, to the last bit as it was made; None where there is no such
    record, it is damaged, or its slab was made from anything else than ``made_from`` says."""
    return _kept(path, made_from, Laid, lambda laid: laid)


def kept_scan(path: Path | None, made_from: str) -> Remembered | None:
    """What the record ``path`` keeps of a scan, as ``kept_slab``; made_from : its ``files_key``."""
    return _kept(path, made_from, Remembered, lambda laid: laid["with"]["scan"]) if made_from else None


def _kept(path: Path | None, made_from: str, kind: type[T], where: Callable[[Any], Any]) -> T | None:
    """where : in the document of what the record keeps for later runs, which says what it was made from."""
    if path is None or not path.is_file():
        return None
    try:
        with path.open("rb") as held, np.load(held, allow_pickle=False) as archive:
            told = where(json.loads(archive["record"].tobytes())["study"]["with"]["laid"])
            if told["with"]["made_from"] != made_from:
                return None
            found = _made(told, _Shared(archive))
    except (
        OSError, EOFError, ValueError, LookupError, TypeError, AttributeError, ImportError,
        zipfile.BadZipFile, zlib.error,
    ):  # fmt: skip
        return None  # worked out anew: nothing is lost but time
    return found if isinstance(found, kind) else None


class _Shared(dict[str, np.ndarray[Any, Any]]):
    """Arrays of an archive, read when first asked for, each once and not to be written on: records that held
    one array between them hold one again, and are written as one."""

    def __init__(self, archive: Any) -> None:
        super().__init__()
        self._archive = archive

    def __missing__(self, name: str) -> np.ndarray[Any, Any]:
        array: np.ndarray[Any, Any] = self._archive[name]
        array.flags.writeable = False
        self[name] = array
        return array


def differing(before: Job, now: Job) -> tuple[str, ...]:
    """Tables of a job file that say something else than when it was planned; what was measured or scanned
    after the work left out, and folders: a job may move; settings, which no file says; prices, drawings."""
    changed = []
    for field in fields(Job):
        if field.name in ("after", "path", "sha256", "settings", "plot", "prices"):
            continue
        one, other = (_names(_plain(getattr(job, field.name), [], {})) for job in (before, now))
        if one != other:
            changed.append(field.name)
    return tuple(changed)


def _completed(
    raw: dict[str, Any], scans: tuple[str, ...], path: Path, say: Say, held: tuple[ScanChoice, Scan] | None
) -> Study:
    """The record with its scan read, the vehicle that speaks stood up and swept again."""
    kept = raw["report"]
    job: Job = kept["job"]
    drawn = line_drawn(job)
    scan = scan_read(job, raw["drivers"], drawn, say, held)
    if tuple(f.sha256 for f in scan.files) != scans:
        raise CrestcutError(
            "the scan of the job is not the one that this plan was made from", str(path),
            "put the old file back, or run the job again",
        )  # fmt: skip
    drivers = raw["drivers"]
    speaks = next(d for d in drivers if d.vehicle.path == kept["vehicle"].path)
    (line,) = lines_of((speaks,), job, scan.frame, drawn)
    (rode,) = rides_of((speaks,), (line,), kept["surface"], job)
    (swept,) = swept_of((speaks,), (rode,), kept["surface"], job)
    return Study(Report(**kept, scan=scan, ride=rode, before=swept), raw["release"], drivers)


def scan_read(
    job: Job, drivers: Sequence[LoadedVehicle], drawn: DrawnLine | None, say: Say,
    held: tuple[ScanChoice, Scan] | None = None, before: Path | None = None,
) -> Scan:  # fmt: skip
    """The job's scan, or of one too large to be held what its line needs.

    drawn : as of ``line_drawn``.  held : one that was read just now, taken where it is the job's and not what
    another line alone needed.  before : a record that may remember it.
    """
    if held is not None and held[0] == job.scan and held[1].whole is None:
        return held[1]

    def read() -> Scan:
        return read_scan(job.scan, say, points_needed(drivers, job, drawn))

    if (
        before is not None
        and before.is_file()
        and (told := kept_scan(before, files_key(job.scan))) is not None
    ):
        say(f"taking up the scan from {STUDY_NAME}: same files")
        return told.scan(read)
    return read()


def _plain(value: object, arrays: list[np.ndarray[Any, Any]], at: dict[int, int]) -> Any:
    """``value`` as JSON; arrays go to ``arrays``, each once (``at``: identity to number)."""
    if value is None or (isinstance(value, (bool, str)) and not isinstance(value, Enum)):
        return value
    if isinstance(value, Enum):
        return {"choice": _name_of(type(value)), "is": value.value}
    if isinstance(value, np.ndarray):
        if id(value) not in at:
            at[id(value)] = len(arrays)
            arrays.append(value)
        return {"array": at[id(value)]}
    if isinstance(value, np.generic):
        return value.item()
    if isinstance(value, (int, float)):
        return value
    if isinstance(value, Path):
        return {"path": str(value)}
    if isinstance(value, tuple):
        return {"tuple": [_plain(v, arrays, at) for v in value]}
    if isinstance(value, list):
        return [_plain(v, arrays, at) for v in value]
    if isinstance(value, Mapping):
        return {"mapping": {str(k): _plain(v, arrays, at) for k, v in value.items()}}
    if is_dataclass(value):
        kind = type(value)
        told = {
            f.name: {"mapping": {}}
            if (kind, f.name) in NOT_KEPT
            else _plain(getattr(value, f.name), arrays, at)
            for f in fields(value)
            if f.init and (kind, f.name) not in MADE_AGAIN
        }
        return {"record": _name_of(kind), "with": told}
    raise TypeError(f"{type(value).__name__} is no part of a record")


def _made(plain: Any, arrays: Mapping[str, np.ndarray[Any, Any]]) -> Any:
    """The value again; of Report and Study, which lack what is made again, a mapping of their fields."""
    if isinstance(plain, list):
        return [_made(v, arrays) for v in plain]
    if not isinstance(plain, dict):
        return plain
    if "choice" in plain:
        return _kind(plain["choice"], Enum)(plain["is"])
    if "array" in plain:
        return arrays[str(plain["array"])]
    if "path" in plain:
        return Path(plain["path"])
    if "tuple" in plain:
        return tuple(_made(v, arrays) for v in plain["tuple"])
    if "mapping" in plain:
        return {k: _made(v, arrays) for k, v in plain["mapping"].items()}
    kind = _kind(plain["record"], None)
    told = {k: _made(v, arrays) for k, v in plain["with"].items()}
    return told if kind in (Study, Report) else kind(**told)


def _name_of(kind: type) -> str:
    return f"{kind.__module__}:{kind.__qualname__}"


def _kind(name: str, base: type | None) -> Any:
    """The record or choice of this package that ``name`` says; ValueError for anything else."""
    module, _, within = name.partition(":")
    if not module.startswith("crestcut."):
        raise ValueError(f"{name} is none of this package")
    found = getattr(import_module(module), within)
    if not isinstance(found, type) or not (issubclass(found, base) if base else is_dataclass(found)):
        raise ValueError(f"{name} is no record")
    return found


def _names(plain: Any) -> Any:
    """With the last name of every path alone."""
    if isinstance(plain, dict):
        return {
            k: Path(v).name if k == "path" and isinstance(v, str) else _names(v) for k, v in plain.items()
        }
    return [_names(v) for v in plain] if isinstance(plain, list) else plain


def _put(archive: zipfile.ZipFile, name: str, array: np.ndarray[Any, Any]) -> None:
    held = io.BytesIO()
    np.lib.format.write_array(held, np.ascontiguousarray(array), allow_pickle=False)
    middle = held.getbuffer()[held.tell() // 2 :][:PART]
    packed = len(zlib.compress(middle, LEVEL)) < SMALLER * len(middle)
    # no date of the clock's: same job, same bytes
    archive.writestr(zipfile.ZipInfo(f"{name}.npy", (1980, 1, 1, 0, 0, 0)), held.getvalue(),
                     zipfile.ZIP_DEFLATED if packed else zipfile.ZIP_STORED, LEVEL)  # fmt: skip
