// The one view of the ground that both pages use: plan from above (orthographic) or turned freely (perspective).
// Drawn only when something changed. Where the browser has no WebGL the plan is painted on a flat canvas instead.

import {
  AmbientLight,
  DirectionalLight,
  Group,
  HemisphereLight,
  OrthographicCamera,
  PerspectiveCamera,
  Scene,
  Vector3,
  WebGLRenderer,
} from "three";
import { MapControls } from "three/addons/controls/MapControls.js";
import { OrbitControls } from "three/addons/controls/OrbitControls.js";
import { s } from "./dom.js";

const UP = new Vector3(0, 0, 1);
const HURRIED = 0.45; // pixels drawn for each on the screen while the view turns, without a graphics card
const GLIDING = 0.5; // the same while only the vehicle moves

export class Stage {
  /** `size` = [metres along u, metres along v]; `level` = mean height, drawn as z = 0. `plan`: from above only. */
  constructor(holder, { size, level = 0, plan = false, noWebGL = false }) {
    this.holder = holder;
    this.size = size;
    this.level = level;
    this.exaggeration = 1;
    this.scene = new Scene();
    this.world = new Group();
    this.scene.add(this.world);
    this.drawn = []; // called after each picture, to move the labels
    this.fixed = []; // what {rest, glide} must do when only the vehicle moves, see `glide`
    this.moving = []; // objects that move over the slab
    this.backdrop = null; // painted canvas for the flat fallback
    this.canvas = document.createElement("canvas");
    [this.renderer, this.slow] = noWebGL ? [null, false] : makeRenderer(this.canvas);
    this.flat = !this.renderer;
    this.plan = plan || this.flat;
    this.overlay = s("svg", { class: "overlay", "aria-hidden": "true" });
    this.still = document.createElement("canvas");
    this.still.hidden = true;
    holder.append(...(this.renderer ? [this.still] : []), this.canvas, this.overlay);
    this.#light();
    this.#aim();
    new ResizeObserver(() => this.#resize()).observe(holder);
    this.#resize();
  }

  #light() {
    const sun = new DirectionalLight(0xffffff, 2.1);
    sun.position.set(-4, 5, 6);
    this.scene.add(sun, new HemisphereLight(0xffffff, 0x9a948c, 1.0), new AmbientLight(0xffffff, 0.35));
  }

  #aim() {
    this.camera = this.plan
      ? new OrthographicCamera(-1, 1, 1, -1, 0.1, 1000)
      : new PerspectiveCamera(32, 1, 0.05, 500);
    if (!this.plan) this.camera.up.copy(UP);
    this.controls = this.plan
      ? new MapControls(this.camera, this.canvas)
      : new OrbitControls(this.camera, this.canvas);
    this.controls.enableRotate = !this.plan;
    this.controls.screenSpacePanning = this.plan;
    this.controls.enableDamping = false;
    this.controls.zoomToCursor = this.plan;
    if (!this.plan) {
      this.controls.maxPolarAngle = Math.PI * 0.49;
      this.canvas.style.touchAction = "pan-y"; // a swipe up or down still scrolls the page
    }
    this.controls.addEventListener("change", () => {
      this.#settle();
      this.hurry();
      this.request();
    });
  }

  #resize() {
    const { clientWidth: w, clientHeight: h } = this.holder;
    if (!w || !h) return;
    const first = !this.width;
    this.width = w;
    this.height = h;
    this.#settle();
    const ratio = this.#ratio();
    if (this.renderer) {
      this.renderer.setPixelRatio(ratio);
      this.renderer.setSize(w, h, false);
    } else {
      this.canvas.width = w * ratio;
      this.canvas.height = h * ratio;
    }
    this.overlay.setAttribute("viewBox", `0 0 ${w} ${h}`);
    if (this.plan) {
      const fit = this.#fit();
      Object.assign(this.camera, {
        left: (-w / 2) * fit,
        right: (w / 2) * fit,
        top: (h / 2) * fit,
        bottom: (-h / 2) * fit,
      });
    } else this.camera.aspect = w / h;
    this.camera.updateProjectionMatrix();
    if (first) this.home();
    this.request();
  }

  #ratio() {
    if (this.gliding) return GLIDING;
    return this.hurried ? HURRIED : Math.min(window.devicePixelRatio || 1, this.slow ? 1 : 2);
  }

  /** While the view turns and there is no graphics card: a coarser picture, sharp again when it rests. */
  hurry() {
    if (!this.slow || !this.renderer) return;
    this.#rest();
    if (!this.hurried) this.#pace(true);
  }

  /**
   * While only the vehicle moves and there is no graphics card: the slab is drawn once, sharp, and stands still behind; of it only the
   * depth is kept, so that it still hides what lies behind it.
   */
  glide() {
    if (!this.slow || !this.renderer) return;
    this.#rest();
    if (this.gliding) return;
    this.#pace(false);
    this.#show(this.moving, false);
    this.renderer.render(this.scene, this.camera);
    this.still.width = this.canvas.width;
    this.still.height = this.canvas.height;
    this.still.getContext("2d").drawImage(this.canvas, 0, 0);
    this.still.hidden = false;
    this.#show(this.moving, true);
    this.gliding = true;
    for (const { glide } of this.fixed) glide();
    this.#pace(false);
  }

  #show(objects, on) {
    for (const object of objects) object.layers.set(on ? 0 : 1);
  }

  #rest() {
    clearTimeout(this.resting);
    this.resting = setTimeout(() => {
      this.#settle();
      this.#pace(false);
    }, 250);
  }

  /** Back to drawing all of it. */
  #settle() {
    if (!this.gliding) return;
    this.gliding = false;
    this.still.hidden = true;
    for (const { rest } of this.fixed) rest();
    this.renderer.setPixelRatio(this.#ratio());
  }

  #pace(hurried) {
    this.hurried = hurried;
    this.renderer.setPixelRatio(this.#ratio());
    this.request();
  }

  #fit() {
    return Math.max((this.size[0] * 1.06) / this.width, (this.size[1] * 1.12) / this.height, 1e-4);
  }

  /** The whole slab in view; `from`: "corner", "above", "side" or "along". */
  home(from = "corner") {
    this.from = from;
    this.controls.target.set(0, 0, 0);
    if (this.plan) {
      this.camera.position.set(0, 0, 100);
      this.camera.zoom = 1;
      this.camera.updateProjectionMatrix();
    } else {
      const narrow = this.camera.aspect < 1.5; // then the slab leads away from the eye
      const tilt = {
        corner: narrow ? [-1, -0.75, 0.75] : [-0.42, -1, 0.62],
        above: [0, -0.02, 1],
        side: [0, -1, 0.16],
        along: [-1, -0.06, 0.2],
      }[from];
      this.camera.position.copy(
        new Vector3(...tilt).normalize().multiplyScalar(this.#distance(new Vector3(...tilt).normalize())),
      );
    }
    this.controls.update();
    this.request();
  }

  /** How far off, along `way`, the four corners of the slab (and a vehicle's height over them) are all in view. */
  #distance(way) {
    const half = Math.tan((this.camera.fov * Math.PI) / 360);
    const right = new Vector3().crossVectors(UP, way).normalize(),
      up = new Vector3().crossVectors(way, right);
    let far = 2;
    for (const [a, b, c] of [
      [-1, -1, -0.4],
      [1, -1, -0.4],
      [-1, 1, 0.6],
      [1, 1, 0.6],
      [1, 1, -0.4],
      [-1, 1, -0.4],
    ]) {
      const corner = new Vector3((a * this.size[0]) / 2, (b * this.size[1]) / 2, c * this.exaggeration);
      const wide = Math.abs(corner.dot(right)) / (half * this.camera.aspect),
        tall = Math.abs(corner.dot(up)) / half;
      far = Math.max(far, 1.06 * Math.max(wide, tall) + corner.dot(way));
    }
    return far;
  }

  /** Brings a place (u, v, z) to the middle, as near as `span` metres across. */
  visit([u, v, z], span) {
    const target = this.#world(u, v, z);
    const away = this.camera.position.clone().sub(this.controls.target);
    if (!this.plan)
      away.setLength(
        span / (2 * Math.tan((this.camera.fov * Math.PI) / 360) * Math.min(this.camera.aspect, 1.6)),
      );
    else this.camera.zoom = (this.camera.right - this.camera.left) / span;
    this.controls.target.copy(target);
    this.camera.position.copy(target).add(away);
    this.camera.updateProjectionMatrix();
    this.controls.update();
    this.request();
  }

  /** Pans by pixels, turns by radians, or zooms by a factor: for keys and buttons. */
  nudge({ pan = [0, 0], turn = [0, 0], zoom = 1 }) {
    const metres = this.metresPerPixel();
    const right = new Vector3().setFromMatrixColumn(this.camera.matrix, 0).multiplyScalar(pan[0] * metres);
    const ahead = new Vector3()
      .setFromMatrixColumn(this.camera.matrix, 1)
      .setZ(0)
      .normalize()
      .multiplyScalar(pan[1] * metres);
    const step = right.add(ahead);
    this.controls.target.add(step);
    const away = this.camera.position.clone().add(step).sub(this.controls.target);
    if (this.plan) this.camera.zoom = Math.min(Math.max(this.camera.zoom * zoom, 0.3), 200);
    else {
      away.divideScalar(zoom).applyAxisAngle(UP, turn[0]);
      const side = new Vector3().crossVectors(UP, away).normalize();
      const tilted = away.clone().applyAxisAngle(side, turn[1]);
      const angle = tilted.angleTo(UP);
      if (angle > 0.03 && angle < Math.PI * 0.49) away.copy(tilted);
    }
    this.camera.position.copy(this.controls.target).add(away);
    this.camera.updateProjectionMatrix();
    this.controls.update();
    this.request();
  }

  request() {
    if (this.pending) return;
    this.pending = requestAnimationFrame(() => {
      this.pending = 0;
      this.draw();
    });
  }

  /** Draws now; the labels follow. */
  draw() {
    if (!this.width) return;
    this.camera.updateMatrixWorld();
    if (this.renderer) this.renderer.render(this.scene, this.camera);
    else this.#paintFlat();
    for (const follow of this.drawn) follow();
  }

  #paintFlat() {
    const context = this.canvas.getContext("2d");
    context.setTransform(1, 0, 0, 1, 0, 0);
    context.clearRect(0, 0, this.canvas.width, this.canvas.height);
    if (!this.backdrop) return;
    const ratio = this.canvas.width / this.width;
    const from = this.project(0, this.size[1], 0),
      to = this.project(this.size[0], 0, 0);
    context.imageSmoothingEnabled = true;
    context.drawImage(
      this.backdrop,
      from[0] * ratio,
      from[1] * ratio,
      (to[0] - from[0]) * ratio,
      (to[1] - from[1]) * ratio,
    );
  }

  /** The view as a picture, for paper. */
  picture() {
    this.#settle();
    if (this.renderer) this.#pace(false);
    this.draw();
    return this.canvas.toDataURL("image/png");
  }

  #world(u, v, z) {
    return new Vector3(u - this.size[0] / 2, v - this.size[1] / 2, (z - this.level) * this.exaggeration);
  }

  /** Grid u, v and height -> pixels [x, y] of the view. */
  project(u, v, z) {
    const p = this.#world(u, v, Number.isFinite(z) && !this.plan ? z : this.level).project(this.camera);
    return [((p.x + 1) / 2) * this.width, ((1 - p.y) / 2) * this.height, p.z < 1];
  }

  /** Pixels -> grid u, v on the ground (`raster`: heights, for the turned view); null where the ray meets none. */
  ground(x, y, raster) {
    const near = new Vector3((x / this.width) * 2 - 1, 1 - (y / this.height) * 2, -1).unproject(this.camera);
    if (this.plan) return [near.x + this.size[0] / 2, near.y + this.size[1] / 2];
    const way = new Vector3((x / this.width) * 2 - 1, 1 - (y / this.height) * 2, 1)
      .unproject(this.camera)
      .sub(near)
      .normalize();
    const [low, high] = raster.range().map((z) => (z - this.level) * this.exaggeration);
    const from = Math.max((high + 0.01 - near.z) / way.z, 0),
      to = (low - 0.01 - near.z) / way.z;
    const stride = Math.max((to - from) / 400, raster.cell / 2);
    for (let t = from; t <= to; t += stride) {
      const p = near.clone().addScaledVector(way, t);
      const u = p.x + this.size[0] / 2,
        v = p.y + this.size[1] / 2,
        z = raster.at(u, v);
      if (p.z <= (z - this.level) * this.exaggeration) return [u, v];
    }
    return null;
  }

  /** Metres on the ground that one pixel spans at the middle of the view. */
  metresPerPixel() {
    if (this.plan) return (this.camera.right - this.camera.left) / this.camera.zoom / this.width;
    const far = this.camera.position.distanceTo(this.controls.target);
    return (2 * far * Math.tan((this.camera.fov * Math.PI) / 360)) / this.height;
  }
}

/** [renderer, whether there is no graphics card behind it]: then edges are plain, or the picture would lag behind the finger. */
function makeRenderer(canvas) {
  const log = console.error;
  console.error = () => {}; // a browser without WebGL is no fault of the page: the flat plan takes over
  try {
    const probe = document.createElement("canvas").getContext("webgl2");
    const named = probe?.getExtension("WEBGL_debug_renderer_info");
    const slow = /swiftshader|llvmpipe|software/i.test(
      named ? probe.getParameter(named.UNMASKED_RENDERER_WEBGL) : "",
    );
    probe?.getExtension("WEBGL_lose_context")?.loseContext();
    return [new WebGLRenderer({ canvas, alpha: true, antialias: !slow }), slow];
  } catch {
    return [null, false];
  } finally {
    console.error = log;
  }
}
