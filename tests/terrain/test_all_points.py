"""What a scan shows besides its ground: things, layers and roughness, told from sound slabs."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import numpy as np
import pytest

import lying_scenes as scenes
from crestcut.base.grid import FloatArray, GridFrame
from crestcut.scan.load import read_file
from crestcut.terrain.ground.ground import find_ground
from crestcut.terrain.ground.raster import Lattice
from crestcut.terrain.ground.seen import Seen

FRAME = GridFrame((0.0, -1.5), 0.0, 0.02, (151, 351))
REAL = Path(__file__).parents[3] / "shared" / "realdata"


def seen(points: FloatArray, frame: GridFrame = FRAME) -> Seen:
    lattice = Lattice.around(frame)
    found = find_ground(lattice, lattice.place(points)).seen
    assert found is not None
    return found


@pytest.mark.parametrize(("seed", "noise"), [(0, 0.0005), (1, 0.002), (2, 0.006), (3, 0.009)])
def test_a_sound_slab_shows_nothing_else(seed: int, noise: float) -> None:
    found = seen(scenes.cloud(seed, noise=noise))
    assert found.things == () == found.layers
    assert not found.rough.any() and not found.twice.any() and np.isnan(found.crude).all()


@pytest.mark.parametrize(("lower", "share"), [(0.015, 0.5), (0.015, 1.0), (0.015, 2.0), (0.010, 1.0)])
def test_a_patch_that_is_there_twice_is_told_with_place_and_distance(lower: float, share: float) -> None:
    (patch,) = seen(scenes.second_layer(1, lower=lower, share=share)).layers
    assert patch.apart == pytest.approx(lower, abs=0.003)
    assert (patch.x, patch.y) == pytest.approx((scenes.CREST, 0.0), abs=0.1)
    assert 0.5 * 3.0 * 0.8 < patch.area < 0.5 * 3.0 * 1.5
    assert patch.up + patch.down == pytest.approx(lower, abs=0.005)


def test_a_layer_too_far_off_to_be_fitted_is_a_layer_and_no_thing() -> None:
    found = seen(scenes.second_layer(0, lower=-0.040))
    assert found.things == () and len(found.layers) == 1
    assert found.layers[0].up == pytest.approx(0.040, abs=0.003)


def test_a_step_and_a_joint_are_no_second_layer() -> None:
    points = scenes.cloud(0)
    step = points + np.outer(points[:, 0] > 2.0, (0.0, 0.0, 0.012))
    joint = points - np.outer(np.abs(points[:, 1] - 0.3) < 0.005, (0.0, 0.0, 0.010))
    for scene in (step, joint):
        assert seen(scene).layers == ()


def test_things_are_told_with_height_size_and_what_is_unseen_under_them() -> None:
    (car,) = seen(scenes.parked(0)).things
    assert car.height == pytest.approx(1.40, abs=0.02) and car.unseen > 0.9
    assert car.size == pytest.approx((4.2, 1.7), abs=0.11)
    assert (car.x, car.y) == pytest.approx((2.6, -0.2), abs=0.05)
    people = seen(scenes.walker(0)).things
    assert people and all(t.height > 1.6 and t.unseen < 0.2 for t in people)


@pytest.mark.parametrize(("rough", "every"), [(0.014, 0.05), (0.008, 0.05), (0.010, 0.08), (0.010, 0.03)])
def test_lawn_gravel_and_cobbles_are_rough(rough: float, every: float) -> None:
    found = seen(scenes.lawn(0, rough=rough, every=every))
    assert found.rough.mean() > 0.5 and found.roughness > 0.004


def by_phone(points: FloatArray, every: float = 0.10, patch: float = 0.0015) -> FloatArray:
    """Bumps such as a phone makes: patches of 0.1 m, as on one real slab."""
    rng = np.random.default_rng(9)
    bumps = patch * rng.standard_normal((80, 120))
    i, j = (np.floor((points[:, k] + 2.0) / every).astype(int) for k in (0, 1))
    return points + np.column_stack([np.zeros((len(points), 2)), bumps[j, i]])


@pytest.mark.parametrize(
    "scene",
    [lambda: by_phone(scenes.cloud(0, noise=0.006)), lambda: by_phone(scenes.cloud(0, noise=0.002))],
)  # fmt: skip
def test_what_a_phone_does_to_a_slab_is_not_rough(scene: Callable[[], FloatArray]) -> None:
    assert not seen(scene()).rough.any()


def test_a_bonnet_without_sides_is_no_ground() -> None:
    """4 m2 at 0.8 m over the slab with nothing seen for 0.65 m around: as large as a yard, but in the air."""
    slab, rng = scenes.cloud(0), np.random.default_rng(3)
    around = (np.abs(slab[:, 0] - 2.6) < 2.0) & (np.abs(slab[:, 1]) < 1.4)
    flat = rng.uniform((1.3, -0.75), (3.9, 0.75), (20_000, 2))
    points = np.concatenate([slab[~around], np.column_stack([flat, np.full(len(flat), 0.8)])])
    lattice = Lattice.around(FRAME)
    rollable = lattice.nodes(find_ground(lattice, lattice.place(points)).rollable)
    assert not rollable[30:120, 70:190].any() and rollable[:, 240:].mean() > 0.99


def test_a_real_slab_is_one_and_its_chair_is_named() -> None:
    cloud = REAL / "phone_slab" / "cloud_24_frames.laz"
    if not cloud.exists():
        print(f"no real scan at {cloud}: nothing is tested on it")
        return
    found = seen(read_file(cloud).points, GridFrame((-2.0, -2.0), 0.0, 0.020, (191, 241)))
    assert found.rough.mean() < 0.02
    assert found.things[0].height == pytest.approx(0.9, abs=0.1)  # its back; the seat is 0.4 m up
