"""The sweep against an independent twin: a general ray caster and the underside as a triangle mesh, pose
by pose."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from crestcut.contact.clearance.kernels import FAR
from crestcut.contact.clearance.still_valid import Swept
from crestcut.contact.clearance.sweep import FRAMES, hard_parts, plate_heights, sweep
from crestcut.contact.path.line import travel_line
from crestcut.contact.records import Clearance, Ride
from crestcut.contact.stand.ground import contact_ground
from crestcut.contact.stand.ride import ride
from crestcut.contact.stand.tyres import VOID
from crestcut.cut.plan import cut_surface, ride_on
from crestcut.job.records import Travel
from crestcut.terrain.records import Surface
from crestcut.vehicle.records import AS_MEASURED, Part, Vehicle
from scenes import L, Scene, belly, crest, lip, scene, vehicle

GROUNDS = {
    "crests": lambda rng: lambda x, y: -0.09 * np.abs(x + 0.2) + 0.03 * np.minimum(x - 1.5, 0),
    "sag": lambda rng: lambda x, y: 0.11 * np.abs(x - 0.3),
    "skewed 45 degrees": lambda rng: lambda x, y: -0.08 * np.abs(x * 0.70711 + y * 0.70711),
    "roll": lambda rng: lambda x, y: 0.02 * np.sin(2.1 * x + 0.4) * y + 0.04 * np.cos(1.7 * x),
    "step": lambda rng: lambda x, y: np.where(x + 0.3 * y > 0.113, 0.025, 0.0) - 0.05 * x,
}


def random_car(rng: np.random.Generator) -> object:
    # no edge on a whole centimetre: there a node would lie on the edge and a ray might pass either side of it
    tray = Part("tray", (0.4017, 1.9034), (-0.3029, 0.4533), (0.11, 0.14), "belly")
    beam = replace(belly(0.16, 0.3541, -0.1523, 0.1547), name="beam", on="rear axle")
    tail = Part("tail", (-0.8031, -0.6017), (-0.6043, 0.6071), (0.2, 0.2), "tail")
    nose = Part("front lip", (L + 0.7019, L + 0.9037), (-0.7027, 0.7013), (0.16, 0.16), "nose")
    return vehicle(belly(0.13 + 0.01 * rng.random(), 0.8537, 0.0023, L - 0.0041), nose, tray, beam, tail)


def cast(s: Scene, pose: int) -> np.ndarray:
    """Least height of the underside over every node at one pose, by ray casting; infinite where nothing is
    hit."""
    import open3d as o3d

    frame, batch = s.surface.height.frame, s.ride.batch
    corners, faces = [], []
    for part in hard_parts(s.vehicle):
        k = FRAMES.index(part.on)
        x, y, z = np.array([0, 1, 1, 0]), np.array([0, 0, 1, 1]), np.array([0, 1, 1, 0])
        local = np.stack([np.take(part.x, x), np.take(part.y, y), np.take(part.z, z)], axis=1)
        at = len(corners) * 4
        corners.append(local @ batch.rotation[pose, k].T + batch.position[pose, k])
        faces += [[at, at + 1, at + 2], [at, at + 2, at + 3]]
    caster = o3d.t.geometry.RaycastingScene()
    vertices = o3d.core.Tensor(np.concatenate(corners).astype(np.float32))
    caster.add_triangles(vertices, o3d.core.Tensor(np.array(faces, np.uint32)))
    ny, nx = frame.shape
    u, v = np.meshgrid(np.arange(nx) * frame.cell, np.arange(ny) * frame.cell)
    rays = np.stack([u, v, np.full_like(u, -1.0), 0 * u, 0 * u, 0 * u + 1], axis=-1).astype(np.float32)
    return caster.cast_rays(o3d.core.Tensor(rays))["t_hit"].numpy().astype(float) - 1.0


def bare_sweep(car: Vehicle, surface: Surface, rode: Ride) -> Clearance:
    """Of plates as they are, not lengthened by half a step to stand for the poses between two stations."""
    return sweep(car, surface, replace(rode, line=replace(rode.line, step=0.0)))


@pytest.mark.parametrize("name", GROUNDS)
def test_every_pose_leaves_the_gap_that_ray_casting_finds(name: str) -> None:
    rng = np.random.default_rng(sorted(GROUNDS).index(name))
    travel = Travel(line=(), wander=0.1, heading=0.05, ways=("forward", "turned"))
    s = scene(GROUNDS[name](rng), random_car(rng), travel, start=(-2.403, 0.017), end=(2.6, 0.094))  # type: ignore[arg-type]
    ground = contact_ground(s.surface)
    gaps = bare_sweep(s.vehicle, s.surface, s.ride).pair_gap
    assert gaps is not None
    poses = rng.choice(len(s.ride.batch.places), 25, replace=False)
    for pose in poses:
        hit = cast(s, int(pose))
        twin = np.where(np.isfinite(hit) & (ground > VOID / 2), hit - ground, np.inf).min()
        assert gaps[pose].min() == pytest.approx(twin, abs=2e-4)


def test_the_swept_height_is_the_lowest_of_all_poses() -> None:
    travel = Travel(line=(), wander=0.0, heading=0.02)
    s = scene(GROUNDS["roll"](None), vehicle(belly(0.13), lip()), travel, start=(-1.6, 0.0), end=(1.6, 0.05))
    lowest = np.full(s.surface.height.frame.shape, np.inf)
    for pose in range(len(s.ride.batch.places)):
        lowest = np.minimum(lowest, cast(s, pose))
    alone = bare_sweep(s.vehicle, s.surface, s.ride)
    swept = np.fmin.reduce([grid.values for grid in alone.lowest.values()])
    both = np.isfinite(lowest) & ~np.isnan(swept)
    assert both.mean() > 0.3
    # a ray on the very edge may go either way
    assert (np.isfinite(lowest) != ~np.isnan(swept)).mean() < 0.002
    # inside; at the edge of a part one pose more or less may cover a node
    assert np.quantile(np.abs(lowest - swept)[both], 0.999) < 2e-4
    assert np.nanmin(alone.gap.values) == pytest.approx(
        np.min((lowest - s.surface.top.values)[both]), abs=2e-4
    )
    gaps, whole = sweep(s.vehicle, s.surface, s.ride, cells=False), sweep(s.vehicle, s.surface, s.ride)
    assert gaps.pair_gap is not None and np.array_equal(gaps.pair_gap, whole.pair_gap)
    assert gaps.least == whole.least and not gaps.lowest and np.isnan(gaps.gap.values).all()


def test_the_poses_between_two_stations_are_counted() -> None:
    """Stations 10 mm apart against stations 1 mm apart: a plate lengthened by half a step stands for what
    lies between."""
    ground = lambda x, y: 0.11 * np.abs(x - 0.3) - 0.04 * np.maximum(x - 1.1, 0) + 0.0 * y  # noqa: E731
    car = vehicle(
        belly(0.12, 0.301, 0.0023, L - 0.0041),
        Part("lip", (3.5019, 3.7037), (-0.3, 0.3), (0.16, 0.16), "nose"),
    )
    s = scene(ground, car, start=(-2.0, 0.0), end=(2.0, 0.0))
    fine = travel_line([(-2.0, 0.0), (2.0, 0.0)], car, s.travel, 0.001)
    truth = bare_sweep(car, s.surface, ride(car, s.surface, fine, s.travel, (AS_MEASURED,)))
    bare = bare_sweep(car, s.surface, s.ride)
    for zone, grid in truth.lowest.items():
        off, without = (np.abs(c.lowest[zone].values - grid.values) for c in (s.before, bare))
        assert np.nanmean(off) < 0.65 * np.nanmean(without)
        assert np.nanmax(off) < 1.5e-3 < np.nanmax(without)
    assert s.before.worst is not None and truth.worst is not None
    assert s.before.worst.gap == pytest.approx(truth.worst.gap, abs=1e-4)


@pytest.mark.parametrize("end", [2.6, 22.0])
def test_taking_over_what_still_holds_of_an_earlier_sweep_changes_no_digit(end: float) -> None:
    """The ground is lowered in two places, one of them under tyres: swept anew with and without the
    earlier sweep at hand; on the longer line most poses are nowhere near."""
    rng = np.random.default_rng(4)
    travel = Travel(line=(), wander=0.1, heading=0.05, ways=("forward", "turned"))
    s = scene(
        GROUNDS["roll"](rng), random_car(rng), travel, start=(-2.403, 0.017), end=(end, 0.094), cell=0.02
    )  # type: ignore[arg-type]
    x, y = np.moveaxis(s.surface.height.frame.node_xy(), -1, 0)
    on = 0.0 if end < 10 else 17.2  # far along the longer line: what is swept anew is a part of the ground
    depth = 0.02 * ((np.hypot(x - 0.2 - on, y) < 0.3) | (np.hypot(x + 1.0 - on, y - 0.75) < 0.15))
    lower = cut_surface(s.surface, depth)
    rode = ride_on(s.ride, s.vehicle, lower, s.surface)
    whole = ride(s.vehicle, lower, s.line, travel, (AS_MEASURED,))
    assert (rode.batch.position == whole.batch.position).all() and (
        rode.batch.rotation == whole.batch.rotation
    ).all()
    moved = (rode.batch.position != s.ride.batch.position).any(axis=(1, 2))
    assert (0.05 if end < 10 else 0.01) < moved.mean() < 0.8
    ours = sweep(s.vehicle, lower, rode, earlier=Swept(s.surface, s.ride, s.before))
    full = sweep(s.vehicle, lower, whole)
    assert ours.pair_gap is not None and full.pair_gap is not None and s.before.pair_gap is not None
    assert (ours.pair_gap == full.pair_gap).all() and (full.pair_gap != s.before.pair_gap).any()
    assert ours.lowest.keys() == full.lowest.keys()
    assert [(c.gap, c.part, c.xy, c.pose) for c in ours.least.values()] == [
        (c.gap, c.part, c.xy, c.pose) for c in full.least.values()
    ]
    for zone, grid in full.lowest.items():
        assert np.array_equal(ours.lowest[zone].values, grid.values, equal_nan=True)
    assert (
        np.array_equal(ours.gap.values, full.gap.values, equal_nan=True)
        and ours.unmeasured == full.unmeasured
    )
    if end < 10:  # an earlier sweep without heights over the cells has none to take over
        gaps = sweep(s.vehicle, s.surface, s.ride, cells=False)
        again = sweep(s.vehicle, lower, rode, earlier=Swept(s.surface, s.ride, gaps))
        assert np.array_equal(again.gap.values, full.gap.values, equal_nan=True)
        assert (again.pair_gap == full.pair_gap).all() and again.lowest.keys() == full.lowest.keys()
        less = sweep(s.vehicle, lower, rode, Swept(s.surface, s.ride, gaps), cells=False)
        assert (less.pair_gap == full.pair_gap).all() and less.least == ours.least


def test_raising_a_part_by_h_raises_its_gap_by_h_and_a_removed_part_never_lowers_it() -> None:
    s = scene(GROUNDS["crests"](None), vehicle(belly(0.12), lip()))
    raised = sweep(vehicle(belly(0.13), lip()), s.surface, s.ride)
    # on a slope the part is raised along the chassis' own up
    assert raised.least["belly"].gap - s.before.least["belly"].gap == pytest.approx(0.01, abs=2e-4)
    assert raised.least["nose"].gap == s.before.least["nose"].gap
    fewer = sweep(vehicle(belly(0.12)), s.surface, s.ride)
    assert set(fewer.least) == {"belly"}


def test_a_part_over_a_hole_meets_nothing_though_ground_begins_beside_it() -> None:
    """Nodes are gone through in blocks: in one measured in part, what is not is no ground far below."""
    car = vehicle(belly(half=0.45))
    whole = scene(crest(0.03), car, cell=0.02)
    frame, top = whole.surface.height.frame, whole.surface.height.values
    x, y = frame.node_xy()[..., 0], frame.node_xy()[..., 1]
    for far, met in ((-9.0, 0), (0.5, 1)):  # a hole all along the line, and one that ends at half a metre
        seen = whole.surface.height.like(np.where((np.abs(y) < 0.5) & (x > far), np.nan, top))
        gaps = sweep(car, replace(whole.surface, height=seen, top=seen), whole.ride)
        assert gaps.pair_gap is not None
        assert ((gaps.pair_gap > 0.5 * FAR) | (np.abs(gaps.pair_gap) < 1.0)).all()
        assert (gaps.worst is not None) == bool(met)
        assert (gaps.pair_gap < 1.0).any() == bool(met) and (gaps.pair_gap > 0.5 * FAR).any()


def test_a_part_narrower_than_a_cell_is_not_lost_between_nodes() -> None:
    blade = Part("blade", (L + 0.8031, L + 0.8052), (-0.5, 0.5), (0.10, 0.10), "nose")
    s = scene(lambda x, y: 0 * x, vehicle(belly(0.3), blade))
    assert s.before.least["nose"].gap == pytest.approx(0.10, abs=1e-6)
    assert s.before.lowest["nose"].measured.any()


def test_a_contact_is_where_it_says() -> None:
    s = scene(GROUNDS["skewed 45 degrees"](None), vehicle(belly(0.12, 0.85), lip()))
    worst = s.before.worst
    assert worst is not None
    frame = s.surface.height.frame
    assert s.before.gap.sample(worst.xy) == pytest.approx(worst.gap, abs=1e-9)
    poses = s.ride.poses[worst.pose[0]]
    assert poses.station[worst.pose[1]] == worst.station
    part = next(p for p in s.vehicle.parts if p.name == worst.part)
    plate = np.array([*part.x, *part.y, *part.z])
    heights, i0, j0 = plate_heights(
        plate, poses.position[worst.pose[1]], poses.rotation[worst.pose[1]], frame
    )
    u, v = frame.to_grid(worst.xy) / frame.cell
    assert heights[round(v) - j0, round(u) - i0] - s.surface.top.sample(worst.xy) == pytest.approx(
        worst.gap, abs=1e-9
    )
