"""Seven numbers (or six) that lay places as seen on places as surveyed, how well they are known, and which
point does not belong.

Model, for each point: at = T + s R (x - m) + e, with m the middle of what was seen, R a turn, s = 1 unless
it is free, and e normal with the standard deviations ``sd`` times one common factor. The start is closed (R
by the singular value decomposition of the cross-covariance, its determinant kept at +1: Kabsch 1976, Umeyama,
IEEE PAMI 13:376, 1991; here ``scipy``'s ``align_vectors``) and final where all weights are alike;
Gauss-Newton takes it on where plan and height weigh differently. Statistics are those of the linear model at
its end (A, P as usual): redundancy R = I - A (A'PA)^-1 A'P, residuals v = R e (Baarda, A testing procedure
for use in geodetic networks, 1968).
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from crestcut.base.grid import FloatArray, frozen_array

ROUNDS = 20
SETTLED = 1e-12  # m and rad: of the last step
RANK = 1e-6  # of a point's own redundancy: less of it in a direction is none
ALARM = 0.05  # chance that a point is called wrong in a job where all are right
NOTHING = 1e-9  # m: residuals below it are rounding


@dataclass(frozen=True, eq=False)
class Movement:
    """after = at_middle + scale * rotation @ (before - middle), metres."""

    rotation: FloatArray
    scale: float
    middle: FloatArray
    at_middle: FloatArray

    def __post_init__(self) -> None:
        for name, ndim in (("rotation", 2), ("middle", 1), ("at_middle", 1)):
            object.__setattr__(self, name, frozen_array(getattr(self, name), ndim=ndim, name=name))

    def apply(self, before: FloatArray) -> FloatArray:
        """Places (..., 3)."""
        return np.asarray(
            (np.asarray(before, dtype=float) - self.middle) @ (self.scale * self.rotation.T) + self.at_middle
        )

    @property
    def tilt(self) -> float:
        """Between up before and up after, rad."""
        return float(np.arctan2(np.hypot(*self.rotation[:2, 2]), self.rotation[2, 2]))


@dataclass(frozen=True)
class Suspect:
    """The point that fits worst. number : in the order given.  off : m, where it lies from where all others
    put it.  chance : that points that are all right hold one that fits so badly; None where too few are left
    to tell."""

    number: int
    off: tuple[float, float, float]
    chance: float | None

    @property
    def size(self) -> float:
        """m."""
        return float(np.linalg.norm(self.off))

    @property
    def named(self) -> bool:
        """Whether it is wrong beyond the doubt that is allowed."""
        return self.chance is not None and self.chance < ALARM


@dataclass(frozen=True, eq=False)
class Fitted:
    """residuals (n, 3): where the movement puts each point, less where it was surveyed, m.  redundancy
    (n, 3): of each coordinate, 0 to 1.  freedom : of all.  factor : of the standard deviations, by the
    residuals; of 1 m where none were stated.  covariance : (k, k) of turn about x, y, z (rad), T (m) and,
    where it was free, ln s.  known : the standard deviations were stated, and the residuals do not contradict
    them.
    """

    movement: Movement
    residuals: FloatArray
    redundancy: FloatArray
    freedom: int
    factor: float
    covariance: FloatArray
    known: bool
    suspect: Suspect

    def sd(self, after: FloatArray) -> FloatArray:
        """(n, 3) m, 1 sd of places (n, 3), moved, by the movement's own doubt: J C J'."""
        jacobian = _jacobian(np.atleast_2d(after) - self.movement.at_middle, len(self.covariance) == 7)
        return np.asarray(np.sqrt(np.einsum("nik,kl,nil->ni", jacobian, self.covariance, jacobian)))


def fit_points(seen: FloatArray, at: FloatArray, sd: FloatArray | None, free_scale: bool) -> Fitted:
    """Lay ``seen`` (n, 3) on ``at`` (n, 3), metres, n of 3 or more and not on one line. sd : (n, 3) m; None
    where none are known: then all coordinates weigh alike and the residuals say how much."""
    count, unknowns = 3 * len(seen), 7 if free_scale else 6
    root = np.ones_like(at) if sd is None else 1.0 / sd  # root of the weights
    movement = _settled(_start(seen, at, root, free_scale), seen, at, root, free_scale)
    arm = movement.apply(seen) - movement.at_middle
    jacobian = (_jacobian(arm, free_scale) * root[..., None]).reshape(count, unknowns)
    normal = np.asarray(np.linalg.inv(jacobian.T @ jacobian))
    left = np.eye(count) - jacobian @ normal @ jacobian.T
    residuals = movement.apply(seen) - at
    weighed = (residuals * root).ravel()
    freedom = count - unknowns
    variance = float(weighed @ weighed) / freedom
    known = sd is not None and _chance_above(variance * freedom, freedom) >= ALARM
    return Fitted(
        movement, residuals, left.diagonal().reshape(-1, 3), freedom, float(np.sqrt(variance)),
        np.asarray(normal * (1.0 if known else variance)), known,
        _suspect(weighed, left, root, sd is not None),
    )  # fmt: skip


def spread(places: FloatArray) -> tuple[float, float]:
    """Root mean square distances (long, across) of places (n, 3) from their middle along their longest line,
    and from that line, m."""
    size = np.linalg.svd(places - places.mean(axis=0), compute_uv=False) / np.sqrt(len(places))
    return float(size[0]), float(np.hypot(*size[1:]))


def _start(seen: FloatArray, at: FloatArray, root: FloatArray, free_scale: bool) -> Movement:
    """The closed form, each point with the mean of its weights."""
    from scipy.spatial.transform import Rotation

    weight = (root**2).mean(axis=1)
    weight /= weight.sum()
    middle, at_middle = weight @ seen, weight @ at
    x, y = seen - middle, at - at_middle
    turn = Rotation.align_vectors(y, x, weight)[0].as_matrix()
    turned = x @ turn.T
    # least squares of |y - s R x|: s = sum w y.Rx / sum w |x|^2 (Umeyama 1991, 42)
    share = float(weight @ (y * turned).sum(axis=1)) / float(weight @ (x * x).sum(axis=1))
    return Movement(turn, share if free_scale else 1.0, middle, at_middle)


def _settled(
    movement: Movement, seen: FloatArray, at: FloatArray, root: FloatArray, free_scale: bool
) -> Movement:
    """The least of the weighed residuals' squares."""
    from scipy.spatial.transform import Rotation

    for _ in range(ROUNDS):
        laid = movement.apply(seen)
        jacobian = _jacobian(laid - movement.at_middle, free_scale) * root[..., None]
        off = (at - laid) * root
        step = np.linalg.lstsq(jacobian.reshape(off.size, -1), off.ravel(), rcond=None)[0]
        turn = Rotation.from_rotvec(step[:3]).as_matrix() @ movement.rotation
        scale = movement.scale * float(np.exp(step[6])) if free_scale else 1.0
        movement = Movement(turn, scale, movement.middle, movement.at_middle + step[3:6])
        if np.abs(step).max() < SETTLED:
            break
    return movement


def _jacobian(arm: FloatArray, free_scale: bool) -> FloatArray:
    """(n, 3, 6 or 7): d at / d (turn, T, ln s). A turn d about the middle moves an arm p by d x p.

    arm (n, 3): from the middle to each place, moved."""
    out = np.zeros((len(arm), 3, 7 if free_scale else 6))
    x, y, z = arm.T
    out[:, 0, 1], out[:, 0, 2] = z, -y
    out[:, 1, 0], out[:, 1, 2] = -z, x
    out[:, 2, 0], out[:, 2, 1] = y, -x
    out[:, :, 3:6] = np.eye(3)
    if free_scale:
        out[:, :, 6] = arm
    return out


def _suspect(weighed: FloatArray, left: FloatArray, root: FloatArray, stated: bool) -> Suspect:
    """The point without which the squares fall most.

    Left out, a point takes v' R_ii^-1 v off their sum (weighed; Baarda 1968, for one of three coordinates at
    once), chi-squared with as many degrees as R_ii has rank where the standard deviations are stated; against
    what is left it is an F else. n points are n chances (Bonferroni). Its error is R_ii^-1 v.
    """
    from scipy import stats

    total, count = float(weighed @ weighed), len(root)
    freedom = round(float(np.trace(left)))
    found: list[tuple[float, int, int, FloatArray]] = []
    for k in range(count):
        part = slice(3 * k, 3 * k + 3)
        own, turn = np.linalg.eigh(left[part, part])
        seen = own > RANK
        error = turn[:, seen] @ (turn[:, seen].T @ weighed[part] / own[seen])
        found.append((float(weighed[part] @ error), int(seen.sum()), k, error))
    fall, rank, k, error = max(found, key=lambda f: f[0])
    # the error is of "where it is put, less where it was surveyed", so it was surveyed the other way off
    off = -(error / root[k])
    rest, room = max(total - fall, 0.0), freedom - rank
    chance: float | None = None
    if stated:
        chance = _chance_above(fall, rank)
    elif room > 0 and rank:
        ratio = np.inf if rest <= NOTHING**2 else (fall / rank) / (rest / room)
        chance = float(stats.f.sf(ratio, rank, room)) if fall > NOTHING**2 else 1.0
    chance = None if chance is None or (stated and room < 1) else min(1.0, chance * count)
    return Suspect(k, (float(off[0]), float(off[1]), float(off[2])), chance)


def _chance_above(value: float, freedom: int) -> float:
    from scipy import stats

    return float(stats.chi2.sf(value, freedom))
