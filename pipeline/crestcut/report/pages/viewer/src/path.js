// The line as the vehicle drives it: straight pieces joined by arcs no tighter than it turns. The same geometry as contact/path/path.py,
// which decides; a test holds the two to each other.

const CORNER_CUT = 0.05; // m: a gentle corner may be rounded by this much
const STRAIGHT = 1e-6; // rad: no corner at all

/** A bend that the vehicle cannot drive: `corner` is the index of the drawn point, `leaves` and `needs` are radii in metres. */
export class TooTight extends Error {
  constructor(corner, leaves, needs) {
    super(`bend ${corner} leaves ${leaves}, ${needs} needed`);
    Object.assign(this, { corner, leaves, needs });
  }
}

/**
 * Tightest curve of the rear axle's middle, metres; null where the turning radius is not known, NaN where it is impossible.
 * The wheels roll about one point on the rear axle's line: outer² = (r + half width)² + wheelbase².
 */
export function leastRadius({ turning, wheelbase, frontTrack, tyre }) {
  if (!Number.isFinite(turning)) return null;
  const inner = turning ** 2 - wheelbase ** 2;
  const radius = inner > 0 ? Math.sqrt(inner) - (frontTrack + tyre) / 2 : -1;
  return radius > 0 ? radius : NaN;
}

/** The drawn points moved `left` metres to their left, corners mitred: the middle of a vehicle whose wheel was drawn. */
export function beside(points, left) {
  const p = distinct(points).map(({ at }) => at);
  const normals = legs(p).map(({ way }) => [-way[1], way[0]]);
  return p.map((at, k) => {
    const a = normals[Math.max(k - 1, 0)],
      b = normals[Math.min(k, normals.length - 1)];
    const share = left / Math.max(1 + a[0] * b[0] + a[1] * b[1], 0.1);
    return [0, 1].map((c) => at[c] + share * (a[c] + b[c]));
  });
}

/** Straight pieces and arcs end to end: places along them by distance from the start. */
export class Path {
  /** points: [x, y] in metres, two or more.  least: the tightest radius the vehicle drives, or null. Throws TooTight. */
  constructor(points, least = null) {
    const kept = distinct(points);
    const p = kept.map(({ at }) => at);
    const straight = legs(p);
    const turn = straight.slice(1).map((leg, k) => wrapped(leg.yaw - straight[k].yaw));
    const radii = arcs(turn, straight, least, kept);
    this.tightest = Math.min(Infinity, ...radii);
    this.pieces = [];
    this.long = 0;
    let yaw = straight[0]?.yaw ?? 0;
    straight.forEach((leg, k) => {
      const taken = (corner) =>
        Number.isFinite(radii[corner] ?? Infinity) ? radii[corner] * Math.tan(Math.abs(turn[corner]) / 2) : 0;
      const before = taken(k - 1),
        after = taken(k);
      this.#lay(p[k], leg.way, before, yaw, Math.max(leg.long - before - after, 0), 0);
      if (after > 0)
        this.#lay(
          p[k],
          leg.way,
          leg.long - after,
          yaw,
          Math.abs(turn[k]) * radii[k],
          Math.sign(turn[k]) / radii[k],
        );
      yaw += turn[k] ?? 0;
    });
  }

  #lay(from, way, ahead, yaw, long, bend) {
    this.pieces.push({
      at: [from[0] + ahead * way[0], from[1] + ahead * way[1]],
      yaw,
      long,
      bend,
      start: this.long,
    });
    this.long += long;
  }

  /** Place and heading (radians, and as a unit vector) at a distance from the start; beyond the ends straight on. */
  place(distance) {
    const ends = (q) => q.start + q.long >= distance - 1e-12;
    const piece = this.pieces.find(ends) ?? this.pieces.at(-1);
    const t = distance - piece.start;
    const beyond = t < 0 || t > piece.long + 1e-9;
    const inside = Math.min(Math.max(t, 0), piece.long);
    const a = inside * piece.bend,
      yaw = piece.yaw + a;
    // a chord of the arc: length 2 sin(a / 2) / curvature, turned by half of a
    const chord = a ? (2 * Math.sin(a / 2)) / piece.bend : inside;
    const way = [Math.cos(yaw), Math.sin(yaw)],
      rest = beyond ? t - inside : 0;
    const at = [
      piece.at[0] + chord * Math.cos(piece.yaw + a / 2) + rest * way[0],
      piece.at[1] + chord * Math.sin(piece.yaw + a / 2) + rest * way[1],
    ];
    return { at, way, yaw };
  }
}

/** Rows [x, y, heading] at every `step` metres of the path: what contact/path/path.py calls drivable. */
export function drivable(points, least, step) {
  const path = new Path(points, least);
  const n = Math.floor(path.long / step + 1e-9);
  return Array.from({ length: n + 1 }, (_, k) => {
    const { at, yaw } = path.place(k * step);
    return [...at, yaw];
  });
}

/** The points without repeats, each with its index in the drawn line. */
function distinct(points) {
  return points
    .map((at, index) => ({ at, index }))
    .filter(({ at }, k) => k === 0 || Math.hypot(at[0] - points[k - 1][0], at[1] - points[k - 1][1]) > 1e-9);
}

function legs(p) {
  return p.slice(1).map((b, k) => {
    const dx = b[0] - p[k][0],
      dy = b[1] - p[k][1],
      long = Math.hypot(dx, dy);
    return { long, yaw: Math.atan2(dy, dx), way: [dx / long, dy / long] };
  });
}

/** An angle in (-pi, pi]. */
function wrapped(angle) {
  const turns = angle - 2 * Math.PI * Math.floor((angle + Math.PI) / (2 * Math.PI));
  return turns === -Math.PI && angle > 0 ? Math.PI : turns;
}

/** Radius at every inner point, metres. An arc takes radius x tan(turn / 2) of both legs beside it. */
function arcs(turn, straight, least, kept) {
  const half = turn.map((a) => Math.tan(Math.min(Math.abs(a), Math.PI - 1e-6) / 2));
  const bends = turn.map((a) => Math.abs(a) > STRAIGHT);
  const need = half.map((t, k) => (bends[k] ? t * (least ?? 0) : 0));
  const around = [0, ...need, 0];
  const spare = straight.map((leg, k) => leg.long - around[k] - around[k + 1]);
  const worst = spare.indexOf(Math.min(...spare));
  if (spare[worst] < -1e-9) {
    const corner = around[worst] >= around[worst + 1] ? worst : worst + 1;
    const leaves = (least * straight[worst].long) / (around[worst] + around[worst + 1]);
    throw new TooTight(kept[corner].index, leaves, least);
  }
  // what is left of a leg is shared by the arcs at its two ends; the first and last leg have one
  const corners = [0, ...bends.map(Number), 0];
  const share = spare.map((room, k) => Math.max(room, 0) / Math.max(corners[k] + corners[k + 1], 1));
  return turn.map((a, k) => {
    if (!bends[k]) return Infinity;
    const widest = (need[k] + Math.min(share[k], share[k + 1])) / half[k];
    if (least === null) return widest;
    const gentle = CORNER_CUT / (1 / Math.cos(Math.abs(a) / 2) - 1);
    return Math.min(Math.max(gentle, least), Math.max(widest, least));
  });
}
