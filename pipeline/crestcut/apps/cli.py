"""The command line: parse, call, print. The only place that prints or exits."""

from __future__ import annotations

import atexit
import gc
import json
import os
import sys
from collections.abc import Sequence
from pathlib import Path

import click

from crestcut import __version__
from crestcut.apps.progress import fault, print_line, progress, say_plainly, sent_command, serve_page
from crestcut.base.errors import CrestcutError
from crestcut.base.language import LANGUAGES, Words, here, speaking, words_of
from crestcut.base.pace import seconds_of
from crestcut.base.stopping import READY, stopped_as_by_ctrl_c
from crestcut.report import refuse_unwritable, switched

# Every matrix here is small: on two cores a linear-algebra library's own threads cost up to twenty times
# what they save.
os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")
STOPPED = 130  # exit code of a program ended by Ctrl-C, as shells have it: 128 and the signal's number
SELDOM = 100_000  # new objects between two searches for dead cycles; 700 cost a tenth of drawing and loading
SOME_FAILED = 4  # exit code: some of several jobs were wrong, the others are done
SHORT = 3  # exit code: done and written, but no cut within the limits reaches what was asked


class _OneLineErrors(click.Group):
    """Turns the program's own error into one line on stderr and exit code 2."""

    def invoke(self, ctx: click.Context) -> object:
        """As click's, but a CrestcutError leaves with 2, Ctrl-C and its like with ``STOPPED``, each after one
        line."""
        switched.clear()
        try:
            with stopped_as_by_ctrl_c():
                return super().invoke(ctx)
        except CrestcutError as error:
            fault(error)
            sys.exit(2)
        except KeyboardInterrupt:  # all that was staged is gone by now, or has been switched as a whole
            what = f"all results are in {switched[0]}, whole" if switched else "nothing was written"
            click.echo(f"crestcut: stopped, {what}", err=True)
            sys.exit(STOPPED)


@click.group(cls=_OneLineErrors)
@click.version_option(__version__)
@click.option("--under", type=int, hidden=True, help="Process id of the page server that started this.")
@click.pass_context
def main(asked: click.Context, under: int | None) -> None:
    """From a scan of a slab to a verdict on a low vehicle and a depth to remove."""
    if under is not None:
        serve_page(under, waits=asked.invoked_subcommand == READY)
    gc.set_threshold(SELDOM)
    atexit.register(gc.freeze)  # nor are the million objects that are left searched at the end


_JOB = click.argument("job", type=click.Path(path_type=Path))
_LANGUAGE = click.option(
    "--language", type=click.Choice(list(LANGUAGES)), default=None, is_eager=True,
    help="Of what people read, in place of the job's own.",
)  # fmt: skip
_OUT = click.option(
    "--out", type=click.Path(path_type=Path), default=Path("out"), show_default=True,
    help="Folder for the results.",
)  # fmt: skip


def _speak(words: Words) -> None:
    """From here on answers and faults are told in these words."""
    click.get_current_context().find_root().with_resource(speaking(words))


def _speak_as(job: Path, language: str | None = None) -> None:
    """The same, in those of a job's file."""
    from crestcut.job import words_in

    _speak(words_in(job, language))


def _tell(lines: Sequence[str]) -> None:
    for line in lines:
        print_line(here().row(line))


def _print_how(asked: click.Context, _: click.Parameter, wish: bool) -> None:
    if wish:
        from crestcut.report import how_text

        _speak(words_of(asked.params.get("language")))
        _tell(how_text().split("\n"))
        asked.exit()


@main.command()
@click.argument("scans", nargs=-1, type=click.Path(path_type=Path))
@click.option(
    "--out", type=click.Path(path_type=Path), default=None,
    help="Folder for the picture and the page to pick from.",
)  # fmt: skip
@click.option("--unit", default=None, help="Unit of the file, where it does not say: m, mm, ft ...")
@click.option("--up", default=None, help="The axis that points up: x y z -x -y -z.")
@click.option("--scanner", default=None, help="phone, photogrammetry, terrestrial or total-station.")
@click.option(
    "--classified",
    type=click.Path(path_type=Path),
    default=None,
    help="Write the points to this LAS or LAZ: found ground as class 2, all else as class 1.",
)
@click.option(
    "--how", is_flag=True, expose_value=False, is_eager=True, callback=_print_how,
    help="Print how to walk a scan, and stop.",
)  # fmt: skip
@_LANGUAGE
@click.option("--json", "as_json", is_flag=True, help="Print the result as JSON.")
def look(
    scans: tuple[Path, ...], out: Path | None, unit: str | None, up: str | None,
    scanner: str | None, classified: Path | None, language: str | None, as_json: bool,
) -> None:  # fmt: skip
    """What is in a scan: unit, up axis, density, noise, holes, and what it could decide."""
    from crestcut.report import health_lines, look_record, told, write_classified, write_look

    _speak(words_of(language))
    if not scans:
        raise click.UsageError("name a scan file, or ask --how to make one")
    from crestcut.base.parallel import meanwhile
    from crestcut.job import ScanChoice
    from crestcut.scan import SYSTEMATIC, anywhere, assess, read_scan
    from crestcut.terrain import ground_points, see_scan

    if scanner is not None and scanner not in SYSTEMATIC:
        mend = f"use one of {', '.join(SYSTEMATIC)}, or leave it out"
        raise CrestcutError(f'scanner "{scanner}" is not known', "--scanner", mend)
    written: tuple[Path, ...] = ()
    choice = ScanChoice(scans, unit, up, scanner)
    with progress() as say:
        scan = read_scan(choice, say, None if classified is not None else anywhere)
        seeing = meanwhile(see_scan, scan)
        health = assess(scan, scanner)
        seen = seeing()
        health = told(health, scan, seen)
        if classified is not None:  # first: it may refuse, and then nothing is written
            say("telling ground from what is not")
            written = write_classified(scan, ground_points(scan), classified, say)
        if out is not None:
            say("drawing the slab from above")
            written += write_look(scan, health, out, choice, say, seen)
    if as_json:
        click.echo(json.dumps(look_record(scan, health, scanner, seen), indent=2, allow_nan=False))
        return
    _tell(health_lines(scan, health, scanner))
    _list(written)


@main.command("open")
@click.argument("what", required=False, type=click.Path(path_type=Path), metavar="[SCAN|JOB|FOLDER]")
@click.option("--folder", type=click.Path(path_type=Path), help="The job's folder, where WHAT is a scan.")
@click.option("--phone", is_flag=True, help="Let a phone on the same network in, by a one-time address.")
@click.option("--port", type=click.IntRange(0, 65535), default=0, help="Of the server; any free one else.")
@click.option("--no-browser", is_flag=True, help="Print the address and open nothing.")
def open_(what: Path | None, folder: Path | None, phone: bool, port: int, no_browser: bool) -> None:
    """A whole job in the browser: scan, vehicle, answer, what to measure, sheets. Ctrl-C ends it."""
    from crestcut.serve import Asked, serve

    serve(Asked(what, folder, phone, port, not no_browser), print_line)


@main.command(READY, hidden=True)
def ready() -> None:
    """Load what a job needs, then do what the page server sends."""
    from crestcut.apps.run import load_all

    load_all()
    main(sent_command())


@main.command()
@click.argument("jobs", nargs=-1, required=True, type=click.Path(path_type=Path), metavar="JOB...")
@_OUT
@_LANGUAGE
@click.option("--json", "as_json", is_flag=True, help="Print result.json to stdout.")
@click.option("--workers", type=click.IntRange(1, 1000), help="Processes that share several jobs.")
@click.option("--scheduler", metavar="ADDRESS", help="Of a Dask cluster that shares several jobs.")
def run(
    jobs: tuple[Path, ...], out: Path, language: str | None, as_json: bool, workers: int | None,
    scheduler: str | None,
) -> None:  # fmt: skip
    """The whole job: verdict, coloured depth-to-remove mesh, pictures, page and sheets.

    Several jobs, or a folder of them: each into a folder of its own, and a table of all in jobs.csv. Those
    done before, from the same files, are not done again.
    """
    from crestcut.job import lines_in

    refuse_unwritable(out)
    several = len(jobs) > 1 or jobs[0].is_dir() or lines_in(jobs[0]) != (jobs[0],)
    if workers and scheduler:
        raise click.UsageError("--workers are of this machine, --scheduler names others: one of them")
    if (workers or scheduler) and not several:
        raise click.UsageError("--workers and --scheduler share several jobs: name more, or a folder of them")
    if several:
        if as_json:
            raise click.UsageError(
                "--json prints one job's result; of several read each folder's result.json"
            )
        if language is not None:
            raise click.UsageError("--language is for one job; of several each file says its own")
        _run_several(jobs, out, workers or 0, scheduler or "")
        return
    job = jobs[0]
    from crestcut.apps.run import reached, run_and_write, spoken

    _speak_as(job, language)
    with progress(seconds_of(out / "result.json", job.name)) as say:
        done, written = run_and_write(job, out, say, language=language)
    from crestcut.report import summary_lines

    _speak(spoken(done.report.job, language))
    _answer(summary_lines(done.report), written, out / "result.json" if as_json else None)
    if not reached(done.report):
        sys.exit(SHORT)


def _run_several(paths: tuple[Path, ...], out: Path, workers: int, scheduler: str) -> None:
    """Each job, a line for each, and the gravest exit code that holds."""
    from crestcut.apps.batch import TABLE_NAME, begin, run_all, told
    from crestcut.apps.cluster import Workers

    jobs, batch = begin(paths, out)
    shared = Workers(workers, scheduler) if workers or scheduler else None
    try:
        with progress() as say:
            run_all(jobs, batch, out, say, shared)
    except KeyboardInterrupt:
        done = f"{len(jobs) - batch.waiting} of {len(jobs)} jobs have ended, their results are whole"
        click.echo(f"crestcut: stopped, {done}; the same command does the others", err=True)
        sys.exit(STOPPED)
    for one in batch.rows.values():
        print_line(told(one))
    for line in batch.together:
        print_line(f"With all lines cut: {line.words}")
    print_line(f"Table: {out / TABLE_NAME}", err=True)
    if batch.wrong:
        sys.exit(SOME_FAILED if batch.wrong < len(jobs) else 2)
    if any(one.reached is False for one in batch.rows.values()) or not all(t.holds for t in batch.together):
        sys.exit(SHORT)


@main.command()
@_JOB
@click.argument("more", nargs=-1, type=click.Path(path_type=Path), metavar="")
@click.option(
    "--after", multiple=True, type=click.Path(path_type=Path), metavar="SCAN...",
    help="Scans made after the work, in place of [after] files of the job.",
)  # fmt: skip
@_OUT
@click.option("--json", "as_json", is_flag=True, help="Print verify.json to stdout.")
def verify(job: Path, more: tuple[Path, ...], after: tuple[Path, ...], out: Path, as_json: bool) -> None:
    """The finished work against the plan: done, not yet, or cannot tell, and what is still to go.

    Checked by scans made after the work, by what was measured by hand since ([after] in the job), or both.
    """
    if more and not after:
        raise click.UsageError("name scans made after the work with --after")
    refuse_unwritable(out)
    from crestcut.apps.verify import check_and_write

    _speak_as(job)
    with progress() as say:
        found, written = check_and_write(job, (*after, *more), out, say)
    from crestcut.report import verify_lines

    _answer(verify_lines(found.report, found.check), written, out / "verify.json" if as_json else None)
    if not found.check.reached:
        sys.exit(SHORT)


@main.command()
@_JOB
@_OUT
def survey(job: Path, out: Path) -> None:
    """Heights, surfaces, points and sections of a job in the scan's own coordinates and reference system.

    The plan that run left in the folder is taken up; none there: the job is run first.
    """
    from crestcut.apps.survey import survey_and_write

    _speak_as(job)
    with progress() as say:
        notes, written = survey_and_write(job, out, say)
    _answer([f"Mind: {note}" for note in notes], written)


@main.command()
@_JOB
@_OUT
@click.option("--paper", help="A4 to A1, Letter, Legal, Tabloid, Arch A to Arch D.")
@click.option("--scale", help='Like 1:25, or "1/2 in = 1 ft"; the largest that fits where it is not said.')
@click.option("--project", help="What the title says; the job's title where it is not said.")
@click.option("--client", help="For whom.")
@click.option("--surveyor", help="By whom.")
@click.option("--revision", help="Of these drawings.")
@click.option("--date", help="Of these drawings, like 2026-04-18.")
@click.option("--grid", help='Between grid lines, like "1 m".')
@click.option("--sections", help='Between cross sections, like "500 mm".')
def plot(job: Path, out: Path, **said: str | None) -> None:
    """Plan, profile, cross sections and tables true to scale on paper: a PDF, and a drawing with layouts.

    What is said here wins over [plot] of the job. The plan is taken up as by survey.
    """
    from crestcut.apps.plot import plot_and_write

    _speak_as(job)
    with progress() as say:
        notes, written = plot_and_write(job, out, said, say)
    _answer([f"Mind: {note}" for note in notes], written)


@main.command()
@_JOB
@_OUT
@click.option("--json", "as_json", is_flag=True, help="Print floor.json to stdout.")
def floor(job: Path, out: Path, as_json: bool) -> None:
    """High spots and flatness of a floor: gaps under a straightedge, F-numbers, what to grind and to fill."""
    from crestcut.apps.floor import floor_and_write
    from crestcut.report import FLOOR_NAME, floor_lines

    _speak_as(job)
    with progress() as say:
        report, written = floor_and_write(job, out, say)
    _answer(floor_lines(report), written, out / FLOOR_NAME if as_json else None)
    if not report.judged.levelling.reached:
        sys.exit(SHORT)


@main.command()
@click.argument("file", required=False, type=click.Path(path_type=Path))
@click.option(
    "--out", type=click.Path(path_type=Path), default=None, help="Folder for drawing, vehicle file or sheet."
)
@click.option(
    "--sheet", is_flag=True, help="How to measure a vehicle; with --out as pages and a file to fill in."
)
@click.option("--json", "as_json", is_flag=True, help="Print the derived angles as JSON.")
def vehicle(file: Path | None, out: Path | None, sheet: bool, as_json: bool) -> None:
    """Check a vehicle file, print its derived angles, draw it; or make one from a filled measuring sheet."""
    from crestcut.apps.vehicle import vehicle_and_write, write_sheet

    if sheet:
        from crestcut.vehicle import measuring_sheet

        written = write_sheet(out, say_plainly) if out is not None else ()
        click.echo(measuring_sheet())
        _list(written)
        return
    if file is None:
        raise click.UsageError("name a vehicle file or a filled sheet, or ask --sheet how to measure one")
    from dataclasses import asdict

    from crestcut.report import vehicle_lines

    told = vehicle_and_write(file, out, say_plainly)
    for doubt in told.doubts:
        print_line(f"Looks mistaken: {doubt}", err=True)
    if as_json:
        click.echo(json.dumps({**asdict(told.angles), "doubts": told.doubts}, indent=2, default=str))
    elif told.text is not None and out is None:
        click.echo(told.text, nl=False)
    else:
        for line in vehicle_lines(told.vehicle, told.angles):
            print_line(line)
    _list(told.written)


def _answer(lines: Sequence[str], written: tuple[Path, ...], record: Path | None = None) -> None:
    """In lines, with the files of it; where ``record`` holds it and was asked for, that alone."""
    if record is not None:
        click.echo(record.read_text(encoding="utf-8"), nl=False)
        return
    _tell(lines)
    _list(written)


def _list(paths: tuple[Path, ...]) -> None:
    if paths:
        print_line(here().say("Written:"), err=True)
    for path in paths:
        print_line(f"  {path}", err=True)


if __name__ == "__main__":
    main()
