// pick.html: tap line, marks and keep areas on the slab from above, answer a few questions, save a job file.

import { announce, byId, h } from "./dom.js";
import { layPlan } from "./ground.js";
import { paintRelief } from "./paint.js";
import { check } from "./pick_check.js";
import { fillIn, listen } from "./pick_form.js";
import { PickMap } from "./pick_map.js";
import { beside, drivable, leastRadius } from "./path.js";
import { PickModel } from "./pick_model.js";
import { points } from "./pick_points.js";
import { heightStrip } from "./pick_strip.js";
import { Plan, Raster, unpackColours, unpackLayer } from "./raster.js";
import { Stage } from "./stage.js";
import { parseLength } from "./units.js";

const DRAWN = "The line is drawn. Drag its points to mend it; choose Line again and tap on for a bend.";

export async function startPick(data, root) {
  const { page, model, map, height, plan } = await layOut(data, root);
  wire(page, model, map, height, plan);
}

/** The plan with its points, ready to be tapped on. */
export async function layOut(data, root) {
  const height = new Raster(data.grid, await unpackLayer(data.height));
  const footing = await unpackLayer(data.footing); // 1 ground, 0.5 in doubt
  height.footing = new Raster(data.grid, footing);
  height.firm = new Raster(
    data.grid,
    footing.map((share) => (share > 0.75 ? share : NaN)),
  );
  const colours = data.colours ? await unpackColours(data.colours) : null;
  const plan = new Plan(data.grid.plan);
  const model = new PickModel(data);
  const view = byId("view");
  const page = {
    units: document.documentElement.dataset.units,
    read: ([x, y]) => {
      byId("cursor").textContent = `${x.toFixed(2)}, ${y.toFixed(2)} ${data.planUnit}`;
    },
  };
  root.hidden = false;
  // as tall as the slab needs at the width there is, within what the style sheet allows
  view.style.aspectRatio = `${height.nx * 1.06} / ${height.ny * 1.12}`;
  const stage = new Stage(view, {
    size: [(height.nx - 1) * height.cell, (height.ny - 1) * height.cell],
    plan: true,
    noWebGL: location.hash === "#flat",
  });
  layPlan(stage, paintRelief(height, colours));
  const map = new PickMap(stage, plan, height, model, page);
  view.addEventListener("focus", () => stage.request());
  view.addEventListener("blur", () => stage.request());
  window.crestcut = { model, map, stage, parseLength, path: { beside, drivable, leastRadius } }; // a handle for tests and for whoever looks under the bonnet
  return { page, model, map, height, plan };
}

/** What stands above and below the plan: tools, undo, nearness, the vehicle along the line. Returns what draws the strip. */
export function tools(page, model, map, refresh) {
  page.lineDrawn = () => {
    byId("tool-look").checked = true;
    map.setTool("look");
    byId("tool-hint").textContent = DRAWN;
  };
  const choose = ({ value, dataset }) => {
    map.setTool(value);
    byId("tool-hint").textContent = dataset.hint;
  };
  for (const tool of document.getElementsByName("tool"))
    tool.addEventListener("change", () => {
      choose(tool);
      byId("tap-said").textContent = "";
      refresh();
    });
  byId("tool-line").checked = true;
  choose(byId("tool-line"));
  byId("undo").addEventListener("click", () => announce(model.undo() ? "Undone" : "Nothing to undo"));
  byId("close-area").addEventListener("click", () => map.closeArea());
  byId("nearer").addEventListener("click", () => map.stage.nudge({ zoom: 1.4 }));
  byId("farther").addEventListener("click", () => map.stage.nudge({ zoom: 1 / 1.4 }));
  byId("whole").addEventListener("click", () => map.stage.home());
  byId("along").addEventListener("input", (e) => {
    map.along = e.target.value / 100;
    map.stage.request();
    strip();
  });
  const strip = () => byId("strip").replaceChildren(...[heightStrip(map, page.units)].filter(Boolean));
  return strip;
}

function wire(page, model, map, height, plan) {
  const strip = tools(page, model, map, () => refresh());
  const build = () => {
    byId("title").value = model.doc.title ?? "";
    fillIn(model, page.units);
    model.changed();
  };
  const refresh = () => {
    byId("close-area").hidden = map.open.length < 3;
    map.stage.request();
    strip();
    const found = check(model, height, plan, page.units);
    map.spots = found.map((f) => f.spot).filter(Boolean);
    tellMistakes(found, model);
    tellLine(model.doc.travel.line.length ? found : []); // before the first tap the hint above the plan says what to do
    byId("along-label").hidden = !map.route.path;
    points(model);
    byId("job-text").value = model.jobText();
  };
  listen(model, build);
  saving(model, map, build);
  model.addEventListener("change", refresh);
  build();
  refresh();
  document.addEventListener("units", (e) => {
    page.units = e.detail;
    model.speak(page.units);
    build();
    refresh();
  });
}

function saving(model, map, build) {
  byId("panel").addEventListener("submit", (e) => e.preventDefault());
  byId("title").addEventListener("input", (e) => model.set(["title"], e.target.value));
  byId("save-job").addEventListener("click", () => save(model.jobName(), model.jobText(), "save-job"));
  byId("save-vehicle").addEventListener("click", () =>
    save(model.vehicleFile, model.vehicleText(), "save-vehicle"),
  );
  byId("open-job").addEventListener("change", async (event) => {
    const file = event.target.files[0],
      wrong = byId("open-wrong");
    if (!file) return;
    try {
      model.open(await file.text());
      wrong.textContent = "";
      if (model.line.length > 1) map.page.lineDrawn();
      map.stage.request();
      build();
      announce(`${file.name} opened`);
    } catch (error) {
      wrong.textContent = `${file.name}: ${error.message.split("\n")[0]}`;
    }
    event.target.value = ""; // the same file can be opened again
  });
}

function save(name, text, from) {
  if (from === "save-job" && byId("mistakes").querySelector(".stop")) {
    byId("mistakes").querySelector("a, li").focus();
    announce("The job is not complete yet: see the list above the button");
    return;
  }
  const link = h("a", {
    href: URL.createObjectURL(new Blob([text], { type: "application/toml" })),
    download: name,
  });
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
  announce(`${name} saved`);
  const also = from === "save-job" ? byId("save-vehicle") : null;
  byId("saved").textContent =
    also && !also.hidden ? `${name} is saved. Save the vehicle file too.` : `${name} is saved.`;
}

/** What is wrong with the line stands under the plan too: the list may be far down. */
function tellLine(found) {
  const about = found.filter((f) => /^(tool-line|points$|line-|v-turning)/.test(f.at));
  byId("line-said").replaceChildren(...about.slice(0, 2).map((f) => h("span", { class: f.level }, f.text)));
}

/** And beside the field it is about, once something stands in it. */
function tellFields(found) {
  for (const old of document.querySelectorAll(".at-field")) old.remove();
  for (const f of found) {
    const target = byId(f.at);
    if (!target?.closest(".field") || (!target.value && target.matches("input, select"))) continue;
    target.closest(".field").append(h("span", { class: `at-field ${f.level}` }, f.text));
  }
}

function tellMistakes(found, model) {
  const go = (at) => (e) => {
    e.preventDefault();
    const target = byId(at);
    if (!target) return;
    for (let up = target.closest("details"); up; up = up.parentElement.closest("details")) up.open = true;
    target.scrollIntoView({ block: "center" });
    target.focus();
  };
  const stops = found.filter((f) => f.level === "stop").length;
  byId("mistakes").replaceChildren(
    h(
      "h2",
      { class: "small" },
      stops
        ? `${stops} thing${stops > 1 ? "s" : ""} to mend before it can run`
        : found.length
          ? `It can be saved, but mind ${found.length > 1 ? `these ${found.length} doubts` : "this"}`
          : "Ready to save",
    ),
    h(
      "ul",
      { class: "found" },
      found.map((f) => h("li", { class: f.level }, h("a", { href: `#${f.at}`, onclick: go(f.at) }, f.text))),
    ),
  );
  byId("save-job").setAttribute("aria-disabled", String(stops > 0));
  byId("save-vehicle").hidden = model.choice === "own" && !model.own?.doc;
  byId("where").textContent =
    `Put ${model.jobName()} and ${model.vehicleFile} in the folder of this page, then: crestcut run ${model.jobName()}`;
  for (const bad of document.querySelectorAll("[aria-invalid]")) bad.removeAttribute("aria-invalid");
  for (const f of found) if (f.level === "stop") byId(f.at)?.setAttribute("aria-invalid", "true");
  tellFields(found);
}
