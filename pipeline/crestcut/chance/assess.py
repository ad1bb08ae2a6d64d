"""Verdict, interval and chance of a clearance, and the margin a cut needs. Nothing confident is made from
nothing."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

import numpy as np
from scipy import special

from crestcut.base.grid import FloatArray, HeightGrid
from crestcut.chance.draws import Draws, draw_clearances
from crestcut.chance.planned import CutDraws, smoothed_below
from crestcut.chance.records import Because, Cause, Chance
from crestcut.chance.rounded import in_words as rounded_in_words
from crestcut.contact import Passage, wanted_gap
from crestcut.job import Wanted
from crestcut.terrain import Conditioned, ErrorModel, Evidence, Known
from crestcut.vehicle import Vehicle, in_use_table

KEPT = 5e-5  # m: a plan this little under its margin kept it
Allowances = tuple[tuple[str, float, str], ...]  # name, most it takes off, m, and where that is from
HIDDEN = 0.02  # share of the swept cells without ground above which 'clears' is not said


def in_use_allowances(wanted: Wanted, vehicle: Vehicle | None = None, slowly: bool = False) -> Allowances:
    """Name, most it takes off the clearance (m), and where it is from: the usual table with the job's own
    figures in it (``vehicle.loads.in_use_table``). slowly : without what comes of pace."""
    tread, rigid = (vehicle.tyre_tread, vehicle.rigid) if vehicle is not None else (None, False)
    table = in_use_table(wanted.in_use, tread, rigid)
    return tuple((a.name, a.lower, a.source) for a in table if not (slowly and a.pace))


def assess_chance(
    passage: Passage,
    wanted: Wanted,
    seed: int = 0,
    draws: int = 200,
    evidence: Evidence | None = None,
    allowances: Allowances = (),
) -> Chance:
    """What can be said of the least clearance. ``allowances`` empty: today, as measured;
    ``in_use_allowances``: in use.

    evidence : strings, levels and witnesses.  allowances : name, size (m, at least 0) and source of each; it
    takes off anything from none to all of its size, equally likely.
    """
    drawn = draw_clearances(passage, seed, draws, evidence)
    if drawn is None:
        nan, said = float("nan"), (Cause.NOT_MET, "no part of the vehicle meets measured ground")
        return Chance(nan, (nan, nan), nan, "cannot tell", "cannot tell", nan, 1.0, 0).told([said])
    return chance_of(drawn, passage, wanted, allowances)


def chance_of(drawn: Draws, passage: Passage, wanted: Wanted, allowances: Allowances = ()) -> Chance:
    """``assess_chance`` from draws at hand, so that today and in use share them."""
    rng = np.random.default_rng([drawn.seed, 1])
    taken = _taken_off(allowances, len(drawn.least), rng)
    likely = drawn.least - taken
    if drawn.rounded > 0:
        likely = likely - drawn.rounded * rng.random(len(likely))
    chance = _summed_up(likely, drawn.vehicle - taken, drawn.fold, passage, wanted)
    tyres = drawn.tyres
    if tyres.said:  # the chance with anything from none to all of it; best estimate and spread are the disk's
        touch = smoothed_below(likely + (tyres.higher - tyres.lower) * rng.random(len(likely)), 0.0)
        verdict, because = _verdict(touch, passage, drawn.fold, wanted.confidence)
        interval = (chance.interval[0] - tyres.lower, chance.interval[1] + tyres.higher)
        words = _said(touch, passage.surface.error)
        chance = chance.told([*because, *_all(Cause.TYRES, tyres.said)])
        chance = replace(chance, interval=interval, chance_of_contact=touch, verdict=verdict, words=words)
    return chance.told([*chance.because, *_all(Cause.ROUNDED, rounded_in_words(drawn.rounded))])


def _all(cause: Cause, said: Iterable[str]) -> list[Because]:
    return [(cause, words) for words in said]


def _taken_off(allowances: Allowances, draws: int, rng: np.random.Generator) -> FloatArray:
    """(draws,) m that use takes off: of each allowance anything from none to all, equally likely."""
    taken = np.zeros(draws)
    for _, size, _ in allowances:
        taken += size * rng.random(draws)
    return taken


def chance_of_plan(
    cut: CutDraws,
    passage: Passage,
    margin: float,
    deepest: HeightGrid,
    wanted: Wanted,
    allowances: Allowances = (),
) -> Chance:
    """What can be said of the least clearance once the plan is cut to the millimetre.

    passage : with what it clears on the planned surface.  margin : m, that it was planned with.  deepest
    : the depths allowed; they count where the plan had to stop short of its margin: one that kept all of
    it was held back nowhere, and counts for what its margin was solved for.  allowances : as for
    ``chance_of``; what was asked for is asked without them.
    """
    after, asked = passage.clearance, wanted_gap(wanted.want, wanted.want_ends)
    excess = min((c.gap - asked[c.zone] for c in after.least.values()), default=float("nan"))
    kept = excess >= margin - KEPT
    limits = None if kept else cut.limits(deepest)
    outcome = cut.outcome(margin, limits)
    gap = after.worst.gap if after.worst is not None else float("nan")
    taken = _taken_off(allowances, len(outcome), np.random.default_rng([cut.seed, 1]))
    vehicle = cut.vehicle_outcome(margin, limits) - taken
    chance = _summed_up(gap + outcome - taken, vehicle, cut.fold, passage, wanted)
    reached = max(excess, margin) if kept else excess
    return replace(chance, chance_of_want=1.0 - smoothed_below(reached + outcome, 0.0))


def _summed_up(
    likely: FloatArray, vehicle: FloatArray, fold: Conditioned, passage: Passage, wanted: Wanted
) -> Chance:
    """The chance that drawn least clearances (n,), m, amount to; vehicle (n,) with its own errors only."""
    least, spread = float(np.median(likely)), float(likely.std())
    touch = smoothed_below(likely, 0.0)
    scan = 1.0 - float(np.clip(vehicle.var() / max(float(likely.var()), 1e-18), 0.0, 1.0))
    verdict, because = _verdict(touch, passage, fold, wanted.confidence)
    told = _said(touch, passage.surface.error)
    chance = Chance(least, interval_of(likely), touch, verdict, told, spread, scan, len(likely))
    return chance.told(because)


def interval_of(likely: FloatArray) -> tuple[float, float]:
    """95 % of what drawn clearances (n,), m, say: their blurred quantiles, wider by what so few draws leave
    unknown of the spread."""
    mean, spread = float(likely.mean()), float(likely.std())
    if spread < 1e-9:
        return mean, mean
    wider = half_width(len(likely)) / half_width(10**6)
    ends = []
    for share in (0.025, 0.975):
        low, high = mean - 8 * spread, mean + 8 * spread
        for _ in range(40):
            middle = 0.5 * (low + high)
            low, high = (middle, high) if smoothed_below(likely, middle) < share else (low, middle)
        ends.append(mean + wider * (high - mean))
    return ends[0], ends[1]


def half_width(draws: int) -> float:
    """Half the 95 % interval in standard deviations from so many draws, every other the opposite of one
    before it: Student's t, as the deviation itself is known only from those."""
    return coverage_factor(max(draws // 2 - 1, 1), 0.95)


def coverage_factor(freedom: float, share: float) -> float:
    """Standard deviations, known with so many degrees of freedom, either side of a mean that hold ``share``
    of what may be: Student's t (JCGM 100:2008, annex G)."""
    return float(special.stdtrit(freedom, 0.5 + share / 2))


def _verdict(
    touch: float, passage: Passage, fold: Conditioned, confidence: float
) -> tuple[str, list[Because]]:
    error, clearance = passage.surface.error, passage.clearance
    because = _all(Cause.CONTRADICTED, fold.contradictions)
    if error.known in (Known.NAMED, Known.UNNAMED):
        words = f"how wrong the scan may be is not measured: {error.warp_source}"
        because.append((Cause.ERROR, words))
    verdict = "touches" if touch >= confidence else "clears" if touch <= 1 - confidence else "cannot tell"
    seen = int(clearance.gap.measured.sum())
    if verdict == "clears" and clearance.unmeasured > HIDDEN * (seen + clearance.unmeasured):
        verdict = "cannot tell"
        words = f"the underside passes over {clearance.unmeasured} cells that the scan has no ground in"
        because.append((Cause.UNSEEN, words))
    because += _all(Cause.DOUBTED, (doubt.words for doubt in error.doubts))
    if any(doubt.decides for doubt in error.doubts):
        verdict = "cannot tell"
    if error.slab is not None and error.slab.split.beyond_concrete:
        verdict = "cannot tell"
        waves = error.slab.split.curvature * 1000
        words = (
            f"waves of {waves:.0f} mm over a foot are seen, more than concrete and such a scan have: "
            "this is no slab (a lawn, gravel, cobbles), or no good scan of one"
        )
        because.append((Cause.NOT_CONCRETE, words))
    return ("cannot tell" if fold.contradictions else verdict), because


def _said(touch: float, error: ErrorModel) -> str:
    """The chance in words, under a condition where a doubt about the scan leaves nothing to be told."""
    doubted = any(doubt.decides for doubt in error.doubts)
    return f"{in_words(touch)}, were the scan right" if doubted else in_words(touch)


def in_words(touch: float) -> str:
    """A chance as people say it."""
    if touch < 0.001:
        return "less than 1 in 1,000 that it touches"
    if touch > 0.999:
        return "less than 1 in 1,000 that it clears"
    rare, what = (touch, "touches") if touch <= 0.5 else (1 - touch, "clears")
    return f"about 1 in {one_in(rare)} that it {what}"


def one_in(rare: float) -> int:
    """30 for a chance of 1 in 30; 2 at least, and no more exact than to ten from a hundred on."""
    of = max(round(1 / rare), 2)
    return of if of < 100 else round(of, -1)
