"""The depth ramp keeps its order for every eye and every printer."""

from __future__ import annotations

import numpy as np
import pytest

from crestcut.report.pictures.colours import (
    CONCRETE,
    NOT_MEASURED,
    depth_colourmap,
    depth_colours,
    linear_from_srgb,
)

# Machado, Oliveira, Fernandes, "A physiologically-based model for simulation of color vision deficiency",
# IEEE TVCG 15 (2009), severity 1.0, on linear sRGB. Matrices from memory.
DEFICIENCY = {
    "none": np.eye(3),
    "protanopia": np.array(
        [[0.152286, 1.052583, -0.204868], [0.114503, 0.786281, 0.099216], [-0.003882, -0.048116, 1.051998]]
    ),
    "deuteranopia": np.array(
        [[0.367322, 0.860646, -0.227968], [0.280085, 0.672501, 0.047413], [-0.011820, 0.042940, 0.968881]]
    ),
    "tritanopia": np.array(
        [[1.255528, -0.076749, -0.178779], [-0.078411, 0.930809, 0.147602], [0.004733, 0.691367, 0.303900]]
    ),
}
D65 = np.array([0.95047, 1.0, 1.08883])
XYZ = np.array(
    [[0.4124564, 0.3575761, 0.1804375], [0.2126729, 0.7151522, 0.0721750], [0.0193339, 0.1191920, 0.9503041]]
)


def cielab(rgb: np.ndarray, eye: str = "none") -> np.ndarray:
    """CIE 1976 L*a*b*: another model of lightness than the one that the ramp was built with."""
    linear = np.clip(linear_from_srgb(rgb) @ DEFICIENCY[eye].T, 0, 1)
    t = linear @ XYZ.T / D65
    f = np.where(t > (6 / 29) ** 3, np.cbrt(t), t / (3 * (6 / 29) ** 2) + 4 / 29)
    return np.stack(
        [116 * f[..., 1] - 16, 500 * (f[..., 0] - f[..., 1]), 200 * (f[..., 1] - f[..., 2])], axis=-1
    )


@pytest.mark.parametrize("eye", list(DEFICIENCY))
def test_lightness_falls_with_depth_to_every_eye(eye: str) -> None:
    ramp = depth_colours(np.linspace(0.0001, 0.013, 200), 0.013)
    lightness = cielab(ramp, eye)[:, 0]
    # 8-bit colour moves lightness by up to 0.25 between neighbours
    assert np.all(np.diff(lightness) < 0.3)
    assert lightness[0] - lightness[-1] > 50


@pytest.mark.parametrize("eye", list(DEFICIENCY))
def test_eight_depths_can_be_told_apart_by_every_eye(eye: str) -> None:
    steps = cielab(depth_colours(np.linspace(0.0016, 0.013, 8), 0.013), eye)
    assert np.linalg.norm(np.diff(steps, axis=0), axis=1).min() > 6  # 2.3 is just noticeable


def test_lightness_falls_evenly() -> None:
    lightness = cielab(depth_colours(np.linspace(0.0016, 0.013, 8), 0.013))[:, 0]
    steps = -np.diff(lightness)
    assert steps.max() / steps.min() < 1.6


def test_concrete_is_neutral_and_lighter_than_any_depth() -> None:
    grey, shallowest = cielab(np.array(CONCRETE)), cielab(depth_colours(np.array(0.0001), 0.013))
    assert np.hypot(grey[1], grey[2]) < 4
    assert grey[0] > shallowest[0] + 3
    for eye in DEFICIENCY:
        assert (
            np.linalg.norm(
                cielab(np.array(CONCRETE), eye) - cielab(depth_colours(np.array(0.0001), 0.013), eye)
            )
            > 20
        )


def test_zero_nan_and_beyond() -> None:
    got = depth_colours(np.array([0.0, 0.00004, np.nan, 0.02, 0.5]), 0.02)
    assert got.dtype == np.uint8
    assert got[0].tolist() == got[1].tolist() == list(CONCRETE)
    assert got[2].tolist() == list(NOT_MEASURED)
    assert got[3].tolist() == got[4].tolist()
    assert depth_colours(np.zeros((3, 2)), 0.0).shape == (3, 2, 3)
    assert (depth_colours(np.zeros(4), 0.0) == CONCRETE).all()


def test_the_bar_shows_the_colours_of_the_mesh() -> None:
    bar = np.rint(depth_colourmap()(np.linspace(0, 1, 256))[:, :3] * 255)
    assert np.abs(bar[1:] - depth_colours(np.linspace(0, 0.013, 256)[1:], 0.013)).max() == 0
