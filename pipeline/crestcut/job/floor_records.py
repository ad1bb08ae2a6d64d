"""A floor's job as the rest of the program sees it: SI, nothing resolved against a scan yet."""

from __future__ import annotations

from dataclasses import dataclass

from crestcut.job.records import Job, Point

REFERENCES = ("straightedge", "plane", "level")


@dataclass(frozen=True)
class FloorWish:
    """What is asked of a floor. At least one of gap, ff and fl is given.

    area : corners of what is judged; empty for all the slab that is found.  straightedge, gap : m; under a
    straightedge of that length, or for the references plane and level the most that a spot may stand over or
    lie under it.  ff, fl : ASTM E1155 numbers, at least.  reference : one of ``REFERENCES``.  datum : where a
    level floor is to be as high as it is; None: at the floor's median height.  name : of the class that was
    named.
    """

    area: tuple[Point, ...] = ()
    straightedge: float | None = None
    gap: float | None = None
    ff: float | None = None
    fl: float | None = None
    reference: str = "straightedge"
    datum: Point | None = None
    confidence: float = 0.95
    name: str = ""


@dataclass(frozen=True)
class FloorJob:
    """A floor's job file, checked.

    base : site, scan, slab, cut, marks, keeps and hand measurements as every other room takes them; it names
    no vehicle and no line of travel.
    """

    base: Job
    wish: FloorWish
