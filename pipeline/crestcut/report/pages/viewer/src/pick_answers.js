// The closed choices of slab, owner and permit: the words shown for each, as `job/answers.py` lists them. "" stands for unknown.

const UNKNOWN = ["", "not known"];

export const KIND = [
  UNKNOWN,
  ["plain concrete", "plain concrete on the ground"],
  ["reinforced concrete", "reinforced concrete on the ground"],
  ["post-tensioned", "post-tensioned concrete"],
  ["suspended", "suspended: a room, a cellar or a void below"],
  ["precast", "precast: planks, panels"],
  ["screed or tiles", "a screed, tiles"],
  ["other", "something else (asphalt, pavers, wood)"],
];
export const YES_NO = [UNKNOWN, ["no", "no"], ["yes", "yes"]];
export const INSIDE = [
  UNKNOWN,
  ["no", "none"],
  ["located", "yes, found and marked on the slab"],
  ["not located", "yes, but nobody knows where"],
];
export const SOURCE = [
  UNKNOWN,
  ["drawing", "a drawing"],
  ["engineer", "an engineer"],
  ["owner in writing", "the owner, in writing"],
  ["covermeter", "a covermeter"],
  ["radar", "radar"],
  ["thermal camera", "a thermal camera"],
  ["locating service", "a locating service"],
  ["drilled", "a drilled hole"],
  ["edge", "seen at an edge"],
  ["guess", "a guess"],
];
export const PERMIT = [
  UNKNOWN,
  ["granted", "granted"],
  ["not needed", "not needed"],
  ["asked", "asked for, not granted yet"],
  ["refused", "refused"],
];
/** What was located under a keep area. */
export const OVER = [
  ["", "nothing was located under it"],
  ["heating", "heating was located under it"],
  ["conduit", "a cable, conduit or pipe was located under it"],
];

/** A value of the job file as the choice it is; undefined where it is none of them. */
export function choiceOf(options, value) {
  const plain = options === INSIDE ? { false: "no" } : options === YES_NO ? { true: "yes", false: "no" } : {};
  const said = typeof value === "boolean" ? (plain[value] ?? String(value)) : value;
  const known = said === undefined || (said === "unknown" && options !== OVER) ? "" : said;
  return options.some(([key]) => key === known) ? known : undefined;
}
