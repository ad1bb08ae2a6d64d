"""The one error a user ever meets: what is wrong, where, and what to do about it; and words on the way."""

from __future__ import annotations

import math
import re
from collections.abc import Callable

# characters of a whole error: what was wrong may be a file's own text, and of any length
_LONGEST, _LONGEST_WHERE, _LONGEST_MEND = 600, 200, 240
# C0 and C1, what ends a line elsewhere, halves of characters, and what turns the direction of writing round
_UNSEEN = re.compile("[\x00-\x1f\x7f-\x9f\u2028\u2029\u202a-\u202e\u2066-\u2069\ud800-\udfff]")


Say = Callable[[str], None]  # how long work tells of each step as it begins, of a ``Mind`` or a ``Verdict``


class Mind(str):
    """A word in passing: the step that is at work goes on. bare : the words without their mark."""

    bare: str

    def __new__(cls, words: str) -> Mind:
        """``words``, marked for who reads them in a log."""
        mind = super().__new__(cls, f"mind: {words}")
        mind.bare = words
        return mind


class Verdict(str):
    """The answer in a line, while plan and files are still made: for who waits for that alone.

    first : what a screen shows of it by then, plain values; made when it is called for.
    """

    first: Callable[[], dict[str, object]]

    def __new__(cls, words: str, first: Callable[[], dict[str, object]] = dict) -> Verdict:
        """``words`` as they are said."""
        verdict = super().__new__(cls, words)
        verdict.first = first
        return verdict


class Step(str):
    """Words of a step that begins, with the key it is known by: what share is done is told by that."""

    key: str

    def __new__(cls, words: str, key: str) -> Step:
        """``words`` as they are said; ``key`` as under ``seconds`` of the results."""
        step = super().__new__(cls, words)
        step.key = key
        return step


class CrestcutError(Exception):
    """Bad input, said in one line.

    Parameters
    ----------
    what : the fault, in plain words ("no points in the file").
    where : the file, key or place it was found in; empty if there is none to name.
    mend : what the user can do about it.

    The command line prints ``str(error)`` on one line and leaves with exit code 2.
    """

    def __init__(self, what: str, where: str = "", mend: str = "") -> None:
        self.where = _at_most(_one_line(where), _LONGEST_WHERE, first=_LONGEST_WHERE // 4)
        self.mend = _at_most(_one_line(mend), _LONGEST_MEND)
        # 4: what joins the three
        self.what = _at_most(_one_line(what), _LONGEST - 4 - len(self.where) - len(self.mend))
        super().__init__(str(self))

    def __str__(self) -> str:
        head = f"{self.where}: {self.what}" if self.where else self.what
        return f"{head}; {self.mend}" if self.mend else head


def visible(text: str) -> str:
    """The same with control characters written out (``\\x1b``): a name from a file of others must not move a
    terminal's cursor, end a line of a drawing, or turn what stands beside it round.
    """
    return _UNSEEN.sub(lambda found: found[0].encode("unicode_escape").decode(), text)


def table_cell(text: str) -> str:
    """``visible`` text that no spreadsheet takes for a formula: a name that begins like one gets an
    apostrophe before it, as people write it themselves. Numbers stay.
    """
    text = visible(text)
    return f"'{text}" if text[:1] in ("=", "+", "-", "@") and not _is_number(text) else text


def _is_number(text: str) -> bool:
    try:
        return math.isfinite(float(text))
    except ValueError:
        return False


def _at_most(text: str, most: int, first: int | None = None) -> str:
    """At most so many characters: the ``first`` ones (two thirds) and the end, which of a path tells most."""
    if len(text) <= most:
        return text
    first = most * 2 // 3 if first is None else first
    return f"{text[:first]} ... {text[len(text) - (most - first - 5) :]}"


def _one_line(text: str) -> str:
    return visible(" ".join(str(text).split()))
