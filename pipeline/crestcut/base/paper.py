"""Sizes of paper, scales of drawings, and how both are written."""

from __future__ import annotations

import re
from collections.abc import Sequence

from crestcut.base.errors import CrestcutError
from crestcut.base.units import FOOT, INCH, METRES_PER, parse_length

MM_INCH = INCH * 1000.0  # mm in an inch
# mm, upright. ISO 216; letter, legal, tabloid and Arch in inches: ANSI/ASME Y14.1 as listed on
# paper-size.com/c/us-paper-sizes.html (read 2026)
PAPERS: dict[str, tuple[float, float]] = {
    "A4": (210.0, 297.0),
    "A3": (297.0, 420.0),
    "A2": (420.0, 594.0),
    "A1": (594.0, 841.0),
    **{
        name: (wide * MM_INCH, tall * MM_INCH)
        for name, wide, tall in (
            ("Letter", 8.5, 11.0), ("Legal", 8.5, 14.0), ("Tabloid", 11.0, 17.0),
            ("Arch A", 9.0, 12.0), ("Arch B", 12.0, 18.0), ("Arch C", 18.0, 24.0), ("Arch D", 24.0, 36.0),
        )
    },
}  # fmt: skip
RATIOS = (5, 10, 20, 25, 50, 100, 200)  # 1 on paper for so many on the ground
# of inch jobs: inches on paper for a foot on the ground
PER_FOOT = {12: "1 in = 1 ft", 24: "1/2 in = 1 ft", 48: "1/4 in = 1 ft", 96: "1/8 in = 1 ft"}
FEET = ("ft", "us-ft", "in")  # units of inch jobs


def paper_named(text: str) -> str:
    """A size as ``PAPERS`` names it, however its letters are written."""
    for name in PAPERS:
        if name.lower().replace(" ", "") == text.lower().replace(" ", ""):
            return name
    raise CrestcutError(f'paper "{text[:40]}" is not known', "", f"write one of {', '.join(PAPERS)}")


def scale_ratio(text: str) -> int:
    """ "1:25" or "1/2 in = 1 ft" -> so many on the ground for 1 on paper, 25 and 24. Raises CrestcutError
    for any other than those drawings are made at."""
    known = f"write one of {', '.join(f'1:{r}' for r in RATIOS)}, or {', '.join(PER_FOOT.values())}"
    if found := re.fullmatch(r"\s*1\s*:\s*([0-9]{1,5})\s*", text):
        ratio = float(found[1])
    elif text.count("=") == 1:
        left, right = text.split("=")
        try:
            ratio = parse_length(right) / parse_length(left)
        except (CrestcutError, ZeroDivisionError):
            ratio = 0.0
    else:
        ratio = 0.0
    for one in (*RATIOS, *PER_FOOT):
        if abs(ratio - one) < 1e-6 * one:
            return one
    raise CrestcutError(f'"{text[:40]}" is no scale that drawings are made at', "", known)


def scale_words(ratio: int) -> str:
    """As printed."""
    return PER_FOOT.get(ratio) or f"1:{ratio}"


def ladder(unit: str, asked: int | None = None) -> Sequence[int]:
    """Scales from the largest to the smallest that a job in this unit is drawn at; those of the kind of
    ``asked`` where one is asked for."""
    in_feet = unit in FEET if asked is None else asked in PER_FOOT
    return tuple(PER_FOOT) if in_feet else RATIOS


def mm_per_unit(unit_metres: float, ratio: int) -> float:
    """mm on paper of one unit on the ground that is ``unit_metres`` long."""
    return unit_metres * 1000.0 / ratio


def foot_of(unit: str) -> float:
    """m in the foot that goes with a unit."""
    return METRES_PER["us-ft"] if unit == "us-ft" else FOOT
