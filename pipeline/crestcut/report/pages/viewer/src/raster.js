// Rasters as the page carries them: quantised, delta-coded, deflated, base64. Not measured is NaN.

/** Bytes of a base64 text that holds a zlib stream. */
async function inflate(text) {
  const packed = Uint8Array.from(atob(text), (c) => c.charCodeAt(0));
  const stream = new Blob([packed]).stream().pipeThrough(new DecompressionStream("deflate"));
  return new Uint8Array(await new Response(stream).arrayBuffer());
}

/** Float32Array of a layer {step, zero, data}: 16-bit codes, differences along the file, low bytes then high bytes; 65535 = NaN. */
export async function unpackLayer(layer) {
  const bytes = await inflate(layer.data);
  const n = bytes.length / 2;
  const out = new Float32Array(n);
  let code = 0;
  for (let i = 0; i < n; i++) {
    code = (code + bytes[i] + (bytes[n + i] << 8)) & 0xffff;
    out[i] = code === 0xffff ? NaN : layer.zero + code * layer.step;
  }
  return out;
}

/** Uint8Array (3 n) of colours: one plane after another, differences along the file. */
export async function unpackColours(data) {
  const bytes = await inflate(data);
  const n = bytes.length / 3;
  const out = new Uint8Array(bytes.length);
  for (let plane = 0; plane < 3; plane++) {
    let value = 0;
    for (let i = 0; i < n; i++) {
      value = (value + bytes[plane * n + i]) & 0xff;
      out[3 * i + plane] = value;
    }
  }
  return out;
}

/** Float32Array of plain numbers. */
export async function unpackNumbers(data) {
  return new Float32Array((await inflate(data)).buffer);
}

/** Values on the nodes of a grid: u along columns, v along rows, metres from node [0, 0]. */
export class Raster {
  constructor(grid, values) {
    this.nx = grid.nx;
    this.ny = grid.ny;
    this.cell = grid.cell;
    this.values = values;
  }

  /** Bilinear value at u, v; NaN outside and beside a hole. */
  at(u, v) {
    const a = u / this.cell,
      b = v / this.cell;
    if (!(a >= 0 && b >= 0 && a <= this.nx - 1 && b <= this.ny - 1)) return NaN;
    const i = Math.min(Math.floor(a), this.nx - 2),
      j = Math.min(Math.floor(b), this.ny - 2);
    const f = a - i,
      g = b - j,
      k = j * this.nx + i,
      z = this.values;
    return (
      (1 - g) * ((1 - f) * z[k] + f * z[k + 1]) + g * ((1 - f) * z[k + this.nx] + f * z[k + this.nx + 1])
    );
  }

  /** Value of the nearest node; NaN outside. */
  near(u, v) {
    const i = Math.round(u / this.cell),
      j = Math.round(v / this.cell);
    return i >= 0 && j >= 0 && i < this.nx && j < this.ny ? this.values[j * this.nx + i] : NaN;
  }

  /** [least, greatest] of what was measured; [NaN, NaN] if nothing was. */
  range() {
    let low = Infinity,
      high = -Infinity;
    for (const z of this.values) {
      if (z < low) low = z;
      if (z > high) high = z;
    }
    return low > high ? [NaN, NaN] : [low, high];
  }
}

/** Grid u, v <-> plan coordinates of the scan, from the 2 x 3 matrix the page carries. */
export class Plan {
  constructor(matrix) {
    [[this.a, this.b, this.c], [this.d, this.e, this.f]] = matrix;
    this.det = this.a * this.e - this.b * this.d;
  }

  toPlan([u, v]) {
    return [this.a * u + this.b * v + this.c, this.d * u + this.e * v + this.f];
  }

  toGrid([x, y]) {
    const p = x - this.c,
      q = y - this.f;
    return [(this.e * p - this.b * q) / this.det, (this.a * q - this.d * p) / this.det];
  }
}
