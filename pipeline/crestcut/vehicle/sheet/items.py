"""What the measuring sheet asks for: one letter a length, the same on the drawing, the boxes and the file."""

from __future__ import annotations

from dataclasses import dataclass

from crestcut.base.cautions import MEASURED_VEHICLE


@dataclass(frozen=True)
class Item:
    """One line of the sheet. ``key`` of the vehicle file it becomes, empty for a check only."""

    letter: str
    what: str
    how: str
    key: str
    needed: bool = True


ITEMS = (
    Item("A", "wheelbase, left side", "hub to hub, plumbed to the ground", "wheelbase"),
    Item("B", "wheelbase, right side", "the same on the other side", ""),
    Item("C", "front track", "middle of tread to middle of tread, on the ground", "front_track"),
    Item("D", "rear track", "the same at the rear", "rear_track"),
    Item("E", "front hub to ground", "hub's centre straight down, not half the tyre", "tyre_radius"),
    Item("F", "rear hub to ground", "the same at the rear", ""),
    Item("G", "tyre width", "across the tread", "tyre_width"),
    Item("H", "belly to ground", "between the wheels where it is mostly flat; cards", "belly_clearance"),
    Item("J", "front overhang", "front hub to the foremost point, along the ground", "front_overhang"),
    Item("K", "rear overhang", "rear hub to the rearmost point", "rear_overhang"),
    Item("M", "overall length", "foremost to rearmost point: checks A + J + K", "", False),
    Item("N", "width", "body, left to right, without mirrors", "width"),
    Item("P", "nose to ground", "lowest point ahead of the front wheels; cards", "", False),
    Item("Q", "nose, ahead of the front hub", "where P was measured", "", False),
    Item("R", "approach angle", "off the side photograph, in degrees: checks P, Q", "", False),
    Item(
        "S", "turning radius", "full lock: half the circle of the outer tyre's edge", "turning_radius", False
    ),
    Item("T", "tail to ground", "lowest point behind the rear wheels; cards", "", False),
    Item("U", "tail, behind the rear hub", "where T was measured", "", False),
    Item("V", "departure angle", "off the side photograph, in degrees: checks T, U", "", False),
    Item("W", "depth of tread", "at the least worn tyre", "tyre_tread", False),
    Item("X", "balance, only carts", "no springs: A x rear axle's weight / whole weight", "", False),
)
ANGLES = ("R", "V")  # degrees; all other letters are lengths
PART_ITEMS = (
    Item("a", "front edge", "front hub back to it; ahead of the hub: minus", "back"),
    Item("b", "rear edge", "front hub back to it", "back"),
    Item("c", "right edge", "middle line to it, rightwards; left of the line: minus", "across"),
    Item("d", "left edge", "middle line to it, leftwards; right of the line: minus", "across"),
    Item("e", "height, front", "ground to its front edge; cards", "clearance"),
    Item("f", "height, rear", "ground to its rear edge; leave empty if level", "clearance", False),
)
CAUTIONS = tuple(caution.line for caution in MEASURED_VEHICLE)
STEPS = (
    (
        "Flat ground",
        "Lay a straightedge through the tyre contacts, along and across. Light under it of more than 2 mm: "
        "find other ground. A sawn slab or a workshop bay will do; a garage floor seldom.",
    ),
    (
        "As it is driven",
        "Driver in, or the same weight on the seat; usual load, tyres at their pressure. Rock it once so that"
        " the springs settle.",
    ),
    (
        "Along",
        "Hang a plumb line from each hub's centre and mark the ground. Snap a chalk line half-way between the"
        " tyres, front to rear: all places count from these marks.",
    ),
    (
        "Up",
        "Slide a STACK OF CARDS (or flat wood and shims) in from the side on a long stick until it just"
        " passes under; pull it out; measure the stack.",
    ),
    (
        "Photograph",
        "From the side, level with the sills and ten paces off, with a stick of known length standing by a"
        " wheel. Angles are read off it: ground line to the line from tyre to nose or tail.",
    ),
    (
        "Repeat",
        "Two or three times each, from the start: how far your readings differ is how well the vehicle is"
        " known. Write every one down, with its unit.",
    ),
)
LOW_PARTS = (
    "Everything lower than H, and what hangs ahead of the front and behind the rear wheels (bumper, lip,"
    " tray, sill, exhaust, hitch), each with its name."
)
LOADED = (
    "Put in what it will carry, rock it, and measure wheel arch to ground over each hub again. Write the"
    " change, minus where it sank."
)
OPTIONAL = "* if you can"
MARK = "measuring sheet 1"  # what the fill-in file says it is
