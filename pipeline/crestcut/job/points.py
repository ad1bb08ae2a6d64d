"""A place as people write it: coordinates, the name of a mark, or two tape ties."""

from __future__ import annotations

import math
from typing import Any

from crestcut.base.errors import CrestcutError
from crestcut.base.units import parse_length
from crestcut.job.fields import fault
from crestcut.job.records import MarkName, PlanPoint, Point, TapeTies

_HOW = 'write [x, y], or the name of a mark, or { A = "2.31 m", B = "1.87 m", side = "left" }'


def point(value: Any, plain: bool = False) -> Point:
    """``plain``: only coordinates will do. Raises the fault that the file's reader turns into one line."""
    if isinstance(value, (PlanPoint, MarkName, TapeTies)):
        return value
    if isinstance(value, list):
        return _coordinates(value)
    if plain:
        raise fault("coordinates expected", "write [x, y] in the scan's own coordinates")
    if isinstance(value, str) and value.strip():
        return MarkName(value.strip())
    if isinstance(value, dict):
        return _ties(value)
    raise fault("a point expected", _HOW)


def _coordinates(value: list[Any]) -> PlanPoint:
    good = len(value) == 2 and all(
        isinstance(v, (int, float)) and not isinstance(v, bool) and math.isfinite(v) for v in value
    )
    if not good:
        raise fault(
            f"{value} is no point",
            "two plain numbers in the scan's own coordinates and unit, like [2.10, 0.30]",
        )
    return PlanPoint(float(value[0]), float(value[1]))


def _ties(value: dict[str, Any]) -> TapeTies:
    names = [key for key in value if key != "side"]
    if "side" not in value or len(names) != 2:
        raise fault("two tape ties and a side expected", _HOW)
    if value["side"] not in ("left", "right"):
        raise fault(
            f'side "{value["side"]}" is not known',
            'write "left" or "right": as seen from the first mark to the second',
        )
    lengths = []
    for name in names:
        try:
            lengths.append(parse_length(value[name]))
        except CrestcutError as error:
            raise fault(f"distance from {name}: {error.what}", error.mend) from None
    if min(lengths) < 0 or max(lengths) == 0:
        raise fault("a distance from a mark is not above zero", "measure along the slab from each mark")
    return TapeTies(names[0], lengths[0], names[1], lengths[1], value["side"])
