"""What a scan shows besides the ground, in words with places in the scan's own coordinates."""

from __future__ import annotations

from crestcut.base.units import both, millimetres
from crestcut.scan import Frame
from crestcut.terrain.ground.seen import Layers, Thing

HANGS = 0.25  # m over the ground: what begins higher hangs over it
SEEN_UNDER = 0.5  # share of the ground under a thing that was measured all the same


def about(frame: Frame, xy: tuple[float, float]) -> str:
    """A place in the scan's own plan coordinates and unit."""
    x, y = frame.site_to_plan(xy)
    digits = 2 if frame.unit in ("m", "ft", "us-ft") else 0
    return f"x {x:,.{digits}f}, y {y:,.{digits}f} {frame.unit}"


def thing_words(thing: Thing, frame: Frame) -> str:
    """What stands or hangs there: how high, how large, where, and whether the ground under it was seen."""
    how = "hangs over the ground" if thing.lowest > HANGS else "stands on the ground"
    if thing.unseen < SEEN_UNDER:
        under = "the ground under it was seen"
    else:
        under = "the ground under it is not measured"
    return (
        f"something {high(thing.height)} high {how} over {thing.area:.2f} m2, "
        f"{thing.size[0]:.2f} x {thing.size[1]:.2f} m about {about(frame, (thing.x, thing.y))}; {under}"
    )


def layers_words(layers: Layers, frame: Frame) -> str:
    """Where a patch is there twice, and how far apart."""
    return (
        f"the ground is there twice, {both(layers.apart, 0)} apart, over {layers.area:.2f} m2 about "
        f"{about(frame, (layers.x, layers.y))}: two passes do not agree there"
    )


def rough_words(roughness: float) -> str:
    """Why ground is no slab."""
    return (
        f"no slab: the ground goes up and down by {millimetres(roughness, 0)} (1 sd) from one hand's breadth"
        " to the next, as lawn, gravel and cobbles do"
    )


def high(height: float) -> str:
    """A thing's height."""
    return f"{height:.2f} m" if height >= 0.1 else both(height, 0)
