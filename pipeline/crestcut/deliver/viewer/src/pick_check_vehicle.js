// What is wrong with the vehicle: the ranges and rules of vehicle/schema.py, parts.py and tracks.py.

import { length, unread } from "./pick_model.js";
import { show } from "./units.js";

const FIVE = {
  wheelbase: ["Axle to axle", 0.3, 12],
  over: ["Outside to outside", 0.21, 3.6],
  tyre: ["Tyre width", 0.01, 0.6],
  radius: ["Hub height", 0.03, 0.9],
  belly: ["Belly clearance", 0.001, 0.8],
};
const MORE = {
  width: ["Width of the body", 0.2, 3.5],
  front_overhang: ["Front overhang", 0.001, 5],
  nose: ["Clearance under the nose", 0, 0.8],
  rear_overhang: ["Rear overhang", 0.001, 5],
  tail: ["Clearance under the tail", 0, 0.8],
  turning: ["Turning radius", 0.3, 30],
};
const ENDS = [
  ["nose", "front_overhang", "Front overhang"],
  ["tail", "rear_overhang", "Rear overhang"],
];

/** Says what is wrong; the sizes in metres, or null where they cannot be told. */
export function vehicle(model, say, units) {
  if (model.choice === "typed") typed(model.typed, say, units);
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
  if (s.belly >= 2 * s.radius)
    say(
      "care",
      "The belly is higher than the wheels: is the hub height measured to the middle of the hub?",
      "v-radius",
    );
  overTracks(model, s, say, units);
  return s;
}

function typed(given, say, units) {
  const within = (key, [name, low, high]) => {
    const metres = length(given[key]);
    if (!Number.isFinite(metres)) return say("stop", `${name}: ${unread(given[key])}`, `v-${key}`);
    if (metres < low || metres > high)
      say(
        "stop",
        `${name} of ${show(metres, units)} cannot be right: between ${show(low, units)} and ${show(high, units)}`,
        `v-${key}`,
      );
    return undefined;
  };
  for (const [key, rule] of Object.entries(FIVE)) {
    if (!given[key]) say("stop", `${rule[0]} is not given yet`, `v-${key}`);
    else within(key, rule);
  }
  for (const [key, rule] of Object.entries(MORE)) if (given[key]) within(key, rule);
  for (const [end, reach, name] of ENDS)
    if (given[end] && !given[reach])
      say("stop", `${name} is needed with the clearance under the ${end}`, `v-${reach}`);
}

/** Where the ground rises under a part over a wheel track, the wheel lifts it with every cut left standing: no cut can help there. */
function overTracks(model, s, say, units) {
  const doc = model.vehicleDoc,
    asked = (key, spare) => length(model.get(["clearance", key]) ?? spare);
  const loads = model.get(["vehicle", "load"]) ?? ["as measured"];
  for (const part of doc.part ?? []) {
    if (part.soft || !covered(part, s)) continue;
    const middle = s.wheelbase - (length(part.back[0]) + length(part.back[1])) / 2;
    const ends = middle > s.wheelbase || middle < 0;
    const want = ends ? asked("want_ends", "1 1/4 in") : asked("want", "1/2 in");
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
