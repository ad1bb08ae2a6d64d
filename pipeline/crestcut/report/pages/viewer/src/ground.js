// The slab as a mesh, the lines of equal depth on it, and ruler and grid over it.

import {
  BufferAttribute,
  BufferGeometry,
  CanvasTexture,
  DoubleSide,
  LineBasicMaterial,
  LineSegments,
  LinearFilter,
  Mesh,
  MeshBasicMaterial,
  PlaneGeometry,
  SRGBColorSpace,
} from "three";
import { contours } from "d3-contour";
import Delatin from "delatin";
import { roundStep, s } from "./dom.js";
import { inches, metric } from "./units.js";

const STRAY = 0.0015; // m the drawn triangles may leave the heights by; figures never come from them
// the line of travel is drawn as if a little nearer than it is, so that it never sinks into the triangles below it
const IN_FRONT = { polygonOffset: true, polygonOffsetFactor: -3, polygonOffsetUnits: -32 };
const MOST_CORNERS = 20_000;
const MOST_CORNERS_SLOW = 2500; // keeps the slider smooth where there is no graphics card

/** Heights with every hole filled from the nearest measured node on its row or column: only to carry the see-through paint. */
function filled(raster) {
  const { nx, ny } = raster,
    z = Float32Array.from(raster.values);
  const sweep = (start, step, n) => {
    let last = NaN;
    for (let k = 0, at = start; k < n; k++, at += step) {
      if (Number.isNaN(z[at])) z[at] = last;
      else last = z[at];
    }
  };
  for (let j = 0; j < ny; j++) {
    sweep(j * nx, 1, nx);
    sweep(j * nx + nx - 1, -1, nx);
  }
  for (let i = 0; i < nx; i++) {
    sweep(i, nx, ny);
    sweep(i + (ny - 1) * nx, -nx, ny);
  }
  return z.map((value) => (Number.isNaN(value) ? 0 : value));
}

/** The slab as triangles that stray from the heights by little more than a millimetre. Colour, relief and holes are painted on it. */
export class GroundMesh {
  constructor(stage, raster) {
    this.stage = stage;
    this.material = new MeshBasicMaterial({ alphaTest: 0.5 });
    this.mesh = new Mesh(this.#lay(raster), this.material);
    const hidden = new MeshBasicMaterial({ colorWrite: false, side: DoubleSide });
    stage.fixed.push({
      glide: () => (this.mesh.material = hidden),
      rest: () => (this.mesh.material = this.material),
    });
    stage.world.add(this.mesh);
  }

  #lay(raster) {
    const { nx, ny, cell } = raster,
      z = filled(raster);
    const most = this.stage.slow ? MOST_CORNERS_SLOW : MOST_CORNERS;
    const net = new Delatin(z, nx, ny);
    while (net.getMaxError() > STRAY && net.coords.length < 2 * most) net.refine();
    const n = net.coords.length / 2;
    const position = new Float32Array(3 * n),
      uv = new Float32Array(2 * n);
    for (let k = 0; k < n; k++) {
      const i = net.coords[2 * k],
        j = net.coords[2 * k + 1];
      position.set(
        [
          i * cell - this.stage.size[0] / 2,
          j * cell - this.stage.size[1] / 2,
          z[j * nx + i] - this.stage.level,
        ],
        3 * k,
      );
      uv.set([(i + 0.5) / nx, (j + 0.5) / ny], 2 * k);
    }
    const geometry = new BufferGeometry();
    geometry.setAttribute("position", new BufferAttribute(position, 3));
    geometry.setAttribute("uv", new BufferAttribute(uv, 2));
    geometry.setIndex(new BufferAttribute(new Uint32Array(net.triangles), 1));
    this.material.side = DoubleSide;
    return geometry;
  }

  /** Puts a painted canvas on the mesh. */
  wear(canvas) {
    this.material.map?.dispose();
    this.material.map = textureOf(canvas);
    this.material.needsUpdate = true;
    this.stage.request();
  }
}

/** A band on the ground along a line of grid points: the line of travel. */
export function layBand(stage, raster, points, wide, colour) {
  const position = [],
    faces = [];
  const places = points.flatMap((p, k) => (k ? split(points[k - 1], p) : [p]));
  places.forEach(([u, v], k) => {
    const a = places[Math.max(k - 1, 0)],
      b = places[Math.min(k + 1, places.length - 1)];
    const long = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1,
      across = [-(b[1] - a[1]) / long, (b[0] - a[0]) / long];
    const z = raster.at(u, v);
    for (const side of [wide / 2, -wide / 2]) {
      position.push(
        u + across[0] * side - stage.size[0] / 2,
        v + across[1] * side - stage.size[1] / 2,
        (Number.isNaN(z) ? stage.level : z) - stage.level + 0.01,
      );
    }
    if (k && Number.isFinite(z)) faces.push(2 * k - 2, 2 * k - 1, 2 * k, 2 * k - 1, 2 * k + 1, 2 * k);
  });
  const geometry = new BufferGeometry();
  geometry.setAttribute("position", new BufferAttribute(new Float32Array(position), 3));
  geometry.setIndex(faces);
  const band = new Mesh(geometry, new MeshBasicMaterial({ color: colour, side: DoubleSide, ...IN_FRONT }));
  stage.world.add(band);
  hideInGlide(stage, band);
}

/** Leaves an object to the still picture while only the vehicle moves. */
function hideInGlide(stage, object) {
  stage.fixed.push({ glide: () => (object.visible = false), rest: () => (object.visible = true) });
}

function split(a, b) {
  const n = Math.max(1, Math.ceil(Math.hypot(b[0] - a[0], b[1] - a[1]) / 0.1));
  return Array.from({ length: n }, (_, k) => [0, 1].map((c) => a[c] + ((b[c] - a[c]) * (k + 1)) / n));
}

/** An outline laid on the ground: [u, v, height] along its rim, cut off where the heights end. */
export function drape(ring, raster) {
  const z = filled(raster),
    wide = (raster.nx - 1) * raster.cell,
    high = (raster.ny - 1) * raster.cell;
  const kept = [
    [0, 0, 1],
    [0, wide, -1],
    [1, 0, 1],
    [1, high, -1],
  ].reduce((points, [axis, limit, sign]) => clip(points, axis, limit, sign), ring);
  return kept.flatMap((a, k) => {
    const along = split(a, kept[(k + 1) % kept.length]);
    return along.map(([u, v]) => {
      const i = Math.round(u / raster.cell),
        j = Math.round(v / raster.cell);
      return [u, v, z[j * raster.nx + i]];
    });
  });
}

/** The part of an outline where sign x (coordinate - limit) >= 0 (one step of Sutherland and Hodgman's clipping, 1974). */
function clip(points, axis, limit, sign) {
  const inside = (p) => sign * (p[axis] - limit) >= 0;
  return points.flatMap((b, k) => {
    const a = points.at(k - 1);
    if (inside(a) === inside(b)) return inside(b) ? [b] : [];
    const t = (limit - a[axis]) / (b[axis] - a[axis]);
    const meet = [0, 1].map((c) => (c === axis ? limit : a[c] + t * (b[c] - a[c])));
    return inside(b) ? [meet, b] : [meet];
  });
}

/** The plan as one textured sheet (for the page that only looks from above). */
export function layPlan(stage, canvas) {
  stage.backdrop = canvas;
  const sheet = new Mesh(
    new PlaneGeometry(...stage.size),
    new MeshBasicMaterial({ map: textureOf(canvas), transparent: true }),
  );
  stage.world.add(sheet);
  stage.request();
}

function textureOf(canvas) {
  const texture = new CanvasTexture(canvas);
  texture.colorSpace = SRGBColorSpace;
  texture.minFilter = LinearFilter;
  texture.generateMipmaps = false;
  return texture;
}

/** Steps between contour lines of depth: at most about five lines, in the reader's unit. */
export function contourLevels(deepest, units) {
  if (!(deepest > 0.0002)) return [];
  const sixteenth = 0.0254 / 16;
  const step =
    units === "inches"
      ? ([0.5, 1, 2, 4, 8].map((n) => n * sixteenth).find((n) => deepest / n <= 6) ?? 16 * sixteenth)
      : roundStep(deepest / 6);
  const levels = [];
  for (let k = 1; k * step < deepest * 0.995; k++) levels.push(k * step);
  return levels;
}

/** Lines of equal depth with numbers: 3D segments just over the ground, and labels at the longest loop of each level. */
export class ContourLines {
  constructor(stage, height) {
    this.stage = stage;
    this.height = height;
    this.lines = new LineSegments(new BufferGeometry(), new LineBasicMaterial({ color: 0x1c1917 }));
    this.labels = [];
    stage.world.add(this.lines);
    hideInGlide(stage, this.lines);
  }

  draw(values, levels) {
    const { nx, ny, cell } = this.height;
    const filled = Float64Array.from(values, (d) => (Number.isNaN(d) ? 0 : d));
    const points = [];
    this.labels = [];
    for (const band of contours().size([nx, ny]).thresholds(levels)(filled)) {
      const rings = band.coordinates
        .flat()
        .map((ring) => ring.map(([a, b]) => [(a - 0.5) * cell, (b - 0.5) * cell]));
      for (const ring of rings) {
        for (let k = 1; k < ring.length; k++) points.push(...this.#lift(ring[k - 1]), ...this.#lift(ring[k]));
      }
      const longest = rings.reduce((a, b) => (b.length > (a?.length ?? 0) ? b : a), null);
      if (longest && longest.length > 12)
        this.labels.push({
          level: band.value,
          at: longest[Math.floor(longest.length * (0.12 + 0.09 * this.labels.length)) % longest.length],
        });
    }
    this.lines.geometry.setAttribute("position", new BufferAttribute(new Float32Array(points), 3));
    this.lines.geometry.computeBoundingSphere();
    this.stage.request();
  }

  #lift([u, v]) {
    const z = this.height.at(u, v);
    return [
      u - this.stage.size[0] / 2,
      v - this.stage.size[1] / 2,
      (Number.isNaN(z) ? 0 : z - this.stage.level) + 0.004,
    ];
  }
}

/** A scale bar in the lower left corner: a round length in the reader's unit. */
export function scaleBar(stage, units) {
  const per = stage.metresPerPixel();
  const unit = units === "inches" ? 0.3048 : 1;
  const long = roundStep((70 * per) / unit) * unit;
  const wide = long / per,
    y = stage.height - 16;
  const text = units === "inches" ? inches(long, 8) : long >= 1 ? `${+long.toFixed(2)} m` : metric(long, 0);
  return s(
    "g",
    { class: "scale" },
    s("path", { d: `M14 ${y - 6}V${y}H${14 + wide}V${y - 6}`, class: "halo" }),
    s("path", { d: `M14 ${y - 6}V${y}H${14 + wide}V${y - 6}` }),
    label(text, 14 + wide / 2, y - 9, "middle"),
  );
}

/** Text with a halo, so that it reads on any ground. */
export function label(text, x, y, anchor = "start", kind = "") {
  const both = { x: x.toFixed(1), y: y.toFixed(1), "text-anchor": anchor };
  return [s("text", { ...both, class: "halo" }, text), s("text", { ...both, class: kind }, text)];
}

/** Coordinate lines of the scan's own plan over a view from above, with numbers at the rim. */
export function planGrid(stage, plan, unit) {
  const corners = [
    [0, 0],
    [stage.width, 0],
    [stage.width, stage.height],
    [0, stage.height],
  ].map(([x, y]) => plan.toPlan(stage.ground(x, y)));
  const xs = corners.map((c) => c[0]),
    ys = corners.map((c) => c[1]);
  const box = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const step = roundStep(((box[1] - box[0]) / stage.width) * 90);
  const group = s("g", { class: "grid" });
  const digits = Math.max(0, -Math.floor(Math.log10(step)));
  const pixel = (x, y) => {
    const [u, v] = plan.toGrid([x, y]);
    return stage.project(u, v, NaN);
  };
  for (let x = Math.ceil(box[0] / step) * step; x <= box[1]; x += step) {
    const a = pixel(x, box[2]),
      b = pixel(x, box[3]);
    group.append(
      s("path", { d: `M${a[0]} ${a[1]}L${b[0]} ${b[1]}` }),
      ...label(x.toFixed(digits), a[0] + 3, 12),
    );
  }
  for (let y = Math.ceil(box[2] / step) * step; y <= box[3]; y += step) {
    const a = pixel(box[0], y),
      b = pixel(box[1], y);
    group.append(s("path", { d: `M${a[0]} ${a[1]}L${b[0]} ${b[1]}` }));
    if (a[1] > 26) group.append(...label(`${y.toFixed(digits)}${unit ? ` ${unit}` : ""}`, 4, a[1] - 3));
  }
  return group;
}
