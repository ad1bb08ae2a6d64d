// What the colours on the slab mean.

import { byId, h, s } from "./dom.js";
import { ramp } from "./paint.js";
import { show } from "./units.js";

const w = 220; // pixels of the ramp

/** The ramp from nothing to `top` metres with its contour `levels`, and what plain concrete means; or, where nothing is coloured, `none`. */
export function legend({ name, top, levels, none, plain, stops, units }) {
  const home = byId("legend");
  if (none) {
    home.replaceChildren(h("span", {}, none));
    return;
  }
  const bands = Array.from({ length: 33 }, (_, k) =>
    s("rect", {
      x: (k * w) / 33,
      y: 16,
      width: w / 33 + 0.5,
      height: 12,
      fill: `rgb(${ramp(stops, k / 32)
        .map(Math.round)
        .join(" ")})`,
    }),
  );
  const every = Math.ceil(levels.length / (units === "inches" ? 4 : 3));
  const ticks = levels
    .filter((_, k) => k % every === every - 1 || levels.length < 5)
    .filter((l) => l < top * 0.86)
    .map((level) => {
      const x = (level / top) * w;
      return [
        s("path", { d: `M${x} 14V30`, class: "tick" }),
        s("text", { x, y: 42, "text-anchor": "middle" }, show(level, units, level % 0.001 > 1e-6 ? 1 : 0)),
      ];
    });
  home.replaceChildren(
    s(
      "svg",
      {
        viewBox: "0 0 290 46",
        width: 290,
        height: 46,
        role: "img",
        "aria-label": `${name}: from nothing to ${show(top, units)}`,
      },
      s("text", { x: 0, y: 11, class: "name" }, name),
      ...bands,
      ...ticks.flat(),
      s("text", { x: w + 6, y: 27 }, show(top, units)),
    ),
    h("span", { class: "key" }, h("span", { class: "swatch concrete" }), plain),
  );
}
