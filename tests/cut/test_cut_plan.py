"""The cut: feasible, tight, least where it says so, and what a running minimum or a step-size stop would
get wrong."""

from __future__ import annotations

import math
from dataclasses import replace
from types import SimpleNamespace

import numpy as np
import pytest

from crestcut.base.grid import GridFrame, HeightGrid
from crestcut.chance.active_contacts import ground_weights, wheel_weights
from crestcut.contact.clearance.kernels import Plates
from crestcut.contact.clearance.sweep import wanted_gap
from crestcut.contact.stand.springs import stands_by_limits, support_weights
from crestcut.contact.stand.tyres import VOID
from crestcut.cut import plan as plan_module
from crestcut.cut.bay import bay_of
from crestcut.cut.feather import feather_out
from crestcut.cut.limits import KeepArea
from crestcut.cut.plan import cut_surface, ride_on
from crestcut.cut.problem import Problem, _follows, evaluate, lowered, prepare
from crestcut.cut.solver import solve
from crestcut.job.records import Slab, Travel, Wanted
from crestcut.vehicle.records import Part, Springs
from scenes import L, R, Scene, arc, belly, crest, lip, scene, stand, vehicle

WANT = Wanted()
GAPS = wanted_gap(WANT.want, WANT.want_ends)
RAIL = Part("rail", (0.6, 2.2), (0.67, 0.83), (0.085, 0.085), "belly")  # low, and over the left wheel track

SCENES = {
    "crest across": lambda: scene(crest(0.10), cell=0.02),
    "crest skewed 35 degrees, full-width floor": lambda: scene(
        crest(0.10, math.radians(35)), vehicle(belly(0.105, 0.85)), cell=0.02
    ),
    "skewed crest on a cross slope": lambda: scene(
        lambda x, y: crest(0.10, 0.3)(x, y) + 0.05 * y, vehicle(belly(0.105, 0.85)), cell=0.02
    ),
    "crest skewed 45 degrees, full-width floor": lambda: scene(
        crest(0.12, math.radians(45)), vehicle(belly(0.105, 0.85)), cell=0.02
    ),
    "long hump, low part in the wheel track": lambda: scene(arc(12.0), vehicle(belly(0.14), RAIL), cell=0.02),
    "nose into a rise": lambda: scene(
        lambda x, y: np.where(x < 0, -0.08 * x, 0.1 * x), vehicle(belly(0.12), lip(0.15)), cell=0.02
    ),
}


def problem_of(s: Scene, deepest: float = 0.06, feather: float = 0.25) -> Problem:
    return prepare(s.passage, s.limits(deepest, feather), GAPS, feather)


@pytest.fixture(scope="module", params=SCENES)
def made(request: pytest.FixtureRequest) -> Scene:
    return SCENES[request.param]()


def test_swept_again_no_gap_is_under_want_and_every_cut_cell_is_tight(made: Scene) -> None:
    plan = made.plan()
    assert plan.feasible and plan.deepest > 0.002
    again = stand(made.vehicle, made.travel, made.line, cut_surface(made.surface, plan.depth.values))
    for zone, contact in again.before.least.items():
        assert contact.gap >= GAPS[zone] - 5e-5
    # tight: recomputed here from the swept heights, not taken from the certificate
    room = (
        np.fmin.reduce([g.values - GAPS[z] for z, g in again.before.lowest.items()])
        - again.surface.top.values
    )
    depth = plan.depth.values
    by_feather = feather_out(np.where(room < 1e-4, depth, 0.0), 0.25, again.surface.height.frame.cell)[0]
    loose = (depth > 5e-5) & (room > 1e-4) & (depth > by_feather + 1e-4)
    assert not loose.any()
    assert plan.slack <= 1e-4


def test_the_solution_says_how_far_one_more_step_moves_it(made: Scene) -> None:
    problem = problem_of(made)
    solution = solve(problem)
    moved = float(np.abs(evaluate(problem, solution.depth).depth - solution.depth).max())
    assert solution.residual == pytest.approx(moved, abs=1e-12) and solution.residual < 1e-4
    assert solution.least_weight <= 0.0  # below it alone is anything claimed of


def test_raising_any_cut_cell_brings_a_contact(made: Scene) -> None:
    problem = problem_of(made)
    solution = solve(problem)
    held = np.flatnonzero((solution.depth > 4e-4) & (solution.step.root < 0) & (solution.step.need > 0))
    rng = np.random.default_rng(1)
    for node in rng.choice(held, min(200, len(held)), replace=False):
        raised = solution.depth.copy()
        raised.flat[node] -= 3e-4
        # a wheel may stand on the cell and lift the vehicle over it: then the cell is a tyre's, not the
        # underside's
        step = evaluate(problem, raised)
        assert (step.need - raised).max() > 5e-5 or node in _carriers(problem, raised)


def _carriers(problem: Problem, depth: np.ndarray) -> np.ndarray:
    from crestcut.cut.problem import settled

    return np.unique(settled(problem, depth, np.arange(len(problem.batch.places))).contact)


def test_nothing_more_to_cut_on_the_cut_surface(made: Scene) -> None:
    plan = made.plan()
    again = stand(made.vehicle, made.travel, made.line, cut_surface(made.surface, plan.depth.values))
    assert again.plan().deepest < 5e-5


def test_the_claim_is_least_only_where_every_weight_is_positive() -> None:
    # a belly from tyre to tyre touches amid the wheelbase; an axle may tip about the inner edge of one of
    # them, right beside the belly's side, which then rises where it is the least bit nearer to the other axle
    assert SCENES["crest across"]().plan().claim == "maximal"
    assert scene(crest(0.10), vehicle(belly(0.12, 0.35))).plan().claim == "least"
    # its sides lie outside the diamond
    assert SCENES["crest skewed 45 degrees, full-width floor"]().plan().claim == "maximal"
    assert SCENES["nose into a rise"]().plan().claim == "maximal"  # an overhang always does
    # inside the diamond about the middle of the wheelbase
    inner = scene(crest(0.10), vehicle(belly(0.12, 0.1, 1.2, 1.6)))
    plan = inner.plan(wanted=Wanted(want=0.04))
    assert plan.deepest > 0.005 and plan.claim == "least"


def test_no_feasible_cut_is_shallower_where_the_claim_is_least() -> None:
    """Greatest fixed point: from ANY feasible start the plain map comes down no lower than the least cut
    (pointwise)."""
    s = scene(
        arc(9.0),
        vehicle(belly(0.13, 0.1, 1.2, 1.6), replace(RAIL, x=(1.2, 1.6), y=(0.2, 0.5), z=(0.10, 0.10))),
    )
    problem = problem_of(s)
    least = solve(problem).depth
    rng = np.random.default_rng(2)
    for _ in range(5):
        # over-cut at random, then made feasible by cutting on: still nowhere shallower than the least cut
        depth = np.minimum(
            rng.uniform(0, 0.03, least.shape) * (rng.random(least.shape) < 0.2), problem.allowed
        )
        for _ in range(200):
            step = evaluate(problem, depth)
            if (step.depth - depth).max() < 1e-7:
                break
            depth = np.maximum(depth, step.depth)
        assert (depth >= least - 2e-5).all()


def running_maximum(problem: Problem) -> np.ndarray:
    """What not to do: never take back what an earlier, shallower stance asked for."""
    depth = np.zeros(problem.contact.shape)
    for _ in range(400):
        step = evaluate(problem, depth)
        if (step.depth - depth).max() < 1e-6:
            break
        depth = np.maximum(depth, step.depth)
    return depth


def test_a_running_maximum_would_over_cut_a_skewed_crest() -> None:
    made = SCENES["crest skewed 45 degrees, full-width floor"]()
    problem = problem_of(made)
    ours, clamped = solve(problem).depth, running_maximum(problem)
    assert (clamped - ours).max() > 1e-3
    assert clamped.sum() > ours.sum() * 1.01
    # and ours is enough all the same
    assert (evaluate(problem, ours).need - ours).max() < 5e-5


def test_stopping_on_the_step_size_would_under_cut_a_hump_in_the_wheel_tracks() -> None:
    problem = problem_of(SCENES["long hump, low part in the wheel track"]())
    depth = np.zeros(problem.contact.shape)
    for _ in range(500):
        step = evaluate(problem, depth)
        moved, depth = np.abs(step.depth - depth).max(), step.depth
        if moved < 1e-4:
            break
    solution = solve(problem)
    assert solution.rate > 0.85
    # this much is still missing when the steps are down to 0.1 mm
    assert (solution.depth - depth).max() > 3e-4
    assert (evaluate(problem, solution.depth).need - solution.depth).max() < 5e-5


def test_policy_iteration_ends_where_plain_iteration_ends() -> None:
    problem = problem_of(SCENES["long hump, low part in the wheel track"]())
    depth = np.zeros(problem.contact.shape)
    for _ in range(400):
        depth = evaluate(problem, depth).depth
    assert np.abs(solve(problem).depth - depth).max() < 5e-5


# --- properties ---------------------------------------------------------------------------------------------
# --------------------


def test_moving_and_turning_ground_and_line_together_changes_nothing() -> None:
    here = scene(
        crest(0.10, 0.4), vehicle(belly(0.11, 0.803, 0.003, L - 0.004)), start=(-3.5, 0), end=(3.5, 0)
    ).plan()
    turn, at = 0.7, np.array([120.0, -35.0])
    c, s = math.cos(turn), math.sin(turn)

    def moved(x: np.ndarray, y: np.ndarray) -> np.ndarray:
        dx, dy = x - at[0], y - at[1]
        return crest(0.10, 0.4)(dx * c + dy * s, -dx * s + dy * c) + 4.0

    ends = [(at[0] + d * c, at[1] + d * s) for d in (-3.5, 3.5)]
    there = scene(moved, vehicle(belly(0.11, 0.803, 0.003, L - 0.004)), start=ends[0], end=ends[1]).plan()
    assert there.depth.values.shape == here.depth.values.shape
    assert np.nanmax(np.abs(there.depth.values - here.depth.values)) < 1e-6


def test_raising_a_part_never_asks_for_more_and_lowering_want_neither() -> None:
    low, high = (scene(crest(0.10), vehicle(belly(c))).plan() for c in (0.12, 0.125))
    assert (high.depth.values <= low.depth.values + 1e-6).all() and high.volume < low.volume
    s = SCENES["crest across"]()
    assert (s.plan(wanted=Wanted(want=0.005)).depth.values <= s.plan().depth.values + 1e-6).all()


def test_a_bigger_keep_area_is_never_cut_deeper_and_the_shortfall_is_said() -> None:
    s = SCENES["crest across"]()
    box = lambda w: ((-1.0, -w), (1.0, -w), (1.0, w), (-1.0, w))  # noqa: E731
    small = s.plan(keeps=(KeepArea("drain", box(0.1), 0.0),))
    large = s.plan(keeps=(KeepArea("drain", box(0.3), 0.0),))
    assert (large.limits.deepest.values <= small.limits.deepest.values + 1e-12).all()
    assert (large.depth.values <= large.limits.deepest.values + 1e-12).all()
    for plan in (small, large):
        assert not plan.feasible and plan.short_by > 0.01 and plan.short_at is not None
        assert "keep area (drain)" in plan.binding
    assert np.abs(plan.depth.sample((0.0, 0.0))) < 1e-12


def test_a_limit_leaves_the_cut_as_deep_as_it_allows_and_says_how_short_it_falls() -> None:
    s = SCENES["crest across"]()
    free = s.plan()
    bound = s.plan(deepest=0.013)
    assert bound.deepest == pytest.approx(0.013)
    assert not bound.feasible and bound.binding == ("deepest",)
    after = stand(s.vehicle, s.travel, s.line, cut_surface(s.surface, bound.depth.values)).before.worst
    assert after is not None and bound.short_by == pytest.approx(WANT.want - after.gap, abs=1e-6)
    assert free.deepest > 0.03


@pytest.mark.parametrize("slope", [0.25, 1 / 12])
def test_the_feather_is_never_steeper_than_asked(slope: float) -> None:
    depth = scene(crest(0.095, 0.3)).plan(feather=slope).depth.values
    for axis in (0, 1):
        assert np.abs(np.diff(depth, axis=axis)).max() <= slope * 0.01 + 1e-9
    diagonal = np.abs(depth[1:, 1:] - depth[:-1, :-1]).max()
    assert diagonal <= slope * 0.01 * math.sqrt(2) + 1e-9


def test_no_contact_no_cut() -> None:
    plan = scene(crest(0.02)).plan()
    assert plan.deepest == 0 and plan.area == 0 and plan.volume == 0 and plan.feasible and plan.short_by == 0


def test_wander_and_both_ways_only_add_to_the_cut() -> None:
    alone = scene(crest(0.095, 0.3), vehicle(belly(0.115, 0.8)))
    wide = Travel(line=(), wander=0.1, heading=0.03, ways=("forward", "turned"))
    more = stand(alone.vehicle, wide, alone.line, alone.surface)
    assert more.before.worst is not None and alone.before.worst is not None
    assert more.before.worst.gap <= alone.before.worst.gap + 1e-9
    plan = more.plan()
    assert plan.feasible
    again = stand(alone.vehicle, alone.travel, alone.line, cut_surface(alone.surface, plan.depth.values))
    assert again.before.worst is not None and again.before.worst.gap >= WANT.want - 5e-5


# What the depth must be, by hand: a belly short by s over a sharp crest needs the crest down by s while the
# wheels stand outside the cut (closed form c - (L/2) tan(b/2) + R (sec(b/2) - 1), b/2 = atan(grade)). [D]
@pytest.mark.parametrize("grade", [0.05, 0.08, 0.10])
def test_greatest_depth_is_what_the_closed_form_is_short_of(grade: float) -> None:
    b = math.atan(grade)
    clearance = 0.12 - L / 2 * math.tan(b) + R * (1 / math.cos(b) - 1)
    s = scene(crest(grade))
    assert s.before.worst is not None and s.before.worst.gap == pytest.approx(clearance, abs=5e-4)
    assert s.plan().deepest == pytest.approx(max(WANT.want - clearance, 0.0), abs=7e-4)


def test_a_bay_holds_the_whole_cut_in_whole_decimetres() -> None:
    depth = np.zeros((40, 60))
    depth[5:16, 10:30] = 0.01  # 11 x 20 nodes, each of a cell's width
    cut = SimpleNamespace(depth=HeightGrid(GridFrame((0.0, 0.0), 0.0, 0.05, depth.shape), depth))
    bay = bay_of(cut, Slab(thickness=0.12))  # type: ignore[arg-type]
    assert bay is not None and (bay.long, bay.wide, bay.thickness) == pytest.approx((1.0, 0.6, 0.12))
    assert not bay.guessed and bay_of(cut, Slab()).guessed  # type: ignore[arg-type, union-attr]


def test_what_is_not_measured_stays_so_under_a_cut() -> None:
    assert lowered(np.array([0.1, VOID]), np.array([0.02, 0.02])).tolist() == [0.08, VOID]


def test_a_ride_over_an_unchanged_surface_is_the_same_and_over_a_lower_one_lower() -> None:
    s = scene(crest(0.05, 0.4), cell=0.04)  # askew: body and axles roll each in their own way
    same = ride_on(s.ride, s.vehicle, s.surface)
    down = cut_surface(s.surface, np.full(s.surface.height.frame.shape, 0.01))
    low = ride_on(s.ride, s.vehicle, down, s.surface)
    for was, again, under in zip(s.ride.poses, same.poses, low.poses, strict=True):
        for name in ("wheels", "contact", "position", "rotation", "live"):
            assert (getattr(again, name) == getattr(was, name)).all(), name
        live = was.live
        assert under.position[live] == pytest.approx(was.position[live] - [0.0, 0.0, 0.01], abs=2e-6)
        assert under.rotation[live] == pytest.approx(was.rotation[live], abs=2e-6)


@pytest.mark.parametrize("limits", [False, True])
def test_no_point_of_a_plate_follows_the_wheels_by_more_than_its_corners_say(limits: bool) -> None:
    """Brute force over its points and where in its tread each tyre rests; too small a bound would leave poses
    out of the cut."""
    plates = Plates(
        np.array([[-0.5, 1.0, -0.6, 0.7, 0.1, 0.1], [2.0, 3.6, 0.2, 0.8, 0.2, 0.1]]),
        np.array([0, 1]), np.array([0, 0]),
    )  # fmt: skip
    car = vehicle(springs=Springs(front_droop=0.05, rear_droop=0.05, measured=limits))
    assert stands_by_limits(car) is limits
    found = _follows(car, plates)
    edges = np.stack(np.meshgrid(*[np.linspace(-0.1, 0.1, 3)] * 4), axis=-1).reshape(-1, 4)
    for (xr, xf, yr, yl, _, _), most in zip(plates.edges, found, strict=True):
        x, y = (k.ravel()[None] for k in np.meshgrid(np.linspace(xr, xf, 9), np.linspace(yr, yl, 9)))
        stands = [(wheel_weights(car, x, y, np.zeros(x.shape, np.int64)), None)]
        if limits:
            held = support_weights(car, x, y)
            stands += [(w, k) for i, w in enumerate(held) for k in (None, np.full(x.shape, i))]
        w = [ground_weights(car, w, np.broadcast_to(b, w.shape), k) for w, k in stands for b in edges]
        assert most == pytest.approx(np.maximum(w, 0).sum(axis=-1).max(), abs=1e-12)


def test_the_loosest_of_the_cells_that_hold_themselves_is_told() -> None:
    excess = np.array([[0.0, 0.003, np.nan], [0.001, -0.0002, 0.02]])
    for held, loosest in (([[1, 0, 0], [1, 1, 0]], 0.001), ([[0, 0, 0], [0, 0, 0]], 0.0)):
        ran = plan_module.Sought(excess, np.array(held, bool), (), 3, 1e-9, 0.2, 0.0)
        found = plan_module._certify(ran, excess)
        assert (found.loosest, found.least_excess) == (loosest, -0.0002)
