"""In which unit and frame the numbers of ``result.json``, ``verify.json`` and ``floor.json`` stand, said in
each, and places written so."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

import numpy as np

from crestcut.scan import Frame

XY = tuple[float, float]
UNITS = {
    "length": "m", "area": "m2", "volume": "m3", "litres": "l", "angle": "rad", "slope": "rise over run",
    "chance": "0 to 1", "time": "s",
}  # fmt: skip
TIED = " once it is written { east = ..., north = ... }: the scan lies in the control's system"
PAIRS = ("where_xy", "front_axle")  # keys of an advice that hold places


def frame_and_units(frame: Frame) -> dict[str, object]:
    """``units`` and ``frame`` of a document; ``metres_per_point_unit`` (2,) along x and y."""
    return {
        "units": UNITS,
        "frame": {
            "axes": "the scan's own x and y (once z is up), from the scan's own origin",
            "unit": "m",
            "point_unit": frame.unit,
            "metres_per_point_unit": frame.plan_scale,
            "crs": frame.system.plan or None,
            "heights": frame.system.heights or None,
            "wkt": frame.system.wkt or None,
            "read": "every coordinate is in metres on these axes; a key 'point', or one that ends in '_point'"
            " or '_points', is the same place in the scan's own unit, as a job file takes it"
            + (TIED if frame.scanned is not None else ""),
        },
    }


def place(frame: Frame, site_xy: XY) -> dict[str, object]:
    """A place, site x, y in metres, as ``x`` and ``y`` in metres and as ``point`` in the scan's own unit."""
    point = frame.site_to_plan(np.asarray(site_xy, dtype=float))
    x, y = point * frame.plan_scale
    return {"x": float(x), "y": float(y), "point": [float(v) for v in point]}


def line(frame: Frame, site_xy: Iterable[XY] | None, key: str = "line") -> dict[str, object]:
    """Several places under one key: in metres, and as points; None where there are none."""
    if site_xy is None:
        return {key: None, f"{key}_points": None}
    points = frame.site_to_plan(np.asarray(list(site_xy), dtype=float))
    return {key: points * frame.plan_scale, f"{key}_points": points}


def advice(frame: Frame, items: Iterable[Mapping[str, object]]) -> list[dict[str, object]]:
    """Measurements to make, their places, which are the scan's own points, told in metres as well."""
    told = []
    for item in items:
        found = dict(item)
        for key in PAIRS:
            points = found.get(key)
            if isinstance(points, (list, tuple)) and len(points):
                found[key] = np.asarray(points, dtype=float) * frame.plan_scale
                found["front_axle_point" if key == "front_axle" else "where_points"] = points
        told.append(found)
    return told
