"""The finished work checked, on one page: plan -> what was scanned or measured since -> verdict -> files."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

import numpy as np

from crestcut.apps.run import spoken, worksheet_of
from crestcut.base.errors import CrestcutError, Say
from crestcut.base.grid import BoolArray, FloatArray
from crestcut.base.language import speaking
from crestcut.base.parallel import one_thread_each
from crestcut.contact import TravelLine
from crestcut.job import After, Job, ScanChoice, load_job
from crestcut.scan import Scan, anywhere, read_scan
from crestcut.standing import LoadedVehicle, drives_of, line_drawn, lines_of
from crestcut.study import Clock, Report, Study, evidence_of, taken_up
from crestcut.terrain import Evidence, Surface, build_surface, driven
from crestcut.verify import (
    Check,
    Laid,
    Now,
    Removed,
    Share,
    against_scan,
    agree_by_hand,
    agreeing,
    all_now,
    cut_by_hand,
    edges_left,
    finished_behind,
    foretold,
    ground_now,
    lay_after,
    likely_shares,
    mixed,
    new_ponds,
    pass_of,
    removed_between,
    rest_of,
    short_of,
    speaks_against,
    still_to_go,
    told_by,
    too_deep,
    what_to_measure,
    withdrawn,
    work_area,
    worked,
)
from crestcut.work import ReleaseState, make_site

REST = "rest_"  # before the names of the sheets for the pass that is still to go
HIDDEN = "readings from before the work are used for what they say of the vehicle alone: the ground is new"


@dataclass(frozen=True, eq=False)
class Checked:
    """The plan as ``run`` makes it, what was found since, and the scan after the work, None by hand alone."""

    report: Report
    check: Check
    scan: Scan | None
    seconds: dict[str, float]


@dataclass(frozen=True, eq=False)
class _Drive:
    """The vehicles of the job on their lines, and all that was read by hand as evidence on a given slab: for
    each vehicle, from its record and the slab.
    """

    drivers: tuple[LoadedVehicle, ...]
    lines: tuple[TravelLine, ...]
    reads: tuple[Callable[[LoadedVehicle, Surface], Evidence | None], ...]

    @property
    def main(self) -> int:
        """Which of them the witnesses speak of."""
        return next(k for k, d in enumerate(self.drivers) if d.main)

    def read(self, surface: Surface) -> list[Evidence | None]:
        """The readings for each vehicle."""
        return [read(d, surface) for d, read in zip(self.drivers, self.reads, strict=True)]


@one_thread_each
def check_job(
    path: Path, after: Sequence[Path] = (), say: Say = lambda _: None, folder: Path | None = None
) -> Checked:
    """The finished work of a job against its plan; nothing written.

    after : scans since, in place of those of [after] files.  folder : with the results of ``run``: the plan
    there is what was cut; None, or none there, plans anew.
    Raises CrestcutError where nothing was scanned or measured since, a scan does not register, or the job is
    wrong.
    """
    job = load_job(path)
    since = _since(job, after)
    clock = Clock(say)
    done, job, kept = taken_up(path, job, folder, say)
    report = done.report
    if report.plan is None:
        raise CrestcutError("no plan could be made to check the work against", job.path.name, "see run")
    drive = _drive(job, since, done)
    if since.scan.files:
        with clock.stage("after", "reading the scan after the work"):
            laid, surface, removed = _scanned(job, since, report, drive, say)
        check = _by_scan(job, report, drive, laid, surface, removed, clock)
    else:
        check = _by_hand(job, report, drive, clock)
        laid = None
    check = replace(check, notes=(*kept, *check.notes))
    seconds = {**report.seconds, **clock.seconds}
    return Checked(report, check, laid.scan if laid is not None else None, seconds)


def _since(job: Job, after: Sequence[Path]) -> After:
    """What there is to check by. Raises CrestcutError where that is nothing."""
    since = job.after or After(ScanChoice(()))
    if after:
        since = replace(since, scan=replace(since.scan, files=tuple(after)))
    if not since.scan.files and not since.by_hand:
        raise CrestcutError(
            "nothing to check the work by", job.path.name,
            "name a scan with --after, or write what was measured since under [[after.witness]],"
            " [[after.string]] or [[after.level]]",
        )  # fmt: skip
    unit, up = (getattr(since.scan, k) or getattr(job.scan, k) for k in ("unit", "up"))
    return replace(
        since, scan=replace(since.scan, unit=unit, up=up, scanner=since.scan.scanner or job.scan.scanner)
    )


def _drive(job: Job, since: After, done: Study) -> _Drive:
    report, drivers = done.report, done.drivers
    if since.scan.files:
        drivers = tuple(_on_another_slab(d) for d in drivers)
    lines = lines_of(drivers, job, report.scan.frame, line_drawn(job))
    # what was measured before is in slab and vehicle already
    written = replace(job, **since.readings)

    def reader(line: TravelLine) -> Callable[[LoadedVehicle, Surface], Evidence | None]:
        return lambda driver, ground: _told(written, report.scan, ground, driver, line)

    return _Drive(drivers, lines, tuple(reader(line) for line in lines))


def _unread(driver: LoadedVehicle, ground: Surface) -> Evidence | None:
    return None


def _on_another_slab(driver: LoadedVehicle) -> LoadedVehicle:
    """What readings have told of the vehicle as tolerances of its parts: their draws are in step with those
    of the slab that the readings were made on."""
    vehicle, within = driver.vehicle, driver.within
    parts = tuple(p if p.soft else replace(p, within=within[p.name]) for p in vehicle.parts)
    return replace(driver, vehicle=replace(vehicle, parts=parts), parts=None)


def _scanned(
    job: Job, since: After, report: Report, drive: _Drive, say: Say
) -> tuple[Laid, Surface, Removed]:
    """The scan after the work, laid on the one before; the slab it shows; what is gone since."""
    assert report.plan is not None
    scan = read_scan(since.scan, say, anywhere)
    known = {f.sha256: f.path.name for f in report.scan.files}
    for file in scan.files:
        if file.sha256 in known:
            raise CrestcutError(
                f"is the same scan as {known[file.sha256]}, from before the work", file.path.name,
                "name the one made after it",
            )  # fmt: skip
    height = report.surface.height
    area = work_area(report.plan.depth)

    def in_work(points: FloatArray) -> BoolArray:
        at = np.rint(height.frame.to_grid(points) / height.frame.cell).astype(int)
        i, j = at[:, 0], at[:, 1]
        inside = (i >= 0) & (i < area.shape[1]) & (j >= 0) & (j < area.shape[0])
        return np.asarray(inside & area[np.clip(j, 0, len(area) - 1), np.clip(i, 0, area.shape[1] - 1)])

    laid = lay_after(report.scan, scan, in_work, report.surface.error.warp)
    fitted = build_surface(laid.scan, height.frame, since.scan.scanner)
    doubts = driven(fitted.error.doubts, laid.scan, drives_of(drive.drivers, drive.lines))
    fitted = replace(fitted, error=replace(fitted.error, doubts=doubts))
    planned = report.plan.depth
    removed = removed_between(report.surface.as_scanned(), fitted, planned, laid.placed)
    surface = finished_behind(report.surface, fitted, removed, planned, job.slab.flatness, job.settings.seed)
    return laid, surface, removed


def _by_scan(
    job: Job, report: Report, drive: _Drive, laid: Laid, surface: Surface, removed: Removed, clock: Clock
) -> Check:
    assert report.plan is not None
    before, after = report.surface.as_scanned(), surface.as_scanned()
    with clock.stage("now", "driving over the finished work"):
        frame = report.scan.frame
        read = drive.read(surface)
        main = drive.main
        driver, heard = drive.drivers[main], drive.reads[main]
        plain = (report.surface, report.plan.depth, driver, lambda ground: heard(driver, ground))
        fights = against_scan(read[main], surface, driver, lambda: agree_by_hand(*plain))
        told = [None] * len(read) if fights else read
        now = all_now(job, surface, drive.drivers, drive.lines, told, frame)
        # a cut that readings by hand show by themselves does not hang on what the scan shows elsewhere
        if (against := speaks_against(removed)) and (read[main] is None or not cut_by_hand(*plain)):
            now = tuple(withdrawn(n, against, frame) for n in now)
    gone = np.nan_to_num(removed.depth.values)
    notes = (*laid.scan.notes, *surface.notes, *((HIDDEN,) if _measured_before(job) else ()))
    verdicts = ("cannot tell",) * 2 if fights else _verdicts(now)
    found = Check(
        *verdicts, now=now, surface=surface, still=report.plan, cautious=True, removed=removed, fights=fights,
        edges=edges_left(before, after, removed, job.cut.feather),
        too_deep=too_deep(removed, report.plan, job.slab), ponds=new_ponds(before, after, removed),
        fit_error=laid.error, notes=notes, both=any(r is not None for r in read),
        predicted=foretold(*plain, since=surface),
    )  # fmt: skip
    return _not_known(found, surface) if fights else _with_still(found, job, report, drive, gone, clock)


def _by_hand(job: Job, report: Report, drive: _Drive, clock: Clock) -> Check:
    """Shares of the plan that the readings make likely, each driven over; their mixture is the answer."""
    assert report.plan is not None
    planned, main = report.plan.depth, drive.main
    driver, read = drive.drivers[main], drive.reads[main]
    plain = (report.surface, planned, driver, lambda ground: read(driver, ground))
    with clock.stage("share", "weighing what was measured by hand"):
        shares = likely_shares(*plain)
    if shares.fights:  # readings that contradict are not used at all
        drive = replace(drive, reads=(_unread,) * len(drive.reads))
    found = []
    with clock.stage("now", "driving over the finished work"):
        for share, _ in shares.nodes:
            ground = worked(report.surface, planned, share)
            found.append(all_now(job, ground, drive.drivers, drive.lines, drive.read(ground)))
    weights = [w for _, w in shares.nodes]
    middle = int(np.argmax(weights))
    now = tuple(
        replace(
            found[middle][k],
            today=mixed([f[k].today for f in found], weights, job.wanted.confidence),
            spare=mixed([f[k].spare for f in found], weights, job.wanted.confidence),
            in_use=mixed([f[k].in_use for f in found], weights, job.wanted.confidence),
        )
        for k in range(len(drive.drivers))
    )
    gone = shares.share.best * np.nan_to_num(planned.values)
    check = Check(
        *(("cannot tell",) * 2 if shares.fights else _verdicts(now)), now=now,
        surface=worked(report.surface, planned, shares.share.best), still=report.plan, cautious=True,
        share=shares.share, fights=shares.fights, predicted=foretold(*plain),
    )  # fmt: skip
    if shares.fights:
        return _not_known(check, report.surface)
    return _with_still(check, job, report, drive, gone, clock)


def _not_known(check: Check, scanned: Surface) -> Check:
    """Nothing is said of what is gone and what is still to go: the slab as it was scanned is shown."""
    now = tuple(replace(n, spare=replace(n.spare, verdict="cannot tell")) for n in check.now)
    depth = check.still.depth
    nothing = depth.like(np.full(depth.values.shape, np.nan))
    share = Share(float("nan"), float("nan")) if check.removed is None else None
    still = replace(check.still, depth=nothing, deepest=0.0, area=0.0, volume=0.0, margin=0.0,
                    feasible=True, short_by=0.0, binding=())  # fmt: skip
    return replace(check, now=now, surface=scanned, still=still, cautious=False, share=share)


def _told(job: Job, scan: Scan, surface: Surface, driver: LoadedVehicle, line: TravelLine) -> Evidence | None:
    """What was measured since, as evidence; named as it stands in the file."""
    try:
        evidence = evidence_of(job, scan, surface, driver, line)
    except CrestcutError as error:
        raise CrestcutError(error.what, error.where.replace("[[", "[[after."), error.mend) from None
    if evidence is None:
        return None
    named = tuple(replace(r, name=r.name.replace("[[", "[[after.")) for r in evidence.readings)
    return Evidence(named, evidence.noise)


def _measured_before(job: Job) -> bool:
    return job.by_hand


def _verdicts(now: Sequence[Now]) -> tuple[str, str]:
    """Of the whole, edges not looked at yet, and of the clearance alone: the worst of all vehicles."""
    found = {n.verdict for n in now}
    clearance = next((v for v in ("not yet", "cannot tell") if v in found), "done")
    return clearance, clearance


def _with_still(
    check: Check, job: Job, report: Report, drive: _Drive, gone: FloatArray, clock: Clock
) -> Check:
    """The check with what is still to go and what to measure; vehicles in order of what they have to spare.

    Ground and vehicle are taken to be where the readings say they are: the map must agree with the verdict.
    """
    assert report.plan is not None
    main = drive.main
    evidence = drive.read(check.surface)
    with clock.stage("still", "seeking what is still to go"):
        surface, moved = told_by(check.surface, drive.drivers[main], evidence[main], job.settings.seed)
        drivers = [moved if d.main else d for d in drive.drivers]
        agree = [agreeing(read(d, surface)) for d, read in zip(drivers, drive.reads, strict=True)]
        told = all_now(job, surface, drivers, drive.lines, agree)
        sure = check.clearance == "not yet"
        passes = [pass_of(n, t, job.wanted) for n, t in zip(check.now, told, strict=True) if sure]
        margins = [p.margin for p in passes] or [0.0] * len(told)
        ground = ground_now(surface, gone, report.plan, check.removed)
        fleet, standings = still_to_go(job, report, told, ground, margins, check.clearance)
        rest = None
        if sure:
            fleet, rest = rest_of(job, report, fleet, standings, ground)
    # chances from the readings as they were read, places and map from where they put things
    now = [
        replace(t, today=n.today, spare=n.spare, in_use=n.in_use)
        for n, t in zip(check.now, told, strict=True)
    ]
    order = sorted(range(len(now)), key=lambda k: (-round(now[k].spare.chance_of_contact, 2), k))
    first = order[0]
    advice: tuple[dict[str, object], ...] = ()
    if check.clearance != "done":
        advice = what_to_measure(now[first], surface, report.scan, job, evidence[first])
    return replace(
        check,
        verdict="not yet" if check.edges else check.clearance,
        now=tuple(now[k] for k in order),
        surface=surface,
        still=fleet.plan,
        cautious=check.clearance != "cannot tell",
        short=short_of(now[first]),
        whole=check.clearance == "done" or (sure and all(p.whole for p in passes)),
        rest=rest,
        advice=advice,
    )


def check_and_write(
    path: Path, after: Sequence[Path], out: Path, say: Say = lambda _: None
) -> tuple[Checked, tuple[Path, ...]]:
    """The check and its files in ``out``, moved there when all are whole; the paths written."""
    from crestcut.report import (
        PROOF_NAME,
        Staging,
        draw_checked,
        report_now,
        write_depth_ply,
        write_hand_over,
        write_proof,
        write_sheets,
        write_verify,
    )

    staging = Staging(out, "verify", say)
    with staging as folder:
        found = check_job(path, after, say, out)
        report, check = found.report, found.check
        now = report_now(report, check)
        staging.about = now.identity
        say("writing mesh, picture and hand-over sheet")
        with speaking(spoken(now.job)):
            left = replace(now, job=replace(now.job, title=f"{now.title}: still to go, the work done"))
            write_depth_ply(left, folder / "still_to_go.ply")
            draw_checked(report, check, folder / "checked.png")
            write_hand_over(report, check, folder / "hand_over.pdf")
            write_verify(report, check, found.scan, found.seconds, folder / "verify.json")
            if check.predicted:
                write_proof(report, check, folder / PROOF_NAME)
            if (done := rest_study(report, check, now)) is not None:
                sheet = worksheet_of(done)
                site = make_site(done.report.surface, done.report.line, done.report.plan)
                write_sheets(sheet, site, done.report.identity, folder, prefix=REST)
    return found, staging.moved


def rest_study(report: Report, check: Check, now: Report) -> Study | None:
    """The pass that is still to go as a job of its own, for its sheets; None where none is handed out: not
    short for sure, no plan, or what the job was not released for.

    now : ``report_now``.
    """
    rest = check.rest
    if rest is None or rest.release is None or report.release != ReleaseState.OK:
        return None
    left = (rest.left.today, rest.left.in_use) if rest.left is not None else (None, None)
    title = f"{report.title}: the rest"
    done = replace(
        now, job=replace(rest.job, title=title), surface=rest.surface, release=rest.release.state,
        release_reasons=rest.release.reasons, after=left[0], after_in_use=left[1],
    )  # fmt: skip
    return Study(done, rest.release, ())
