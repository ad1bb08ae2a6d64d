"""Changes to files that know what they change: words of a text, keys of a tree, fields of a header, pages of
an E57. Each takes the bytes of a sound file and a source of chance and gives bytes; none tries to be fair.
"""

from __future__ import annotations

import io
import json
import re
import struct
import zipfile
from collections.abc import Callable
from random import Random
from typing import Any

from fuzz.words import DOUBLES, SIZES, as_json, nest, value, word

Mutate = Callable[[bytes, Random], bytes]


# --- bytes ----------------------------------------------------------------------------------------


def some_bytes(data: bytes, rng: Random) -> bytes:
    """Flip, set, cut out, double, cut short or lengthen."""
    out, n = bytearray(data), max(len(data), 1)
    at = min(int(n * rng.random() ** rng.choice([1, 3])), n - 1)  # headers stand first
    kind = rng.randrange(8)
    if kind == 0 and out:
        for _ in range(rng.choice([1, 1, 4, 30])):
            out[rng.randrange(len(out))] ^= 1 << rng.randrange(8)
    elif kind == 1:
        size = rng.choice([1, 2, 4, 8])
        out[at : at + size] = rng.choice([0, 1, -1, 2 ** (8 * size - 1), *SIZES]).to_bytes(
            16, rng.choice(["little", "big"]), signed=True
        )[:size]
    elif kind == 2:
        out[at : at + 8] = struct.pack(rng.choice("<>") + "d", rng.choice(DOUBLES))
    elif kind == 3:
        del out[at : at + rng.choice([1, 4, 50, 2000])]
    elif kind == 4:
        out[at:at] = out[at : at + rng.choice([1, 4, 50, 2000])] * rng.choice([1, 2, 200])
    elif kind == 5:
        del out[at:]
    elif kind == 6:
        out += bytes(rng.choice([1, 100, 70_000]))
    else:
        out[at:at] = rng.randbytes(rng.choice([1, 8, 300]))
    return bytes(out)


def fields_at(*places: tuple[int, str]) -> Mutate:
    """Set one of the binary fields at known places: (offset, struct code with its byte order)."""

    def change(data: bytes, rng: Random) -> bytes:
        at, code = rng.choice(places)
        out = bytearray(data)
        size = struct.calcsize(code)
        if code[-1] in "df":
            new = struct.pack(
                code, rng.choice([d for d in DOUBLES if code[-1] == "d" or not 1e38 < d < 1e400])
            )
        else:
            old = int.from_bytes(out[at : at + size], "little" if code[0] == "<" else "big")
            near = [old + 1, old - 1, old * 2, old // 2, old + 256]
            chosen = rng.choice([*SIZES, *near, rng.randrange(2**63)]) % (1 << 8 * size)
            new = chosen.to_bytes(size, "little" if code[0] == "<" else "big")
        out[at : at + size] = new
        return bytes(out)

    return change


# --- texts ----------------------------------------------------------------------------------------

_WORD = re.compile(r"[^\s,;=\[\]{}()<>]+")


def some_words(data: bytes, rng: Random, head: int | None = None) -> bytes:
    """Change words or lines of a text; ``head``: of its first bytes alone, whatever follows."""
    front, rest = (data, b"") if head is None else (data[:head], data[head:])
    text = front.decode("utf-8", "surrogateescape")
    kind = rng.randrange(12)
    if kind < 6:
        found = list(_WORD.finditer(text))
        if found:
            early = found[: max(1, len(found) // rng.choice([1, 1, 20, 100]))]
            for m in sorted(
                rng.sample(early, min(len(early), rng.choice([1, 1, 1, 3]))), key=lambda m: -m.start()
            ):
                new = word(rng) if rng.random() < 0.8 else m[0] + word(rng)
                text = text[: m.start()] + new + text[m.end() :]
    else:
        lines = text.split("\n")
        at = int(len(lines) * rng.random() ** rng.choice([1, 4]))
        at = min(at, len(lines) - 1)
        if kind == 6:
            del lines[at]
        elif kind == 7:
            lines[at:at] = [lines[at]] * rng.choice([1, 2, 3000])
        elif kind == 8:
            lines[at:at] = [" ".join(word(rng) for _ in range(rng.choice([1, 3, 4])))]
        elif kind == 9:
            other = rng.randrange(len(lines))
            lines[at], lines[other] = lines[other], lines[at]
        elif kind == 10:
            lines[at] = lines[at][: rng.randrange(len(lines[at]) + 1)]
        else:
            old, new = rng.choice(
                [("\n", "\r\n"), (" ", ","), (".", ","), (" ", "  \t"), ("\n", "\r"), (" ", ";")]
            )
            lines = "\n".join(lines).replace(old, new).split("\n")
        text = "\n".join(lines)
    return text.encode("utf-8", "surrogateescape") + rest


def words_before(mark: bytes) -> Mutate:
    """``some_words`` of the header alone, which ends with ``mark``."""

    def change(data: bytes, rng: Random) -> bytes:
        end = data.find(mark)
        return some_words(data, rng, head=end + len(mark) if end >= 0 else 400)

    return change


def instead_of(*swaps: tuple[bytes, list[bytes]]) -> Mutate:
    """Put one of some known bad spellings in the place of a pattern."""

    def change(data: bytes, rng: Random) -> bytes:
        pattern, new = rng.choice(swaps)
        return re.sub(pattern, lambda m: m.expand(rng.choice(new)), data, count=rng.choice([1, 1, 0]))

    return change


# --- trees ----------------------------------------------------------------------------------------


def places(tree: Any, at: tuple[Any, ...] = ()) -> list[tuple[Any, ...]]:
    """The way to every value of a tree of lists and mappings; of long lists to the first and last."""
    found = [at] if at else []
    if isinstance(tree, dict):
        for key in tree:
            found += places(tree[key], (*at, key))
    elif isinstance(tree, list):
        for key in range(len(tree)) if len(tree) < 6 else (0, 1, len(tree) - 1):
            found += places(tree[key], (*at, key))
    return found


def some_of_tree(tree: Any, rng: Random, keys: tuple[str, ...] = ()) -> Any:
    """Another value, no value, another name or a new key somewhere in the tree, which is changed.

    keys : names that mean something in such a file.
    """
    ways = places(tree)
    if not ways:
        return value(rng)
    *way, last = rng.choice(ways)
    inside = tree
    for part in way:
        inside = inside[part]
    kind = rng.randrange(8)
    if kind < 4:
        inside[last] = value(rng)
    elif kind == 4:
        del inside[last]
    elif kind == 5 and isinstance(inside, dict):
        inside[rng.choice([*keys, word(rng)[:400]])] = inside.pop(last)
    elif kind == 6 and isinstance(inside, dict):
        inside[rng.choice([*keys, word(rng)[:400]])] = value(rng)
    elif isinstance(inside[last], list):
        inside[last] = inside[last] * rng.choice([0, 2, 40])
    elif isinstance(inside[last], (int, float)) and not isinstance(inside[last], bool):
        inside[last] = inside[last] * rng.choice([-1, 2, 1000, 1e-9]) + rng.choice([0, 1])
    else:
        inside[last] = nest(200) if rng.random() < 0.2 else value(rng)
    return tree


def some_json(data: bytes, rng: Random) -> bytes:
    """A JSON file with its tree changed, now and then nested far deeper than anyone would."""
    if rng.random() < 0.04:
        depth = rng.choice([1500, 200_000])
        return data.replace(b"{", b'{"deep": ' + b"[" * depth + b"]" * depth + b",", 1)
    if rng.random() < 0.04:
        return re.sub(rb"\d+", b"9" * 5000, data, count=1)
    return as_json(some_of_tree(json.loads(data), rng))


def some_glb(data: bytes, rng: Random) -> bytes:
    """A GLB with the tree in it changed and the lengths right again."""
    size = int.from_bytes(data[12:16], "little")
    text = some_json(data[20 : 20 + size], rng)
    text += b" " * (-len(text) % 4)
    rest = data[20 + size :]
    whole = (12 + 8 + len(text) + len(rest)).to_bytes(4, "little")
    return data[:8] + whole + len(text).to_bytes(4, "little") + b"JSON" + text + rest


# --- TOML -----------------------------------------------------------------------------------------


def toml_of(tree: dict[str, Any]) -> bytes:
    """A tree as TOML, each key on a line of its own with its value inline; what TOML lacks is left out."""
    return "\n".join(f"{_key(k)} = {_inline(v)}" for k, v in tree.items() if v is not None).encode(
        "utf-8", "surrogatepass"
    )


def _key(name: str) -> str:
    return name if re.fullmatch(r"[A-Za-z0-9_-]+", name) else json.dumps(name, ensure_ascii=False)


def _inline(v: Any) -> str:
    if isinstance(v, dict):
        return "{" + ", ".join(f"{_key(k)} = {_inline(x)}" for k, x in v.items() if x is not None) + "}"
    if isinstance(v, list):
        return "[" + ", ".join(_inline(x) for x in v if x is not None) + "]"
    if isinstance(v, str):
        return json.dumps(v, ensure_ascii=len(v) % 2 == 0)
    if isinstance(v, bool):
        return str(v).lower()
    if isinstance(v, int) and abs(v) >= 10**4000:
        return "1" + "0" * 4500
    return str(v)


def toml_tree(keys: tuple[str, ...]) -> Mutate:
    """A TOML file with its tree changed: ``keys`` are those its schema knows."""
    import tomllib

    def change(data: bytes, rng: Random) -> bytes:
        try:
            tree = tomllib.loads(data.decode())
            return toml_of(some_of_tree(tree, rng, keys))
        except (ValueError, RecursionError):
            return data

    return change


def toml_shape(data: bytes, rng: Random) -> bytes:
    """What no tree has: nesting, numbers and names that the notation itself has to bear."""
    deep = rng.choice([300, 3000, 30_000])
    extra = rng.choice([
        "deep = " + "[" * deep + "]" * deep, "deep = " + "{a=" * deep + "1" + "}" * deep,
        "a" + ".a" * deep + " = 1", "[" + "a." * deep + "a]", "big = 1" + "0" * 5000, "big = 1e" + "9" * 400,
        'n = "\\u0000"', "n = " + '"' + "x" * 100_000 + '"', f'{"k" * 100_000} = 1', "d = 0000-99-99",
        "d = 2026-02-30T25:61:61Z", "[[a]]\n" * deep, "x = 0x" + "f" * 5000, "a = 1\na = 2", "[a]\n[a]",
        "t = 9999-12-31T23:59:60+99:99", "s = '''", "f = -nan", "\ud83d".encode("utf-8", "surrogatepass").decode("latin-1"),
    ])  # fmt: skip
    parts = data.decode().split("\n")
    parts.insert(rng.choice([0, len(parts)]), extra)
    return "\n".join(parts).encode()


# --- archives and pages ---------------------------------------------------------------------------


def some_member(data: bytes, rng: Random) -> bytes:
    """A zip with one member changed, named otherwise, doubled or left out."""
    with zipfile.ZipFile(io.BytesIO(data)) as archive:
        members = [(i.filename, archive.read(i), i.compress_type) for i in archive.infolist()]
    at = rng.randrange(len(members))
    name, inside, how = members[at]
    kind = rng.randrange(6)
    if kind < 2:
        inside = some_bytes(inside, rng)
    elif kind == 2:
        inside = some_json(inside, rng) if inside[:1] == b"{" else some_words(inside, rng, 400)
    elif kind == 3:
        name = rng.choice(
            ["../x.usda", "x/" * 100 + "a", name.upper(), word(rng)[:200].replace("\0", "0") or "e"]
        )
    elif kind == 4:
        members.append((name, some_bytes(inside, rng), how))
    else:
        inside, how = bytes(rng.choice([0, 3_000_000])), zipfile.ZIP_DEFLATED
    members[at] = (name, inside, how)
    held = io.BytesIO()
    import warnings

    with zipfile.ZipFile(held, "w") as archive, warnings.catch_warnings():
        warnings.simplefilter("ignore")
        for name, inside, how in members:
            archive.writestr(zipfile.ZipInfo(name, (1980, 1, 1, 0, 0, 0)), inside, how)
    return held.getvalue()


def some_member_or_bytes(data: bytes, rng: Random) -> bytes:
    """``some_member`` of a zip, ``some_bytes`` of anything else."""
    return some_member(data, rng) if data.startswith(b"PK") else some_bytes(data, rng)


_PAGE, _PAYLOAD = 1024, 1020


def _crc_table() -> list[int]:
    table = []
    for byte in range(256):
        for _ in range(8):
            byte = (byte >> 1) ^ (0x82F63B78 if byte & 1 else 0)
        table.append(byte)
    return table


_CRC = _crc_table()


def _crc32c(data: bytes) -> int:
    """CRC-32C (RFC 3720, B.4) by table."""
    crc = 0xFFFFFFFF
    for byte in data:
        crc = (crc >> 8) ^ _CRC[(crc ^ byte) & 255]
    return crc ^ 0xFFFFFFFF


def e57_pages(inner: Callable[[bytearray, int, int, Random], None]) -> Mutate:
    """Change an E57 under its checksums: ``inner`` gets the bytes without them, and where the XML starts and
    how long it is."""

    def change(data: bytes, rng: Random) -> bytes:
        whole = bytearray(b"".join(data[i : i + _PAYLOAD] for i in range(0, len(data), _PAGE)))
        place, length = (int.from_bytes(whole[i : i + 8], "little") for i in (24, 32))
        inner(whole, place - 4 * (place // _PAGE), length, rng)
        whole += bytes(-len(whole) % _PAYLOAD)
        pages = (bytes(whole[i : i + _PAYLOAD]) for i in range(0, len(whole), _PAYLOAD))
        return b"".join(p + _crc32c(p).to_bytes(4, "big") for p in pages)

    return change


_XML_VALUE = re.compile(r'"[^"]*"|>[^<]+<')
_XML_TYPES = [
    "Integer",
    "Float",
    "ScaledInteger",
    "String",
    "Structure",
    "Vector",
    "CompressedVector",
    "Blob",
    "",
]


def _e57_xml(whole: bytearray, start: int, length: int, rng: Random) -> None:
    text = whole[start : start + length].decode("utf-8", "surrogateescape")
    kind = rng.randrange(6)
    if kind < 3:
        found = rng.choice(list(_XML_VALUE.finditer(text)))
        new = word(rng) if rng.random() < 0.8 else rng.choice(_XML_TYPES)
        text = text[: found.start() + 1] + new + text[found.end() - 1 :]
    elif kind == 3:
        text = re.sub(
            r'type="\w+"', lambda m: f'type="{rng.choice(_XML_TYPES)}"' if rng.random() < 0.2 else m[0], text
        )
    elif kind == 4:
        away = rng.choice(["{0}", "../outside/pipe", "file:///etc/passwd"]).format(
            "http://127.0.0.1:{port}/a.dtd"
        )
        text = rng.choice([
            text.replace("?>", f'?>\n<!DOCTYPE e57Root SYSTEM "{away}">', 1),
            text.replace("?>", f'?>\n<!DOCTYPE e57Root [<!ENTITY a SYSTEM "{away}">]>', 1),
            text.replace("?>", '?>\n<!DOCTYPE e57Root [<!ENTITY a "aaaaaaaaaa">' + "".join(
                f'<!ENTITY b{k} "&{"a" if k == 0 else f"b{k - 1}"};&{"a" if k == 0 else f"b{k - 1}"};">' for k in range(30)
            ) + "]>", 1),
            text.replace("<e57Root", f'<?xml-stylesheet href="{away}"?><e57Root', 1),
            text.replace("<e57Root", "<a>" * 3000 + "<e57Root", 1),
        ])  # fmt: skip
    else:
        text = some_words(text.encode("utf-8", "surrogateescape"), rng).decode("utf-8", "surrogateescape")
    new_bytes = text.encode("utf-8", "surrogateescape")
    whole[start:] = new_bytes
    pages = -(-len(whole) // _PAYLOAD)
    whole[16:24] = (pages * _PAGE).to_bytes(8, "little")
    whole[32:40] = len(new_bytes).to_bytes(8, "little")


def _e57_binary(whole: bytearray, start: int, length: int, rng: Random) -> None:
    low, high = rng.choice([(8, 48), (48, 48 + 32 + 64), (48, max(start, 200))])
    at, size = rng.randrange(low, min(high, len(whole) - 8)), rng.choice([1, 2, 4, 8])
    whole[at : at + size] = (rng.choice([*SIZES, rng.randrange(2**63)]) % (1 << 8 * size)).to_bytes(
        size, "little"
    )


e57_xml, e57_binary = e57_pages(_e57_xml), e57_pages(_e57_binary)


def fill_in(data: bytes, port: int) -> bytes:
    """The address of who listens for requests, where a word names it."""
    return data.replace(b"{port}", str(port).encode()) if b"{port}" in data else data
