"""One line on what a scan is worth for this job: will it carry a verdict, will it carry a depth to cut?"""

from __future__ import annotations

import math

from crestcut.scan import COARSE as ROUNDED
from crestcut.scan import (
    HOPELESS,
    THIN,
    Health,
    Scan,
    crest_rounding,
    disagreement,
    no_slab,
    rounded,
    settles,
)

FINE = 0.0065  # m: about half of a usual 1/2 in of clearance; three phone walks reach it, one does not
COARSE = 0.020  # m: beyond it even a plain contact may go unnoticed (common practice, no source)
NO_USE = "no use"
MOSTLY = 0.75  # share of the area in lawn, gravel or cobbles from which there is no slab to drive on
TWO_LAYERS = 0.10  # share of the area where two passes disagree, from which nothing finer can be told


def grade(scan: Scan, health: Health, scanner: str | None = None) -> tuple[str, str]:
    """(good, fair, weak or no use; what that means for a low vehicle on this slab).

    scanner : as asked for on the command line, None where unknown, which counts as the worst.
    """
    edges = [f.mesh_edge for f in scan.files if f.mesh_edge is not None]
    if nothing := no_slab(scan, health.extent[:2], health.density_median):
        return NO_USE, f"{nothing}; scan the slab as 'look --how' says"
    if health.rough_share > MOSTLY:
        return NO_USE, "no slab here: nearly all of it is as rough as lawn, gravel or cobbles"
    if not edges and health.density_median < HOPELESS:
        return NO_USE, "far too few points to see a crest; scan again as 'look --how' says"
    if (quantum := max(f.quantum for f in scan.files)) > ROUNDED:
        return (NO_USE if quantum > COARSE else "weak"), rounded(quantum)
    if disagreement(scan.passes) is not None:
        return "weak", "its stations disagree, see the note; register them again and export the scan anew"
    # What is wrong with one walk is not what is wrong with the next: repeats average it.
    walks = math.sqrt(max(len(scan.files), 1))
    within = settles(scanner, health.density_median, math.nan if edges else health.noise) / walks
    if edges:
        within = math.hypot(within, crest_rounding(max(edges)))
    if within > COARSE:
        return "weak", "may show which end meets the ground, no more; scan again as 'look --how' says"
    if health.two_layers > TWO_LAYERS:
        return "weak", "two passes disagree; it may find the place, but scan again in one slow walk"
    if not edges and health.density_median < THIN:
        return "weak", "finds a plain contact, not a near one; walk it again, slower and in closer lanes"
    if edges:
        return "fair", "finds what touches and where; a mesh rounds the crest, so never a depth to cut"
    if within <= FINE:
        return "good", "carries a verdict; check a depth to cut by hand in one place before cutting to it"
    return "fair", "finds what touches and where; a depth to cut wants hand measurements beside it"
