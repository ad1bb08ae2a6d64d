"""How to measure a vehicle, as plain text and as a file to fill in: the letters are those of the drawing."""

from __future__ import annotations

import textwrap

from crestcut.vehicle.sheet.items import (
    CAUTIONS,
    ITEMS,
    LOADED,
    LOW_PARTS,
    MARK,
    OPTIONAL,
    PART_ITEMS,
    STEPS,
    Item,
)

_WIDE = 98


def measuring_sheet() -> str:
    """The sheet as plain text, at most 100 characters wide."""
    lines = [
        "MEASURING SHEET FOR A VEHICLE",
        "",
        "Vehicle ____________________   Load ____________________   Date __________",
        "",
        "BEFORE YOU START",
    ]
    for what, how in STEPS:
        lines += _wrapped(f"{what}: {how}", "  - ")
    lines += ["", "CAUTIONS"]
    for caution in CAUTIONS:
        lines += _wrapped(caution, "  - ")
    lines += ["", "WHAT TO MEASURE (mm, or inches with fractions; write the unit)"]
    lines += [_row(item) for item in ITEMS]
    lines += [f"  {OPTIONAL}", "", "LOW PARTS", *_wrapped(LOW_PARTS, "  ")]
    lines += [_row(item) for item in PART_ITEMS]
    lines += [
        "     may it touch (a rubber lip)?  yes / no        carried by: body / front axle / rear axle",
        "",
        "LOADED",
        *_wrapped(LOADED, "  "),
        "     load ____________________   front ______   rear ______",
        "",
        "With --out DIR the sheet is written as pages to print and as a file to fill in. Then:",
        "  crestcut vehicle FILLED.toml --out DIR     checks it and writes the vehicle file",
    ]
    return "\n".join(lines) + "\n"


def _row(item: Item) -> str:
    words = f"  {item.letter}  {item.what}: {item.how}{'' if item.needed else ' *'}"
    boxes = "______ ______ ______"
    return f"{words.ljust(_WIDE - len(boxes) - 1)} {boxes}"


def _wrapped(words: str, lead: str) -> list[str]:
    return textwrap.wrap(words, _WIDE, initial_indent=lead, subsequent_indent=" " * len(lead))


def blank_sheet() -> str:
    """The sheet as a TOML text to fill in, one line a letter, several readings each."""
    lines = [
        "# Measuring sheet. Fill in, then:  crestcut vehicle THIS_FILE --out DIR",
        "# Each letter takes two or three readings, each with its unit, in quotation marks:",
        '#   A = ["2620 mm", "2622 mm"]   or   A = ["8 ft 7 1/4 in"]',
        "# Letters are those of the printed sheet (crestcut vehicle --sheet --out DIR).",
        "#",
        *(f"# {caution}" for caution in CAUTIONS),
        "",
        f'sheet = "{MARK}"',
        'name = ""                # of the vehicle',
        'load = "driver only"     # how it was loaded while it was measured',
        "",
    ]
    lines += [_blank(item) for item in ITEMS]
    lines += [
        "",
        "# Low parts: take the marks off, fill in, and copy the lines for every further part.",
        "# [[part]]",
        '# name = "battery tray"',
        *(f"# {_blank(item)}" for item in PART_ITEMS),
        "# soft = false    # true: it may touch the ground, like a rubber lip",
        '# on = "body"     # or "front axle" or "rear axle", for what does not move with the springs',
        "",
        "# Loaded: how much the wheel arches moved over each hub, minus where they sank.",
        "# [[loaded]]",
        '# name = "four people"',
        '# front = []     # like ["-8 mm", "-9 mm"]',
        "# rear = []",
    ]
    return "\n".join(lines) + "\n"


def _blank(item: Item) -> str:
    return f"{item.letter} = []    # {item.what}: {item.how}{'' if item.needed else ' (if you can)'}"
