"""The speed page: one table of what Crestcut costs on this machine, each figure with its data, the accuracy
that goes with it, and an anchor: something known that took its time in the same run.

    python tests/bench/all.py [--less] [--forget]

Run it in the checkout. Every bench is appended to its history (``history.py``), with machine and commit,
unless ``--forget`` is given. ``--less`` leaves out what takes over a minute.

The last column is the change since the run before with the same arguments: of the figure on the same machine,
on another of the figure over its anchor. One above a fifth is said in a line of its own. Nothing here fails
for being slow.
"""

from __future__ import annotations

import sys
from dataclasses import dataclass
from typing import Any

from history import WORSE, keep, kept, run


@dataclass(frozen=True)
class Row:
    """Of the table. bench, arguments : what is run.  data : in words.  figure, accuracy, anchor : names of
    its figures; one that itself is a ratio to something in the same run has no anchor.  long : it takes over
    a minute.
    """

    bench: str
    arguments: tuple[str, ...]
    data: str
    figure: str
    accuracy: str
    anchor: str = ""
    long: bool = False


JOB = "configs/jobs/courtyard_apron.toml"
ROWS = (
    Row("sweep", ("20",), "16 x 4 m at 10 mm, 1,020 stations", "ray casting over sweep",
        "least of a pose, apart"),
    Row("sweep", ("20",), "the same", "sweep, processor time", "least of a pose, apart"),
    Row("heights_speed", (), "apron, 5 million points", "5,000,000 points, processor time",
        "5,000,000 points, rms error", "300,000 points, processor time", True),
    Row("options", (JOB,), "options of the sample job", "table, processor time",
        "more air, off the full sweep", "one ride and sweep", True),
    Row("whole_run", (JOB, "2"), "the sample job, warm", "whole run, processor time", "interval, low end",
        "--help", True),
    Row("lane", ("60",), "a lane of 60 m, warm", "lane of 60 m, processor time", "interval, low end",
        "the lane made", True),
    Row("many", ("4", "2"), "the sample job four times, two workers", "2 workers, a job, processor time",
        "jobs with the same bytes, of 4", "one after another, a job, processor time", True),
)  # fmt: skip


def change(row: Row, now: dict[str, Any], before: dict[str, Any]) -> float | None:
    """Share by which the row's figure is another than before; None where the two cannot be compared.

    now, before : lines of the bench's history.
    """
    one, other = (_worth(row, line, before["machine"] == now["machine"]) for line in (now, before))
    return one / other - 1.0 if one is not None and other else None


def _worth(row: Row, line: dict[str, Any], same: bool) -> float | None:
    values = {f["name"]: f["value"] for f in line["figures"]}
    found, anchor = values.get(row.figure), values.get(row.anchor)
    if same or found is None:
        return found
    if row.anchor:
        return found / anchor if anchor else None
    units = {f["name"]: f["unit"] for f in line["figures"]}
    return found if not units[row.figure] else None  # a ratio is the same anywhere, seconds are not


def main() -> None:
    """Run, print, keep."""
    rows = [row for row in ROWS if not (row.long and "--less" in sys.argv)]
    found: dict[tuple[str, tuple[str, ...]], dict[str, Any] | int] = {}
    table, said = [("data", "figure", "", "accuracy", "anchor in the same run", "change")], []
    for row in rows:
        key = row.bench, row.arguments
        like = [line for line in kept(row.bench) if line["arguments"] == list(row.arguments)]
        if key not in found:
            found[key] = run(row.bench, list(row.arguments))
        line = found[key]
        if isinstance(line, int):
            said.append(f"{row.bench}: it failed")
            continue
        told = {f["name"]: f"{f['value']:g} {f['unit']}".rstrip() for f in line["figures"]}
        moved = change(row, line, like[-1]) if like else None
        table.append((
            row.data, row.figure, told.get(row.figure, "-"),
            f"{row.accuracy}: {told.get(row.accuracy, '-')}",
            f"{row.anchor}: {told.get(row.anchor, '-')}" if row.anchor else "",
            "" if moved is None else f"{moved:+.0%}",
        ))  # fmt: skip
        if moved is not None and abs(moved) > WORSE:
            said.append(f"CHANGED by {moved:+.0%} since {like[-1]['commit']}: {row.bench}, {row.figure}")
    if "--forget" not in sys.argv:
        for (bench, _), line in found.items():
            if not isinstance(line, int):
                keep(bench, line)
    print()
    widths = [max(len(cells[k]) for cells in table) for k in range(len(table[0]))]
    for cells in table:
        print("  ".join(cell.ljust(width) for cell, width in zip(cells, widths, strict=True)).rstrip())
    for words in said:
        print(words)


if __name__ == "__main__":
    main()
