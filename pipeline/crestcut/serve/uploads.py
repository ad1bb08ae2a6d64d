"""A file from the browser, in pieces: each is written to disk as it comes, and a cut connection goes on where
it was. What the browser calls the file is kept as words and is never a path.
"""

from __future__ import annotations

import contextlib
import hashlib
import os
import re
import shutil
import time
from collections.abc import AsyncIterator
from pathlib import Path

from crestcut.base.errors import CrestcutError
from crestcut.scan import sniff
from crestcut.serve.folder import JobFolder

LARGEST = 4 * 1024**3  # bytes
SPARE = 200 * 1024**2  # bytes that stay free on the disk
FORGOTTEN = 3 * 86_400.0  # s after which a piece that nobody came back for goes
KINDS = ("las", "laz", "ply", "pcd", "e57", "obj", "stl", "glb", "usdz", "xyz", "csv", "txt", "pts")
_ENDINGS = re.compile(r"\.([a-z0-9]{2,4})$")


class Uploads:
    """The uploads of one job."""

    def __init__(self, folder: JobFolder) -> None:
        self.folder = folder
        self.under_way: dict[str, tuple[str, int]] = {}  # key -> kind, bytes that were announced

    def begin(self, name: str, size: int, modified: int) -> tuple[str, int]:
        """The key of an upload and how many bytes of it are here already.

        name, size, modified : as the browser tells of the file: the same again goes on where it was.
        """
        found = _ENDINGS.search(name.lower())
        if found is None or found[1] not in KINDS:
            raise CrestcutError(
                "that is no scan", name[:80], f"bring a file that ends in one of {', '.join(KINDS)}"
            )
        if not 0 < size <= LARGEST:
            what = "the file is empty" if size <= 0 else f"the file is larger than {LARGEST >> 30} GB"
            raise CrestcutError(what, name[:80], "export it again, the slab alone, with fewer points")
        key = hashlib.sha256(f"{name}\0{size}\0{modified}".encode("utf-8", "replace")).hexdigest()[:16]
        self.folder.hidden.mkdir(parents=True, exist_ok=True)
        here = self._size(key)
        if shutil.disk_usage(self.folder.hidden).free < size - here + SPARE:
            raise CrestcutError(
                "the disk is too full for it", name[:80], "free some space and bring it again"
            )
        self.under_way[key] = (found[1], size)
        return key, here

    async def take(self, key: str, offset: int, pieces: AsyncIterator[bytes]) -> int:
        """Write a piece at ``offset``; how many bytes are here then. One that does not join on is left."""
        kind, size = self._known(key)
        here = self._size(key)
        if offset != here:
            return here
        with self._part(key).open("ab") as file:
            async for piece in pieces:
                if here + len(piece) > size:
                    raise CrestcutError("more came than the file holds", "", "bring the file again")
                file.write(piece)
                here += len(piece)
        if offset == 0 and here:
            self._refuse_foreign(key, kind)
        return here

    def end(self, key: str) -> Path:
        """The whole file, in the job's folder under a name of ours."""
        kind, size = self._known(key)
        here = self._size(key)
        if here != size:
            raise CrestcutError(
                f"only {here:,} of {size:,} bytes came", "", "bring the file again: it goes on"
            )
        self.folder.scans.mkdir(parents=True, exist_ok=True)
        taken = [p.stem for p in self.folder.scans.iterdir()]
        number = next(n for n in range(1, 10_000) if f"scan_{n}" not in taken)
        place = self.folder.scans / f"scan_{number}.{kind}"
        os.replace(self._part(key), place)
        del self.under_way[key]
        return place

    def sweep(self) -> None:
        """Away with pieces that nobody came back for."""
        for part in self.folder.hidden.glob("upload_*.part"):
            with contextlib.suppress(OSError):
                if time.time() - part.stat().st_mtime > FORGOTTEN:
                    part.unlink()

    def _refuse_foreign(self, key: str, kind: str) -> None:
        """Say at its first piece that a file is no scan, not after half an hour."""
        part = self._part(key)
        try:
            if kind not in ("usdz", "obj", "stl"):  # told by their end or length, or only by many lines
                sniff(part)
        except CrestcutError as error:
            part.unlink()
            self.under_way.pop(key)
            raise CrestcutError(error.what, "", error.mend) from None

    def _known(self, key: str) -> tuple[str, int]:
        if key not in self.under_way:
            raise CrestcutError("this upload is not known any more", "", "bring the file again: it goes on")
        return self.under_way[key]

    def _part(self, key: str) -> Path:
        return self.folder.hidden / f"upload_{key}.part"

    def _size(self, key: str) -> int:
        with contextlib.suppress(OSError):
            return self._part(key).stat().st_size
        return 0
