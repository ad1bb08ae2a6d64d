"""Drawings to hand over: the plan taken up as it was made, sheets true to scale."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from crestcut.apps.run import spoken, worksheet_of
from crestcut.base.errors import Say
from crestcut.base.language import speaking
from crestcut.base.parallel import one_thread_each
from crestcut.job import load_job, wished
from crestcut.study import taken_up


@one_thread_each
def plot_and_write(
    path: Path, out: Path, said: Mapping[str, str | None], say: Say = lambda _: None
) -> tuple[tuple[str, ...], tuple[Path, ...]]:
    """Notes on the sheets, and the paths written into ``out``.

    said : keys of ``[plot]`` as on the command line, which win over the job's; None: not said. The plan is
    the one that ``run`` left there; none there: the job is run. Raises CrestcutError as ``run``, and for
    what is not understood of ``said`` or does not fit the paper.
    """
    from crestcut.report import Staging, write_plots

    job = load_job(path)
    wish = wished(job.plot, said)
    staging = Staging(out, "plot", say)
    with staging as folder:
        done, _, notes = taken_up(path, job, out, say)
        staging.about = done.report.identity
        say("drawing the sheets")
        with speaking(spoken(job)):
            notes = (*notes, *write_plots(done.report, worksheet_of(done), wish, folder))
    return notes, staging.moved
