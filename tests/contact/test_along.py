"""A long ground gone through in pieces: the same digits, and what is held at a time does not grow with it."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np
import pytest
from test_sweep_twin import GROUNDS, random_car

from crestcut.contact.clearance import along
from crestcut.contact.clearance import sweep as sweep_room
from crestcut.contact.clearance.blocks import blocks_of
from crestcut.contact.clearance.pose_pairs import every_pair, gaps_of_poses, least_of_pairs, place_pairs
from crestcut.contact.clearance.still_valid import Swept
from crestcut.contact.clearance.sweep import hard_parts, plates_of, sweep
from crestcut.contact.records import Clearance
from crestcut.contact.stand.ground import contact_ground
from crestcut.cut.plan import cut_surface, ride_on
from crestcut.job.records import Travel
from scenes import Scene, scene

TRAVEL = Travel(line=(), wander=0.1, heading=0.05, ways=("forward", "turned"))


def lane(end: float) -> Scene:
    rng = np.random.default_rng(4)
    return scene(
        GROUNDS["roll"](rng), random_car(rng), TRAVEL, start=(-2.403, 0.017), end=(end, 0.094), cell=0.02
    )  # type: ignore[arg-type]


@pytest.fixture
def short_pieces(monkeypatch: pytest.MonkeyPatch) -> Iterator[None]:
    """Pieces of 2.6 m, less than a vehicle is long."""
    with monkeypatch.context() as patch:
        patch.setattr(along, "PIECE", 8)
        yield


def same(a: Clearance, b: Clearance) -> bool:
    assert a.pair_gap is not None and b.pair_gap is not None and a.lowest.keys() == b.lowest.keys()
    layers = [(a.gap, b.gap), *((a.lowest[zone], b.lowest[zone]) for zone in a.lowest)]
    return (
        bool((a.pair_gap == b.pair_gap).all())
        and a.unmeasured == b.unmeasured
        and all(np.array_equal(x.values, y.values, equal_nan=True) for x, y in layers)
        and {z: c.gap for z, c in a.least.items()} == {z: c.gap for z, c in b.least.items()}
    )


@pytest.mark.usefixtures("short_pieces")
def test_a_sweep_in_pieces_has_the_same_digits_as_one_of_the_whole(monkeypatch: pytest.MonkeyPatch) -> None:
    """Anew, and after the ground was lowered in one place, taking over what still holds."""
    s = lane(9.0)
    x, y = np.moveaxis(s.surface.height.frame.node_xy(), -1, 0)
    lower = cut_surface(s.surface, 0.02 * (np.hypot(x - 4.0, y) < 0.5))
    rode = ride_on(s.ride, s.vehicle, lower, s.surface)
    pieces = sweep(s.vehicle, s.surface, s.ride)
    again = sweep(s.vehicle, lower, rode, Swept(s.surface, s.ride, pieces))
    monkeypatch.setattr(along, "PIECE", 10_000)
    assert same(pieces, sweep(s.vehicle, s.surface, s.ride))
    assert same(again, sweep(s.vehicle, lower, rode))


@pytest.mark.usefixtures("short_pieces")
def test_gaps_of_some_poses_are_those_over_the_whole_ground() -> None:
    """Of poses at both ends of a lane and none between: every part, every pose, every digit."""
    s = lane(9.0)
    parts, ground, cell = hard_parts(s.vehicle), contact_ground(s.surface), s.surface.top.frame.cell
    plates, batch, over = plates_of(parts, s.line.step), s.ride.batch, blocks_of(ground, cell)
    live = batch.live & (np.abs(batch.places[:, 0] - np.median(batch.places[:, 0])) > 2.5)
    some = type(batch)(
        batch.places, batch.variant, live, batch.wheels, batch.contact, batch.position, batch.rotation
    )
    assert 0.1 < live.mean() < 0.9
    pairs = every_pair(np.flatnonzero(live), len(parts))
    whole = least_of_pairs(over, place_pairs(pairs, batch, plates, over)).reshape(-1, len(parts))
    found = gaps_of_poses(ground, cell, some, plates)
    assert (found[live] == whole).all() and (found[~live] > 1e17).all()


def test_what_a_sweep_holds_at_a_time_does_not_grow_with_the_lane(monkeypatch: pytest.MonkeyPatch) -> None:
    """Pairs placed and columns of nodes lowered in one piece, of a lane and of one twice as long."""
    monkeypatch.setattr(along, "PIECE", 16)
    most: list[tuple[int, int]] = []
    plain = sweep_room.lowest_of_pairs

    def noted(over, placed, kept=None):  # type: ignore[no-untyped-def]
        most.append((over.shape[1], len(placed.pose)))
        return plain(over, placed, kept)

    monkeypatch.setattr(sweep_room, "lowest_of_pairs", noted)
    held = []
    for end in (14.0, 30.0):
        s = lane(end)
        most.clear()
        sweep(s.vehicle, s.surface, s.ride)
        assert sum(columns for columns, _ in most) == s.surface.top.frame.shape[1]
        held.append(np.max(most, axis=0))
    assert (held[1] <= 1.15 * held[0]).all() and held[1][0] < 2 * 16 * 16
