// What is wrong with the job, said while it is being made. "stop": `crestcut run` would refuse it. "care": it would run, but.

import { length } from "./pick_model.js";
import { vehicle } from "./pick_check_vehicle.js";
import { driven, routeOf, wheels } from "./pick_route.js";
import { show } from "./units.js";

const CONTACT = 0.15; // m: a wider hole under a tyre is not bridged (as in travel/ride.py)
// lengths of the job file as job/fields.py takes them: key, least, most, in metres
const LENGTHS = {
  want: [["clearance", "want"], 0, 0.5],
  ends: [["clearance", "want_ends"], 0, 0.5],
  deepest: [["cut", "deepest"], 1e-5, 0.3],
  wander: [["travel", "wander"], 0, 2],
  thickness: [["slab", "thickness"], 0.02, 2],
  steel: [["slab", "steel_depth"], 0, 0.3],
};

/** List of {level, text, at, spot}: `at` is the id of the field to mend, `spot` where on the plan it is (grid u, v), or null. */
export function check(model, height, plan, units) {
  const found = [];
  const say = (level, text, at, spot = null) => found.push({ level, text, at, spot });
  const sizes = vehicle(model, say, units);
  line(model, sizes, height, plan, say, units);
  answers(model, sizes, say, units);
  words(model, say);
  places(model, height, plan, say);
  return found;
}

function line(model, s, height, plan, say, units) {
  const file = model.doc.travel.line;
  if (typeof file === "string")
    return say(
      "care",
      `The line comes from ${file}, which this page cannot show. Tap to draw one instead`,
      "tool-line",
    );
  const points = model.line.map((p) => model.resolve(p));
  if (points.length < 2)
    return say(
      "stop",
      points.length ? "Tap where the line ends" : "Tap where the line of travel starts and ends",
      "tool-line",
    );
  const lost = points.findIndex((p) => !p);
  if (lost >= 0) return say("stop", `Line point ${lost + 1} names a mark that is not on the plan`, "points");
  points.forEach((p, k) => {
    const uv = plan.toGrid(p);
    const inside =
      uv[0] >= 0 &&
      uv[1] >= 0 &&
      uv[0] <= (height.nx - 1) * height.cell &&
      uv[1] <= (height.ny - 1) * height.cell;
    if (!inside) say("stop", `Line point ${k + 1} lies outside the scan`, `line-${k}`);
  });
  if (!s) return undefined;
  const { path, tight, least } = routeOf(model, plan);
  if (!path) return say("stop", "All points of the line are the same: tap its two ends", "tool-line");
  bends(path, tight, least, say, units);
  if (path.long <= s.wheelbase)
    return say(
      "stop",
      `The line is ${show(path.long, units)} long, shorter than the wheelbase of ${show(s.wheelbase, units)}: draw it longer`,
      "tool-line",
    );
  if (path.long < s.wheelbase + 1)
    say(
      "care",
      `The line leaves only ${show(path.long - s.wheelbase, units)} to drive: start it well before the crest and end it well after`,
      "tool-line",
    );
  for (const [side, hole] of Object.entries(longestHoles(path, height, s)))
    if (hole.long > CONTACT)
      say(
        "stop",
        `The ${side} wheels roll over ${show(hole.long, units, 0)} that the scan has not, ${show(hole.at, units, 0)} from the start: move the line or scan again`,
        "tool-line",
        hole.spot,
      );
  return undefined;
}

/** Bends that the vehicle cannot take, or of which nobody knows whether it can. */
function bends(path, tight, least, say, units) {
  if (Number.isNaN(least))
    say(
      "stop",
      "The turning radius is impossible with this wheelbase: drive a full circle and measure half of it, over the outer front tyre",
      "v-turning",
    );
  else if (tight)
    say(
      "stop",
      `The bend at line point ${tight.corner + 1} leaves a radius of ${show(tight.leaves, units)}; this vehicle turns no tighter than ${show(tight.needs, units)} at its rear axle: move the points further apart`,
      `line-${tight.corner}`,
    );
  else if (least === null && Number.isFinite(path.tightest))
    say(
      "care",
      `The tightest bend has a radius of ${show(path.tightest, units)}; whether the vehicle turns so tightly is not known: give its turning radius`,
      "v-turning",
    );
}

/** Longest stretch without ground under a wheel of each side, {left, right}: how long and how far along (metres), and its end. */
function longestHoles(path, height, sizes) {
  const most = { left: { long: 0, at: 0 }, right: { long: 0, at: 0 } };
  const run = [0, 0, 0, 0];
  for (let d = 0; d <= driven(path, sizes) + 1e-9; d += 0.02)
    wheels(path, d, sizes).forEach((at, w) => {
      run[w] = Number.isNaN(height.near(...at)) ? run[w] + 0.02 : 0;
      const side = w % 2 ? "right" : "left";
      if (run[w] > most[side].long)
        most[side] = { long: run[w], at: d - run[w] + (w < 2 ? sizes.wheelbase : 0), spot: at };
    });
  return most;
}

function answers(model, s, say, units) {
  const read = {};
  for (const [name, [path, low, high]] of Object.entries(LENGTHS)) {
    const value = model.get(path);
    if (value === undefined) continue;
    read[name] = length(value);
    const at = `f-${path.join("-")}`;
    if (!Number.isFinite(read[name])) say("stop", `“${value}” is not understood as a length`, at);
    else if (read[name] < low || read[name] > high)
      say(
        "stop",
        `${show(read[name], units)} cannot be right: between ${show(low, units, low < 0.001 ? 2 : 1)} and ${show(high, units)}`,
        at,
      );
  }
  if (s && read.want >= s.belly)
    say(
      "stop",
      `The gap asked for (${show(read.want, units)}) is as much as the belly has on flat ground (${show(s.belly, units)})`,
      "f-clearance-want",
    );
  const share = read.deepest / read.thickness;
  if (share > 0.25)
    say(
      "stop",
      "The deepest cut is more than a quarter of the slab: that is where it is made to crack",
      "f-cut-deepest",
    );
  else if (share > 0.125 && model.get(["slab", "thickness_from"]) !== "drilled")
    say(
      "care",
      "More than an eighth of the slab: until its thickness is drilled there, the plan is stamped not for cutting",
      "f-slab-thickness_from",
    );
  else if (read.deepest > 0.013 && read.thickness === undefined)
    say(
      "care",
      `Deeper than ${show(0.013, units)}: until the slab’s thickness is drilled there, the plan is stamped not for cutting`,
      "f-slab-thickness",
    );
  if (read.steel >= read.thickness)
    say("stop", "The steel cannot lie deeper than the slab is thick", "f-slab-steel_depth");
  const confidence = model.get(["clearance", "confidence"]);
  if (confidence !== undefined && !(confidence >= 0.5 && confidence <= 0.9999))
    say("stop", "How sure: between 50 and 99.99 %", "f-clearance-confidence");
  const heading = model.get(["travel", "heading"]);
  if (heading !== undefined && !(heading >= 0 && heading <= 30))
    say("stop", "Steering off the line: between 0 and 30 degrees", "f-travel-heading");
  if (!(model.get(["travel", "ways"]) ?? ["forward"]).length)
    say("stop", "Choose at least one way of driving", "f-travel-ways");
}

function words(model, say) {
  const country = model.get(["site", "country"]);
  if (country !== undefined && !/^[A-Za-z]{2}$/.test(country))
    say("stop", "Country: two letters, like US", "f-site-country");
  if (!(model.get(["scan", "files"]) ?? [model.get(["scan", "file"])]).filter(Boolean).length)
    say("stop", "No scan file is named", "f-scan-files");
  const load = model.get(["vehicle", "load"]);
  if (load && !load.length) say("stop", "Choose at least one load to check", "f-vehicle-load");
}

function places(model, height, plan, say) {
  const names = model.marks.map((m) => m.name);
  names.forEach((name, k) => {
    if (!name) say("stop", `Mark ${k + 1} has no name`, `mark-${k}`);
    else if (names.indexOf(name) !== k) say("stop", `Two marks are called ${name}`, `mark-${k}`);
  });
  model.keeps.forEach((keep, k) => {
    if (keep.area.length < 3) say("stop", `Keep area ${k + 1} needs three corners or more`, `keep-${k}`);
    const deepest = length(keep.deepest ?? 0);
    if (!Number.isFinite(deepest))
      say("stop", `Keep area ${k + 1}: “${keep.deepest}” is not understood as a length`, `keep-${k}`);
    else if (deepest < 0 || deepest > 0.3)
      say("stop", `Keep area ${k + 1}: a depth of “${keep.deepest}” cannot be right`, `keep-${k}`);
  });
}
