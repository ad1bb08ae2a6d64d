// The questions beside the plan. They stand in the page's own markup, each box with its key in the job file (`data-key`); here what is
// answered goes into the job, and what the job says into the boxes.

import { byId, h } from "./dom.js";
import { inches, metric, parseLength } from "./units.js";

/** The questions as the page asks them; `choices` of those that are closed, `unknown` where that may be said. */
export const QUESTIONS = [...document.querySelectorAll("[data-key]")].map((box) => ({
  box,
  at: box.id,
  key: box.dataset.key,
  path: box.dataset.key.split("."),
  kind: box.dataset.kind,
  name: box.dataset.name,
  choices:
    box.dataset.kind === "select" && !("loose" in box.dataset) ? [...box.options].map((o) => o.value) : null,
  unknown: "unknown" in box.dataset,
}));
/** The lengths of a vehicle that is measured by hand, as the page asks for them. */
export const TAPES = [...document.querySelectorAll("[data-tape]")].map((box) => ({
  box,
  key: box.dataset.tape,
  name: box.dataset.name,
  ranges: box.dataset.ranges.split(" "),
  needed: "needed" in box.dataset,
}));

/** A value of the job file as the choice it is, "" where nothing is said; undefined where it is none of them. */
export function choiceOf({ choices, unknown }, value) {
  const said = typeof value === "boolean" ? { true: "yes", false: "no" }[value] : value;
  if (said === undefined || (said === "unknown" && unknown)) return "";
  return choices.includes(said) ? said : undefined;
}

function readBack(text) {
  if (!text) return "";
  try {
    const metres = parseLength(text);
    return `${metric(metres)} · ${inches(metres)}`;
  } catch (error) {
    return error.message;
  }
}

const tell = (box) => {
  byId(`${box.id}-back`).textContent = readBack(box.value.trim());
};

/** What somebody has put into a box, as the job file has it; "" for nothing. */
const READ = {
  length: (box) => box.value.trim(),
  text: (box) => box.value.trim(),
  select: (box) => box.value,
  number: (box) => {
    const text = box.value.trim();
    return text === "" ? "" : +(Number(text) / box.dataset.times).toFixed(8);
  },
  lines: (box) => [...box.value.split("\n").map((t) => t.trim())].filter(Boolean),
  checks: (box) => [...box.querySelectorAll("input:checked")].map((one) => one.value),
};

/** And the other way: a value of the job file in its box. */
const WRITE = {
  length: (box, value) => {
    box.value = typeof value === "number" ? `${value} m` : (value ?? "");
    tell(box);
  },
  text: (box, value) => {
    box.value = value ?? "";
  },
  number: (box, value) => {
    box.value = value === undefined ? "" : +(value * box.dataset.times).toFixed(6);
  },
  lines: (box, value) => {
    box.value = (value ?? []).join("\n");
  },
  checks: (box, value) => {
    for (const one of box.querySelectorAll("input")) one.checked = (value ?? ["forward"]).includes(one.value);
  },
  /** A choice that an opened file has and the list has not stays in sight, to be chosen again. */
  select: (box, value, question) => {
    box.querySelector("[data-odd]")?.remove();
    const chosen = question.choices ? choiceOf(question, value) : (value ?? "");
    const shown = chosen === "" ? box.options[0].value : (chosen ?? String(value));
    if (![...box.options].some((o) => o.value === shown))
      box.append(h("option", { value: shown, "data-odd": true }, shown));
    box.value = shown;
    const beside = box.parentElement.querySelector(":scope > .whence");
    if (beside) beside.hidden = !box.value;
  },
};

/** Listens to every box, once. */
export function listen(model, fill) {
  for (const question of QUESTIONS)
    question.box.addEventListener(question.kind === "select" ? "change" : "input", () => {
      model.set(question.path, READ[question.kind](question.box));
      if (question.kind === "length") tell(question.box);
      const beside =
        question.kind === "select" && question.box.parentElement.querySelector(":scope > .whence");
      if (beside) beside.hidden = !question.box.value;
    });
  for (const { box, key } of TAPES)
    box.addEventListener("input", () => {
      model.typed[key] = box.value.trim();
      tell(box);
      model.changed();
    });
  byId("v-name").addEventListener("input", (e) => {
    model.typed.name = e.target.value.trim();
    model.changed();
  });
  byId("v-choice").addEventListener("change", (e) => {
    model.choice = e.target.value;
    fill();
  });
  byId("v-open").addEventListener("change", async (e) => {
    const file = e.target.files[0];
    try {
      model.openVehicle(file.name, await file.text());
      byId("v-wrong").textContent = "";
      fill();
    } catch (error) {
      byId("v-wrong").textContent = `${file.name}: ${error.message.split("\n")[0]}`;
    }
  });
  const counted = [...document.querySelectorAll("#asked .section")].filter((s) => s.querySelector(".count"));
  model.addEventListener("change", () => {
    for (const section of counted) {
      const asks = QUESTIONS.filter(({ box }) => section.contains(box) && !("beside" in box.dataset));
      const answered = asks.filter(({ path }) => model.get(path) !== undefined);
      section.querySelector(".count").textContent = `${answered.length} of ${asks.length} answered`;
    }
  });
}

/** Everything that the job says, in its box. */
export function fillIn(model, units) {
  for (const box of document.querySelectorAll("[data-metric]")) box.placeholder = box.dataset[units];
  for (const question of QUESTIONS) WRITE[question.kind](question.box, model.get(question.path), question);
  for (const { box, key } of TAPES) WRITE.length(box, model.typed[key]);
  byId("v-name").value = model.typed.name;
  byId("v-choice").value = model.choice;
  const kind = ["typed", "own"].includes(model.choice) ? model.choice : "made up";
  for (const part of document.querySelectorAll("[data-vehicle]")) part.hidden = part.dataset.vehicle !== kind;
  byId("v-own").textContent = model.own?.doc
    ? `Using ${model.own.file}.`
    : model.own
      ? `The job names ${model.own.file}. Open it here to see its size on the plan.`
      : "Open the vehicle file to see its size on the plan.";
  loads(model);
}

/** The load states that the vehicle file knows, where there is a choice. */
function loads(model) {
  const home = byId("f-vehicle-load"),
    path = ["vehicle", "load"],
    chosen = model.get(path) ?? ["as measured"];
  const put = () => model.set(path, READ.checks(home));
  const boxes = model.loads.map((name, k) => {
    const id = `f-vehicle-load-${k}`;
    const box = h("input", {
      type: "checkbox",
      id,
      value: name,
      checked: chosen.includes(name),
      onchange: put,
    });
    return h("label", { class: "choice", for: id }, box, name);
  });
  home.hidden = boxes.length < 2;
  home.replaceChildren(h("legend", {}, "Check it when loaded"), ...boxes);
}
