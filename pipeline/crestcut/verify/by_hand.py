"""What was read by hand since: the finished work from it alone, without a new scan, and slab and vehicle
where it puts them.

The slab is the one that was scanned, less a share of the planned depth. That share is unknown, from nothing
to a little more than all; what was read by hand says which shares are likely (a flat prior, and the
likelihood of the readings with scan and vehicle as uncertain as they are: Rasmussen & Williams 2006, 5.4.1).
A cut followed by hand is besides a little uneven, over a tenth and over half a metre.

Where there is a scan that is 8 mm out over the crest and a gap felt there disagrees, the chances weigh both,
and so must the map of what is still to go. Errors given Gaussian readings are a shift and a smaller spread
(kriging, as in ``readings.condition``): ``told_by`` makes the shift, and the readings are kept, ``agreeing``,
for the spread. ``chance.conditioned`` moves the slab's own draws; what a hand left uneven since is not among
those.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

import numpy as np
from scipy import special
from scipy.ndimage import map_coordinates

from crestcut.base.errors import CrestcutError
from crestcut.base.grid import FloatArray, GridFrame, HeightGrid
from crestcut.chance import moved_vehicle
from crestcut.cut import cut_surface
from crestcut.standing import LoadedVehicle
from crestcut.terrain import (
    UNLIKELY,
    ErrorModel,
    Evidence,
    Reading,
    Surface,
    contradictions,
    fold_in,
    own_covariance,
)
from crestcut.verify.records import Fight, Odd, Predicted, Share, Told

MOST, STEP = 1.3, 0.05  # share of the planned depth: the greatest looked at, and the steps between
WORK = 0.0015  # m, 1 sd over about 0.1 m: a hand grinder riding on a jig (common practice, no source)
UNEVEN = 0.10  # of the depth, 1 sd over half a metre: one stretch taken lower than another (likewise)
FULL = 0.003  # m: ground deeper than this is as uneven as a hand leaves it, shallower less so
FINE = 521  # shares that a curve is drawn through
COARSE = 0.05  # m between places where the shift is worked out: half of what patches change over
HALF_CUT = 0.5  # share of the plan: readings that say more than this show by themselves that it was cut
DRAWS = 200  # for what bounds leave free
NODES = ((-(3**0.5), 1 / 6), (0.0, 2 / 3), (3**0.5, 1 / 6))  # Gauss-Hermite, three points


@dataclass(frozen=True, eq=False)
class Shares:
    """What the readings make of the share: Share, and shares with their weights that stand for all.

    fights : readings that contradict; then the share is not known, and any is as likely as any other.
    """

    share: Share
    nodes: tuple[tuple[float, float], ...]
    fights: tuple[Fight, ...] = ()


def worked(surface: Surface, planned: HeightGrid, share: float) -> Surface:
    """The slab with a share of the planned depth gone, and as uncertain as a hand leaves it."""
    depth = share * np.nan_to_num(planned.values)
    lower = cut_surface(surface, depth)
    error = uneven(surface.error, float(depth.max(initial=0.0)))
    on = planned.like(np.clip(depth / FULL, 0.0, 1.0))
    return replace(lower, error=replace(error, worked_on=on), scanned=None)


def uneven(error: ErrorModel, deepest: float) -> ErrorModel:
    """The error of a scanned surface that was then cut by hand to a plan."""
    if deepest <= 0:
        return error
    if error.slab is not None:
        # its grain is not drawn: what is felt under the vehicle is the least over it already
        return replace(error, worked=(0.0, UNEVEN * deepest))
    patch, warp = np.hypot(error.patch, WORK), np.hypot(error.warp, UNEVEN * deepest)
    return replace(error, patch=float(patch), warp=float(warp))


def likely_shares(
    surface: Surface, planned: HeightGrid, driver: LoadedVehicle, read: Callable[[Surface], Evidence | None]
) -> Shares:
    """How much of the planned depth the readings say is gone.

    surface, driver : what the readings from before the work have told of them is in their draws.  read : the
    readings since, as evidence on a slab worked to some share.
    Raises CrestcutError where the readings fit on no such slab (a string that it would touch).
    """
    shares = np.arange(0.0, MOST + STEP / 2, STEP)
    refused: list[CrestcutError] = []

    def look(share: float) -> Misfit | None:
        ground = worked(surface, planned, share)
        try:
            evidence = read(ground)
        except CrestcutError as error:  # a string set over the finished cut would touch the slab as it was
            refused.append(error)
            return None
        return misfit_of(evidence, ground.error, driver)

    looked = [look(float(share)) for share in shares]
    log = np.array([-np.inf if misfit is None else log_likelihood(misfit) for misfit in looked])
    best = looked[int(np.argmax(log))]
    if best is None:
        raise refused[0]
    if fights := fighting(best, [misfit for misfit in looked if misfit is not None]):
        return Shares(*_spread_over(np.ones(FINE)), fights)
    fine, known = np.linspace(0.0, MOST, FINE), np.isfinite(log)
    curve = np.interp(fine, shares[known], log[known])
    curve[fine < shares[known][0] - 1e-9] = -np.inf
    share, nodes = _spread_over(np.exp(curve - curve.max()))
    # a share at which the readings cannot be used says nothing of them
    used = [(s, w) for s, w in nodes if (misfit := look(s)) is not None and not misfit.fight()]
    used = used or [(float(shares[int(np.argmax(log))]), 1.0)]
    total = sum(w for _, w in used)
    return Shares(share, tuple((s, w / total) for s, w in used))


def _spread_over(weight: FloatArray) -> tuple[Share, tuple[tuple[float, float], ...]]:
    """Mean and 1 sd of shares from nothing to ``MOST`` of such weights, and the nodes that stand for them."""
    fine, weight = np.linspace(0.0, MOST, FINE), weight / weight.sum()
    best = float(weight @ fine)
    sd = float(np.sqrt(weight @ (fine - best) ** 2))
    nodes = tuple((float(np.clip(best + z * sd, 0.0, MOST)), w) for z, w in NODES)
    return Share(best, sd), nodes if sd > 1e-4 else ((best, 1.0),)


@dataclass(frozen=True, eq=False)
class Misfit:
    """Readings on a slab worked to some share: by how much each misses what is expected there, m (m,), and
    the covariance of that (m, m), m2.  fitted : how many degrees of freedom went into the slab: the share."""

    readings: tuple[Reading, ...]
    missed: FloatArray
    own: FloatArray
    fitted: int = 1

    def fight(self, picked: Sequence[int] | None = None) -> bool:
        """Whether those readings (all, without others) contradict each other or the scan."""
        picked = range(len(self.readings)) if picked is None else picked
        own = self.own[np.ix_(picked, picked)]
        return bool(contradictions([self.readings[i] for i in picked], own, self.missed[list(picked)]))

    def unlikely(self, picked: Sequence[int] | None = None) -> bool:
        """Whether what was read there to a figure misses by more, all in all, than happens once in 1,000
        times (chi squared)."""
        picked = range(len(self.readings)) if picked is None else picked
        exact = [i for i in picked if self.readings[i].relation == "is"]
        if len(exact) < 2:
            return False
        missed = self.missed[exact]
        total = float(missed @ np.linalg.solve(self.own[np.ix_(exact, exact)], missed))
        return bool(special.chdtrc(len(exact) - self.fitted, total) < UNLIKELY)

    def expected(self, i: int, others: Sequence[int]) -> tuple[float, float]:
        """What others that were read to a figure say would be read there, and how well that and the reading
        are known, 1 sd, m: the mean and spread of a normal given theirs."""
        exact = [j for j in others if self.readings[j].relation == "is"]
        gain = np.linalg.solve(self.own[np.ix_(exact, exact)], self.own[exact, i]) if exact else np.zeros(0)
        mean = self.readings[i].predicted + float(gain @ self.missed[exact])
        return mean, float(np.sqrt(max(float(self.own[i, i] - gain @ self.own[exact, i]), 1e-12)))


def misfit_of(evidence: Evidence | None, error: ErrorModel, driver: LoadedVehicle, fitted: int = 1) -> Misfit:
    """The readings of ``evidence`` as they stand to what is expected of them, ground and vehicle as uncertain
    as they are."""
    if evidence is None:
        return Misfit((), np.zeros(0), np.zeros((0, 0)), fitted)
    own, *_ = own_covariance(evidence, error, driver.within, driver.parts)
    missed = np.array([r.observed - r.predicted for r in evidence.readings])
    return Misfit(evidence.readings, missed, own, fitted)


def against_scan(
    evidence: Evidence | None, ground: Surface, driver: LoadedVehicle, agree: Callable[[], bool]
) -> tuple[Fight, ...]:
    """Readings that the scan since, or each other, do not let stand; empty where all agree.

    ground : as that scan shows it.  agree : whether the readings agree with each other without it.
    """
    misfit = misfit_of(evidence, ground.error, driver, fitted=0)
    return fighting(misfit, [misfit], agree)


def fighting(
    likeliest: Misfit, every: Sequence[Misfit], agree: Callable[[], bool] = lambda: False
) -> tuple[Fight, ...]:
    """Readings that no share of the work lets stand beside each other; empty where all agree.

    likeliest : on the slab that fits the readings best.  every : on slabs worked to every share.  agree : as
    for ``against_scan``.
    """
    count = len(likeliest.readings)
    if not (likeliest.unlikely() or likeliest.fight()):
        return ()
    found: list[tuple[int, list[int]]] = [(i, []) for i in range(count) if all(s.fight([i]) for s in every)]
    rest = [i for i in range(count) if (i, []) not in found]
    pairs = {(i, j) for i in rest for j in rest if i < j and all(s.fight([i, j]) for s in every)}
    while pairs:  # the reading that most others speak against comes first
        worst = max(rest, key=lambda i: sum(i in pair for pair in pairs))
        found.append((worst, sorted(sum(pair) - worst for pair in pairs if worst in pair)))
        pairs = {pair for pair in pairs if worst not in pair}
    if not found:  # no two of them, but all of them together
        odd = min(range(count), key=lambda i: _left_over(likeliest, i))
        found.append((odd, [j for j in range(count) if j != odd]))
    spoils = _spoils(every, count)
    without = count > 1 and agree()
    fights = []
    for i, others in found:
        expected, sd = min(
            (s.expected(i, others) for s in every),
            key=lambda each: abs(likeliest.readings[i].observed - each[0]) / each[1],
        )
        odd_one = (
            Odd.READING if spoils == [i] and not without
            else Odd.SCAN if without and not spoils
            else Odd.NOT_KNOWN
        )  # fmt: skip
        against = tuple(_told(likeliest.readings[j]) for j in others)
        fights.append(Fight(_told(likeliest.readings[i]), against, expected, sd, odd_one))
    return tuple(fights)


def _spoils(every: Sequence[Misfit], count: int) -> list[int]:
    """Readings without any one of which all others agree, for some share of the work; one alone has none
    beside it that could agree."""
    found = []
    for i in range(count) if count > 1 else ():
        kept = [j for j in range(count) if j != i]
        if any(not s.fight(kept) and not s.unlikely(kept) for s in every):
            found.append(i)
    return found


def _told(reading: Reading) -> Told:
    return Told(reading.name, reading.what, reading.observed, reading.relation)


def _left_over(misfit: Misfit, without: int) -> float:
    """How far the readings but one miss, all in all: the one that spoils it leaves least."""
    kept = [i for i in range(len(misfit.readings)) if i != without]
    missed = misfit.missed[kept]
    return float(missed @ np.linalg.solve(misfit.own[np.ix_(kept, kept)], missed))


def agree_by_hand(
    surface: Surface, planned: HeightGrid, driver: LoadedVehicle, read: Callable[[Surface], Evidence | None]
) -> bool:
    """Whether the readings agree with each other and the slab before the work, whatever was taken off."""
    try:
        return not likely_shares(surface, planned, driver, read).fights
    except CrestcutError:  # on no share of the work can they be
        return False


def cut_by_hand(
    surface: Surface, planned: HeightGrid, driver: LoadedVehicle, read: Callable[[Surface], Evidence | None]
) -> bool:
    """Whether the readings agree with each other and say by themselves that most of the plan was cut."""
    try:
        shares = likely_shares(surface, planned, driver, read)
    except CrestcutError:
        return False
    return not shares.fights and shares.share.best - 2 * shares.share.sd > HALF_CUT


def foretold(
    surface: Surface, planned: HeightGrid, driver: LoadedVehicle, read: Callable[[Surface], Evidence | None],
    since: Surface | None = None,
) -> tuple[Predicted, ...]:  # fmt: skip
    """Every gap and string of the readings as the plan would have had it, all of it cut, and as the scan
    since has it; the readings' own errors in the spread. Levels, read from no known height, are left out."""

    def misfit(ground: Surface | None) -> Misfit | None:
        try:
            return None if ground is None else misfit_of(read(ground), ground.error, driver)
        except CrestcutError:  # a string that would touch there
            return None

    def said(found: Misfit | None, i: int) -> tuple[float, float] | None:
        return None if found is None else found.expected(i, ())

    by_plan, by_scan = misfit(worked(surface, planned, 1.0)), misfit(since)
    zones = {p.name: p.zone for p in driver.vehicle.parts}
    known = by_plan or by_scan
    return tuple(
        Predicted(zones.get(r.part or ""), r.relation, r.observed, said(by_plan, i), said(by_scan, i))
        for i, r in enumerate(known.readings if known is not None else ())
        if r.part is not None or len(r.points) > 1
    )


def log_likelihood(misfit: Misfit) -> float:
    """Of the readings given ground and vehicle as uncertain as they are: what was read to a figure by its
    density, a bound by its chance given those."""
    readings, missed, own = misfit.readings, misfit.missed, misfit.own
    exact = [i for i, r in enumerate(readings) if r.relation == "is"]
    inner = own[np.ix_(exact, exact)]
    total = -0.5 * float(missed[exact] @ np.linalg.solve(inner, missed[exact])) if exact else 0.0
    total -= 0.5 * float(np.linalg.slogdet(inner)[1]) if exact else 0.0
    return total + sum(_bound(r, i, own, missed, exact) for i, r in enumerate(readings) if r.relation != "is")


def _bound(reading: Reading, i: int, own: FloatArray, missed: FloatArray, exact: Sequence[int]) -> float:
    gain = np.linalg.solve(own[np.ix_(exact, exact)], own[exact, i]) if exact else np.zeros(0)
    mean, variance = float(gain @ missed[exact]), float(own[i, i] - gain @ own[exact, i])
    over = (mean - missed[i]) / float(np.sqrt(max(variance, 1e-12)))
    return float(special.log_ndtr(over if reading.relation == "at least" else -over))


def told_by(
    surface: Surface, driver: LoadedVehicle, evidence: Evidence | None, seed: int
) -> tuple[Surface, LoadedVehicle]:
    """Ground and parts at their expected places given the readings; both as they were where there are none,
    or where they contradict."""
    if evidence is None:
        return surface, driver
    frame, step = surface.height.frame, max(round(COARSE / surface.height.frame.cell), 1)
    coarse = _coarse(frame, step)
    places = coarse.node_xy().reshape(-1, 2)
    rng = np.random.default_rng(seed)
    fold = fold_in(evidence, surface.error, places, driver.within, rng, DRAWS, driver.parts)
    if fold.contradictions:
        return surface, driver
    shift = _fine(fold.ground.reshape(coarse.shape), step, frame.shape)
    ground = replace(
        surface,
        height=surface.height.like(surface.height.values - shift),
        top=surface.top.like(surface.top.values - shift),
    )
    return ground, replace(driver, vehicle=moved_vehicle(driver.vehicle, fold.parts))


def agreeing(evidence: Evidence | None) -> Evidence | None:
    """The same readings, come out just as expected: they still narrow, and no longer shift. Bounds are left
    out: what they narrow is spent in the shift."""
    if evidence is None:
        return None
    kept = [k for k, r in enumerate(evidence.readings) if r.relation == "is"]
    if not kept:
        return None
    readings = tuple(replace(evidence.readings[k], observed=evidence.readings[k].predicted) for k in kept)
    return Evidence(readings, evidence.noise[np.ix_(kept, kept)])


def _coarse(frame: GridFrame, step: int) -> GridFrame:
    rows, columns = (-(-(n - 1) // step) + 1 for n in frame.shape)
    return replace(frame, cell=frame.cell * step, shape=(rows, columns))


def _fine(values: FloatArray, step: int, shape: tuple[int, ...]) -> FloatArray:
    """Straight lines between coarse nodes, (rows, columns) of ``shape``."""
    at: Sequence[FloatArray] = np.meshgrid(*(np.arange(n) / step for n in shape), indexing="ij")
    return np.asarray(map_coordinates(values, at, order=1, mode="nearest"))
