"""How to measure a vehicle, as a sheet to print: the letters are those of the drawing."""

from __future__ import annotations

_SHEET = """\
MEASURING SHEET FOR A VEHICLE                                    Crestcut

Vehicle ____________________   Load ____________________   Date __________

BEFORE YOU START
  - Flat ground: lay a straightedge through the tyre contacts, along and across. Light under it more
    than 2 mm: find other ground. A garage floor is seldom flat enough; a sawn slab or a workshop
    bay is.
  - As it is driven: driver in (or the same weight on the seat), usual load, tyres at their
    pressure, handbrake on, in gear, wheels chocked. Rock it once so that the springs settle.
  - NEVER reach or lie under a vehicle on a jack or on ramps. Nothing here needs a jack: it would
    also change every figure.
  - Exhaust, brakes and battery coolers are HOT after driving: wait an hour. Do not press on the
    battery tray or on orange cables.

WHAT TO MEASURE (mm, or inches with fractions; write the unit)
  A  wheelbase: front hub centre to rear hub centre, both sides, mean   wheelbase       ________
  B  front track: middle of the left tyre to middle of the right, groundfront_track     ________
  C  rear track, likewise                                               rear_track      ________
  D  hub centre straight down to the ground (smaller than half the tyre)tyre_radius     ________
  E  width of the tyre's tread                                          tyre_width      ________
  F  body, left to right, without mirrors                               width           ________
  G  front hub centre to the foremost point, along the ground           front_overhang  ________
  H  rear hub centre to the rearmost point, along the ground            rear_overhang   ________
  J  floor to ground between the wheels, where it is mostly flat        belly_clearance ________

  J and every part below: slide a STACK OF CARDS (or flat wood and shims) in from the side on a long
  stick until it just passes under; pull it out; measure the stack. Three times, take the least.
  Hands stay outside the sills.

LOW PARTS: everything that hangs lower than J, and the lowest points ahead of the front and behind
the rear wheels (bumper, lip, tray, sill, exhaust, hitch). Distances count from the FRONT hub centre
to the rear; ahead of it they are negative.
  part            K from  L to    M right  N left  P front / rear     may touch  how well
  ______________  ______  ______  _______  ______  _______ / _______  yes / no  +- ____ mm
  ______________  ______  ______  _______  ______  _______ / _______  yes / no  +- ____ mm
  ______________  ______  ______  _______  ______  _______ / _______  yes / no  +- ____ mm
  ______________  ______  ______  _______  ______  _______ / _______  yes / no  +- ____ mm
                  (back)          (across)         (clearance)        (soft)     (within)

LOADED: put in what it will carry, rock it, and measure wheel arch to ground at both axles; write
the change.
  load ____________________   front ______ mm   rear ______ mm   (lower is negative)

IN THE FILE a part is written
  [[part]]
  name = "battery tray"
  back = ["560 mm", "2140 mm"]
  across = ["-560 mm", "560 mm"]
  clearance = "105 mm"
Check it with: crestcut vehicle FILE
"""


def measuring_sheet() -> str:
    """The sheet as plain text, at most 100 characters wide."""
    return _SHEET
