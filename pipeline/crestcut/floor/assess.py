"""A floor judged: what is asked of it, how sure that is, what to grind and to fill, and what it will be."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from crestcut.base.errors import CrestcutError, Say
from crestcut.base.grid import BoolArray, FloatArray, GridFrame, HeightGrid
from crestcut.cut import Limits
from crestcut.floor import numbers as fn
from crestcut.floor.chance import (
    Drawn,
    Spread,
    Worst,
    draw_floor,
    largest_gap,
    largest_off,
    spread_of,
)
from crestcut.floor.classes import TEN_FEET, rough_gap
from crestcut.floor.levels import level_to_reference, level_to_straightedge, nothing_to_do
from crestcut.floor.records import Figure, Judged, Laid, Levelling
from crestcut.floor.reference import general_level, level_at, robust_plane
from crestcut.floor.straightedge import gaps_under
from crestcut.job import FloorWish
from crestcut.terrain import Evidence, Surface

COARSE, COARSE_NODES = 0.040, 25_000  # m; at most: where many draws are laid a straightedge over
OWN_LEVEL = 1.0  # straightedges: radius of the disk that the general level is told from
TIGHTER = 6  # turns of a quarter less under the straightedge, for an FF
PROVISIONAL = 0.5  # half-width of the interval over what is asked, above which the scan carries too much


@dataclass(frozen=True, eq=False)
class _Rule:
    """What the cut is made for: reference, straightedge length (None for plane and level) and gap, m."""

    reference: str
    length: float | None
    gap: float
    rough: bool  # told from an FF


def judge_floor(
    surface: Surface,
    wish: FloorWish,
    limits: Limits,
    evidence: Evidence | None = None,
    datum: tuple[float, float] | None = None,
    tilt: float = 0.0,
    seed: int = 0,
    say: Say = lambda _: None,
) -> Judged:
    """surface : the floor alone (``place.floor_only``).  datum : site x, y, m.  tilt : rad, how far the
    scan's 'up' may lean.

    Raises CrestcutError where F-numbers are asked of a floor on which no line of 12 readings has room.
    """
    rule = _rule(wish)
    stride = _stride(surface)
    say("drawing what the floor may be")
    drawn = draw_floor(surface, stride, evidence, seed, tilt=tilt)
    surface, floor = _told_by_hand(surface, drawn, stride)
    plane, slope = robust_plane(floor)
    lines = fn.lay_lines(drawn.height.frame, drawn.height.measured)
    if lines is None and (wish.ff is not None or wish.fl is not None):
        raise CrestcutError(
            f"no line of {fn.FEWEST} readings 12 in apart has room 2 ft clear of edges, walls and holes",
            "floor.ff" if wish.ff is not None else "floor.fl",
            "F-numbers want 15 ft of open floor; ask for a straightedge and gap",
        )
    reference = _reference(rule, floor, plane, datum)
    asks = _Asks(wish, rule, stride, reference, drawn.height.frame, lines, slope)
    say("laying the straightedge")
    figures, each = asks.figures(drawn, drawn.height.values)
    chance = float(np.logical_and.reduce(each).mean()) if each else 1.0
    missed = max((f.missed for f in figures if f.missed is not None), default=0.0)
    verdict = _verdict(chance, missed, wish.confidence, drawn)
    say("finding what to grind")
    if verdict == "meets":  # what the scan's own error makes of a good floor is not ground away
        levelling = nothing_to_do(floor, reference, figures[0].seen)
    else:
        levelling = _level(rule, floor, (reference, plane), stride, limits)
        if rule.rough:
            levelling = _until_wavy_no_more(rule, floor, (reference, plane), stride, limits, asks, levelling)
    pick = (slice(None, None, stride), slice(None, None, stride))
    cut, fill = (np.nan_to_num(g.values[pick]) for g in (levelling.depth, levelling.fill))
    say("drawing what the cut would leave")
    untouched = not cut.any() and not fill.any()
    after = figures if untouched else asks.figures(drawn, drawn.height.values - cut + fill)[0]
    gap, laid = _gap_map(rule, drawn)
    return Judged(
        surface=surface,
        area=float(floor.measured.sum()) * floor.frame.cell**2,
        verdict=verdict,
        chance=chance,
        missed=missed,
        figures=figures,
        after=after,
        laid=laid,
        gap=gap,
        numbers=None if lines is None else fn.f_numbers(lines, asks.read(drawn.height.values)),
        levelling=levelling,
        provisional=verdict == "cannot tell" or _provisional(figures),
        told=drawn.told,
        contradictions=drawn.contradictions,
        notes=_notes(rule),
        lines=() if lines is None else _places(lines, drawn),
    )


def _rule(wish: FloorWish) -> _Rule:
    if wish.gap is not None:
        return _Rule(wish.reference, wish.straightedge, wish.gap, False)
    if wish.ff is not None:
        return _Rule("straightedge", TEN_FEET, rough_gap(wish.ff), True)
    raise CrestcutError(
        "fl alone says how level, not how flat: nothing tells what to grind",
        "floor.fl",
        "add straightedge and gap",
    )


def _stride(surface: Surface) -> int:
    cell, nodes = surface.height.frame.cell, int(surface.height.measured.sum())
    return max(round(COARSE / cell), math.ceil(math.sqrt(nodes / COARSE_NODES)), 1)


def _told_by_hand(surface: Surface, drawn: Drawn, stride: int) -> tuple[Surface, HeightGrid]:
    """The surface moved by what hand measurements and the scan's lean say of it, smooth between the coarse
    nodes."""
    from scipy.ndimage import map_coordinates

    pick = (slice(None, None, stride), slice(None, None, stride))
    moved = np.nan_to_num(drawn.height.values - surface.height.values[pick])
    at = np.meshgrid(*(np.arange(n) / stride for n in surface.height.frame.shape), indexing="ij")
    height = surface.height.like(surface.height.values + map_coordinates(moved, at, order=1, mode="nearest"))
    return replace(surface, height=height), height


def _reference(
    rule: _Rule, floor: HeightGrid, plane: FloatArray, datum: tuple[float, float] | None
) -> FloatArray:
    if rule.reference == "plane":
        return plane
    if rule.reference == "level":
        return level_at(floor, datum)
    assert rule.length is not None
    return general_level(floor, plane, OWN_LEVEL * rule.length)


def _level(
    rule: _Rule, floor: HeightGrid, references: tuple[FloatArray, ...], stride: int, limits: Limits
) -> Levelling:
    allowed = limits.deepest.values

    def why(mask: BoolArray) -> tuple[str, ...]:
        found = sorted(set(limits.reason[mask].tolist()))
        return tuple(limits.reasons[k] for k in found if k >= 0)

    if rule.reference != "straightedge" or rule.length is None:
        return level_to_reference(floor, references[0], rule.gap, allowed, why)
    return level_to_straightedge(floor, references, rule.length, rule.gap, stride, allowed, why)


def _until_wavy_no_more(
    rule: _Rule,
    floor: HeightGrid,
    references: tuple[FloatArray, ...],
    stride: int,
    limits: Limits,
    asks: _Asks,
    levelling: Levelling,
) -> Levelling:
    """Levelled to less and less under the straightedge until the readings' own FF is reached: the published
    pairs of gap and FF are rough. Not reached where even a quarter of the gap does not do it.
    """
    pick, wanted = (slice(None, None, stride),) * 2, asks.wish.ff or 0.0
    for _ in range(TIGHTER):
        found = fn.f_numbers(
            _lines_of(asks),
            asks.read(
                (floor.values - np.nan_to_num(levelling.depth.values) + np.nan_to_num(levelling.fill.values))[
                    pick
                ]
            ),
        )
        if found.ff >= wanted:
            return levelling
        rule = replace(rule, gap=rule.gap * 0.75)
        levelling = _level(rule, floor, references, stride, limits)
    return replace(levelling, reached=False, binding=(f"FF stays at {found.ff:.1f} along the lines",))


def _lines_of(asks: _Asks) -> fn.Lines:
    assert asks.lines is not None
    return asks.lines


@dataclass(frozen=True, eq=False)
class _Asks:
    """Every figure that is asked of the floor, or told of it."""

    wish: FloorWish
    rule: _Rule
    stride: int
    reference: FloatArray
    frame: GridFrame  # the coarse raster
    lines: fn.Lines | None
    slope: tuple[float, float]

    def read(self, heights: FloatArray) -> FloatArray:
        """Readings of the F-number lines from the coarse raster (ny, nx[, d])."""
        assert self.lines is not None
        flat = heights.reshape(heights.shape[0] * heights.shape[1], *heights.shape[2:])
        return fn.read(self.lines, self.frame, flat, self.slope)

    def figures(self, drawn: Drawn, heights: FloatArray) -> tuple[tuple[Figure, ...], list[BoolArray]]:
        """Figures of a floor (coarse raster, m), asked ones first, and whether each draw keeps to each asked
        one.
        """
        out: list[Figure] = []
        kept: list[BoolArray] = []
        for name, extreme, seen, asked in self._extremes(drawn, heights):
            spread = spread_of(extreme, heights, drawn)
            out.append(_figure(name, seen, spread, asked, False))
            if asked is not None:
                kept.append(spread.draws <= asked + 1e-9)
        if self.lines is not None:
            first = self.read(heights)
            many = first[:, None] - self.read(drawn.errors) + self.read(np.zeros(heights.shape))[:, None]
            for name, constant, asked in (("FF", fn.FLAT, self.wish.ff), ("FL", fn.LEVEL, self.wish.fl)):
                spread = Spread(fn.of_draws(self.lines, many, constant))
                values = fn.f_numbers(self.lines, first)
                out.append(_figure(name, values.ff if name == "FF" else values.fl, spread, asked, True))
                if asked is not None:
                    kept.append(spread.draws >= asked - 1e-9)
        out.sort(key=lambda f: f.asked is None)
        return tuple(out), kept

    def _extremes(self, drawn: Drawn, heights: FloatArray) -> list[tuple[str, Worst, float, float | None]]:
        cell, pick = drawn.height.frame.cell, slice(None, None, self.stride)
        found: list[tuple[str, Worst, float, float | None]] = []
        gap = None if self.rule.rough else self.rule.gap
        if self.rule.length is not None:
            extreme = largest_gap(drawn.height.measured, cell, self.rule.length)
            found.append((f"gap under {_long(self.rule.length)}", extreme, extreme(heights), gap))
        if self.rule.reference != "straightedge":
            off = largest_off(self.reference[pick, pick])
            name = "off the plane" if self.rule.reference == "plane" else "off level"
            found.append((name, off, off(heights), gap))
        return found


def _long(length: float) -> str:
    return "10 ft" if abs(length - TEN_FEET) < 1e-6 else f"{length:g} m"


def _figure(name: str, seen: float, spread: Spread, asked: float | None, at_least: bool) -> Figure:
    chance = missed = None
    if asked is not None:
        kept = spread.draws >= asked - 1e-9 if at_least else spread.draws <= asked + 1e-9
        chance = float(kept.mean())
        missed = 1 - chance if at_least else spread.over(asked + 1e-9)
    return Figure(name, seen, spread.estimate, spread.interval, asked, at_least, chance, missed)


def _verdict(chance: float, missed: float, confidence: float, drawn: Drawn) -> str:
    if drawn.contradictions:
        return "cannot tell"
    if chance >= confidence:
        return "meets"
    return "does not meet" if missed >= confidence else "cannot tell"


def _provisional(figures: Sequence[Figure]) -> bool:
    """Whether the scan's own error is worth more than half of a gap that is asked for."""
    return any(
        f.asked is not None and not f.at_least and (f.interval[1] - f.interval[0]) / 2 > PROVISIONAL * f.asked
        for f in figures
    )


def _gap_map(rule: _Rule, drawn: Drawn) -> tuple[HeightGrid | None, Laid | None]:
    """The gap at every coarse node, and the straightedge where it is largest."""
    if rule.length is None:
        return None, None
    frame = drawn.height.frame
    gap, left, right = gaps_under(drawn.height.values, frame.cell, rule.length)
    grid = HeightGrid(frame, gap)
    if not np.nanmax(gap, initial=0.0) > 0:
        return grid, None
    at = int(np.nanargmax(gap))

    def place(node: int | np.int64) -> tuple[float, float]:
        j, i = divmod(int(node), frame.shape[1])
        x, y = frame.to_site((i * frame.cell, j * frame.cell))
        return float(x), float(y)

    return grid, Laid(place(left.flat[at]), place(right.flat[at]), place(at), float(gap.flat[at]))


def _notes(rule: _Rule) -> tuple[str, ...]:
    notes = []
    if rule.rough:
        notes.append(
            f"FF says how wavy a floor is, not where: high spots are told by {rule.gap * 1000:.1f} mm under"
            " 10 ft, which"
            " goes with that FF only roughly"
        )
    return tuple(notes)


def _places(lines: fn.Lines, drawn: Drawn) -> tuple[FloatArray, ...]:
    every = drawn.height.frame.to_site(lines.places)
    return tuple(every[a:b] for a, b in zip(lines.starts[:-1], lines.starts[1:], strict=True))
