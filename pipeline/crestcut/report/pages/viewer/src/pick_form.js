// The short list of questions beside the plan. Each knows its key in the job file, so that the page and the file cannot drift apart.

import { h } from "./dom.js";
import { MORE, SECTIONS, TAPE, choiceOf, choicesOf, sourceOf } from "./pick_questions.js";
import { inches, metric, parseLength } from "./units.js";

function readBack(text) {
  if (!text) return "";
  try {
    const metres = parseLength(text);
    return `${metric(metres)} · ${inches(metres)}`;
  } catch (error) {
    return error.message;
  }
}

/** A labelled length box that says back, in both units, what it read. */
function lengthBox({ id, name, help, value, empty, units, put }) {
  const back = h("output", { class: "back", for: id, id: `${id}-back` }, readBack(value));
  const box = h("input", {
    id,
    type: "text",
    inputmode: "text",
    autocomplete: "off",
    spellcheck: "false",
    value: value ?? "",
    placeholder: empty[units === "inches" ? 1 : 0],
    "aria-describedby": `${id}-back`,
  });
  box.addEventListener("input", () => {
    const text = box.value.trim();
    back.textContent = readBack(text);
    put(text);
  });
  return h(
    "div",
    { class: "field" },
    h("label", { for: id }, name),
    help ? h("span", { class: "hint" }, help) : null,
    box,
    back,
  );
}

/** What stands in an empty box, in both systems: what is taken where nothing is written, or an example. */
function hint(ask, model) {
  const spare = model.rule(ask.key).default ?? model.data.slab[ask.spare];
  return ask.like ?? [metric(spare).replace(".0 mm", " mm"), inches(spare)];
}

function question(ask, model, units) {
  const id = `f-${ask.path.join("-")}`;
  const value = model.get(ask.path);
  const put = (next) => model.set(ask.path, next);
  if (ask.kind === "length")
    return lengthBox({
      ...ask,
      id,
      empty: hint(ask, model),
      value: typeof value === "number" ? `${value} m` : value,
      units,
      put,
    });
  if (ask.kind === "checks") return checks(ask.name, choicesOf(ask, model), id, value ?? ["forward"], put);
  let control;
  if (ask.kind === "select") {
    control = select(id, ask, model, put);
  } else if (ask.kind === "lines") {
    control = h("textarea", {
      id,
      rows: 2,
      spellcheck: "false",
      oninput: (e) =>
        put(
          e.target.value
            .split("\n")
            .map((t) => t.trim())
            .filter(Boolean),
        ),
    });
    control.value = (value ?? []).join("\n");
  } else {
    const factor = ask.kind === "percent" ? 100 : 1;
    const number = ask.kind !== "text";
    const shown = value === undefined ? "" : number ? +(value * factor).toFixed(6) : value;
    control = h("input", {
      id,
      type: "text",
      inputmode: number ? "decimal" : "text",
      autocomplete: "off",
      value: shown,
      placeholder: number ? +(model.rule(ask.key).default * factor).toFixed(6) : "",
    });
    control.addEventListener("input", () => {
      const text = control.value.trim();
      put(text === "" ? "" : number ? +(Number(text) / factor).toFixed(8) : text);
    });
  }
  const how = ask.from ? whence(`${id}_from`, sourceOf(`${ask.key}_from`), control.value, model) : null;
  if (how)
    control.addEventListener("change", () => {
      how.hidden = !control.value;
    });
  return h(
    "div",
    { class: "field" },
    h("label", { for: id }, ask.name),
    ask.help ? h("span", { class: "hint" }, ask.help) : null,
    control,
    how,
  );
}

/** A choice; one that an opened file has and the list has not stays in sight, to be chosen again. */
function select(id, ask, model, put) {
  const options = choicesOf(ask, model),
    value = model.get(ask.path);
  const chosen = ask.options ? (value ?? "") : choiceOf(ask, model, value);
  const box = h(
    "select",
    { id, onchange: (e) => put(e.target.value) },
    options.map(([key, text]) => h("option", { value: key }, text)),
  );
  const shown = chosen === "" ? options[0][0] : chosen;
  if (!options.some(([key]) => key === shown))
    box.append(h("option", { value: String(value) }, String(value)));
  box.value = shown ?? String(value);
  return box;
}

function whence(id, ask, answer, model) {
  const box = select(id, ask, model, (next) => model.set(ask.path, next));
  return h("div", { class: "whence", hidden: !answer }, h("label", { for: id }, ask.name), box);
}

function checks(name, options, id, value, put) {
  const boxes = options.map(([key, text]) => {
    const box = h("input", { type: "checkbox", id: `${id}-${key}`, checked: value.includes(key) });
    box.addEventListener("change", () =>
      put(options.map(([k]) => k).filter((k, i) => boxes[i].firstChild.checked)),
    );
    return h("label", { class: "choice", for: `${id}-${key}` }, box, text);
  });
  return h("fieldset", { class: "field", id, tabindex: -1 }, h("legend", {}, name), boxes);
}

/** All sections but the vehicle's and the points'. */
export function questions(model, units) {
  return SECTIONS.map((section) => {
    const answered = () => section.ask.filter((a) => model.get(a.path) !== undefined).length;
    const count = h("span", { class: "count" });
    const tell = () => {
      count.textContent = `${answered()} of ${section.ask.length} answered`;
    };
    model.addEventListener("change", tell);
    tell();
    return h(
      "details",
      { class: "section", open: section.open },
      h("summary", {}, h("span", { class: "section-title" }, section.title), count),
      section.note ? h("p", { class: "hint" }, section.note) : null,
      section.ask.map((ask) => question(ask, model, units)),
    );
  });
}

/** Which vehicle: a generic one, five tape lengths, or a file. */
export function vehicleSection(model, units, redraw) {
  const names = [
    ...model.data.vehicles.map((v) => [v.file, `${v.doc.name} (made up)`]),
    ["typed", "my own: five tape lengths"],
    ["own", "my own: a vehicle file"],
  ];
  const choose = h(
    "select",
    { id: "v-choice" },
    names.map(([key, text]) => h("option", { value: key }, text)),
  );
  choose.value = model.choice;
  choose.addEventListener("change", () => {
    model.choice = choose.value;
    model.changed();
    redraw();
  });
  const put = (key) => (text) => {
    model.typed[key] = text;
    model.changed();
  };
  const tape = ([key, name, help, empty]) =>
    lengthBox({ id: `v-${key}`, name, help, empty, value: model.typed[key], units, put: put(key) });
  const body = [h("div", { class: "field" }, h("label", { for: "v-choice" }, "Which vehicle"), choose)];
  if (model.choice === "typed") {
    body.push(
      h(
        "div",
        { class: "field" },
        h("label", { for: "v-name" }, "Its name"),
        h("input", {
          id: "v-name",
          type: "text",
          value: model.typed.name,
          oninput: (e) => put("name")(e.target.value.trim()),
        }),
      ),
      h(
        "p",
        { class: "hint" },
        "On flat ground, driver in, never on a jack; each with its unit, like 2620 mm or 8 ft 7 in. Both axles are taken as equally wide.",
      ),
      TAPE.map(tape),
      h(
        "details",
        { class: "inner" },
        h(
          "summary",
          {},
          "Nose, tail, body and turning (worth it where the slab starts or ends in a dip, or the line bends)",
        ),
        MORE.map(tape),
      ),
    );
  } else if (model.choice === "own") {
    body.push(
      h(
        "p",
        { class: "hint" },
        model.own?.doc
          ? `Using ${model.own.file}.`
          : model.own
            ? `The job names ${model.own.file}. Open it here to see its size on the plan.`
            : "Open the vehicle file to see its size on the plan.",
      ),
      h(
        "label",
        { class: "file-button" },
        "Open vehicle file",
        h("input", {
          type: "file",
          id: "v-open",
          accept: ".toml",
          onchange: (e) => openVehicle(e, model, redraw),
        }),
      ),
      h("p", { class: "wrong", id: "v-wrong", role: "status" }),
    );
  } else
    body.push(
      h(
        "p",
        { class: "hint" },
        "A generic vehicle shows the way the page works. Before anyone cuts, measure the real one.",
      ),
    );
  if (model.loads.length > 1)
    body.push(
      checks(
        "Check it when loaded",
        model.loads.map((name) => [name, name]),
        "f-vehicle-load",
        model.get(["vehicle", "load"]) ?? ["as measured"],
        (next) => model.set(["vehicle", "load"], next),
      ),
    );
  return h(
    "details",
    { class: "section", open: true },
    h("summary", {}, h("span", { class: "section-title" }, "Vehicle")),
    body,
  );
}

async function openVehicle(event, model, redraw) {
  const file = event.target.files[0];
  try {
    model.openVehicle(file.name, await file.text());
    redraw();
  } catch (error) {
    document.getElementById("v-wrong").textContent = `${file.name}: ${error.message.split("\n")[0]}`;
  }
}
