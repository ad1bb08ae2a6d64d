// The vehicle in three dimensions: tyres where they stand, the underside solid, the rest only hinted at.

import {
  BufferAttribute,
  BufferGeometry,
  CylinderGeometry,
  DoubleSide,
  EdgesGeometry,
  ExtrudeGeometry,
  Group,
  LineBasicMaterial,
  LineSegments,
  Matrix4,
  Mesh,
  MeshLambertMaterial,
  Shape,
} from "three";

const CART = 1.5; // m of wheelbase: on less nobody sits in a cabin (common practice, no source)

/** A plain side shape [x, z], only there to recognise front and back: a deck for carts, else body and cabin. */
export function sideShape({ wheelbase: L, radius: R, belly, overhangs, rigid, parts }) {
  const nose = L + (overhangs[0] ?? Math.max(R * 1.2, ...parts.map((p) => p.x[1] - L)));
  const tail = -(overhangs[1] ?? Math.max(R * 1.2, ...parts.map((p) => -p.x[0])));
  const floor = Math.max(belly + 0.06, R * 0.9),
    cart = rigid || L < CART,
    top = cart ? floor + 0.12 : floor + Math.max(0.42, R * 1.4),
    roof = top + 0.5;
  const above = cart
    ? [
        [nose, top],
        [tail, top],
      ]
    : [
        [nose, floor + (top - floor) * 0.7],
        [nose - 0.12 * L, top],
        [L * 0.78, top + 0.04],
        [L * 0.5, roof],
        [tail + 0.25, roof],
        [tail, top],
      ];
  return [[tail, floor], [nose, floor], ...above];
}

export class Car {
  constructor(stage, drive) {
    this.stage = stage;
    this.drive = drive;
    this.frames = [new Group(), new Group(), new Group()];
    this.frames.forEach((frame) => {
      frame.matrixAutoUpdate = false;
      stage.world.add(frame);
    });
    this.wheels = [0, 1, 2, 3].map(() => this.#wheel());
    for (const part of drive.vehicle.parts) this.frames[part.frame].add(this.#plate(part));
    this.hull = this.#hull();
    this.frames[0].add(this.hull);
    for (const group of [...this.frames, ...this.wheels])
      group.traverse((object) => {
        if (object.isMesh || object.isLineSegments) stage.moving.push(object);
      });
  }

  #wheel() {
    const { radius, tyre } = this.drive.vehicle;
    const wheel = new Group();
    const rubber = new Mesh(
      new CylinderGeometry(radius, radius, tyre, 40),
      new MeshLambertMaterial({ color: 0x2b2927 }),
    );
    const disc = new Mesh(
      new CylinderGeometry(radius * 0.55, radius * 0.55, tyre * 1.02, 24),
      new MeshLambertMaterial({ color: 0x8d8a85 }),
    );
    wheel.add(rubber, disc);
    wheel.matrixAutoUpdate = false;
    this.stage.world.add(wheel);
    return wheel;
  }

  #plate({ x, y, z, soft }) {
    const corners = new Float32Array([
      x[0],
      y[0],
      z[0],
      x[1],
      y[0],
      z[1],
      x[1],
      y[1],
      z[1],
      x[0],
      y[1],
      z[0],
    ]);
    const geometry = new BufferGeometry();
    geometry.setAttribute("position", new BufferAttribute(corners, 3));
    geometry.setIndex([0, 1, 2, 0, 2, 3]);
    geometry.computeVertexNormals();
    const group = new Group();
    group.add(
      new Mesh(
        geometry,
        new MeshLambertMaterial({
          color: 0x2f8ba3,
          side: DoubleSide,
          transparent: true,
          opacity: soft ? 0.3 : 0.75,
        }),
      ),
      new LineSegments(new EdgesGeometry(geometry), new LineBasicMaterial({ color: 0x06323d })),
    );
    return group;
  }

  /** The side shape pulled across. */
  #hull() {
    const { width } = this.drive.vehicle;
    const shape = new Shape();
    sideShape(this.drive.vehicle).forEach(([x, z], k) => (k ? shape.lineTo(x, z) : shape.moveTo(x, z)));
    const geometry = new ExtrudeGeometry(shape, { depth: width * 0.96, bevelEnabled: false });
    geometry.rotateX(Math.PI / 2).translate(0, (width * 0.96) / 2, 0);
    const hull = new Group();
    const skin = new Mesh(
      geometry,
      new MeshLambertMaterial({
        color: 0xdfe7e9,
        transparent: true,
        opacity: 0.28,
        depthWrite: false,
        side: DoubleSide,
      }),
    );
    hull.add(
      skin,
      new LineSegments(new EdgesGeometry(geometry, 20), new LineBasicMaterial({ color: 0x38484d })),
    );
    return hull;
  }

  /** Stands the vehicle at a station. */
  stand(k) {
    const [cu, cv] = [this.stage.size[0] / 2, this.stage.size[1] / 2],
      level = this.stage.level;
    this.frames.forEach((frame, f) => {
      const r = this.drive.rotation(k, f),
        p = this.drive.origin(k, f);
      frame.matrix.set(
        r[0],
        r[1],
        r[2],
        p[0] - cu,
        r[3],
        r[4],
        r[5],
        p[1] - cv,
        r[6],
        r[7],
        r[8],
        p[2] - level,
        0,
        0,
        0,
        1,
      );
      frame.matrixWorldNeedsUpdate = true;
    });
    this.wheels.forEach((wheel, w) => {
      const [u, v, z] = this.drive.hub(k, w);
      const r = this.drive.rotation(k, w < 2 ? 1 : 2);
      // the cylinder's own axis is y: across the vehicle, along its axle
      wheel.matrix.copy(
        new Matrix4()
          .set(r[0], r[1], r[2], 0, r[3], r[4], r[5], 0, r[6], r[7], r[8], 0, 0, 0, 0, 1)
          .setPosition(u - cu, v - cv, z - level),
      );
      wheel.matrixWorldNeedsUpdate = true;
    });
    this.stage.request();
  }

  set visible(on) {
    [...this.frames, ...this.wheels].forEach((g) => {
      g.visible = on;
    });
    this.stage.request();
  }
}
