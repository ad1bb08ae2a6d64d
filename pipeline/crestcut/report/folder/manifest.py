"""``manifest.json``: which files of a folder of results this program wrote, for which command, and their
hashes: what it may take away again, and what somebody has changed since.
"""

from __future__ import annotations

import hashlib
import json
import re
from collections.abc import Mapping
from pathlib import Path, PurePosixPath

from crestcut.study import Identity

MANIFEST_NAME = "manifest.json"
SCHEMA = "crestcut.manifest/1"
HASHES = 'sha256 of each file; of a .json file with all that stands under "seconds" left out'
_SECONDS = re.compile(rb'"seconds": \{[^{}]*\}')

Files = dict[str, str]  # name under the folder, with forward slashes -> hash
Sets = dict[str, dict[str, object]]  # command -> ``files`` it wrote last, and what they say of themselves


def digest(path: Path) -> str | None:
    """The hash of a file as the manifest keeps it; None for what is no plain file or cannot be read.

    Seconds differ from run to run and are left out, so that the manifest of the same answer is the same.
    """
    if not path.is_file():
        return None
    try:
        if path.suffix == ".json":
            return hashlib.sha256(_SECONDS.sub(b"", path.read_bytes())).hexdigest()
        with path.open("rb") as file:  # some at a time: a mesh is as large as a lane is long
            return hashlib.file_digest(file, "sha256").hexdigest()
    except OSError:
        return None


def read_sets(folder: Path) -> Sets | None:
    """What each command wrote into ``folder`` last; None where there is no manifest of ours."""
    path = folder / MANIFEST_NAME
    try:
        found = json.loads(path.read_text(encoding="utf-8")) if path.is_file() else None
    except (OSError, ValueError, RecursionError):
        return None
    sets = found.get("sets") if isinstance(found, dict) and found.get("schema") == SCHEMA else None
    if not isinstance(sets, dict):
        return None
    return {str(name): one for name, one in sets.items() if isinstance(one, dict)}


def files_of(one: Mapping[str, object] | None) -> Files:
    """Name and hash of the files of one command's set; names that lead out of the folder are passed over."""
    rows = one.get("files") if one is not None else None
    return {
        row["file"]: row["sha256"]
        for row in (rows if isinstance(rows, list) else [])
        if isinstance(row, dict)
        and isinstance(row.get("file"), str)
        and isinstance(row.get("sha256"), str)
        and is_inside(row["file"])
    }


def is_inside(name: str) -> bool:
    """Does a name stay in the folder it is taken from?"""
    path = PurePosixPath(name)
    return bool(path.parts) and not path.is_absolute() and ".." not in path.parts and "\\" not in name


def set_of(files: Files, about: Identity) -> dict[str, object]:
    """One command's entry."""
    rows = [{"file": name, "sha256": files[name]} for name in sorted(files)]
    return {**about.record(), "files": rows}


def manifest_text(sets: Sets) -> str:
    """The whole file."""
    document = {"schema": SCHEMA, "tool": "crestcut", "hashes": HASHES, "sets": dict(sorted(sets.items()))}
    return json.dumps(document, indent=1, ensure_ascii=False) + "\n"
