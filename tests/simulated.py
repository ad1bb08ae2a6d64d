"""Scans simulated on the grid: a true surface with one drawn error of white, patch and warp."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

import numpy as np

from crestcut.base.grid import FloatArray, GridFrame, HeightGrid
from crestcut.terrain.breaklines.breaks import Break
from crestcut.terrain.error.draws import WHITE_LENGTH, FieldMaker
from crestcut.terrain.records import ErrorModel, Surface
from crestcut.terrain.slab.behind import slab_behind
from scenes import Scene

STANDARD_ERROR, SHARED = 0.0007, 0.05  # m: of a fitted height, and how far neighbours share their points


def draw_fields(
    model: ErrorModel,
    frame: GridFrame,
    standard_error: HeightGrid | None,
    seed: int,
    count: int,
    white_length: float = WHITE_LENGTH,
) -> Iterator[FloatArray]:
    """``count`` seeded error fields (ny, nx), m: what a scan of such errors adds to the heights."""
    maker = FieldMaker(model, frame, standard_error, white_length)
    rng = np.random.default_rng(seed)
    for _ in range(count):
        yield maker.draw(rng)


def seen_from(true: Scene, seed: int, model: ErrorModel) -> Surface:
    """The surface of a scan of ``true``: its heights with one drawn error."""
    height = true.surface.height
    error = height.like(np.full(height.frame.shape, STANDARD_ERROR))
    wrong = next(draw_fields(model, height.frame, error, seed + 10**6, 1, SHARED))
    seen = height.like(height.values + wrong)
    density = (model.white / STANDARD_ERROR) ** 2 / (2 * SHARED) ** 2
    points = int(density * height.values.size * height.frame.cell**2)
    return replace(true.surface, height=seen, top=seen, standard_error=error, error=model, points_used=points)


def judged_from(true: Scene, seed: int, model: ErrorModel, grade: float, angle: float) -> Surface:
    """The slab judged behind such a scan of ``scenes.crest(grade, angle)``, whose crest the fit has found."""
    seen = seen_from(true, seed, model)
    frame, along = seen.height.frame, np.arange(-3.0, 3.0, 0.05)
    c, s = np.cos(angle), np.sin(angle)
    at = frame.to_grid(np.column_stack([-along * s, along * c]))
    at = at[((at > 0) & (at < frame.size)).all(axis=1)]
    found = Break(at, np.full(len(at), angle - frame.angle), -grade, 0.0, 0.0, 0.003)
    return slab_behind(replace(seen, breaks=(found,)), model, seed=seed)
