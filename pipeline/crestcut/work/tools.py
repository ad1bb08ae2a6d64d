"""Generic tools from their files: reaches and rates as ranges, each file with its source. Unknown keys are
refused.
"""

from __future__ import annotations

import difflib
import tomllib
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any

from crestcut.base.errors import CrestcutError
from crestcut.base.units import litres, parse_length
from crestcut.work.jig_records import Range, Tool

TASKS = ("grinder", "hand saw", "floor machine")
USES = ("kerf", "face")
LENGTHS = ("kerf", "pitch", "step", "offset")
RANGES = ("rate", "life", "vibration")
KEYS = (
    "name",
    "task",
    "use",
    "wheel",
    "reach",
    "mass",
    "by_hand",
    "wet",
    "guard",
    "shroud",
    "source",
    *LENGTHS,
    *RANGES,
)
KERFS_POINTLESS = 0.004  # m: shallower is ground with a cup at once (common practice, no source)
MACHINE_DEPTH = 0.012  # m: deeper is bulk work for a machine (common practice, no source)
MACHINE_LITRES = 10.0  # l: more is work for a machine (common practice, no source)


def tool_folder(job_path: Path) -> Path | None:
    """Where the tool files lie: ``tools`` beside the job's own folder, else ``configs/tools`` here."""
    here = Path(__file__).resolve()
    for folder in (job_path.resolve().parent.parent / "tools", here.parents[3] / "configs" / "tools"):
        if folder.is_dir() and any(folder.glob("*.toml")):
            return folder
    return None


def load_tools(folder: Path) -> tuple[Tool, ...]:
    """Every tool file of a folder, in order of name. Raises CrestcutError for the first that is not
    understood.
    """
    return tuple(load_tool(path) for path in sorted(folder.glob("*.toml")))


def load_tool(path: Path) -> Tool:
    """One tool file. Raises CrestcutError for unknown keys, lengths without units, or a tool with guard or
    shroud off.
    """
    try:
        table = tomllib.loads(path.read_text(encoding="utf-8"))
    except (OSError, UnicodeDecodeError, tomllib.TOMLDecodeError) as error:
        raise CrestcutError(
            f"not a readable tool file: {error}", str(path), "write it as TOML, like its neighbours"
        ) from None
    _refuse_unknown(table, path)
    if not (table.get("guard", False) and table.get("shroud", False)):
        raise CrestcutError(
            "guard or shroud is off",
            str(path),
            "fit both and measure the reach again: no sheet is made for a tool without them",
        )
    where = path.name
    return Tool(
        key=path.stem,
        name=str(_need(table, "name", where)),
        task=_choice(table, "task", TASKS, where),
        use=_choice(table, "use", USES, where),
        wheel=None if "wheel" not in table else _length(table, "wheel", where),
        reach=None if "reach" not in table else _lengths(table, "reach", where),
        mass=_number(table, "mass", where),
        by_hand=bool(_need(table, "by_hand", where)),
        wet=bool(_need(table, "wet", where)),
        source=str(_need(table, "source", where)),
        kerf=_length(table, "kerf", where),
        pitch=_length(table, "pitch", where),
        step=_length(table, "step", where),
        offset=_length(table, "offset", where),
        rate=_range(table, "rate", where),
        life=_range(table, "life", where),
        vibration=_range(table, "vibration", where),
    )


def _refuse_unknown(table: Mapping[str, Any], path: Path) -> None:
    for key in table:
        if key not in KEYS:
            near = difflib.get_close_matches(key, KEYS, 1)
            hint = f'did you mean "{near[0]}"?' if near else f"known keys: {', '.join(KEYS)}"
            raise CrestcutError(f'unknown key "{key}"', str(path), hint)


def _need(table: Mapping[str, Any], key: str, where: str) -> Any:
    if key not in table:
        raise CrestcutError(f'"{key}" is missing', where, "see the other tool files")
    return table[key]


def _choice(table: Mapping[str, Any], key: str, allowed: Sequence[str], where: str) -> str:
    value = str(_need(table, key, where))
    if value not in allowed:
        raise CrestcutError(f'{key} = "{value}" is not known', where, f"one of: {', '.join(allowed)}")
    return value


def _number(table: Mapping[str, Any], key: str, where: str) -> float:
    value = _need(table, key, where)
    if isinstance(value, bool) or not isinstance(value, (int, float)) or not value >= 0:
        raise CrestcutError(f"{key}: a number of zero or more expected", where, "see the other tool files")
    return float(value)


def _length(table: Mapping[str, Any], key: str, where: str) -> float:
    value = parse_length(_need(table, key, where), f"{where} {key}")
    if value < 0:
        raise CrestcutError(f"{key} is below zero", where, "give what a tape shows")
    return value


def _pair(table: Mapping[str, Any], key: str, where: str) -> list[Any]:
    value = _need(table, key, where)
    if not isinstance(value, list) or len(value) != 2:
        raise CrestcutError(f"{key}: a range of two values expected", where, f"write {key} = [least, most]")
    return value


def _lengths(table: Mapping[str, Any], key: str, where: str) -> Range:

    low, high = (parse_length(v, f"{where} {key}") for v in _pair(table, key, where))
    return _ordered(low, high, key, where)


def _range(table: Mapping[str, Any], key: str, where: str) -> Range:
    low, high = (_number({key: v}, key, where) for v in _pair(table, key, where))
    return _ordered(low, high, key, where)


def _ordered(low: float, high: float, key: str, where: str) -> Range:
    if low > high:
        raise CrestcutError(f"{key}: the least comes after the most", where, f"write {key} = [least, most]")
    return Range(low, high)


def choose_tools(tools: Sequence[Tool], deepest: float, volume: float) -> tuple[tuple[Tool, ...], str]:
    """The tools for a cut ``deepest`` m deep and ``volume`` m3 large, in order of use, and why.

    Under 4 mm: a cup or floor grinder alone. Up to 12 mm and 10 litres: slots with a hand grinder, fins
    knocked off, cup. Over either: a machine for the bulk, then the same by hand for the rest.
    """
    hand_kerf = [
        t for t in tools if t.by_hand and t.use == "kerf" and t.reach is not None and t.task == "grinder"
    ]
    hand_face = [t for t in tools if t.by_hand and t.use == "face"]
    machine = sorted((t for t in tools if not t.by_hand), key=lambda t: -t.step)
    if deepest < KERFS_POINTLESS:
        return (
            tuple(hand_face[:1]),
            f"{deepest * 1000:.1f} mm at the deepest: slots are pointless under 4 mm, grind with a cup",
        )
    by_hand = (*hand_kerf[:1], *hand_face[:1])
    if deepest > MACHINE_DEPTH or volume * 1000 > MACHINE_LITRES:
        why = (
            f"{deepest * 1000:.1f} mm and {litres(volume)}: over 12 mm or 10 litres a machine takes the"
            " bulk, the board the rest"
        )
        return (*machine[:1], *by_hand), why
    return (
        by_hand,
        f"{deepest * 1000:.1f} mm and {litres(volume)}: slots from the board, fins knocked off, cup",
    )
