"""A fault in a file that people write is told in one line that names the file: the same check for job and
vehicle files."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from crestcut.base.errors import CrestcutError


def refusal(load: Callable[[Path], object], path: Path) -> CrestcutError:
    """The fault that ``load`` finds in the file at ``path``: one line, with the file's name in it."""
    with pytest.raises(CrestcutError) as caught:
        load(path)
    assert path.name in str(caught.value) and "\n" not in str(caught.value)
    return caught.value
