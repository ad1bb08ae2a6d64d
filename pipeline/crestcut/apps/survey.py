"""What a surveyor takes over from a job: the plan taken up as it was made, heights and points written."""

from __future__ import annotations

from pathlib import Path

from crestcut.apps.run import worksheet_of
from crestcut.base.errors import Say
from crestcut.base.parallel import one_thread_each
from crestcut.job import load_job
from crestcut.study import taken_up


@one_thread_each
def survey_and_write(
    path: Path, out: Path, say: Say = lambda _: None
) -> tuple[tuple[str, ...], tuple[Path, ...]]:
    """Notes on what was left out and why, and the paths written into ``out``.

    The plan is the one that ``run`` left there; none there: the job is run. Raises CrestcutError as ``run``.
    """
    from crestcut.report import Staging, write_survey

    staging = Staging(out, "survey", say)
    with staging as folder:
        done, _, notes = taken_up(path, load_job(path), out, say)
        staging.about = done.report.identity
        say("writing heights, surfaces, points and sections")
        notes = (*notes, *write_survey(done.report, worksheet_of(done), folder))
    return notes, staging.moved
