// The slab in three dimensions: layers, contours, legend, labels, the reading under the cursor, and the vehicle on it.

import { announce, byId, s } from "./dom.js";
import { Car } from "./car.js";
import { ContourLines, GroundMesh, contourLevels, drape, label, layBand, scaleBar } from "./ground.js";
import { legend } from "./legend.js";
import { paintRelief, paintValue } from "./paint.js";
import { gapWords } from "./profile.js";
import { Stage } from "./stage.js";
import { show } from "./units.js";

const SHALLOWEST = 5e-5; // m: less is not worth a colour
const PLAIN = { depth: "nothing to take off", lack: "enough, or not driven over" }; // what bare concrete means

/** "12.7 mm under the belly, 32 mm under nose and tail" */
const asked = (want, units) =>
  `${show(want.belly, units)} under the belly, ${show(want.nose, units)} under nose and tail`;

/** What the legend says where nothing is coloured, else null. */
const lackless = (layer, top, want, units) =>
  layer === "lack" && !(top > SHALLOWEST)
    ? `Nowhere is the gap smaller than what is asked for: ${asked(want, units)}.`
    : layer === "scan"
      ? "Colour of the scan, shaded by its relief."
      : null;

export class SlabView {
  constructor(report) {
    this.report = report;
    const { height, data } = report;
    const [low, high] = height.range();
    this.stage = new Stage(byId("view"), {
      size: [(height.nx - 1) * height.cell, (height.ny - 1) * height.cell],
      level: (low + high) / 2 || 0,
      noWebGL: location.hash === "#flat",
    });
    this.layer = data.depth ? "depth" : "lack";
    this.k = report.drive?.worst ?? 0;
    if (!this.stage.flat) {
      this.mesh = new GroundMesh(this.stage, height);
      this.contours = new ContourLines(this.stage, height);
      layBand(this.stage, height, data.line, 0.06, 0x0b5568);
      if (report.drive) this.car = new Car(this.stage, report.drive);
    }
    this.keeps = data.keeps.map(({ kind, area }) => ({ kind, ring: drape(area, height) }));
    this.stage.drawn.push(() => this.#labels());
    this.#tools();
    this.#reading();
    this.wear();
    if (report.drive && !this.stage.flat) this.stage.home();
  }

  #tools() {
    const on = (id, event, act) => byId(id)?.addEventListener(event, act);
    const tools = byId("view-tools");
    tools.hidden = false;
    if (this.stage.flat) {
      for (const needless of tools.querySelectorAll(".solid")) needless.remove();
      byId("flat-said").hidden = false;
    }
    on("layer", "change", (e) => {
      this.layer = e.target.value;
      this.wear();
    });
    on("tall", "change", (e) => this.#stretch(e.target.checked ? 4 : 1));
    on("show-car", "change", (e) => {
      this.car.visible = e.target.checked;
    });
    for (const side of tools.querySelectorAll("[data-from]"))
      side.addEventListener("click", () => this.stage.home(side.dataset.from));
    on("nearer", "click", () => this.stage.nudge({ zoom: 1.3 }));
    on("farther", "click", () => this.stage.nudge({ zoom: 1 / 1.3 }));
    on("visit", "click", () => this.#visit());
  }

  #visit() {
    const { at, ground } = this.report.data.drive.contact;
    byId("station").value = this.report.drive.worst;
    if (byId("once-cut")) byId("once-cut").checked = false;
    this.report.show();
    this.stage.visit([...at, ground], 3);
  }

  #stretch(times) {
    this.stage.exaggeration = times;
    this.stage.world.scale.z = times;
    this.stage.home(this.stage.from);
    announce(
      times > 1 ? `Heights ${times} times taller than true, the vehicle too` : "Heights true to scale",
    );
    this.stage.request();
  }

  /** Paints the chosen layer, its contours and its legend. */
  wear() {
    this.worn = (this.worn ?? 0) + 1;
    const { height, depth, short, data, units } = this.report;
    const flat = this.stage.flat;
    let canvas,
      values = null,
      top = 0,
      name = "";
    if (this.layer === "scan") canvas = paintRelief(height, this.report.colours);
    else {
      const lack = this.layer === "lack";
      values = lack ? short.values : depth.values;
      top = lack ? values.reduce((a, b) => (b > a ? b : a), 0) : data.deepest;
      name = lack ? "Gap short of what is asked, by" : "Depth to take off";
      canvas = paintValue(height, values, data.ramp, data.concrete, SHALLOWEST, top);
    }
    if (flat) {
      this.stage.backdrop = canvas;
      this.stage.request();
    } else this.mesh.wear(canvas);
    const levels = values ? contourLevels(top, units) : [];
    this.contours?.draw(values ?? new Float32Array(height.values.length), levels);
    const none = lackless(this.layer, top, data.want, units);
    const plain =
      this.layer === "lack" ? `${PLAIN.lack}; asked: ${asked(data.want, units)}` : PLAIN[this.layer];
    legend({ name, top, levels, none, plain, stops: data.ramp, units });
  }

  stand(k, after = false) {
    this.after = after;
    if (k !== this.k) this.stage.glide();
    this.k = k;
    this.car?.stand(k);
    this.stage.request();
  }

  /** All that is written over the picture; most of it only anew when the view has moved. */
  #labels() {
    const { stage, report } = this;
    const seen = [...stage.camera.matrixWorldInverse.elements, stage.camera.zoom, stage.exaggeration];
    const key = [...seen, stage.width, stage.height, report.units, this.worn, this.#marked].join();
    if (key !== this.key) {
      this.key = key;
      this.written ??= s("g");
      this.written.replaceChildren(...this.#fixedLabels().flat(Infinity));
      this.pinned ??= s("g");
      this.pinned.replaceChildren(...(report.drive ? this.#gapMark().flat(Infinity) : []));
    }
    if (!this.pinned.isConnected) stage.overlay.replaceChildren(this.written, this.pinned);
  }

  /** Does the vehicle stand where its gap is written? */
  get #marked() {
    return this.report.drive && this.k === this.report.drive.worst && !this.after;
  }

  #fixedLabels() {
    const { report, stage } = this,
      { data, units, height } = report;
    const parts = [scaleBar(stage, units)];
    const at = ([u, v]) => stage.project(u, v, height.at(u, v));
    const line = data.line.map(at);
    if (stage.flat)
      parts.push(
        s("path", {
          class: "line halo",
          d: `M${line.map((p) => `${p[0].toFixed(1)} ${p[1].toFixed(1)}`).join("L")}`,
        }),
        s("path", {
          class: "line",
          d: `M${line.map((p) => `${p[0].toFixed(1)} ${p[1].toFixed(1)}`).join("L")}`,
        }),
      );
    for (const keep of this.keeps) {
      const ring = keep.ring.map(([u, v, z]) => stage.project(u, v, z));
      if (!ring.length) continue;
      const [x, y] = [0, 1].map((c) => ring.reduce((sum, p) => sum + p[c], 0) / ring.length);
      const seen = [
        Math.min(Math.max(x, 50), stage.width - 50),
        Math.min(Math.max(y, 20), stage.height - 40),
      ];
      parts.push(
        s("path", {
          class: "keep",
          d: `M${ring.map((p) => `${p[0].toFixed(1)} ${p[1].toFixed(1)}`).join("L")}Z`,
        }),
        ...label(keep.kind, ...seen, "middle"),
      );
    }
    for (const { name, line } of data.others) {
      const [a, b] = line;
      const way = Array.from({ length: 21 }, (_, k) =>
        at([0, 1].map((c) => a[c] + ((b[c] - a[c]) * k) / 20)),
      );
      const d = `M${way.map((p) => `${p[0].toFixed(1)} ${p[1].toFixed(1)}`).join("L")}`;
      parts.push(s("path", { class: "line halo", d }), s("path", { class: "other-line", d }));
      parts.push(...label(name, way[3][0], way[3][1] - 8));
    }
    for (const mark of data.marks) {
      const [x, y] = at(mark.at);
      parts.push(
        s("rect", { x: x - 4, y: y - 4, width: 8, height: 8, class: "pin" }),
        ...label(mark.name, x + 7, y + 4),
      );
    }
    const placed = [];
    for (const { level, at: place } of this.contours?.labels ?? []) {
      const [x, y] = at(place);
      if (this.#crowded(x, y) || placed.some(([a, b]) => Math.abs(x - a) < 46 && Math.abs(y - b) < 15))
        continue;
      placed.push([x, y]);
      parts.push(...label(show(level, units, level % 0.001 > 1e-6 ? 1 : 0), x, y, "middle", "depth-label"));
    }
    if (data.release !== "ok")
      parts.push(...label(data.release.toUpperCase(), stage.width - 10, 18, "end", "stamp-label"));
    return parts;
  }

  /** Whether a number here would run into the gap's own. */
  #crowded(x, y) {
    if (!this.#marked) return false;
    const { at, ground } = this.report.data.drive.contact,
      pin = this.stage.project(...at, ground);
    return Math.abs(x - pin[0]) < 90 && y > pin[1] - 70 && y < pin[1] + 20;
  }

  /** The gap at the worst point, drawn where it is, while the vehicle stands there. */
  #gapMark() {
    const { contact } = this.report.data.drive;
    const [x, y] = this.stage.project(...contact.at, contact.ground);
    const pin = [s("circle", { cx: x, cy: y, r: 6, class: "gap-pin" })];
    if (!this.#marked) return pin;
    const up = this.stage.flat ? y - 44 : Math.min(y - 44, this.stage.height - 40);
    return [
      s("path", { class: "gap-lead", d: `M${x} ${y}V${up}` }),
      pin,
      label(gapWords(contact.gap, this.report.units), x, up - 6, "middle", "gap-label"),
    ];
  }

  #reading() {
    const { stage, report } = this,
      out = byId("cursor");
    const read = (x, y) => {
      const place = stage.ground(x, y, report.height);
      out.textContent = place ? this.#words(place) : "";
    };
    stage.canvas.addEventListener("pointermove", (e) => {
      if (e.buttons === 0 || e.pointerType === "touch") read(e.offsetX, e.offsetY);
    });
    stage.canvas.addEventListener("pointerdown", (e) => {
      read(e.offsetX, e.offsetY);
      stage.holder.focus({ preventScroll: true });
    });
    stage.controls.enableZoom = false; // the wheel scrolls the page until the view is chosen
    stage.holder.addEventListener("focusin", () => {
      stage.controls.enableZoom = true;
    });
    stage.holder.addEventListener("focusout", () => {
      stage.controls.enableZoom = false;
    });
    stage.holder.addEventListener("keydown", (e) => {
      const turn = { ArrowLeft: [-0.1, 0], ArrowRight: [0.1, 0], ArrowUp: [0, -0.07], ArrowDown: [0, 0.07] }[
        e.key
      ];
      if (turn && (e.shiftKey || stage.flat)) stage.nudge({ pan: [turn[0] * 300, -turn[1] * 400] });
      else if (turn) stage.nudge({ turn });
      else if (e.key === "+" || e.key === "=") stage.nudge({ zoom: 1.25 });
      else if (e.key === "-") stage.nudge({ zoom: 0.8 });
      else if (e.key === "Home") stage.home();
      else return;
      e.preventDefault();
      read(stage.width / 2, stage.height / 2);
    });
  }

  #words([u, v]) {
    const { data, units, plan, height, depth, gap } = this.report;
    const [x, y] = plan.toPlan([u, v]);
    const z = height.near(u, v);
    if (Number.isNaN(z)) return `${x.toFixed(2)}, ${y.toFixed(2)} ${data.planUnit}: not measured`;
    const words = [`${x.toFixed(2)}, ${y.toFixed(2)} ${data.planUnit}`];
    const d = depth?.near(u, v),
      g = gap.near(u, v);
    if (depth && Number.isFinite(d))
      words.push(d > SHALLOWEST ? `take off ${show(d, units)}` : "nothing to take off");
    if (Number.isFinite(g))
      words.push(
        g < 0 ? `touches by ${show(-g, units)}` : `gap ${g >= 0.2999 ? "over " : ""}${show(g, units)}`,
      );
    else words.push("nothing passes over it");
    return words.join(" · ");
  }
}
