"""Vehicle files: behind-the-front-axle figures become the vehicle frame, and what cannot be is refused in
one line.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from crestcut.base.errors import CrestcutError
from crestcut.vehicle.angles import derive_angles, height_at
from crestcut.vehicle.load import (
    load_state,
    load_vehicle,
    lowest_loaded,
    parts_over_tracks,
    refuse_parts_over_tracks,
)
from crestcut.vehicle.records import Part
from one_line import refusal

ROOT = Path(__file__).resolve().parents[2]
CAR = """
name = "made-up"
wheelbase = "2800 mm"
front_track = "1500 mm"
rear_track = "1480 mm"
tyre_radius = "315 mm"
tyre_width = "200 mm"
front_overhang = "900 mm"
rear_overhang = "800 mm"
width = "1750 mm"
belly_clearance = "120 mm"
[[part]]
name = "front lip"
back = ["-900 mm", "-700 mm"]
across = ["-700 mm", "700 mm"]
clearance = ["150 mm", "180 mm"]
soft = true
within = "5 mm"
[[part]]
name = "tray"
back = ["2000 mm", "600 mm"]
across = ["400 mm", "-500 mm"]
clearance = "110 mm"
[springs]
front = { rate = 30_000, anti_roll = 12_000, droop = "80 mm", load = 9_000 }
rear = { rate = 25_000, load = 8_000 }
[load.laden]
front = "-20 mm"
rear = "-45 mm"
"""


def write(tmp_path: Path, text: str) -> Path:
    path = tmp_path / "car.toml"
    path.write_text(text, encoding="utf-8")
    return path


def test_the_vehicle_frame(tmp_path: Path) -> None:
    car = load_vehicle(write(tmp_path, CAR))
    belly, lip, tray = car.parts
    assert belly == Part(
        "belly", (0.0, 2.8), (-0.64, 0.64), (0.12, 0.12), "belly"
    )  # between the narrower tyres
    assert lip.x == pytest.approx((3.5, 3.7)) and lip.zone == "nose" and lip.soft and lip.within == 0.005
    assert lip.z == (0.18, 0.15)  # (rear, front): the front edge is the lower
    assert tray.x == pytest.approx((0.8, 2.2)) and tray.y == (-0.5, 0.4) and tray.zone == "belly"
    assert car.springs.measured and car.springs.front_anti_roll == 12_000 and car.springs.rear_rate == 25_000
    assert [state.name for state in car.loads] == ["as measured", "laden"]
    assert car.notes == ("the tail is not checked: no part describes it",)


def test_load_states(tmp_path: Path) -> None:
    car = load_vehicle(write(tmp_path, CAR))
    laden = load_state(car, "laden")
    tray = car.parts[2]
    assert height_at(tray, car, laden, 1.4) == pytest.approx(
        0.110 - 0.0325
    )  # half way: the mean of both drops
    assert derive_angles(car, laden).running_clearance == pytest.approx(0.110 - 0.045 + 0.025 * 0.8 / 2.8)
    with pytest.raises(CrestcutError, match='no load "ladden"; did you mean "laden"'):
        load_state(car, "ladden")


def test_parts_over_a_wheel_track(tmp_path: Path) -> None:
    car = load_vehicle(write(tmp_path, CAR))
    assert parts_over_tracks(car, 0.0127) == ()
    low = (
        CAR
        + '[[part]]\nname = "sill"\nback = ["1 m", "1.5 m"]\nacross = ["600 mm", "700 mm"]\nclearance = "50'
        ' mm"\n'
    )
    car = load_vehicle(write(tmp_path, low))
    # laden its rear end, 1.3 m ahead of the rear axle, drops 33.4 mm of its 50
    assert [part.name for part in parts_over_tracks(car, 0.0127)] == []
    assert [part.name for part in parts_over_tracks(car, 0.0170)] == ["sill"]
    assert parts_over_tracks(car, 0.0170, loads=car.loads[:1]) == ()
    with pytest.raises(CrestcutError, match=r"sill lies over a wheel track with 16\.6 mm to level ground"):
        refuse_parts_over_tracks(car, 0.0254)
    inside = low.replace('"600 mm", "700 mm"]\nclearance = "50', '"500 mm", "630 mm"]\nclearance = "50')
    assert parts_over_tracks(load_vehicle(write(tmp_path, inside)), 0.0254) == ()


@pytest.mark.parametrize("path", sorted((ROOT / "configs/vehicles").glob("*.toml")), ids=lambda p: p.stem)
def test_the_example_vehicles(path: Path) -> None:
    car = load_vehicle(path)
    angles = derive_angles(car)
    assert car.parts[0].name == "belly" and angles.approach and angles.departure and angles.breakover
    refuse_parts_over_tracks(car, 0.0127, 0.03175)


SPRINGS = """front = { rate = 30_000, anti_roll = 12_000, droop = "80 mm", load = 9_000 }
rear = { rate = 25_000, load = 8_000 }"""
LADEN = 'front = "-20 mm"\nrear = "-45 mm"'
# as written in the whole file above -> what stands there instead -> what is said of it
FAULTS = {
    'wheelbase = "2800 mm"': {
        "wheelbase = 2800": "wheelbase: 2800 is long for a wheelbase",
        'wheelbase = "2.8 mm"': "wheelbase: ",
        'wheelbase = "-2800 mm"': "short for a wheelbase",
        "": "wheelbase: missing",
        'wheel_base = "2800 mm"': (
            'wheel_base: unknown key (and 1 more: wheelbase); did you mean "wheelbase"?'
        ),
    },
    'belly_clearance = "120 mm"': {
        'belly_clearance = "-120 mm"': "below the ground",
        'belly_clearance = "120 cm"': "high for a low vehicle",
        "": "belly_clearance: missing; write it, or an [underside]",
    },
    'tyre_radius = "315 mm"': {
        "tyre_radius = 315": "large for a wheel",
    },
    'tyre_width = "200 mm"': {
        'tyre_width = "700 mm"': "wide for a tyre",
    },
    'width = "1750 mm"': {
        'width = "1200 mm"': "the tyres stand outside the vehicle",
    },
    'across = ["-700 mm", "700 mm"]': {
        'across = ["-900 mm", "900 mm"]': "part (front lip).across: reaches 900 mm to the side",
    },
    'across = ["400 mm", "-500 mm"]': {
        'across = ["400 mm", "400 mm"]': "part 2 (tray): the part has no length or no width",
    },
    'back = ["-900 mm", "-700 mm"]': {
        'back = ["-950 mm", "-700 mm"]': "reaches 950 mm beyond the front axle",
    },
    'back = ["2000 mm", "600 mm"]': {
        'back = ["3700 mm", "600 mm"]': "reaches 900 mm beyond the rear axle",
        'back = "600 mm"': "part 2 (tray).back: two lengths expected",
    },
    'clearance = "110 mm"': {
        'clearance = "-10 mm"': "the part is 10 mm below the ground",
        'clearance = "110"': "has no unit",
        'clearance = "130 mm"': "part (tray).clearance: at 130.0 mm it lies above its own belly at 120.0 mm",
    },
    'name = "tray"': {
        'name = "front lip"': 'the name "front lip" is there twice',
        'name = "belly"': 'the name "belly" is the plate',
    },
    "soft = true": {
        'soft = "yes"': "part 1 (front lip).soft: true or false expected",
    },
    "rear = { rate = 25_000, load = 8_000 }": {
        "": "springs: a rate at one axle only",
    },
    "rate = 25_000": {
        'rate = "25 N/mm"': "springs.rear.rate: ",
        "rate = -25_000": "springs.rear.rate: -25000 N/m is outside 100 to 5e+06",
        "rates = 25_000": 'springs.rear.rates: unknown key; did you mean "rate"?',
    },
    SPRINGS: {
        'front = { droop = "80 mm" }': "springs: springs without a rate",
    },
    ", load = 8_000": {
        "": "springs: a load at one axle only",
    },
    "anti_roll = 12_000": {
        "anti_roll = -1": "springs.front.anti_roll: -1 N m/rad is outside",
        "antiroll = 1": 'springs.front.antiroll: unknown key; did you mean "anti_roll"?',
    },
    'droop = "80 mm"': {
        'droop = "-80 mm"': 'springs.front.droop: "-80 mm" is below zero',
        'droop = "800 mm"': 'springs.front.droop: "800 mm" is long for a droop',
    },
    "rate = 25_000, load = 8_000": {
        "rate = 2_500, load = 8_000": "springs.rear.rate: the rear springs cannot carry their load",
    },
    "[springs]": {
        "[springs]\nunsprung = 9_500": (
            "springs.unsprung: the front axle's wheels weigh more than the whole axle"
        ),
        'centre_of_mass = { back = "1.4 m", up = "4 m" }\n[springs]': (
            "part 2 (tray).centre_of_mass: unknown key"
        ),
    },
    'name = "made-up"': {
        'name = "x"\ncentre_of_mass = { back = "1.32 m", up = "4.9 m" }': (
            "centre_of_mass: the springs cannot hold the body upright"
        ),
        'name = "x"\ncentre_of_mass = { back = "2.1 m", up = "0.5 m" }': (
            "centre_of_mass.back: the axle loads put it 1318 mm behind"
        ),
        'name = "x"\nrigid = true\ncentre_of_mass = { back = "1 m" }': "springs: rigid and on springs",
        'name = "x"\ncentre_of_mass = { back = "1 m", height = "1 m" }': (
            "centre_of_mass.height: unknown key; known here: back, left, up"
        ),
        'name = "x"\ncentre_of_mass = { back = "1 m", left = "900 mm" }': "it would tip over",
        'name = "made-up"\ntyre_tread = "60 mm"': 'tyre_tread: "60 mm" is deep for a tread',
        'name = "made-up"\nrigid = true': "a rigid cart without centre_of_mass",
        'name = "x"\nrigid = true\ncentre_of_mass = { back = "-1 m" }': "it would tip over",
    },
    'front = "-20 mm"': {
        'front = "-2 m"': "load.laden.front: ",
        'fronts = "-20 mm"': 'load.laden.fronts: unknown key; did you mean "front"?',
    },
    LADEN: {
        'front = "-20 mm"\nrear = "-200 mm"': "load.laden: it presses the belly 80 mm below level ground",
        "kg = 80": "load.laden: a weight without its place",
        'kg = -80\nback = "1 m"': "load.laden.kg: -80 kg is outside 0 to 20000",
        'kg = 80\nback = "9 m"': (
            "load.laden.back: a weight 9000 mm behind the front axle is not on this vehicle"
        ),
        'kg = 80\nback = "1 m"\nfront = "1 mm"': "load.laden: drops and a weight are both written",
        'kg = 80\nnewtons = 8\nback = "1 m"': "load.laden: kg and newtons are both written",
        'kg = 8_000\nback = "1 m"': "load.laden: the springs cannot carry it: it would move an axle by",
        'back = "1 m"': "load.laden: a place without its weight",
    },
}


@pytest.mark.parametrize(
    ("written", "instead", "says"),
    [(written, instead, says) for written, some in FAULTS.items() for instead, says in some.items()],
)
def test_a_fault_is_one_line(tmp_path: Path, written: str, instead: str, says: str) -> None:
    assert written in CAR
    assert says in str(refusal(load_vehicle, write(tmp_path, CAR.replace(written, instead, 1))))


def test_several_faults_of_a_list_of_loads_name_the_one(tmp_path: Path) -> None:
    lists = CAR.replace(
        '[load.laden]\nfront = "-20 mm"\nrear = "-45 mm"',
        "[load]\ntrip = [{ kg = 80, back = 1 }, { kg = 5 }]",
    )
    with pytest.raises(CrestcutError, match=r"car\.toml: load\.trip 2: a weight without its place"):
        load_vehicle(write(tmp_path, lists))
    empty = CAR.replace('[load.laden]\nfront = "-20 mm"\nrear = "-45 mm"', "[load]\ntrip = []")
    with pytest.raises(CrestcutError, match=r"load\.trip: 1 or more expected, 0 found"):
        load_vehicle(write(tmp_path, empty))


def test_small_carts_are_vehicles(tmp_path: Path) -> None:
    cart = load_vehicle(ROOT / "configs/vehicles/kiln_trolley.toml")
    assert cart.rigid and cart.centre_of_mass == pytest.approx((0.47, 0.0, 0.42))


def test_what_an_axle_carries_stays_where_it_is_under_every_load(tmp_path: Path) -> None:
    beam = '[[part]]\nname = "beam"\nback = ["2.75 m", "2.85 m"]\nacross = ["-600 mm", "700 mm"]\n'
    beam += 'clearance = "90 mm"\n'
    text = CAR.replace("[springs]", beam + 'on = "rear axle"\n[springs]')
    car = load_vehicle(write(tmp_path, text))
    assert lowest_loaded(car.parts[-1], car) == pytest.approx(0.090)
    assert lowest_loaded(car.parts[2], car) == pytest.approx(
        0.110 - 0.045 + 0.025 * 0.8 / 2.8
    )  # the tray's rear
    assert parts_over_tracks(car, 0.08) == () and parts_over_tracks(car, 0.095) == (car.parts[-1],)
