"""Points as a job names them -> site x, y: numbers, chalk marks, and tape ties measured along the slab."""

from __future__ import annotations

import difflib
import math
from collections.abc import Callable, Sequence
from itertools import pairwise

from crestcut.base.errors import CrestcutError
from crestcut.job import GridPoint, Mark, MarkName, PlanPoint, Point, TapeTies
from crestcut.scan.placing.system import FAR
from crestcut.scan.records import Frame

XY = tuple[float, float]
HeightAt = Callable[[float, float], float]  # site x, y in metres -> height in metres, NaN where not measured

_STEPS = 25  # turns of the correction for slope: each shortens the error by the square of the slope
_SETTLED = 1e-6  # m
_SHARP = math.radians(15.0)  # tapes that cross at less than this hardly fix a point


def resolve_point(
    point: Point, marks: Sequence[Mark], frame: Frame, height_at: HeightAt | None = None, where: str = "point"
) -> XY:
    """Site x, y in metres.

    A tape lies along the slab: given ``height_at``, the distance in plan is shorter than the tape by the rise
    between its ends, which is found by turns (a straight tape between the two heights; on a slab bent under
    the tape it lies a little high, at most the bend's own height). Where the height is not measured the tape
    is taken as level.

    Raises CrestcutError for a mark that nobody put, tapes that do not reach each other, or that cross too
    flatly.
    """
    match point:
        case PlanPoint(x, y):
            return _site(frame, x, y, where)
        case GridPoint(east, north):
            place = frame.plan_to_site((east, north))
            return _near(float(place[0]), float(place[1]), where, "write east and north of the scan's system")
        case MarkName(name):
            return mark_place(name, marks, frame, where)
        case TapeTies():
            return _tied(point, marks, frame, height_at, where)


def resolve_line(
    points: Sequence[Point],
    marks: Sequence[Mark],
    frame: Frame,
    height_at: HeightAt | None = None,
    where: str = "travel.line",
) -> tuple[XY, ...]:
    """Site x, y of each point of a line, metres. Raises CrestcutError where two neighbours are one place."""
    line = tuple(resolve_point(p, marks, frame, height_at, f"{where} {k + 1}") for k, p in enumerate(points))
    for k, (a, b) in enumerate(pairwise(line)):
        if math.dist(a, b) < 0.01:
            raise CrestcutError(f"points {k + 1} and {k + 2} are one place", where, "give two places apart")
    return line


def resolve_area(
    points: Sequence[Point],
    marks: Sequence[Mark],
    frame: Frame,
    height_at: HeightAt | None = None,
    where: str = "keep.area",
) -> tuple[XY, ...]:
    """Site x, y of an area's corners, metres, in the order given.

    Raises CrestcutError for corners that enclose nothing, or whose outline crosses itself.
    """
    corners = tuple(
        resolve_point(p, marks, frame, height_at, f"{where} {k + 1}") for k, p in enumerate(points)
    )
    n = len(corners)
    edges = [(corners[k], corners[(k + 1) % n]) for k in range(n)]
    for i in range(n):
        for j in range(i + 2, n - (i == 0)):
            if _cross(*edges[i], *edges[j]):
                raise CrestcutError(
                    "its outline crosses itself", where, "give the corners in order around the area"
                )
    double = sum(a[0] * b[1] - b[0] * a[1] for a, b in edges)
    if n < 3 or abs(double) / 2 < 1e-6:
        raise CrestcutError(
            "its corners enclose nothing", where, "give three or more corners in order around the area"
        )
    return corners


def mark_place(name: str, marks: Sequence[Mark], frame: Frame, where: str = "point") -> XY:
    """Site x, y of a mark, metres. Raises CrestcutError where nobody put it, or it was put twice."""
    found = [mark.at for mark in marks if mark.name == name]
    if len(found) > 1:
        raise CrestcutError(
            f'mark "{name}" is put {len(found)} times', where, "give each mark a name of its own"
        )
    if not found:
        names = [mark.name for mark in marks]
        close = difflib.get_close_matches(name.lower(), [n.lower() for n in names], n=1)
        hint = next((f'did you mean "{n}"?' for n in names if close and n.lower() == close[0]), "")
        known = f"marks are {', '.join(names)}" if names else "add a [[mark]] with its name and place"
        raise CrestcutError(f'no mark is named "{name}"', where, hint or known)
    return _site(frame, found[0].x, found[0].y, where)


def _site(frame: Frame, x: float, y: float, where: str) -> XY:
    place = frame.written_to_site((x, y))
    if frame.scanned is None:
        return float(place[0]), float(place[1])
    mend = "[x, y] is in the scan's own coordinates; of control write { east = ..., north = ... }"
    return _near(float(place[0]), float(place[1]), where, mend)


def _near(x: float, y: float, where: str, mend: str) -> XY:
    if (far := math.hypot(x, y)) > FAR:  # the scan lies within a few hundred metres of the site's origin
        raise CrestcutError(f"it lies {far / 1000:,.1f} km from the scan", where, mend)
    return x, y


def _tied(tie: TapeTies, marks: Sequence[Mark], frame: Frame, height_at: HeightAt | None, where: str) -> XY:
    a, b = mark_place(tie.first, marks, frame, where), mark_place(tie.second, marks, frame, where)
    p = _crossing(a, b, tie.first_distance, tie.second_distance, tie, where)
    za, zb = (math.nan, math.nan) if height_at is None else (height_at(*a), height_at(*b))
    if height_at is None or math.isnan(za) or math.isnan(zb):
        return _fixed(p, a, b, tie, where)
    for _ in range(_STEPS):
        z = height_at(*p)
        if math.isnan(z):
            return _fixed(p, a, b, tie, where)
        first, second = (
            _level(tie.first_distance, z - za, tie, where),
            _level(tie.second_distance, z - zb, tie, where),
        )
        new = _crossing(a, b, first, second, tie, where)
        if math.dist(new, p) < _SETTLED:
            return _fixed(new, a, b, tie, where)
        p = new
    raise CrestcutError("the two ties lead to no one place on this slab", where, _again(tie))


def _level(tape: float, rise: float, tie: TapeTies, where: str) -> float:
    """A tape along the slope -> its length in plan."""
    if abs(rise) >= tape:
        raise CrestcutError(f"a tape of {tape:.3f} m cannot rise {abs(rise):.3f} m", where, _again(tie))
    return math.sqrt(tape**2 - rise**2)


def _crossing(a: XY, b: XY, ra: float, rb: float, tie: TapeTies, where: str) -> XY:
    """The crossing of two circles on the asked side of a to b."""
    d = math.dist(a, b)
    if d < 0.05:
        raise CrestcutError(
            f"marks {tie.first} and {tie.second} are one place", where, "tie to two marks apart"
        )
    if ra + rb < d - 1e-9 or abs(ra - rb) > d + 1e-9:
        gap = d - ra - rb if ra + rb < d else abs(ra - rb) - d
        raise CrestcutError(
            f"ties of {ra:.3f} m from {tie.first} and {rb:.3f} m from {tie.second}, which are {d:.3f} m"
            f" apart, miss each other by {gap:.3f} m",
            where,
            _again(tie),
        )
    along = (d**2 + ra**2 - rb**2) / (2 * d)
    off = math.sqrt(max(ra**2 - along**2, 0.0))
    u = ((b[0] - a[0]) / d, (b[1] - a[1]) / d)
    side = 1.0 if tie.side == "left" else -1.0
    return a[0] + along * u[0] - side * off * u[1], a[1] + along * u[1] + side * off * u[0]


def _fixed(p: XY, a: XY, b: XY, tie: TapeTies, where: str) -> XY:
    """The place itself, if its tapes cross well. On a slope a first guess may cross worse than the place."""
    first, second = (a[0] - p[0], a[1] - p[1]), (b[0] - p[0], b[1] - p[1])
    turned = first[0] * second[1] - first[1] * second[0]
    angle = abs(math.atan2(turned, first[0] * second[0] + first[1] * second[1]))
    if min(angle, math.pi - angle) < _SHARP:
        raise CrestcutError(
            f"the tapes from {tie.first} and {tie.second} cross at {math.degrees(angle):.0f} degrees: 1 mm of"
            " tape is worth many of place",
            where,
            "tie it to marks that it sees at 30 to 150 degrees",
        )
    return p


def _again(tie: TapeTies) -> str:
    return f"measure again from {tie.first} and {tie.second}, along the slab"


def _cross(p: XY, q: XY, r: XY, s: XY) -> bool:
    """Do the segments pq and rs cross?"""

    def turn(a: XY, b: XY, c: XY) -> float:
        return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])

    return turn(p, q, r) * turn(p, q, s) < 0 and turn(r, s, p) * turn(r, s, q) < 0
