// The height along the line, beside the plan.

import { h, s } from "./dom.js";
import { driven } from "./pick_route.js";
import { show } from "./units.js";

/** Height along the line, drawn tall: where the crest is. */
export function heightStrip(map, units) {
  const { path } = map.route;
  if (!path) return null;
  const n = 240,
    w = 480,
    high = 84;
  const z = Array.from({ length: n + 1 }, (_, k) => map.height.near(...path.place((path.long * k) / n).at));
  const known = z.filter(Number.isFinite);
  if (known.length < 2) return null;
  const low = Math.min(...known),
    rise = Math.max(Math.max(...known) - low, 0.02);
  let d = "",
    pen = false;
  z.forEach((value, k) => {
    if (!Number.isFinite(value)) {
      pen = false;
      return;
    }
    d += `${pen ? "L" : "M"}${((k / n) * w).toFixed(1)} ${(high - 10 - ((value - low) / rise) * (high - 24)).toFixed(1)}`;
    pen = true;
  });
  const sizes = map.model.sizes;
  const wheels = sizes
    ? [0, sizes.wheelbase].map((x) => ((map.along * driven(path, sizes) + x) / path.long) * w)
    : [];
  const tall = rise / (high - 24) / (path.long / w);
  return h(
    "figure",
    { class: "strip" },
    s(
      "svg",
      {
        viewBox: `0 0 ${w} ${high}`,
        role: "img",
        "aria-label": `Height along the line, rising and falling by ${show(rise, units)} over ${show(path.long, units)}`,
      },
      s("path", { d, class: "ground-line" }),
      ...wheels.map((x) => s("path", { d: `M${x} 4V${high - 4}`, class: "wheel-at" })),
    ),
    h(
      "figcaption",
      {},
      `Height along the line, ${(1 / tall).toFixed(0)} times taller than true; from lowest to highest ${show(rise, units)}.${sizes ? " The two bars are the axles." : ""}`,
    ),
  );
}
