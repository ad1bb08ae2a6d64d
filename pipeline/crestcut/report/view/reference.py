"""Where a job lies and how truly: its reference system, how the scan was tied to control, what check points
say, and how its passes agree. As data, for result, survey, record and page alike."""

from __future__ import annotations

from dataclasses import asdict

import numpy as np

from crestcut.scan import Tie
from crestcut.study import (
    ASPRS,
    ASPRS_FEWEST,
    NSSDA,
    NSSDA_FEWEST,
    Checks,
    Errors,
    Report,
    nssda_radial,
    nssda_vertical,
    with_survey,
)

NODES = 4000  # that doubts are said of: many draws, and they vary slowly


def reference_document(report: Report) -> dict[str, object]:
    """``tie`` and ``checks`` are null where there are none. Metres and radians; ``at`` in own units."""
    scan = report.scan
    return {
        "system": scan.frame.system.words,
        "crs": scan.frame.system.plan or None,
        "heights": scan.frame.system.heights or None,
        "unit": scan.frame.unit,
        "grid_over_ground": scan.frame.grid if scan.tie is not None else None,
        "tie": None if scan.tie is None else tie_document(report, scan.tie),
        "checks": checks_document(report.checks) if report.checks.points else None,
        "passes": [asdict(each) for each in scan.passes],
    }


def heights_good_to(report: Report) -> dict[str, float] | None:
    """m, 1 sd of heights in the control's system: by the tie alone, and with the slab's own doubt, in the
    middle of the surface that was made and where it is worst; None without a tie.

    The slab's doubt is that of its draws, node by node, where there are any; the tie's is alike over all.
    """
    tie, surface = report.scan.tie, report.surface
    if tie is None:
        return None
    measured = surface.height.measured
    some = slice(None, None, max(1, int(measured.sum()) // NODES))
    places = surface.height.frame.node_xy()[measured][some]
    by_tie = tie.height_sd(np.column_stack([places, surface.height.values[measured][some]]))
    slab = surface.error.slab
    own = surface.standard_error.values[measured][some] if slab is None else slab.at_site(places).std(axis=1)
    both = np.hypot(by_tie, own)
    return {
        "by_the_tie": float(np.median(by_tie)), "by_the_tie_at_worst": float(by_tie.max()),
        "of_the_slab": float(np.nanmedian(own)), "together": float(np.nanmedian(both)),
        "together_at_worst": float(np.nanmax(both)),
    }  # fmt: skip


def tie_document(report: Report, tie: Tie) -> dict[str, object]:
    """Movement, residuals, and what they are worth."""
    fitted, suspect = tie.fitted, tie.fitted.suspect
    movement = fitted.movement
    return {
        "kind": "rigid and scale" if tie.free else "rigid",
        "points": [
            {
                "name": p.name, "at": p.at, "east": p.residual[0], "north": p.residual[1],
                "up": p.residual[2], "residual": p.off, "redundancy": p.redundancy,
                "height": "of the scan there" if p.height_of_scan else "given",
            }
            for p in tie.points
        ],
        "rms": tie.rms, "worst": tie.worst.name, "redundancy": fitted.freedom,
        "factor": fitted.factor if tie.stated else None,
        "sd_of_unit_weight": None if tie.stated else fitted.factor,
        "sds": "stated" if fitted.known else "of the residuals",
        "rotation": movement.rotation, "scale": movement.scale, "about": movement.middle,
        "to": movement.at_middle, "tilt": movement.tilt,
        "covariance_of": ["turn x", "turn y", "turn z", "east", "north", "up"]
        + (["ln scale"] if tie.free else []),
        "covariance": fitted.covariance,
        "scale_by_control": {"scale": tie.scale[0], "sd": tie.scale[1], "taken_up": tie.free},
        "suspect": {"name": tie.suspect.name, "off": suspect.off, "chance": suspect.chance,
                    "named": suspect.named},
        "heights_good_to": heights_good_to(report),
    }  # fmt: skip


def checks_document(checks: Checks) -> dict[str, object]:
    """Each point, the figures, and what the two standards make of them."""
    height, plan = checks.height, checks.plan
    return {
        "points": [
            {"name": p.name, "at": p.at, "up": p.up, "east": p.plan[0] if p.plan else None,
             "north": p.plan[1] if p.plan else None, "survey_sd": p.survey}
            for p in checks.points
        ],
        "height": None if height is None else asdict(height),
        "plan": None if plan is None else {"east": asdict(plan[0]), "north": asdict(plan[1])},
        "asprs": _asprs(checks, height, plan),
        "nssda": _nssda(height, plan),
    }  # fmt: skip


def _asprs(checks: Checks, height: Errors | None, plan: tuple[Errors, Errors] | None) -> dict[str, object]:
    """``rmse_v`` and ``rmse_h`` hold the check points' own accuracy where it is known."""
    keys = (
        "rmse_v1",
        "rmse_v2",
        "rmse_v",
        "enough",
        "rmse_h1",
        "rmse_h2",
        "rmse_h",
        "enough_plan",
        "rmse_3d",
    )
    told: dict[str, object] = {"standard": ASPRS, "fewest": ASPRS_FEWEST, **dict.fromkeys(keys)}
    if height is not None:
        told |= {
            "rmse_v1": height.rmse, "rmse_v2": checks.survey,
            "rmse_v": None if checks.survey is None else with_survey(height.rmse, checks.survey),
            "enough": height.n >= ASPRS_FEWEST,
        }  # fmt: skip
    if plan is not None:
        fit = float(np.hypot(plan[0].rmse, plan[1].rmse))
        own = checks.survey_plan
        both = None if own is None else with_survey(fit, own)
        told |= {"rmse_h1": fit, "rmse_h2": own, "rmse_h": both, "enough_plan": plan[0].n >= ASPRS_FEWEST}
        if both is not None and height is not None and checks.survey is not None:
            told["rmse_3d"] = float(np.hypot(both, with_survey(height.rmse, checks.survey)))
    return told


def _nssda(height: Errors | None, plan: tuple[Errors, Errors] | None) -> dict[str, object]:
    keys = ("accuracy_z", "enough", "accuracy_r", "enough_plan")
    told: dict[str, object] = {"standard": NSSDA, "fewest": NSSDA_FEWEST, **dict.fromkeys(keys)}
    if height is not None:
        told |= {"accuracy_z": nssda_vertical(height.rmse), "enough": height.n >= NSSDA_FEWEST}
    if plan is not None:
        told |= {
            "accuracy_r": nssda_radial(plan[0].rmse, plan[1].rmse), "enough_plan": plan[0].n >= NSSDA_FEWEST,
        }  # fmt: skip
    return told
