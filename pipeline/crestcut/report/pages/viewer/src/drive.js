// The vehicle's stations as the program worked them out: chassis points onto the grid, tyres, least gap.

import { unpackNumbers } from "./raster.js";

/** Numbers of one state of the slab: where each frame is and how it is turned, lowest points of the tyres, least gaps. */
async function poses({ place, turn, wheels, gap }) {
  return {
    place: await unpackNumbers(place),
    turn: await unpackNumbers(turn),
    wheels: await unpackNumbers(wheels),
    gap,
  };
}

export class Drive {
  static async of(data) {
    const drive = new Drive();
    Object.assign(drive, data.drive);
    drive.states = {
      today: await poses(data.drive),
      after: data.drive.after && (await poses(data.drive.after)),
    };
    drive.use("today");
    drive.vehicle = data.vehicle;
    drive.count = drive.stations.length;
    return drive;
  }

  /** Stands on the slab as it is ("today") or as it will be ("after"). */
  use(state) {
    Object.assign(this, this.states[state]);
  }

  /** Chassis point (x, y, z) at a station on grid u, v, z; `frame`: 0 body, 1 front axle, 2 rear axle. */
  point(k, [x, y, z], frame = 0) {
    const at = 9 * k + 3 * frame,
      t = 27 * k + 9 * frame,
      r = this.turn,
      p = this.place;
    return [
      r[t] * x + r[t + 1] * y + r[t + 2] * z + p[at],
      r[t + 3] * x + r[t + 4] * y + r[t + 5] * z + p[at + 1],
      r[t + 6] * x + r[t + 7] * y + r[t + 8] * z + p[at + 2],
    ];
  }

  /** The nine numbers that turn a frame, row by row. */
  rotation(k, frame = 0) {
    return this.turn.subarray(27 * k + 9 * frame, 27 * k + 9 * frame + 9);
  }

  origin(k, frame = 0) {
    return this.place.subarray(9 * k + 3 * frame, 9 * k + 3 * frame + 3);
  }

  /** Hub of wheel w (front left, front right, rear left, rear right) as it stands. */
  hub(k, w) {
    const { wheelbase, tracks, radius } = this.vehicle;
    const track = tracks[w < 2 ? 0 : 1],
      side = w % 2 ? -1 : 1;
    const frame = w < 2 ? 1 : 2,
      r = this.rotation(k, frame);
    const [u, v] = this.point(k, [w < 2 ? wheelbase : 0, (side * track) / 2, radius], frame);
    // a wheel leans with its axle
    return [u, v, this.wheels[4 * k + w] + (radius * r[8]) / Math.hypot(r[7], r[8])];
  }

  /** Unit vector ahead in plan. */
  ahead(k) {
    const r = this.rotation(k),
      long = Math.hypot(r[0], r[3]);
    return [r[0] / long, r[3] / long];
  }

  /** Lowest underside at x ahead of the rear axle and y left of the middle: height and part, or null where there is none. */
  underside(k, x, y) {
    let low = null;
    for (const part of this.vehicle.parts) {
      if (part.soft || x < part.x[0] || x > part.x[1] || y < part.y[0] || y > part.y[1]) continue;
      const z = part.z[0] + ((part.z[1] - part.z[0]) * (x - part.x[0])) / (part.x[1] - part.x[0] || 1);
      const height = this.point(k, [x, y, z], part.frame)[2];
      if (!low || height < low.height) low = { height, part: part.name };
    }
    return low;
  }
}
