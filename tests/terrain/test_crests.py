"""Where a ridge runs, against brute force; heights along it, against planted shapes."""

from __future__ import annotations

import numpy as np
import pytest
from scipy.integrate import quad
from scipy.stats import norm

from crestcut.base.grid import FloatArray
from crestcut.terrain.breaklines.agree import outdone
from crestcut.terrain.breaklines.crests import smooth_crests
from crestcut.terrain.breaklines.fits import LineFits
from crestcut.terrain.breaklines.hinge import HALF_ALONG, HINGE, ROUNDINGS
from crestcut.terrain.breaklines.lines import BENT, refine, straightened
from crestcut.terrain.breaklines.neighbours import Candidates
from crestcut.terrain.breaklines.ridges import SPACING, BreakPoints
from crestcut.terrain.heights.local import CellMeans

PITCH, FOLD = 0.01, -0.1


@pytest.mark.parametrize(("k", "sd"), [(0.0, 0.05), (0.1, 0.05), (-0.2, 0.04), (0.3, 0.2)])
def test_a_bow_is_straightened_to_its_posterior_mean(k: float, sd: float) -> None:
    """Bayes' rule by numerical integration: half straight, half N(0, BENT^2)."""
    slab = [
        quad(lambda b, p=p: b**p * norm.pdf(k, b, sd) * norm.pdf(b, 0, BENT), -2, 2, points=[k])[0]
        for p in (0, 1)
    ]
    mean = slab[1] / (slab[0] + norm.pdf(k, 0, sd))
    share = straightened(np.array([k]), np.array([sd**2]))[0]
    assert k * share == pytest.approx(mean, abs=1e-9)


def ridge(off: FloatArray, along: FloatArray, variance: float) -> tuple[FloatArray, FloatArray]:
    """Lines and places of knots at ``along`` m on a straight row whose windows each have their break ``off``
    m beyond it, with the information of an 8 mm scan's window."""
    n = len(along)
    place = np.column_stack([np.zeros(n), along / PITCH, np.zeros(n)])
    fits = LineFits.empty(n)
    fits.rss[:], fits.flat[:], fits.half[:], fits.points[:] = 1.0, 1.0, 0.22, 528.0
    fits.fold[:], fits.sure[:] = FOLD, 33.0
    fits.beside[:] = -2 * FOLD * off
    line = refine(Candidates(place, np.full(n, HINGE, np.int8), np.zeros((n, 4)), PITCH, variance), fits)
    return line, place


def test_a_refined_line_runs_through_the_breaks_of_its_windows() -> None:
    """A parabola so sure that nothing of it is straightened; every knot sees it from its own place."""
    along = np.arange(-1.2, 1.21, SPACING)
    line, _ = ridge(0.004 - 0.01 * along + 0.02 * along**2, along, 1e-12)
    assert line[:, 0] == pytest.approx(0.004 - 0.01 * along + 0.02 * along**2, abs=2e-4)
    assert line[:, 1] == pytest.approx(-0.01 + 0.04 * along, abs=1e-3)
    assert line[:, 2] == pytest.approx(0.02, abs=1e-3)


def test_the_said_error_of_a_line_is_the_one_it_has() -> None:
    """Eight knots share each point: their windows are moving means over independent strips of slab."""
    rng, along = np.random.default_rng(0), np.arange(-1.2, 1.21, SPACING)
    share = round(2 * HALF_ALONG / SPACING)
    pulls, variance = [], 0.008**2
    sd = np.sqrt(variance / (4 * FOLD**2 * 33.0))
    for _ in range(200):
        strips = rng.standard_normal(len(along) + share - 1) * sd * np.sqrt(share)
        line, _ = ridge(np.convolve(strips, np.full(share, 1 / share), "valid"), along, variance)
        pulls.append(line[:, 0] ** 2 / line[:, 3])
    assert np.sqrt(np.mean(pulls)) == pytest.approx(1.0, abs=0.15)


def knots_of(along: FloatArray, fold: float, rho: float, turned: FloatArray) -> BreakPoints:
    """Hinges along column 80 of a grid from knots half a cell beside it, those ``turned`` facing the other
    way."""
    n = len(along)
    angle = np.where(turned, np.pi, 0.0)
    params = np.zeros((n, 9))
    params[:, 3], params[:, 4], params[:, 7] = fold, np.where(turned, -0.005, 0.005), rho
    place = np.column_stack([np.full(n, 79.5), along / PITCH, angle])
    spread = np.tile([0.003, 0.0], (n, 1))
    return BreakPoints(
        place, np.full(n, HINGE, np.int8), params, np.zeros((n, 9, 9)), spread, np.full(n, 0.22)
    )


def test_a_known_shape_is_put_back_whole() -> None:
    """Rounded hinge on a slope, knots facing either way: no height is lost at the crest, and the standard
    error there has the place's own share, |e| sd."""
    x, y = np.meshgrid(np.arange(161) * PITCH, np.arange(121) * PITCH)
    rho, along = ROUNDINGS[2], np.arange(0.2, 1.01, SPACING)
    z = 0.03 * x - 0.02 * y + FOLD * np.hypot(x - 0.8, rho)
    knots = knots_of(along, FOLD, rho, np.arange(len(along)) % 3 == 1)
    out = smooth_crests(knots, CellMeans(np.ones_like(z), z, np.ones(z.shape, bool), PITCH, 1e-4), 1.0)
    on = out.say > 0.1
    assert on[60, 65:96].all() and not on[:, :60].any()
    assert out.height[on] == pytest.approx(z[on], abs=2e-5)
    assert np.sqrt(out.variance)[60, 80] == pytest.approx(0.1 * 0.003, rel=0.05)


def test_a_shape_that_is_not_there_is_smoothed_away() -> None:
    """A fold of 6 % claimed on a plane stands 6 mm high at 0.2 m; hardly any of it may stay."""
    x, y = np.meshgrid(np.arange(161) * PITCH, np.arange(121) * PITCH)
    z = 0.03 * x - 0.02 * y
    along = np.arange(0.2, 1.01, SPACING)
    knots = knots_of(along, -0.03, 0.0, np.zeros(len(along), bool))
    out = smooth_crests(knots, CellMeans(np.ones_like(z), z, np.ones(z.shape, bool), PITCH, 1e-3), 1.0)
    on = out.say > 0.1
    assert np.abs(out.height[on] - z[on]).max() < 0.6e-3


@pytest.mark.parametrize(("apart", "other", "dropped"), [(0.1, -0.05, 1), (0.1, 0.05, 0), (0.3, -0.05, 0)])
def test_of_two_lines_too_near_to_tell_apart_the_weaker_goes(
    apart: float, other: float, dropped: int
) -> None:
    """Where they fold the same way; a gutter's two breaks do not."""
    along = np.arange(0, 1.0, SPACING)
    n = len(along)
    place = np.column_stack([np.repeat([0.0, apart / PITCH], n), np.tile(along / PITCH, 2), np.zeros(2 * n)])
    fold, gain = np.repeat([FOLD, other], n), np.repeat([30.0, 12.0], n)
    both = Candidates(place, np.full(2 * n, HINGE, np.int8), np.zeros((2 * n, 4)), PITCH, 1e-6)
    gone = outdone(both, fold, gain)
    assert not gone[:n].any() and gone[n:].all() == bool(dropped) and gone.any() == bool(dropped)
