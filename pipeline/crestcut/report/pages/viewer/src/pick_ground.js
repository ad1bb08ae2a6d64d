// Where a wheel leaves the ground: the ways of driving that `contact/stand/ride.py` stands the vehicle in, on the footing that the page carries.

import { wheels } from "./pick_route.js";

const STATION = 0.02; // m between places along the line
const WANDER_STEP = 0.1; // m, at most, between offsets (as in contact/stand/ride.py)
const LEAST_DRIVE = 0.3; // m: a line that leaves less to drive is not worth offering
export const WHEELS = ["front left", "front right", "rear left", "rear right"];

/** Every way of driving within the wander (metres each side) and the heading (radians each side): [{way, offset, heading}]. */
export function variants({ wander, heading, ways }) {
  const half = Math.ceil(wander / WANDER_STEP - 1e-9);
  const offsets = Array.from({ length: 2 * half + 1 }, (_, k) => (half ? (wander * (k - half)) / half : 0));
  const turns = heading > 0 ? [-heading, 0, heading] : [0];
  return ways.flatMap((way) =>
    turns.flatMap((turn) => offsets.map((offset) => ({ way, offset, heading: turn }))),
  );
}

/**
 * Drives one variant: {lost: [{station, wheel, at}], places}. `station` is of the front axle from the line's start, metres;
 * `at` where the wheel then stands, grid u, v.
 */
export function drive(path, sizes, footing, variant) {
  const far = path.long - sizes.wheelbase,
    places = Math.floor(far / STATION + 1e-9) + 1,
    lost = [];
  for (let k = 0; k < places; k++) {
    const feet = wheels(path, k * STATION, sizes, variant);
    const wheel = feet.findIndex((at) => Number.isNaN(footing.near(...at)));
    if (wheel < 0) continue;
    const station = variant.way === "turned" ? far - k * STATION : k * STATION + sizes.wheelbase;
    lost.push({ station, wheel, at: feet[wheel] });
  }
  return { variant, lost, places };
}

/** What the line itself and what the scatter about it lose: {line, near, share, worst, safe}. */
export function lostGround(path, sizes, footing, travel) {
  const drives = variants(travel).map((variant) => drive(path, sizes, footing, variant));
  const straight = ({ variant }) => variant.offset === 0 && variant.heading === 0;
  const most = (list) => list.reduce((a, b) => (b.lost.length > (a?.lost.length ?? 0) ? b : a), null);
  const near = drives.filter((d) => !straight(d));
  const bad = near.filter((d) => d.lost.length);
  const all = drives.reduce((sum, d) => sum + d.places, 0);
  // the widest wander at which no wheel is lost, whatever the heading; NaN where the heading alone loses one
  const first = Math.min(...bad.map(({ variant }) => Math.abs(variant.offset)));
  const kept = [...new Set(drives.map(({ variant }) => Math.abs(variant.offset)))].filter(
    (o) => o < first - 1e-9,
  );
  return {
    line: drives.find((d) => straight(d) && d.lost.length) ?? null,
    near: most(near),
    share: drives.reduce((sum, d) => sum + d.lost.length, 0) / all,
    safe: kept.length ? Math.max(...kept) : NaN,
  };
}

/** How a line that loses its ground at its ends alone can be shortened, `spare` metres more than seen: {start, end} from its start, or null. */
export function shortened({ lost, places, variant }, path, sizes, spare = 0) {
  const first = sizes.wheelbase,
    last = variant.way === "turned" ? path.long - sizes.wheelbase : first + (places - 1) * STATION;
  const low = variant.way === "turned" ? last - (places - 1) * STATION : first;
  const gone = new Set(lost.map(({ station }) => Math.round((station - low) / STATION)));
  let a = 0,
    b = places - 1;
  while (a < places && gone.has(a)) a++;
  while (b >= 0 && gone.has(b)) b--;
  if ((b - a) * STATION < LEAST_DRIVE + 2 * spare) return null;
  for (let k = a; k <= b; k++) if (gone.has(k)) return null;
  const ahead = variant.way === "turned" ? 0 : sizes.wheelbase; // a turned vehicle's front axle is its end nearer the start
  const start = a > 0 ? Math.ceil((low + a * STATION - ahead + spare) * 10) / 10 : 0;
  const over = variant.way === "turned" ? sizes.wheelbase : 0;
  const end = b < places - 1 ? Math.floor((low + b * STATION + over - spare) * 10) / 10 : null;
  return { start, end };
}
