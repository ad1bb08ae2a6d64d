// report.html: the slab in three dimensions, the vehicle on it, and the section through the tight place.

import { byId, h } from "./dom.js";
import { Drive } from "./drive.js";
import { closeUp, gapWords, sideView } from "./profile.js";
import { Plan, Raster, unpackColours, unpackLayer } from "./raster.js";
import { SlabView } from "./slab_view.js";
import { show } from "./units.js";

/** On a phone the answer comes first: what follows it is folded until it is asked for, by its head or by a link; what can hurt
 * somebody never is. */
function fold() {
  if (!matchMedia("(max-width: 44rem)").matches) return;
  for (const one of document.querySelectorAll("details.fold")) one.open = Boolean(one.closest("#cautions"));
  const unfold = (hash) => {
    const found = hash.length > 1 && byId(hash.slice(1))?.querySelector("details.fold");
    if (found) found.open = true;
  };
  document.addEventListener("click", (e) => {
    const link = e.target.closest?.('a[href^="#"]');
    if (link) unfold(link.hash); // before the browser scrolls there
  });
  addEventListener("hashchange", () => unfold(location.hash));
  unfold(location.hash);
}

export async function startReport(data) {
  fold();
  const report = { data, units: document.documentElement.dataset.units, plan: new Plan(data.grid.plan) };
  report.height = new Raster(data.grid, await unpackLayer(data.height));
  report.drive = data.drive ? await Drive.of(data) : null;
  report.depth = data.depth ? new Raster(data.grid, await unpackLayer(data.depth)) : null;
  if (report.drive) {
    const on = data.drive.contact.on;
    report.atWorst = { x: on[0], y: on[1] };
    proof(report);
    performance.mark("first-picture");
  }
  await new Promise((done) => setTimeout(done)); // the picture that proves it is on the screen before the heavy work starts
  report.gap = new Raster(data.grid, await unpackLayer(data.gap));
  report.short = new Raster(data.grid, await unpackLayer(data.short)); // of what is asked for the zone that passes there
  report.colours = data.colours ? await unpackColours(data.colours) : null;
  const view = new SlabView(report);
  if (report.drive) slider(report, view);
  document.addEventListener("units", (e) => {
    report.units = e.detail;
    if (report.drive) {
      proof(report);
      report.show();
    }
    view.wear();
  });
  if (data.release !== "ok")
    document.body.append(
      h("div", { class: "every-page", "aria-hidden": "true" }, data.release.toUpperCase()),
    );
  const paper = h("img", { class: "paper", alt: "The slab as it stood on the screen" });
  view.stage.overlay.before(paper); // under the labels, in place of the live picture
  window.addEventListener("beforeprint", () => {
    paper.src = view.stage.picture();
    // on paper nothing can be unfolded
    for (const closed of document.querySelectorAll("details:not([open])")) closed.open = true;
  });
  window.crestcut = { report, view };
}

/** The picture beside the verdict: the worst station. */
function proof(report) {
  const k = report.drive.worst,
    home = byId("proof");
  fillDrawing(report, k, report.atWorst.y, home, byId("proof-words"));
}

/** The section at station k into `home`, and what it shows into `words`. */
export function fillDrawing(report, k, y, home, words, { brisk = false, after = false } = {}) {
  const whole = home.clientWidth,
    beside = whole >= 900; // the two pictures side by side where there is room
  const wide = Math.max(260, Math.floor(beside ? (whole - 24) / 2 : whole));
  report.drive.use(after ? "after" : "today");
  const exact = y === report.atWorst.y ? (report.drive.gap[k] ?? undefined) : undefined;
  const tight = closeUp(report, k, y, wide, report.units, exact, { brisk, after });
  home.replaceChildren(...[tight?.svg, sideView(report, k, y, wide, { brisk, after })].filter(Boolean));
  if (brisk) return; // the words follow when the finger rests
  const parts = [`Front axle ${show(report.drive.stations[k], report.units)} from the start.`];
  if (tight)
    parts.push(
      `${beside ? "Left" : "Above"}: the tight place, ${gapWords(tight.gap, report.units)}, heights ${tight.stretch.toFixed(0)} times taller than true.`,
    );
  parts.push(
    `${beside ? "Right" : "Below"}: the whole vehicle, true to scale; the frame shows where the tight place is.`,
  );
  if (report.depth)
    parts.push(after ? "Dashed: the slab as it is today." : "Hatched: what the cut takes off.");
  words.textContent = parts.join(" ");
}

/** The slider, and the section that goes with it. */
function slider(report, view) {
  const { drive } = report;
  const range = byId("station"),
    told = byId("station-words"),
    across = byId("across"),
    cut = byId("once-cut"); // where anything is to be cut
  byId("driver").hidden = false;
  byId("to-worst").addEventListener("click", () => {
    range.value = drive.worst;
    report.show();
  });
  byId("play").addEventListener("click", () => play(range, report));
  cut?.addEventListener("change", () => report.show());
  const half = drive.vehicle.tracks[1] / 2;
  report.slow = view.stage.slow;
  let resting = 0;
  report.show = (brisk = false) => {
    clearTimeout(resting);
    if (brisk) resting = setTimeout(report.show, 200); // and once more in full when the finger rests
    const k = Number(range.value);
    const y = { worst: report.atWorst.y, left: half, middle: 0, right: -half }[across.value];
    const after = Boolean(cut?.checked);
    drive.use(after ? "after" : "today");
    view.stand(k, after);
    const gap = drive.gap[k] ?? NaN;
    const words = `Front axle at ${show(drive.stations[k], report.units)}: ${Number.isFinite(gap) ? `least ${gapWords(gap, report.units)} here${after ? ", once cut" : ""}` : "no gap known here"}`;
    told.textContent = words;
    range.setAttribute("aria-valuetext", words);
    fillDrawing(report, k, y, byId("profile"), byId("profile-words"), { brisk, after });
    // phone, tablet and paper do not show the picture of the answer twice
    byId("profile").parentElement.classList.toggle(
      "same",
      k === drive.worst && !after && across.value === "worst",
    );
  };
  let waiting = 0;
  range.addEventListener("input", () => {
    waiting ||= requestAnimationFrame(() => {
      waiting = 0;
      report.show(view.stage.slow);
    });
  });
  across.addEventListener("change", () => report.show());
  let wide = 0;
  new ResizeObserver(() => {
    if (byId("profile").clientWidth === wide) return;
    wide = byId("profile").clientWidth;
    report.show();
    proof(report);
  }).observe(byId("profile"));
  report.show();
}

function play(range, report) {
  const button = byId("play");
  if (report.playing) {
    report.playing = false;
    return;
  }
  report.playing = true;
  button.textContent = "Stop";
  if (Number(range.value) >= range.max) range.value = 0;
  const step = () => {
    if (!report.playing || Number(range.value) >= Number(range.max)) {
      report.playing = false;
      button.textContent = "Drive";
      return;
    }
    range.value = Number(range.value) + 1;
    report.show(report.slow);
    requestAnimationFrame(step);
  };
  step();
}
