"""The small job of ``after_scene``, planned once for all files of this folder, and one check of it."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from crestcut.apps.verify import Checked, check_and_write
from crestcut.study.record import Study
from verify.after_scene import planned_job, planned_once, walked, write_ply
from verify.check_scene import plan


@pytest.fixture(scope="package")
def site(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, Study]:
    """The job's folder and its finished run: planned once for all checks."""
    return planned_job(tmp_path_factory.mktemp("site"), walked(1))


@pytest.fixture
def planned(site: tuple[Path, Study]) -> Iterator[None]:
    """Every check of a test has this plan: ``pytestmark`` of its file asks for it."""
    with planned_once(site[1]):
        yield


@pytest.fixture(scope="package")
def well_cut(site: tuple[Path, Study]) -> Checked:
    with planned_once(site[1]):
        # its own session: turned, moved and lifted
        depth = plan(site, over=0.002)
        after = write_ply(walked(2, depth, turn=0.09, move=(0.3, -0.2, 0.05)), site[0] / "after.ply")
        return check_and_write(site[0] / "job.toml", [after], site[0] / "first")[0]
