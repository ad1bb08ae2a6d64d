"""What of a job's sheets, pictures, plots, page and terminal is not in another language yet, and which share
is: names, figures and lines that are wrapped already are not counted.

python tests/bench/untranslated.py out/mine [de]
"""

from __future__ import annotations

import re
import sys
from dataclasses import dataclass
from pathlib import Path
from tempfile import TemporaryDirectory

from crestcut import read_study
from crestcut.apps.run import worksheet_of
from crestcut.base.language import Words, speaking, words_of
from crestcut.job import wished
from crestcut.report import (
    draw_plan,
    draw_profile,
    summary_lines,
    write_agreement,
    write_plots,
    write_report,
    write_sheets,
)  # fmt: skip
from crestcut.work import make_site

NAME = re.compile(r"[A-Za-z]{1,2} ?\d*(\.\d+)?(: .*)?")  # a dot, a setting, a tick of an axis
SAID: dict[str, str] = {}


@dataclass(frozen=True)
class Counted(Words):
    """Words that keep what they were asked for and what they said."""

    def say(self, text: str) -> str:
        """As ``Words``."""
        SAID[text] = super().say(text)
        return SAID[text]


def main(folder: Path, language: str) -> None:
    """Print it."""
    done = read_study(folder / "study.npz")
    assert done is not None, "made by another version: run the job again"
    report = done.report
    known = words_of(language, report.job.site.country)
    words = Counted(known.language, known.decimal, known.messages, set())
    with TemporaryDirectory() as made, speaking(words):
        sheet = worksheet_of(done)
        site = make_site(report.surface, report.line, report.plan)
        write_sheets(sheet, site, report.identity, Path(made))
        write_agreement(report, sheet, Path(made))
        draw_plan(report, Path(made) / "plan.png")
        draw_profile(report, Path(made) / "profile.png")
        write_report(report, Path(made), sheet)
        write_plots(report, sheet, wished(report.job.plot, {}), Path(made))
        for line in summary_lines(report):
            words.row(line)
    ours = {report.title, report.vehicle.name, report.job.path.name}
    spoken = "\n".join(said for text, said in SAID.items() if said != text).replace("\u00a0", " ")
    counted = {t for t in {*SAID, *words.missing} if re.search("[A-Za-z]{2}", t) and not NAME.fullmatch(t)}
    # what is in something said and in nothing asked is a wrapped line of it, no text of ours
    wrapped = {t for t in counted if SAID.get(t, t) == t and t.replace("\u00a0", " ") in spoken}
    wrapped -= {t for t in wrapped if any(t in a for a, said in SAID.items() if a not in (t, said))}
    asked = counted - wrapped - ours
    left = sorted(asked & words.missing)
    print(f"{1 - len(left) / len(asked):.1%} of {len(asked)} texts are in {language}; in English still:")
    for text in left:
        print(f"  {text}")


if __name__ == "__main__":
    main(Path(sys.argv[1]), sys.argv[2] if len(sys.argv) > 2 else "de")
