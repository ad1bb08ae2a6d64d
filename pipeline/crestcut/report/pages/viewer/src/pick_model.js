// The job being made: the job file itself as an object, so that what an opened file says and this page does not ask stays in it.

import { parse, stringify } from "smol-toml";
import { parseLength, show } from "./units.js";

const ORDER = [
  "title",
  "site",
  "scan",
  "vehicle",
  "other_vehicle",
  "travel",
  "clearance",
  "cut",
  "slab",
  "surface",
  "mark",
  "keep",
  "string",
  "level",
  "witness",
];

export class PickModel extends EventTarget {
  constructor(data) {
    super();
    this.data = data;
    this.scale = data.planScale;
    this.past = [];
    this.typed = { name: "our vehicle" }; // the tape lengths of a vehicle measured by hand, as typed
    this.choice = data.vehicles.length ? data.vehicles[0].file : "typed";
    this.own = null; // a vehicle file that was opened: {file, doc}
    this.doc = {
      title: "",
      scan: { files: [...data.scan.files], ...data.scan.said },
      vehicle: {},
      travel: { line: [], track: "middle", ways: ["forward", "turned"] },
      clearance: {
        want: this.#want(data.units),
        confidence: this.rule("clearance.confidence").default,
      },
    };
  }

  /** The reader's other unit: what was not touched is written in it. */
  speak(units) {
    const other = units === "inches" ? "metric" : "inches";
    const path = ["clearance", "want"];
    if (this.get(path) === this.#want(other)) this.set(path, this.#want(units));
  }

  #want(units) {
    return show(this.rule("clearance.want").default, units);
  }

  /** What the job file's schema says of a key: minimum, maximum, enum, default, as far as there are any. */
  rule(key) {
    return this.data.job[key] ?? {};
  }

  /** Is a number within what the schema allows? */
  allows(key, value) {
    const { minimum, maximum } = this.rule(key);
    return value >= minimum && value <= maximum;
  }

  /** Metres of a length as it is written, or as it is taken where nothing is. */
  metres(key) {
    return length(this.get(key.split(".")) ?? this.rule(key).default);
  }

  /** The tapped points; none where the job reads its line from a file. */
  get line() {
    return Array.isArray(this.doc.travel.line) ? this.doc.travel.line : [];
  }
  get marks() {
    return this.doc.mark ?? [];
  }
  get keeps() {
    return this.doc.keep ?? [];
  }

  changed() {
    this.dispatchEvent(new Event("change"));
  }

  /** Keeps the state before a change, for Undo. */
  remember() {
    this.past.push(JSON.stringify(this.doc));
    if (this.past.length > 60) this.past.shift();
  }

  undo() {
    const last = this.past.pop();
    if (last) this.doc = JSON.parse(last);
    this.changed();
    return Boolean(last);
  }

  get(path) {
    return path.reduce((at, key) => at?.[key], this.doc);
  }

  /** Sets a key; an empty value takes the key, and a table left empty, away. */
  set(path, value) {
    const [table, key] = path.length === 2 ? path : [null, path[0]];
    const home = table ? (this.doc[table] ??= {}) : this.doc;
    if (value === "" || value === null || value === undefined) delete home[key];
    else home[key] = value;
    if (table && !Object.keys(home).length) delete this.doc[table];
    this.changed();
  }

  /** Plan coordinates rounded to a tenth of a millimetre or finer than any scan knows. */
  round([x, y]) {
    return [x, y].map((value, k) => {
      const digits = Math.max(0, Math.ceil(-Math.log10(0.001 / this.scale[k])));
      return Number(value.toFixed(digits));
    });
  }

  /** A further point at the end of the line; a line from a file gives way. */
  addPoint(at) {
    this.remember();
    if (!Array.isArray(this.doc.travel.line)) {
      this.doc.travel.line = [];
      delete this.doc.travel.layer;
    }
    this.line.push(this.round(at));
    this.changed();
  }

  addMark(at) {
    this.remember();
    const taken = new Set(this.marks.map((m) => m.name));
    const letters = [..."ABCDEFGHIJKLMNOPQRSTUVWXYZ"];
    const name = letters.find((l) => !taken.has(l)) ?? `M${this.marks.length + 1}`;
    (this.doc.mark ??= []).push({ name, at: this.round(at) });
    this.changed();
  }

  drop(list, index) {
    this.remember();
    if (list === "line") this.line.splice(index, 1);
    else {
      this.doc[list].splice(index, 1);
      if (!this.doc[list].length) delete this.doc[list];
    }
    this.changed();
  }

  /** Where a point of the job lies in the plan: coordinates, a mark's name, or two tape ties; null if it cannot be told. */
  resolve(point) {
    if (Array.isArray(point)) return point;
    if (typeof point === "string") return this.marks.find((m) => m.name === point)?.at ?? null;
    const names = Object.keys(point ?? {}).filter((key) => key !== "side");
    const [a, b] = names.map((name) => this.resolve(name));
    if (names.length !== 2 || !a || !b) return null;
    return this.#tie(a, b, ...names.map((name) => length(point[name])), point.side);
  }

  /** Meeting of two circles, left or right of a to b; distances along the slab taken as level. */
  #tie(a, b, ra, rb, side) {
    const [sx, sy] = this.scale;
    const dx = (b[0] - a[0]) * sx,
      dy = (b[1] - a[1]) * sy,
      d = Math.hypot(dx, dy);
    const along = (ra * ra - rb * rb + d * d) / (2 * d),
      high = Math.sqrt(ra * ra - along * along);
    if (!Number.isFinite(high)) return null;
    const turn = side === "right" ? -1 : 1;
    return [a[0] + (along * dx - turn * high * dy) / d / sx, a[1] + (along * dy + turn * high * dx) / d / sy];
  }

  /** The vehicle file in use, as an object, or null where the page does not have it. */
  get vehicleDoc() {
    if (this.choice === "typed") return typedVehicle(this.typed);
    if (this.choice === "own") return this.own?.doc ?? null;
    return this.data.vehicles.find((v) => v.file === this.choice)?.doc ?? null;
  }

  /** Names of the load states the vehicle file knows. */
  get loads() {
    return ["as measured", ...Object.keys(this.vehicleDoc?.load ?? {})];
  }

  get vehicleFile() {
    if (this.choice === "typed") return `${slug(this.typed.name, "our_vehicle")}.toml`;
    return this.choice === "own" ? (this.own?.file ?? "") : this.choice;
  }

  /** The vehicle's sizes in metres, for drawing; null where one is missing or not understood. */
  get sizes() {
    const doc = this.vehicleDoc;
    if (!doc) return null;
    const read = (key, spare) => (doc[key] === undefined ? spare : length(doc[key]));
    const sizes = {
      wheelbase: read("wheelbase"),
      frontTrack: read("front_track"),
      rearTrack: read("rear_track"),
      radius: read("tyre_radius"),
      tyre: read("tyre_width"),
      width: read("width"),
      belly: read("belly_clearance"),
      front: read("front_overhang", 0),
      rear: read("rear_overhang", 0),
    };
    if (!Object.values(sizes).every(Number.isFinite)) return null;
    return { ...sizes, turning: read("turning_radius", NaN) };
  }

  jobText() {
    const loads = (this.doc.vehicle?.load ?? []).filter(
      (name) => this.choice === "own" || this.loads.includes(name),
    );
    const doc = {
      ...this.doc,
      vehicle: { ...this.doc.vehicle, file: this.vehicleFile, ...(loads.length ? { load: loads } : {}) },
    };
    if (!loads.length) delete doc.vehicle.load;
    const named = Object.keys(doc).sort((a, b) => rank(a) - rank(b));
    const ordered = Object.fromEntries(named.filter((key) => doc[key] !== "").map((key) => [key, doc[key]]));
    const unit = this.data.planUnit;
    return `# Points are in the scan's own plan coordinates (${unit}). Lengths carry their unit.\n${stringify(ordered)}\n`;
  }

  vehicleText() {
    const known = this.data.vehicles.find((v) => v.file === this.choice);
    if (known) return known.text;
    return `# All on flat ground, driver in, never on a jack.\n${stringify(this.vehicleDoc)}\n`;
  }

  jobName() {
    return `${slug(this.doc.title, "job")}.toml`;
  }

  /** Takes over a job file's text; throws an Error with one line if it is none. */
  open(text) {
    const doc = parse(text);
    if (!doc.travel && !doc.scan)
      throw new Error("this is not a job file: it has neither [scan] nor [travel]");
    this.remember();
    doc.travel = { line: [], ...doc.travel };
    const { files, said } = this.data.scan;
    doc.scan = { ...(doc.scan?.file ? {} : { files: [...files] }), ...said, ...doc.scan };
    const file = String(doc.vehicle?.file ?? "");
    const known = this.data.vehicles.find((v) => v.file === file.split("/").pop());
    if (known && !file.includes("/")) this.choice = known.file;
    else if (file) Object.assign(this, { choice: "own", own: { file, doc: known?.doc ?? null } });
    this.doc = plainNumbers(doc);
    this.changed();
  }

  /** Takes over a vehicle file's text. */
  openVehicle(name, text) {
    const doc = plainNumbers(parse(text));
    if (doc.wheelbase === undefined) throw new Error("this is not a vehicle file: it has no wheelbase");
    this.own = { file: name, doc };
    this.choice = "own";
    this.changed();
  }
}

const rank = (key) => ORDER.indexOf(key) + 1 || 99;

/** TOML integers arrive as bigint where they are large; the page needs plain numbers. */
function plainNumbers(value) {
  if (typeof value === "bigint") return Number(value);
  if (Array.isArray(value)) return value.map(plainNumbers);
  if (value && typeof value === "object" && !(value instanceof Date)) {
    return Object.fromEntries(Object.entries(value).map(([k, v]) => [k, plainNumbers(v)]));
  }
  return value;
}

/** Metres of a value in a job or vehicle file; NaN if it is not understood. */
export function length(value) {
  if (typeof value === "number") return value;
  try {
    return parseLength(value);
  } catch {
    return NaN;
  }
}

/** What to write instead of a value that is no length: “1,77 m”: write 1.77 m, with a point. */
export function unread(value) {
  try {
    parseLength(value);
    return "";
  } catch (error) {
    return `“${value}”: ${error.message}`;
  }
}

export const slug = (title, spare) =>
  String(title ?? "")
    .normalize("NFC")
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, "_")
    .replace(/^_+|_+$/g, "")
    .slice(0, 60) || spare;

/** Lengths as a tape gives them -> a vehicle file. The five: axle to axle, outside to outside over the tyres, tyre width, hub height, belly. */
function typedVehicle(typed) {
  const over = length(typed.over),
    tyre = length(typed.tyre);
  const track = Number.isFinite(over - tyre) ? `${((over - tyre) * 1000).toFixed(1)} mm` : "";
  const doc = {
    name: typed.name || "our vehicle",
    wheelbase: typed.wheelbase,
    front_track: track,
    rear_track: track,
    tyre_radius: typed.radius,
    tyre_width: typed.tyre,
    width: typed.width || typed.over,
    belly_clearance: typed.belly,
    turning_radius: typed.turning,
  };
  const parts = [];
  for (const [end, key] of [
    ["nose", "front"],
    ["tail", "rear"],
  ]) {
    if (!typed[`${key}_overhang`]) continue;
    doc[`${key}_overhang`] = typed[`${key}_overhang`];
    if (typed[end]) parts.push(overhang(end, doc, typed[end]));
  }
  for (const key of Object.keys(doc)) if (doc[key] === undefined || doc[key] === "") delete doc[key];
  if (parts.length) doc.part = parts;
  return doc;
}

function overhang(end, doc, clearance) {
  const half = `${((length(doc.width) / 2) * 1000).toFixed(1)} mm`,
    base = length(doc.wheelbase);
  const long = length(doc[end === "nose" ? "front_overhang" : "rear_overhang"]);
  const mm = (metres) => `${(metres * 1000).toFixed(1)} mm`;
  const clear = Math.min(length(doc.tyre_radius) || 0, long / 2); // behind the nose comes the tyre
  const back = end === "nose" ? [mm(-long), mm(-clear)] : [mm(base + clear), mm(base + long)];
  return { name: end === "nose" ? "front skirt" : "rear skirt", back, across: [`-${half}`, half], clearance };
}
