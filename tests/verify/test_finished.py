"""The grain that a hand leaves: how large it is, and that it is nowhere but where it cut."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from scipy import integrate

from crestcut.base.grid import GridFrame, HeightGrid
from crestcut.terrain.error.covariance import between, matern32, of_functionals, patch_half
from crestcut.terrain.error.draws import FieldMaker, towards
from crestcut.terrain.records import ErrorModel, Known, Surface
from crestcut.terrain.slab.behind import slab_behind
from crestcut.terrain.slab.kept import sharp_of
from crestcut.verify import finished
from crestcut.verify.by_hand import FULL, UNEVEN, WORK, worked
from crestcut.verify.finished import FACTOR, Grain, finished_behind, grain_of
from crestcut.verify.removed import Removed

MODEL = ErrorModel(0.001, 0.0003, 0.1, 0.001, 0.5, "", "", "", known=Known.NAMED)


@pytest.fixture(scope="module")
def judged() -> Surface:
    frame = GridFrame((1.0, -2.0), 0.3, 0.05, (31, 41))
    flat = HeightGrid(frame, np.zeros(frame.shape))
    seen = flat.like(FieldMaker(MODEL, frame, None).draw(np.random.default_rng(0)))
    known = seen.measured
    surface = Surface(seen, seen, seen.like(np.full(known.shape, 1e-4)), known, known, MODEL, (), known.size)
    return slab_behind(surface, MODEL)


def test_only_what_was_cut_is_uneven(judged: Surface) -> None:
    """Drawn fields, covariances at places, of sums and towards them all say the same of it."""
    depth = np.zeros(judged.height.frame.shape)
    depth[:, 20:] = 0.006
    cut = worked(judged, judged.height.like(depth), 1.0)
    assert cut.error.worked == pytest.approx((0.0, UNEVEN * 0.006))
    error, frame = replace(cut.error, worked=(WORK, UNEVEN * 0.006)), cut.height.frame
    at = np.array([5 * 41 + 6, 20 * 41 + 33])  # a node beside the cut, one in it
    places = frame.node_xy().reshape(-1, 2)[at]
    old, new = (np.diag(between(e, places, places)) for e in (judged.error, error))
    assert new - old == pytest.approx([0.0, WORK**2 + (UNEVEN * 0.006) ** 2], rel=1e-3, abs=1e-12)
    maker, plain = (FieldMaker(e, frame, None, nodes=at) for e in (error, judged.error))
    rng = np.random.default_rng(1)
    one = plain.pairs(rng, 100)
    more = np.concatenate([maker.pairs(rng, 100) - one for _ in range(20)], axis=1)
    assert np.abs(more[0]).max() < 1e-9
    assert more[1].std() == pytest.approx((new - old)[1] ** 0.5, rel=0.08)
    sums = tuple(places[k : k + 1] for k in (0, 1)), (np.ones(1), np.ones(1))
    both = between(error, places, places)
    assert of_functionals(error, *sums, (np.zeros(1),) * 2) == pytest.approx(both, rel=1e-4, abs=1e-12)
    assert towards(error, places, *sums) == pytest.approx(both, rel=1e-4, abs=1e-12)


def test_a_shallow_cut_is_less_uneven(judged: Surface) -> None:
    cut = worked(judged, judged.height.like(np.full(judged.height.frame.shape, FULL / 3)), 1.0)
    place = cut.height.frame.node_xy()[10:11, 10]
    more = between(cut.error, place, place) - between(judged.error, place, place)
    assert more[0, 0] == pytest.approx((UNEVEN * FULL / 3) ** 2 / 9, rel=1e-3)


@pytest.mark.parametrize("size", [0.0007, 0.0015, 0.003])
def test_the_size_of_the_grain_is_told_where_there_is_enough_of_it(size: float) -> None:
    """Many patches: the closed form, what the cut shows less what the scan has; few: the prior."""
    scan, narrow = 0.0013**2, 0.7
    shown = narrow * size**2 + scan
    assert grain_of(shown, scan, 1e6, 1e9, narrow).square == pytest.approx(size**2, rel=0.02)
    alone = grain_of(shown, scan, 0.0, 1e9, narrow)
    assert np.exp(alone.weight @ np.log(alone.size)) == pytest.approx(WORK, rel=0.01)
    spread = np.sqrt(alone.weight @ np.log(alone.size / WORK) ** 2)
    assert spread == pytest.approx(np.log(FACTOR), rel=0.01)


@pytest.mark.parametrize("narrow", [1.0, 0.6])
def test_what_is_shared_out_and_left_is_what_simulation_finds(narrow: float) -> None:
    """Sizes from the prior, patches of each drawn and seen: over those that look alike the hand's own is the
    share of what is seen, and wrong by as much as is said; ``narrow`` of the hand's grain is so fine."""
    rng, scan, patches = np.random.default_rng(3), 0.0013**2, 40
    size = WORK * np.exp(np.log(FACTOR) * rng.standard_normal(40_000))
    hand = narrow**0.5 * size[:, None] * rng.standard_normal((len(size), patches))
    seen = hand + scan**0.5 * rng.standard_normal(hand.shape)
    shown = (seen**2).mean(axis=1)
    for like in (0.0014**2, 0.0018**2, 0.0025**2):
        alike = np.abs(shown / like - 1) < 0.04
        grain = grain_of(like, scan, patches, 1e9, narrow)
        share, unsure = grain.shared(np.ones(1), np.array([scan]), narrow)
        left = hand[alike] - share[0] * seen[alike]
        slope = float((hand[alike] * seen[alike]).sum() / (seen[alike] ** 2).sum())
        assert slope == pytest.approx(share[0], abs=0.025)
        assert (left**2).mean() == pytest.approx(share[0] * scan + unsure[0] * like, rel=0.06)


def test_a_smooth_cut_is_not_taken_for_a_rough_one() -> None:
    scan = 0.0013**2
    smooth, rough = (grain_of(s, scan, 150, 1500, 0.73) for s in (scan, scan + 0.73 * WORK**2))
    assert smooth.square**0.5 < 0.0006 and rough.square**0.5 == pytest.approx(WORK, rel=0.1)
    shares = [float(g.shared(np.ones(1), np.array([scan]), 0.73)[0][0]) for g in (smooth, rough)]
    assert shares[0] < 0.15 and shares[1] > 0.4


def test_a_mean_square_over_an_area_is_worth_that_area_over_the_integral_of_the_squared_correlation() -> None:
    """Var(mean of f^2) = 2 s^4 / A times the integral of rho^2 over the plane, for a Gaussian field over an
    area A far larger than its length: as of A over that integral free ones."""
    mask, cell = np.ones((300, 200), bool), 0.02
    one = integrate.quad(lambda r: 2 * np.pi * r * float(matern32(r, patch_half(MODEL))) ** 2, 0, 2)[0]
    assert finished._patches(mask, MODEL, cell) == pytest.approx(mask.sum() * cell**2 / one, rel=1e-3)
    assert finished._patches(~mask, MODEL, cell) == 1.0


def test_a_grain_of_unknown_size_is_left_as_unknown_as_either_makes_it(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """None or 3 mm, as likely: by the law of total variance, what is drawn is half of what 3 mm leave of
    the scan, and a quarter of what they would have explained."""
    frame = GridFrame((0.0, 0.0), 0.0, 0.02, (61, 61))
    flat = HeightGrid(frame, np.zeros(frame.shape))
    scan = ErrorModel(0.0, 0.0013, 0.1, 0.0, 0.4, "", "", "", known=Known.NAMED)
    depth = np.zeros(frame.shape)
    depth[20:41, 20:41] = 0.006
    planned, cut, known = flat.like(depth), depth > 0, flat.measured
    either = Grain(np.array([0.0, 0.003]), np.array([0.5, 0.5]))
    monkeypatch.setattr(finished, "grain_of", lambda *_: either)
    monkeypatch.setattr(finished, "narrow_part", lambda _: 1.0)
    monkeypatch.setattr(finished, "_as_planned", lambda removed, plan: plan.values)
    monkeypatch.setattr(finished, "slab_behind", lambda s, *_: replace(s, scanned=s.height, height=flat))
    rng = np.random.default_rng(2)
    seen = FieldMaker(scan, frame, None).draw(rng) + 0.002 * rng.standard_normal(frame.shape) * cut - depth
    after = Surface(flat.like(seen), flat, flat.like(np.full(frame.shape, 1e-6)), known, known, scan, (), 1)
    nothing = Removed(planned, planned, cut, np.zeros_like(cut), 0.0, 0.0, 0.0, 0.0, 0.0, 0.0)
    found = finished_behind(after, after, nothing, planned, None, 0)
    fine = sharp_of(seen + depth, known, frame.cell)
    own = (1.4826 * np.median(np.abs(fine[~cut]))) ** 2  # less than the scan's patches can be
    explained = 0.003**2 / (0.003**2 + own)
    left = 0.5 * explained * own + 0.25 * explained**2 * np.mean(fine[cut] ** 2)
    assert own < scan.patch**2 and found.error.worked[0] ** 2 == pytest.approx(left, rel=1e-3)
    assert found.height.values[cut] == pytest.approx((0.5 * explained * fine - depth)[cut], abs=1e-6)
