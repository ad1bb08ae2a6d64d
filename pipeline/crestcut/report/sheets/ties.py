"""Tape ties as the cells of a table."""

from __future__ import annotations

from crestcut.work import Ties


def tie_cells(ties: Ties | None, blank: str = "-") -> list[str]:
    """Two tapes as five cells: mark, metres, mark, metres, side; ``blank`` where no marks cross well."""
    if ties is None:
        return [blank] * 5
    return [ties.first, f"{ties.first_distance:.3f}", ties.second, f"{ties.second_distance:.3f}", ties.side]
