// What pick.html asks, and in which words. What may be answered comes with the page, from the schema that reads the job file
// (`job/schema.py`): bounds, choices and defaults, by `table.key`.

const NOT_KNOWN = "not known";

/** One question: its key in the job file, its name, how it is answered, and more that is said with it. */
const ask = (key, name, kind, more = {}) => ({ key, path: key.split("."), name, kind, ...more });
const choose = (key, name, words, more = {}) =>
  ask(key, name, "select", { words, unsaid: NOT_KNOWN, ...more });

const YES_NO = { no: "no", yes: "yes" };
const INSIDE = {
  no: "none",
  located: "yes, found and marked on the slab",
  "not located": "yes, but nobody knows where",
};
const SOURCE = {
  drawing: "a drawing",
  engineer: "an engineer",
  "owner in writing": "the owner, in writing",
  covermeter: "a covermeter",
  "thermal camera": "a thermal camera",
  "locating service": "a locating service",
  drilled: "a drilled hole",
  edge: "seen at an edge",
  guess: "a guess",
};

/** Who or what says so: asked beside an answer. */
export const sourceOf = (key, name = "Known from") => choose(key, name, SOURCE);

/** What was located under a keep area. */
export const OVER = choose(
  "keep.over",
  "What was located under it",
  { heating: "heating was located under it", conduit: "a cable, conduit or pipe was located under it" },
  { unsaid: "nothing was located under it" },
);

/** Sections of the form. */
export const SECTIONS = [
  {
    title: "Clearance",
    open: true,
    ask: [
      ask("clearance.want", "Gap to leave under the belly", "length"),
      ask("clearance.want_ends", "Gap to leave under nose and tail", "length"),
      ask("clearance.confidence", "How sure of it", "percent", { help: "95 % is usual." }),
      ask("cut.deepest", "Never cut deeper than", "length", {
        spare: "deepest",
        help: "Left empty it is the figure shown, or less where the slab is thin.",
      }),
      ask("cut.drain", "Let water run off the cut", "select", {
        help: "So that no puddle stays where it is cut. It takes off a little more.",
        options: [
          ["", "not asked for"],
          ["1:100", "yes, falling 1 in 100 or more"],
          ["1:50", "yes, falling 1 in 50 or more"],
        ],
      }),
    ],
  },
  {
    title: "Driving",
    ask: [
      ask("travel.ways", "Ways it is driven", "checks", {
        words: { forward: "nose first, along the arrow", turned: "nose first, against the arrow" },
      }),
      ask("travel.track", "The line shows the path of", "select", {
        words: { middle: "the vehicle's middle", left: "its left wheels", right: "its right wheels" },
      }),
      ask("travel.wander", "It may be off the line by, each side", "length"),
      ask("travel.heading", "It may be turned off the line by, degrees", "number"),
    ],
  },
  {
    title: "The slab",
    note: "What is not known is taken as the worst case: the plan is then stamped “not for cutting” and says whom to ask.",
    ask: [
      choose("slab.kind", "Kind of slab", {
        "plain concrete": "plain concrete on the ground",
        "reinforced concrete": "reinforced concrete on the ground",
        "post-tensioned": "post-tensioned concrete",
        suspended: "suspended: a room, a cellar or a void below",
        precast: "precast: planks, panels",
        "screed or tiles": "a screed, tiles",
        other: "something else (asphalt, pavers, wood)",
      }),
      ask("slab.thickness", "Thickness", "length", { like: ["like 100 mm", "like 4 in"] }),
      sourceOf("slab.thickness_from", "Thickness known from"),
      ask("slab.steel_depth", "Depth of the steel below the top", "length", {
        like: ["like 50 mm", "like 2 in"],
        help: "Bars or mesh inside the concrete. A covermeter finds them; many hire shops have one.",
      }),
      sourceOf("slab.steel_from", "Steel known from"),
      choose("slab.post_tensioned", "Post-tensioned", YES_NO, {
        help: "Steel cables pulled tight inside it. Cutting one can kill. “No” counts from a drawing, an engineer or radar only.",
        from: true,
      }),
      choose("slab.heating", "Heating pipes or wires in it", INSIDE, {
        help: "Warm floors, snow melting. Where it was found, draw a keep area over it and say so beside it.",
        from: true,
      }),
      choose("slab.conduit", "Conduit in it", INSIDE, {
        help: "Pipes or cables for power, water or drains. Where any were found, draw a keep area over each.",
        from: true,
      }),
      choose("slab.suspended", "Suspended", YES_NO, {
        help: "A room, a cellar or a void lies below it. “No” counts from a drawing, an engineer or radar only.",
        from: true,
      }),
      choose("slab.permission", "The owner allows the cut", YES_NO, { help: "In writing.", from: true }),
    ],
  },
  {
    title: "The place",
    ask: [
      choose("site.place", "Where the work is done", {}),
      choose("site.ground", "Ground", { public: "public, or people walk on it" }),
      choose(
        "site.permit",
        "Permit of the authority",
        { asked: "asked for, not granted yet" },
        { help: "Public ground needs one, and often a dropped kerb." },
      ),
      ask("site.permit_number", "Its number", "text", { help: "As it stands on the permit." }),
      ask("site.country", "Country (two letters)", "text", { help: "For the trade's local words." }),
    ],
  },
  {
    title: "The scan",
    ask: [
      ask("scan.files", "Files, as seen from the job file's folder (one a line)", "lines"),
      choose("scan.scanner", "Kind of scanner", {
        photogrammetry: "photographs",
        terrestrial: "scanner on a tripod",
        "total-station": "total station",
      }),
      ask("scan.unit", "Unit of the scan", "select", { unsaid: "as found", more: true }), // longer names too
      ask("scan.up", "Up axis of the scan", "select", { unsaid: "as found" }),
    ],
  },
];

/** [value, words] of each choice of a question; "" stands for what is not said. A choice that nobody put in words speaks for itself. */
export function choicesOf(question, model) {
  const { options, words = {}, unsaid } = question;
  if (options) return options;
  const known = model.rule(question.key).enum.filter((value) => value !== "unknown");
  return [...(unsaid ? [["", unsaid]] : []), ...known.map((value) => [value, words[value] ?? value])];
}

/** A value of the job file as the choice it is, "" where nothing is said; undefined where it is none of them. */
export function choiceOf(question, model, value) {
  const said = typeof value === "boolean" ? { true: "yes", false: "no" }[value] : value;
  if (said === undefined || (said === "unknown" && question.unsaid === NOT_KNOWN)) return "";
  return choicesOf(question, model).some(([key]) => key === said) ? said : undefined;
}

/** The five tape lengths: key, name, how to measure, an example, and the lengths of a vehicle file that they are the sum of. */
export const TAPE = [
  [
    "wheelbase",
    "Axle to axle",
    "along the side, hub to hub",
    ["like 2600 mm", "like 102 1/2 in"],
    "wheelbase",
  ],
  [
    "over",
    "Outside to outside over the tyres",
    "across, at the ground",
    ["like 1770 mm", "like 69 3/4 in"],
    "track",
    "tyre_width",
  ],
  ["tyre", "Tyre width", "across the tread", ["like 200 mm", "like 7 7/8 in"], "tyre_width"],
  [
    "radius",
    "Hub height",
    "middle of a wheel down to the ground",
    ["like 310 mm", "like 12 1/4 in"],
    "tyre_radius",
  ],
  [
    "belly",
    "Belly clearance",
    "ground up to the lowest part between the axles",
    ["like 140 mm", "like 5 1/2 in"],
    "clearance",
  ],
];
/** Lengths worth having where the slab starts or ends in a dip. */
export const MORE = [
  ["width", "Width of the body", "without mirrors", ["like 1800 mm", "like 71 in"], "width"],
  [
    "front_overhang",
    "Front overhang",
    "front axle to the foremost point",
    ["like 850 mm", "like 33 1/2 in"],
    "overhang",
  ],
  ["nose", "Clearance under the nose", "", ["like 190 mm", "like 7 1/2 in"], "clearance"],
  [
    "rear_overhang",
    "Rear overhang",
    "rear axle to the rearmost point",
    ["like 750 mm", "like 29 1/2 in"],
    "overhang",
  ],
  ["tail", "Clearance under the tail", "", ["like 220 mm", "like 8 5/8 in"], "clearance"],
  [
    "turning",
    "Turning radius",
    "half a full circle on full lock, over the outer front tyre; for lines with a bend",
    ["like 5.2 m", "like 17 ft"],
    "turning_radius",
  ],
];
