"""The load states of a vehicle file: drops as measured, or weights put through the springs."""

from __future__ import annotations

from collections.abc import Sequence

from crestcut.base.errors import CrestcutError
from crestcut.base.units import millimetres
from crestcut.job import did_you_mean
from crestcut.vehicle.loads import GRAVITY, combined, load_at
from crestcut.vehicle.records import AS_MEASURED, LoadState, Part, Vehicle
from crestcut.vehicle.schema import LoadTable, VehicleFile

MOST_DROP = 0.3  # m: more is no spring's travel
_HITCH = 1.0  # m beyond the rear end that a weight may still sit at


def load_states(written: VehicleFile, vehicle: Vehicle) -> tuple[LoadState, ...]:
    """'as measured' first, unless the file has its own, then the file's loads.

    A load is one table or several that act at once: drops add up, weights go through ``loads.load_at``.
    Raises CrestcutError for a weight beyond the vehicle, on unknown springs, or more than springs or
    clearance give.
    """
    states = []
    for name, tables in written.load.items():
        several = tables if isinstance(tables, list) else [tables]
        state = combined(name, *(_one(table, vehicle, name) for table in several))
        _check_state(state, vehicle)
        states.append(state)
    if any(state.name == AS_MEASURED.name for state in states):
        return tuple(states)
    return (AS_MEASURED, *states)


def _one(table: LoadTable, vehicle: Vehicle, name: str) -> LoadState:
    if table.kg is None and table.newtons is None:
        return LoadState(name, table.front or 0.0, table.rear or 0.0)
    back = table.back or 0.0
    ahead = vehicle.front_overhang if vehicle.front_overhang is not None else 1.5
    behind = (vehicle.rear_overhang if vehicle.rear_overhang is not None else 1.5) + _HITCH
    if not -ahead <= back <= vehicle.wheelbase + behind:
        raise CrestcutError(
            f"a weight {millimetres(back, 0)} behind the front axle is not on this vehicle",
            f"{vehicle.path.name}: load.{name}.back",
            "it counts from the front axle, towards the rear positive",
        )
    newtons = table.newtons if table.newtons is not None else (table.kg or 0.0) * GRAVITY
    return load_at(vehicle, newtons, back, name)


def _check_state(state: LoadState, vehicle: Vehicle) -> None:
    where = f"{vehicle.path.name}: load.{state.name}"
    if max(abs(state.front), abs(state.rear)) > MOST_DROP:
        worst = max(state.front, state.rear, key=abs)
        raise CrestcutError(
            f"the springs cannot carry it: it would move an axle by {millimetres(worst, 0)}",
            where,
            "check the weight, its place and the rates",
        )
    for part in vehicle.parts:
        low = lowest_loaded(part, vehicle, (state,))
        if low < 0:
            raise CrestcutError(
                f"it presses the {part.name} {millimetres(-low, 0)} below level ground",
                where,
                "check the drops against the clearances: both are measured on flat ground",
            )


def load_state(vehicle: Vehicle, name: str) -> LoadState:
    """The named load state. Raises CrestcutError with 'did you mean' for a name the vehicle file does not
    hold.
    """
    for state in vehicle.loads:
        if state.name == name:
            return state
    names = [state.name for state in vehicle.loads]
    raise CrestcutError(f'no load "{name}"', f"{vehicle.path.name}: load", did_you_mean(name, names))


def lowest_loaded(part: Part, vehicle: Vehicle, loads: Sequence[LoadState] | None = None) -> float:
    """Least height of a part above level ground over ``loads`` (default: all of the file), metres."""
    least = min(part.z)
    for state in vehicle.loads if loads is None else loads:
        for x, z in zip(part.x, part.z, strict=True):
            least = min(least, z + _drop(part, vehicle, state, x))
    return least


def _drop(part: Part, vehicle: Vehicle, state: LoadState, x: float) -> float:
    """How far the body moves above x, m: a straight line through both axles; what an axle carries does not
    move.
    """
    if part.on != "body":
        return 0.0
    return state.rear + (state.front - state.rear) * x / vehicle.wheelbase
