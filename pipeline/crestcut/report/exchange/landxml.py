"""Surfaces as LandXML 1.2: points as north, east and height, faces by the points' numbers."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from xml.etree import ElementTree as ET

from crestcut.base.errors import CrestcutError, visible
from crestcut.base.grid import FloatArray, IntArray
from crestcut.scan import System

NAMESPACE = "http://www.landxml.org/schema/LandXML-1.2"
DIGITS = 6  # after the point, own units: a micrometre
METRIC, IMPERIAL = {"m": "meter", "cm": "centimeter", "mm": "millimeter"}, {
    "ft": "foot", "us-ft": "USSurveyFoot", "in": "inch",
}  # fmt: skip
NamedSurface = tuple[str, str, FloatArray, IntArray]  # name, description, (n, 3) east north height, faces


def write_landxml(
    surfaces: Sequence[NamedSurface], system: System, unit: str, about: tuple[str, str, str], path: Path
) -> None:
    """about : job, tool and its version, date ("" where none is told: then none is written).

    Raises CrestcutError for a unit that the format has no name for.
    """
    root = ET.Element("LandXML", {"xmlns": NAMESPACE, "version": "1.2"})
    job, tool, date = about
    # the schema asks for a date and a time: a job without one has its own fixed day, so that runs are alike
    root.set("date", date or "1970-01-01")
    root.set("time", "00:00:00")
    units = ET.SubElement(root, "Units")
    kind = "Metric" if unit in METRIC else "Imperial"
    if unit not in METRIC and unit not in IMPERIAL:
        raise CrestcutError(f"LandXML has no unit of {unit}", path.name, "give the scan in metres or feet")
    ET.SubElement(units, kind, {
        "linearUnit": (METRIC | IMPERIAL)[unit],
        "areaUnit": "squareMeter" if kind == "Metric" else "squareFoot",
        "volumeUnit": "cubicMeter" if kind == "Metric" else "cubicFeet",
        "temperatureUnit": "celsius" if kind == "Metric" else "fahrenheit",
        "pressureUnit": "HPA" if kind == "Metric" else "inHG",
    })  # fmt: skip
    told = {"desc": system.words, "ogcWktCode": system.wkt, "verticalDatum": system.heights}
    if system.plan.startswith("EPSG:"):
        told["epsgCode"] = system.plan.removeprefix("EPSG:")
    ET.SubElement(root, "CoordinateSystem", {k: v for k, v in told.items() if v})
    ET.SubElement(root, "Project", {"name": visible(job)})
    ET.SubElement(root, "Application", {"name": tool})
    held = ET.SubElement(root, "Surfaces")
    for name, words, points, faces in surfaces:
        _surface(held, name, words, points, faces)
    ET.indent(root, " ")
    ET.ElementTree(root).write(path, encoding="UTF-8", xml_declaration=True)


def _surface(held: ET.Element, name: str, words: str, points: FloatArray, faces: IntArray) -> None:
    surface = ET.SubElement(held, "Surface", {"name": name, "desc": words})
    heights = points[:, 2]
    made = ET.SubElement(surface, "Definition", {
        "surfType": "TIN", "elevMin": f"{heights.min():.{DIGITS}f}", "elevMax": f"{heights.max():.{DIGITS}f}",
    })  # fmt: skip
    listed = ET.SubElement(made, "Pnts")
    for number, (east, north, height) in enumerate(points, 1):
        ET.SubElement(
            listed, "P", {"id": str(number)}
        ).text = f"{north:.{DIGITS}f} {east:.{DIGITS}f} {height:.{DIGITS}f}"
    listed = ET.SubElement(made, "Faces")
    for a, b, c in faces + 1:
        ET.SubElement(listed, "F").text = f"{a} {b} {c}"
