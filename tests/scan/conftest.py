"""Where the real scans are, for the tests that can use them."""

from __future__ import annotations

from pathlib import Path

import pytest


@pytest.fixture(scope="session")
def real_scans() -> Path:
    """The folder of real scans beside the repository; a test that needs it is skipped, and says so, where
    it is absent."""
    folder = Path(__file__).resolve().parents[3] / "shared" / "realdata"
    if not folder.is_dir():
        pytest.skip("the real scans are not beside the repository")
    return folder
