"""What may be answered of slab, owner and permit: closed choices, and who or what can know each of them.

A note may stand beside every answer in the job file; nothing reads it.
"""

from __future__ import annotations

from collections.abc import Mapping
from enum import StrEnum


class SlabKind(StrEnum):
    """What the slab is; the first two lie on the ground all over."""

    PLAIN = "plain concrete"
    REINFORCED = "reinforced concrete"
    POST_TENSIONED = "post-tensioned"
    SUSPENDED = "suspended"
    PRECAST = "precast"
    SCREED_OR_TILES = "screed or tiles"
    OTHER = "other"
    UNKNOWN = "unknown"


class YesNo(StrEnum):
    """Post-tensioned, suspended, the owner's permission."""

    YES = "yes"
    NO = "no"
    UNKNOWN = "unknown"


class InSlab(StrEnum):
    """Heating, conduit: none, found and marked on the slab, there but nobody knows where, or not known."""

    NO = "no"
    LOCATED = "located"
    NOT_LOCATED = "not located"
    UNKNOWN = "unknown"


class Source(StrEnum):
    """Who or what says so."""

    DRAWING = "drawing"
    ENGINEER = "engineer"
    OWNER = "owner in writing"
    COVERMETER = "covermeter"
    RADAR = "radar"
    THERMAL_CAMERA = "thermal camera"
    LOCATING_SERVICE = "locating service"
    DRILLED = "drilled"
    EDGE = "edge"
    GUESS = "guess"
    UNKNOWN = "unknown"


class Method(StrEnum):
    """How concrete is taken off, in one order of work."""

    DOTS = "dots and contours"
    BOARD = "board and blocks"
    MACHINE = "machine, then finish"


class Permit(StrEnum):
    """Of the authority that owns the ground, or whose rules hold there."""

    GRANTED = "granted"
    NOT_NEEDED = "not needed"
    ASKED = "asked"
    REFUSED = "refused"
    UNKNOWN = "unknown"


class Asked(StrEnum):
    """What the release asks, by its key in the job file."""

    KIND = "slab.kind"
    POST_TENSIONED = "slab.post_tensioned"
    HEATING = "slab.heating"
    CONDUIT = "slab.conduit"
    SUSPENDED = "slab.suspended"
    PERMISSION = "slab.permission"
    THICKNESS = "slab.thickness"
    STEEL = "slab.steel_depth"
    PLACE = "site.place"
    GROUND = "site.ground"
    PERMIT = "site.permit"


class Per(StrEnum):
    """What a price is for one of."""

    HOUR = "hour"
    DAY = "day"
    LITRE = "litre"
    KG = "kg"
    BAG = "bag"
    SET = "set"  # a blade, or a set of cups or cutters
    JOB = "job"


class Over(StrEnum):
    """What was located under a keep area."""

    HEATING = "heating"
    CONDUIT = "conduit"


NOBODY = (None, Source.GUESS, Source.UNKNOWN)  # a source that is none
_BUILT = frozenset({Source.DRAWING, Source.ENGINEER, Source.RADAR})  # knows how the slab was made
_FINDS = frozenset({Source.COVERMETER, Source.RADAR, Source.LOCATING_SERVICE})
# Who can know an answer (None: a length that was given). Common practice, no source. A covermeter misses
# plastic, so it may find a pipe but never say that there is none; a thermal camera sees what is warm.
SETTLED_BY: Mapping[tuple[Asked, StrEnum | None], frozenset[Source]] = {
    (Asked.POST_TENSIONED, YesNo.NO): _BUILT,
    (Asked.SUSPENDED, YesNo.NO): _BUILT,
    (Asked.HEATING, InSlab.NO): _BUILT | {Source.OWNER, Source.THERMAL_CAMERA},
    (Asked.HEATING, InSlab.LOCATED): _FINDS | {Source.THERMAL_CAMERA},
    (Asked.CONDUIT, InSlab.NO): _BUILT | {Source.LOCATING_SERVICE},
    (Asked.CONDUIT, InSlab.LOCATED): _FINDS,
    (Asked.PERMISSION, YesNo.YES): frozenset({Source.OWNER}),
    (Asked.THICKNESS, None): _BUILT | {Source.DRILLED, Source.EDGE},
    (Asked.STEEL, None): _BUILT | {Source.COVERMETER},
}


def settled(asked: Asked, answer: StrEnum | None, source: Source | None) -> bool:
    """Whether somebody who can know that answer gave it."""
    return source is not None and source in SETTLED_BY.get((asked, answer), ())


def who_can_know(asked: Asked, answer: StrEnum | None) -> tuple[Source, ...]:
    """Who can settle that answer, in the order of ``Source``."""
    return tuple(source for source in Source if source in SETTLED_BY[asked, answer])
