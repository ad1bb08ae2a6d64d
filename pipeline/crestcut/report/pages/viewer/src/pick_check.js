// What is wrong with the job, said while it is being made. "stop": `crestcut run` would refuse it. "care": it would run, but.

import { INSIDE, OVER, SOURCE, YES_NO, choiceOf } from "./pick_answers.js";
import { vehicle } from "./pick_check_vehicle.js";
import { WHEELS, drive, lostGround, shortened } from "./pick_ground.js";
import { length, unread } from "./pick_model.js";
import { SECTIONS } from "./pick_questions.js";
import { routeOf } from "./pick_route.js";
import { show } from "./units.js";

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
  choices(model, say);
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
      `The line is ${show(path.long, units, 0)} long, shorter than the wheelbase of ${show(s.wheelbase, units, 0)}: draw it longer`,
      "tool-line",
    );
  if (path.long < s.wheelbase + 1)
    say(
      "care",
      `The line leaves only ${show(path.long - s.wheelbase, units, 0)} to drive: start it well before the crest and end it well after`,
      "tool-line",
    );
  if (!tight) footing(path, s, model, height, say, units); // the path shown round a bend too tight is not driven
  return undefined;
}

/** Wheels that leave the ground: on the line, which the program refuses, and within wander and heading, which it leaves unjudged. */
function footing(path, s, model, height, say, units) {
  const wander = length(model.get(["travel", "wander"]) ?? "200 mm"),
    degrees = model.get(["travel", "heading"]) ?? 3,
    ways = model.get(["travel", "ways"]) ?? ["forward"];
  if (!(wander >= 0 && wander <= 2 && degrees >= 0 && degrees <= 30 && ways.length)) return;
  const heading = (degrees * Math.PI) / 180;
  const { line, near, share, safe } = lostGround(path, s, height.firm, { wander, heading, ways });
  if (line) {
    // in doubt, or a rim that may lie a cell off: the program has the last word
    const surely = drive(path, s, height.footing, line.variant);
    const sure = surely.lost.length * 0.02 > height.cell;
    const { station, wheel, at } = first(line);
    const cut = shortened(line, path, s, sure ? 0 : 0.1);
    const unseen = line.lost.filter((l) => Number.isNaN(height.near(...l.at))).length;
    const why =
      unseen * 2 >= line.lost.length
        ? "leaves what was scanned"
        : `${sure ? "meets" : "may meet"} what ${sure ? "is" : "counts as"} no ground (a bank, planting, a thing that stands there)`;
    say(
      sure ? "stop" : "care",
      `The ${WHEELS[wheel]} wheel ${why} with the front axle ${show(station, units, 0)} along the line${against(line.variant)}: ${cut ? `${shorter(cut, units)}, ` : ""}move the line or scan again`,
      "tool-line",
      { at, sign: "no ground" },
    );
  } else if (near) {
    const { station, at } = first(near);
    const part = share < 0.01 ? "Under 1" : Math.round(share * 100);
    const less = wander > 0 && safe > 0 ? `, or give ${show(safe, units, 0)} of wander` : "";
    say(
      "care",
      `${part} % of the places within ${show(wander, units, 0)} to each side and ${degrees}° put a wheel where there is no ground, most of them ${off(near.variant, units)}, from the front axle ${show(station, units, 0)} along: they are not judged. Move or shorten the line${less}`,
      wander > 0 ? "tool-line" : "f-travel-heading",
      { at, sign: "no ground, off the line" },
    );
  }
}

/** Where a drive first loses its ground, as the line is drawn. */
const first = ({ lost }) => lost.reduce((a, b) => (b.station < a.station ? b : a));

const against = ({ way }) => (way === "turned" ? ", driven against the arrow" : "");

/** "200 mm left of the line, turned 3° to the right" */
function off(variant, units) {
  const { offset, heading } = variant;
  const side = (x) => (x > 0 ? "left" : "right");
  const beside = offset ? `${show(Math.abs(offset), units, 0)} ${side(offset)} of the line` : "on the line";
  const turn = +((Math.abs(heading) * 180) / Math.PI).toFixed(1);
  const way = against(variant);
  return heading ? `${beside}, turned ${turn}° to the ${side(heading)}${way}` : beside + way;
}

function shorter({ start, end }, units) {
  const words = [];
  if (start) words.push(`start it ${show(start, units, 0)} later`);
  if (end !== null) words.push(`end it ${show(end, units, 0)} from its start`);
  return words.join(" and ");
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

function answers(model, s, say, units) {
  const read = {};
  for (const [name, [path, low, high]] of Object.entries(LENGTHS)) {
    const value = model.get(path);
    if (value === undefined) continue;
    read[name] = length(value);
    const at = `f-${path.join("-")}`;
    if (!Number.isFinite(read[name])) say("stop", unread(value), at);
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

/** Answers that are none of the closed choices, as older job files have them; and what located things still need. */
function choices(model, say) {
  const asks = SECTIONS.flatMap((section) => section.ask).filter((ask) => ask.closed);
  for (const { path, closed, name, from } of asks) {
    const id = `f-${path.join("-")}`;
    const told = [[path, closed, id, name]];
    if (from) told.push([[path[0], `${path[1]}_from`], SOURCE, `${id}_from`, `${name}, known from`]);
    for (const [key, options, at, called] of told)
      if (choiceOf(options, model.get(key)) === undefined)
        say("stop", `${called}: “${model.get(key)}” is none of the choices, choose again`, at);
  }
  const slab = model.doc.slab ?? {};
  for (const [key, never] of [
    ["kind", ["post-tensioned", "suspended", "precast"].includes(slab.kind)],
    ["post_tensioned", choiceOf(YES_NO, slab.post_tensioned) === "yes"],
    ["suspended", choiceOf(YES_NO, slab.suspended) === "yes"],
  ])
    if (never)
      say(
        "care",
        "Such a slab is never released: nothing is cut, drilled or fixed into it on this program’s word; ask a structural engineer",
        `f-slab-${key}`,
      );
  for (const [over] of OVER.slice(1)) {
    const mine = model.keeps.filter((keep) => keep.over === over);
    const answer = choiceOf(INSIDE, model.get(["slab", over]));
    if (answer === "located" && !(mine.length && mine.every((keep) => !(length(keep.deepest ?? 0) > 0))))
      say(
        "care",
        "Found in the slab: draw a keep area over each, nothing cut in it, and say so beside it; until then the plan is stamped not for cutting",
        `f-slab-${over}`,
      );
  }
  const number = model.get(["site", "permit_number"]);
  if (number !== undefined && !/^(?=.*[0-9])[\p{L}\p{N}_ ./:#-]{1,60}$/u.test(String(number)))
    say("stop", "A permit’s number has a figure in it, as it stands on the permit", "f-site-permit_number");
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
    if (choiceOf(OVER, keep.over) === undefined)
      say("stop", `Keep area ${k + 1}: “${keep.over}” is none of what may be located there`, `keep-${k}`);
    const deepest = length(keep.deepest ?? 0);
    if (!Number.isFinite(deepest)) say("stop", `Keep area ${k + 1}: ${unread(keep.deepest)}`, `keep-${k}`);
    else if (deepest < 0 || deepest > 0.3)
      say("stop", `Keep area ${k + 1}: a depth of “${keep.deepest}” cannot be right`, `keep-${k}`);
  });
}
