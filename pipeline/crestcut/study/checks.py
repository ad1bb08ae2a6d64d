"""Surveyed points that the slab's heights are held against, and what two published standards make of them.

ASPRS, Positional Accuracy Standards for Digital Geospatial Data, edition 2 (version 1, August 2023; version
2, 2024): accuracy is a root mean square error, no figure at 95 %; what the check points themselves are good
for enters it, RMSE_V^2 = RMSE_V1^2 + RMSE_V2^2 (and alike in plan); 30 check points or more for a product to
be stated as tested. NSSDA (FGDC-STD-007.3-1998): accuracy at 95 % is 1.9600 RMSE_z in height and 1.7308
RMSE_r in plan, the latter where the errors of both axes are alike, 2.4477 times half their sum else; 20
points or more.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from crestcut.base.grid import FloatArray
from crestcut.base.units import millimetres
from crestcut.job import Surveyed
from crestcut.scan import Scan
from crestcut.terrain import Surface

ASPRS_FEWEST, NSSDA_FEWEST = 30, 20
ASPRS = "ASPRS Positional Accuracy Standards for Digital Geospatial Data, edition 2 (2023, version 2 2024)"
NSSDA = "National Standard for Spatial Data Accuracy, FGDC-STD-007.3-1998"
VERTICAL, RADIAL, CIRCULAR = 1.9600, 1.7308, 2.4477
ALIKE = 0.6  # of the smaller over the larger RMSE: below it the standard gives no figure


@dataclass(frozen=True)
class Errors:
    """Of n check points along one axis, m: root mean square, mean, and sd (n - 1; NaN of one)."""

    n: int
    rmse: float
    mean: float
    sd: float


def errors_of(found: FloatArray | Sequence[float]) -> Errors | None:
    """found (n,): as made less as surveyed, m; None of none."""
    values = np.asarray(found, dtype=float)
    if not len(values):
        return None
    sd = float(values.std(ddof=1)) if len(values) > 1 else math.nan
    return Errors(len(values), float(np.sqrt(np.mean(values**2))), float(values.mean()), sd)


def with_survey(rmse: float, survey: float) -> float:
    """ASPRS edition 2: m, the product's RMSE, of the fit to the check points and of the check points
    themselves."""
    return math.hypot(rmse, survey)


def nssda_vertical(rmse: float) -> float:
    """m, at 95 %."""
    return VERTICAL * rmse


def nssda_radial(rmse_x: float, rmse_y: float) -> float | None:
    """m, at 95 %; None where one axis errs so much more than the other that the standard gives none."""
    low, high = sorted((rmse_x, rmse_y))
    if high == 0.0 or low == high:
        return RADIAL * math.hypot(low, high)
    return CIRCULAR * 0.5 * (low + high) if low / high >= ALIKE else None


@dataclass(frozen=True)
class Held:
    """A check point. at : east, north and height as surveyed, own units.  up : m, the slab's height less the
    surveyed; None where the surface that was made does not reach.  plan : m, east and north, where it was
    seen less where it was surveyed; None where that was not said.  survey, survey_plan : m, 1 sd of its own
    height and of each of its plan coordinates, None where nobody said."""

    name: str
    at: tuple[float, float, float]
    up: float | None
    plan: tuple[float, float] | None = None
    survey: float | None = None
    survey_plan: float | None = None


@dataclass(frozen=True)
class Checks:
    """All of a job."""

    points: tuple[Held, ...] = ()

    @property
    def height(self) -> Errors | None:
        """Of heights."""
        return errors_of([p.up for p in self.points if p.up is not None])

    @property
    def plan(self) -> tuple[Errors, Errors] | None:
        """Of east and of north."""
        seen = np.array([p.plan for p in self.points if p.plan is not None], dtype=float).reshape(-1, 2)
        east, north = errors_of(seen[:, 0]), errors_of(seen[:, 1])
        return None if east is None or north is None else (east, north)

    @property
    def survey(self) -> float | None:
        """m, root mean square of what the heights of those that count are good for; None where that is not
        known of all."""
        return _rms([p.survey for p in self.points if p.up is not None])

    @property
    def survey_plan(self) -> float | None:
        """m, the same of the plan, both coordinates together."""
        each = _rms([p.survey_plan for p in self.points if p.plan is not None])
        return None if each is None else each * math.sqrt(2.0)

    @property
    def worst(self) -> Held | None:
        """The point whose height is farthest off."""
        return max((p for p in self.points if p.up is not None), key=lambda p: abs(p.up or 0.0), default=None)

    @property
    def notes(self) -> tuple[str, ...]:
        """Plain sentences."""
        beside = [p.name for p in self.points if p.up is None]
        notes = (
            [f"check {', '.join(beside)}: beside the surface that was made, not counted"] if beside else []
        )
        if (height := self.height) is None or (worst := self.worst) is None:
            return tuple(notes)
        few = (
            f"; {height.n} are fewer than the {ASPRS_FEWEST} that the standard wants for a product to be"
            " stated as tested"
        )
        return (
            *notes,
            f"{height.n} check {'point' if height.n == 1 else 'points'}: heights are off by"
            f" {millimetres(height.rmse)} rms (mean {millimetres(height.mean)}, the most"
            f" {millimetres(worst.up or 0.0)} at {worst.name})" + (few if height.n < ASPRS_FEWEST else ""),
        )


def held_against(checks: Sequence[Surveyed], scan: Scan, surface: Surface) -> Checks:
    """The slab's heights at each check point's east and north against what was surveyed there, and where it
    was seen, where that was said, against the same."""
    frame, found = scan.frame, []
    for check in checks:
        place = frame.own_to_site(check.at)
        height = float(np.asarray(surface.height.sample(place[:2])))
        plan = None
        if check.seen is not None:
            seen = frame.written_to_site(check.seen[:2])
            plan = float(seen[0] - place[0]), float(seen[1] - place[1])
        found.append(Held(
            check.name, check.at, None if math.isnan(height) else height - float(place[2]), plan,
            check.within_height or check.within, check.within,
        ))  # fmt: skip
    return Checks(tuple(found))


def _rms(values: Sequence[float | None]) -> float | None:
    known = [v for v in values if v is not None]
    return float(np.sqrt(np.mean(np.square(known)))) if known and len(known) == len(values) else None
