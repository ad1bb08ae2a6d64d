"""Housekeeping of a process that ends in seconds: seldom look for cycles of dead objects, not at the end."""

from __future__ import annotations

import atexit
import gc

SELDOM = 100_000  # new objects between two searches; the usual 700 cost a tenth of drawing and loading


def tidy_seldom() -> None:
    """Search for cycles seldom from now on, and not among the million objects that are left when it ends."""
    gc.set_threshold(SELDOM)
    atexit.register(gc.freeze)
