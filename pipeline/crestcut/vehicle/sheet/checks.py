"""A filled sheet against itself: what cannot be, and what looks mistaken."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import replace

from crestcut.base.units import both, millimetres
from crestcut.vehicle.angles import tangent_angle
from crestcut.vehicle.plausible import ROSE, findings
from crestcut.vehicle.sheet.items import ANGLES, ITEMS, PART_ITEMS
from crestcut.vehicle.sheet.read_back import Measured, MeasuredPart, Reading

UNLIKELY, IMPOSSIBLE = 2.0, 3.0  # sd between two figures for one thing: looks mistaken; contradicts
REAL = 0.005  # m that real vehicles differ by from side to side and axle to axle (common practice, no source)
# an angle off a photograph is good to no better than this, however often it is read: camera not level
TILT = math.radians(0.5)


def with_doubts(m: Measured) -> Measured:
    """The same sheet with its contradictions and doubts."""
    wrong: list[str] = []
    odd: list[str] = []
    for letters, a, b, extra in _pairs(m.readings):
        _apart(letters, a, b, extra, wrong, odd)
    for letters in ("PQR", "TUV"):
        _angle(letters, m, wrong, odd)
    r = m.readings
    sizes = {key: value for key, (value, _) in m.vehicle_lengths().items()}
    for one in findings(sizes, rigid="X" in r):
        (wrong if one.rule.stop else odd).append(f"{one.rule.letters}: {one.words}")
    if "X" in r and not 0 < r["X"].value < r["A"].value:
        wrong.append("X: it would balance outside its wheels, and tip over")
    for part in m.parts:
        _part(part, m, wrong, odd)
    for loaded in m.loaded:
        if max(loaded.front.value, loaded.rear.value) > ROSE:
            odd.append(f"loaded {loaded.name}: an axle rose by more than {both(ROSE)}; sinking is minus")
    odd += [words for item in ITEMS if (words := _scattered(item.letter, item.what, r))]
    for part in m.parts:
        odd += [
            f"{part.name}, {words}"
            for item in PART_ITEMS
            if (words := _scattered(item.letter, item.what, part.readings))
        ]
    for pair in ("PQ", "TU"):
        if (pair[0] in r) != (pair[1] in r):
            odd.append(f"{pair[0]} and {pair[1]} make a point only together: one of them is missing")
    return replace(m, contradictions=tuple(wrong), doubts=tuple(odd))


def _pairs(r: Mapping[str, Reading]) -> list[tuple[str, Reading, Reading, float]]:
    """Two figures for one length, and how far real vehicles let them differ."""
    pairs = [("A and B", r["A"], r["B"], REAL), ("E and F", r["E"], r["F"], 2 * REAL)]
    if "M" in r:
        base = (r["A"].value + r["B"].value) / 2
        within = math.hypot(r["J"].within, r["K"].within, r["A"].within / 2, r["B"].within / 2)
        total = Reading(base + r["J"].value + r["K"].value, within, 1, within)
        pairs.append(("M and A + J + K", r["M"], total, REAL))
    return pairs


def _apart(names: str, a: Reading, b: Reading, extra: float, wrong: list[str], odd: list[str]) -> None:
    off, sd = abs(a.value - b.value), math.hypot(a.within, b.within)
    words = f"{names} differ by {both(off)}"
    if off > IMPOSSIBLE * sd + extra:
        wrong.append(f"{words}, at most {both(IMPOSSIBLE * sd + extra)} can be: measure both again")
    elif off > UNLIKELY * sd + extra / 2:
        odd.append(f"{words}: worth measuring again")


def _angle(letters: str, m: Measured, wrong: list[str], odd: list[str]) -> None:
    """The photographed angle against the least that the measured points of that end make.

    d(angle) of a point is about d(height) / its distance from the hub, and d(distance) x height / distance^2.
    """
    height, ahead, photo = tuple(letters)
    r = m.readings
    if photo not in r:
        return
    radius = r["E"].value
    points = [(f"{height} and {ahead}", r[ahead], r[height])] if height in r and ahead in r else []
    points += [(part.name, *point) for part in m.parts for point in _end_points(part, m, photo)]
    if not points:
        odd.append(f"{photo}: no point of that end was measured that it could be checked against")
        return
    made = [(tangent_angle(x.value, z.value, radius), name, x, z) for name, x, z in points]
    least, name, x, z = min(made, key=lambda point: point[0])
    if least >= math.pi / 2:
        wrong.append(f"{ahead}: the point {both(x.value)} from the hub lies inside the tyre")
        return
    seen = math.hypot(r[photo].within, TILT)
    sd = math.hypot(seen, z.within / x.value, x.within * z.value / x.value**2)
    off = r[photo].value - least
    shown = f"{photo}: the photograph shows {math.degrees(r[photo].value):.1f} degrees, {name} make"
    words = (
        f"{shown.removesuffix(' make')} {'make' if ' and ' in name else 'makes'} {math.degrees(least):.1f}"
    )
    lower = "; does something lower hang there?" if off < 0 else ""
    if abs(off) > IMPOSSIBLE * sd:
        wrong.append(f"{words}: one of them is mistaken{lower}")
    elif abs(off) > UNLIKELY * sd:
        odd.append(f"{words}: worth measuring again{lower}")


def _end_points(part: MeasuredPart, m: Measured, photo: str) -> list[tuple[Reading, Reading]]:
    """Corners of a hard part ahead of the front hub (R) or behind the rear one (V): distance, height."""
    if part.soft:
        return []
    p, base = part.readings, m.vehicle_lengths()["wheelbase"][0]
    corners = [(p["a"], p["e"]), (p["b"], p.get("f", p["e"]))]
    reach = [
        (replace(x, value=-x.value if photo == "R" else x.value - base), z) for x, z in corners
    ]  # metres from the hub, away from the wheels
    return [(x, z) for x, z in reach if x.value > 0.02]


def _part(part: MeasuredPart, m: Measured, wrong: list[str], odd: list[str]) -> None:
    p, r = part.readings, m.readings
    if p["b"].value <= p["a"].value:
        wrong.append(f"{part.name}: its rear edge b is not behind its front edge a")
    if p["c"].value + p["d"].value <= 0:
        wrong.append(f"{part.name}: its left edge d is not left of its right edge c")
    if max(p["c"].value, p["d"].value) > r["N"].value / 2 + 0.02:
        wrong.append(f"{part.name}: it reaches beyond half the width N")
    if -p["a"].value > r["J"].value + 0.02:
        wrong.append(f"{part.name}: it reaches further ahead than the front overhang J")
    if p["b"].value > m.vehicle_lengths()["wheelbase"][0] + r["K"].value + 0.02:
        wrong.append(f"{part.name}: it reaches further back than the rear overhang K")
    between = p["a"].value >= 0 and p["b"].value <= r["A"].value
    low = min(p["e"].value, p.get("f", p["e"]).value)
    inside = max(p["c"].value, p["d"].value) <= (min(r["C"].value, r["D"].value) - r["G"].value) / 2
    if between and inside and part.on == "body" and low > r["H"].value:
        sd = math.hypot(p["e"].within, r["H"].within)
        words = f"{part.name} at {millimetres(low)} lies above its own belly H at {millimetres(r['H'].value)}"
        (wrong if low - r["H"].value > IMPOSSIBLE * sd else odd).append(words)


def _scattered(letter: str, what: str, r: Mapping[str, Reading]) -> str:
    if letter not in r or letter in ANGLES or r[letter].repeats < 2:
        return ""
    reading = r[letter]
    if reading.spread > max(0.01, 0.02 * abs(reading.value)):
        return f"{letter} ({what}): its readings spread by {millimetres(reading.spread)}"
    return ""
