"""Reference systems as files and jobs name them: of the plan and of heights."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from crestcut.base.errors import CrestcutError
from crestcut.base.units import FOOT, METRES_PER, US_SURVEY_FOOT

EARTH = 6_371_000.0  # m
_UNITS = {METRES_PER[name]: name for name in ("mm", "cm", "m", "in", "ft", "us-ft")}
FAR = 1000.0  # m: nothing of one slab lies so far apart; what does is of another zone or system


@dataclass(frozen=True)
class System:
    """A reference system. plan, heights : as "EPSG:25832", or by name where it has no number; "" where none
    is known.  wkt : of both together (ISO 19162), "" with no plan."""

    plan: str = ""
    heights: str = ""
    wkt: str = ""

    @property
    def words(self) -> str:
        """As printed."""
        if not self.plan:
            return "no reference system: the scan's own coordinates"
        return f"{self.plan}, heights {self.heights or 'of a datum that is not stated'}"


NO_SYSTEM = System()


def system_of(crs: Any) -> System:
    """Of a pyproj CRS; none for None."""
    if crs is None:
        return NO_SYSTEM
    parts = crs.sub_crs_list if crs.is_compound else [crs]
    plan = next((p for p in parts if not p.is_vertical), None)
    heights = next((p for p in parts if p.is_vertical), None)
    if plan is None:
        return NO_SYSTEM
    return System(_name(plan), "" if heights is None else _name(heights), crs.to_wkt())


def _name(crs: Any) -> str:
    number = crs.to_epsg()
    return f"EPSG:{number}" if number else str(crs.name)


def named_system(text: str) -> System:
    """What a file calls its system (a WKT, a URN, "EPSG:25832"); none where that is not understood, or is no
    projected system."""
    crs = _crs(text)
    return system_of(crs) if crs is not None and crs.is_projected else NO_SYSTEM


def asked_system(text: str) -> tuple[System, tuple[float, float, float]]:
    """The system that a job names ("EPSG:25832", "EPSG:25832+7837", a WKT), and metres per unit of its axes
    (heights as the plan where it has none). Raises CrestcutError for one that is not known, or in degrees."""
    crs = _crs(text)
    where = "[scan] crs"
    if crs is None:
        raise CrestcutError(
            f'"{text[:80]}" is no reference system that is known', where,
            'write its number, like "EPSG:25832", with heights "EPSG:25832+7837"',
        )  # fmt: skip
    if not crs.is_projected:
        raise CrestcutError(
            f'"{text[:80]}" has no east and north in a length', where,
            "name the grid that the scan is in; one in degrees must be projected first",
        )  # fmt: skip
    parts = crs.sub_crs_list if crs.is_compound else [crs]
    plan = [a.unit_conversion_factor for p in parts if not p.is_vertical for a in p.axis_info]
    up = [a.unit_conversion_factor for p in parts if p.is_vertical for a in p.axis_info]
    first, second, third = (snapped(f) for f in (*plan[:2], up[0] if up else plan[0]))
    return system_of(crs), (first, second, third)


def _crs(text: str) -> Any:
    if not text.strip():
        return None
    from pyproj import CRS
    from pyproj.exceptions import CRSError

    try:
        return CRS.from_user_input(text)
    except CRSError:
        return None


def differ(one: str, other: str) -> bool:
    """Whether both name a system and these are not the same."""
    return bool(one) and bool(other) and one != other


def grid_over_ground(system: System, easting: float, northing: float, height: float) -> float | None:
    """Length on the grid over length on the ground at a place (own coordinates, own unit; height in m): the
    projection's scale times R / (R + h), R the mean radius of the earth (IUGG 1980, from memory; enough for
    parts per million). None where the system is not known."""
    if not system.wkt:
        return None
    from pyproj import CRS, Proj, Transformer

    crs = CRS.from_wkt(system.wkt)
    plan = next((p for p in crs.sub_crs_list if not p.is_vertical), crs) if crs.is_compound else crs
    geographic = plan.geodetic_crs
    if geographic is None:
        return None
    longitude, latitude = Transformer.from_crs(plan, geographic, always_xy=True).transform(easting, northing)
    scale = Proj(plan).get_factors(longitude, latitude).meridional_scale
    return float(scale * EARTH / (EARTH + height))


def from_degrees(
    system: System, places: Sequence[tuple[float, float]]
) -> tuple[tuple[float, float], ...] | None:
    """Own x, y of longitudes and latitudes (WGS 84), east first whatever order the system's axes have; None
    where the system is not known.

    Between WGS 84 and a system fixed to a continent nothing is shifted where PROJ has nothing more exact at
    hand: that is worth up to a metre or two of place, which moves a line and no gap.
    """
    if not system.wkt:
        return None
    from pyproj import CRS, Transformer

    crs = CRS.from_wkt(system.wkt)
    plan = next((p for p in crs.sub_crs_list if not p.is_vertical), crs) if crs.is_compound else crs
    turn = Transformer.from_crs("OGC:CRS84", plan, always_xy=True)
    return tuple((float(x), float(y)) for x, y in (turn.transform(*place) for place in places))


def snapped(factor: float) -> float:
    """Metres per unit as a system states it; of a metre or a foot exactly, since systems round the foot
    (0.304800609601219) and at map coordinates those digits are millimetres."""
    for exact in (1.0, FOOT, US_SURVEY_FOOT):
        if abs(factor / exact - 1.0) < 1e-9:
            return exact
    return float(factor)


def unit_name(factor: float) -> str:
    """A unit of so many metres as printed: "us-ft", or "0.9144 m" where it has no name."""
    return _UNITS.get(factor, f"{factor:g} m")
