"""What every file says of itself: may it be cut from, of which job, made by which version, of which date."""

from __future__ import annotations

import hashlib
import os
from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING

from crestcut import __version__

if TYPE_CHECKING:  # a vehicle's drawing has no scan, and should not load what reads one
    from crestcut.scan import Scan

NOT_DATED = "not dated"
NOTHING, NO_JOB = "nothing to cut", "none: nothing here to cut from"


@dataclass(frozen=True)
class Identity:
    """Made once for all files of a command.

    job : its title, on one line; for what belongs to no job, what it is about.  release : ``ok``,
    ``provisional``, ``not for cutting``, or ``NOTHING``, ``NO_JOB``.  dated : the job's own date (ISO 8601),
    never the clock's; None where it has none.
    """

    job: str
    release: str = NO_JOB
    dated: str | None = None
    version: str = __version__

    def __post_init__(self) -> None:
        object.__setattr__(self, "job", " ".join(self.job.split()))

    @property
    def date_words(self) -> str:
        """The date, or that there is none."""
        return self.dated or NOT_DATED

    @property
    def tool(self) -> str:
        """Name and version."""
        return f"crestcut {self.version}"

    def record(self) -> dict[str, str | None]:
        """As keys of a JSON object."""
        return {"job": self.job, "release": self.release, "dated": self.dated, "version": self.version}

    def lines(self) -> tuple[str, ...]:
        """As lines of comment."""
        return (
            f"release: {self.release}",
            f"job: {self.job}",
            f"dated: {self.date_words}",
            f"made by: {self.tool}",
        )

    def png(self) -> dict[str, str]:
        """As text of a PNG (PNG 11.3.3), by keyword."""
        return {
            "Title": self.job, "Release": self.release, "Dated": self.date_words, "Software": self.tool
        }  # fmt: skip

    def pdf(self) -> dict[str, str | None]:
        """As a PDF's information (ISO 32000-1, 14.3.3) by key; no date of the clock's."""
        told = f"release: {self.release}; dated: {self.date_words}"
        return {
            "Title": self.job, "Subject": told, "Creator": self.tool, "Producer": None, "CreationDate": None
        }  # fmt: skip

    def words(self) -> str:
        """On one line, the release first."""
        return "; ".join(self.lines())


SOURCES = (".py", ".toml", ".html", ".css", ".js", ".po")  # what answers and sheets are made by


@cache
def code_digest(rooms: tuple[str, ...] = ("",)) -> str:
    """A hash of the code of some rooms, or of the whole package: a version stays while code changes."""
    root, found = Path(__file__).parents[1], hashlib.sha256()
    for path in sorted(p for room in rooms for p in _sources(root / room)):
        found.update(path.relative_to(root).as_posix().encode() + b"\0" + path.read_bytes())
    return found.hexdigest()


def _sources(folder: Path) -> Iterable[Path]:
    for place, folders, names in os.walk(folder):
        folders[:] = [f for f in folders if f != "node_modules"]
        yield from (Path(place, n) for n in names if n.endswith(SOURCES))


def scan_identity(scan: Scan) -> Identity:
    """Of what is made from a scan before there is a job."""
    return Identity(f"scan {', '.join(f.path.name for f in scan.files)}")
