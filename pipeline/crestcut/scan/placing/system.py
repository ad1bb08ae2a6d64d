"""Reference systems as files name them: whether two are one, in one line where they are not."""

from __future__ import annotations

from typing import Any

FAR = 1000.0  # m: nothing of one slab lies so far apart; what does is of another zone or system


def system_name(crs: Any) -> str:
    """The plan part of a pyproj CRS as "EPSG:32632", or by its name where it has no number; "" for None."""
    if crs is None:
        return ""
    parts = [p for p in crs.sub_crs_list if not p.is_vertical] if crs.is_compound else [crs]
    plan = parts[0] if parts else crs
    number = plan.to_epsg()
    return f"EPSG:{number}" if number else str(plan.name)


def named_system(text: str) -> str:
    """``system_name`` of what a file calls its system (a WKT, a URN, "EPSG:25832"); "" where that is not
    understood, or is no projected system."""
    if not text.strip():
        return ""
    from pyproj import CRS
    from pyproj.exceptions import CRSError

    try:
        crs = CRS.from_user_input(text)
    except CRSError:
        return ""
    return system_name(crs) if crs.is_projected else ""


def differ(one: str, other: str) -> bool:
    """Whether both name a system and these are not the same."""
    return bool(one) and bool(other) and one != other
