"""Options and vehicles in plain words: tables for the terminal, and the option that works for the first
line.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from crestcut.alternatives import Answer, Option
from crestcut.base.units import both, litres, millimetres
from crestcut.chance import IN_USE, WALKING, one_in
from crestcut.study import Report, VehicleRow

# what is no answer to 'then what, if not grinding?'
NO_CURE = ("as it is", "slower", "loose boards", "cut", "new bay")
MARKS = {Answer.BOTH: "works", Answer.WALKING_PACE: "slowly", Answer.NO: "no"}
RANKED = "by what it costs in hours, material, disposal and hire"
SLOWLY = " at walking pace, but not in use"


def option_lines(report: Report) -> list[str]:
    """What works first, among it what costs least first, in use too or at walking pace alone; then what does
    not. Empty where there is nothing to choose.

    Two lines an option: what decides it stands in the second.
    """
    if len(report.options) < 2:
        return []
    wanted = report.job.wanted.confidence
    lines = [
        f"What could be done, {RANKED}; 'works': {wanted * 100:g} % sure of the gap asked for"
        f" {WALKING} (the gap named first), and as sure that nothing touches {IN_USE}; 'slowly': the first"
        " alone:"
    ]
    rows = [_cells(o, wanted) for o in report.options]
    widths = [max(len(cells[k]) for cells in rows) for k in range(len(rows[0]))]
    for option, cells in zip(report.options, rows, strict=True):
        size = f"  {option_size(option)}" if _sized(option) else ""
        lines.append(f"  {MARKS[option.answer]:6}  {option.name}{size}")
        if not math.isnan(option.clearance):
            text = "  ".join(cell.ljust(width) for cell, width in zip(cells, widths, strict=True))
            lines.append(f"          {text.rstrip()}")
    lines += [f"  {o.name}: {o.needs}." for o in report.options if o.works and o.kind != "as it is"]
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
        share = f", its part {litres(row.volume)}" if row.volume > 0 else ""
        then = "enough" if row.enough else f"{both(row.short_by)} short of enough"
        lines.append(
            f"  {row.name}: {row.today.verdict}, {gap}, touches {odds(row.today.chance_of_contact)}; "
            f"{cut}{share}; after the cut {both(row.after.least_clearance)}{_in_use(row)}, {then}."
        )
    return lines


def _in_use(row: VehicleRow) -> str:
    used = row.after_in_use
    if used is None:
        return ""
    return f" {WALKING}, {both(used.least_clearance)} {IN_USE} (touches {odds(used.chance_of_contact)})"


def _cells(option: Option, wanted: float) -> tuple[str, ...]:
    """Gap, how sure it is enough and chance of a touch at walking pace; gap and chance in use."""
    if math.isnan(option.clearance):
        return ("",) * 5
    before, share = enough_words(option.works, option.enough, wanted)
    return (
        f"gap {both(option.clearance)}",
        f"{before}{share} sure",
        f"touches {odds(option.chance)};",
        f"{IN_USE} {both(option.in_use)}",
        f"touches {odds(option.in_use_chance)}",
    )


def _sized(option: Option) -> bool:
    """Whether it takes a depth or litres, and may be made at all."""
    return not option.forbids and (option.depth > 0 or option.volume != 0)


def option_size(option: Option) -> str:
    """ "28.7 mm deep, 15.9 litres out"; empty where nothing is cut or laid."""
    laid = option.volume < 0
    said = [f"{millimetres(option.depth)} {'thick' if laid else 'deep'}"] if option.depth > 0 else []
    said += [f"{litres(abs(option.volume))} {'laid' if laid else 'out'}"] if option.volume else []
    return ", ".join([*said, *([hours_of(option)] if hours_of(option) else [])])


def hours_of(option: Option) -> str:
    """ "9.9 to 23.5 h of work"; empty where it is nothing, or not known."""
    low, high = option.hours
    return f"{low:.1f} to {high:.1f} h of work" if high > 0 else ""


def enough_words(works: bool, sure: float, wanted: float) -> tuple[str, str]:
    """What stands before the chance that every gap is what was asked for, and that chance.

    A cut is called enough by the margin it was planned with for ``wanted``; the share is counted once more on
    the finished surface and may come out on the other side of ``wanted``. Then both are said for what they
    are.
    """
    if works == (sure >= wanted - 1e-9):
        return "", sure_share(sure)
    if works:
        return f"planned for {wanted * 100:g} %; counted again once cut: ", sure_share(sure)
    return f"the margin planned for {wanted * 100:g} % is not kept; counted again: ", sure_share(sure)


def sure_share(value: float) -> str:
    """A probability that something is enough, as a percentage: never rounded up to what was asked for."""
    tenths = math.floor(value * 1000 + 1e-6)
    return "under 0.1 %" if tenths < 1 else "over 99.9 %" if value > 0.999 else f"{tenths / 10:g} %"


def odds(chance: float) -> str:
    """A chance in few words: "1 in 30", "29 in 30", "under 1 in 1,000"."""
    if chance < 0.001:
        return "under 1 in 1,000"
    if chance > 0.999:
        return "almost surely"
    many = one_in(min(chance, 1 - chance))
    return f"{1 if chance <= 0.5 else many - 1} in {many}"


def _places(report: Report, option: Option) -> str:
    """Where its line runs, in the scan's own coordinates."""
    assert option.line is not None
    frame = report.scan.frame
    start, end = (frame.as_written(report.plan_point(p)) for p in option.line)
    return f"line = [{start}, {end}] ({frame.words})"


def cure(report: Report) -> str:
    """What works instead of grinding, with its numbers, or what came nearest; empty where nothing was
    tried.
    """
    tried = [o for o in report.options if o.kind not in NO_CURE and not o.forbids]
    works = cheapest(tried)
    if works is not None:
        how = SLOWLY if works.answer is Answer.WALKING_PACE else ""
        return f"What works{how}: {works.name} ({_figures(works)})."
    if not tried:
        return ""
    best = max(tried, key=lambda o: o.enough)
    barred = any(o.forbids for o in report.options)
    but = "that leaves the slab alone" if barred else "but a rebuilt bay"
    return f"Of what was tried nothing {but} does it; best is: {best.name} ({_figures(best)})."


def cheapest(options: Sequence[Option]) -> Option | None:
    """The cheapest that works in use too; without one the cheapest that does at walking pace."""
    works = [o for o in options if o.works and o.kind != "loose boards"]  # a trial, no cure
    return next((o for o in works if o.works_in_use), works[0] if works else None)


def _figures(option: Option) -> str:
    depth = f"{both(option.depth)} {'thick' if option.volume < 0 else 'deep'}, " if option.depth > 0 else ""
    much = f"{litres(abs(option.volume))}, " if option.volume else ""
    left = f"leaves {both(option.clearance)} {WALKING}, touches {odds(option.chance)}"
    return f"{depth}{much}{left}; {both(option.in_use)} {IN_USE}, touches {odds(option.in_use_chance)}"
