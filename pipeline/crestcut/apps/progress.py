"""What long work says: moving at a terminal, plain lines in a log, JSON lines for a page server."""

from __future__ import annotations

import json
import os
import sys
import threading
import time
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from threading import Event

import click

from crestcut.base.errors import CrestcutError, Mind, Say, Step, Verdict, visible
from crestcut.base.language import here
from crestcut.base.pace import USUAL, Pace
from crestcut.base.stopping import end_with_parent

_served: list[int] = []  # the page server's process id, where one started this


def serve_page(parent: int, waits: bool = False) -> None:
    """From here on steps and faults are JSON lines on stderr, and this process ends with ``parent``.

    Where the system cannot end it, the pipe on stdin does: it closes with the parent. waits : for a command
    on that pipe (``sent_command``), and reads it until then.
    """
    _served[:] = [parent]
    end_with_parent(parent)
    if not waits:
        _end_with_pipe()


def sent_command() -> list[str]:
    """The arguments that the page server sends; this process ends where it ends instead."""
    line = sys.stdin.buffer.readline()
    if not line:
        os._exit(1)
    _end_with_pipe()
    words: list[str] = json.loads(line)
    return words


def _end_with_pipe() -> None:
    threading.Thread(target=_end_with_stdin, daemon=True).start()


def _end_with_stdin() -> None:
    while os.read(0, 1024):
        pass
    os._exit(1)  # what is half written lies in a hidden folder, which the next command sweeps


def _tell(**record: object) -> None:
    click.echo(json.dumps(record), err=True)


def fault(error: CrestcutError) -> None:
    """The program's own error, in one line."""
    if _served:
        _tell(fault={"what": error.what, "where": error.where, "mend": error.mend})
    else:
        told = here().say
        where = f"{error.where}: " if error.where else ""
        mend = f"; {told(error.mend)}" if error.mend else ""
        click.echo(f"crestcut: {where}{told(error.what)}{mend}", err=True)


def print_line(text: str, err: bool = False) -> None:
    """One line of the terminal: names in it come from files, and none moves the cursor or begins a line."""
    click.echo(visible(text), err=err)


def say_plainly(text: str) -> None:
    """A step as a line of a log."""
    if not isinstance(text, Verdict):  # which is soon told with all that belongs to it
        print_line(f"  {text} ...", err=True)


def _say_as_record(words: str) -> None:
    if isinstance(words, Mind):
        _tell(mind=words)
    elif isinstance(words, Verdict):
        _tell(answer=words, first=words.first())
    else:
        _tell(step=words, key=words.key if isinstance(words, Step) else None)


@contextmanager
def progress(usual: Mapping[str, float] = USUAL) -> Iterator[Say]:
    """What long work calls with words as each of its steps begins. usual : as of ``Pace``.

    At a terminal the step at work moves, with its seconds, and those done stay above it with theirs; anywhere
    else, as in logs, each is a plain line.
    """
    if _served:
        yield _say_as_record
        return
    if not sys.stderr.isatty():
        yield say_plainly
        return
    from rich.console import Console
    from rich.progress import Progress, SpinnerColumn, TextColumn, TimeElapsedColumn

    said = TextColumn("{task.description}", markup=False)
    columns = (SpinnerColumn(), said, TextColumn("{task.fields[rest]}"), TimeElapsedColumn())
    pace, over = Pace(usual), Event()
    screen = Console(stderr=True, markup=False, highlight=False, soft_wrap=True, no_color=True)
    with Progress(*columns, console=screen, refresh_per_second=5, redirect_stdout=False) as shown:
        began: list[float] = []
        step = shown.add_task("", start=False, visible=False, rest="")

        def done() -> None:
            if began:
                said = shown.tasks[0].description
                shown.console.print(f"  {said}  {time.perf_counter() - began.pop():.1f} s")

        def say(words: str) -> None:
            if isinstance(words, Verdict):
                return
            if isinstance(words, Mind):
                shown.console.print(f"  {visible(words)}")
                return
            done()
            began.append(time.perf_counter())
            pace.begins(words.key if isinstance(words, Step) else None)
            shown.reset(step, description=visible(words), visible=True)

        def tell() -> None:
            while not over.wait(0.5):
                shown.update(step, rest=pace.words())

        threading.Thread(target=tell, daemon=True).start()
        try:
            yield say
        finally:
            over.set()
        done()
        shown.update(step, visible=False)
