"""``record.json``: all that an answer came from, so that anyone can find it again: every input with its hash,
where the scan lies, what was said and read by hand, settings, versions. ``crestcut run record.json`` does."""

from __future__ import annotations

import hashlib
import platform
from dataclasses import asdict
from functools import cache
from importlib.metadata import PackageNotFoundError, version
from pathlib import Path

from crestcut.job import resolved
from crestcut.report.view.reference import reference_document
from crestcut.report.view.result import inputs_of, plain_document, surface_document, write_json
from crestcut.study import Report, code_digest
from crestcut.work import tool_files

RECORD_NAME = "record.json"
RECORD_SCHEMA = "crestcut.record/1"
# what digits may hang on
LIBRARIES = (
    "numpy", "scipy", "numba", "llvmlite", "laspy", "lazrs", "pye57", "pyproj", "trimesh", "open3d",
    "open3d-cpu", "matplotlib", "contourpy", "pillow", "ezdxf", "jinja2", "pydantic", "rasterio",
)  # fmt: skip


def record_document(report: Report) -> dict[str, object]:
    """The whole record. It holds no time of the clock and no folder but that of the job as it was named."""
    job = report.job
    written = resolved(job)
    document = {
        "schema": RECORD_SCHEMA,
        **report.identity.record(),
        "again": "crestcut run record.json, with every input where the job names it or beside this file",
        "operator": job.scan.operator,
        "inputs": inputs_with_origin(report),
        "seed": report.seed,
        "settings": asdict(job.settings),
        "versions": versions(),
        "reference": reference_document(report),
        "scan": {
            "unit": report.scan.frame.unit, "up": report.scan.frame.up, "scanner": job.scan.scanner,
            "sensor": job.scan.sensor,
            "read": [{"file": f.path.name, "format": f.format, "points": f.points, "unit": f.unit_reason,
                      "up": f.up_reason, "registered": f.fit_error} for f in report.scan.files],
        },
        "error_model": surface_document(report),
        "by_hand": {kind: written.pop(kind) for kind in job.readings},
        "job_resolved": written,
        "notes": list(dict.fromkeys((*report.scan.notes, *report.notes))),
    }  # fmt: skip
    return plain_document(document)


def write_record(report: Report, path: Path) -> None:
    """Write ``record.json``."""
    write_json(record_document(report), path, indent=1)


def inputs_with_origin(report: Report) -> list[dict[str, object]]:
    """Every file, with its size, and what it says of its making; the job's with where it lay as it was named.

    Tools are read after the answer: their hashes are of the files as they are now.
    """
    job = report.job
    places = [job.path, *job.scan.files, job.vehicle.file, *(v.file for v in job.other_vehicles)]
    places += [job.travel.line_file] if job.travel.line_file else []
    sizes = {p.name: p.stat().st_size for p in places if p.is_file()}
    said = {f.path.name: f for f in report.scan.files}
    rows = []
    for row in inputs_of(report):
        name = str(row["file"])
        found: dict[str, object] = {**row, "bytes": sizes.get(name)}
        if row["role"] == "job":
            found["path"] = job.path.as_posix()
            if job.travel.name:
                found["line"] = job.travel.name
        if row["role"] == "scan":
            origin = said[name].origin
            found["bytes"] = said[name].size
            found |= {key: getattr(origin, key) or None for key in ("sensor", "software", "made")}
        rows.append(found)
    for path in tool_files(job.path, job.work.tools):
        data = path.read_bytes()
        digest = hashlib.sha256(data).hexdigest()
        rows.append({"role": "tool", "file": path.name, "sha256": digest, "bytes": len(data)})
    return rows


def versions() -> dict[str, str]:
    """Of Python, of this program's own code (a hash: its version stays while code changes), and of each
    library that digits may hang on, by name; those that are not there left out."""
    found = {
        "python": platform.python_version(),
        "machine": f"{platform.system()} {platform.machine()}",
        "code": code_digest()[:16],
    }
    return found | dict(_libraries())


@cache
def _libraries() -> tuple[tuple[str, str], ...]:
    """Name and version of those that are there."""
    found = []
    for name in LIBRARIES:
        try:
            found.append((name, version(name)))
        except PackageNotFoundError:
            continue
    return tuple(found)
