"""The work sheets: one PDF to print, the tables as CSV, and the whole worksheet as JSON."""

from __future__ import annotations

import csv
import dataclasses
import json
import math
from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from crestcut.deliver import ink, sheet_cut, sheet_pages
from crestcut.work.jig import Site
from crestcut.work.records import SetOut, Ties, Worksheet

if TYPE_CHECKING:
    from matplotlib.figure import Figure

SCHEMA = "crestcut.worksheet/1"
PDF_NAME, JSON_NAME = "work_sheets.pdf", "worksheet.json"


def write_sheets(sheet: Worksheet, site: Site, folder: Path, pictures: bool = False) -> tuple[Path, ...]:
    """Write ``work_sheets.pdf``, ``worksheet.json`` and, when released, ``work_*.csv`` into ``folder``.

    site : what ``work.sheet.make_site`` gives for the same plan.  pictures : also one PNG a page.
    Returns the files written. Same input, same bytes.
    """
    paths = [folder / JSON_NAME]
    text = json.dumps(worksheet_document(sheet), indent=1, ensure_ascii=False, allow_nan=False)
    paths[0].write_text(text + "\n", encoding="utf-8")
    for name, rows in tables(sheet):
        paths.append(folder / name)
        with paths[-1].open("w", newline="", encoding="utf-8") as file:
            csv.writer(file, lineterminator="\n").writerows(rows)
    return (*paths, *_write_pages(sheet, site, folder, pictures))


def pages(sheet: Worksheet, site: Site) -> Iterator[tuple[str, Figure]]:
    """Every page with its short name. A stamped worksheet has no page to cut from."""
    yield from (("first", figure) for figure in sheet_pages.first_page(sheet))
    if sheet.set_out is not None:
        yield from (("order", figure) for figure in sheet_pages.order_page(sheet))
        if sheet.jig is not None and sheet.jig.rows:
            yield from sheet_cut.jig_pages(sheet, sheet.jig)
        yield from sheet_cut.set_out_pages(sheet, sheet.set_out, site)
        yield from sheet_cut.slot_pages(sheet, sheet.set_out)
        yield from sheet_cut.string_pages(sheet, sheet.set_out)
    yield from (("ground", figure) for figure in sheet_pages.ground_page(sheet, site))
    yield from (("cards", figure) for figure in sheet_pages.cards_page(sheet))
    if sheet.jig is not None:
        yield from sheet_cut.strip_pages(sheet, sheet.jig, site)


def _write_pages(sheet: Worksheet, site: Site, folder: Path, pictures: bool) -> list[Path]:
    import matplotlib
    from matplotlib.backends.backend_pdf import PdfPages

    paths = [folder / PDF_NAME]
    facts = {"Title": sheet.title, "CreationDate": None, "Producer": None, "Creator": None}
    with matplotlib.rc_context(ink.STYLE), PdfPages(paths[0], metadata=facts) as pdf:
        for number, (name, figure) in enumerate(pages(sheet, site), start=1):
            figure.text(0.5, 0.3 / 11.69, f"{number}", ha="center", fontsize=7)
            pdf.savefig(figure)
            if pictures:
                paths.append(folder / f"work_{number:02d}_{name}.png")
                figure.savefig(paths[-1], dpi=110, metadata={"Software": None})
    return paths


def worksheet_document(sheet: Worksheet) -> dict[str, object]:
    """The worksheet as plain values, SI; not measured is null."""
    document = _plain(dataclasses.asdict(sheet))
    assert isinstance(document, dict)
    return {"schema": SCHEMA, **document}


def _plain(value: object) -> object:
    if isinstance(value, dict):
        return {str(key): _plain(item) for key, item in value.items()}
    if isinstance(value, (list, tuple)):
        return [_plain(item) for item in value]
    if isinstance(value, float):
        return value if math.isfinite(value) else None
    return value


def tables(sheet: Worksheet) -> Iterator[tuple[str, list[list[str]]]]:
    """Name and rows (head first) of every table to cut from; none when stamped. Millimetres and metres, as
    the heads say.
    """
    if sheet.jig is not None:
        head = [
            "lane",
            "offset_m",
            "cut_from_m",
            "cut_to_m",
            "rear_block_at_m",
            "front_block_at_m",
            "rear_block_mm",
            "front_block_mm",
        ]
        yield (
            "work_jig.csv",
            [head]
            + [
                [
                    str(r.lane),
                    *(f"{v:.2f}" for v in (r.offset, r.start, r.stop, r.rear_at, r.front_at)),
                    f"{r.rear * 1000:.1f}",
                    f"{r.front * 1000:.1f}",
                ]
                for r in sheet.jig.rows
            ],
        )
    if sheet.set_out is not None:
        yield from _set_out_tables(sheet.set_out)


def _set_out_tables(out: SetOut) -> Iterator[tuple[str, list[list[str]]]]:
    head = ["dot", "station_m", "offset_m", "depth_mm", "from", "tape_m", "and_from", "tape_m", "side"]
    yield (
        "work_dots.csv",
        [head]
        + [
            [d.name, f"{d.station:.2f}", f"{d.offset:.2f}", f"{d.depth * 1000:.1f}", *ties_cells(d.ties)]
            for d in out.dots
        ],
    )
    yield (
        "work_slots.csv",
        [["lane", "offset_m", "station_m", "depth_mm"]]
        + [[str(k.lane), f"{k.offset:.2f}", f"{k.station:.2f}", f"{k.depth * 1000:.1f}"] for k in out.kerfs],
    )
    head = [
        "lane",
        "offset_m",
        "rear_block_at_m",
        "front_block_at_m",
        "blocks_mm",
        "from_rear_block_m",
        "at_least_mm",
    ]
    yield (
        "work_strings.csv",
        [head]
        + [
            [
                str(s.lane),
                *(f"{v:.2f}" for v in (s.offset, s.rear_at, s.front_at)),
                f"{s.blocks * 1000:.0f}",
                f"{s.at:.2f}",
                f"{s.least * 1000:.0f}",
            ]
            for s in out.strings
        ],
    )
    yield (
        "work_stop_lines.csv",
        [["offset_m", "from_m", "to_m"]] + [[f"{v:.2f}" for v in row] for row in out.outline],
    )


def ties_cells(ties: Ties | None) -> Sequence[str]:
    """Two tapes as five cells; blanks where no marks cross well."""
    if ties is None:
        return ("", "", "", "", "")
    return (ties.first, f"{ties.first_distance:.3f}", ties.second, f"{ties.second_distance:.3f}", ties.side)
