// The plan one taps on: line, marks, keep areas, and the vehicle at true size along the line.

import { announce, areaName, byId, h, s } from "./dom.js";
import { label, planGrid, scaleBar } from "./ground.js";
import { length } from "./pick_model.js";
import { driven, routeOf } from "./pick_route.js";
import { show } from "./units.js";

const TAP = { mouse: 7, touch: 12 }; // pixels that hand or finger may slip and it is still a tap
const ON = 12; // pixels from a point's middle that are the point itself: two so near each other are a mistake
const add = () => `choose Line, Mark or ${areaName()} above, then tap`;
const KEYS = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] };

/** Did a finger or hand move so far that it is no tap? */
const slipped = (e, by) => Math.hypot(...by) > (e.pointerType === "touch" ? TAP.touch : TAP.mouse);

export class PickMap {
  constructor(stage, plan, height, model, page) {
    Object.assign(this, { stage, plan, height, model, page, tool: "line", along: 0, open: [], spots: [] });
    this.layer = h("div", { class: "handles" });
    stage.holder.append(this.layer);
    stage.drawn.push(() => this.#draw());
    this.#listen();
  }

  setTool(tool) {
    if (this.open.length) this.closeArea();
    this.tool = tool;
    this.stage.holder.dataset.tool = tool;
    this.stage.request();
  }

  /** What the vehicle drives, in grid metres, as far as the points are known. */
  get route() {
    return routeOf(this.model, this.plan);
  }

  #listen() {
    const { holder, canvas } = this.stage;
    let down = null;
    canvas.addEventListener("pointerdown", (e) => {
      down = e.isPrimary ? [e.offsetX, e.offsetY] : null;
    });
    canvas.addEventListener("pointermove", (e) => {
      if (down && slipped(e, [e.offsetX - down[0], e.offsetY - down[1]])) down = null;
      this.page.read(this.plan.toPlan(this.stage.ground(e.offsetX, e.offsetY)));
    });
    canvas.addEventListener("pointerup", (e) => {
      if (down) this.tap([e.offsetX, e.offsetY]);
      down = null;
    });
    holder.addEventListener("keydown", (e) => this.#key(e));
  }

  /** Puts a point where the finger was, as the chosen tool says. */
  tap([x, y]) {
    const there = this.#pointAt(x, y);
    if (there) {
      this.tell(`Nothing was added, ${there} is here already: drag it to move it, or tap farther from it`);
      return;
    }
    const at = this.model.round(this.plan.toPlan(this.stage.ground(x, y)));
    if (this.tool === "line") {
      this.model.addPoint(at);
      this.tell(`Line point ${this.model.line.length} ${put(at)}`);
      if (this.model.line.length === 2) this.page.lineDrawn(); // a straight line is what most need
      return;
    }
    if (this.tool === "mark") {
      this.model.addMark(at);
      this.tell(`Mark ${this.model.marks.at(-1).name} ${put(at)}`);
    } else if (this.tool === "keep") {
      this.open.push(at);
      this.tell(`Corner ${this.open.length} ${put(at)}`);
    } else this.tell(`Nothing was added, “Move” is chosen: ${add()}`);
    this.model.changed();
  }

  /** The name of a point of the chosen kind that is so near that another there would be a mistake. */
  #pointAt(x, y) {
    const same = [...this.layer.children].filter((b) => b.classList.contains(this.tool));
    const near = same.find((b) => Math.hypot(b.dataset.x - x, b.dataset.y - y) < ON);
    if (near) return near.dataset.name;
    const corner = (p) => Math.hypot(this.#pixel(p)[0] - x, this.#pixel(p)[1] - y) < ON;
    const open = this.tool === "keep" ? this.open.findIndex(corner) : -1;
    return open < 0 ? "" : `corner ${open + 1}`;
  }

  /** A tap that fell on a point's button: meant for the plan under it. */
  #tapOn([x, y], name) {
    if (this.tool === "look") return this.tell(`${name}: drag it to move it. To add a point ${add()}`);
    return this.tap([x, y]);
  }

  /** Says what a tap did, or why it did nothing, where it is seen. */
  tell(text) {
    byId("tap-said").textContent = text;
    announce(text);
  }

  /** Ends the keep area being drawn. */
  closeArea() {
    if (this.open.length >= 3) {
      this.model.remember();
      (this.model.doc.keep ??= []).push({ kind: "other", area: this.open, deepest: "0 mm" });
      announce(`${areaName()} added`);
    }
    this.open = [];
    this.model.changed();
  }

  #key(e) {
    if (e.target !== this.stage.holder) return;
    const way = KEYS[e.key];
    if (way) this.stage.nudge({ pan: [way[0] * 40, way[1] * 40] });
    else if (e.key === "+" || e.key === "=") this.stage.nudge({ zoom: 1.3 });
    else if (e.key === "-") this.stage.nudge({ zoom: 1 / 1.3 });
    else if (e.key === "Home") this.stage.home();
    else if (e.key === "Enter" || e.key === " ") this.tap([this.stage.width / 2, this.stage.height / 2]);
    else return;
    e.preventDefault();
    this.page.read(this.plan.toPlan(this.stage.ground(this.stage.width / 2, this.stage.height / 2)));
  }

  #pixel(xy) {
    const [u, v] = this.plan.toGrid(xy);
    return this.stage.project(u, v, NaN);
  }

  #path(points, close = false) {
    return "M" + points.map((p) => `${p[0].toFixed(1)} ${p[1].toFixed(1)}`).join("L") + (close ? "Z" : "");
  }

  #draw() {
    const units = this.page.units;
    const parts = [planGrid(this.stage, this.plan, this.model.data.planUnit), scaleBar(this.stage, units)];
    this.model.keeps.forEach((keep, k) => {
      const corners = keep.area
        .map((p) => this.model.resolve(p))
        .filter(Boolean)
        .map((p) => this.#pixel(p));
      if (!corners.length) return;
      parts.push(s("path", { d: this.#path(corners, true), class: "keep" }));
      const middle = [0, 1].map((c) => corners.reduce((sum, p) => sum + p[c], 0) / corners.length);
      parts.push(...label(`${keep.kind || `keep ${k + 1}`}`, ...middle, "middle"));
    });
    for (const { at, sign } of this.spots) {
      const [x, y] = this.#pixelOf(at);
      parts.push(
        s("circle", { cx: x, cy: y, r: 16, class: "tight" }),
        label(sign, x, y - 22, "middle", "tight-label"),
      );
    }
    if (this.open.length)
      parts.push(s("path", { d: this.#path(this.open.map((p) => this.#pixel(p))), class: "keep open" }));
    parts.push(...this.#drawLine(units));
    if (this.stage.holder.matches(":focus-visible")) {
      const [x, y] = [this.stage.width / 2, this.stage.height / 2];
      parts.push(s("path", { class: "cross", d: `M${x - 12} ${y}H${x + 12}M${x} ${y - 12}V${y + 12}` }));
    }
    this.stage.overlay.replaceChildren(...parts.flat(Infinity));
    this.#handles();
  }

  #drawLine(units) {
    const { drawn, path, tight } = this.route;
    if (!path) return [];
    const sizes = this.model.sizes;
    const line = this.#path(this.#along(path, 0));
    const parts = [];
    if (sizes) parts.push(this.#lane(path, sizes), this.#vehicle(path, sizes));
    if (sizes && path.pieces.length > 1) parts.push(...this.#corners(path, sizes));
    if (drawn.length > 2)
      parts.push(s("path", { d: this.#path(drawn.map((p) => this.#pixelOf(p))), class: "drawn" }));
    parts.push(s("path", { d: line, class: "halo line" }), s("path", { d: line, class: "line" }));
    if (tight) {
      const [x, y] = this.#pixelOf(drawn[tight.corner]);
      parts.push(
        s("circle", { cx: x, cy: y, r: 20, class: "tight" }),
        label("too tight", x, y - 26, "middle", "tight-label"),
      );
    }
    const end = path.place(path.long),
      tip = this.#pixelOf(end.at),
      angle = -end.yaw;
    const barb = (turn) => [tip[0] - 13 * Math.cos(angle + turn), tip[1] - 13 * Math.sin(angle + turn)];
    parts.push(s("path", { d: this.#path([barb(0.45), tip, barb(-0.45)]), class: "line" }));
    const middle = this.#pixelOf(path.place(path.long / 2).at);
    parts.push(label(show(path.long, units), middle[0], middle[1] - 8, "middle"));
    return parts;
  }

  #pixelOf([u, v]) {
    return this.stage.project(u, v, NaN);
  }

  /** Pixels along the path, `left` metres to its left. */
  #along(path, left) {
    const straight = path.pieces.length === 1;
    const n = straight ? 1 : Math.ceil(path.long / 0.1);
    return Array.from({ length: n + 1 }, (_, k) => {
      const { at, way } = path.place((path.long * k) / n);
      return this.#pixelOf([at[0] - way[1] * left, at[1] + way[0] * left]);
    });
  }

  /** The ground the vehicle may cover: its width and the wander to each side. */
  #lane(path, sizes) {
    const wander = this.model.metres("travel.wander") || 0;
    const half = sizes.width / 2 + wander;
    return s("path", {
      d: this.#path([...this.#along(path, half), ...this.#along(path, -half).reverse()], true),
      class: "lane",
    });
  }

  /** Where the four corners of the body go: in a bend the nose swings wider than the lane. */
  #corners(path, z) {
    const far = driven(path, z),
      n = Math.max(Math.ceil(far / 0.1), 1);
    const ends = [z.wheelbase + (z.front || z.radius), -(z.rear || z.radius)];
    return ends.flatMap((x) =>
      [z.width / 2, -z.width / 2].map((y) => {
        const trace = Array.from({ length: n + 1 }, (_, k) => {
          const { at, way } = path.place((far * k) / n);
          return this.#pixelOf([at[0] + way[0] * x - way[1] * y, at[1] + way[1] * x + way[0] * y]);
        });
        return s("path", { d: this.#path(trace), class: "corner" });
      }),
    );
  }

  #vehicle(path, z) {
    const { at, way } = path.place(this.along * driven(path, z));
    const corner = (x, y) =>
      this.#pixelOf([at[0] + way[0] * x - way[1] * y, at[1] + way[1] * x + way[0] * y]);
    const box = (x0, x1, y0, y1) =>
      this.#path([corner(x0, y0), corner(x1, y0), corner(x1, y1), corner(x0, y1)], true);
    const nose = z.wheelbase + (z.front || z.radius),
      tail = -(z.rear || z.radius),
      half = z.width / 2,
      cut = Math.min(0.18, half / 3);
    const body = this.#path(
      [
        corner(tail, -half),
        corner(nose - cut, -half),
        corner(nose, -half + 1.6 * cut),
        corner(nose, half - 1.6 * cut),
        corner(nose - cut, half),
        corner(tail, half),
      ],
      true,
    );
    const wheels = [
      [z.wheelbase, z.frontTrack],
      [0, z.rearTrack],
    ].flatMap(([x, track]) =>
      [1, -1].map((side) =>
        s("path", {
          d: box(
            x - z.radius,
            x + z.radius,
            (side * track) / 2 - z.tyre / 2,
            (side * track) / 2 + z.tyre / 2,
          ),
          class: "tyre",
        }),
      ),
    );
    return [
      s("path", { d: body, class: "body" }),
      ...wheels,
      s("path", {
        class: "axle",
        d: `${this.#path([corner(0, -z.rearTrack / 2), corner(0, z.rearTrack / 2)])}${this.#path([corner(z.wheelbase, -z.frontTrack / 2), corner(z.wheelbase, z.frontTrack / 2)])}`,
      }),
    ];
  }

  /** One button a point: dragged by finger or mouse, moved by arrow keys, taken away by Delete. */
  #handles() {
    const wanted = [];
    this.model.line.forEach((p, k) =>
      wanted.push({
        key: `line-${k}`,
        name: `Line point ${k + 1}`,
        sign: `${k + 1}`,
        point: p,
        list: "line",
        k,
      }),
    );
    this.model.marks.forEach((m, k) =>
      wanted.push({ key: `mark-${k}`, name: `Mark ${m.name}`, sign: m.name, point: m.at, list: "mark", k }),
    );
    this.model.keeps.forEach((keep, k) =>
      keep.area.forEach((p, c) =>
        wanted.push({
          key: `keep-${k}-${c}`,
          name: `${areaName()} ${k + 1}, corner ${c + 1}`,
          sign: "",
          point: p,
          list: "keep",
          k,
          c,
        }),
      ),
    );
    const have = new Map([...this.layer.children].map((b) => [b.dataset.key, b]));
    for (const item of wanted) {
      const at = this.model.resolve(item.point);
      if (!at) continue;
      const button = have.get(item.key) ?? this.#handle(item);
      have.delete(item.key);
      const [x, y] = this.#pixel(at);
      button.style.transform = `translate(${x}px, ${y}px)`;
      button.setAttribute(
        "aria-label",
        `${item.name} at ${at.join(", ")}; arrow keys move it, Delete takes it away`,
      );
      button.firstChild.textContent = item.sign;
      Object.assign(button.dataset, { name: item.name, x, y });
      if (!button.isConnected) this.layer.append(button);
    }
    for (const left of have.values()) left.remove();
  }

  #handle({ key, list, k, c }) {
    const button = h("button", { type: "button", class: `handle ${list}`, "data-key": key }, h("span"));
    const move = (at) => {
      const point = this.model.round(at);
      if (list === "line") this.model.line[k] = point;
      else if (list === "mark") this.model.marks[k].at = point;
      else this.model.keeps[k].area[c] = point;
      this.model.changed();
    };
    const here = () =>
      this.model.resolve(
        list === "line"
          ? this.model.line[k]
          : list === "mark"
            ? this.model.marks[k].at
            : this.model.keeps[k].area[c],
      );
    let down = null,
      dragged = false;
    const inside = (e) => {
      const box = this.stage.holder.getBoundingClientRect();
      return [e.clientX - box.left, e.clientY - box.top];
    };
    button.addEventListener("pointerdown", (e) => {
      down = inside(e);
      dragged = false;
      button.setPointerCapture(e.pointerId);
    });
    button.addEventListener("pointermove", (e) => {
      if (!down || !button.hasPointerCapture(e.pointerId)) return;
      const at = inside(e);
      if (!dragged) {
        if (!slipped(e, [at[0] - down[0], at[1] - down[1]])) return;
        dragged = true;
        this.model.remember();
      }
      move(this.plan.toPlan(this.stage.ground(...at)));
      this.page.read(here());
    });
    button.addEventListener("pointerup", (e) => {
      if (down && !dragged) this.#tapOn(inside(e), button.dataset.name);
      down = null;
    });
    button.addEventListener("pointercancel", () => {
      down = null;
    });
    button.addEventListener("keydown", (e) => {
      const way = KEYS[e.key];
      const step = e.shiftKey ? 0.1 : 0.01; // metres
      if (way) move(here().map((value, axis) => value + (way[axis] * step) / this.model.scale[axis]));
      else if (e.key === "Delete" || e.key === "Backspace") {
        if (list === "keep" && this.model.keeps[k].area.length > 3) {
          this.model.remember();
          this.model.keeps[k].area.splice(c, 1);
          this.model.changed();
        } else this.model.drop(list, k);
        this.stage.holder.focus();
      } else return;
      e.preventDefault();
    });
    return button;
  }
}

/** Where a tap put a point: in figures for whoever writes a job file, and not where the plan itself is all that is asked for. */
function put(at) {
  return document.documentElement.dataset.page === "open" ? "put" : `put at ${at.join(", ")}`;
}
