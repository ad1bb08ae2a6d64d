"""The one-page sheet printed by ``look --how``: how to walk a scan that can carry a verdict."""

from __future__ import annotations

_SHEET = """\
HOW TO WALK A SCAN OF THE SLAB                                       one page, half an hour

What decides is 10 to 20 mm. A phone scan is wrong by about 5 mm in ways that more points do not
mend, so walk it well, walk it three times, and keep a tape and a string at hand.

1  MARK FIRST
   Put at least three marks where they stay until the work is checked: two beside the line of
   travel, before and after the crest, and one well to the side. A cross of tape or crayon about
   100 mm wide, a letter beside it: A, B, C. Tape the distances between them and write them down.

2  SWEPT AND DRY
   Sweep leaves and grit; let puddles dry (water hides the ground and mirrors the sky). Move cars,
   bins and mats; lift planting off the edge. Leave two or three boxes standing beside the slab:
   they lock repeats together. No hard noon sun on wet or polished concrete if you can choose.

3  WHAT TO COVER
   A wheelbase of ground before the crest and a wheelbase after it (3 m each if you do not know),
   as wide as the vehicle and half a metre more on both sides, kerbs and gutter included.

        |<- wheelbase ->|<- crest ->|<- wheelbase ->|
     A  +---------------+-----------+---------------+      lanes ALONG the line of travel,
        | 1 ----------> |           | ------------> |      about half a metre apart,
        | <---------- 2 |           | <------------ |
        | 3 ----------> |           | ------------> |      then lanes ACROSS the crest,
        +---------------+--|--^--|--+---------------+  B   close together near it
           C               v  |  v

4  HOW TO WALK
   Device about 1 to 1.5 m over the ground, tilted a little forward, screen up. A slow walking
   pace, no sudden turns, no hand in front of the sensor. Cross your own lanes at right angles.
   End where you began. Two to three minutes are enough: short walks drift less.

5  THREE SHORT REPEATS
   Stop, start afresh, walk it again; and once more. The three together show how far the heights
   can be trusted, which one scan cannot. Give all the files to one command.

6  WHAT TO SAVE
   The raw points (LAZ, LAS, PLY, E57, XYZ), full density, rather than the app's mesh: a mesh
   rounds off the very crest that scrapes. Metres if it asks. With photogrammetry, lay two tapes
   on the slab that cross, and photograph them: pictures alone have no scale.

7  BEFORE YOU LEAVE
   Run  crestcut look  on the files. Holes in the wheel tracks or on the crest: walk those again.
   Then read the vehicle: clearances on flat ground, driver in, tyres as driven, never on a jack.

CARE  Look out for traffic while your eyes are on a screen: someone else keeps watch, cones out on
      a public way. The vehicle: chocks, brake on, in gear or park, engine off, key out; nobody
      reaches under it, lies beside it or stands downhill of it; least of all on a slope or a jack.
"""


def how_text() -> str:
    """The walking plan, plain text, at most 100 columns and one printed page (66 lines)."""
    return _SHEET
