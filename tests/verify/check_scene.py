"""The small job of ``after_scene``, checked: by a scan, by hand, and swept over the exact slab."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import numpy as np

from crestcut.apps.verify import Checked, check_job
from crestcut.contact.clearance.sweep import sweep
from crestcut.contact.records import Clearance, Ride
from crestcut.contact.stand.ride import ride
from crestcut.study.record import Study
from crestcut.study.report import Report
from crestcut.work.records import Reason, ReasonCode, ReleaseState
from verify.after_scene import JOB, Depth, of_plan, true_surface, walked, write_ply


def checked(site: tuple[Path, Study], depth: Depth, name: str, **walk: object) -> Checked:
    folder, _ = site
    after = write_ply(walked(2, depth, **walk), folder / name)  # type: ignore[arg-type]
    return check_job(folder / "job.toml", [after])


def plan(site: tuple[Path, Study], share: float = 1.0, over: float = 0.0, shift: float = 0.0) -> Depth:
    assert site[1].report.plan is not None
    return of_plan(site[1].report.plan.depth, share, over, shift)


def over_the_exact(site: tuple[Path, Study], depth: Depth) -> tuple[Ride, Clearance]:
    """The vehicle on the slab as it is, without any error, and its underside swept over it."""
    report = site[1].report
    height = report.surface.height
    exact = height.like(np.where(height.measured, true_surface(height.frame, depth), np.nan))
    ground = replace(report.surface, height=exact, top=exact)
    rode = ride(report.vehicle, ground, report.line, report.job.travel, report.vehicle.loads)
    return rode, sweep(report.vehicle, ground, rode)


def true_gap(site: tuple[Path, Study], depth: Depth) -> float:
    """Least gap over the exact slab, swept, m."""
    worst = over_the_exact(site, depth)[1].worst
    assert worst is not None
    return worst.gap


def unreleased(report: Report) -> Report:
    """The same job with a question open: its release hangs on that, whatever is left to grind."""
    why = Reason(ReasonCode.UNANSWERED, "it is not known whether the slab is post-tensioned")
    return replace(report, release=ReleaseState.NOT_FOR_CUTTING, release_reasons=(why,))


def by_hand(site: tuple[Path, Study], tmp_path: Path, readings: str, want: str = "20 mm") -> Checked:
    folder, _ = site
    job = folder / f"{tmp_path.name}.toml"
    job.write_text(JOB.replace('"20 mm"', f'"{want}"') + "\n[after]\n" + readings)
    return check_job(job)


GAP = (
    '[[after.witness]]\npart = "tray"\nfront_axle = [{x}, 0.0]\n{said}\nplaced = "3 mm"\nwithin = "0.5 mm"\n'
)


def gaps(site: tuple[Path, Study], depth: Depth) -> str:
    """What cards would say under the tray at three places, to half a millimetre."""
    rode, swept = over_the_exact(site, depth)
    assert swept.pair_gap is not None
    names = [p.name for p in site[1].report.vehicle.parts]
    out = ""
    for x in (2.95, 3.1, 3.25):
        pose = int(np.argmin(np.abs(rode.poses[0].station - (x - 0.4))))
        gap = swept.pair_gap[pose, names.index("tray")]
        out += GAP.format(x=x, said=f'gap = "{round(gap * 2000) / 2:.1f} mm"')
    return out
