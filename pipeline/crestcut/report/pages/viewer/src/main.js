// Reads what the page carries and starts the right half. A screen of `crestcut open` carries no page's data: it takes what it
// needs of the viewer from here and starts itself (`open_line.js`, `open_tight.js`).

import { byId } from "./dom.js";
import { startPick } from "./pick.js";
import { startReport } from "./report.js";
import { speak } from "./words.js";

export { byId, h } from "./dom.js";
export { Drive } from "./drive.js";
export { layOut, tools } from "./pick.js";
export { check } from "./pick_check.js";
export { points } from "./pick_points.js";
export { Raster, unpackLayer } from "./raster.js";
export { fillDrawing } from "./report.js";
export { parseLength, show } from "./units.js";

const root = document.documentElement;

/** The two switches in the header: units and light. */
function switches() {
  const units = byId("units-switch");
  units?.addEventListener("change", () => {
    root.dataset.units = units.value;
    document.dispatchEvent(new CustomEvent("units", { detail: units.value }));
  });
  const light = byId("light-switch");
  light?.addEventListener("change", () => {
    root.dataset.light = light.value;
    document.dispatchEvent(new Event("light"));
  });
}

async function start() {
  const data = JSON.parse(byId("crestcut-data").textContent);
  if (data.words) speak(document.body, data.words, false); // the page itself comes in its language
  switches();
  await (data.page === "pick" ? startPick : startReport)(data, byId("app"));
  root.dataset.ready = "yes";
  performance.mark("ready");
}

if (byId("crestcut-data"))
  start().catch((error) => {
    byId("said").textContent = `This page could not start: ${error.message}. Open it in a current browser.`;
    throw error;
  });
