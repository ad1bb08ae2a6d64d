"""What the viewer of the report draws: the slab, what is taken off, and the vehicle at every station of its
worst drive."""

from __future__ import annotations

import math
from typing import Any

import numpy as np
from numpy.typing import NDArray

from crestcut.base.grid import FloatArray, GridFrame, IntArray
from crestcut.contact import Batch, Contact, Poses, Ride, sweep
from crestcut.cut import cut_surface, ride_on
from crestcut.report.pages.pack import pack_colours, pack_layer, pack_numbers
from crestcut.report.pictures.colours import CONCRETE, SHALLOWEST, depth_colours
from crestcut.report.words.summary import nothing_to_cut
from crestcut.study import Report, shown_part

MOST_STATIONS = 240
HEIGHT_STEP = 1e-4  # m
DEPTH_STEP = 2e-5  # m
NO_GAP = 10.0  # m: the sweep writes more than this where a part meets nothing measured
FRAMES = ("body", "front axle", "rear axle")


def scene(report: Report) -> dict[str, Any]:
    """Everything the viewer reads, ready for JSON."""
    frame, stride, (j0, i0) = shown_part(report.surface.height)
    pick = (slice(j0, j0 + frame.shape[0] * stride, stride), slice(i0, i0 + frame.shape[1] * stride, stride))
    plan = report.plan
    cut = plan is not None and plan.deepest > 0
    colours = _scan_colours(report, frame)
    return {
        "page": "report",
        "grid": {
            "nx": frame.shape[1],
            "ny": frame.shape[0],
            "cell": frame.cell,
            "plan": _plan_matrix(report, frame),
        },
        "planUnit": report.scan.frame.unit,
        "height": pack_layer(report.surface.height.values[pick], HEIGHT_STEP),
        "depth": pack_layer(plan.depth.values[pick], DEPTH_STEP) if plan is not None and cut else None,
        "deepest": plan.deepest if plan is not None and cut else 0.0,
        "gap": pack_layer(np.minimum(report.before.gap.values[pick], 0.3), HEIGHT_STEP),
        "short": pack_layer(np.clip(gap_short(report)[pick], 0.0, 0.3), HEIGHT_STEP),
        "want": {zone: report.wanted(zone) for zone in ("belly", "nose", "tail")},
        "colours": None if colours is None else pack_colours(colours),
        "ramp": depth_colours(np.linspace(SHALLOWEST, 1.0, 17), 1.0).tolist(),
        "concrete": list(CONCRETE),
        "line": frame.to_grid(report.line.xy[[0, *range(10, len(report.line.xy) - 1, 10), -1]])
        .round(4)
        .tolist(),
        "marks": [
            {"name": m.name, "at": frame.to_grid(np.asarray(m.xy)).round(4).tolist()} for m in report.marks
        ],
        "keeps": [{"kind": k.kind, "area": frame.to_grid(k.area).round(4).tolist()} for k in report.keeps],
        "others": [
            {"name": o.name, "line": frame.to_grid(np.asarray(o.line)).round(4).tolist()}
            for o in report.options
            if o.line is not None
        ],
        "vehicle": _vehicle(report),
        "drive": _drive(report, frame),
        "release": "ok" if nothing_to_cut(report) else report.release,  # the stamp over the picture
    }


def gap_short(report: Report) -> FloatArray:
    """(ny, nx) m by which the gap over a cell falls short of what is asked for the zone that passes over it:
    the most of all zones; below zero where there is more than asked, NaN where nothing known passes.

    Each zone is held to its own: a nose 20 mm up is short where 32 mm are asked for it, though the belly,
    13 mm up at the same place, has its 12.7 mm.
    """
    clearance = report.before
    short = np.full(clearance.gap.values.shape, np.nan)
    if not clearance.lowest:
        return short
    with np.errstate(invalid="ignore"):
        least = np.fmin.reduce([grid.values for grid in clearance.lowest.values()])
        for zone, grid in clearance.lowest.items():
            gap = clearance.gap.values + (grid.values - least)  # the zone's own, over the same ground
            short = np.fmax(short, report.wanted(zone) - gap)
    return short


def _plan_matrix(report: Report, frame: GridFrame) -> list[list[float]]:
    """(2, 3): grid u, v in metres -> the scan's own plan coordinates."""
    at = report.scan.frame.site_to_plan(frame.to_site(np.array([[0.0, 0.0], [1.0, 0.0], [0.0, 1.0]])))
    return np.column_stack([at[1] - at[0], at[2] - at[0], at[0]]).tolist()


def _scan_colours(report: Report, frame: GridFrame) -> NDArray[np.uint8] | None:
    photo = report.scan.photo(frame)
    return (
        None if photo is None else np.where(photo.seen[..., None], photo.colours, CONCRETE).astype(np.uint8)
    )


def _vehicle(report: Report) -> dict[str, Any]:
    v = report.vehicle
    return {
        "name": v.name, "wheelbase": v.wheelbase, "tracks": [v.front_track, v.rear_track],
        "radius": v.tyre_radius,
        "tyre": v.tyre_width, "width": v.width, "belly": v.belly_clearance,
        "overhangs": [v.front_overhang, v.rear_overhang], "rigid": v.rigid,
        "parts": [
            {"name": p.name, "x": p.x, "y": p.y, "z": p.z, "frame": FRAMES.index(p.on), "soft": p.soft}
            for p in v.parts
        ],
    }  # fmt: skip


def _drive(report: Report, frame: GridFrame) -> dict[str, Any] | None:
    """Poses of the variant with the worst contact, in display grid axes (u, v from its node [0, 0]; z in
    site metres).

    place (n, 3 frames, 3) and turn (n, 3 frames, 3, 3) put chassis points onto the grid; wheels (n, 4)
    lowest points; gap (n,) least.
    """
    worst = report.before.worst
    if worst is None:
        return None
    variant, at = worst.pose
    poses, batch = report.ride.poses[variant], report.ride.batch
    rows = np.flatnonzero(batch.variant == variant)
    live = np.flatnonzero(poses.live)
    chosen = np.unique(
        [*live[np.linspace(0, len(live) - 1, min(MOST_STATIONS, len(live))).round().astype(int)], at]
    )
    shift = np.append(frame.to_grid(report.surface.height.frame.to_site((0.0, 0.0))), 0.0)
    gaps = (
        np.full(len(rows), np.nan)
        if report.before.pair_gap is None
        else report.before.pair_gap[rows].min(axis=1)
    )
    gaps = np.where(gaps > NO_GAP, np.nan, gaps)
    gaps[at] = report.least_clearance  # the one figure, at the place it is of
    order = chosen if poses.station[chosen[0]] <= poses.station[chosen[-1]] else chosen[::-1]
    return {
        "stations": poses.station[order].round(4).tolist(),
        "place": pack_numbers(batch.position[rows[order]] + shift),
        "turn": pack_numbers(batch.rotation[rows[order]]),
        "wheels": pack_numbers(batch.wheels[rows[order]]),
        "gap": [None if math.isnan(g) else float(g) for g in gaps[order]],
        "worst": int(np.flatnonzero(order == at)[0]),
        "contact": _contact(report, worst, frame),
        "way": worst.variant.way,
        "after": _after(report, poses, rows, order, shift),
    }  # fmt: skip


def _after(
    report: Report, poses: Poses, rows: IntArray, order: IntArray, shift: FloatArray
) -> dict[str, Any] | None:
    """The same stations on the finished slab, settled and swept again; None where nothing is cut."""
    plan = report.plan
    if plan is None or plan.deepest <= 0:
        return None
    old, picked = report.ride.batch, rows[order]
    some = Poses(
        poses.variant, poses.station[order], poses.wheels[order], poses.contact[order],
        poses.position[order], poses.rotation[order], poses.live[order],
    )  # fmt: skip
    batch = Batch(
        old.places[picked], np.zeros(len(picked), dtype=np.int64), old.live[picked], old.wheels[picked],
        old.contact[picked], old.position[picked], old.rotation[picked],
    )  # fmt: skip
    lower = cut_surface(report.surface, np.nan_to_num(plan.depth.values))
    ride = ride_on(Ride(report.line, (some,), batch, 0), report.vehicle, lower)
    gaps = sweep(report.vehicle, lower, ride, cells=False).pair_gap
    least = np.full(len(picked), np.inf) if gaps is None else gaps.min(axis=1)
    return {
        "place": pack_numbers(ride.batch.position + shift),
        "turn": pack_numbers(ride.batch.rotation),
        "wheels": pack_numbers(ride.batch.wheels),
        "gap": [float(g) if g < NO_GAP else None for g in least],
    }


def _contact(report: Report, worst: Contact, frame: GridFrame) -> dict[str, Any]:
    u, v = frame.to_grid(np.asarray(worst.xy))
    ground = float(report.surface.top.sample(np.asarray(worst.xy)))
    # the sweep reads a part on whole cells: the place is brought onto the part itself, for the section
    x, y = report.on_vehicle(worst)
    part = next((p for p in report.vehicle.parts if p.name == worst.part), None)
    if part is not None:
        x, y = min(max(x, part.x[0]), part.x[1]), min(max(y, part.y[0]), part.y[1])
    return {
        "gap": report.least_clearance, "part": worst.part, "zone": worst.zone, "at": [float(u), float(v)],
        "ground": ground, "on": [x, y],
        "station": worst.station,
    }  # fmt: skip
