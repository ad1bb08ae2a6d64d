"""What the person on the slab is handed, as records: every sheet is drawn from these and nothing else."""

from __future__ import annotations

from dataclasses import dataclass

STATES = ("ok", "provisional", "not for cutting")


@dataclass(frozen=True)
class Question:
    """Something nobody has answered. ``key`` is the job file's; ``whom`` is who can answer it and how it is
    then known.
    """

    key: str
    ask: str
    whom: str


@dataclass(frozen=True)
class Release:
    """May this be cut? ``reasons`` in plain sentences (empty only when ok); ``questions`` are what is still
    open.

    known : what was answered and how it is known, one sentence each, printed on every released sheet.
    """

    state: str
    reasons: tuple[str, ...]
    questions: tuple[Question, ...] = ()
    known: tuple[str, ...] = ()

    def __post_init__(self) -> None:
        if self.state not in STATES:
            raise ValueError(f"state: one of {STATES} expected, {self.state!r} found")
        if (self.state == "ok") != (not self.reasons):
            raise ValueError("reasons: given exactly when the state is not ok")

    @property
    def stamp(self) -> str:
        """What is stamped across every sheet; empty when released."""
        return "" if self.state == "ok" else self.state.upper()
