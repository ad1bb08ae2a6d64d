"""From a scan's figures to plain words on what it could decide about a low vehicle on a slab."""

from __future__ import annotations

import math

from crestcut.scan.records import Scan

# Systematic error of one scan, m sd: it does not average away. Phone: measured on a real slab between the two
# halves of one walk (5.4 mm a half). The others: common practice, no source.
SYSTEMATIC = {"phone": 0.0054, "photogrammetry": 0.006, "terrestrial": 0.002, "total-station": 0.0015}
_STRICT = 0.006  # m: an unknown scanner counts as the worst
_PATCH = 0.10  # m: points nearer than this to one another share much of their error
THIN, HOPELESS = 300.0, 30.0  # points per m2
_SITE = 40.0  # m: points so few over more than this are a survey of a whole site, from the air as a rule
_CREST_BREAK = 0.20  # rise over run, the total break that roundings are quoted for


def settles(scanner: str | None, density: float, noise: float) -> float:
    """Metres about zero within which a gap from this scan says neither 'clears' nor 'touches' (95 %)."""
    systematic = SYSTEMATIC.get(scanner or "", _STRICT)
    random = 0.0 if math.isnan(noise) else noise / math.sqrt(max(density * _PATCH**2, 1.0))
    return 1.96 * math.hypot(systematic, random)


def crest_rounding(edge: float, grade_break: float = _CREST_BREAK) -> float:
    """How far triangles of side ``edge`` (m) may cut off a sharp crest of that total break (rise over run),
    metres.

    A chord of length e laid evenly over the crest passes (e/2)(k/2) under it.
    """
    return edge * grade_break / 4.0


def no_slab(scan: Scan, plan: tuple[float, float], density: float) -> str | None:
    """Why there is no slab in a scan, a plain sentence; None where there may be one, and for every mesh.

    plan : extent along x and y, m.  density : points per m2.  Too few points over a few metres are a slab
    scanned too thinly; over a whole site there is nothing in them that is the size of a slab.
    """
    if any(f.mesh_edge is not None for f in scan.files) or density >= HOPELESS or max(plan) < _SITE:
        return None
    return (
        f"no slab here: points about {_in_metres(density**-0.5)} apart over {_in_metres(max(plan))},"
        " as in a survey from the air"
    )


def _in_metres(length: float) -> str:
    return f"{length:.1f} m" if length < 10 else f"{length:,.0f} m"


def could_decide(
    scan: Scan,
    scanner: str | None,
    plan: tuple[float, float],
    density: float,
    low_density: float,
    noise: float,
) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """(what it could decide, notes), plain sentences. ``plan``: extent along x and y, metres."""
    edges = [f.mesh_edge for f in scan.files if f.mesh_edge is not None]
    if not edges and density < HOPELESS:
        return (f"nothing about a slab: {density:,.3g} points per m2, thousands are needed",), ()
    within = settles(scanner, density, noise)
    if edges:
        within = math.hypot(within, crest_rounding(max(edges)))
    decides = [
        "what kind of contact it is (crest, nose, tail), where, and which part of the vehicle meets it",
        f"'clears' or 'touches' where the gap is more than about {math.ceil(within * 1000)} mm from nothing",
    ]
    if len(scan.files) == 1 and within > 0.006:
        decides.append(
            "not, by itself, a depth of cut to the millimetre: plan on one or two hand measurements"
        )
    notes = _notes(scan, scanner, plan, density, low_density, edges)
    return tuple(decides), notes


def _notes(
    scan: Scan,
    scanner: str | None,
    plan: tuple[float, float],
    density: float,
    low_density: float,
    edges: list[float],
) -> tuple[str, ...]:
    notes = []
    if edges:
        rounding = crest_rounding(max(edges)) * 1000
        notes.append(
            f"a mesh with triangles of {max(edges) * 1000:.0f} mm may have rounded a sharp crest of 20 %"
            f" by {rounding:.1f} mm: export the raw points if the app can"
        )
    elif density < THIN:
        notes.append(f"thin: {density:,.0f} points per m2; walk slower and lower, in closer lanes")
    elif low_density < THIN / 3:
        notes.append(f"uneven: a twentieth of the ground has fewer than {low_density:,.0f} points per m2")
    if max(plan) < 5.0:
        notes.append(f"short: {max(plan):.1f} m; a wheelbase of ground is needed before and after the crest")
    if len(scan.files) == 1:
        notes.append("one scan: two short repeats would show how far its heights can be trusted")
    if any(f.unit_guessed for f in scan.files):
        others = sorted({u for f in scan.files for u in f.unit_alternatives})
        also = f"; in {' or '.join(others)} it would be a slab too" if others else ""
        notes.append(f"the unit is a guess: check one length on the slab with a tape{also}")
    if scanner == "photogrammetry":
        notes.append("photogrammetry has no scale of its own: check two lengths that cross with a tape")
    return tuple(notes)
