"""LAS and LAZ, with the unit of each axis from the coordinate reference system."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

import numpy as np

from crestcut.base.errors import CrestcutError
from crestcut.scan.formats.raw import Origin, RawScan, UnitFound, truncated, unreadable
from crestcut.scan.formats.take import ALL, Block, Take, take
from crestcut.scan.placing.system import snapped, system_of, unit_name

# GeoTIFF 1.1 (OGC 19-008r4): ProjLinearUnitsGeoKey, VerticalGeoKey (an EPSG system), VerticalUnitsGeoKey
_LINEAR_UNIT_KEY, _VERTICAL_KEY, _VERTICAL_UNIT_KEY = 3076, 4096, 4099


def read_las(path: Path, asked: Take = ALL) -> RawScan:
    """Points that are not flagged withheld; float64 file coordinates; GPS time and colours where they hold
    anything."""
    import laspy

    _refuse_counts(path)
    with _damage_told(path), laspy.open(path) as reader:
        header = reader.header
        if header.point_count == 0:
            raise CrestcutError("no points in the file", str(path), "export the scan again")
        crs = _crs(header)
        unit, notes = _unit(header, crs, path)
        head = RawScan(
            format="LAZ" if header.are_points_compressed else "LAS",
            points=np.empty((0, 3)),
            unit=unit,
            notes=notes,
            quantum=float(np.max(header.scales)),
            system=system_of(crs),
            origin=_origin(header),
        )
        return take(head, _blocks(reader, asked, path), asked)


def _blocks(reader: Any, asked: Take, path: Path) -> Iterator[Block]:
    """All points, so many at a time, but what holds nothing that is asked for. Raises CrestcutError where
    there are fewer than the header says."""
    expected, found, rows = reader.header.point_count, 0, asked.rows
    wanted = asked.wanted(expected)
    names = set(reader.header.point_format.dimension_names)
    coloured = {"red", "green", "blue"} <= names
    while found < expected:
        if not wanted[found // rows]:
            found = min(found + rows, expected)
            continue
        if reader.points_read != found:
            reader.seek(found)
        some = reader.read_points(min(rows, expected - found))
        if len(some) == 0:
            break
        found += len(some)
        yield Block(
            points=np.column_stack([some[a].scaled_array() for a in "xyz"]).astype(np.float64, copy=False),
            colours=np.column_stack([some.red, some.green, some.blue]) if coloured else None,
            time=np.asarray(some.gps_time, dtype=np.float64) if "gps_time" in names else None,
            classes=np.asarray(some.classification, dtype=np.uint8),
            # LAS 1.4 R15: a withheld point 'should not be included in processing'.
            good=~np.asarray(some.withheld, dtype=bool),
        )
    if found != expected:
        raise truncated(path, f"{expected:,} points", f"{found:,}")


def _origin(header: Any) -> Origin:
    """System identifier, generating software and day of making (LAS 1.4 R15, 2.4); names in no known letters
    are none."""

    def text(value: Any) -> str:
        plain = value.decode("utf-8", "replace") if isinstance(value, bytes) else str(value or "")
        return plain.split("\0")[0].strip()

    made = header.creation_date
    sensor, software = text(header.system_identifier), text(header.generating_software)
    return Origin("" if sensor.upper() == "OTHER" else sensor, software, made.isoformat() if made else "")


def _refuse_counts(path: Path) -> None:
    """Raise CrestcutError where the header promises more variable-length records than the file has room for
    (LAS 1.4 R15, tables 3, 6 and 22): the library would read on past its end, one by one, up to 2^32."""
    with path.open("rb") as file:
        head = file.read(375)
    size, start, points, records = path.stat().st_size, *(
        int.from_bytes(head[i:j], "little") for i, j in ((94, 96), (96, 100), (100, 104))
    )  # fmt: skip
    if points > size:
        raise truncated(path, f"points from byte {points:,} on", f"{size:,} bytes")
    rooms = [(records, (points - start) // 54)]
    if len(head) >= 247 and head[25] >= 4 and (extended := int.from_bytes(head[243:247], "little")):
        rooms.append((extended, (size - int.from_bytes(head[235:243], "little")) // 60))
    for count, room in rooms:
        if count > max(room, 0):
            why = f"{count:,} variable-length records where {max(room, 0):,} have room"
            raise unreadable(path, "LAS or LAZ", why)


@contextmanager
def _damage_told(path: Path) -> Iterator[None]:
    """Whatever the library makes of a damaged file as one line."""
    try:
        yield
    except CrestcutError:
        raise
    except MemoryError:
        raise CrestcutError(
            "not enough memory for this many points", str(path), "thin the scan or crop it"
        ) from None
    except BaseException as error:
        # lazrs reports damage through its own panic class, which is no Exception.
        if isinstance(error, (KeyboardInterrupt, SystemExit)):
            raise
        raise unreadable(path, "LAS or LAZ", f"{error or type(error).__name__}") from None


def _unit(header: Any, crs: Any, path: Path) -> tuple[UnitFound | None, tuple[str, ...]]:
    """The unit of each axis, or None where no reference system is written."""
    keys = _geo_keys(header)
    factors, vertical = _axis_factors(crs, path) if crs is not None else ([], None)
    linear = _unit_of(keys.get(_LINEAR_UNIT_KEY))
    if not factors and linear is not None:
        factors = [linear] * 2
    if not factors:
        return None, ()
    if vertical is None:
        vertical = _unit_of(keys.get(_VERTICAL_UNIT_KEY)) or _heights_of(keys.get(_VERTICAL_KEY))
    notes: tuple[str, ...] = ()
    said = f"written in the file: {unit_name(factors[0])} in plan"
    if vertical is None:
        vertical = factors[0]
        said += ", heights not stated and taken alike"
    elif vertical != factors[0]:
        said += f", heights in {unit_name(vertical)}"
        notes = (f"{path.name}: plan is in {unit_name(factors[0])} but heights are in {unit_name(vertical)}",)
    else:
        said += " and in height"
    return UnitFound(unit_name(factors[0]), (factors[0], factors[1], vertical), said), notes


def _crs(header: Any) -> Any:
    try:
        return header.parse_crs()
    except Exception:
        # A reference system that pyproj cannot make sense of is treated as absent; geo keys may still state
        # the units.
        return None


def _axis_factors(crs: Any, path: Path) -> tuple[list[float], float | None]:
    """Metres per unit of the two plan axes, and of the height axis where the system has one."""
    parts = crs.sub_crs_list if crs.is_compound else [crs]
    if any(part.is_geographic for part in parts):
        raise CrestcutError(
            "plan coordinates are in degrees", str(path), "export it in a metric or foot grid"
        )
    axes = [axis for part in parts for axis in part.axis_info]
    plan = [axis.unit_conversion_factor for axis in axes if axis.direction not in ("up", "down")]
    height = [axis.unit_conversion_factor for axis in axes if axis.direction in ("up", "down")]
    return ([snapped(f) for f in plan[:2]] if len(plan) >= 2 else []), (
        snapped(height[0]) if height else None
    )


def _unit_of(code: int | None) -> float | None:
    """Metres per EPSG unit of length; None where the code is no such unit."""
    from pyproj.database import get_units_map

    units = get_units_map(auth_name="EPSG", category="linear").values() if code is not None else ()
    return next((snapped(u.conv_factor) for u in units if u.code == str(code)), None)


def _heights_of(code: int | None) -> float | None:
    """Metres per unit of an EPSG system of heights; None where the code is none."""
    from pyproj import CRS
    from pyproj.exceptions import CRSError

    if code is None:
        return None
    try:
        crs = CRS.from_epsg(code)
    except CRSError:
        return None
    return snapped(crs.axis_info[0].unit_conversion_factor) if crs.is_vertical else None


def _geo_keys(header: Any) -> dict[int, int]:
    """GeoTIFF keys whose value is a short, by key id."""
    for record in header.vlrs:
        if getattr(record, "record_id", 0) == 34735 and hasattr(record, "geo_keys"):
            return {k.id: k.value_offset for k in record.geo_keys if k.tiff_tag_location == 0}
    return {}
