// What is wrong with the job, said while it is being made. "stop": `crestcut run` would refuse it. "care": it would run, but.

import { areaName } from "./dom.js";
import { vehicle } from "./pick_check_vehicle.js";
import { QUESTIONS, choiceOf } from "./pick_form.js";
import { WHEELS, drive, lostGround, shortened } from "./pick_ground.js";
import { length, unread } from "./pick_model.js";
import { routeOf } from "./pick_route.js";
import { show } from "./units.js";

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
  const wander = model.metres("travel.wander"),
    degrees = model.get(["travel", "heading"]) ?? model.rule("travel.heading").default,
    ways = model.get(["travel", "ways"]) ?? ["forward"];
  if (!(model.allows("travel.wander", wander) && model.allows("travel.heading", degrees) && ways.length))
    return;
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

/** Each number within what the schema allows; lengths in metres by their keys, where they are understood. */
function bounds(model, say, units) {
  const read = {};
  for (const { key, path, kind, name, at, box } of QUESTIONS) {
    const { minimum, maximum } = model.rule(key),
      value = model.get(path);
    if (minimum === undefined || value === undefined) continue;
    if (kind !== "length") {
      const [low, high] = [minimum, maximum].map((end) => +(end * box.dataset.times).toFixed(4));
      if (!model.allows(key, value)) say("stop", `${name}: between ${low} and ${high}`, at);
      continue;
    }
    const metres = length(value);
    if (!Number.isFinite(metres)) say("stop", unread(value), at);
    else if (model.allows(key, metres)) read[key] = metres;
    else
      say(
        "stop",
        `${show(metres, units)} cannot be right: between ${show(minimum, units, minimum && minimum < 0.001 ? 2 : 1)} and ${show(maximum, units)}`,
        at,
      );
  }
  return read;
}

const part = (share) => `1/${Math.round(1 / share)}`;

function answers(model, s, say, units) {
  const read = bounds(model, say, units),
    { careful, refused, deepest: usual } = model.data.slab;
  const want = read["clearance.want"],
    deepest = read["cut.deepest"],
    thickness = read["slab.thickness"];
  if (s && want >= s.belly)
    say(
      "stop",
      `The gap asked for (${show(want, units)}) is as much as the belly has on flat ground (${show(s.belly, units)})`,
      "f-clearance-want",
    );
  if (deepest > thickness * refused)
    say(
      "stop",
      `The deepest cut is more than ${part(refused)} of the slab: that is where it is made to crack`,
      "f-cut-deepest",
    );
  else if (deepest > thickness * careful && model.get(["slab", "thickness_from"]) !== "drilled")
    say(
      "care",
      `More than ${part(careful)} of the slab: until its thickness is drilled there, the plan is stamped not for cutting`,
      "f-slab-thickness_from",
    );
  else if (deepest > usual && model.get(["slab", "thickness"]) === undefined)
    say(
      "care",
      `Deeper than ${show(usual, units)}: until the slab’s thickness is drilled there, the plan is stamped not for cutting`,
      "f-slab-thickness",
    );
  if (read["slab.steel_depth"] >= thickness)
    say("stop", "The steel cannot lie deeper than the slab is thick", "f-slab-steel_depth");
  if (!(model.get(["travel", "ways"]) ?? ["forward"]).length)
    say("stop", "Choose at least one way of driving", "f-travel-ways");
}

/** Answers that are none of the closed choices, as older job files have them; and what located things still need. */
function choices(model, say) {
  for (const question of QUESTIONS.filter((q) => q.choices)) {
    const value = model.get(question.path);
    if (choiceOf(question, value) === undefined)
      say("stop", `${question.name}: “${value}” is none of the choices, choose again`, question.at);
  }
  const slab = model.doc.slab ?? {};
  for (const [key, never] of [
    ["kind", ["post-tensioned", "suspended", "precast"].includes(slab.kind)],
    ["post_tensioned", [true, "yes"].includes(slab.post_tensioned)],
    ["suspended", [true, "yes"].includes(slab.suspended)],
  ])
    if (never)
      say(
        "care",
        "Such a slab is never released: nothing is cut, drilled or fixed into it on this program’s word; ask a structural engineer",
        `f-slab-${key}`,
      );
  for (const over of model.rule("keep.over").enum) {
    const mine = model.keeps.filter((keep) => keep.over === over);
    if (slab[over] === "located" && !(mine.length && mine.every((keep) => !(length(keep.deepest ?? 0) > 0))))
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
    if (keep.area.length < 3) say("stop", `${areaName()} ${k + 1} needs three corners or more`, `keep-${k}`);
    if (keep.over !== undefined && !model.rule("keep.over").enum.includes(keep.over))
      say("stop", `${areaName()} ${k + 1}: “${keep.over}” is none of what may be located there`, `keep-${k}`);
    const deepest = length(keep.deepest ?? 0);
    if (!Number.isFinite(deepest))
      say("stop", `${areaName()} ${k + 1}: ${unread(keep.deepest)}`, `keep-${k}`);
    else if (!model.allows("keep.deepest", deepest))
      say("stop", `${areaName()} ${k + 1}: a depth of “${keep.deepest}” cannot be right`, `keep-${k}`);
  });
}
