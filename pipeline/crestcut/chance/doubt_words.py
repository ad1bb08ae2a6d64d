"""What speaks against a verdict, in words: what, where, and what to do about it."""

from __future__ import annotations

from crestcut.base.units import both
from crestcut.chance.records import Doubt, Finding
from crestcut.scan import Frame
from crestcut.terrain import about, high, rough_words


def finding_head(finding: Finding) -> str:
    """One finding as a verdict's first line says it, without its full stop."""
    size = both(finding.size, 0)
    return {
        Doubt.NOT_SLAB: "this is no slab but something as rough as lawn, gravel or cobbles",
        Doubt.STANDS: f"something {high(finding.size)} high was scanned in the vehicle's way",
        Doubt.ALL_POINTS: f"held against all points of the scan it touches by {size}, though what was taken"
        " for ground clears",
        Doubt.SHORT: f"held against all points of the scan it lacks {size} of what was asked for, though"
        " what was taken for ground leaves it",
        Doubt.TWICE: f"the ground under its path is there twice, {size} apart",
        Doubt.SWEPT: f"the underside swept over the ground touches by {size}, more than errors explain",
        Doubt.CANNOT_BE: "something in the scan misleads it",
        Doubt.MISFIT: f"the scan since is off by {size} rms on ground that nobody cut, more than both scans"
        " may be wrong by",
        Doubt.ELSEWHERE: f"{finding.area:.2f} m2 where nothing was to be cut lie lower too, by up to {size}",
    }[finding.doubt]


def finding_words(finding: Finding, frame: Frame) -> str:
    """One finding in full with its place, without its full stop."""
    at, size = about(frame, finding.xy), both(finding.size, 0)
    area = f"over {finding.area:.2f} m2 about {at}"
    return {
        Doubt.NOT_SLAB: f"{rough_words(finding.size)}, {area}; no verdict on a slab is given there",
        Doubt.STANDS: f"something {high(finding.size)} high was scanned in the vehicle's way {area}",
        Doubt.ALL_POINTS: f"against all points, none left out, the underside meets the ground by {size}"
        f" {area}, though what was taken for ground clears",
        Doubt.SHORT: f"against all points, none left out, {size} of what was asked for is lacking {area},"
        " though what was taken for ground leaves it",
        Doubt.TWICE: f"the ground is there twice, {size} apart, {area}: two passes do not agree",
        Doubt.SWEPT: f"the underside swept over the fitted ground meets it by {size} about {at}, more than"
        " the errors stated can explain away",
        Doubt.CANNOT_BE: f"the best estimate was more than the {size} that the underside can have about {at}",
        Doubt.MISFIT: f"laid on the scan from before the work as well as it goes, the scan since is off by"
        f" {size} rms on ground that nobody cut, more than both may be wrong by: another slab, one whose"
        " scale or heights are wrong, or one that was smoothed",
        Doubt.ELSEWHERE: f"ground where nothing was to be cut lies lower by up to {size} {area}: cut by"
        " mistake, another slab, or a scan that was smoothed or went astray; the cut itself may be no truer",
    }[finding.doubt]


def finding_step(finding: Finding, frame: Frame) -> str:
    """What to do about a finding, without its full stop."""
    at = about(frame, finding.xy)
    again = "scan the slab again with nothing and nobody on it"
    felt = (
        "feel the gap under the vehicle where it is tight, write it under [[after.witness]] and check again"
    )
    return {
        Doubt.NOT_SLAB: "draw the line where the slab is; on lawn, gravel and cobbles only the vehicle"
        " itself tells",
        Doubt.STANDS: f"move what stands about {at} and scan again, or draw the line past it",
        Doubt.ALL_POINTS: f"see what lies about {at}, clear it and scan again",
        Doubt.SHORT: f"see what lies about {at}, clear it and scan again",
        Doubt.TWICE: "scan it again in one slow walk, or give each pass as a file of its own under [scan]"
        " files",
        Doubt.SWEPT: again,
        Doubt.CANNOT_BE: again,
        Doubt.MISFIT: f"scan the whole slab again, hold one length in it against a tape, or {felt}",
        Doubt.ELSEWHERE: f"see whether it was cut about {at}; {felt}",
    }[finding.doubt]
