"""An E57 file with its XML changed and every page's checksum made anew, so that only the change is wrong."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

PAGE, PAYLOAD = 1024, 1020


def _crc32c(data: bytes) -> int:
    """CRC-32C (RFC 3720, B.4), bit by bit."""
    crc = 0xFFFFFFFF
    for byte in data:
        crc ^= byte
        for _ in range(8):
            crc = (crc >> 1) ^ (0x82F63B78 if crc & 1 else 0)
    return crc ^ 0xFFFFFFFF


def edit_xml(path: Path, change: Callable[[str], str]) -> None:
    """Write the file anew with ``change`` of its XML, which stands last in what the tests write."""
    raw = path.read_bytes()
    whole = b"".join(raw[i : i + PAYLOAD] for i in range(0, len(raw), PAGE))
    place, length = (int.from_bytes(whole[i : i + 8], "little") for i in (24, 32))
    start = place - 4 * (place // PAGE)
    text = change(whole[start : start + length].decode()).encode()
    body = bytearray(whole[:start] + text)
    body += bytes(-len(body) % PAYLOAD)
    body[16:24] = (len(body) // PAYLOAD * PAGE).to_bytes(8, "little")
    body[32:40] = len(text).to_bytes(8, "little")
    pages = (bytes(body[i : i + PAYLOAD]) for i in range(0, len(body), PAYLOAD))
    path.write_bytes(b"".join(p + _crc32c(p).to_bytes(4, "big") for p in pages))
