"""Options and vehicles in plain words: tables for the terminal, and the option that works for the first
line.
"""

from __future__ import annotations

import math

from crestcut.cut.option_rows import Option
from crestcut.deliver.report import Report
from crestcut.units import both, millimetres

NO_CURE = ("as it is", "slower", "cut", "new bay")  # what is no answer to 'then what, if not grinding?'
NOTHING = "-"


def option_lines(report: Report) -> list[str]:
    """What works first, cheapest first among it; then what does not. Empty where there is nothing to
    choose.
    """
    if len(report.options) < 2:
        return []
    sure = f"{report.job.wanted.confidence * 100:g} %"
    head = f"What could be done, cheapest first; 'works' is {sure} sure of the gap asked for:"
    rows = [(o, _cells(o)) for o in report.options]
    widths = [max(len(cells[k]) for _, cells in rows) for k in range(len(rows[0][1]))]
    lines = [head]
    for option, cells in rows:
        mark = "works" if option.works else "no   "
        text = "  ".join(cell.ljust(width) for cell, width in zip(cells, widths, strict=True))
        lines.append(f"  {mark}  {text.rstrip()}")
    lines += [f"  {o.name}: {o.needs}." for o, _ in rows if o.works and o.kind != "as it is"]
    barred = [o for o in report.options if o.forbids]
    lines += [f"  {', '.join(o.name for o in barred)}: {barred[0].needs}."] if barred else []
    line = next((o for o in report.options if o.line is not None), None)
    if line is not None:
        lines.append(f"  {line.name}: {_places(report, line)}; {line.needs}.")
    return lines


def vehicle_lines(report: Report) -> list[str]:
    """Each of several vehicles: its verdict, what it needs, and its part of the common cut; empty for one."""
    if len(report.vehicles) < 2:
        return []
    sure = f"{report.job.wanted.confidence * 100:g} %"
    lines = [
        f"Each vehicle, and its part of the one cut for all ('enough': {sure} sure of the gap asked for):"
    ]
    for row in report.vehicles:
        gap = f"{both(row.today.least_clearance)} under the {row.part}"
        cut = f"alone {millimetres(row.alone)} deep" if row.alone > 0 else "needs no cut"
        share = f", its part {row.volume * 1000:.1f} litres" if row.volume > 0 else ""
        then = "enough" if row.enough else f"{both(row.short_by)} short of enough"
        lines.append(
            f"  {row.name}: {row.today.verdict}, {gap}, touches {odds(row.today.chance_of_contact)}; "
            f"{cut}{share}; after the cut {both(row.after.least_clearance)}, {then}."
        )
    return lines


def _cells(option: Option) -> tuple[str, ...]:
    """Name, gap, chance, depth and litres."""
    gap = NOTHING if math.isnan(option.clearance) else f"gap {both(option.clearance)}"
    chance = NOTHING if math.isnan(option.chance) else f"touches {odds(option.chance)}"
    if option.forbids:  # no measure to take to a slab that is left alone
        return option.name, gap, chance, "", ""
    laid = option.volume < 0
    size = f"{millimetres(option.depth, 0)} {'thick' if laid else 'deep'}" if option.depth > 0 else ""
    litres = f"{abs(option.volume) * 1000:.0f} litres {'laid' if laid else 'out'}" if option.volume else ""
    return option.name, gap, chance, size, litres


def odds(chance: float) -> str:
    """A chance in few words: "1 in 30", "29 in 30", "under 1 in 1,000"."""
    if chance < 0.001:
        return "under 1 in 1,000"
    if chance > 0.999:
        return "almost surely"
    many = max(round(1 / min(chance, 1 - chance)), 2)
    return f"{1 if chance <= 0.5 else many - 1} in {many}"


def _places(report: Report, option: Option) -> str:
    """Where its line runs, in the scan's own coordinates."""
    assert option.line is not None
    start, end = (report.plan_point(p) for p in option.line)
    unit = report.scan.frame.unit
    return f"line = [[{start[0]:.2f}, {start[1]:.2f}], [{end[0]:.2f}, {end[1]:.2f}]] ({unit}, as in the scan)"


def cure(report: Report) -> str:
    """What works instead of grinding, with its numbers, or what came nearest; empty where nothing was
    tried.
    """
    tried = [o for o in report.options if o.kind not in NO_CURE and not o.forbids]
    works = next((o for o in tried if o.works), None)
    if works is not None:
        return f"What works: {works.name} ({_figures(works)})."
    if not tried:
        return ""
    best = max(tried, key=lambda o: o.enough)
    barred = any(o.forbids for o in report.options)
    but = "that leaves the slab alone" if barred else "but a rebuilt bay"
    return f"Of what was tried nothing {but} does it; best is: {best.name} ({_figures(best)})."


def _figures(option: Option) -> str:
    depth = f"{both(option.depth)} {'thick' if option.volume < 0 else 'deep'}, " if option.depth > 0 else ""
    litres = f"{abs(option.volume) * 1000:.0f} litres, " if option.volume else ""
    return f"{depth}{litres}leaves {both(option.clearance)}, touches {odds(option.chance)}"
