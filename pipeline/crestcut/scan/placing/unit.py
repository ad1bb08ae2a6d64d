"""Which unit the numbers are in: declared, written in the file, or told from their size. A slab is metres
across."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from crestcut.base.errors import CrestcutError
from crestcut.base.grid import FloatArray
from crestcut.base.units import METRES_PER
from crestcut.scan.formats.raw import UnitFound

# A slab that some vehicle drives over: its longer side in m, and the least of its shorter one. Below 3 m no
# vehicle has a drive on it; over 40 m it is a whole site; under 0.6 m no trolley is so narrow (common
# practice, no source). Only for doubting a guess: what is declared may be smaller or larger.
SLAB, NARROWEST = (3.0, 40.0), 0.6
_OTHERS = ("m", "ft", "cm", "in", "mm")  # what scans come in, by how often
SMALLEST, LARGEST = 0.5, 600.0  # m across: outside this no slab with its surroundings is meant
_WIDEST_GUESS = 80.0  # m across: larger than this, a file without a unit is not simply taken for metres
_CLOSEST = 0.05  # units between points: closer than this, centimetres would be under half a millimetre apart
_MAP = 1e5  # coordinates of a map grid, in metres or feet, are this large


@dataclass(frozen=True)
class Size:
    """How large the numbers are, in file units."""

    across: float  # longest side holding 98 % of the points
    narrow: float  # the next longest
    spacing: float  # typical distance between points
    furthest: float  # largest coordinate


def size_of(points: FloatArray, every: int = 1) -> Size:
    """Size of (n, 3) file coordinates, n above 0, of a file of which every second, third ... point is
    held."""
    low, high = np.percentile(points, [1.0, 99.0], axis=0)
    sides = np.sort(high - low)
    spacing = float(np.sqrt(max(sides[1] * sides[2], 0.0) / (len(points) * every)))
    return Size(float(sides[2]), float(sides[1]), spacing, float(np.abs(points).max()))


def settle_unit(
    size: Size, declared: str | None, found: UnitFound | None, where: str
) -> tuple[UnitFound, tuple[str, ...]]:
    """The unit to use and notes on contradictions.

    Raises CrestcutError where the scan would be absurdly large or small, or where its size fits no unit.
    """
    if declared is not None:
        if declared not in METRES_PER:
            raise CrestcutError(
                f'unit "{declared}" is not known', where, 'use "m", "cm", "mm", "ft", "us-ft" or "in"'
            )
        factor = METRES_PER[declared]
        chosen = UnitFound(declared, (factor,) * 3, "declared")
        notes: tuple[str, ...] = ()
        if found is not None and not np.allclose(found.scale, chosen.scale, rtol=1e-9):
            notes = (
                f"{where}: unit {declared} was declared, though the file says {found.name} ({found.reason})",
            )
        _refuse_absurd(size, chosen, where)
        return chosen, notes
    if found is not None:
        _refuse_absurd(size, found, where)
        return found, ()
    return _guess(size, where), ()


def alternatives(size: Size, unit: UnitFound) -> tuple[str, ...]:
    """Units other than ``unit`` in which a scan of this size would be a slab that is driven on too."""
    return tuple(
        name
        for name in _OTHERS
        if name != unit.name
        and SLAB[0] <= size.across * METRES_PER[name] <= SLAB[1]
        and size.narrow * METRES_PER[name] >= NARROWEST
    )


def _refuse_absurd(size: Size, unit: UnitFound, where: str) -> None:
    across = size.across * max(unit.scale)
    if SMALLEST <= across <= LARGEST:
        return
    fitting = [
        u
        for u in ("mm", "cm", "m", "ft", "in")
        if 1.0 <= size.across * METRES_PER[u] <= 60.0 and u != unit.name
    ]
    hint = (
        f'if it is in another unit write unit = "{fitting[0]}"' if fitting else "crop it, or check its unit"
    )
    raise CrestcutError(
        f"{across:,.4g} m across in {unit.name} ({unit.reason}): a slab is metres across", where, hint
    )


def _guess(size: Size, where: str) -> UnitFound:
    across = size.across
    if SMALLEST <= across <= (LARGEST if size.spacing < _CLOSEST else _WIDEST_GUESS):
        reason = f"guessed: {across:,.1f} across, which is a slab in metres"
        return UnitFound("m", (1.0,) * 3, reason)
    if across > _WIDEST_GUESS and _MAP <= size.furthest < 2e7 and across < 0.05 * size.furthest:
        reason = f"guessed: coordinates up to {size.furthest:,.0f} are those of a map grid"
        return UnitFound("m", (1.0,) * 3, reason)
    if 10 * _WIDEST_GUESS <= across <= 2e5:
        reason = f"guessed: {across:,.0f} across, which is a slab in millimetres ({across / 1000:,.1f} m)"
        return UnitFound("mm", (0.001,) * 3, reason)
    wrong = "small" if across < SMALLEST else "large"
    raise CrestcutError(
        f"{across:,.4g} units across: too {wrong} for metres, and it fits no one unit",
        where, 'say it, like unit = "cm"',
    )  # fmt: skip
