"""Laying one scan of a slab on another: robust point-to-plane fit that leaves alone what the shape does not
settle.

A slab is nearly a plane, and a phone scan is warped by about 5 mm. Fitted freely, such scans slide along the
slab and turn on it, chasing the warp. Height and tilt are always fitted. Shift and turn in plan are fitted
only along those combinations that the shape settles to better than ``SETTLED``; the others stay where they
were, which by the same token hardly changes heights.

A general library's robust point-to-plane fit (Open3D 0.20, Tukey and Geman-McClure kernels) was compared on
pairs of known movement (``tests/bench/register.py``). It cannot leave a movement alone: over bare planes with
5 mm of warp it slid 350 mm along the slab and turned 50 mrad, three times in three, where this stays within
what the coordinates said. Heights come out alike elsewhere (0.1 to 1.8 mm; half an overlap 4.7 and 4.6); in
plan it is nearer there by 12 mm, with a third of the scan to hold it.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from crestcut.base.grid import FloatArray
from crestcut.scan.registering.voxels import normals, thin

CELL = 0.04  # m: thinning, finer than the objects that hold a scan in plan, coarse enough to be quick
WARP = 0.005  # m sd and
WARP_LENGTH = 0.4  # m: of a phone scan's warp, measured on a real slab between the halves of one walk
SETTLED = 0.015  # m: a plan movement known worse than this is not fitted
_GATES = (0.30, 0.15, 0.08, 0.05, 0.05)  # m: partners further away do not count, coarse to fine
_ROUNDS = 6  # per gate
WIDE = 0.25  # of a gate: partners nearer than that have a say, however smooth the slab; the last is no wider
_ROUGH = 0.05  # planting and edges make poor planes
_ALIKE = np.cos(np.radians(35.0))  # partners face the same way
_BESIDE = 0.06  # m: points this near to the other scan (in plan, in space) are seen by both, agree with it
AGREE = 0.030  # m: faces further apart than this are different things, not noise or warp


def root_mean_square(differences: FloatArray) -> float:
    """RMSE of differences (n,), in their unit: about zero, not their mean (NSSDA, FGDC-STD-007.3-1998)."""
    return float(np.sqrt(np.mean(np.square(differences))))


def accuracy_95(rmse: float) -> float:
    """What 95 % of vertical errors stay within: 1.96 RMSE (NSSDA; normal errors without bias)."""
    return 1.96 * rmse


@dataclass(frozen=True, eq=False)
class Fit:
    """How a scan lies on the reference. ``rotation`` (3, 3), ``move`` (3,) metres: reference = rotation @
    moving + move."""

    rotation: FloatArray
    move: FloatArray
    error: float  # m, rms of the distances of what both saw, gross outliers left out
    overlap: float  # share of the smaller scan that lies on what both saw
    agree: float  # share of that, objects and planting included, that has the other scan within 60 mm
    held: tuple[str, ...]  # plan movements that the shape did not settle

    def apply(self, points: FloatArray) -> FloatArray:
        """Moving site coordinates (n, 3) -> reference site coordinates, metres."""
        return points @ self.rotation.T + self.move

    @property
    def good(self) -> bool:
        """Whether the two can be scans of one slab."""
        return self.overlap >= 0.3 and self.agree >= 0.7 and self.error <= 0.020


class Reference:
    """The scan that others are laid on: thinned, with normals and a search tree."""

    def __init__(self, points: FloatArray) -> None:
        from scipy.spatial import cKDTree

        self.all = thin(points, CELL)
        self.points, self.normal = _smooth(self.all)
        self.tree = cKDTree(self.points)
        self.all_tree = cKDTree(self.all)
        self.plan_tree = cKDTree(self.all[:, :2])

    def partners(
        self, moved: FloatArray, facing: FloatArray, gate: float
    ) -> tuple[FloatArray, FloatArray, FloatArray]:
        """For points (n, 3) with normals (n, 3) that have a partner within ``gate`` facing alike:

        which they are (m,), the partners' normals (m, 3) and the signed distances (m,) from the partners'
        planes.
        """
        far, index = self.tree.query(moved, distance_upper_bound=gate)
        which = np.flatnonzero(np.isfinite(far))
        normal = self.normal[index[which]]
        alike = np.abs(np.einsum("nk,nk->n", normal, facing[which])) > _ALIKE
        which, normal = which[alike], normal[alike]
        return which, normal, np.einsum("nk,nk->n", moved[which] - self.points[index[which]], normal)

    def seen_by_both(self, moved: FloatArray) -> tuple[float, float]:
        """(overlap, agree) of thinned points (n, 3): see ``Fit``."""
        beside = self.plan_tree.query(moved[:, :2])[0] < _BESIDE
        overlap = min(float(beside.sum()) / min(len(moved), len(self.all)), 1.0)
        if not beside.any():
            return 0.0, 0.0
        return overlap, float((self.all_tree.query(moved[beside])[0] < _BESIDE).mean())

    def settle_in_plan(self, source: FloatArray, turn: float, move: FloatArray) -> tuple[float, FloatArray]:
        """Turn and shift in plan refined by all that was scanned, planting and objects too: least mean
        distance, held at 0.1 m so that what only one scan saw has no pull. ``source`` (n, 3): few thinned
        points."""
        from scipy.optimize import minimize

        middle = source.mean(axis=0)

        def place(p: FloatArray) -> tuple[float, FloatArray]:
            # Turned about the middle of the scan, so that turn and shift do not fight.
            before = turn_about_z(turn) @ middle + move
            return turn + p[0], before + np.array([p[1], p[2], 0.0]) - turn_about_z(turn + p[0]) @ middle

        def cost(p: FloatArray) -> float:
            angle, shift = place(p)
            far = self.all_tree.query(source @ turn_about_z(angle).T + shift, distance_upper_bound=0.1)[0]
            return float(np.minimum(far, 0.1).mean())

        start = np.vstack([np.zeros(3), np.diag([np.radians(2.0), 0.06, 0.06])])
        best = minimize(
            cost,
            np.zeros(3),
            method="Nelder-Mead",
            options={"initial_simplex": start, "maxfev": 60, "xatol": 1e-3, "fatol": 1e-6},
        )
        return place(best.x)


def turn_about_z(angle: float) -> FloatArray:
    """(3, 3) turn to the left by ``angle`` radians."""
    c, s = np.cos(angle), np.sin(angle)
    return np.array([[c, -s, 0.0], [s, c, 0.0], [0.0, 0.0, 1.0]])


def _smooth(thinned: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Thinned points (m, 3) and their normals where the scan is smooth: planting and edges make poor
    planes."""
    normal, rough = normals(thinned)
    return thinned[rough < _ROUGH], normal[rough < _ROUGH]


def register(
    reference: Reference,
    moving: FloatArray,
    turn: float = 0.0,
    move: FloatArray | None = None,
    warp: float = WARP,
) -> Fit:
    """Lay ``moving`` (n, 3) site metres on the reference, from a start turned by ``turn`` about z (radians)
    and moved.  warp : m, 1 sd of what the two scans differ by smoothly: what the shape can settle."""
    thinned = thin(moving, CELL)
    source, facing = _smooth(thinned)
    rotation = turn_about_z(turn)
    move = np.zeros(3) if move is None else np.asarray(move, dtype=float)
    held: tuple[str, ...] = ()
    for gate in _GATES:
        for _ in range(_ROUNDS):
            moved = source @ rotation.T + move
            which, normal, distance = reference.partners(moved, facing @ rotation.T, gate)
            if len(which) < 50:
                break
            centre = moved[which].mean(axis=0)
            step, held = _step(moved[which] - centre, normal, distance, warp, gate * WIDE)
            small = _rotation(step[:3])
            rotation = small @ rotation
            move = small @ (move - centre) + centre + step[3:]
            if np.abs(step[3:]).max() < 1e-6 and np.abs(step[:3]).max() < 1e-6:
                break
    which, _, distance = reference.partners(source @ rotation.T + move, facing @ rotation.T, AGREE)
    error = root_mean_square(distance) if len(which) >= 50 else float("inf")
    overlap, agree = reference.seen_by_both(thinned @ rotation.T + move)
    return Fit(rotation, move, error, overlap, agree, held)


def _step(
    arm: FloatArray, normal: FloatArray, distance: FloatArray, warp: float, wide: float
) -> tuple[FloatArray, tuple[str, ...]]:
    """One Gauss-Newton step (turn about x, y, z; move x, y, z) and what it held still.

    Point-to-plane distance linearised: d + n . (w x a) + n . t, so its row is [a x n, n] (Chen & Medioni
    1992).
    """
    row = np.hstack([np.cross(arm, normal), normal])
    scale = max(1.4826 * float(np.median(np.abs(distance - np.median(distance)))), 1e-4)
    # Tukey's biweight: what stands on only one of the scans gets no say. The slab sets the scale, and the
    # sides of what stands on it are far off at first: without a width that begins with the gate they would
    # be left out, and with them all that holds a scan in plan.
    reach = max(4.685 * max(scale, float(np.abs(np.median(distance)))), wide)
    weight = np.clip(1.0 - (distance / reach) ** 2, 0.0, None) ** 2
    # Turns are counted as the movement they make at the rim, so that all six unknowns are lengths.
    radius = max(float(np.sqrt((arm[:, :2] ** 2).sum(axis=1).mean())), 1e-3)
    unit = np.array([1 / radius, 1 / radius, 1 / radius, 1.0, 1.0, 1.0])
    row = row * unit
    matrix = row.T @ (row * weight[:, None])
    right = -row.T @ (weight * distance)
    free, held = _free_directions(matrix, scale, warp)
    step = free @ np.linalg.lstsq(free.T @ matrix @ free, free.T @ right, rcond=1e-9)[0]
    return step * unit, held


def _free_directions(matrix: FloatArray, scale: float, warp: float) -> tuple[FloatArray, tuple[str, ...]]:
    """Columns (6, m) spanning the movements to fit, and words for those held still.

    What the data say of the plan movements once height and tilt are free is the Schur complement; its
    variance counts one reading per patch of warp, not per point.
    """
    upright, plan = [0, 1, 5], [2, 3, 4]
    cross = matrix[np.ix_(plan, upright)]
    inner = np.linalg.lstsq(matrix[np.ix_(upright, upright)], cross.T, rcond=1e-9)[0]
    told, direction = np.linalg.eigh(matrix[np.ix_(plan, plan)] - cross @ inner)
    per_patch = (WARP_LENGTH / CELL) ** 2
    sd = np.sqrt(max(scale, warp) ** 2 * per_patch / np.maximum(told, 1e-12))
    columns = [np.eye(6)[:, k] for k in upright]
    held = []
    for k in range(3):
        if sd[k] <= SETTLED:
            column = np.zeros(6)
            column[plan] = direction[:, k]
            columns.append(column)
        else:
            held.append(_words(direction[:, k]))
    return np.stack(columns, axis=1), tuple(held)


def _words(direction: FloatArray) -> str:
    """What a plan movement (turn, x, y) mostly is."""
    if abs(direction[0]) > 0.7:
        return "turn in plan"
    bearing = np.degrees(np.arctan2(direction[2], direction[1])) % 180.0
    if min(bearing, 180.0 - bearing) < 20.0:
        return "shift along x"
    return "shift along y" if abs(bearing - 90.0) < 20.0 else f"shift at {bearing:.0f} degrees to x"


def _rotation(turn: FloatArray) -> FloatArray:
    from scipy.spatial.transform import Rotation

    return np.asarray(Rotation.from_rotvec(turn).as_matrix())
