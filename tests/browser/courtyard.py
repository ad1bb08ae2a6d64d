"""The invented courtyard as a scan, and a finger on the plan of it."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import numpy as np

from crestcut.scan.records import Frame, Scan, ScanFile

SHIFT = (-512_300.0, 4_481_200.0)  # taken off: the plan then counts from 512 300 back


def courtyard(name: str = "apron.laz") -> Scan:
    """12 x 4.5 m, a crest at 6 m, a hole at (9.5, 3.2); plan coordinates of survey size."""
    rng = np.random.default_rng(2)
    xy = rng.uniform((0, 0), (12, 4.5), (90_000, 2))
    xy = xy[np.hypot(xy[:, 0] - 9.5, xy[:, 1] - 3.2) > 0.35]
    z = -0.1 * np.abs(xy[:, 0] - 6)
    frame = Frame(np.ones(3), np.eye(3), np.array([*SHIFT, 0.0]), "m", "z")
    file = ScanFile(Path(name), "LAZ", "0" * 64, len(xy), 0, None, "written in the file", "flattest")
    return Scan(np.column_stack([xy, z]), np.zeros(len(xy), np.int16), frame, (file,))


def plan(x: float, y: float) -> tuple[float, float]:
    """Courtyard metres -> the scan's plan coordinates."""
    return x + SHIFT[0], y + SHIFT[1]


def tap(page: Any, x: float, y: float, touch: bool = True) -> None:
    """Tap the plan where the courtyard's (x, y) lies."""
    px, py = page.evaluate(
        "([x, y]) => { const { map, stage } = crestcut; const [u, v] = map.plan.toGrid([x, y]);"
        " const p = stage.project(u, v, NaN), box = stage.holder.getBoundingClientRect();"
        " return [p[0] + box.left, p[1] + box.top]; }",
        list(plan(x, y)),
    )
    page.touchscreen.tap(px, py) if touch else page.mouse.click(px, py)


def mistakes(page: Any) -> list[str]:
    return page.locator("#mistakes .stop").all_inner_texts()


def draw_line(
    page: Any, ends: tuple[tuple[float, float], ...] = ((1.0, 1.7), (11.0, 1.8)), touch: bool = True
) -> None:
    for x, y in ends:
        page.locator("#tool-line").check(force=True)  # after the second point the page puts it away
        tap(page, x, y, touch)
    page.locator("#tool-look").check(force=True)


def reveal(page: Any, title: str) -> None:
    section = page.locator("#panel details.section", has=page.get_by_text(title, exact=True))
    if section.get_attribute("open") is None:
        section.locator("summary").first.click()
