"""The work sheets: one PDF to print, the tables as CSV, and the whole worksheet as JSON."""

from __future__ import annotations

import csv
from collections.abc import Iterator
from dataclasses import asdict
from pathlib import Path
from typing import TYPE_CHECKING

from crestcut.base.errors import table_cell
from crestcut.report.pictures import ink
from crestcut.report.sheets import pages as sheet_pages
from crestcut.report.sheets.jig import jig_pages
from crestcut.report.sheets.measure import measure_pages
from crestcut.report.sheets.paper import put
from crestcut.report.sheets.rails import rail_pages
from crestcut.report.sheets.setout import contour_pages, set_out_pages
from crestcut.report.sheets.ties import tie_cells
from crestcut.report.view.result import plain_document, write_json
from crestcut.study import Identity
from crestcut.work import Jig, SetOut, Site, Worksheet

if TYPE_CHECKING:
    from matplotlib.figure import Figure

SCHEMA = "crestcut.worksheet/1"
PDF_NAME, JSON_NAME = "work_sheets.pdf", "worksheet.json"


def write_sheets(
    sheet: Worksheet, site: Site, about: Identity, folder: Path, prefix: str = ""
) -> tuple[Path, ...]:
    """Write ``work_sheets.pdf``, ``worksheet.json`` and, when released, ``work_*.csv`` into ``folder``.

    site : what ``work.order.make_site`` gives for the same plan.  about : what every file says of itself.
    prefix : of every name, for sheets beside those of the whole job.
    Returns the files written. Same input, same bytes.
    """
    paths = [folder / f"{prefix}{JSON_NAME}"]
    write_json(worksheet_document(sheet, about), paths[0], indent=1)
    paths += write_tables(sheet, about, folder, prefix)
    paths.append(folder / f"{prefix}{PDF_NAME}")
    with ink.book(paths[-1], about) as pdf:
        for number, (_, figure) in enumerate(pages(sheet, site), start=1):
            wide, tall = figure.get_size_inches()
            put(figure, wide / 2, tall - 0.3, f"{number}", ha="center", fontsize=8)
            pdf.savefig(figure)
    return tuple(paths)


def write_tables(sheet: Worksheet, about: Identity, folder: Path, prefix: str = "") -> list[Path]:
    """Write ``work_*.csv`` and return their paths; none where the sheet is stamped."""
    paths: list[Path] = []
    for name, rows in tables(sheet):
        paths.append(folder / f"{prefix}{name}")
        with paths[-1].open("w", newline="", encoding="utf-8") as file:
            file.writelines(f"# {line}\n" for line in about.lines())
            csv.writer(file, lineterminator="\n").writerows([[table_cell(v) for v in row] for row in rows])
    return paths


def pages(sheet: Worksheet, site: Site) -> Iterator[tuple[str, Figure]]:
    """Every page with its short name. A stamped worksheet has no page to cut from."""
    made: list[tuple[str, list[Figure]]] = [
        ("first", sheet_pages.first_page(sheet)),
        ("measure", measure_pages(sheet)),
    ]
    out, jig = sheet.set_out, sheet.jig
    if out is not None:
        made.append(("order", sheet_pages.order_page(sheet)))
        if jig is not None:
            made += [("jig", jig_pages(sheet, jig, site)), ("rails", rail_pages(sheet, jig, out))]
        made += [("set_out", set_out_pages(sheet, out, site)), ("contours", contour_pages(sheet, out))]
    made += [("ground", sheet_pages.ground_page(sheet, site)), ("cards", sheet_pages.cards_page(sheet))]
    if out is not None:
        made.append(("record", sheet_pages.record_page(sheet)))
    yield from ((name, figure) for name, figures in made for figure in figures)


def worksheet_document(sheet: Worksheet, about: Identity) -> dict[str, object]:
    """The worksheet as plain values, SI; not measured is null."""
    document, release = asdict(sheet), sheet.release
    codes = [{"code": r.code, "about": r.about} for r in release.reasons]
    return plain_document({
        "schema": SCHEMA, "version": about.version, "dated": about.dated, **document,
        "release": {**document["release"], "reasons": list(release.words), "codes": codes},
    })  # fmt: skip


def tables(sheet: Worksheet) -> Iterator[tuple[str, list[list[str]]]]:
    """Name and rows (head first) of every table to cut from; none when stamped. Millimetres and metres, as
    the heads say.
    """
    if sheet.jig is not None:
        yield "work_jig.csv", _jig_table(sheet.jig)
    if sheet.set_out is not None:
        yield from _set_out_tables(sheet.set_out)


def _jig_table(jig: Jig) -> list[list[str]]:
    """Every setting with the height of both blocks in the last lift, and how many spacers its first lift
    needs.
    """
    head = [
        "setting", "slots_from_m", "slots_to_m", "cut_from_low_m", "cut_from_high_m",
        "cut_to_low_m", "cut_to_high_m",
        "rear_block_at_low_m", "rear_block_at_high_m", "front_block_at_low_m", "front_block_at_high_m",
        "rear_block_mm", "front_block_mm", "spacers_first", "spacer_mm", "part",
    ]  # fmt: skip
    return [head] + [
        [
            r.name,
            *(f"{v:.3f}" for v in (r.low, r.high, *r.start, *r.stop, *r.rear_at, *r.front_at)),
            f"{r.rear * 1000:.1f}",
            f"{r.front * 1000:.1f}",
            str(r.spacers),
            f"{jig.spacer[1] * 1000:.2f}",
            r.part,
        ]
        for r in jig.rows
    ]


def _set_out_tables(out: SetOut) -> Iterator[tuple[str, list[list[str]]]]:
    head = ["dot", "station_m", "offset_m", "depth_mm", "from", "tape_m", "and_from", "tape_m", "side"]
    yield (
        "work_dots.csv",
        [head]
        + [
            [d.name, f"{d.station:.3f}", f"{d.offset:.3f}", f"{d.depth * 1000:.1f}", *tie_cells(d.ties, "")]
            for d in out.dots
        ],
    )
    if out.contours:
        yield (
            "work_contours.csv",
            [["offset_m", "depth_mm", "from_m", "to_m"]]
            + [
                [f"{c.offset:.3f}", f"{c.level * 1000:.1f}", f"{c.first:.3f}", f"{c.last:.3f}"]
                for c in out.contours
            ],
        )
    head = [
        "string",
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
                s.name,
                *(f"{v:.3f}" for v in (s.offset, s.rear_at, s.front_at)),
                f"{s.blocks * 1000:.0f}",
                f"{s.at:.2f}",
                f"{s.least * 1000:.1f}",
            ]
            for s in out.strings
        ],
    )
    yield (
        "work_stop_lines.csv",
        [["offset_m", "from_m", "to_m"]] + [[f"{v:.3f}" for v in row] for row in out.outline],
    )
