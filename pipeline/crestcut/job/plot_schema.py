"""``[plot]`` of a job file, and the same said on the command line, which wins."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from pydantic import ValidationError

from crestcut.base.errors import CrestcutError
from crestcut.job.fields import Day, Paper, ScaleRatio, Spacing, Table, Text
from crestcut.job.records import PlotWish


class PlotTable(Table):
    """``[plot]``: paper, scale and title of the drawings that ``plot`` makes."""

    paper: Paper | None = None
    scale: ScaleRatio | None = None
    project: Text | None = None
    client: Text | None = None
    surveyor: Text | None = None
    revision: Text | None = None
    date: Day | None = None
    grid: Spacing | None = None
    sections: Spacing | None = None


def wished(written: PlotWish, said: Mapping[str, str | None]) -> PlotWish:
    """What the job asks with what was said on the command line over it. Raises CrestcutError for what is not
    understood, naming the option."""
    told = {key: value for key, value in said.items() if value is not None}
    try:
        asked = PlotTable.model_validate(told)
    except ValidationError as error:
        first = error.errors(include_url=False)[0]
        told_by, option = first.get("ctx", {}), f"--{first['loc'][0]}"
        raise CrestcutError(told_by.get("what", first["msg"]), option, told_by.get("mend", "")) from None
    return replace(written, **{key: getattr(asked, key) for key in told})
