// The tapped points as figures: for those who type, and to see what was tapped.

import { areaName, byId, h } from "./dom.js";

/** Writes the list anew, unless someone is typing in it. */
export function points(model) {
  const home = byId("points");
  if (!home || home.contains(document.activeElement)) return;
  const row = (id, name, point, put, drop, extra = null) =>
    h(
      "div",
      { class: "point", id, tabindex: -1 },
      h("span", { class: "point-name" }, name),
      extra,
      Array.isArray(point)
        ? [0, 1].map((axis) =>
            h("input", {
              type: "text",
              inputmode: "decimal",
              "aria-label": `${typeof name === "string" ? name : ""} ${"xy"[axis]}`,
              value: String(point[axis]),
              onchange: (e) => {
                const value = Number(e.target.value);
                if (!Number.isFinite(value) || e.target.value.trim() === "") {
                  e.target.setAttribute("aria-invalid", "true");
                  return;
                }
                model.remember();
                put(point.map((old, k) => (k === axis ? value : old)));
                model.changed();
              },
            }),
          )
        : h(
            "span",
            { class: "hint" },
            typeof point === "string" ? `at mark ${point}` : "by tape from two marks",
          ),
      h("button", { type: "button", "aria-label": `Take away ${name}`, onclick: drop }, "×"),
    );
  const line = model.line.map((p, k) =>
    row(
      `line-${k}`,
      `Line ${k + 1}`,
      p,
      (at) => {
        model.line[k] = at;
      },
      () => {
        model.drop("line", k);
      },
    ),
  );
  const marks = model.marks.map((m, k) =>
    row(
      `mark-${k}`,
      `Mark`,
      m.at,
      (at) => {
        m.at = at;
      },
      () => model.drop("mark", k),
      h("input", {
        type: "text",
        "aria-label": `Name of mark ${k + 1}`,
        value: m.name,
        onchange: (e) => {
          model.remember();
          m.name = e.target.value.trim();
          model.changed();
        },
      }),
    ),
  );
  const keeps = model.keeps.map((keep, k) =>
    h(
      "div",
      { class: "point two", id: `keep-${k}`, tabindex: -1 },
      h("span", { class: "point-name" }, `${areaName().replace(" area", "")} ${k + 1}`),
      h("input", {
        type: "text",
        "aria-label": `What ${areaName().toLowerCase()} ${k + 1} is`,
        list: "keep-kinds",
        value: keep.kind,
        onchange: (e) => {
          keep.kind = e.target.value.trim() || "other";
          model.changed();
        },
      }),
      h("input", {
        type: "text",
        "aria-label": `Deepest cut in ${areaName().toLowerCase()} ${k + 1}`,
        value: keep.deepest ?? "0 mm",
        onchange: (e) => {
          keep.deepest = e.target.value.trim();
          model.changed();
        },
      }),
      h(
        "button",
        {
          type: "button",
          "aria-label": `Take away ${areaName().toLowerCase()} ${k + 1}`,
          onclick: () => model.drop("keep", k),
        },
        "×",
      ),
      over(model, keep, k),
    ),
  );
  home.replaceChildren(
    line.length
      ? h("div", {}, line)
      : h("p", { class: "hint" }, "Choose “Line” above the plan and tap its start and end."),
    h("div", {}, marks),
    h("div", {}, keeps),
    h(
      "datalist",
      { id: "keep-kinds" },
      ["joint", "drain", "door seal", "barrier", "property line", "walk", "public walk"].map((kind) =>
        h("option", { value: kind }),
      ),
    ),
    ...(keeps.length
      ? [
          h(
            "p",
            { class: "hint" },
            `Beside each ${areaName().toLowerCase()}: what it is, what was located in the slab there, and the deepest cut allowed.`,
          ),
        ]
      : []),
  );
}

/** What was located under a keep area: the choices that the page carries. */
function over(model, keep, k) {
  const box = byId("over").content.firstElementChild.cloneNode(true);
  box.setAttribute("aria-label", `What was located under ${areaName().toLowerCase()} ${k + 1}`);
  box.value = keep.over ?? "";
  box.addEventListener("change", () => {
    model.remember();
    if (box.value) keep.over = box.value;
    else delete keep.over;
    model.changed();
  });
  return box;
}
