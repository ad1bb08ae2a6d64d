"""Surface and scan -> the slab judged apart from the scan's own error."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from crestcut.base.memory import let_go
from crestcut.job import Settings
from crestcut.scan import Scan
from crestcut.terrain.doubts import Drive, driven
from crestcut.terrain.error.estimate import estimate_error
from crestcut.terrain.records import Surface
from crestcut.terrain.slab.behind import YARD, slab_behind


def judged_apart(
    scan: Scan,
    surface: Surface,
    drives: Sequence[Drive],
    scanner: str | None,
    flatness: float | None,
    settings: Settings,
) -> Surface:
    """The slab's mean for heights, and what else it may be in its error, with what is doubtful of the scan
    for those who drive there.

    surface : as ``build_surface`` fits it to ``scan``.  scanner : its kind, None where not known.
    flatness : F-number of the floor's class, None where none is known.
    """
    let_go()  # of what fitting the surface took
    error = estimate_error(scan, surface.height, scanner)
    error = replace(error, doubts=driven(error.doubts, scan, drives))
    fine = replace(YARD.fine, tiles=settings.tiles, rounds=settings.rounds, pairs=(settings.draws + 1) // 2)
    found = slab_behind(surface, error, flatness, settings.seed, replace(YARD, fine=fine))
    let_go()
    return found
