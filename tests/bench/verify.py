"""Finished work of known truth, checked by a scan or by hand: do the intervals hold it? Prints data, figures
and seconds.

python tests/bench/verify.py [cases] [scan | hand | both] [rough] [fine] [smooth]
python tests/bench/verify.py [cases] rest [rough] [fine] [smooth] [gaps] [scan] [strings] [twice]

Slabs are simulated on the grid: a crest, seen once before the work and once after it, each time with an error
of white, patch and warp of its own; the plan is made from the first, and cut to a share of it, by a hand that
is uneven. By hand alone, two gaps are felt under the standing vehicle. ``rest``: half-done jobs, what is said
to be short against what is truly missing, and how much room there is once that pass is ground: by three gaps,
by strings (the vehicle known to 0.5 mm, since strings say nothing of it), by scan alone; and a gap that is
read a second time, 6 mm otherwise. The fit of heights has its own bench.
"""

from __future__ import annotations

import sys
import time
from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path
from types import SimpleNamespace
from typing import NamedTuple

import numpy as np

sys.path.insert(0, str(Path(__file__).parents[1]))
from coverage_of_chance import MODEL

from crestcut.chance.witness import witness_evidence
from crestcut.cut.limits import cut_limits
from crestcut.cut.plan import cut_surface, plan_cut
from crestcut.job.answers import Source
from crestcut.job.records import (
    CutWish,
    Job,
    PlanPoint,
    ScanChoice,
    Settings,
    Slab,
    StringReading,
    Travel,
    VehicleChoice,
    Wanted,
    Witness,
)
from crestcut.standing import LoadedVehicle
from crestcut.terrain.readings.records import Evidence
from crestcut.terrain.readings.strings import strings_evidence
from crestcut.terrain.records import ErrorModel, Surface
from crestcut.terrain.slab.behind import FLATNESS_FACTOR
from crestcut.terrain.slab.split import USUAL_FLATNESS, FieldPriors, curvature_of
from crestcut.vehicle.records import AS_MEASURED
from crestcut.verify.by_hand import agreeing, likely_shares, told_by, worked
from crestcut.verify.finished import finished_behind
from crestcut.verify.now import all_now, mixed
from crestcut.verify.records import Now, Short
from crestcut.verify.removed import Removed, removed_between
from crestcut.verify.rest import ground_now, pass_of, short_of, still_to_go
from scenes import Scene, belly, crest, scene, stand, vehicle
from simulated import draw_fields, judged_from, seen_from

TRAVEL = Travel(line=(), wander=0.0, heading=0.0)
CONCRETE = FieldPriors(curvature_of(USUAL_FLATNESS), FLATNESS_FACTOR, MODEL.warp, 1.0, MODEL.warp_length)
WITHIN, MARGIN = 0.002, 0.004  # m: of the vehicle's clearance, 1 sd; kept by the plan on top of what is asked
HAND = ErrorModel(0.0, 1.0, 0.1, 0.0, 0.4, "", "", "")  # unevenness of the hand, in m of it
UNEVEN = {"rough": 0.0015, "smooth": 0.0, "fine": 0.0007}  # m, 1 sd of it where it cuts
FELT, PLACED = 0.0005, 0.003  # m, 1 sd of a stack of cards, and of where the vehicle stood
LANES, HALF, BLOCKS = (-0.4, 0.0, 0.4), 1.3, 0.2  # m: strings left of the line, half of one, under its ends
WAYS = ("gaps", "scan", "strings", "twice")
FRONT, THREE = (1.2, 1.6), (1.2, 1.4, 1.6)  # m: where the front axle stood for each gap; half-way, three


class Case:
    """One slab, its plan, and the truth of the finished work."""

    def __init__(self, seed: int, low: float, high: float, uneven: float, within: float = WITHIN) -> None:
        rng = np.random.default_rng([seed, 7])
        self.car = vehicle(replace(belly(), within=within))
        grade, skew = rng.uniform(0.09, 0.12), rng.uniform(0.0, 0.3)
        flat = scene(crest(grade, skew), self.car, TRAVEL, (-3.2, 0), (3.2, 0))
        # waves as concrete has them: an estimate is unbiased over slabs as they are, not over one of them
        wave = CONCRETE.setting(np.random.default_rng([seed, 8]).standard_normal(4))
        layer = ErrorModel(0.0, 0.0, 0.1, wave.slab, wave.slab_length, "", "", "")
        height = flat.surface.height
        height = height.like(height.values + next(draw_fields(layer, height.frame, None, seed + 77, 1)))
        self.true = stand(self.car, TRAVEL, flat.line, replace(flat.surface, height=height, top=height))
        self.before = judged_from(self.true, seed, MODEL, grade, skew)
        stood = stand(self.car, TRAVEL, self.true.line, self.before)
        limits = cut_limits(self.before, 0.2, "deepest", 0.25, [])
        self.plan = plan_cut(stood.passage, limits, Wanted(), MARGIN)
        self.share = rng.uniform(low, high)
        asked = self.share * np.nan_to_num(self.plan.depth.values)
        odd = uneven * next(draw_fields(HAND, self.plan.depth.frame, None, seed + 5, 1))
        self.depth = np.maximum(asked + odd * np.clip(asked / 0.003, 0.0, 1.0), 0.0)
        self.finished: Scene = stand(
            self.car, TRAVEL, self.true.line, cut_surface(self.true.surface, self.depth)
        )
        assert self.finished.before.worst is not None
        self.wrong = rng.normal(0.0, within)  # the vehicle's own clearance was measured this much wrong
        self.gap = self.finished.before.worst.gap + self.wrong
        slab, cut = Slab(thickness=2.0, thickness_from=Source.DRILLED), CutWish(deepest=0.2)
        self.job = Job(
            Path("case"), "case", ScanChoice(()), VehicleChoice(Path("case")), TRAVEL, slab=slab, cut=cut
        )
        self.driver, self.rng = LoadedVehicle(self.car, (AS_MEASURED,), True), rng

    def scanned(self, seed: int) -> tuple[Now, Removed]:
        """Checked by a scan of its own errors."""
        after = seen_from(self.finished, seed + 3 * 10**6, MODEL)
        removed = removed_between(self.before.as_scanned(), after, self.plan.depth, 0.001)
        slab = finished_behind(self.before, after, removed, self.plan.depth, None, seed)
        job = replace(self.job, settings=Settings(seed))
        (now,) = all_now(job, slab, [self.driver], [self.true.line], [None])
        return now, removed

    def felt(self, front: Sequence[float] = FRONT) -> tuple[Witness, ...]:
        """Gaps as cards would say them, the vehicle a little off its stated place."""
        found = []
        for x in front:
            stood = Witness("belly", PlanPoint(x + self.rng.normal(0, PLACED), 0.0), "as measured", gap=0.0)
            read = self.read((stood,), self.finished.surface)
            gap = read.readings[0].exactly + self.wrong + self.rng.normal(0.0, FELT)
            found.append(
                Witness("belly", PlanPoint(x, 0.0), "as measured", gap=gap, within=FELT, placed=PLACED)
            )
        return tuple(found)

    def read(self, witnesses: tuple[Witness, ...], ground: Surface) -> Evidence:
        read = witness_evidence(
            witnesses, self.car, ground, self.true.line, (AS_MEASURED,), lambda p: (p.x, p.y), 0
        )
        assert read is not None
        return read

    def strings(self) -> tuple[StringReading, ...]:
        """Strings lengthways between the wheels, read over the crest and beside it to half a millimetre."""
        height, found = self.finished.surface.height, []
        for v in LANES:
            za, zb = (float(height.sample((x, v))) for x in (-HALF, HALF))
            for x in (-0.15, 0.0, 0.15):
                string = za + (zb - za) * (x + HALF) / (2 * HALF) + BLOCKS
                down = string - float(height.sample((x, v))) + self.rng.normal(0.0, FELT)
                a, b = PlanPoint(-HALF, v), PlanPoint(HALF, v)
                found.append(StringReading(a, b, x + HALF, BLOCKS, down, FELT, PLACED))
        return tuple(found)

    def rest(self, seed: int, way: str, wrong: float = 0.0) -> Rest | None:
        """What is said to be short, and what the next pass takes; None where readings contradict.

        wrong : m, by which the first gap is read otherwise a second time, in the same place.
        """
        job, confidence = replace(self.job, settings=Settings(seed)), self.job.wanted.confidence
        if way == "scan":
            after = seen_from(self.finished, seed + 3 * 10**6, MODEL)
            removed = removed_between(self.before.as_scanned(), after, self.plan.depth, 0.001)
            ground = finished_behind(self.before, after, removed, self.plan.depth, None, seed)
            (now,) = all_now(job, ground, [self.driver], [self.true.line], [None])
            gone, moved, read = np.nan_to_num(removed.depth.values), self.driver, lambda _: None
        else:
            gaps = self.felt(THREE) if way == "gaps" else ()
            strings = self.strings() if way == "strings" else ()
            if wrong:
                gaps = (*gaps, replace(gaps[0], gap=gaps[0].gap + wrong))

            def read(ground: Surface) -> Evidence:
                if gaps:
                    return self.read(gaps, ground)
                found = strings_evidence(strings, ground, lambda p: (p.x, p.y), 0)
                assert found is not None
                return found

            shares = likely_shares(self.before, self.plan.depth, self.driver, read)
            if shares.fights:
                return None
            nows, weights = [], [w for _, w in shares.nodes]
            for share, _ in shares.nodes:
                ground = worked(self.before, self.plan.depth, share)
                nows.append(all_now(job, ground, [self.driver], [self.true.line], [read(ground)])[0])
            now = replace(
                nows[int(np.argmax(weights))], spare=mixed([n.spare for n in nows], weights, confidence)
            )
            ground, removed = worked(self.before, self.plan.depth, shares.share.best), None
            gone = shares.share.best * np.nan_to_num(self.plan.depth.values)
            ground, moved = told_by(ground, self.driver, read(ground), seed)
        told = all_now(job, ground, [moved], [self.true.line], [agreeing(read(ground))])
        short = short_of(now)
        clearance = {"touches": "not yet", "clears": "done"}.get(now.spare.verdict, "cannot tell")
        sure = clearance == "not yet"
        margin = pass_of(now, told[0], job.wanted).margin if sure else 0.0
        lies = ground_now(ground, gone, self.plan, removed)
        fleet, _ = still_to_go(job, SimpleNamespace(scan=None), told, lies, [margin], clearance)
        taken = np.nan_to_num(fleet.plan.depth.values) if sure else np.zeros_like(self.depth)
        left = stand(
            self.car, TRAVEL, self.true.line, cut_surface(self.true.surface, self.depth + taken)
        ).before.worst
        assert left is not None
        return Rest(short, clearance, fleet.plan.deepest, left.gap + self.wrong)

    def by_hand(self, seed: int) -> tuple[float, float, float, float, float]:
        """Best estimate and interval's ends of the least gap, chance that less than asked is left, share."""
        witnesses, confidence = self.felt(), self.job.wanted.confidence
        shares = likely_shares(self.before, self.plan.depth, self.driver, lambda g: self.read(witnesses, g))
        nows, job = [], replace(self.job, settings=Settings(seed))
        for share, _ in shares.nodes:
            ground = worked(self.before, self.plan.depth, share)
            read = self.read(witnesses, ground)
            nows.append(all_now(job, ground, [self.driver], [self.true.line], [read])[0])
        weights = [w for _, w in shares.nodes]
        today = mixed([n.today for n in nows], weights, confidence)
        spare = mixed([n.spare for n in nows], weights, confidence)
        return today.least_clearance, *today.interval, spare.chance_of_contact, shares.share.best


class Rest(NamedTuple):
    """short : as said.  deepest : m, of the pass.  left : m, the true least gap once it is ground."""

    short: Short
    clearance: str
    deepest: float
    left: float


def the_rest(count: int, uneven: float, ways: Sequence[str]) -> None:
    """Half-done jobs by each way of looking, and what a wrong reading does."""
    want = Wanted().want
    for way in (w for w in ways if w != "twice"):
        within = 0.0005 if way == "strings" else WITHIN
        start, rows = time.process_time(), []
        for k in range(count):
            case = Case(k + 20_000, 0.15, 0.9, uneven, within)
            found = case.rest(k, way)
            if found is None:
                continue
            s, missing = found.short, want - case.gap
            sure = found.clearance == "not yet"
            rows.append((missing, s.best, *s.interval, sure, found.deepest, found.left - want))
        missing, best, low, high, sure, deepest, left = np.array(rows).T
        sure = sure.astype(bool)
        each = (time.process_time() - start) / count
        print(f"still to go by {way}, {len(rows)} of {count} jobs ({each:.1f} s each):", flush=True)
        miss = (best - missing) * 1e3
        print(
            f"  short against truly missing: off by {miss.mean():+.2f} mean, {miss.std():.2f} sd, at most"
            f" {np.abs(miss).max():.2f}, within 2 mm {np.mean(np.abs(miss) < 2):.1%}; held by its interval"
            f" {np.mean((low <= missing) & (missing <= high)):.1%}"
        )
        off = (deepest - missing)[sure] * 1e3
        over = left[sure] * 1e3
        print(
            f"  passes handed out {sure.sum()}: depth less what is missing {off.mean():+.2f} mean,"
            f" {off.std():.2f} sd; room left over what was asked {over.mean():+.2f} mean, {over.std():.2f}"
            f" sd, at most {over.max():+.2f}; more than 1 mm too deep {np.sum(over > 1)}"
        )
    if "twice" in ways:
        told = [
            Case(k + 20_000, 0.15, 0.9, uneven).rest(k, "gaps", wrong) is None
            for k in range(count) for wrong in (-0.006, 0.006)
        ]  # fmt: skip
        print(f"a gap read twice, 6 mm apart: contradiction told {sum(told)} of {len(told)}")


def said(name: str, truth: np.ndarray, best: np.ndarray, low: np.ndarray, high: np.ndarray) -> str:
    """Coverage, its own standard error, bias and width, mm."""
    miss, held = (best - truth) * 1e3, np.mean((low <= truth) & (truth <= high))
    give = np.sqrt(held * (1 - held) / len(miss))
    return (
        f"  {name}: held {held:.1%} (give or take {give:.1%}), mean error {miss.mean():+.2f},"
        f" sd {miss.std():.2f}, half width"
        f" {np.mean(high - low) * 500:.2f}, of half of them {np.median(high - low) * 500:.2f} at most"
    )


def decided(chance: np.ndarray, spare: np.ndarray) -> str:
    """How often each verdict was given, and how often it was wrong."""
    done, not_yet = chance <= 0.05, chance >= 0.95
    return (
        f"  verdicts: done {done.sum()} (wrong {(spare[done] < 0).sum()}), not yet {not_yet.sum()}"
        f" (wrong {(spare[not_yet] >= 0).sum()}), cannot tell {(~done & ~not_yet).sum()}"
    )


def by_scan(count: int, uneven: float) -> None:
    """One scan after the work."""
    want, start, rows, depths = Wanted().want, time.process_time(), [], []
    for k in range(count):
        case = Case(k, 0.0, 1.2, uneven)
        now, removed = case.scanned(k)
        inside = case.depth > 0.004
        centre = inside & (case.depth > 0.8 * case.depth.max())
        if centre.any():
            miss, sd = (removed.depth.values - case.depth)[centre], removed.sd.values[centre]
            depths.append((float(miss.mean()), float(np.sqrt((miss**2).mean())), float(sd.mean())))
        true = float(case.depth.sum()) * 1e-4
        rows.append((
            case.gap, now.today.least_clearance, *now.today.interval, now.spare.chance_of_contact,
            removed.volume, removed.volume_sd, true, float(removed.elsewhere.any()),
        ))  # fmt: skip
    gap, best, low, high, chance, volume, volume_sd, true, odd = np.array(rows).T
    print(f"by one scan after the work ({(time.process_time() - start) / count:.2f} s each):")
    print(said("least gap", gap, best, low, high))
    print(decided(chance, gap - want))
    z = (volume - true) / volume_sd
    print(
        f"  litres gone: 95 % held {np.mean(np.abs(z) < 1.96):.1%}, error {1e3 * (volume - true).std():.2f}"
        f" sd (said {1e3 * volume_sd.mean():.2f}) of {1e3 * true.mean():.2f}"
    )
    _, rms, sd = np.array(depths).T
    print(f"  depth at its deepest: off by {rms.mean() * 1e3:.2f} rms, said {sd.mean() * 1e3:.2f} (1 sd)")
    print(f"  ground called cut that was not: {odd.sum():.0f} of {count} slabs")


def by_hand(count: int, uneven: float) -> None:
    """Two felt gaps alone."""
    want, start, rows = Wanted().want, time.process_time(), []
    for k in range(count):
        case = Case(k + 10_000, 0.0, 1.2, uneven)
        rows.append((case.gap, *case.by_hand(k), case.share))
    gap, best, low, high, chance, share, true_share = np.array(rows).T
    print(f"by two felt gaps alone ({(time.process_time() - start) / count:.2f} s each):")
    print(said("least gap", gap, best, low, high))
    print(decided(chance, gap - want))
    off = share - true_share
    print(f"  share of the plan: off by {off.std():.2f} sd, mean {off.mean():+.2f}")


def main() -> None:
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 120
    print(f"{count} crests of 9 to 12 % a side; white 0.7, patch 1.3, warp 4.3 mm at 0.35 m; vehicle 2 mm;")
    which = sys.argv[2] if len(sys.argv) > 2 else "both"
    for name in [w for w in sys.argv[3:] if w in UNEVEN] or UNEVEN:
        print(f"cut to 0 to 120 % of the plan, {name}: uneven by {UNEVEN[name] * 1e3} mm; mm throughout")
        if which in ("both", "scan"):
            by_scan(count, UNEVEN[name])
        if which in ("both", "hand"):
            by_hand(count, UNEVEN[name])
        if which == "rest":
            the_rest(count, UNEVEN[name], [w for w in sys.argv[3:] if w not in UNEVEN] or WAYS)


if __name__ == "__main__":
    main()
