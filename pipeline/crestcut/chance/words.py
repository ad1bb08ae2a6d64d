"""A chance with its gap in plain words, the same on terminal, page, pictures and sheets."""

from __future__ import annotations

from crestcut.base.units import both, millimetres
from crestcut.chance.records import Chance, Left

WALKING, IN_USE = "at walking pace", "in use"


def state_words(chance: Chance) -> str:
    """ "clears, least gap 17.3 mm (11/16 in), 95 % between 11.7 mm and 22.9 mm; less than 1 in 1,000 ..."."""
    low, high = chance.interval
    span = f"95 % between {millimetres(low)} and {millimetres(high)}"
    said = f"{chance.verdict}, least gap {both(chance.least_clearance)}, {span}"
    return f"{said}; {chance.words}" if chance.words else said


def left_lines(left: Left) -> list[str]:
    """What a cut leaves, in full: at walking pace, and in use."""
    return [
        f"After it, {WALKING}: {state_words(left.today)}.",
        f"After it, {IN_USE}, with the allowances for load, speed and wear: {state_words(left.in_use)}.",
    ]


def left_words(left: Left) -> str:
    """What a cut leaves, short, for where there is little room."""
    used = f" ({left.in_use.words})" if left.in_use.words else ""
    return (
        f"least gap {both(left.today.least_clearance)} {WALKING}, {both(left.in_use.least_clearance)}"
        f" {IN_USE}{used}"
    )
