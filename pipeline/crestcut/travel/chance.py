"""Verdict, interval and chance of a clearance, and the margin a cut needs. Nothing confident is made from
nothing."""

from __future__ import annotations

import numpy as np
from scipy import special

from crestcut.grid import FloatArray
from crestcut.job.records import Wanted
from crestcut.surface.evidence_records import Evidence
from crestcut.surface.records import ErrorModel, Surface
from crestcut.travel.chance_draws import Draws, draw_clearances
from crestcut.travel.chance_records import Chance
from crestcut.travel.records import Clearance, Ride
from crestcut.vehicle.loads import in_use_table
from crestcut.vehicle.records import Vehicle

HIDDEN = 0.02  # share of the swept cells without ground above which 'clears' is not said


def in_use_allowances(wanted: Wanted, vehicle: Vehicle | None = None) -> tuple[tuple[str, float, str], ...]:
    """Name, most it takes off the clearance (m), and where it is from: the usual table with the job's own
    figures in it (``vehicle.loads.in_use_table``)."""
    tread, rigid = (vehicle.tyre_tread, vehicle.rigid) if vehicle is not None else (None, False)
    return tuple((a.name, a.lower, a.source) for a in in_use_table(wanted.in_use, tread, rigid))


def assess_chance(
    vehicle: Vehicle,
    surface: Surface,
    ride: Ride,
    clearance: Clearance,
    error: ErrorModel,
    wanted: Wanted,
    seed: int = 0,
    draws: int = 200,
    evidence: Evidence | None = None,
    allowances: tuple[tuple[str, float, str], ...] = (),
) -> Chance:
    """What can be said of the least clearance. ``allowances`` empty: today, as measured;
    ``in_use_allowances``: in use.

    evidence : strings, levels and witnesses.  Each allowance is taken as anything from none to all of it,
    equally likely.
    """
    drawn = draw_clearances(vehicle, surface, ride, clearance, error, seed, draws, evidence)
    if drawn is None:
        said = ("no part of the vehicle meets measured ground",)
        return Chance(
            float("nan"),
            (float("nan"),) * 2,
            float("nan"),
            "cannot tell",
            "cannot tell",
            float("nan"),
            1.0,
            0,
            said,
        )
    return chance_of(drawn, clearance, error, wanted, seed, allowances)


def chance_of(
    drawn: Draws,
    clearance: Clearance,
    error: ErrorModel,
    wanted: Wanted,
    seed: int = 0,
    allowances: tuple[tuple[str, float, str], ...] = (),
) -> Chance:
    """``assess_chance`` from draws at hand, so that today and in use share them."""
    likely = drawn.estimate - (drawn.once - drawn.once.mean())
    rng = np.random.default_rng([seed, 1])
    for _, size, _ in allowances:
        likely = likely - size * rng.random(len(likely))
    return _summed_up(likely, drawn, clearance, error, wanted)


def chance_of_plan(
    drawn: Draws, scanned: float, planned: Clearance, error: ErrorModel, wanted: Wanted
) -> Chance:
    """What can be said of the least clearance once the plan is cut to the millimetre.

    drawn : from before the cut.  scanned : least gap before, on the surface as scanned, m.  planned : swept on the planned surface.
    The planned surface is as wrong as the scan it was made from, but flat to the plan: the least of its gaps changes with a drawn error
    as it is, and only the lift of tyres by noise is taken off (as in ``margin_for``). What hand readings moved the gap by counts here too.
    """
    worst = planned.worst
    gap = worst.gap if worst is not None else float("nan")
    likely = gap + (drawn.base - scanned) + (drawn.once - drawn.base) - 2.0 * drawn.tyre_bias
    return _summed_up(likely, drawn, planned, error, wanted)


def _summed_up(
    likely: FloatArray, drawn: Draws, clearance: Clearance, error: ErrorModel, wanted: Wanted
) -> Chance:
    """The chance that drawn least clearances (n,), m, amount to."""
    least, spread = float(likely.mean()), float(likely.std())
    touch = smoothed_below(likely, 0.0)
    scan = 1.0 - float(np.clip(drawn.vehicle.var() / max(float(drawn.once.var()), 1e-18), 0.0, 1.0))
    verdict, reasons = _verdict(touch, clearance, drawn, error, wanted.confidence)
    interval = (least - 1.96 * spread, least + 1.96 * spread)
    return Chance(least, interval, touch, verdict, in_words(touch), spread, scan, len(likely), reasons)


def _verdict(
    touch: float, clearance: Clearance, drawn: Draws, error: ErrorModel, confidence: float
) -> tuple[str, tuple[str, ...]]:
    reasons = list(drawn.fold.contradictions)
    if "prior" in error.warp_source:
        reasons.append(f"how wrong the scan may be is not measured: {error.warp_source}")
    verdict = "touches" if touch >= confidence else "clears" if touch <= 1 - confidence else "cannot tell"
    seen = int(clearance.gap.measured.sum())
    if verdict == "clears" and clearance.unmeasured > HIDDEN * (seen + clearance.unmeasured):
        verdict = "cannot tell"
        reasons.append(
            f"the underside passes over {clearance.unmeasured} cells that the scan has no ground in"
        )
    return ("cannot tell" if drawn.fold.contradictions else verdict), tuple(reasons)


def smoothed_below(values: FloatArray, level: float) -> float:
    """P(value < level) from draws, each blurred to a small normal of the same total variance: a tail from
    few draws is rough."""
    mean, spread = float(values.mean()), float(values.std())
    if spread < 1e-12:
        return float(mean < level)
    width = 0.4
    centre = mean + np.sqrt(1 - width**2) * (values - mean)
    return float(special.ndtr((level - centre) / (width * spread)).mean())


def in_words(touch: float) -> str:
    """A chance as people say it."""
    if touch < 0.001:
        return "less than 1 in 1,000 that it touches"
    if touch > 0.999:
        return "less than 1 in 1,000 that it clears"
    rare, what = (touch, "touches") if touch <= 0.5 else (1 - touch, "clears")
    return f"about 1 in {round(1 / rare)} that it {what}"


def margin_for(
    vehicle: Vehicle,
    surface: Surface,
    ride: Ride,
    clearance: Clearance,
    error: ErrorModel,
    wanted: Wanted,
    seed: int = 0,
    draws: int = 200,
    evidence: Evidence | None = None,
) -> float:
    """What a cut must keep on top of ``want`` so that the least clearance after it reaches ``want`` with
    ``confidence``, m.

    A planned surface is flat to the plan, so the least of its gaps over all cells and stations is drawn as
    it is: only the lift of
    tyres by noise is taken off. Solves P(margin + drawn change >= 0) = confidence for the margin, on the
    draws.
    """
    drawn = draw_clearances(vehicle, surface, ride, clearance, error, seed, draws, evidence)
    return 0.0 if drawn is None else margin_of(drawn, wanted)


def margin_of(drawn: Draws, wanted: Wanted) -> float:
    """``margin_for`` from draws at hand, m."""
    change = drawn.once - drawn.base - 2.0 * drawn.tyre_bias
    low, high = 0.0, 1.0
    for _ in range(40):
        middle = 0.5 * (low + high)
        low, high = (
            (low, middle) if smoothed_below(change, -middle) <= 1 - wanted.confidence else (middle, high)
        )
    return high
