"""A TOML file as plain data, with its hash; faults in one line."""

from __future__ import annotations

import hashlib
import re
import tomllib
from pathlib import Path
from typing import Any

from crestcut.base.errors import CrestcutError
from crestcut.base.plain_files import refuse_irregular


def read_toml(path: Path, what: str) -> tuple[dict[str, Any], str]:
    """(data, sha256) of a file. ``what`` names it ("job file").

    Raises CrestcutError where it is missing, no plain file, not UTF-8 or not TOML.
    """
    mend = "name the .toml file in it" if path.is_dir() else "name a .toml file"
    refuse_irregular(path, f"a {what}", mend, missing=f"no such {what}")
    try:
        raw = path.read_bytes()
    except OSError as error:
        raise CrestcutError(
            f"cannot be read: {(error.strerror or 'unknown').lower()}", str(path), "check its rights"
        ) from None
    try:
        data = tomllib.loads(raw.decode("utf-8-sig"))
    except UnicodeDecodeError:
        raise CrestcutError(
            f"is not text, so not a {what}", str(path), "name a .toml file saved as UTF-8"
        ) from None
    except tomllib.TOMLDecodeError as error:
        raise CrestcutError(
            f"is not TOML: {_plainly(str(error))}", str(path), "mend that line; lengths stand in quotes"
        ) from None
    if not data:
        raise CrestcutError("is empty", str(path), f"start from an example {what}")
    return data, hashlib.sha256(raw).hexdigest()


def _plainly(message: str) -> str:
    return re.sub(r"\(at (line \d+), column (\d+)\)", r"at \1, column \2", message)
