"""Generic tools from their files: reaches and rates as ranges, each file with its source. Unknown keys are
refused.
"""

from __future__ import annotations

import difflib
import math
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any

from crestcut.base.errors import CrestcutError
from crestcut.base.units import parse_length, parse_slope
from crestcut.job import read_toml
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
    "speed",
    "steepest",
    *LENGTHS,
    *RANGES,
)


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


def tools_at_hand(job_path: Path, named: Sequence[str] | None, key: str = "[work] tools") -> tuple[Tool, ...]:
    """The tools that the job names under ``key``, each a file ``NAME.toml`` beside the job or among the
    shipped ones; all of the latter where it names none. Raises CrestcutError for a name without a file, and
    as ``load_tool``.
    """
    folder = tool_folder(job_path)
    if named is None:
        return load_tools(folder) if folder else ()
    return tuple(load_tool(path) for path in tool_files(job_path, named, key))


def tool_files(job_path: Path, named: Sequence[str] | None, key: str = "[work] tools") -> tuple[Path, ...]:
    """The files of ``tools_at_hand``."""
    folder = tool_folder(job_path)
    if named is None:
        return tuple(sorted(folder.glob("*.toml"))) if folder else ()
    found = []
    for name in dict.fromkeys(name.removesuffix(".toml") for name in named):
        places = [place / f"{name}.toml" for place in (job_path.parent, folder) if place is not None]
        path = next((p for p in places if p.is_file()), None) if Path(name).name == name else None
        if path is None:
            known = sorted(p.stem for p in folder.glob("*.toml")) if folder else []
            raise CrestcutError(
                f'no tool "{name}"', key,
                f"write one of {', '.join(known)}, or put your own {name}.toml beside the job",
            )  # fmt: skip
        found.append(path)
    return tuple(found)


def load_tool(path: Path) -> Tool:
    """One tool file. Raises CrestcutError for unknown keys, lengths without units, or a tool with guard or
    shroud off.
    """
    table, _ = read_toml(path, "tool file")
    _refuse_unknown(table, path)
    if not (table.get("guard", False) and table.get("shroud", False)):
        raise CrestcutError(
            "guard or shroud is off",
            str(path),
            "fit both and measure the reach again: no sheet is made for a tool without them",
        )
    where = path.name
    cuts = table.get("use") == "kerf"
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
        speed=_range(table, "speed", where) if cuts else None,
        steepest=_steepest(table, where),
    )


def _steepest(table: Mapping[str, Any], where: str) -> float:
    """Steepest ground a machine stands and turns on, rise over run; a tool in the hand goes anywhere."""
    if bool(table.get("by_hand", False)):
        return math.inf
    return parse_slope(_need(table, "steepest", where), f"{where} steepest")


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
