"""``look``: what is in a scan, as a plan picture, a JSON file and plain words."""

from __future__ import annotations

import json
import math
from dataclasses import asdict
from pathlib import Path
from typing import Any

import numpy as np

from crestcut.base.errors import Say
from crestcut.base.units import both, millimetres
from crestcut.job import ScanChoice
from crestcut.report.folder.files import Staging
from crestcut.report.words.look_grade import NO_USE, grade
from crestcut.report.words.look_how import how_text
from crestcut.report.words.look_seen import seen_record
from crestcut.scan import Health, Scan, no_slab
from crestcut.study import scan_identity
from crestcut.terrain import Seen

__all__ = ["health_lines", "how_text", "look_record", "write_look"]

_AXES = {"x": "x", "y": "y", "z": "z", "-x": "minus x", "-y": "minus y", "-z": "minus z"}
_MOST_STATIONS = 6  # named in words
_MOST_HOLES = 5  # named in words; the picture and the file have them all


def write_look(
    scan: Scan,
    health: Health,
    out: Path,
    choice: ScanChoice,
    say: Say = lambda _: None,
    seen: Seen | None = None,
) -> tuple[Path, ...]:
    """``look.png`` (plan), ``look.json`` and, where there is a slab to tap a line on, ``pick.html`` in
    ``out``, all or none; the paths written.

    choice : how the scan was asked for, for the job that the page saves.
    Raises CrestcutError where it cannot be written.
    """
    from crestcut.report.pictures.look_plan import draw_plan

    scanner = choice.scanner
    staging = Staging(Path(out), "look", say)
    with staging as folder:
        staging.about = scan_identity(scan)
        draw_plan(scan, health, folder / "look.png", scanner)
        text = json.dumps(look_record(scan, health, scanner, seen), indent=1, allow_nan=False)
        (folder / "look.json").write_text(text + "\n", encoding="utf-8")
        if grade(scan, health, scanner)[0] != NO_USE:
            from crestcut.report.pages.pick import write_pick

            write_pick(scan, health, folder, choice, out)
    return staging.moved


def look_record(
    scan: Scan, health: Health, scanner: str | None = None, seen: Seen | None = None
) -> dict[str, Any]:
    """What ``look.json`` holds: SI, None where not measured; places in the scan's own plan coordinates and
    unit."""
    frame = scan.frame
    corners = [frame.site_to_plan(f(scan.points[:, :2], axis=0)).tolist() for f in (np.min, np.max)]
    return {
        "schema": "crestcut.look/1",
        **scan_identity(scan).record(),
        "files": [
            {
                "name": f.path.name,
                "format": f.format,
                "sha256": f.sha256,
                "points": f.points,
                "dropped": f.dropped,
                "mesh_edge": f.mesh_edge,
                "unit_reason": f.unit_reason,
                "up_reason": f.up_reason,
                "fit_error": f.fit_error,
                "unit_guessed": f.unit_guessed,
                "unit_alternatives": list(f.unit_alternatives),
                "up_guessed": f.up_guessed,
                "quantum": f.quantum,
            }
            for f in scan.files
        ],
        "passes": [asdict(each) for each in scan.passes],
        "points": len(scan.points),
        "unit": frame.unit,
        "metres_per_unit": frame.scale.tolist(),
        "up": frame.up,
        "origin_shift": frame.shift.tolist(),
        "plan_extent": corners,
        "extent": list(health.extent),
        "area": health.area,
        "density_median": health.density_median,
        "density_5th_percentile": health.density_low,
        "noise": _or_none(health.noise),
        "noise_cell": health.noise_cell,
        "two_layers": health.two_layers,
        "layers_apart": _or_none(health.layers_apart),
        "has_colours": scan.colours is not None,
        "has_time": scan.time is not None,
        "holes": [
            {"area": h.area, "at": frame.site_to_plan((h.x, h.y)).tolist(), "size": list(h.size)}
            for h in health.holes
        ],
        "bridged": [
            {"area": b.area, "at": frame.site_to_plan((b.x, b.y)).tolist(), "size": list(b.size)}
            for f in scan.files
            for b in f.bridges
        ],
        **seen_record(scan, seen),
        "grade": dict(zip(("word", "means"), grade(scan, health, scanner), strict=True)),
        "decides": list(health.decides),
        "notes": list(health.notes),
    }


def _or_none(value: float) -> float | None:
    return value if math.isfinite(value) else None


def health_lines(scan: Scan, health: Health, scanner: str | None = None) -> list[str]:
    """The terminal summary, a plain sentence or figure a line."""
    frame = scan.frame
    lines = []
    for index, file in enumerate(scan.files):
        dropped = f", {file.dropped:,} unusable ones left out" if file.dropped else ""
        sampled = " sampled on its faces" if file.mesh_edge is not None else ""
        lines.append(f"{file.path.name}: {file.format}, {file.points:,} points{sampled}{dropped}")
        lines.append(f"  unit       {_with_reason(frame.unit if index == 0 else '', file.unit_reason)}")
        lines.append(f"  up         {_with_reason(_AXES[frame.up] if index == 0 else '', file.up_reason)}")
        if file.mesh_edge is not None:
            lines.append(f"  triangles  {both(file.mesh_edge)} a side, at the median")
        if file.bridges:
            area = sum(b.area for b in file.bridges)
            lines.append(f"  bridged    {area:.2f} m2 by triangles far larger than the rest: not measured")
        if file.fit_error is not None:
            lines.append(f"  fits       the first scan to {millimetres(file.fit_error)} rms")
    lines += _station_lines(scan)
    x, y, z = health.extent
    lines.append(f"extent       {x:.2f} x {y:.2f} m, {z:.2f} m high; {health.area:,.1f} m2 of it measured")
    if all(f.mesh_edge is None for f in scan.files):
        thinnest = f"{_round(health.density_low)} where it is thinnest"
        lines.append(f"density      {_round(health.density_median)} points per m2, {thinnest}")
        cell = f"{health.noise_cell * 1000:.0f} mm"
        said = (
            "cannot be told, too few points share a cell"
            if math.isnan(health.noise)
            else f"{millimetres(health.noise)} sd about a plane in {cell} cells"
        )
        lines.append(f"noise        {said}")
    # gaps between points that are metres apart are no holes in a slab
    if no_slab(scan, health.extent[:2], health.density_median) is None:
        lines += _hole_lines(scan, health)
    lines.append("grade        {}: {}".format(*grade(scan, health, scanner)))
    lines.append("could decide")
    lines += [f"  - {text}" for text in health.decides]
    if health.notes:
        lines.append("note")
        lines += [f"  - {text}" for text in health.notes]
    return lines


def _station_lines(scan: Scan) -> list[str]:
    """How each station of a file lies on those before it."""
    stations = [p for p in scan.passes if p.off is not None]
    said = []
    for each in stations[:_MOST_STATIONS]:
        assert each.off is not None and each.residual is not None
        x, y, up = (millimetres(v) for v in each.off)
        off = f"{x} in x, {y} in y, {up} in height off those before it"
        said.append(f"  station    {each.name}: {off}; alike to {millimetres(each.residual)} rms")
    more = len(stations) - len(said)
    return said + [f"  stations   {more} more, in look.json"] * (more > 0)


def _with_reason(value: str, reason: str) -> str:
    if not value or reason.startswith((f"{value},", f"{value} ")):
        return reason
    return f"{value} ({reason})"


def _round(value: float) -> str:
    """Three figures are more than a density is worth; two are honest."""
    digits = max(0, 2 - math.ceil(math.log10(value))) if value > 0 else 0
    return f"{round(value, digits if value < 100 else 2 - math.ceil(math.log10(value))):,.{digits}f}"


def _hole_lines(scan: Scan, health: Health) -> list[str]:
    if not health.holes:
        return ["holes        none larger than a hand"]
    whole = sum(h.area for h in health.holes)
    count = f"{len(health.holes):,} ({whole:.2f} m2 not measured)"
    lines = [f"holes        {count}, hatched in the picture; the largest:"]
    for number, hole in enumerate(health.holes[:_MOST_HOLES], 1):
        at = scan.frame.site_to_plan((hole.x, hole.y))
        place = f"{at[0]:,.2f}, {at[1]:,.2f} {scan.frame.unit}"
        lines.append(f"  {number}. {hole.size[0]:.2f} x {hole.size[1]:.2f} m about {place}")
    return lines
