// What is wrong with the vehicle: ranges and rules come with the page (vehicle/plausible.py), tracks are those of tracks.py.

import { TAPES } from "./pick_form.js";
import { length, unread } from "./pick_model.js";
import { show } from "./units.js";

// where a rule's key is asked on the page
const BOX = {
  tyre_radius: "v-radius",
  tyre_width: "v-tyre",
  belly_clearance: "v-belly",
  turning_radius: "v-turning",
  front_track: "v-over",
  rear_track: "v-over",
};
const ENDS = [
  ["nose", "front_overhang", "Front overhang"],
  ["tail", "rear_overhang", "Rear overhang"],
];

/** Says what is wrong; the sizes in metres, or null where they cannot be told. */
export function vehicle(model, say, units) {
  if (model.choice === "typed") typed(model, say, units);
  const s = model.sizes;
  if (!s) return null;
  if (Math.min(s.frontTrack, s.rearTrack) <= s.tyre)
    say(
      "stop",
      "The tyres are wider than half the vehicle: check outside to outside and tyre width",
      "v-over",
    );
  if (s.wheelbase <= 2 * s.radius)
    say(
      "stop",
      "The wheels are larger than the wheelbase: measure hub height from the hub’s middle to the ground",
      "v-radius",
    );
  if (Math.max(s.frontTrack, s.rearTrack) - s.tyre > s.width)
    say("stop", "The tyres stand outside the body: measure the body’s full width", "v-width");
  relations(model, s, say, units);
  overTracks(model, s, say, units);
  return s;
}

/** Figures beside each other: each rule speaks where all its sums of sizes are above zero. */
function relations(model, s, say, units) {
  const known = {
    wheelbase: s.wheelbase,
    front_track: s.frontTrack,
    rear_track: s.rearTrack,
    most_track: Math.max(s.frontTrack, s.rearTrack),
    least_track: Math.min(s.frontTrack, s.rearTrack),
    tyre_radius: s.radius,
    tyre_width: s.tyre,
    width: s.width,
    belly_clearance: s.belly,
    front_overhang: s.front || NaN, // not given
    rear_overhang: s.rear || NaN,
    turning_radius: s.turning,
  };
  const above = (sum) => Object.entries(sum).reduce((total, [key, f]) => total + f * known[key], 0) > 1e-9;
  for (const rule of model.data.vehicleRules.rules) {
    if ((model.vehicleDoc.rigid === true && !rule.carts) || !rule.over.every(above)) continue;
    const words = rule.words.replace(/\{(\w+)\}/g, (_, key) => show(known[key], units));
    say(rule.stop ? "stop" : "care", words[0].toUpperCase() + words.slice(1), BOX[rule.at] ?? `v-${rule.at}`);
  }
}

function typed(model, say, units) {
  const given = model.typed,
    { ranges } = model.data.vehicleRules;
  const within = ({ key, name, ranges: kinds }) => {
    const metres = length(given[key]);
    if (!Number.isFinite(metres)) return say("stop", `${name}: ${unread(given[key])}`, `v-${key}`);
    const [low, high] = [0, 1].map((end) => kinds.reduce((sum, kind) => sum + ranges[kind][end], 0));
    if (metres < low || metres > high)
      say(
        "stop",
        `${name} of ${show(metres, units)} cannot be right: between ${show(low, units)} and ${show(high, units)}`,
        `v-${key}`,
      );
    return undefined;
  };
  for (const tape of TAPES) {
    if (given[tape.key]) within(tape);
    else if (tape.needed) say("stop", `${tape.name} is not given yet`, `v-${tape.key}`);
  }
  for (const [end, reach, name] of ENDS)
    if (given[end] && !given[reach])
      say("stop", `${name} is needed with the clearance under the ${end}`, `v-${reach}`);
}

/** Where the ground rises under a part over a wheel track, the wheel lifts it with every cut left standing: no cut can help there. */
function overTracks(model, s, say, units) {
  const doc = model.vehicleDoc,
    asked = (key) => model.metres(`clearance.${key}`);
  const loads = model.get(["vehicle", "load"]) ?? ["as measured"];
  for (const part of doc.part ?? []) {
    if (part.soft || !covered(part, s)) continue;
    const middle = s.wheelbase - (length(part.back[0]) + length(part.back[1])) / 2;
    const ends = middle > s.wheelbase || middle < 0;
    const want = ends ? asked("want_ends") : asked("want");
    const least = Math.min(...loads.map((name) => lowest(part, s, doc.load?.[name])));
    if (least < want)
      say(
        "stop",
        `The ${part.name} has ${show(least, units)} on flat ground${loads.length > 1 ? ", loaded" : ""}, less than the ${show(want, units)} asked for: no cut can give it more. Ask for less, or measure it again`,
        ends ? "f-clearance-want_ends" : "f-clearance-want",
      );
  }
}

/** Does a part cover ground that a tyre rolls on as well? */
function covered(part, s) {
  const [right, left] = part.across.map(length).sort((a, b) => a - b);
  return [s.frontTrack, s.rearTrack].some((track) => {
    const inner = (track - s.tyre) / 2,
      outer = (track + s.tyre) / 2;
    return (right < outer - 1e-6 && left > inner + 1e-6) || (right < -inner - 1e-6 && left > -outer + 1e-6);
  });
}

/** Least height of a part above flat ground in a load state {front, rear}; other kinds of load are left to the program. */
function lowest(part, s, state) {
  const clearance = [part.clearance].flat().map(length);
  const front = length(state?.front ?? 0),
    rear = length(state?.rear ?? 0);
  const known = Number.isFinite(front) && Number.isFinite(rear) && (part.on ?? "body") === "body";
  const back = part.back.map(length).sort((a, b) => a - b); // the front end first, as the clearances
  return Math.min(
    ...back.map((far, k) => {
      const z = clearance[k] ?? clearance[0];
      return z + (known ? Math.min(0, rear + ((front - rear) * (s.wheelbase - far)) / s.wheelbase) : 0);
    }),
  );
}
