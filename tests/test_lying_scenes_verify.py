"""Scans and readings that lie after the work: none of them makes it 'done'.

The truth: under the tray of the low cart 20 mm were asked for, and nothing, or half, or one side of what was
planned is gone. 'Done' is wrong, a refusal or any other word is not.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from pathlib import Path

import numpy as np
import pytest

from crestcut.apps.verify import check_job
from crestcut.base.errors import CrestcutError
from crestcut.base.grid import FloatArray
from crestcut.chance.records import Doubt
from crestcut.report.words.verify import verify_lines
from crestcut.study.record import Study
from crestcut.verify.removed import speaks_against
from verify.after_scene import (
    COARSE,
    CREST,
    Depth,
    height,
    nothing,
    of_plan,
    planned_job,
    planned_once,
    walked,
    write_ply,
)

Scene = Callable[[Depth], FloatArray]  # the plan -> points


@pytest.fixture(scope="module")
def site(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, Study]:
    """The job's folder and its finished run."""
    return planned_job(tmp_path_factory.mktemp("site"), walked(1)[::2], COARSE)


@pytest.fixture(autouse=True)
def planned(site: tuple[Path, Study]) -> Iterator[None]:
    with planned_once(site[1]):
        yield


def lowered(by: float, reach: float) -> Scene:
    """Nothing was cut; the app smoothed the crest away, all across the slab."""
    return lambda plan: walked(2, lambda x, y: by * np.exp(-0.5 * ((x - CREST) / reach) ** 2))


def another(grade: float, rounding: float) -> Scene:
    """The slab next door, poured by the same hands, with the same boxes on it: blunter."""

    def lower(x: FloatArray, y: FloatArray) -> FloatArray:
        d = x - CREST
        return height(x, y) - 0.004 * y + grade * (d * d + rounding**2) ** 0.5

    return lambda plan: walked(3, lower)


def share(part: float) -> Scene:
    return lambda plan: walked(2, lambda x, y: part * plan(x, y))


def where(there: Callable[[FloatArray, FloatArray], np.ndarray]) -> Scene:
    """Cut as planned, but only there."""
    return lambda plan: walked(2, lambda x, y: np.where(there(x, y), plan(x, y), 0.0))


def seen(change: Callable[[FloatArray], FloatArray], part: float = 0.0) -> Scene:
    """A share was cut; something was done to the scan."""
    return lambda plan: change(walked(2, lambda x, y: part * plan(x, y)))


def wet(plan: Depth) -> FloatArray:
    """Half was cut, and water stands in it: what is seen there is sparse, and as far below again."""
    p = walked(2, lambda x, y: 0.5 * plan(x, y))
    low = 0.5 * plan(p[:, 0], p[:, 1])
    p[:, 2] -= low
    return p[(low < 0.001) | (np.arange(len(p)) % 4 == 0)]


def dust(plan: Depth) -> FloatArray:
    """All was cut, and dust lies half as deep in it: the cart would ride on it for a while."""
    return walked(2, lambda x, y: 0.5 * plan(x, y))


def tilted(p: FloatArray) -> FloatArray:
    a = np.radians(2.0)
    turn = np.array([[np.cos(a), 0, np.sin(a)], [0, 1, 0], [-np.sin(a), 0, np.cos(a)]])
    return p @ turn.T + (0.9, 0.1, 0.4)


SCENES: dict[str, Scene] = {
    "the scan before, in another order": lambda plan: walked(1)[::-2],
    "the scan before, tilted and shifted": seen(tilted),
    "scale 3 % small": seen(lambda p: p * 0.97),
    "heights a fifth small": seen(lambda p: p * (1, 1, 0.8)),
    "turned over": seen(lambda p: p * (1, -1, -1)),
    "a flatter slab": another(0.06, 0.03),
    "a blunter slab": another(0.08, 0.3),
    "a crest smoothed away": lowered(0.010, 0.1),
    "half the depth": share(0.5),
    "half the depth, wet": wet,
    "dust in the cut": dust,
    "one side alone": where(lambda x, y: y > 0),
    "one side of the slab seen": seen(lambda p: p[p[:, 1] < 0.1], 0.5),
    "nothing seen of the crest": seen(lambda p: p[np.abs(p[:, 0] - CREST) > 0.35], 0.5),
    "before and after in one file": lambda plan: np.concatenate([walked(2)[::3], walked(3, plan)]),
}
DOUBTED = {
    "heights a fifth small": Doubt.MISFIT, "a flatter slab": Doubt.MISFIT, "a blunter slab": Doubt.ELSEWHERE,
    "a crest smoothed away": Doubt.ELSEWHERE,
}  # fmt: skip


@pytest.mark.slow
@pytest.mark.parametrize("name", SCENES)
def test_no_lie_after_the_work_makes_it_done(site: tuple[Path, Study], name: str, tmp_path: Path) -> None:
    plan = site[1].report.plan
    assert plan is not None
    scan = write_ply(SCENES[name](of_plan(plan.depth, over=0.001))[::2], tmp_path / "after.ply")
    try:
        found = check_job(site[0] / "job.toml", [scan])
    except CrestcutError as error:
        print(f"{name}: refused: {error.what}")
        assert name not in DOUBTED
        return
    print(f"{name}: {found.check.verdict}")
    assert found.check.verdict != "done" and found.check.clearance != "done"
    if name in DOUBTED:
        assert DOUBTED[name] in [f.doubt for f in found.check.first.spare.doubts]
        said = verify_lines(found.report, found.check)
        assert said[0].startswith("CANNOT TELL") and found.check.first.today.verdict != "clears"
        assert any("[[after.witness]]" in line for line in said if line.startswith("Next: "))


def test_the_same_scan_under_another_name_is_refused(site: tuple[Path, Study], tmp_path: Path) -> None:
    again = tmp_path / "after.ply"
    again.write_bytes((site[0] / "before.ply").read_bytes())
    with pytest.raises(CrestcutError, match="is the same scan as before"):
        check_job(site[0] / "job.toml", [again])


GAP = '[[after.witness]]\npart = "tray"\nfront_axle = [{x}, 0.0]\ngap = "{gap} mm"\n'
READINGS = {
    "a gap where there always was room": GAP.format(x=1.9, gap=57),
    "gaps that contradict": GAP.format(x=3.05, gap=30) + GAP.format(x=3.1, gap=12),
    "more than the uncut underside has": GAP.format(x=3.1, gap=75),
    "gaps of half the cut": GAP.format(x=3.05, gap=16) + GAP.format(x=3.15, gap=16),
}
CONTRADICT = ("gaps that contradict", "more than the uncut underside has")


@pytest.mark.parametrize("name", READINGS)
def test_no_reading_that_lies_or_says_nothing_makes_it_done(
    site: tuple[Path, Study], name: str, tmp_path: Path
) -> None:
    job = site[0] / f"{tmp_path.name}.toml"
    job.write_text(COARSE + "\n[after]\n" + READINGS[name])
    try:
        found = check_job(job).check
    except CrestcutError as error:
        print(f"{name}: refused: {error.what}")
        return
    print(f"{name}: {found.verdict}")
    assert found.verdict != "done"
    assert bool(found.fights) == (name in CONTRADICT)


def test_gaps_that_show_no_cut_leave_the_doubt_of_a_scan_standing(
    site: tuple[Path, Study], tmp_path: Path
) -> None:
    job = site[0] / f"{tmp_path.name}.toml"
    job.write_text(COARSE + "\n[after]\n" + READINGS["a gap where there always was room"])
    smoothed = SCENES["a crest smoothed away"](nothing())
    found = check_job(job, [write_ply(smoothed[::2], tmp_path / "after.ply")]).check
    assert found.verdict == "cannot tell" and not found.fights
    assert Doubt.ELSEWHERE in [f.doubt for f in found.first.spare.doubts]


def test_a_cut_that_gaps_show_by_themselves_does_not_hang_on_ground_elsewhere(
    site: tuple[Path, Study], tmp_path: Path
) -> None:
    """More was ground than was planned, honestly: one scan cannot tell (the scene above), gaps felt under the
    cart can."""
    job = site[0] / f"{tmp_path.name}.toml"
    job.write_text(COARSE + "\n[after]\n" + GAP.format(x=3.05, gap=24.5) + GAP.format(x=3.1, gap=24.5))
    plan = site[1].report.plan
    assert plan is not None
    scan = write_ply(lowered(0.012, 0.2)(of_plan(plan.depth))[::2], tmp_path / "after.ply")
    found = check_job(job, [scan]).check
    assert found.verdict == "done" and not found.fights and found.removed is not None
    assert speaks_against(found.removed)[0].doubt is Doubt.ELSEWHERE
