// The slab cut open along the vehicle: the whole side view true to scale, and the tight place magnified.

import { sideShape } from "./car.js";
import { roundStep, s } from "./dom.js";
import { show } from "./units.js";

let made = 0; // counts what needs a name of its own in the page

/** Heights along the vehicle at station k, y left of its middle: {x, before, ground, finished, under}; NaN or null where there is none. */
function section(report, k, y, from, to, step, after = false) {
  const { drive, height, depth } = report;
  const [cx, cy] = drive.ahead(k),
    start = drive.point(k, [0, y, 0]);
  const rows = [];
  for (let x = from; x <= to + 1e-9; x += step) {
    const u = start[0] + cx * x,
      v = start[1] + cy * x;
    const ground = height.at(u, v),
      cut = depth ? depth.at(u, v) : 0;
    const finished = ground - (Number.isNaN(cut) ? 0 : cut);
    rows.push({
      x,
      before: ground,
      ground: after ? finished : ground,
      finished,
      under: drive.underside(k, x, y),
    });
  }
  return rows;
}

class Scale {
  constructor({ left, right, low, high, wide, tall, pad }) {
    Object.assign(this, { left, low, tall, pad });
    this.sx = (wide - 2 * pad) / (right - left);
    this.sz = (tall - 2 * pad) / (high - low);
  }

  x(value) {
    return this.pad + (value - this.left) * this.sx;
  }
  z(value) {
    return this.tall - this.pad - (value - this.low) * this.sz;
  }

  path(points) {
    let d = "",
      pen = false;
    for (const [x, z] of points) {
      if (!Number.isFinite(z)) {
        pen = false;
        continue;
      }
      d += `${pen ? "L" : "M"}${this.x(x).toFixed(1)} ${this.z(z).toFixed(1)}`;
      pen = true;
    }
    return d;
  }
}

/** The whole vehicle from its right-hand side, wheels on the ground, nothing stretched. */
export function sideView(report, k, y, wide, { brisk, after }) {
  const { drive } = report,
    { wheelbase, radius, overhangs } = drive.vehicle;
  const ends = drive.vehicle.parts.flatMap((p) => p.x);
  const from = Math.min(-(overhangs[1] ?? 0), -radius, ...ends) - 0.35,
    to = wheelbase + Math.max(overhangs[0] ?? 0, radius, ...ends.map((x) => x - wheelbase)) + 0.35;
  const rows = section(report, k, y, from, to, brisk ? 0.05 : 0.02, after);
  const hubs = [0, 1, 2, 3].map((w) => drive.hub(k, w)[2]);
  const known = rows.map((r) => r.ground).filter(Number.isFinite);
  const low = Math.min(...known, ...hubs.map((z) => z - radius)) - 0.16,
    high = Math.max(...known, ...hubs.map((z) => z + radius), ...roof(drive, k)) + 0.1;
  const pad = 6,
    tall = Math.max(90, ((wide - 2 * pad) * (high - low)) / (to - from) + 2 * pad);
  const c = new Scale({ left: from, right: to, low, high, wide, tall, pad });
  const svg = s("svg", {
    viewBox: `0 0 ${wide} ${tall.toFixed(0)}`,
    width: wide,
    height: tall.toFixed(0),
    role: "img",
    "aria-label": `Side view at station ${drive.stations[k].toFixed(2)} m, true to scale`,
  });
  if (!brisk) svg.append(s("path", { d: outline(c, drive, k), class: "outline" }));
  svg.append(...earth(c, rows, low, brisk));
  for (const w of [0, 1, 2, 3]) {
    // the vehicle's own x of the hub in plan
    const near = w % 2 === (y > 0 ? 0 : 1);
    const x = w < 2 ? wheelbase : 0;
    svg.append(
      s("circle", { cx: c.x(x), cy: c.z(hubs[w]), r: radius * c.sx, class: near ? "wheel" : "wheel far" }),
    );
  }
  svg.append(
    s("path", { d: c.path(rows.map((r) => [r.x, r.under ? r.under.height : NaN])), class: "floorpan" }),
  );
  const tight = tightest(rows);
  if (tight)
    svg.append(
      s("rect", {
        x: c.x(tight.x - 0.35),
        y: c.z(tight.ground + 0.09),
        width: 0.7 * c.sx,
        height: 0.18 * c.sz,
        class: "lens",
        rx: 4,
      }),
    );
  return svg;
}

const roof = (drive, k) => sideShape(drive.vehicle).map(([x, z]) => drive.point(k, [x, 0, z])[2]);

/** The body from the side, only hinted at: the same plain shape as in the turned view. */
function outline(c, drive, k) {
  const start = drive.point(k, [0, 0, 0]),
    [cx, cy] = drive.ahead(k);
  const points = sideShape(drive.vehicle).map(([x, z]) => {
    const [u, v, height] = drive.point(k, [x, 0, z]);
    return [(u - start[0]) * cx + (v - start[1]) * cy, height];
  });
  return `${c.path(points)}Z`;
}

/** Slanted lines that fill what the cut takes off. */
function hatch() {
  const id = `hatch-${(made += 1)}`;
  const pattern = s(
    "pattern",
    { id, width: 7, height: 7, patternUnits: "userSpaceOnUse" },
    s("rect", { width: 7, height: 7, fill: "#e9c6d6" }),
    s("path", { class: "hatch", d: "M-2 9L9 -2M-2 2L2 -2M5 9L9 5" }),
  );
  return { id, pattern };
}

/** The ground as filled concrete with what is cut hatched on top (plain while `brisk`: patterns are slow to draw). */
function earth(c, rows, low, brisk) {
  const runs = [];
  let run = [];
  for (const r of [...rows, { ground: NaN }]) {
    if (Number.isFinite(r.ground)) run.push(r);
    else {
      if (run.length > 1) runs.push(run);
      run = [];
    }
  }
  const { id, pattern } = brisk ? {} : hatch();
  return [
    pattern,
    ...runs.flatMap((part) => {
      const base = [
        [part.at(-1).x, low],
        [part[0].x, low],
      ];
      const solid = s("path", {
        d: `${c.path([...part.map((r) => [r.x, r.finished]), ...base])}Z`,
        class: "earth",
      });
      const cut = part.some((r) => r.ground - r.finished > 5e-5)
        ? s("path", {
            d: `${c.path([...part.map((r) => [r.x, r.ground]), ...part.map((r) => [r.x, r.finished]).reverse()])}Z`,
            class: "cut",
            fill: id ? `url(#${id})` : "#b5708f",
          })
        : null;
      return [
        solid,
        cut,
        s("path", { d: c.path(part.map((r) => [r.x, r.ground])), class: "ground-line" }),
      ].filter(Boolean);
    }),
  ].filter(Boolean);
}

function tightest(rows) {
  let best = null;
  for (const r of rows) {
    if (!r.under || !Number.isFinite(r.ground)) continue;
    const gap = r.under.height - r.ground;
    if (!best || gap < best.gap) best = { ...r, gap };
  }
  return best;
}

/** The tight place, heights stretched: ground, cut, underside, the gap with its figure. `exact`: the gap the program found here, if known. */
export function closeUp(report, k, y, wide, units, exact, { brisk, after }) {
  const wheelbase = report.drive.vehicle.wheelbase;
  const all = section(report, k, y, -1.5, wheelbase + 1.5, brisk ? 0.04 : 0.02, after);
  const known = !after && report.drive.worst === k && report.atWorst?.y === y;
  const { x: at } = report.atWorst;
  const tight = (known && section(report, k, y, at, at, 1)[0]) || tightest(all);
  if (!tight?.under || !Number.isFinite(tight.ground)) return null;
  const half = wide < 480 ? 0.45 : 0.7;
  const rows = section(report, k, y, tight.x - half, tight.x + half, brisk ? 0.03 : 0.01, after);
  const gap = exact ?? tight.under.height - tight.ground;
  const heights = rows
    .flatMap((r) => [r.before, r.finished, Math.abs(r.x - tight.x) < half ? r.under?.height : NaN])
    .filter(Number.isFinite);
  const middle = (tight.ground + tight.under.height) / 2;
  const reach =
    Math.min(Math.max(...heights.map((z) => Math.abs(z - middle)), Math.abs(gap) * 1.4, 0.012), 0.06) * 1.25;
  const tall = Math.min(240, wide * 0.5);
  const c = new Scale({
    left: tight.x - half,
    right: tight.x + half,
    low: middle - reach,
    high: middle + reach,
    wide,
    tall,
    pad: 0,
  });
  const stretch = c.sz / c.sx;
  const id = `clip-${(made += 1)}`;
  const inside = s(
    "g",
    { "clip-path": `url(#${id})` },
    earth(c, rows, middle - 3 * reach, brisk),
    after && s("path", { d: c.path(rows.map((r) => [r.x, r.before])), class: "as-was" }),
    s("path", { d: c.path(rows.map((r) => [r.x, r.under ? r.under.height : NaN])), class: "floorpan" }),
  );
  const x = c.x(tight.x),
    under = tight.under.height,
    top = c.z(Math.max(under, under - gap)),
    bottom = c.z(Math.min(under, under - gap));
  const svg = s(
    "svg",
    {
      viewBox: `0 0 ${wide} ${tall.toFixed(0)}`,
      width: wide,
      height: tall.toFixed(0),
      role: "img",
      "aria-label": `The tight place, heights stretched: ${gapWords(gap, units)}`,
    },
    s("clipPath", { id }, s("rect", { width: wide, height: tall })),
    inside,
    s("path", {
      class: "dimension",
      d: `M${x - 9} ${top}H${x + 9}M${x - 9} ${bottom}H${x + 9}M${x} ${Math.min(top, bottom) - 12}V${Math.max(top, bottom) + 12}`,
    }),
  );
  svg.append(...text(gapWords(gap, units), x + 14, Math.max(18, top - 8), wide));
  svg.append(...text(tight.under.part, 8, 18, wide));
  const bar = barOf(c, units, tall);
  svg.append(...bar);
  return { svg, stretch, gap };
}

function text(words, x, y, wide) {
  const right = x + words.length * 8.2 > wide; // about the width of the letters
  const at = { x: (right ? x - 28 : x).toFixed(1), y: y.toFixed(1), "text-anchor": right ? "end" : "start" };
  return [s("text", { ...at, class: "halo" }, words), s("text", at, words)];
}

/** Upright and level bars for the two scales. */
function barOf(c, units, tall) {
  const unit = units === "inches" ? 0.0254 : 0.001;
  const up = roundStep(34 / c.sz / unit) * unit,
    along =
      roundStep(50 / c.sx / (units === "inches" ? 0.0254 : 0.01)) * (units === "inches" ? 0.0254 : 0.01);
  const y = tall - 10,
    x = 12;
  return [
    s("path", { class: "dimension thin", d: `M${x} ${y - up * c.sz}V${y}H${x + along * c.sx}` }),
    ...text(`${show(up, units, 0)} up, ${show(along, units, 0)} along`, x + along * c.sx + 6, y, 1e6),
  ];
}

export function gapWords(gap, units) {
  if (!Number.isFinite(gap)) return "no gap known";
  return gap < 0 ? `${show(-gap, units)} into the slab` : `${show(gap, units)} gap`;
}
