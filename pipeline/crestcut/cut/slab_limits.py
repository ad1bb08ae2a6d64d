"""How deep the slab itself allows a cut: its thickness, its steel, the depth that was wished for.

The rules are a cautious practice of this program (no code gives a depth that may be ground off a slab on
ground): a quarter of the thickness is where a slab is *made* to crack by a sawn joint (ACI 302.1R-04), so it
is refused; an eighth is half of that.
"""

from __future__ import annotations

from dataclasses import dataclass

from crestcut.base.errors import CrestcutError
from crestcut.base.units import both, litres, millimetres
from crestcut.job import CutWish, Site, Slab, Source

DEFAULT_DEEPEST = 0.013  # m: common practice, no source
CAREFUL_SHARE = 1 / 8  # of the thickness: deeper asks for a drilled thickness
STOP_SHARE = 1 / 6  # of the thickness: deeper, price replacing the bay
REFUSED_SHARE = 1 / 4  # of the thickness: where a sawn joint makes a slab crack (ACI 302.1R-04)
# of the thickness: mesh lies 'in the middle to the upper third' (Florida Building Code 1909.3)
MESH_SHARE = 1 / 3
PLACING = 0.010  # m: steel lies this much off its drawing (common practice, no source)
ROUGHLY = {
    Source.DRAWING: ("drawn", "its placing"),
    Source.ENGINEER: ("given by an engineer", "its placing"),
    Source.RADAR: ("found by radar", "its error"),
}
CONCRETE_DENSITY = 2400.0  # kg/m3, normal-weight concrete, 150 lb/ft3 (ACI 318-19)
BY_HAND_LITRES = 10.0  # more than this by hand is work for a machine (common practice, no source)


@dataclass(frozen=True)
class SlabLimit:
    """The deepest cut the slab allows, metres, and what says so in words.

    rules : every rule that applied, (words, metres), the one that binds first.
    asks_drilling : the depth asked for is only allowed once the thickness was drilled there.
    """

    depth: float
    reason: str
    rules: tuple[tuple[str, float], ...]
    asks_drilling: bool = False


def deepest_allowed(wish: CutWish, slab: Slab) -> SlabLimit:
    """The least of the wish, the thickness rule and the steel rule.

    With the thickness unknown neither the eighth nor the place of the mesh can be told: the plan is drawn to
    the wish (or 13 mm) and the release refuses the cut until somebody knows.
    Raises CrestcutError for a ``deepest`` over a quarter of the thickness.
    """
    rules = [rule for rule in (_wish_rule(wish, slab), _steel_rule(slab)) if rule is not None]
    rules.sort(key=lambda rule: rule[1])
    reason, depth = rules[0]
    return SlabLimit(depth, reason, tuple(rules), asks_drilling(wish, slab))


def asks_drilling(wish: CutWish, slab: Slab) -> bool:
    """An explicit ``deepest`` over an eighth of the thickness (or over 13 mm while it is unknown) needs a
    drilled thickness.
    """
    if wish.deepest is None or slab.thickness_from == Source.DRILLED:
        return False
    careful = DEFAULT_DEEPEST if slab.thickness is None else slab.thickness * CAREFUL_SHARE
    return wish.deepest > careful + 1e-9


def _wish_rule(wish: CutWish, slab: Slab) -> tuple[str, float]:
    """The depth asked for, or the safe default."""
    if wish.deepest is not None:
        refuse_too_deep(wish.deepest, slab.thickness)
        return f"deepest {millimetres(wish.deepest, 0)} as asked for", wish.deepest
    if slab.thickness is None:
        return "deepest 13 mm, the default; the thickness is not known", DEFAULT_DEEPEST
    share = REFUSED_SHARE if slab.thickness_from == Source.DRILLED else CAREFUL_SHARE
    if slab.thickness * share < DEFAULT_DEEPEST:
        words = "a quarter" if slab.thickness_from == Source.DRILLED else "an eighth"
        return f"{words} of the slab's {millimetres(slab.thickness, 0)}", slab.thickness * share
    return "deepest 13 mm, the default", DEFAULT_DEEPEST


def refuse_too_deep(deepest: float, thickness: float | None) -> None:
    """Raise CrestcutError for a depth over a quarter of a known thickness."""
    if thickness is not None and deepest > thickness * REFUSED_SHARE + 1e-9:
        raise CrestcutError(
            f"{both(deepest, 0)} is over a quarter of the slab's {millimetres(thickness, 0)}: a slab is made"
            " to crack there",
            "[cut] deepest",
            f"ask for {millimetres(thickness * REFUSED_SHARE, 0)} at most, or price replacing the bay",
        )


def steel_depth(slab: Slab) -> tuple[float, str] | None:
    """How far down the uppermost steel must be taken to lie, metres, and why; None where nothing lets one
    tell.

    Measured with a covermeter: as measured. From a drawing or an engineer: 10 mm higher, steel is walked on
    before the pour; by radar likewise, whose depths hang on the concrete's moisture.
    Not known: mesh at a third of the thickness less 10 mm; a depth that nobody measured never makes this
    deeper.
    """
    if slab.steel_depth is not None and slab.steel_from == Source.COVERMETER:
        return slab.steel_depth, f"steel measured {millimetres(slab.steel_depth, 0)} down"
    if slab.steel_depth is not None and slab.steel_from in ROUGHLY:
        how, less = ROUGHLY[slab.steel_from]
        return (
            slab.steel_depth - PLACING,
            f"steel {how} {millimetres(slab.steel_depth, 0)} down, 10 mm less for {less}",
        )
    guessed = [] if slab.steel_depth is None else [slab.steel_depth]
    if slab.thickness is not None:
        guessed.append(slab.thickness * MESH_SHARE - PLACING)
    if not guessed:
        return None
    return min(guessed), f"steel not measured, taken to lie {millimetres(min(guessed), 0)} down"


def _steel_rule(slab: Slab) -> tuple[str, float] | None:
    steel = steel_depth(slab)
    if steel is None:
        return None
    return f"{steel[1]}, {millimetres(slab.keep_cover, 0)} kept over it", room_over_steel(slab) or 0.0


def room_over_steel(slab: Slab) -> float | None:
    """How deep may be cut with the cover kept over the steel, m; None where nothing lets one tell."""
    steel = steel_depth(slab)
    return None if steel is None else max(steel[0] - slab.keep_cover, 0.0)


def mass_of(volume: float) -> float:
    """Of normal concrete, kg, from m3."""
    return volume * CONCRETE_DENSITY


def stop_rules(slab: Slab, site: Site, deepest: float, volume: float) -> tuple[str, ...]:
    """Where replacing the bay should be priced instead: the rules that a cut ``deepest`` m deep and
    ``volume`` m3 large breaks.
    """
    said = []
    if slab.thickness is not None and deepest > slab.thickness * STOP_SHARE + 1e-9:
        said.append(f"deeper than a sixth of the slab's {millimetres(slab.thickness, 0)}")
    steel = steel_depth(slab)
    if steel is not None and deepest > steel[0] - slab.keep_cover + 1e-9:
        said.append(f"too near the steel: {steel[1]}")
    if volume * 1000 > BY_HAND_LITRES:
        said.append(f"{litres(volume)}: over {BY_HAND_LITRES:.0f} is not work for a hand tool")
    if site.ground == "public":
        said.append("public land: the authority that owns it decides, and usually does the work itself")
    return tuple(said)
