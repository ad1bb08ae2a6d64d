"""Messages between two processes: a pickle with its arrays beside it, each sent once and not copied first.

Arrays arrive as they left, read-only ones read-only: compiled loops tell the two apart.
"""

from __future__ import annotations

import io
import pickle
import struct
import sys
from collections.abc import Sequence
from typing import IO, Any

Parts = list[bytes | memoryview]
LENGTH = struct.Struct("<Q")  # bytes of what follows


class Packer:
    """Packs objects for one ``Unpacker``; an array that was sent before is only named.

    What was sent must not be changed afterwards: records are frozen.
    """

    def __init__(self) -> None:
        self._sent: dict[tuple[object, ...], int] = {}
        self._held: list[Any] = []  # alive, so that no other array comes to lie at the same place

    def pack(self, what: object) -> Parts:
        """The pickle, then shape, type and bytes of every array that goes for the first time."""
        first = len(self._held)
        out = io.BytesIO()
        pickler = _Pickler(out, self._sent, self._held)
        pickler.dump(what)
        arrays = self._held[first:]
        kinds = [(a.dtype.str, a.shape, a.flags.writeable) for a in arrays]
        return [pickle.dumps(kinds), out.getbuffer(), *(a.reshape(-1).view("u1").data for a in arrays)]


class _Pickler(pickle.Pickler):
    def __init__(self, out: IO[bytes], sent: dict[tuple[object, ...], int], held: list[Any]) -> None:
        super().__init__(out, protocol=5)
        self._sent, self._held = sent, held
        numpy = sys.modules.get("numpy")  # not loaded for a task that has no array
        self._array = numpy.ndarray if numpy is not None else None

    def persistent_id(self, what: Any) -> int | None:
        """The number of an array that is sent by itself; None for what is pickled with the rest."""
        if type(what) is not self._array:
            return None
        if what.dtype.kind not in "biufc" or not what.flags.c_contiguous or what.size == 0:
            return None  # pickled with the rest
        key = (what.ctypes.data, what.shape, what.dtype.str, what.flags.writeable)
        if key not in self._sent:
            self._sent[key] = len(self._held)
            self._held.append(what)
        return self._sent[key]


class Unpacker:
    """Turns the messages of one ``Packer`` back, in their order."""

    def __init__(self) -> None:
        self._arrays: list[Any] = []

    def unpack(self, parts: Sequence[bytearray]) -> Any:
        """The object that was packed."""
        for (dtype, shape, writeable), held in zip(pickle.loads(parts[0]), parts[2:], strict=True):
            import numpy as np

            array = np.frombuffer(held, dtype).reshape(shape)
            array.flags.writeable = writeable
            self._arrays.append(array)
        unpickler = pickle.Unpickler(io.BytesIO(parts[1]))
        unpickler.persistent_load = self._arrays.__getitem__  # type: ignore[method-assign]
        return unpickler.load()


def send(pipe: IO[bytes], parts: Parts) -> None:
    """Write a message of several parts."""
    pipe.write(LENGTH.pack(len(parts)) + b"".join(LENGTH.pack(len(p)) for p in parts))
    for part in parts:
        pipe.write(part)
    pipe.flush()


def receive(pipe: IO[bytes]) -> list[bytearray] | None:
    """The next message; None where the other side is gone."""
    head = pipe.read(LENGTH.size)
    if len(head) < LENGTH.size:
        return None
    (count,) = LENGTH.unpack(head)
    sizes = pipe.read(LENGTH.size * count)
    if len(sizes) < LENGTH.size * count:
        return None
    parts = [bytearray(size) for (size,) in LENGTH.iter_unpack(sizes)]
    for part in parts:
        if _filled(pipe, part) < len(part):
            return None
    return parts


def _filled(pipe: IO[bytes], part: bytearray) -> int:
    """Read into ``part`` until it is full or nothing more comes; how many bytes came."""
    view, got = memoryview(part), 0
    while got < len(view):
        more = pipe.readinto(view[got:])  # type: ignore[attr-defined]
        if not more:
            break
        got += more
    return got
