"""Shapes that a slab is made of: closed forms at points, and brute-force averages over tiles."""

from __future__ import annotations

import math

import numpy as np
import pytest

from crestcut.base.grid import FloatArray, GridFrame
from crestcut.terrain.breaklines.breaks import Break
from crestcut.terrain.slab.shapes import Columns, Row, Shape, columns

AT = (0.9, 1.1, 0.15)  # of the bump
CENTRE = (1.0, 0.5)


def one(kind: Shape, sizes: tuple[float, ...] = (), angle: float = 0.0) -> Columns:
    """A single shape, on a line through (1, 0) where it has one."""
    line = Break.straight(angle, math.cos(angle))
    return columns(
        [(kind, sizes, -1 if kind < Shape.HINGE or kind is Shape.BUMP else 0, 1.0)], (line,), CENTRE
    )


def places(seed: int, count: int = 60) -> FloatArray:
    return np.random.default_rng(seed).uniform(0.0, 2.0, (count, 2))


def averaged(shape: Columns, uv: FloatArray, side: float, fine: int = 60) -> FloatArray:
    """(n,) the mean over square tiles, from values at points."""
    t = ((np.arange(fine) + 0.5) / fine - 0.5) * side
    within = np.stack(np.meshgrid(t, t), axis=-1).reshape(-1, 2)
    every = (uv[:, None] + within[None]).reshape(-1, 2)
    return shape.at(every)[:, 0].reshape(len(uv), -1).mean(axis=1)


U, V = places(0).T
CLOSED = (
    (Shape.LEVEL, (), np.ones(60)),
    (Shape.TILT_U, (), U - 1.0),
    (Shape.TILT_V, (), V - 0.5),
    (Shape.BOW_UU, (), (U - 1.0) ** 2 / 2),
    (Shape.BOW_UV, (), (U - 1.0) * (V - 0.5)),
    (Shape.BOW_VV, (), (V - 0.5) ** 2 / 2),
    (Shape.HINGE, (0.1, 0.07), np.sqrt((U - 1.1) ** 2 + 0.07**2)),
    (Shape.HINGE_ALONG, (0.1, 0.07), V * np.sqrt((U - 1.1) ** 2 + 0.07**2)),
    (Shape.CURVE, (0.1, 0.6), np.maximum(np.abs(U - 1.1), np.minimum((U - 1.1) ** 2 / 0.6 + 0.15, 0.3))),
    (Shape.STEP, (0.1, 0.01), 0.5 + 0.5 * (U - 1.1) / np.sqrt((U - 1.1) ** 2 + 0.0001)),
    (Shape.RUT, (0.1, 0.2), np.exp(-((U - 1.1) ** 2) / (2 * 0.2**2))),
    (Shape.ACROSS, (), U - 1.0),
    (Shape.BUMP, AT, np.exp(-((U - 0.9) ** 2 + (V - 1.1) ** 2) / (2 * 0.15**2))),
)


@pytest.mark.parametrize(("kind", "sizes", "value"), CLOSED, ids=[c[0].name for c in CLOSED])
def test_a_shape_at_a_point_is_its_closed_form(
    kind: Shape, sizes: tuple[float, ...], value: FloatArray
) -> None:
    assert one(kind, sizes).at(places(0))[:, 0] == pytest.approx(value, abs=1e-12)


def test_every_shape_has_a_closed_form_above() -> None:
    assert {c[0] for c in CLOSED} == set(Shape)


# most by which a tile's mean is wrong, of an amplitude of one: of HINGE per metre, so 0.14 mm at a fold of
# 0.08; of a bump of 10 mm 0.001 mm.  The fine grid of the check itself is right to about 1e-4.
ALONG = (
    (Shape.BOW_UU, (), 2e-6), (Shape.BOW_UV, (), 1e-6), (Shape.BOW_VV, (), 2e-6),
    (Shape.HINGE, (0.0, 0.0), 2e-5), (Shape.HINGE, (0.0, 0.07), 2e-5), (Shape.HINGE_ALONG, (0.0, 0.07), 2e-5),
    (Shape.CURVE, (0.0, 0.25), 2e-5), (Shape.STEP, (0.0, 0.01), 2e-4), (Shape.RUT, (0.0, 0.10), 2e-4),
    (Shape.BUMP, AT, 2e-4), (Shape.ACROSS, (), 1e-12),
)  # fmt: skip


@pytest.mark.parametrize(("kind", "sizes", "within"), ALONG, ids=[f"{a[0].name}{a[1]}" for a in ALONG])
@pytest.mark.parametrize("side", [0.1, 0.4])
def test_a_tiles_mean_is_exact_on_a_line_along_the_grid(
    kind: Shape, sizes: tuple[float, ...], within: float, side: float
) -> None:
    shape, uv = one(kind, sizes), places(1)
    mean = shape.at(uv, np.full(len(uv), side**2 / 12))[:, 0]
    assert np.abs(mean - averaged(shape, uv, side)).max() < within * max(1.0, (side / 0.1) ** 2 / 4)


ASKEW = (
    (Shape.HINGE, (0.0, 0.0), 0.0016), (Shape.HINGE, (0.0, 0.07), 1e-4),
    (Shape.HINGE_ALONG, (0.0, 0.07), 6e-4), (Shape.CURVE, (0.0, 0.25), 1e-4),
    (Shape.STEP, (0.0, 0.01), 0.032), (Shape.RUT, (0.0, 0.10), 6e-4),
)  # fmt: skip


@pytest.mark.parametrize(("kind", "sizes", "within"), ASKEW, ids=[f"{a[0].name}{a[1]}" for a in ASKEW])
@pytest.mark.parametrize("angle", [0.4, math.pi / 4, 2.0])
def test_a_fine_tiles_mean_is_close_on_a_line_askew(
    kind: Shape, sizes: tuple[float, ...], within: float, angle: float
) -> None:
    # at 45 degrees the tile's width across is a triangle, not the box of the same variance
    shape, uv = one(kind, sizes, angle), places(2, 300)
    mean = shape.at(uv, np.full(len(uv), 0.01 / 12))[:, 0]
    assert np.abs(mean - averaged(shape, uv, 0.1)).max() < within


def test_some_of_the_columns_are_those_columns() -> None:
    rows = [(Shape.LEVEL, (), -1, 1.0), (Shape.HINGE, (0.1, 0.0), 0, 2.0), (Shape.BUMP, AT, -1, 3.0)]
    every = columns(rows, (Break.straight(0.3, 1.0),), CENTRE)
    some, uv = every.take(np.array([2, 1])), places(3)
    assert some.at(uv) == pytest.approx(every.at(uv)[:, [2, 1]], abs=0.0)
    by = np.array([0.3, -2.0, 0.7])[: len(every)]
    assert every.sums(uv, by) == pytest.approx(every.at(uv) @ by, abs=1e-14)
    assert some.sd == pytest.approx([3.0, 2.0])


def test_the_sum_over_a_frame_is_that_at_its_nodes() -> None:
    """What lies along an axis is reckoned on it alone, narrow shapes along another line about it: the rest is
    cubic between coarse nodes, whose weights are single."""
    frame = GridFrame((5.0, 7.0), 0.3, 0.02, (112, 158))
    at = np.stack(np.meshgrid(np.arange(158) * 0.02, np.arange(112) * 0.02), axis=-1).reshape(-1, 2)
    lines = (Break.straight(0.0, 0.9), Break.straight(math.pi / 2, 0.5), Break.straight(0.3, 1.0))
    rows: list[tuple[Row, float]] = [
        ((Shape.HINGE, (0.1, 0.0), 0, 1.0), 1e-14), ((Shape.STEP, (0.1, 0.01), 1, 1.0), 1e-14),
        ((Shape.CURVE, (0.0, 1.0), 0, 1.0), 4e-4),
        ((Shape.HINGE, (0.1, 0.0), 2, 1.0), 1e-6), ((Shape.HINGE, (-0.2, 0.22), 2, 1.0), 3e-5),
        ((Shape.HINGE_ALONG, (0.0, 0.13), 2, 1.0), 3e-5), ((Shape.CURVE, (0.0, 0.25), 2, 1.0), 1e-6),
        ((Shape.STEP, (0.0, 0.01), 2, 1.0), 1e-5), ((Shape.ACROSS, (), 2, 1.0), 1e-6),
        ((Shape.BUMP, AT, -1, 1.0), 5e-3), ((Shape.TILT_U, (), -1, 1.0), 1e-6),
    ]  # fmt: skip
    every = columns([row for row, _ in rows], lines, CENTRE)
    for by, (row, within) in zip(np.eye(len(rows)), rows, strict=True):
        right = (every.at(at) @ by).reshape(frame.shape)
        assert np.ptp(right) > 0.01, row
        assert every.over(frame, by) == pytest.approx(right, abs=within), row
    by = np.linspace(0.5, 1.5, len(rows))
    each = sum(b * every.over(frame, one) for b, one in zip(by, np.eye(len(rows)), strict=True))
    assert every.over(frame, by) == pytest.approx(each, abs=2e-6)
