"""Which format a file really is: by its first bytes, whatever its name says."""

from __future__ import annotations

import zipfile
from pathlib import Path

from crestcut.base.errors import CrestcutError
from crestcut.base.plain_files import refuse_irregular

READABLE = "PLY, PCD, XYZ/CSV/TXT/PTS, LAS/LAZ, E57, OBJ, GLB/glTF, STL or USDZ"
_MAGIC = (
    (b"LASF", "las"),
    (b"ASTM-E57", "e57"),
    (b"glTF", "glb"),
    (b"PXR-USDC", "usd"),
    (b"#usda", "usd"),
)
_FOREIGN = (
    (b"%PDF", "a PDF"),
    (b"\x89PNG", "a picture"),
    (b"\xff\xd8\xff", "a picture"),
    (b"GIF8", "a picture"),
    (b"II*\0", "a picture"),
    (b"MM\0*", "a picture"),
    (b"\x1f\x8b", "a gzip archive"),
    (b"7z\xbc\xaf", "an archive"),
    (b"Rar!", "an archive"),
    (b"Kaydara FBX", "an FBX model"),
    (b"<!DOCTYPE", "a web page"),
    (b"<html", "a web page"),
    (b"<?xml", "an XML file"),
)


def sniff(path: Path) -> str:
    """ "ply", "pcd", "las", "e57", "glb", "gltf", "usd", "stl", "obj" or "text".

    Raises CrestcutError for a missing, empty or foreign file.
    """
    head = _head(path)
    for magic, name in _MAGIC:
        if head.startswith(magic):
            return name
    if head[:4].strip().lower() == b"ply":
        return "ply"
    for magic, name in _FOREIGN:
        if head.startswith(magic):
            raise CrestcutError(f"this is {name}, not a scan", str(path), f"give {READABLE}")
    if head.startswith(b"PK\x03\x04"):
        return _zip_kind(path)
    if b".PCD v" in head[:200] or (
        head.startswith((b"VERSION", b"# ")) and b"\nFIELDS" in head and b"\nDATA" in head
    ):
        return "pcd"
    if _is_binary_stl(path, head):
        return "stl"
    return _text_kind(path, head)


def _head(path: Path, size: int = 4096) -> bytes:
    refuse_irregular(path, "a scan file", f"give {READABLE}")
    try:
        with path.open("rb") as file:
            head = file.read(size)
    except OSError as error:
        raise CrestcutError(
            f"cannot be opened: {(error.strerror or '').lower()}", str(path), "check its rights"
        ) from None
    if not head:
        raise CrestcutError("the file is empty", str(path), "copy or export it again")
    return head


def _zip_kind(path: Path) -> str:
    try:
        with zipfile.ZipFile(path) as archive:
            names = archive.namelist()
    except zipfile.BadZipFile:
        raise CrestcutError(
            "the archive is damaged or cut short", str(path), "copy or export it again"
        ) from None
    if any(name.lower().endswith((".usdc", ".usda", ".usd")) for name in names):
        return "usd"
    raise CrestcutError("this is a zip archive, not a scan", str(path), "unpack it and give the scan inside")


def _is_binary_stl(path: Path, head: bytes) -> bool:
    # 80 bytes of anything, the count, then 50 bytes a triangle: nothing else has exactly that length.
    if len(head) < 84:
        return False
    return path.stat().st_size == 84 + 50 * int.from_bytes(head[80:84], "little")


def _text_kind(path: Path, head: bytes) -> str:
    suffix = path.suffix.lower()
    if b"\0" in head:
        if suffix == ".stl":
            return "stl"  # the reader says how much of it is missing
        raise CrestcutError("not a scan format that is known here", str(path), f"give {READABLE}")
    text = head.decode("latin-1").lstrip("\ufeffï»¿ \t\r\n")
    if text.startswith("{"):
        if '"asset"' in text or suffix == ".gltf":
            return "gltf"
        raise CrestcutError("this is a JSON file, not a scan", str(path), f"give {READABLE}")
    if text.startswith("solid") and ("facet" in text or suffix == ".stl"):
        return "stl"
    lines = [line.split() for line in text.splitlines()]
    if suffix == ".obj" or any(len(w) >= 4 and w[0] == "v" for w in lines):
        return "obj"
    return "text"
