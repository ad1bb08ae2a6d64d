"""What a validator found, as one line: the file, the key as it stands in the file, what is wrong, what to
write.
"""

from __future__ import annotations

import difflib
from collections.abc import Iterable, Sequence
from pathlib import Path
from typing import Any

from pydantic import BaseModel, ValidationError

from crestcut.base.errors import CrestcutError
from crestcut.job.fields import FAULT

_CLOSE = 0.6  # difflib's own cut-off: below it two words are not meant for one another


def did_you_mean(word: str, known: Iterable[str]) -> str:
    """'did you mean "wander"?', or the words that are known, or nothing at all."""
    words = sorted(known)
    lower = {w.lower(): w for w in words}
    close = difflib.get_close_matches(word.lower(), list(lower), n=1, cutoff=_CLOSE)
    if close:
        return f'did you mean "{lower[close[0]]}"?'
    return f"known here: {', '.join(words)}" if words else ""


def as_one_line(
    error: ValidationError, path: Path, schema: type[BaseModel], data: dict[str, Any]
) -> CrestcutError:
    """The first fault in the order of the file, with its place and mend; further ones are named."""
    details = _once([d for d in error.errors(include_url=False)])
    # A misspelt key also makes the right one missing: what was written is told before what was not.
    details.sort(key=lambda d: d["type"] == "missing")
    first = details[0]
    what, mend = _words(first, schema)
    more = [_place(d["loc"], data) for d in details[1:]]
    tail = f" (and {len(more)} more: {', '.join(more[:4])}{' ...' if len(more) > 4 else ''})" if more else ""
    return CrestcutError(what + tail, f"{path.name}: {_place(first['loc'], data)}", mend)


def _once(details: Sequence[Any]) -> list[Any]:
    """One fault a place: a value that may be of several kinds fails once for each."""
    seen: dict[tuple[Any, ...], Any] = {}
    for detail in details:
        loc = tuple(x for x in detail["loc"] if not _is_tag(x))
        own = detail["type"] == FAULT
        if loc not in seen or (own and seen[loc]["type"] != FAULT):
            seen[loc] = {**detail, "loc": loc}
    return list(seen.values())


def _is_tag(part: int | str) -> bool:
    """pydantic names the member of a union in the place: no key of ours looks like that."""
    return isinstance(part, str) and any(c in part for c in "[(")


def _words(detail: Any, schema: type[BaseModel]) -> tuple[str, str]:
    kind, context = detail["type"], detail.get("ctx", {})
    if kind == FAULT:
        return context["what"], context["mend"]
    key = str(detail["loc"][-1]) if detail["loc"] else ""
    if kind == "extra_forbidden":
        return "unknown key", did_you_mean(key, _keys_beside(schema, detail["loc"]))
    if kind == "missing":
        return "missing", "write it; the example jobs show how"
    if kind == "literal_error":
        return _not_a_choice(detail["input"], context["expected"])
    if kind == "too_short":
        return (
            f"{context['min_length']} or more expected, {context['actual_length']} found",
            "add what is missing",
        )
    plain = {
        "string_type": "words between quotation marks expected",
        "bool_type": "true or false expected",
        "list_type": "a list expected",
        "dict_type": "a table expected",
        "model_type": "a table expected",
        "float_type": "a number expected",
    }
    return plain.get(kind, detail["msg"].lower()), "the example files show how it is written"


def _not_a_choice(found: Any, expected: str) -> tuple[str, str]:
    choices = [w.strip("'") for w in expected.replace(" or ", ", ").split(", ")]
    return f'"{found}" is not known', f"write one of {', '.join(choices)}"


def _keys_beside(schema: type[BaseModel], loc: Sequence[int | str]) -> list[str]:
    """The keys that may stand where an unknown one stood."""
    model: type[BaseModel] = schema
    for part in loc[:-1]:
        if isinstance(part, str) and part in model.model_fields:
            inner = _model_of(model.model_fields[part].annotation)
            if inner is not None:
                model = inner
    return [field.alias or name for name, field in model.model_fields.items()]


def _model_of(annotation: Any) -> type[BaseModel] | None:
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        return annotation
    for inner in getattr(annotation, "__args__", ()):
        if (found := _model_of(inner)) is not None:
            return found
    return None


def _place(loc: Sequence[int | str], data: dict[str, Any]) -> str:
    """("mark", 1, "at") -> "mark 2 (B).at": counted as people do, with the name they gave."""
    out, here = "", data
    for part in loc:
        inside: Any = None
        if isinstance(part, int):
            inside = here[part] if isinstance(here, (list, tuple)) and part < len(here) else None
            name = inside.get("name") if isinstance(inside, dict) else None
            out += f" {part + 1}" + (f" ({name})" if isinstance(name, str) else "")
        else:
            inside = here.get(part) if isinstance(here, dict) else None
            out += f".{part}" if out else str(part)
        here = inside
    return out or "the file"
