// The vehicle on its line, seen from above: the path of its middle, and where its wheels stand.

import { Path, TooTight, beside, leastRadius } from "./path.js";

/** How far the vehicle's middle lies to the left of the drawn line, metres. */
const shift = (model, sizes) =>
  ({ left: -sizes.rearTrack / 2, right: sizes.rearTrack / 2 })[model.doc.travel.track] ?? 0;

/**
 * What the vehicle drives, in grid metres: {drawn, path, tight, least}. `drawn`: the tapped points; `path`: its middle, null below two
 * points; `tight`: the bend it cannot take (the path then rounds it as wide as the points allow); `least`: its tightest radius, null if unknown.
 */
export function routeOf(model, plan) {
  const drawn = model.line
    .map((p) => model.resolve(p))
    .filter(Boolean)
    .map((p) => plan.toGrid(p));
  const sizes = model.sizes;
  const least = sizes ? leastRadius(sizes) : null;
  const route = { drawn, path: null, tight: null, least };
  if (drawn.length < 2) return route;
  const middle = sizes ? beside(drawn, shift(model, sizes)) : drawn;
  try {
    route.path = new Path(middle, Number.isNaN(least) ? null : least);
  } catch (error) {
    if (!(error instanceof TooTight)) throw error;
    route.tight = error;
    route.path = new Path(middle, null);
  }
  if (!(route.path.long > 0)) route.path = null;
  return route;
}

/** How far the rear axle drives, metres: the wheels stay between the line's ends. */
export const driven = (path, sizes) => Math.max(path.long - sizes.wheelbase, 0);

/**
 * The four tyres [u, v] with the rear axle `distance` along: front left, front right, rear left, rear right. A variant is driven `offset`
 * metres to the left of the line as drawn and turned to the left by `heading` radians; "turned" starts at the line's other end.
 */
export function wheels(
  path,
  distance,
  { wheelbase, frontTrack, rearTrack },
  { offset = 0, heading = 0, way: driving = "forward" } = {},
) {
  const turned = driving === "turned";
  const { at: middle, way, yaw } = path.place(turned ? path.long - distance : distance);
  const at = [middle[0] - offset * way[1], middle[1] + offset * way[0]];
  const nose = yaw + heading + (turned ? Math.PI : 0),
    ahead = [Math.cos(nose), Math.sin(nose)];
  return [
    [wheelbase, frontTrack / 2],
    [wheelbase, -frontTrack / 2],
    [0, rearTrack / 2],
    [0, -rearTrack / 2],
  ].map(([x, y]) => [at[0] + ahead[0] * x - ahead[1] * y, at[1] + ahead[1] * x + ahead[0] * y]);
}
