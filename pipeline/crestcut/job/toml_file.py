"""A TOML file as plain data, with its hash; faults in one line."""

from __future__ import annotations

import hashlib
import re
import tomllib
from pathlib import Path
from typing import Any

from crestcut.base.errors import CrestcutError
from crestcut.base.plain_files import refuse_irregular

_LARGEST = 4 << 20  # bytes: nobody writes so much by hand, and readings of a whole yard are a tenth of it
# a.a.a...: what parses such a name takes its length squared
_DEEP_NAME = re.compile(rb"""(?<![\w"'-])(?:[\w"'-]++[ \t]*+\.[ \t]*+){30}""")


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
    if len(raw) > _LARGEST or _DEEP_NAME.search(raw):
        why = "a name of it has too many parts" if len(raw) <= _LARGEST else f"{len(raw):,} bytes"
        raise CrestcutError(f"is no {what}: {why}", str(path), f"start from an example {what}")
    try:
        data = tomllib.loads(raw.decode("utf-8-sig"))
    except UnicodeDecodeError:
        raise CrestcutError(
            f"is not text, so not a {what}", str(path), "name a .toml file saved as UTF-8"
        ) from None
    except RecursionError:
        raise CrestcutError(
            "is not TOML that makes sense: lists or tables stand in one another far too deep", str(path),
            f"start from an example {what}",
        ) from None  # fmt: skip
    except ValueError as error:  # TOMLDecodeError; a number of more digits than Python takes
        raise CrestcutError(
            f"is not TOML: {_plainly(str(error))}", str(path), "mend that line; lengths stand in quotes"
        ) from None
    if _too_large(data):
        raise CrestcutError("holds a whole number of over 64 bits", str(path), "write a number that can be")
    if not data:
        raise CrestcutError("is empty", str(path), f"start from an example {what}")
    return data, hashlib.sha256(raw).hexdigest()


def _too_large(data: Any) -> bool:
    """Is there a whole number of more than 64 bits? TOML 1.0 has none, and no float could take it."""
    ahead = [data]
    while ahead:
        one = ahead.pop()
        if isinstance(one, (dict, list)):
            ahead += one.values() if isinstance(one, dict) else one
        elif isinstance(one, int) and not -(1 << 63) <= one < 1 << 63:
            return True
    return False


def _plainly(message: str) -> str:
    message = message.split("; use sys.")[0]  # advice for programmers
    return re.sub(r"\(at (line \d+), column (\d+)\)", r"at \1, column \2", message)
