"""Pages in a real browser. A page under test fails on any console error, uncaught error, dialog or network
request."""

from __future__ import annotations

import os
import shutil
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

import pytest

from browser.courtyard import courtyard
from crestcut.report.pages.pick import write_pick

# --disable-gpu as on a machine without a graphics card; WebGL then runs in software
FLAGS = ["--no-sandbox", "--disable-gpu"]
WIDTHS = {"phone": (390, 844), "tablet": (820, 1180), "laptop": (1366, 768)}
LOCAL = ("file:", "blob:", "data:", "about:")
Opener = Callable[..., Any]


def _need(what: str) -> None:
    """Without a browser these tests are left out on a desk, never in CI."""
    message = f"{what}: install Debian's chromium and `pip install -e .[test]`"
    if os.environ.get("CI"):
        pytest.fail(message)
    pytest.skip(message)


@pytest.fixture(scope="session")
def browser() -> Iterator[Any]:
    try:
        from playwright.sync_api import sync_playwright
    except ImportError:
        _need("playwright is not installed")
    path = os.environ.get("CHROMIUM") or next(
        filter(None, map(shutil.which, ("chromium", "chromium-browser"))), None
    )
    if path is None:
        _need("no chromium found")
    with sync_playwright() as play:
        running = play.chromium.launch(executable_path=path, args=FLAGS)
        yield running
        running.close()


class Watched:
    """Pages kept open from test to test, one for each size and light: a new one costs as long as the page
    itself. What goes wrong on any of them is kept in ``faults``."""

    def __init__(self, browser: Any) -> None:
        self.browser = browser
        self.faults: list[str] = []
        self.pages: dict[tuple[str, str], Any] = {}

    def page(self, size: str, scheme: str) -> Any:
        if (size, scheme) not in self.pages:
            self.pages[size, scheme] = self._new(size, scheme)
        page = self.pages[size, scheme]
        page.goto("about:blank")  # nothing of the last test is left, and a changed #hash loads anew
        page.emulate_media(media="screen", color_scheme=scheme)
        return page

    def _new(self, size: str, scheme: str) -> Any:
        wide, tall = WIDTHS[size]
        context = self.browser.new_context(
            viewport={"width": wide, "height": tall}, color_scheme=scheme, has_touch=size != "laptop",
            accept_downloads=True,
        )  # fmt: skip
        page, note = context.new_page(), self.faults.append
        page.set_default_timeout(20_000)
        page.on("console", lambda m: note(f"console: {m.text}") if m.type == "error" else None)
        page.on("pageerror", lambda e: note(f"uncaught: {e}"))
        page.on("dialog", lambda d: (note(f"dialog: {d.message}"), d.dismiss()))
        page.on("request", lambda r: None if r.url.startswith(LOCAL) else note(f"network: {r.url}"))
        return page


@pytest.fixture(scope="session")
def watched(browser: Any) -> Watched:
    return Watched(browser)


@pytest.fixture
def open_page(watched: Watched) -> Iterator[Opener]:
    """``open_page(path, "phone", scheme="dark", hash="#flat")`` -> a page that is ready and watched."""

    def go(path: Path, size: str = "laptop", scheme: str = "light", hash: str = "") -> Any:
        page = watched.page(size, scheme)
        page.goto(path.as_uri() + hash)
        page.wait_for_selector("html[data-ready]")
        return page

    watched.faults.clear()
    yield go
    assert not watched.faults


@pytest.fixture(scope="session")
def pick(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """pick.html of the invented courtyard."""
    folder = tmp_path_factory.mktemp("look")
    return write_pick(courtyard(str(folder / "apron.laz")), None, folder)


@contextmanager
def saving(page: Any, folder: Path) -> Iterator[list[Path]]:
    """The file that a click inside the block saves, kept in ``folder``."""
    kept: list[Path] = []
    with page.expect_download() as download:
        yield kept
    kept.append(folder / download.value.suggested_filename)
    download.value.save_as(kept[0])


def until(page: Any, condition: str, seconds: float = 10.0) -> None:
    """Wait for an expression to hold. (The library's own wait evaluates text in the page, which the page's
    policy forbids.)"""
    end = time.monotonic() + seconds
    while not page.evaluate(condition):
        assert time.monotonic() < end, condition
        page.wait_for_timeout(50)


def overflow(page: Any) -> int:
    """Pixels that the page is wider than its window."""
    return page.evaluate("document.documentElement.scrollWidth - document.documentElement.clientWidth")


def grave_faults(page: Any) -> list[str]:
    """What axe-core calls serious or critical."""
    from axe_playwright_python.sync_playwright import Axe

    found = Axe().run(page).response["violations"]
    return [
        f"{v['id']}: {v['nodes'][0]['html'][:160]} ({v['nodes'][0].get('failureSummary', '')[:200]})"
        for v in found
        if v["impact"] in ("serious", "critical")
    ]
