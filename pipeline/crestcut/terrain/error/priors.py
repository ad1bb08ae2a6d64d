"""What to expect of a scanner before its own data say anything: stated, never hidden."""

from __future__ import annotations

import math
from dataclasses import dataclass


@dataclass(frozen=True)
class Prior:
    """Usual error of one pass over a slab: warp and patch (1 sd, m), the warp's half-covariance length (m),
    on what grounds, and how much its single points scatter at most (1 sd, m)."""

    warp: float
    warp_length: float
    patch: float
    patch_length: float
    grounds: str
    white: float = math.inf


_PRACTICE = "common practice, no source"
PRIORS: dict[str, Prior] = {
    # halves of one walk over a real concrete slab: 7.7 mm sd between them, 2.0 mm between even and odd frames
    "phone": Prior(0.0050, 0.40, 0.0013, 0.10, "one real slab walked with a phone"),
    "photogrammetry": Prior(0.0040, 0.80, 0.0012, 0.10, _PRACTICE),
    "terrestrial": Prior(0.0010, 1.00, 0.0006, 0.10, _PRACTICE, 0.004),
    "total-station": Prior(0.0007, 2.00, 0.0005, 0.10, _PRACTICE, 0.003),
}
UNKNOWN = "phone"  # the worst of them stands for a scanner nobody named
# m: what a scanning app's own mesh adds by smoothing and triangles; 5.3 mm sd to the cloud on the same slab
MESH_PATCH = 0.0030


def prior_for(scanner: str | None, mesh_edge: float | None = None) -> tuple[Prior, str]:
    """The prior and the phrase that names it. ``mesh_edge``: median triangle edge of a mesh scan, m."""
    kind = scanner if scanner in PRIORS else UNKNOWN
    prior = PRIORS[kind]
    phrase = f"prior for {kind} scans ({prior.grounds})"
    if scanner is None:
        phrase = f"prior for a scanner not named, taken as {kind} ({prior.grounds})"
    if mesh_edge is not None:
        patch = (prior.patch**2 + MESH_PATCH**2) ** 0.5
        prior = Prior(
            prior.warp, prior.warp_length, patch, max(prior.patch_length, 2 * mesh_edge), prior.grounds,
            prior.white,
        )  # fmt: skip
        phrase += ", a mesh smoothed by its app"
    return prior, phrase
