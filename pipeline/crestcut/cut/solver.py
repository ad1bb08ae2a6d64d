"""The fixed point: the least depth that keeps every gap.

Where every binding weight on the ground is >= 0, wherever in its tread a tyre rests, the map
D -> min(allowed, feather(max(0, need(D)))) is monotone and non-expansive, and its least fixed point above
zero is the pointwise least cut. Plain iteration creeps (its rate is 0.90 to 0.97 with the low part in the
wheel tracks), so steps are taken by policy iteration: freeze which pair and which tyre contacts bind, and
solve the linear system

    D(c) = need(c) + sum_i w_i (D_new(k_i) - D(k_i)),      k_i = the node that carries wheel i,

exactly; w_i is how far the part follows the ground at k_i (``ground_weights``). The iteration is not clamped
from below by what was reached before: a running maximum of depths would keep what an earlier, shallower
stance of the vehicle asked for and over-cut skewed crests by millimetres. One clamped pass at the end makes
it feasible.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from scipy import sparse
from scipy.sparse.linalg import spsolve

from crestcut.base.grid import FloatArray, IntArray
from crestcut.chance import ground_weights, wheel_weights
from crestcut.cut.feather import NO_ROOT, feather_out
from crestcut.cut.problem import (
    Problem,
    Step,
    chassis_places,
    evaluate,
    rests_aside,
    settled,
    wherever_they_rest,
)

TOLERANCE = 5e-6  # m, on the distance to the fixed point
MOST_STEPS = 60
ACTIVE = 1e-7  # m: a need above this counts


@dataclass(frozen=True, eq=False)
class Solution:
    """depth (ny, nx) m; the last step at it; iterations; residual: how far one more step moves it, m; rate:
    spectral radius.

    owner : (ny, nx) which of the problems asks most of each cell, by its number; feather not counted.
    """

    depth: FloatArray
    step: Step
    iterations: int
    residual: float
    rate: float
    # smallest weight that a binding cell has on the ground under a wheel, wherever in its tread that rests;
    # negative: no pointwise least cut
    least_weight: float
    owner: IntArray


@dataclass(frozen=True, eq=False)
class _Policy:
    """The frozen choice at one step: cells that hold themselves, the nodes that carry the wheels and how far
    each cell follows those."""

    cells: IntArray
    weight: FloatArray  # (n, 4)
    carrier: IntArray  # (n, 4)
    least: float  # of the weights, wherever the tyres rest


def solve(*problems: Problem) -> Solution:
    """Iterate from no cut to the fixed point, then make it feasible in a clamped pass.

    problems : one for every vehicle over the same ground, with the same limits and feather: the cut then
    keeps the gaps of all. Deterministic. Not guaranteed to converge where a binding weight is negative: then
    the clamped pass closes what is left.
    """
    first = problems[0]
    depth = np.zeros(first.contact.shape)
    step, owner = _evaluate_all(problems, depth)
    best, iterations, rate, stalled = np.inf, 0, 0.0, 0
    for iterations in range(1, MOST_STEPS + 1):  # noqa: B007
        residual = float(np.abs(step.depth - depth).max(initial=0.0))
        policy = _policy(problems, step, owner, depth)
        trial, rate = _policy_step(first, step, policy, depth)
        if residual / max(1.0 - min(rate, 0.999), 1e-3) <= TOLERANCE:
            break
        stalled = 0 if residual < 0.7 * best else stalled + 1
        best = min(best, residual)
        # negative weights can make plain and policy steps swing between two states for ever; the mean of a
        # state and its image does not (Krasnoselskii 1955: averaging tames every eigenvalue in (-3, 1)).
        # Every fourth stalled step is a policy step again.
        depth = trial if stalled % 4 == 0 else 0.5 * (depth + step.depth)
        step, owner = _evaluate_all(problems, depth)
    depth, step, owner, extra = _clamped(problems, depth, step, owner)
    policy = _policy(problems, step, owner, depth)
    residual = float(np.abs(step.depth - depth).max(initial=0.0))
    return Solution(depth, step, iterations + extra, residual, rate, policy.least, owner)


def _evaluate_all(problems: Sequence[Problem], depth: FloatArray) -> tuple[Step, IntArray]:
    """The step that the neediest of the problems asks for at every cell, and which one that is."""
    steps = [evaluate(problem, depth) for problem in problems]
    if len(steps) == 1:
        return steps[0], np.zeros(depth.shape, np.int64)
    first, needs = problems[0], np.stack([step.need for step in steps])
    owner = needs.argmax(axis=0)
    need, pair = (
        np.take_along_axis(x, owner[None], 0)[0] for x in (needs, np.stack([s.pair for s in steps]))
    )
    shaped, root = feather_out(np.clip(need, 0.0, first.allowed), first.feather, first.cell)
    root = np.where(shaped > first.allowed, NO_ROOT, root)
    return Step(need, pair, np.minimum(shaped, first.allowed), root), owner


def _clamped(
    problems: Sequence[Problem], depth: FloatArray, step: Step, owner: IntArray
) -> tuple[FloatArray, Step, IntArray, int]:
    """Deepen, never fill, until no cell within its limit needs more."""
    for extra in range(MOST_STEPS):
        if float((step.depth - depth).max(initial=0.0)) <= TOLERANCE:
            return depth, step, owner, extra
        depth = np.maximum(depth, step.depth)
        step, owner = _evaluate_all(problems, depth)
    return depth, step, owner, MOST_STEPS


def _policy(problems: Sequence[Problem], step: Step, owner: IntArray, depth: FloatArray) -> _Policy:
    held = (
        (step.root == NO_ROOT) & (step.need > ACTIVE) & (step.need < problems[0].allowed) & (step.pair >= 0)
    )
    parts = [_policy_of(p, step, np.flatnonzero(held & (owner == k)), depth) for k, p in enumerate(problems)]
    return _Policy(
        np.concatenate([p.cells for p in parts]), np.concatenate([p.weight for p in parts]),
        np.concatenate([p.carrier for p in parts]), min(p.least for p in parts),
    )  # fmt: skip


def _policy_of(problem: Problem, step: Step, cells: IntArray, depth: FloatArray) -> _Policy:
    """What one vehicle's cells are frozen to."""
    if not len(cells):
        return _Policy(cells, np.zeros((0, 4)), np.zeros((0, 4), np.int64), 0.0)
    pair = step.pair.ravel()[cells]
    used, local = np.unique(problem.pairs.pose[pair], return_inverse=True)
    batch = settled(problem, depth, used)
    frame = problem.plates.frame[problem.pairs.part[pair]]
    x, y = chassis_places(problem, batch, local, cells, frame)
    wheels = wheel_weights(problem.vehicle, x, y, frame)
    weight = ground_weights(problem.vehicle, wheels, rests_aside(problem, batch)[local])
    least = float(wherever_they_rest(problem.vehicle, wheels).min())
    return _Policy(cells, weight, batch.contact[local], least)


def _policy_step(
    problem: Problem, step: Step, policy: _Policy, depth: FloatArray
) -> tuple[FloatArray, float]:
    """Solve the frozen system; the depth it leads to, and the spectral radius of the positive weights on
    cut cells."""
    if not len(policy.cells):
        return step.depth, 0.0
    size = depth.size
    row_of = np.full(size, -1)
    row_of[policy.cells] = np.arange(len(policy.cells))
    root = np.where(step.root.ravel() == NO_ROOT, np.arange(size), step.root.ravel())
    # a carrier follows its own cell, or the cell whose feather holds it, less the feather's drop
    carrier = policy.carrier
    target = row_of[root[carrier]]
    moving = (target >= 0) & (step.depth.ravel()[carrier] < problem.allowed.ravel()[carrier]) & (carrier >= 0)
    now, then = depth.ravel(), step.depth.ravel()
    fixed = np.where(moving, then[carrier] - then[root[carrier]], then[carrier])  # what is not solved for
    known = (policy.weight * (fixed - now[carrier])).sum(axis=1) + step.need.ravel()[policy.cells]
    rows = np.repeat(np.arange(len(policy.cells)), 4)[moving.ravel()]
    columns, value = target.ravel()[moving.ravel()], policy.weight.ravel()[moving.ravel()]
    matrix = sparse.csr_matrix((value, (rows, columns)), shape=(len(policy.cells),) * 2)
    # only cells that carry tyres appear as columns: solve for those, the rest follows
    carriers = np.unique(columns)
    solved = known
    rate = 0.0
    if len(carriers):
        small = matrix[carriers][:, carriers]
        rate = _spectral_radius(small)
        inner = spsolve((sparse.identity(len(carriers), format="csc") - small.tocsc()), known[carriers])
        solved = known + matrix[:, carriers] @ inner
    wanted = np.zeros(size)
    wanted[policy.cells] = solved
    # cells at their limit stay there
    limited = (step.need >= problem.allowed).ravel()
    wanted[limited] = problem.allowed.ravel()[limited]
    return _shaped(problem, wanted.reshape(depth.shape)), rate


def _shaped(problem: Problem, wanted: FloatArray) -> FloatArray:
    shaped, _ = feather_out(np.clip(wanted, 0.0, problem.allowed), problem.feather, problem.cell)
    return np.minimum(shaped, problem.allowed)


def _spectral_radius(matrix: sparse.csr_matrix) -> float:
    """Of the positive part, by power iteration (Perron-Frobenius: a non-negative matrix has its radius as
    an eigenvalue)."""
    positive = matrix.maximum(0)
    vector = np.ones(matrix.shape[0])
    rate = 0.0
    for _ in range(60):
        moved = positive @ vector
        rate = float(moved.max(initial=0.0))
        if rate < 1e-12:
            return 0.0
        vector = moved / rate
    return rate
