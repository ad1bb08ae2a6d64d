"""Size and speed of report.html on a 16 x 4 m slab at 20 mm display cells, in headless Chromium without a
graphics card.

Run: python tests/bench/page.py [SIZE_WIDE SIZE_TALL]. Asked for: 3 MB or less, written in 0.3 s of processor
time or less, first picture within 2 s, slider at 20 frames a second or better. The slab carries 0.5 mm of
height noise, as a fitted phone scan does, so that it neither packs nor draws too easily.
"""

from __future__ import annotations

import dataclasses
import shutil
import sys
import tempfile
import time
from pathlib import Path

import numpy as np
from history import figure

ROOT = Path(__file__).parents[2]
sys.path.insert(0, str(ROOT / "tests" / "report"))

import deliver_scene  # noqa: E402

from crestcut.report.pages.report import write_report  # noqa: E402
from crestcut.study.report import Report  # noqa: E402

SECONDS = 4.0
FRAMES = """async (seconds) => {
  const { report } = crestcut, slider = document.getElementById("station");
  document.getElementById("drive").scrollIntoView();
  await new Promise((done) => setTimeout(done, 800));
  const start = performance.now(), gaps = [];
  let last = start;
  for (let n = 0; performance.now() - start < seconds * 1000; n++) {
    slider.value = n % report.drive.count;
    slider.dispatchEvent(new Event("input"));
    await new Promise(requestAnimationFrame);
    gaps.push(performance.now() - last);
    last = performance.now();
  }
  gaps.sort((a, b) => a - b);
  const mark = (name) => performance.getEntriesByName(name)[0].startTime;
  return { fps: gaps.length / (last - start) * 1000, slow: gaps[Math.floor(gaps.length * 0.95)],
           first: mark("first-picture"), ready: mark("ready"), cells: report.height.nx * report.height.ny };
}"""


def big_report() -> Report:
    """16 x 4 m, a crest across the middle, and noise on every height."""
    deliver_scene.LENGTH, deliver_scene.WIDTH, deliver_scene.CREST = 16.0, 4.0, 8.0
    report = deliver_scene.make_report(clearance=0.09)
    noise = np.random.default_rng(1).normal(0, 5e-4, report.surface.height.frame.shape)
    height = report.surface.height.like(report.surface.height.values + noise)
    return dataclasses.replace(report, surface=dataclasses.replace(report.surface, height=height))


def written(folder: Path) -> tuple[Path, float]:
    """The page, and the least processor time of three that it took to write, seconds."""
    report, taken = big_report(), []
    for _ in range(3):
        start = time.process_time()
        path = write_report(report, folder)
        taken.append(time.process_time() - start)
    return path, min(taken)


def main() -> None:
    from playwright.sync_api import sync_playwright

    wide, tall = (int(a) for a in sys.argv[1:3]) if len(sys.argv) > 2 else (1366, 768)
    with tempfile.TemporaryDirectory() as folder, sync_playwright() as play:
        path, seconds = written(Path(folder))
        browser = play.chromium.launch(
            executable_path=shutil.which("chromium"), args=["--no-sandbox", "--disable-gpu"]
        )
        page = browser.new_page(viewport={"width": wide, "height": tall})
        page.goto(path.as_uri())
        page.wait_for_selector("html[data-ready]")
        found = page.evaluate(FRAMES, SECONDS)
        browser.close()
        print(f"16 x 4 m, {found['cells']:,} display cells, window {wide} x {tall}")
        figure("page", path.stat().st_size / 1e6, "MB", "less")
        figure("written in", seconds, "s", "less")
        figure("first picture", found["first"] / 1000, "s", "less")
        figure("all ready", found["ready"] / 1000, "s", "less")
        figure("slider, frames a second", found["fps"], "", "more")
        figure("95th percentile of a frame", found["slow"], "ms", "less")


if __name__ == "__main__":
    main()
