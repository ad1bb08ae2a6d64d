"""The slab behind a fitted scan: its heights and their doubt, by what concrete and scanners are like."""

from __future__ import annotations

from dataclasses import dataclass, replace

from crestcut.terrain.records import ErrorModel, Known, Surface
from crestcut.terrain.slab.averages import MOST
from crestcut.terrain.slab.posterior import LATTICE, judge
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
    known; tiles, and m between the nodes of waves: how finely they are judged."""

    flatness: float
    factor: float
    tiles: int = MOST
    lattice: float = LATTICE


YARD = Kind(USUAL_FLATNESS, FLATNESS_FACTOR)
# a floor that is asked how flat it is may be from a worn workshop's to a narrow aisle's: F_F 10 to 150 within
# 1.3 sd (common practice, no source); F-numbers live on 12 in, which coarser tiles and nodes would smooth
FLOOR = Kind(38.0, 3.0, 2400, 0.10)


def slab_behind(
    surface: Surface, error: ErrorModel, flatness: float | None = None, seed: int = 0,
    usual: Kind = YARD,
) -> Surface:  # fmt: skip
    """The surface with the slab's mean for heights and what else the slab may be in its error.

    error : of the scan.  flatness : F-number of the floor's class (ACI 117-10), None where none is known:
    then it is as ``usual``. Where too little is measured to tell them apart: heights as scanned, wrong by
    ``error``, and a note.
    """
    warp = ANY_WARP if error.known is Known.UNNAMED else error.warp
    middle, factor = (flatness, FLATNESS_FACTOR) if flatness else (usual.flatness, usual.factor)
    priors = FieldPriors(
        curvature_of(middle),
        factor,
        warp,
        FACTOR[error.known],
        error.warp_length,
        DOUBT[error.known],
    )
    found = judge(
        surface.height, surface.standard_error, surface.rollable, surface.breaks, priors,
        error.patch, error.patch_length, seed, most=usual.tiles, lattice=usual.lattice,
    )  # fmt: skip
    if found is None:
        return replace(surface, error=error, notes=(*surface.notes, TOO_LITTLE))
    slab, mean = found
    rise = surface.top.values - surface.height.values
    return replace(
        surface, height=mean, top=mean.like(mean.values + rise), scanned=surface.height,
        error=replace(error, slab=slab),
    )  # fmt: skip
