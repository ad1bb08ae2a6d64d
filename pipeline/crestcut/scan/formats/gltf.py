"""GLB and glTF: node transforms applied, compressed geometry decoded or refused, never guessed."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

from crestcut.base.errors import CrestcutError
from crestcut.base.plain_files import named_beside
from crestcut.scan.formats.mesh import gather
from crestcut.scan.formats.raw import RawScan, UnitFound, UpFound, truncated, unreadable

_DRACO = "KHR_draco_mesh_compression"
# Extensions that change only how a surface looks: its geometry is right without them.
_LOOKS_ONLY = ("KHR_materials_", "KHR_texture_", "KHR_lights_", "EXT_texture_", "KHR_xmp")


def read_gltf(path: Path) -> RawScan:
    """Points or faces of a GLB or glTF in its scene, y up and metres as glTF 2.0 section 3.4 has it."""
    document = _document(path)
    _buffers(document, path)
    _check_extensions(document, path)
    with path.open("rb") as file:
        binary = file.read(4) == b"glTF"
    raw = gather(
        path, "GLB" if binary else "glTF", {"file_type": "glb" if binary else "gltf", "skip_materials": True}
    )
    return RawScan(
        raw.format, raw.points, raw.faces, raw.colours,
        unit=UnitFound("m", (1.0, 1.0, 1.0), "metres, as the glTF standard has it"),
        up=UpFound("y", "y, as the glTF standard has it"),
        notes=raw.notes, quantum=raw.quantum,
    )  # fmt: skip


def _document(path: Path) -> dict[str, Any]:
    """The JSON part of the file, with the length of the whole checked."""
    data = path.read_bytes()
    if data[:4] == b"glTF":
        # glTF 2.0, section 4.4: magic, version, length; then chunks of length, type, data.
        if len(data) < 20:
            raise truncated(path, "20 bytes or more", f"{len(data)}")
        version, length = (int.from_bytes(data[i : i + 4], "little") for i in (4, 8))
        if version != 2:
            raise CrestcutError(
                f"glTF version {version}, version 2 is needed", str(path), "export it again as glTF 2"
            )
        if len(data) < length:
            raise truncated(path, f"{length:,} bytes", f"{len(data):,}")
        data = data[20 : 20 + int.from_bytes(data[12:16], "little")]
    try:
        document = json.loads(data.decode("utf-8-sig"))
    except (ValueError, RecursionError) as error:
        raise unreadable(path, "glTF", error) from None
    if not isinstance(document, dict) or "asset" not in document:
        raise CrestcutError("a JSON file without a glTF asset", str(path), "give the scan itself")
    return document


def _listed(document: dict[str, Any], key: str, kind: type, path: Path) -> list[Any]:
    """What stands under a key that is a list of one kind, empty where it is absent."""
    found = document.get(key, [])
    if not isinstance(found, list) or not all(isinstance(one, kind) for one in found):
        raise unreadable(path, "glTF", f'"{key}" is not the list it has to be')
    return found


def buffers_beside(path: Path) -> list[Path]:
    """The files that hold its numbers, in the order in which it names them; none where they stand in it."""
    return _buffers(_document(path), path)


def _buffers(document: dict[str, Any], path: Path) -> list[Path]:
    found = []
    for buffer in _listed(document, "buffers", dict, path):
        uri, length = buffer.get("uri", ""), buffer.get("byteLength", 0)
        if not isinstance(uri, str) or not isinstance(length, int):
            raise unreadable(path, "glTF", "a buffer has no name or length that could be one")
        if uri and not uri.startswith("data:"):
            found.append(_beside(path, uri, length))
    return found


def _beside(path: Path, uri: str, length: int) -> Path:
    from urllib.parse import unquote

    beside = named_beside(path, unquote(uri), "put it beside the glTF, or export one GLB file")
    if beside.stat().st_size < length:
        raise truncated(beside, f"{length:,} bytes", f"{beside.stat().st_size:,}")
    return beside


def _check_extensions(document: dict[str, Any], path: Path) -> None:
    required = list(_listed(document, "extensionsRequired", str, path))
    if "KHR_mesh_quantization" in [*required, *_listed(document, "extensionsUsed", str, path)]:
        # Some readers ignore the scale of quantised positions and return a shape of the wrong size.
        raise CrestcutError(
            "its coordinates are quantised", str(path), "export it again without mesh quantisation"
        )
    if _DRACO in required:
        try:
            import DracoPy  # noqa: F401
        except ImportError:
            raise CrestcutError(
                "its geometry is Draco-compressed",
                str(path),
                "export it uncompressed, or install DracoPy (pip install DracoPy)",
            ) from None
        required.remove(_DRACO)
    unknown = [name for name in required if not name.startswith(_LOOKS_ONLY)]
    if unknown:
        raise CrestcutError(
            f"it needs the extension {unknown[0]}", str(path), "export it again without extensions"
        )
