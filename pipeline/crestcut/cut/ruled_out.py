"""Slabs that nobody cuts, drills or fixes into on this program's word, and whom to ask instead."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum

from crestcut.job import Asked, InSlab, Keep, Over, Slab, SlabKind, YesNo, settled


class Forbids(StrEnum):
    """What lies in the way of any tool."""

    POST_TENSIONED = "post-tensioned"
    SUSPENDED = "suspended"
    PRECAST = "precast"
    HEATING = "heating not located"
    CONDUIT = "conduit not located"


UNLOCATED = {Over.HEATING: Forbids.HEATING, Over.CONDUIT: Forbids.CONDUIT}


@dataclass(frozen=True)
class Hazard:
    """why : what the slab is or holds, and what follows.  whom : who can say more.  asked : the key of it."""

    why: str
    whom: str
    asked: Asked


_ENGINEER = "a structural engineer, who alone may release any work on it"
HAZARDS: dict[Forbids, Hazard] = {
    Forbids.POST_TENSIONED: Hazard(
        "the slab is post-tensioned: a nicked tendon can burst out and kill; only an engineer of record may"
        " release this",
        _ENGINEER,
        Asked.POST_TENSIONED,
    ),
    Forbids.SUSPENDED: Hazard(
        "the slab is suspended: its top is part of what carries it; a structural engineer must release any"
        " cut",
        _ENGINEER,
        Asked.SUSPENDED,
    ),
    Forbids.PRECAST: Hazard(
        "the slab is precast: its strands or wires may lie anywhere, and it spans; a structural engineer must"
        " release any cut",
        _ENGINEER,
        Asked.KIND,
    ),
    Forbids.HEATING: Hazard(
        "there are heating pipes or cables in the slab and they are not located: have them found and marked,"
        ' and draw each as a no-cut keep area with over = "heating"',
        "the owner and whoever laid it; a thermal camera with the heating on, or radar, shows where it runs",
        Asked.HEATING,
    ),
    Forbids.CONDUIT: Hazard(
        "there are conduits, cables or water pipes in the slab and they are not located: have them found and"
        ' marked, and draw each as a no-cut keep area with over = "conduit"',
        "the owner, an electrician and the utility locating service",
        Asked.CONDUIT,
    ),
}


def forbidden(slab: Slab, keeps: Sequence[Keep] = ()) -> tuple[Forbids, ...]:
    """What forbids to cut, drill or fix into it; empty where nothing that was answered does.

    Heating and conduit count as located only with a keep area over them in which nothing is cut.
    """
    found = []
    if slab.kind == SlabKind.POST_TENSIONED or slab.post_tensioned == YesNo.YES:
        found.append(Forbids.POST_TENSIONED)
    if slab.kind == SlabKind.SUSPENDED or slab.suspended == YesNo.YES:
        found.append(Forbids.SUSPENDED)
    if slab.kind == SlabKind.PRECAST:
        found.append(Forbids.PRECAST)
    for over, answer in ((Over.HEATING, slab.heating), (Over.CONDUIT, slab.conduit)):
        if answer == InSlab.NOT_LOCATED or (answer == InSlab.LOCATED and not kept(keeps, over)):
            found.append(UNLOCATED[over])
    return tuple(found)


def kept(keeps: Sequence[Keep], over: Over) -> bool:
    """Whether some keep area lies over what was located, and nothing is cut in any such area."""
    mine = [keep for keep in keeps if keep.over == over]
    return bool(mine) and all(keep.deepest <= 0 for keep in mine)


def not_into_it(found: Sequence[Forbids]) -> str:
    """Why this slab is left alone, and whom to ask: a clause."""
    whom = dict.fromkeys(HAZARDS[f].whom for f in found)
    return f"not on this slab ({', '.join(found)}); ask {'; '.join(whom)}"


def not_known(slab: Slab) -> bool:
    """Whether something that would forbid it has not been ruled out by somebody who can know."""
    answers = (
        (Asked.POST_TENSIONED, slab.post_tensioned, slab.post_tensioned_from),
        (Asked.SUSPENDED, slab.suspended, slab.suspended_from),
        (Asked.HEATING, slab.heating, slab.heating_from),
        (Asked.CONDUIT, slab.conduit, slab.conduit_from),
    )
    if slab.kind in (None, SlabKind.UNKNOWN):
        return True
    return not all(settled(asked, answer, source) for asked, answer, source in answers)
