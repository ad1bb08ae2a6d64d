// What pick.html asks, and the key of the job file that each answer goes to.

import { INSIDE, KIND, PERMIT, SOURCE, YES_NO } from "./pick_answers.js";

const UNKNOWN = ["", "not known"];

/** Sections of the form; each question knows its key in the job file. */
export const SECTIONS = [
  {
    title: "Clearance",
    open: true,
    ask: [
      {
        path: ["clearance", "want"],
        name: "Gap to leave under the belly",
        kind: "length",
        empty: ["12.7 mm", "1/2 in"],
      },
      {
        path: ["clearance", "want_ends"],
        name: "Gap to leave under nose and tail",
        kind: "length",
        empty: ["32 mm", "1 1/4 in"],
      },
      {
        path: ["clearance", "confidence"],
        name: "How sure of it",
        kind: "percent",
        empty: "95",
        help: "95 % is usual.",
      },
      {
        path: ["cut", "deepest"],
        name: "Never cut deeper than",
        kind: "length",
        empty: ["13 mm", "1/2 in"],
        help: "Left empty: 13 mm (1/2 in), or less where the slab is thin.",
      },
      {
        path: ["cut", "drain"],
        name: "Let water run off the cut",
        help: "So that no puddle stays where it is cut. It takes off a little more.",
        kind: "select",
        options: [
          ["", "not asked for"],
          ["1:100", "yes, falling 1 in 100 or more"],
          ["1:50", "yes, falling 1 in 50 or more"],
        ],
      },
    ],
  },
  {
    title: "Driving",
    ask: [
      {
        path: ["travel", "ways"],
        name: "Ways it is driven",
        kind: "checks",
        options: [
          ["forward", "nose first, along the arrow"],
          ["turned", "nose first, against the arrow"],
        ],
      },
      {
        path: ["travel", "track"],
        name: "The line shows the path of",
        kind: "select",
        options: [
          ["middle", "the vehicle's middle"],
          ["left", "its left wheels"],
          ["right", "its right wheels"],
        ],
      },
      {
        path: ["travel", "wander"],
        name: "It may be off the line by, each side",
        kind: "length",
        empty: ["200 mm", "8 in"],
      },
      {
        path: ["travel", "heading"],
        name: "It may be turned off the line by, degrees",
        kind: "number",
        empty: "3",
      },
    ],
  },
  {
    title: "The slab",
    note: "What is not known is taken as the worst case: the plan is then stamped “not for cutting” and says whom to ask.",
    ask: [
      {
        path: ["slab", "kind"],
        name: "Kind of slab",
        kind: "select",
        closed: KIND,
      },
      {
        path: ["slab", "thickness"],
        name: "Thickness",
        kind: "length",
        empty: ["like 100 mm", "like 4 in"],
      },
      {
        path: ["slab", "thickness_from"],
        name: "Thickness known from",
        kind: "select",
        closed: SOURCE,
      },
      {
        path: ["slab", "steel_depth"],
        name: "Depth of the steel below the top",
        kind: "length",
        empty: ["like 50 mm", "like 2 in"],
        help: "Bars or mesh inside the concrete. A covermeter finds them; many hire shops have one.",
      },
      {
        path: ["slab", "steel_from"],
        name: "Steel known from",
        kind: "select",
        closed: SOURCE,
      },
      {
        path: ["slab", "post_tensioned"],
        name: "Post-tensioned",
        help: "Steel cables pulled tight inside it. Cutting one can kill. “No” counts from a drawing, an engineer or radar only.",
        kind: "select",
        closed: YES_NO,
        from: true,
      },
      {
        path: ["slab", "heating"],
        name: "Heating pipes or wires in it",
        help: "Warm floors, snow melting. Where it was found, draw a keep area over it and say so beside it.",
        kind: "select",
        closed: INSIDE,
        from: true,
      },
      {
        path: ["slab", "conduit"],
        name: "Conduit in it",
        help: "Pipes or cables for power, water or drains. Where any were found, draw a keep area over each.",
        kind: "select",
        closed: INSIDE,
        from: true,
      },
      {
        path: ["slab", "suspended"],
        name: "Suspended",
        help: "A room, a cellar or a void lies below it. “No” counts from a drawing, an engineer or radar only.",
        kind: "select",
        closed: YES_NO,
        from: true,
      },
      {
        path: ["slab", "permission"],
        name: "The owner allows the cut",
        help: "In writing.",
        kind: "select",
        closed: YES_NO,
        from: true,
      },
    ],
  },
  {
    title: "The place",
    ask: [
      {
        path: ["site", "place"],
        name: "Where the work is done",
        kind: "select",
        options: [UNKNOWN, ["outdoors", "outdoors"], ["indoors", "indoors"]],
      },
      {
        path: ["site", "ground"],
        name: "Ground",
        kind: "select",
        options: [UNKNOWN, ["private", "private"], ["public", "public, or people walk on it"]],
      },
      {
        path: ["site", "permit"],
        name: "Permit of the authority",
        help: "Public ground needs one, and often a dropped kerb.",
        kind: "select",
        closed: PERMIT,
      },
      {
        path: ["site", "permit_number"],
        name: "Its number",
        help: "As it stands on the permit.",
        kind: "text",
      },
      {
        path: ["site", "country"],
        name: "Country (two letters)",
        kind: "text",
        help: "For the trade's local words.",
      },
    ],
  },
  {
    title: "The scan",
    ask: [
      {
        path: ["scan", "files"],
        name: "Files, as seen from the job file's folder (one a line)",
        kind: "lines",
      },
      {
        path: ["scan", "scanner"],
        name: "Kind of scanner",
        kind: "select",
        options: [
          UNKNOWN,
          ["phone", "phone"],
          ["photogrammetry", "photographs"],
          ["terrestrial", "scanner on a tripod"],
          ["total-station", "total station"],
        ],
      },
      {
        path: ["scan", "unit"],
        name: "Unit of the scan",
        kind: "select",
        options: [["", "as found"], ...["m", "cm", "mm", "ft", "us-ft", "in"].map((u) => [u, u])],
      },
      {
        path: ["scan", "up"],
        name: "Up axis of the scan",
        kind: "select",
        options: [["", "as found"], ...["x", "y", "z", "-x", "-y", "-z"].map((u) => [u, u])],
      },
    ],
  },
];

/** The five tape lengths: key, name, how to measure, an example. */
export const TAPE = [
  ["wheelbase", "Axle to axle", "along the side, hub to hub", ["like 2600 mm", "like 102 1/2 in"]],
  ["over", "Outside to outside over the tyres", "across, at the ground", ["like 1770 mm", "like 69 3/4 in"]],
  ["tyre", "Tyre width", "across the tread", ["like 200 mm", "like 7 7/8 in"]],
  ["radius", "Hub height", "middle of a wheel down to the ground", ["like 310 mm", "like 12 1/4 in"]],
  [
    "belly",
    "Belly clearance",
    "ground up to the lowest part between the axles",
    ["like 140 mm", "like 5 1/2 in"],
  ],
];
/** Lengths worth having where the slab starts or ends in a dip. */
export const MORE = [
  ["width", "Width of the body", "without mirrors", ["like 1800 mm", "like 71 in"]],
  ["front_overhang", "Front overhang", "front axle to the foremost point", ["like 850 mm", "like 33 1/2 in"]],
  ["nose", "Clearance under the nose", "", ["like 190 mm", "like 7 1/2 in"]],
  ["rear_overhang", "Rear overhang", "rear axle to the rearmost point", ["like 750 mm", "like 29 1/2 in"]],
  ["tail", "Clearance under the tail", "", ["like 220 mm", "like 8 5/8 in"]],
  [
    "turning",
    "Turning radius",
    "half a full circle on full lock, over the outer front tyre; for lines with a bend",
    ["like 5.2 m", "like 17 ft"],
  ],
];
