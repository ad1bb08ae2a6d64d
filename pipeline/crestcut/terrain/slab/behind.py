"""The slab behind a fitted scan: its heights and their doubt, by what concrete and scanners are like."""

from __future__ import annotations

from dataclasses import dataclass, replace

from crestcut.terrain.error.uneven import evened
from crestcut.terrain.records import ErrorModel, Known, Surface
from crestcut.terrain.slab.features import YARD as YARD_SHAPES
from crestcut.terrain.slab.features import Usual
from crestcut.terrain.slab.posterior import FINE, Fineness, judge
from crestcut.terrain.slab.split import ANY_FACTOR, ANY_WARP, USUAL_FLATNESS, FieldPriors, curvature_of

# 1 sd, as a factor, of the warp's size by what it is known from (common practice, no source)
FACTOR = {Known.REPEATS: 1.2, Known.WALK: 1.35, Known.NAMED: 1.5, Known.UNNAMED: ANY_FACTOR}
# chance that a scan is none of the kind named, or went wrong as no such scan does (common practice, no
# source): a phone's called terrestrial would otherwise make slabs as wavy as itself
DOUBT = {Known.REPEATS: 0.0, Known.WALK: 0.0, Known.NAMED: 0.03, Known.UNNAMED: 0.0}
FLATNESS_FACTOR = 2.0  # 1 sd as a factor: classes are for new floors, a yard is wider (common practice)
TOO_LITTLE = (
    "too little of the slab is measured to tell its waves from the scan's: heights are as scanned, with all "
    "of the scan's error on them"
)


@dataclass(frozen=True)
class Kind:
    """What is usual of slabs that a command looks at: median F_F and 1 sd of it as a factor where no class is
    known; what its shapes are; how finely they are judged."""

    flatness: float
    factor: float
    shapes: Usual = YARD_SHAPES
    fine: Fineness = FINE


YARD = Kind(USUAL_FLATNESS, FLATNESS_FACTOR)
# a floor is struck to a level and floated: its humps, steps and bends are of millimetres, and every other
# floor of 25 m2 has none (common practice, no source). With a yard's centimetres a phone's scan leaves some
# in all that a super-flat floor may be
FLOOR_SHAPES = Usual(0.001, 0.004, 0.004, 0.003, 0.003, 0.15, 0.04, 0.04, 0.1)
# a floor that is asked how flat it is may be from a worn workshop's to a super-flat one: F_F 10 to 150 lie
# within 1 sd, 6 and 250 within 1.4 (ACI 117 and trade practice, 12 to 100 and more, from memory). A flatter
# median would have a phone's scan meet 3 mm with nothing seen. F-numbers live on 12 in, which coarser tiles
# and nodes would smooth. An end beyond which one draw in forty lies hangs on the settings that are drawn
# there, so there are many of them
FLOOR = Kind(38.0, 4.0, FLOOR_SHAPES, Fineness(tiles=2400, lattice=0.10, rounds=34))


def priors_of(error: ErrorModel, flatness: float | None = None, usual: Kind = YARD) -> FieldPriors:
    """What slab and scan may be before a height is seen. flatness : as for ``slab_behind``."""
    warp = ANY_WARP if error.known is Known.UNNAMED else error.warp
    middle, factor = (flatness, FLATNESS_FACTOR) if flatness else (usual.flatness, usual.factor)
    return FieldPriors(
        curvature_of(middle), factor, warp, FACTOR[error.known], error.warp_length, DOUBT[error.known]
    )


def slab_behind(
    surface: Surface, error: ErrorModel, flatness: float | None = None, seed: int = 0,
    usual: Kind = YARD,
) -> Surface:  # fmt: skip
    """The surface with the slab's mean for heights and what else the slab may be in its error.

    error : of the scan.  flatness : F-number of the floor's class (ACI 117-10), None where none is known:
    then it is as ``usual``. Where too little is measured to tell them apart: heights as scanned, wrong by
    ``error``, and a note.
    """
    priors = priors_of(error, flatness, usual)
    if error.uneven is not None:
        even, rise = evened(surface.height, error.uneven), surface.top.values - surface.height.values
        surface, error = (
            replace(surface, height=even, top=even.like(even.values + rise)),
            replace(error, uneven=None),
        )
    found = judge(surface, error, priors, seed, usual.shapes, usual.fine)
    if found is None:
        return replace(surface, error=error, notes=(*surface.notes, TOO_LITTLE))
    slab, mean = found
    rise = surface.top.values - surface.height.values
    return replace(
        surface, height=mean, top=mean.like(mean.values + rise), scanned=surface.height,
        error=replace(error, slab=slab),
    )  # fmt: skip
