// Pictures of the ground as pixels: relief, scan colour, and one sequential ramp over concrete grey. Holes stay transparent.

export const CONCRETE = [176, 174, 170];

/** Means over 3 x 3 nodes, so that a scan's noise does not sparkle in the relief; holes stay holes. */
function calm({ nx, ny, values }) {
  const out = new Float32Array(nx * ny);
  for (let j = 0; j < ny; j++) {
    for (let i = 0; i < nx; i++) {
      let sum = 0,
        n = 0;
      for (let b = Math.max(j - 1, 0); b <= Math.min(j + 1, ny - 1); b++) {
        for (let a = Math.max(i - 1, 0); a <= Math.min(i + 1, nx - 1); a++) {
          const value = values[b * nx + a];
          if (!Number.isNaN(value)) {
            sum += value;
            n++;
          }
        }
      }
      out[j * nx + i] = Number.isNaN(values[j * nx + i]) ? NaN : sum / n;
    }
  }
  return out;
}

/** Shade 0..1 of every node, lit from the upper left; `steep` exaggerates the slopes. */
function shades(raster, steep) {
  const { nx, ny, cell } = raster;
  const z = calm(raster);
  const out = new Float32Array(nx * ny).fill(0.75);
  const light = [-0.5, 0.6, 0.62];
  for (let j = 0; j < ny; j++) {
    for (let i = 0; i < nx; i++) {
      const k = j * nx + i;
      const west = z[i ? k - 1 : k],
        east = z[i < nx - 1 ? k + 1 : k];
      const south = z[j ? k - nx : k],
        north = z[j < ny - 1 ? k + nx : k];
      let p = ((east - west) / (2 * cell)) * steep,
        q = ((north - south) / (2 * cell)) * steep;
      if (!Number.isFinite(p)) p = 0;
      if (!Number.isFinite(q)) q = 0;
      out[k] = Math.max(0, (-p * light[0] - q * light[1] + light[2]) / Math.hypot(p, q, 1));
    }
  }
  return out;
}

/** RGB of the ramp at t in 0..1; `stops` is a list of [r, g, b]. */
export function ramp(stops, t) {
  const place = Math.min(Math.max(t, 0), 1) * (stops.length - 1);
  const i = Math.min(Math.floor(place), stops.length - 2),
    f = place - i;
  return stops[i].map((low, k) => low + f * (stops[i + 1][k] - low));
}

/** Canvas of the grid (row 0 at the bottom) whose pixel colour at node k is `colour(k)`, or nothing where it is null. */
function canvasOf(raster, colour) {
  const { nx, ny } = raster;
  const canvas = document.createElement("canvas");
  canvas.width = nx;
  canvas.height = ny;
  const context = canvas.getContext("2d");
  const image = context.createImageData(nx, ny);
  for (let j = 0; j < ny; j++) {
    for (let i = 0; i < nx; i++) {
      const rgb = colour(j * nx + i);
      if (!rgb) continue;
      const at = 4 * ((ny - 1 - j) * nx + i);
      image.data[at] = rgb[0];
      image.data[at + 1] = rgb[1];
      image.data[at + 2] = rgb[2];
      image.data[at + 3] = 255;
    }
  }
  context.putImageData(image, 0, 0);
  return canvas;
}

/** The slab from above: scan colour where there is one, relief over it. */
export function paintRelief(height, colours) {
  const shade = shades(height, 3);
  return canvasOf(height, (k) => {
    if (Number.isNaN(height.values[k])) return null;
    const light = 0.35 + 0.85 * shade[k];
    return [0, 1, 2].map(
      (c) => (colours ? 0.25 * CONCRETE[c] + 0.75 * colours[3 * k + c] : CONCRETE[c]) * light,
    );
  });
}

/** A value over concrete grey: grey where it is at or below `zero`, the ramp up to `top`; relief over both, holes stay holes. */
export function paintValue(height, values, stops, concrete, zero, top) {
  const shade = shades(height, 2);
  return canvasOf(height, (k) => {
    if (Number.isNaN(height.values[k])) return null;
    const value = values[k];
    const base = value > zero ? ramp(stops, (value - zero) / (top - zero)) : concrete;
    const light = 0.5 + 0.72 * shade[k];
    return base.map((c) => c * light);
  });
}
