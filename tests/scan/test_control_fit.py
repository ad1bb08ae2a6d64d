"""Places as seen laid on places as surveyed: against planted movements, against its own covariance, and a
point that is wrong."""

from __future__ import annotations

import numpy as np
import pytest
from scipy import stats
from scipy.optimize import least_squares
from scipy.spatial.transform import Rotation

from crestcut.base.grid import FloatArray
from crestcut.scan.control.fit import Fitted, fit_points, spread

JOBS = 100


def planted(
    rng: np.random.Generator, count: int, scale: float = 1.0
) -> tuple[FloatArray, FloatArray, FloatArray, FloatArray]:
    """Points of a slab as seen and where they are, the turn, and where the seen origin goes."""
    seen = np.column_stack([rng.uniform(0, 8, count), rng.uniform(0, 5, count), rng.normal(0, 0.3, count)])
    turn = Rotation.from_euler("z", rng.uniform(-np.pi, np.pi)) * Rotation.random(random_state=rng) ** 0.01
    move = np.array([512_300.0, 4_481_200.0, 210.0]) % 100  # near a local origin, as scans are
    return seen, scale * seen @ turn.as_matrix().T + move, turn.as_matrix(), move


def departure(fit: Fitted, turn: FloatArray, move: FloatArray, scale: float, free: bool) -> FloatArray:
    """What was found less what was planted, in the order of the covariance."""
    at_middle = scale * turn @ fit.movement.middle + move
    small = Rotation.from_matrix(fit.movement.rotation @ turn.T).as_rotvec()
    off = [*small, *(fit.movement.at_middle - at_middle)]
    return np.array([*off, np.log(fit.movement.scale / scale)] if free else off)


@pytest.mark.parametrize("free", [False, True])
def test_a_planted_movement_without_errors(free: bool) -> None:
    rng = np.random.default_rng(1)
    for count in (3, 4, 9):
        scale = 1.003 if free else 1.0
        seen, at, turn, move = planted(rng, count, scale)
        fit = fit_points(seen, at, None, free)
        assert np.abs(departure(fit, turn, move, scale, free)).max() < 1e-9
        assert np.linalg.det(fit.movement.rotation) == pytest.approx(1.0)
        assert fit.redundancy.sum() == pytest.approx(fit.freedom) == 3 * count - (7 if free else 6)
        assert not fit.suspect.named


@pytest.mark.parametrize("free", [False, True])
@pytest.mark.parametrize("stated", [True, False])
def test_the_movement_lies_within_its_own_covariance(free: bool, stated: bool) -> None:
    """The figure: 95 of 100 within 3 sd in each parameter (where the residuals say the sd, what 3 sd are of a
    Student's t with as many degrees); and properly, d' C^-1 d is chi-squared with 6 or 7 degrees where the
    sds are stated, k times an F(k, r) else: below its 95 % point in 95 of 100, give or take
    1.96 sqrt(100 * .95 * .05) = 4.3."""
    rng = np.random.default_rng(7)
    within, all_three, squares = 0, 0, []
    unknowns = 7 if free else 6
    sd = np.array([0.006, 0.006, 0.003]) if stated else np.full(3, 0.005)
    for _ in range(JOBS):
        seen, at, turn, move = planted(rng, 6)
        fit = fit_points(
            seen, at + rng.normal(0, sd, at.shape), np.tile(sd, (6, 1)) if stated else None, free
        )
        off = departure(fit, turn, move, 1.0, free)
        three = 3.0 if fit.known else stats.t.isf(stats.norm.sf(3.0), fit.freedom)
        all_three += bool((np.abs(off) < three * np.sqrt(fit.covariance.diagonal())).all())
        squares.append(float(off @ np.linalg.solve(fit.covariance, off)))
        limit = (
            stats.chi2.ppf(0.95, unknowns)
            if fit.known
            else unknowns * stats.f.ppf(0.95, unknowns, fit.freedom)
        )
        within += squares[-1] < limit
    assert all_three >= 95
    assert 91 <= within <= 99
    if stated:  # mean of chi-squared: its degrees; sd of the mean sqrt(2 k / 100)
        assert np.mean(squares) == pytest.approx(unknowns, abs=3 * np.sqrt(2 * unknowns / JOBS))


def test_weights_against_a_general_solver() -> None:
    rng = np.random.default_rng(3)
    seen, at, *_ = planted(rng, 5)
    sd = rng.uniform(0.002, 0.02, at.shape)
    at = at + rng.normal(0, sd)
    fit = fit_points(seen, at, sd, True)

    def off(q: FloatArray) -> FloatArray:
        turn = Rotation.from_rotvec(q[:3]).as_matrix() @ fit.movement.rotation
        laid = (seen - fit.movement.middle) @ (np.exp(q[6]) * turn.T) + q[3:6]
        return ((laid - at) / sd).ravel()

    start = np.array([0.01, -0.01, 0.02, *(at.mean(axis=0) + 0.1), 0.01])
    best = least_squares(off, start, xtol=1e-15, ftol=1e-15, gtol=1e-15)
    own = off(np.array([0, 0, 0, *fit.movement.at_middle, np.log(fit.movement.scale)]))
    assert own @ own == pytest.approx(2 * best.cost, rel=1e-9)
    # its covariance is the inverse of the squares' curvature, here by differences of that solver
    assert np.linalg.inv(best.jac.T @ best.jac) == pytest.approx(fit.covariance, rel=2e-2, abs=1e-9)


def test_doubt_of_a_place_against_drawn_movements() -> None:
    rng = np.random.default_rng(5)
    seen, at, *_ = planted(rng, 6)
    sd = np.full_like(at, 0.004)
    place = np.array([[9.5, 6.0, 0.2], [4.0, 2.5, 0.0]])
    first = fit_points(seen, at, sd, False)
    laid = [
        fit_points(seen, at + rng.normal(0, 0.004, at.shape), sd, False).movement.apply(place)
        for _ in range(800)
    ]
    # of 800 draws an sd is good to 1 in 40
    assert np.std(laid, axis=0) == pytest.approx(first.sd(first.movement.apply(place)), rel=0.11)


@pytest.mark.parametrize(("count", "stated"), [(4, True), (5, False), (5, True), (8, False)])
def test_a_point_that_is_off_by_50_mm_is_named(count: int, stated: bool) -> None:
    """By 50 mm in any direction, where the others are good to 2 mm."""
    rng = np.random.default_rng(11)
    named, right = 0, 0
    for _ in range(JOBS):
        seen, at, *_ = planted(rng, count)
        at = at + rng.normal(0, 0.002, at.shape)
        wrong, way = int(rng.integers(count)), rng.normal(size=3)
        error = 0.050 * way / np.linalg.norm(way)
        at[wrong] += error
        fit = fit_points(seen, at, np.full_like(at, 0.002) if stated else None, False)
        named += fit.suspect.named
        right += fit.suspect.number == wrong and np.linalg.norm(np.array(fit.suspect.off) - error) < 0.02
    assert named >= 90 and right >= 90


@pytest.mark.parametrize("stated", [True, False])
def test_points_that_are_all_right_are_seldom_called_wrong(stated: bool) -> None:
    """At most 1 job in 20 (Bonferroni is on the safe side): of 400 at most 20 + 2.3 sd of 4.4."""
    rng = np.random.default_rng(13)
    called = 0
    for _ in range(400):
        seen, at, *_ = planted(rng, 6)
        at = at + rng.normal(0, 0.005, at.shape)
        called += fit_points(seen, at, np.full_like(at, 0.005) if stated else None, False).suspect.named
    assert 4 <= called <= 30


def test_what_three_points_can_tell() -> None:
    """Two sides of a triangle are wrong and one is right: the corner between the two is. Of height they say
    nothing: any three heights fit a plane. With a free scale only the shape is left, and that names none."""
    seen, _, turn, move = planted(np.random.default_rng(2), 3)
    seen[:, 2] = 0.0
    at = seen @ turn.T + move
    sd = np.full_like(at, 0.002)
    wrong = at.copy()
    wrong[1, :2] += [0.05, 0.02]
    suspect = fit_points(seen, wrong, sd, False).suspect
    assert suspect.named and suspect.number == 1
    for known in (sd, None):
        assert fit_points(seen, wrong, known, True).suspect.chance is None
    high = at.copy()
    high[1] += 0.05 * turn[:, 2]
    assert np.abs(fit_points(seen, high, sd, False).residuals).max() < 0.002


def test_stated_sds_that_the_residuals_contradict_do_not_stand() -> None:
    rng = np.random.default_rng(17)
    seen, at, *_ = planted(rng, 8)
    at = at + rng.normal(0, 0.010, at.shape)
    fit = fit_points(seen, at, np.full_like(at, 0.001), False)
    assert not fit.known and fit.factor == pytest.approx(10, rel=0.4)


def test_a_mirrored_job_is_turned_over_and_not_mirrored() -> None:
    """East and north changed places in ``at``: the best turn is one about a level axis."""
    seen, at, *_ = planted(np.random.default_rng(19), 5)
    fit = fit_points(seen, at[:, [1, 0, 2]], None, False)
    assert np.linalg.det(fit.movement.rotation) == pytest.approx(1.0) and fit.movement.tilt > np.pi / 2


def test_spread_of_a_line_and_of_a_slab() -> None:
    line = np.array([[0.0, 0, 0], [1, 2, 0], [2, 4, 0]])
    assert spread(line)[1] == pytest.approx(0.0, abs=1e-12)
    slab = np.array([[-3.0, 0, 0], [3, 0, 0], [0, -1, 0], [0, 1, 0]])
    long, across = spread(slab + np.array([70.0, -20.0, 5.0]))  # wherever it lies
    assert (long, across) == pytest.approx((np.sqrt(18 / 4), np.sqrt(2 / 4)))
