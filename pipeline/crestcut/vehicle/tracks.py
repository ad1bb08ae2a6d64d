"""Parts over a wheel track: the wheel lifts them with every cut left standing, so no cut can help them."""

from __future__ import annotations

from collections.abc import Sequence

from crestcut.base.errors import CrestcutError
from crestcut.base.units import both, millimetres
from crestcut.vehicle.load_states import lowest_loaded
from crestcut.vehicle.parts import TOUCHING
from crestcut.vehicle.records import LoadState, Part, Vehicle


def parts_over_tracks(
    vehicle: Vehicle, want: float, want_ends: float | None = None, loads: Sequence[LoadState] | None = None
) -> tuple[Part, ...]:
    """Hard body parts over a wheel track that hang lower than asked for on level ground, in the deepest load
    state.

    Where the ground rises under such a part it rises under the wheel too, so the wheel lifts the part with
    every cut left standing: no finite cut reaches ``want`` there. ``want_ends`` (default ``want``) is what
    nose and tail are asked for.
    """
    ends = want if want_ends is None else want_ends
    found = []
    for part in vehicle.parts:
        asked = want if part.zone == "belly" else ends
        if not part.soft and _over_track(part, vehicle) and lowest_loaded(part, vehicle, loads) < asked:
            found.append(part)
    return tuple(found)


def refuse_parts_over_tracks(
    vehicle: Vehicle, want: float, want_ends: float | None = None, loads: Sequence[LoadState] | None = None
) -> None:
    """Raises CrestcutError for the first part that ``parts_over_tracks`` lists."""
    for part in parts_over_tracks(vehicle, want, want_ends, loads):
        asked = want if part.zone == "belly" or want_ends is None else want_ends
        raise CrestcutError(
            f"{part.name} lies over a wheel track with {millimetres(lowest_loaded(part, vehicle, loads))} to"
            f" level ground, less than the {both(asked)} asked for: no cut can give it more",
            f"{vehicle.path.name}: part",
            "ask for less (want), mark it soft if it may touch, or measure it again",
        )


def _over_track(part: Part, vehicle: Vehicle) -> bool:
    """Does the part cover ground that a tyre rolls on as well?"""
    for track in (vehicle.front_track, vehicle.rear_track):
        inner, outer = (track - vehicle.tyre_width) / 2, (track + vehicle.tyre_width) / 2
        for low, high in ((inner, outer), (-outer, -inner)):
            if part.y[0] < high - TOUCHING and part.y[1] > low + TOUCHING:
                return True
    return False
