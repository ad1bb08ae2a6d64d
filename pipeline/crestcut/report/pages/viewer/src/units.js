// Lengths as people write them <-> metres: the same rules as units.py, for the two pages.
// A bare number is refused, as in the files: whoever reads it next would have to guess its unit.

export const INCH = 0.0254; // m, exact
const MOST = 1e12; // m: more is no length

const METRES_PER = {
  mm: 0.001,
  cm: 0.01,
  m: 1,
  km: 1000,
  in: INCH,
  inch: INCH,
  inches: INCH,
  '"': INCH,
  ft: 0.3048,
  foot: 0.3048,
  feet: 0.3048,
  "'": 0.3048,
  "us-ft": 1200 / 3937,
};
const NUMBER = String.raw`(?:\d+\s+\d+\s*/\s*\d+|\d+\s*/\s*\d+|\d+\.\d*|\.\d+|\d+)`;
const TERM = new RegExp(
  String.raw`\s*(${NUMBER})\s*(us-ft|inches|inch|feet|foot|mm|cm|km|in|ft|m|"|')(?![a-z])`,
  "y",
);
const BARE = new RegExp(String.raw`^\s*${NUMBER}\s*$`);

/** Metres from "140 mm", "5 1/2 in", "5 ft 6 in"; throws an Error with one plain line. */
export function parseLength(value) {
  let text = String(value).trim().toLowerCase().replace(/[″”]/g, '"').replace(/[′’]/g, "'");
  text = text.replaceAll("−", "-").replace(/[\u00a0\u202f]/g, " ");
  if (!text) throw new Error("a length is missing");
  if (text.includes(",")) throw new Error(withPoint(text));
  let sign = 1;
  if ("+-".includes(text[0])) {
    sign = text[0] === "+" ? 1 : -1;
    text = text.slice(1);
  }
  let total = 0,
    at = 0,
    last = Infinity;
  while (at < text.length) {
    TERM.lastIndex = at;
    const term = TERM.exec(text);
    if (!term || METRES_PER[term[2]] >= last) break;
    last = METRES_PER[term[2]];
    total += number(term[1]) * last;
    at = TERM.lastIndex;
  }
  if (at === 0 || text.slice(at).trim()) {
    throw new Error(
      BARE.test(text)
        ? "the unit is missing, like 140 mm or 5 1/2 in"
        : "not understood; write it like 140 mm or 5 1/2 in",
    );
  }
  if (total > MOST) throw new Error("not a finite length");
  return sign * total;
}

/** How to write a length that has a comma: for its decimals, or between thousands. */
function withPoint(text) {
  const parts = text.split(",");
  if (parts.length !== 2 || !/\d$/.test(parts[0]) || !/^\d/.test(parts[1]))
    return "use a point for decimals, like 0.14 m";
  const point = parts.join("."),
    thousands = /^\d{3}(?!\d)/.test(parts[1]) ? ` or ${parts.join("")}` : "";
  return `write ${point}${thousands}, without the comma`;
}

function number(text) {
  const parts = text.replaceAll("/", " / ").trim().split(/\s+/);
  if (!parts.includes("/")) return parseFloat(parts[0]);
  const below = parseInt(parts[parts.length - 1], 10);
  if (below === 0) throw new Error("divides by zero");
  const share = parseInt(parts[parts.length - 3], 10) / below;
  if (parts.length === 4 && share >= 1)
    throw new Error("the fraction is one or more; write it like 5 1/2 in");
  return (parts.length === 4 ? parseInt(parts[0], 10) : 0) + share;
}

/** "12.7 mm"; long lengths in m. */
export function metric(metres, decimals = 1) {
  if (!Number.isFinite(metres)) return "not measured";
  if (Math.abs(metres) >= 1) return `${metres.toFixed(2)} m`;
  return `${(metres * 1000).toFixed(decimals)} mm`;
}

/** "5 1/2 in", "13 ft 1 1/4 in": to the nearest 1/denominator, reduced. */
export function inches(metres, denominator = 32) {
  if (!Number.isFinite(metres)) return "not measured";
  const long = Math.abs(metres) >= 1;
  let steps = Math.round((Math.abs(metres) / INCH) * (long ? 4 : denominator));
  if (steps === 0) return "0 in";
  let per = long ? 4 : denominator;
  const feet = long ? Math.floor(steps / (12 * per)) : 0;
  steps -= feet * 12 * per;
  const whole = Math.floor(steps / per);
  let rest = steps % per;
  while (rest && rest % 2 === 0) {
    rest /= 2;
    per /= 2;
  }
  const words = [];
  if (feet) words.push(`${feet} ft`);
  if (whole || rest)
    words.push([whole || "", rest ? `${rest}/${per}` : ""].filter(Boolean).join(" ") + " in");
  return (metres < 0 ? "-" : "") + words.join(" ");
}

/** In the unit the reader has chosen: "metric" or "inches". */
export const show = (metres, units, decimals = 1) =>
  units === "inches" ? inches(metres) : metric(metres, decimals);
