"""Heights against closed forms and simulated truth: planes, crests, steps, joints."""

from __future__ import annotations

import numpy as np
import pytest
from surface_scene import Crest, crest_scan, scan_of

from crestcut.base.grid import FloatArray, GridFrame
from crestcut.terrain.build import build_surface
from crestcut.terrain.heights.local import CellMeans, fit_local
from crestcut.terrain.records import ErrorModel, Surface

# the error model is not looked at here, and takes longer to find than the heights
NO_ERROR = ErrorModel(0.0, 0.0, 0.1, 0.0, 0.4, "", "", "")


def errors(crest: Crest, surface: Surface) -> tuple[FloatArray, FloatArray]:
    """Error of every node (m) and its distance past the break (m)."""
    xy = surface.height.frame.node_xy()
    return surface.height.values - crest.height(xy), crest.across(xy)


def test_a_plane_without_noise_is_exact() -> None:
    rng = np.random.default_rng(3)
    xy = rng.uniform(-0.3, 1.5, (60_000, 2))
    scan = scan_of(np.column_stack([xy, 0.07 + 0.11 * xy[:, 0] - 0.05 * xy[:, 1]]))
    surface = build_surface(scan, GridFrame((0.0, 0.0), 0.2, 0.010, (81, 101)))
    at = surface.height.frame.node_xy()
    assert np.nanmax(np.abs(surface.height.values - (0.07 + 0.11 * at[..., 0] - 0.05 * at[..., 1]))) < 2e-5
    assert np.nanmax(surface.top.values - surface.height.values) < 1e-6  # zero on planes whatever their slope


@pytest.mark.parametrize("angle", [0.0, 0.5])
def test_a_sharp_crest_without_noise_is_not_rounded(angle: float) -> None:
    crest = Crest("sharp", angle)
    surface = build_surface(*crest_scan(crest, 1, noise=0.0, density=50_000, size=(1.2, 1.0)))
    error, across = errors(crest, surface)
    assert np.nanmax(np.abs(error)) < 3e-4
    assert np.nanmax(np.abs(error[np.abs(across) > 0.1])) < 3e-5


def test_the_highest_in_the_cell_is_the_crest_between_two_nodes() -> None:
    """Half a cell times the grade: a crest of +-10 % midway between nodes stands 0.5 mm over both."""
    crest = Crest("sharp", 0.0, grade=0.20, at=(0.005, 0.0))
    scan, frame = crest_scan(crest, 2, noise=0.0, density=50_000, size=(1.2, 1.0))
    points = scan.points.copy()
    points[:, 2] += 0.10 * points[:, 0]  # falls by 10 % on both sides
    surface = build_surface(scan_of(points), frame)
    column = round((0.0 - frame.origin[0]) / frame.cell)
    lift = (surface.top.values - surface.height.values)[20:-20, column : column + 2]
    assert np.median(lift) == pytest.approx(0.5e-3, abs=0.15e-3)


@pytest.fixture(scope="module")
def phone() -> dict[str, list[tuple[FloatArray, FloatArray, FloatArray]]]:
    """Error, its standard error (m) and distance past the break (m) of every node, over seeded phone scans:
    3,000 points/m2, 8 mm noise, a 20 % break at any angle to the grid."""
    out: dict[str, list[tuple[FloatArray, FloatArray, FloatArray]]] = {}
    for kind in ("sharp", "round", "plan"):
        for seed in range(6):
            crest = Crest(kind, np.random.default_rng(500 + seed).uniform(0, np.pi))
            surface = build_surface(*crest_scan(crest, seed), error=NO_ERROR)
            error, across = errors(crest, surface)
            out.setdefault(kind, []).append((error, surface.standard_error.values, across))
    return out


@pytest.mark.parametrize("kind", ["sharp", "round", "plan"])
def test_phone_noise_leaves_the_crest_within_its_figures(phone, kind: str) -> None:  # type: ignore[no-untyped-def]
    """Bias 0.5 mm, RMSE 1.1 mm within 5 mm of the break, 0.6 mm on plain parts; the bench has more scans."""
    near = np.concatenate([error[np.abs(across) < 0.005] for error, _, across in phone[kind]])
    plain = np.concatenate([error[np.abs(across) > 0.3] for error, _, across in phone[kind]])
    assert abs(np.mean(near)) <= 0.5e-3
    assert np.sqrt(np.mean(near**2)) <= 1.1e-3
    assert np.sqrt(np.mean(plain**2)) <= 0.6e-3


def test_the_standard_error_is_honest_at_breaks_and_on_plain_parts(phone) -> None:  # type: ignore[no-untyped-def]
    """Errors over their standard errors have unit spread. Few independent places lie at the breaks of
    eighteen scans: about fifty, so that their spread is known to a tenth."""
    for inside, outside, within in ((0.0, 0.005, 0.25), (0.3, 9.0, 0.1)):
        pull = np.concatenate(
            [
                (error / sd)[(np.abs(across) >= inside) & (np.abs(across) < outside)]
                for scans in phone.values()
                for error, sd, across in scans
            ]
        )
        assert np.sqrt(np.mean(pull**2)) == pytest.approx(1.0, abs=within)


@pytest.mark.parametrize("angle", [0.4, 0.8, 1.7, 2.6])
def test_a_step_of_25_mm_stays_a_step(angle: float) -> None:
    """10 to 90 % of its fall within 30 mm, at any angle to the grid."""
    crest = Crest("step", angle)
    surface = build_surface(*crest_scan(crest, 5), error=NO_ERROR)
    error, across = errors(crest, surface)
    fall = error - np.where(across > 0, 0.025, 0.0)  # what is left of the truth's slope is the step alone
    bins = np.arange(-0.06, 0.06, 0.005)
    means = np.array([np.nanmean(fall[(across >= b) & (across < b + 0.005)]) for b in bins])
    middles = bins + 0.0025
    wide = np.interp(0.0225, -means, middles) - np.interp(0.0025, -means, middles)
    assert wide <= 0.030


def tyre_heights(surface: Surface, radius: float = 0.315, width: float = 0.2) -> FloatArray:
    """Lowest point of a tyre rolled along the middle row: dilation by a disk, flat across."""
    h, cell = surface.height.values, surface.height.frame.cell
    half, middle = int(width / 2 / cell), h.shape[0] // 2
    profile = h[middle - half : middle + half + 1].max(axis=0)
    k = int(0.2 / cell)
    drop = radius - np.sqrt(radius**2 - (np.arange(-k, k + 1) * cell) ** 2)
    return np.array([(profile[i - k : i + k + 1] - drop).max() for i in range(k, len(profile) - k)])


@pytest.mark.parametrize(
    ("noise", "density", "seed"), [(0.0, 30_000, 1), (0.002, 20_000, 1), (0.008, 3000, 1), (0.008, 3000, 2)]
)
def test_a_joint_does_not_lower_a_tyre(noise: float, density: float, seed: int) -> None:
    """12 mm wide, 25 mm deep (a quarter of a 100 mm slab, ACI 302), the same noise with and without it.

    At 8 mm noise the points that the joint swallows alone, taken away by hand, move a tyre by 0.35 mm at the
    worst place of the worst of 16 scans; the bench has both."""
    crest = Crest("sharp", 0.0, at=(5.0, 0.0))  # out of sight: a plain slab

    def groove(xy: FloatArray) -> FloatArray:
        return np.where(np.abs(xy[:, 0] + 0.3 * xy[:, 1]) < 0.006, -0.025, 0.0)

    bare, jointed = (
        tyre_heights(build_surface(*crest_scan(crest, seed, noise, density, extra=extra), error=NO_ERROR))
        for extra in (None, groove)
    )
    assert np.max(np.abs(jointed - bare)) <= 2e-4


def test_sparse_fits_of_wide_windows_are_the_dense_ones() -> None:
    rng = np.random.default_rng(0)
    shape = (70, 90)
    j, i = np.indices(shape)
    z = 0.002 * i + 0.03 * np.sin(i / 25) * np.cos(j / 30)
    count = rng.poisson(1.0, shape).astype(float)
    means = CellMeans(count, z, np.ones(shape, bool), 0.01, 0.001)
    dense, sparse = fit_local(means, 20), fit_local(means, 20, every=4)
    assert np.nanmax(np.abs(dense.z - sparse.z)) < 2e-4
    assert np.isfinite(sparse.z).all()


@pytest.mark.parametrize("kind", ["sharp", "step"])
def test_a_long_raster_fitted_in_windows_has_the_heights_of_one(
    kind: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Other last digits, nothing more: all that a height hangs on lies within its window."""
    scan, frame = crest_scan(Crest(kind, 0.3), 4, size=(2.6, 1.0))
    whole = build_surface(scan, frame, error=NO_ERROR)
    for name, long in (("LONG", 0.5), ("WINDOW", 0.6)):
        monkeypatch.setattr(f"crestcut.terrain.heights.local.{name}", long)
    found = build_surface(scan, frame, error=NO_ERROR)
    for one, other in (
        (found.height, whole.height), (found.top, whole.top), (found.standard_error, whole.standard_error)
    ):  # fmt: skip
        np.testing.assert_allclose(one.values, other.values, rtol=0, atol=1e-12)
