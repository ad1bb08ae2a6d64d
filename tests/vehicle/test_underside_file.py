"""An underside named in the vehicle file: a mesh of the box car, turned the right way, with names given."""

from __future__ import annotations

import hashlib
from pathlib import Path

import numpy as np
import pytest
import trimesh
from test_underside import BOXES, FLOOR, box_car, floor_at

from crestcut.base.errors import CrestcutError
from crestcut.vehicle.load import load_vehicle

CAR = """
name = "box car"
wheelbase = "2800 mm"
front_track = "1500 mm"
rear_track = "1500 mm"
tyre_radius = "315 mm"
tyre_width = "200 mm"
front_overhang = "900 mm"
rear_overhang = "800 mm"
width = "1750 mm"
[underside]
file = "under.ply"
"""
NAMES = """
[[underside.part]]
name = "exhaust"
back = "1550 mm"
across = "0 mm"
[[underside.part]]
name = "rubber flap"
back = "-600 mm"
across = "100 mm"
soft = true
"""


def mesh_car(rng: np.random.Generator, noise: float = 0.005, grid: float = 0.01) -> trimesh.Trimesh:
    """The box car's underside as a mesh: vertices on a 10 mm grid, noise in every direction."""
    x, y = np.meshgrid(np.arange(-0.8, 3.7001, grid), np.arange(-0.87, 0.8701, grid))
    points = np.stack([x, y, floor_at(x, y)], axis=-1).reshape(-1, 3)
    number = np.arange(x.size).reshape(x.shape)
    a, b, c, d = (
        number[j, i].ravel() for j in (slice(-1), slice(1, None)) for i in (slice(-1), slice(1, None))
    )
    faces = np.concatenate([np.stack([a, b, d], axis=1), np.stack([a, d, c], axis=1)])
    return trimesh.Trimesh(points + rng.normal(0, noise, points.shape), faces, process=False)


@pytest.fixture(scope="module")
def garage(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("garage")
    mesh_car(np.random.default_rng(7)).export(folder / "under.ply")
    return folder


def write(folder: Path, text: str) -> Path:
    path = folder / "car.toml"
    path.write_text(text, encoding="utf-8")
    return path


def test_a_mesh_gives_belly_low_parts_and_ends(garage: Path) -> None:
    car = load_vehicle(write(garage, CAR + NAMES))
    parts = {p.name: p for p in car.parts}
    assert car.parts[0].name == "belly" and car.parts[0].x == (0.0, 2.8) and car.parts[0].y == (-0.65, 0.65)
    assert car.belly_clearance == pytest.approx(FLOOR, abs=0.002)
    truth = list(BOXES.values())
    assert parts["exhaust"].z == pytest.approx((truth[0],) * 2, abs=0.002)
    flap = parts["rubber flap"]
    assert flap.z == pytest.approx((truth[2],) * 2, abs=0.002) and flap.soft and flap.zone == "nose"
    (other,) = (p for p in car.parts if p.name.startswith("low part"))
    assert other.z == pytest.approx((truth[1],) * 2, abs=0.002)
    assert {"nose", "tail"} <= parts.keys()
    assert any("low part" in note and "no name yet" in note for note in car.notes)
    own = load_vehicle(write(garage, CAR + NAMES.replace("exhaust", "low part of the exhaust")))
    assert [n.count("no name yet") for n in (*car.notes, *own.notes)].count(1) == 2  # of the one without
    assert not any("not checked" in note for note in car.notes)
    digest = hashlib.sha256((garage / "under.ply").read_bytes()).hexdigest()
    assert car.underside == ("under.ply", digest)


def test_it_is_turned_so_that_the_overhangs_fit(garage: Path, tmp_path: Path) -> None:
    turned = mesh_car(np.random.default_rng(8))
    turned.vertices = turned.vertices * [-1, -1, 1]
    turned.export(tmp_path / "under.ply")
    flap = next(p for p in load_vehicle(write(tmp_path, CAR + NAMES)).parts if p.name == "rubber flap")
    assert flap.x == pytest.approx((3.3, 3.5), abs=0.03)


def test_an_axis_may_be_named_whatever_is_up(garage: Path, tmp_path: Path) -> None:
    mesh = mesh_car(np.random.default_rng(9))
    x, y, z = mesh.vertices.T
    mesh.vertices = np.stack([y, z, x], axis=1) * 1000  # y up, front along +z, millimetres
    mesh.export(tmp_path / "under.stl")
    bare = CAR.replace('front_overhang = "900 mm"\n', "").replace('rear_overhang = "800 mm"\n', "")
    named = bare.replace('"under.ply"', '"under.stl"\nunit = "mm"\nup = "y"')
    with pytest.raises(
        CrestcutError, match=r'which end is the front cannot be told; write front = "[+-]z" or "[+-]z"'
    ):
        load_vehicle(write(tmp_path, named))
    car = load_vehicle(write(tmp_path, named.replace('up = "y"', 'up = "y"\nfront = "+z"') + NAMES))
    assert next(p for p in car.parts if p.name == "rubber flap").x == pytest.approx((3.3, 3.5), abs=0.03)


FILE = 'file = "under.ply"'
FAULTS = [
    (FILE, 'file = "over.ply"', "underside.file: no such file: over.ply"),
    ('wheelbase = "2800 mm"', 'wheelbase = "2600 mm"', "its wheelbase is 280"),
    ('front_track = "1500 mm"', 'front_track = "1600 mm"', "mm, the tape says 1600 mm"),
    ('width = "1750 mm"', 'width = "1750 mm"\nbelly_clearance = "120 mm"', "its belly is 160"),
    (FILE, FILE + '\nunit = "mm"', "under.ply: 0.004"),
    (FILE, FILE + '\nunit = "yd"', 'unit "yd" is not known'),
    (FILE, FILE + '\nfront = "up"', 'underside.front: "up" is not known; write one of'),
    (FILE, FILE + '\nfront = "+z"', 'front = "+z" lies along up = "z"'),
    (FILE, FILE + '\nfront = "+y"', "its front would lie to a side"),
    (FILE, FILE + '\nfornt = "+x"', 'underside.fornt: unknown key; did you mean "front"?'),
    (FILE, FILE + '\nup = "-z"', "upside down"),
    (FILE, FILE + '\n[[underside.part]]\nname = "hook"\nback = "1 m"\nacross = "600 mm"',
     "part (hook): nothing was found 1000 mm behind the front axle and 600 mm left of the middle; found:"),
]  # fmt: skip


@pytest.mark.parametrize(("written", "instead", "says"), FAULTS)
def test_a_fault_is_one_line(garage: Path, written: str, instead: str, says: str) -> None:
    assert written in CAR
    with pytest.raises(CrestcutError) as caught:
        load_vehicle(write(garage, CAR.replace(written, instead, 1)))
    line = str(caught.value)
    assert says in line and "\n" not in line and "Traceback" not in line


def test_a_cloud_does_as_well_as_a_mesh(tmp_path: Path) -> None:
    np.savetxt(tmp_path / "under.xyz", box_car(np.random.default_rng(10)), fmt="%.4f")
    car = load_vehicle(write(tmp_path, CAR.replace("under.ply", "under.xyz") + NAMES))
    assert next(p for p in car.parts if p.name == "exhaust").z[0] == pytest.approx(0.11, abs=0.002)


def test_a_whole_car_of_boxes_and_wheels_is_seen_through_to_its_underside(tmp_path: Path) -> None:
    def box(*edges: float) -> trimesh.Trimesh:
        low, high = np.array(edges[::2]), np.array(edges[1::2])
        made = trimesh.creation.box(high - low)
        made.apply_translation((low + high) / 2)
        return made

    solids = [
        box(-0.8, 3.7, -0.87, 0.87, 0.5, 0.9), box(-0.3, 2.9, -0.8, 0.8, 0.9, 1.4),
        box(0.35, 2.45, -0.6, 0.6, 0.16, 0.5), box(3.2, 3.7, -0.8, 0.8, 0.18, 0.5),
        box(-0.8, -0.4, -0.8, 0.8, 0.22, 0.5), box(1.0, 1.5, -0.2, 0.2, 0.11, 0.2),
        box(2.0, 2.3, 0.1, 0.4, 0.10, 0.2),
    ]  # fmt: skip
    for x in (0.0, 2.8):
        for y in (-0.75, 0.75):
            wheel = trimesh.creation.cylinder(0.315, 0.2, sections=64)
            wheel.apply_transform(trimesh.transformations.rotation_matrix(np.pi / 2, [1, 0, 0]))
            wheel.apply_translation((x, y, 0.315))
            solids.append(wheel)
    trimesh.util.concatenate(solids).export(tmp_path / "under.ply")
    car = load_vehicle(write(tmp_path, CAR))
    low = sorted(min(p.z) for p in car.parts if p.name.startswith("low part"))
    assert low == pytest.approx([0.10, 0.11], abs=0.002)
    assert car.belly_clearance == pytest.approx(0.16, abs=0.002)
    tip = max((p for p in car.parts if p.zone == "nose"), key=lambda p: p.x[1])
    tail = min((p for p in car.parts if p.zone == "tail"), key=lambda p: p.x[0])
    assert tip.z == pytest.approx((0.18, 0.18), abs=0.003) and tail.z == pytest.approx(
        (0.22, 0.22), abs=0.003
    )
