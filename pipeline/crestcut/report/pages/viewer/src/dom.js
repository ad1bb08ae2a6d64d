// Small helpers for building the page. Text only ever enters through textContent: a title or a file name cannot become markup.

const SVG = "http://www.w3.org/2000/svg";

/** An element with attributes, listeners (`onclick`) and children (nodes or text). */
export function h(tag, attributes = {}, ...children) {
  return fill(document.createElement(tag), attributes, children);
}

/** The same for SVG. */
export function s(tag, attributes = {}, ...children) {
  return fill(document.createElementNS(SVG, tag), attributes, children);
}

function fill(element, attributes, children) {
  for (const [key, value] of Object.entries(attributes)) {
    if (value === null || value === undefined || value === false) continue;
    if (key.startsWith("on")) element.addEventListener(key.slice(2), value);
    else if (key === "value" && "value" in element) element.value = value;
    else if (key === "checked") element.checked = Boolean(value);
    else element.setAttribute(key, value === true ? "" : String(value));
  }
  element.append(...children.flat(Infinity).filter((c) => c !== null && c !== undefined && c !== false));
  return element;
}

export const byId = (id) => document.getElementById(id);

/** Says something to screen readers and in the page's one status line. */
export function announce(text) {
  const line = byId("said");
  if (line) line.textContent = text;
}

/** A round step (1, 2 or 5 times a power of ten) not below `least`. */
export function roundStep(least) {
  const ten = 10 ** Math.floor(Math.log10(least));
  return [1, 2, 5, 10].map((m) => m * ten).find((step) => step >= least * 0.999999);
}

/** What an area that is not to be cut is called on this page. */
export const areaName = () => byId("tool-keep")?.dataset.name ?? "Keep area";
