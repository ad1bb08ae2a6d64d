"""Springs and carts of a vehicle file, and what cannot stand."""

from __future__ import annotations

from crestcut.base.errors import CrestcutError
from crestcut.base.units import millimetres
from crestcut.vehicle.records import Springs, Vehicle
from crestcut.vehicle.schema import SpringsTable, VehicleFile

# m a spring may be pressed by the standing weight: 0.84 Hz, softer than any road vehicle (common practice, no
# source)
MOST_PRESSED = 0.35
SHARE = 0.05  # of the weight: how far axle loads and a tape's centre of mass may disagree (common practice)


def springs_of(table: SpringsTable | None) -> Springs:
    """The file's springs, or equal ones without bars where it has none."""
    if table is None:
        return Springs()
    default = Springs()
    return Springs(
        front_rate=table.front.rate or default.front_rate,
        rear_rate=table.rear.rate or default.rear_rate,
        front_anti_roll=table.front.anti_roll,
        rear_anti_roll=table.rear.anti_roll,
        front_droop=table.front.droop,
        rear_droop=table.rear.droop,
        front_load=table.front.load,
        rear_load=table.rear.load,
        unsprung=table.unsprung,
        measured=True,
    )


def check_cart(written: VehicleFile, where: str) -> None:
    """Refuse a cart without a centre of mass, one that would tip over, and a cart on springs."""
    mass = written.centre_of_mass
    if written.rigid and mass is None:
        raise CrestcutError(
            "a rigid cart without centre_of_mass",
            where,
            'write centre_of_mass = { back = "300 mm" }: on which wheels it rests',
        )
    if mass is None:
        return
    half = min(written.front_track, written.rear_track) / 2
    if not (0 < mass.back < written.wheelbase and abs(mass.left) < half):
        raise CrestcutError(
            "lies outside the wheels: it would tip over",
            f"{where}: centre_of_mass",
            "back counts from the front axle",
        )
    if written.rigid and written.springs is not None:
        raise CrestcutError("rigid and on springs", f"{where}: springs", "write rigid = true or [springs]")


def check_carries(vehicle: Vehicle) -> None:
    """Refuse measured springs that cannot hold the body up or upright.

    Each spring carries half of its axle's load less the wheel; the body stays upright while weight x height
    is less than the roll stiffness, sum(k t^2 / 2 + bar) (a small roll a gains k t^2 a / 2 and loses W h a).
    """
    springs = vehicle.springs
    if springs.front_load is None or springs.rear_load is None:
        return
    wheel = (springs.unsprung or 0.0) / 2
    rates = (springs.front_rate, springs.rear_rate)
    loads = (springs.front_load / 2 - wheel, springs.rear_load / 2 - wheel)
    height = vehicle.centre_of_mass[2] if vehicle.centre_of_mass else 0.0
    where = vehicle.path.name
    for axle, rate, load in zip(("front", "rear"), rates, loads, strict=True):
        if load <= 0:
            raise CrestcutError(
                f"the {axle} axle's wheels weigh more than the whole axle",
                f"{where}: springs.unsprung",
                "weigh the axle on the ground; unsprung is what one axle's wheels, hubs and brakes weigh",
            )
        if load / rate > MOST_PRESSED:
            raise CrestcutError(
                f"the {axle} springs cannot carry their load: {load:.0f} N press a wheel's {rate:.0f} N/m by "
                f"{millimetres(load / rate, 0)}",
                f"{where}: springs.{axle}.rate",
                "rate is N/m at the wheel, load is N for the whole axle",
            )
    roll = sum(k * t**2 / 2 for k, t in zip(rates, (vehicle.front_track, vehicle.rear_track), strict=True))
    if 2 * sum(loads) * height >= roll + springs.front_anti_roll + springs.rear_anti_roll:
        raise CrestcutError(
            f"the springs cannot hold the body upright with its centre of mass {millimetres(height, 0)} up",
            f"{where}: centre_of_mass",
            "measure the rates at the wheels, in N/m",
        )


def check_balance(vehicle: Vehicle) -> None:
    """Refuse axle loads and a centre of mass that contradict each other: front share = distance from the
    rear axle / wheelbase.
    """
    front, rear = vehicle.springs.front_load, vehicle.springs.rear_load
    if vehicle.centre_of_mass is None or front is None or rear is None:
        return
    weighed, taped = front / (front + rear), vehicle.centre_of_mass[0] / vehicle.wheelbase
    if abs(weighed - taped) > SHARE:
        raise CrestcutError(
            f"the axle loads put it {millimetres((1 - weighed) * vehicle.wheelbase, 0)} behind the front"
            " axle",
            f"{vehicle.path.name}: centre_of_mass.back",
            "weigh again, or measure its place again: the two contradict each other",
        )
