"""Which shapes a slab has: gains and chances against the evidence itself, and a hump found, none invented."""

from __future__ import annotations

import itertools
import math
import sys
from pathlib import Path

import numpy as np
import pytest

sys.path.insert(0, str(Path(__file__).parents[1]))
from crestcut.base.grid import FloatArray, GridFrame, HeightGrid
from crestcut.terrain.breaklines.breaks import Break
from crestcut.terrain.slab.averages import Tiles
from crestcut.terrain.slab.features import (
    Dictionary,
    Offered,
    _AllSettings,
    _sweep,
    chain,
    columns_on,
    dictionary_of,
    taken_at_once,
    thinned,
)
from crestcut.terrain.slab.named import named
from crestcut.terrain.slab.posterior import Fineness, Posterior, judge
from crestcut.terrain.slab.shapes import Row, Shape, columns
from crestcut.terrain.slab.split import (
    FieldPriors,
    Setting,
    Whitened,
    covariance,
    curvature_of,
    log_evidence,
    squares,
    whiten,
)
from slab_scans import as_fitted, field

SETTING = Setting(0.001, 0.8, 0.0025, 0.4)


def tiles(size: tuple[float, float] = (2.0, 1.6), side: float = 0.1) -> Tiles:
    uv = np.stack(np.meshgrid(*(np.arange(side / 2, s, side) for s in size)), axis=-1).reshape(-1, 2)
    one = np.ones(len(uv))
    return Tiles(uv, 0.0 * one, side * one, 100 * one, 1e-6 * one)


def tiny() -> Dictionary:
    """Level, tilt, then two slots that share two bumps and a rut, and a third of its own with one fold."""
    rows: list[Row] = [
        (Shape.LEVEL, (), -1, 0.01), (Shape.TILT_U, (), -1, 0.01),
        (Shape.BUMP, (0.6, 0.8, 0.15), -1, 0.01), (Shape.BUMP, (0.8, 0.8, 0.25), -1, 0.01),
        (Shape.RUT, (0.8, 0.2), 0, 0.008), (Shape.CURVE, (1.0, 0.4), 1, 0.03),
    ]  # fmt: skip
    lines = (Break.straight(math.pi / 2, 0.0), Break.straight(0.0, 0.0))
    shared = (np.array([2, 3, 4]), np.log([0.2, 0.15, 0.1]))
    choices = (shared, shared, (np.array([5]), np.array([math.log(0.4)])))
    return Dictionary(columns(rows, lines, (1.0, 0.8)), 2, choices, (0.0, 0.0, math.log(0.5)))


def seen_of(words: Dictionary, some: Tiles, amplitude: FloatArray, seed: int) -> Whitened:
    square = squares(some.uv, some.uv, some.spread, some.spread)
    noise = np.diag(np.full(len(some), 4e-7))
    table = words.columns.at(some.uv, some.spread)
    root = np.linalg.cholesky(covariance(SETTING, square, noise))
    y = table @ amplitude + root @ np.random.default_rng(seed).standard_normal(len(some))
    return whiten(SETTING, square, noise, table, y)


def evidence(words: Dictionary, seen: Whitened, state: tuple[int, ...]) -> float:
    on = columns_on(words, state)
    return log_evidence(seen, on, 1 / words.columns.sd[on] ** 2)


@pytest.mark.parametrize("state", [(-1, -1, -1), (2, -1, -1), (4, 3, 5)])
def test_what_a_column_adds_is_the_difference_of_two_evidences(state: tuple[int, ...]) -> None:
    words = tiny()
    seen = seen_of(words, tiles(), np.array([0.0, 0.0, 0.006, 0.0, 0.0, 0.01]), 1)
    gain, before = Offered.of(words, seen).gains(state), evidence(words, seen, state)
    for column in range(2, 6):
        if column in state:
            assert gain[column - words.always] == -math.inf
        else:
            more = evidence(words, seen, (*state, column))
            assert gain[column - words.always] == pytest.approx(more - before, abs=1e-8)


def test_the_chain_has_each_shape_as_often_as_all_models_together_say() -> None:
    words = tiny()
    seen = seen_of(words, tiles(), np.array([0.002, 0.001, 0.003, 0.0, 0.0, 0.004]), 2)
    weights = {}
    for state in itertools.product((-1, 2, 3, 4), (-1, 2, 3, 4), (-1, 5)):
        if state[0] == state[1] >= 0:
            continue  # a shape is there once
        prior = sum(
            none if s < 0 else odds[list(index).index(s)]
            for s, (index, odds), none in zip(state, words.choices, words.none, strict=True)
        )
        weights[state] = evidence(words, seen, state) + prior
    chance = np.exp(np.array(list(weights.values())) - max(weights.values()))
    chance /= chance.sum()
    exact = [sum(c for s, c in zip(weights, chance, strict=True) if k in s) for k in range(2, 6)]
    assert sum(0.05 < e < 0.95 for e in exact) >= 3  # a chain that is always sure proves nothing
    state, rng, count = [-1, -1, -1], np.random.default_rng(3), np.zeros(6)
    offered = Offered.of(words, seen)
    for _ in range(4000):
        _sweep(words, offered, state, rng)
        for s in {s for s in state if s >= 0}:
            count[s] += 1
    assert count[2:] / 4000 == pytest.approx(exact, abs=0.03)  # 4000 sweeps, some alike: 1 sd about 0.01


def test_the_chain_has_settings_and_shapes_together_as_often_as_all_of_them_say() -> None:
    """Two settings that weigh about the same, under which shapes are not equally likely."""
    words, some = tiny(), tiles()
    told = []
    for setting in (SETTING, Setting(0.0018, 0.5, 0.0022, 0.5)):
        square = squares(some.uv, some.uv, some.spread, some.spread)
        noise, table = np.diag(np.full(len(some), 4e-7)), words.columns.at(some.uv, some.spread)
        root = np.linalg.cholesky(covariance(SETTING, square, noise))
        y = table @ np.array([0.002, 0.001, 0.003, 0.0, 0.0, 0.004])
        y += root @ np.random.default_rng(2).standard_normal(len(some))
        told.append(whiten(setting, square, noise, table, y))
    states = [s for s in itertools.product((-1, 2, 3, 4), (-1, 2, 3, 4), (-1, 5)) if not s[0] == s[1] >= 0]
    log_weight = np.array([0.0, evidence(words, told[0], states[0]) - evidence(words, told[1], states[0])])
    score = np.array([
        [
            weight + evidence(words, seen, state) + sum(
                none if s < 0 else odds[list(index).index(s)]
                for s, (index, odds), none in zip(state, words.choices, words.none, strict=True)
            )
            for state in states
        ]
        for seen, weight in zip(told, log_weight, strict=True)
    ])  # fmt: skip
    chance = np.exp(score - score.max())
    chance /= chance.sum()
    first = float(chance[0].sum())
    has = [float(sum(c for s, c in zip(states, chance[0], strict=True) if k in s)) for k in range(2, 6)]
    assert 0.1 < first < 0.9 and sum(0.05 * first < h < 0.95 * first for h in has) >= 3
    drawn = chain(words, [t.equations() for t in told], log_weight, [-1, -1, -1], 3000, 1)
    assert np.mean([n == 0 for n, _ in drawn]) == pytest.approx(first, abs=0.03)
    found = [np.mean([n == 0 and k in on for n, on in drawn]) for k in range(2, 6)]
    assert found == pytest.approx(has, abs=0.03)


def test_chances_of_all_settings_at_once_are_those_of_each() -> None:
    words, some, on = tiny(), tiles(), np.array([0, 1, 3, 5])
    square = squares(some.uv, some.uv, some.spread, some.spread)
    y = np.random.default_rng(5).normal(0.0, 0.004, len(some))
    table = words.columns.at(some.uv, some.spread)
    seen = [
        whiten(Setting(0.001, 0.8, scan, 0.4), square, np.diag(np.full(len(some), 4e-7)), table, y)
        for scan in (0.001, 0.0025, 0.006)
    ]
    weight = np.array([0.3, 0.0, -1.2])
    found = _AllSettings(words, [s.equations() for s in seen], weight).log_chances(on)
    each = [log_evidence(s, on, 1 / words.columns.sd[on] ** 2) for s in seen]
    assert found - found[0] == pytest.approx(each + weight - (each[0] + weight[0]), abs=1e-8)


def test_what_is_left_out_of_the_dictionary_still_counts_as_none() -> None:
    some = tiles()
    words = dictionary_of(some, ())
    seen = seen_of(words, some, np.zeros(len(words.columns)), 4)
    offered = Offered.of(words, seen)
    state = taken_at_once(words, offered)
    fewer, number, kept = thinned(words, offered, state)
    assert [int(number[s]) if s >= 0 else -1 for s in kept] == state
    for (_, odds), none, (_, before), without in zip(
        fewer.choices, fewer.none, words.choices, words.none, strict=True
    ):
        all_odds = np.exp(before).sum() + math.exp(without)
        assert np.exp(odds).sum() + math.exp(none) == pytest.approx(all_odds)
    assert fewer.columns.sd == pytest.approx(words.columns.sd[number])


FRAME = GridFrame((0.0, 0.0), 0.0, 0.01, (181, 261))
HUMP, AT, SIZE = 0.012, (1.5, 0.95), 0.15


def posterior(hump: float, scan: float, seed: int) -> Posterior:
    """Of a crest at u = 1, waves of 1 mm and a hump, seen with a scan's error; m."""
    ny, nx = FRAME.shape
    v, u = np.mgrid[0:ny, 0:nx] * FRAME.cell
    true = -0.16 * np.maximum(u - 1.0, 0.0)
    true += hump * np.exp(-((u - AT[0]) ** 2 + (v - AT[1]) ** 2) / (2 * SIZE**2))
    true += field(FRAME, 0.001, 0.8, 100 + seed) + field(FRAME, scan, 0.4, 200 + seed)
    true += field(FRAME, 0.26 * scan, 0.05, 300 + seed)
    height = HeightGrid(FRAME, true)
    at = np.column_stack([np.full(37, 1.0), np.linspace(0.0, 1.8, 37)])
    line = Break(at, np.zeros(37), -0.08, 0.0, 0.0, 0.003)
    priors = FieldPriors(curvature_of(25.0), 2.0, 0.003, 2.2, 0.4)
    surface = as_fitted(height, 4e-4, breaks=(line,))
    found = judge(surface, surface.error, priors, seed, fine=Fineness(pairs=40))
    assert found is not None
    return found[0]


@pytest.mark.slow
def test_a_hump_is_found_where_it_is_and_as_high_as_it_is() -> None:
    named, bumps = 0, []
    for seed in range(6):
        near = [
            f
            for f in posterior(HUMP, 0.0025, seed).features
            if f.kind is Shape.BUMP and math.dist(f.at, AT) < 0.15
        ]
        named += bool(near)
        bumps += [f.height for f in near[:1]]
    assert named >= 5
    assert np.mean(bumps) == pytest.approx(HUMP, abs=0.0025)


@pytest.mark.slow
def test_on_a_plain_slab_hardly_a_feature_is_named() -> None:
    # 4.7 m2 hold 0.3 bumps a priori; one named in 8 slabs would be one in 37 m2
    assert sum(len(posterior(0.0, 0.0025, seed).features) for seed in range(10, 18)) <= 1


def test_a_step_at_places_nearly_alike_is_one_step() -> None:
    """Draws that have it 5 cm apart, each in a third of them: one step, which all have."""
    rows: list[Row] = [(Shape.STEP, (p, 0.01), 0, 0.01) for p in (0.95, 1.0, 1.05, 1.6)]
    words = Dictionary(columns(rows, (Break.straight(0.0, 0.0),), (1.0, 1.0)), 0, (), ())
    amplitude = np.zeros((4, 30))
    for k in range(3):
        amplitude[k, k::3] = 0.003
    amplitude[3, :21] = -0.002
    found = sorted(named(words, amplitude), key=lambda f: f.height)
    assert [f.chance for f in found] == pytest.approx([0.7, 1.0])
    assert [f.height for f in found] == pytest.approx([-0.002, 0.003])


def test_beyond_a_crest_curved_in_plan_the_slab_may_be_a_cone_and_beyond_a_straight_one_not() -> None:
    # 16 % beyond a circle of 3 m: without the distance across it a bow of 27 mm/m2 is asked for, 7 sd
    where, radius, turn = tiles((4.0, 2.4)), 3.0, np.linspace(-0.4, 0.4, 49)
    middle = np.array([-1.0, 1.2])
    arc = middle + radius * np.column_stack([np.cos(turn), np.sin(turn)])
    bent, straight = (
        Break(at, normal, -0.08, 0.0, 0.0, 0.003)
        for at, normal in (
            (arc, turn), (np.column_stack([np.full(49, 2.0), np.linspace(0, 2.4, 49)]), 0.0 * turn),
        )
    )  # fmt: skip
    slab = -0.16 * np.maximum(np.hypot(*(where.uv - middle).T) - radius, 0.0)

    def left(line: Break) -> tuple[float, float]:
        words = dictionary_of(where, (line,))
        hinge = int(np.flatnonzero(words.columns.kind == Shape.HINGE)[0])
        on = words.columns.take(np.array([*range(words.always), hinge]))
        table = on.at(where.uv)
        held = np.vstack(
            [table / 1e-4, np.diag(1 / on.sd)]
        )  # heights right to 0.1 mm, amplitudes as expected
        best = np.linalg.lstsq(held, np.concatenate([slab / 1e-4, np.zeros(len(on))]), rcond=None)[0]
        return float(np.std(slab - table @ best)), float(np.abs(best / on.sd)[3:].max())

    (rest, most), (other, _) = left(bent), left(straight)
    assert rest < 0.0005 and most < 3.0
    assert other > 0.005
    kinds = [dictionary_of(where, (line,)).columns.kind for line in (bent, straight)]
    assert [int((k == Shape.ACROSS).sum()) for k in kinds] == [1, 0]
