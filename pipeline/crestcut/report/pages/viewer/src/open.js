// The screens of `crestcut open`: they are whole without this but for bringing files and the plan. Here: how far a run is, uploads
// that go on where they were cut off, lengths read back as they are typed, and a word when the job was changed elsewhere.

import { inches, metric, parseLength } from "./units.js";
import { speak } from "./words.js";

const root = document.documentElement;
const PIECE = 4 * 1024 * 1024; // bytes
const TRIES = 6; // of a piece, before it is said that the connection is gone
const HELD = "main a, main button, main summary"; // what keys may be on, told by its words
const byId = (id) => document.getElementById(id);
const wait = (ms) => new Promise((done) => setTimeout(done, ms));

async function progress() {
  const answer = await fetch("/progress");
  if (!answer.ok) throw new Error(String(answer.status));
  return answer.json();
}

/** The page as it is now; what its reader had unfolded stays so, and where the keys were they stay. */
function reload() {
  const opened = [...document.querySelectorAll("main details[open] > summary")].map((s) => s.textContent);
  const held = document.activeElement?.closest(HELD)?.textContent;
  history.replaceState({ opened, held }, "");
  location.reload();
}

async function follow() {
  let lost = 0;
  for (;;) {
    try {
      const now = await progress();
      const answered = "answered" in document.querySelector("[data-progress]").dataset;
      if (!now.running || (now.answered && !answered)) return reload();
      lost = 0;
      byId("going-bar").value = now.share;
      byId("going-share").textContent = `${Math.round(now.share * 100)} %`;
      byId("going-step").textContent = now.words;
      byId("going-left").textContent = `; about ${now.left} s to go`;
    } catch {
      lost += 1;
      if (lost > 3)
        byId("going-step").textContent =
          "the program does not answer; if it was ended, start it again: nothing is lost";
    }
    await wait(lost > 3 ? 3000 : 500);
  }
}

/** Pieces of a file, each put where the last one ended; a piece that did not come through is sent again. */
async function bring(file, purpose, tell) {
  const told = { name: file.name, size: file.size, modified: file.lastModified };
  let { key, here } = await ask("/upload", { method: "POST", body: JSON.stringify(told) });
  if (here) tell(here, "It goes on where it was cut off.");
  for (let tries = 0; here < file.size;) {
    try {
      const piece = file.slice(here, here + PIECE);
      const got = await ask(`/upload/${key}`, {
        method: "PUT",
        body: piece,
        headers: { "x-offset": String(here) },
      });
      here = got.here;
      tries = 0;
      tell(here, "");
    } catch (error) {
      if (error.told) throw error;
      tries += 1;
      if (tries >= TRIES)
        throw new Error(
          "The connection is gone. Choose the same file again when it is back: it goes on where it was.",
        );
      tell(here, "The connection was cut: trying again.");
      await wait(1000 * tries);
    }
  }
  return ask(`/upload/${key}/end?for=${purpose}`, { method: "POST", body: "" });
}

async function ask(path, options) {
  const answer = await fetch(path, options);
  const told = await answer.json().catch(() => ({ what: "that was refused", mend: "reload this page" }));
  if (answer.ok && !told.what) return told;
  const error = new Error(`${told.what[0].toUpperCase()}${told.what.slice(1)}; ${told.mend}.`);
  error.told = true;
  throw error;
}

function uploads(box) {
  const input = box.querySelector("input[type=file]"),
    bar = box.querySelector("progress"),
    said = box.querySelector("[data-said]"),
    wrong = box.querySelector("[data-wrong]");
  input.addEventListener("change", async () => {
    const file = input.files[0];
    if (!file) return;
    wrong.textContent = "";
    bar.hidden = false;
    input.disabled = true;
    const megabytes = (bytes) => (bytes / 1e6).toFixed(bytes < 1e7 ? 1 : 0);
    try {
      const { next } = await bring(file, box.dataset.for, (here, words) => {
        bar.value = here / file.size;
        said.textContent = `${megabytes(here)} of ${megabytes(file.size)} MB. ${words}`;
      });
      location.assign(next);
    } catch (error) {
      wrong.textContent = error.message;
      said.textContent = "";
      bar.hidden = true;
    }
    input.disabled = false;
    input.value = "";
  });
}

/** What a typed length is in both systems; a number alone is in the unit chosen above. */
function readBack(box) {
  const said = byId(box.getAttribute("aria-describedby")),
    first = said.textContent,
    looks = said.className;
  const unit = byId("unit").value;
  box.addEventListener("input", () => {
    const each = box.value.split(";").map((text) => text.trim().replace(/(?<=\d),(?=\d{1,2}(?!\d))/g, ".")); // a decimal comma, as the server takes it
    said.className = looks;
    if (!box.value.trim()) {
      said.textContent = first;
      return;
    }
    try {
      const metres = each.map((text) =>
        parseLength(/^[-+]?[0-9 ./]+$/.test(text) ? `${text} ${unit}` : text),
      );
      said.textContent = metres.map((m) => `${metric(m)} · ${inches(m)}`).join("; ");
      said.className = "hint";
      box.removeAttribute("aria-invalid");
    } catch (error) {
      said.textContent = error.message;
    }
  });
}

/** Who says so is asked once there is an answer. */
function beside(box) {
  const asked = byId(box.dataset.beside);
  const show = () => {
    asked.hidden = !box.value.trim();
  };
  box.addEventListener("input", show);
  show();
}

async function changed() {
  if (document.visibilityState !== "visible" || root.dataset.busy) return;
  try {
    const { number } = await progress();
    byId("changed").hidden = number === root.dataset.number;
  } catch {
    // the program has ended: whatever is done next says so
  }
}

async function words() {
  const answer = await fetch("/words");
  if (answer.ok) speak(document.body, await answer.json(), true);
}

if (root.lang !== "en") words();
for (const head of document.querySelectorAll("main details > summary"))
  if (history.state?.opened?.includes(head.textContent)) head.parentElement.open = true;
if (history.state?.held)
  [...document.querySelectorAll(HELD)]
    .find((one) => one.textContent === history.state.held)
    ?.focus({ preventScroll: true });
for (const box of document.querySelectorAll("[data-upload]")) uploads(box);
for (const box of document.querySelectorAll("[data-length]")) readBack(box);
for (const box of document.querySelectorAll("[data-beside]")) beside(box);
for (const box of document.querySelectorAll("[data-submit]"))
  box.addEventListener("change", () => box.form.requestSubmit());
for (const one of document.querySelectorAll("[data-no-script]")) one.hidden = true;
for (const list of document.querySelectorAll("[data-steps]"))
  list.open = matchMedia("(min-width: 60rem)").matches;
document.addEventListener("visibilitychange", changed);
addEventListener("focus", changed);
addEventListener("pageshow", (event) => {
  if (!event.persisted) return; // gone back to: the page is as it was left, sent form and all
  delete root.dataset.busy;
  changed();
});
for (const form of document.forms)
  form.addEventListener("submit", () => {
    root.dataset.busy = "yes";
  });
if (document.querySelector("[data-progress]")) follow();
root.dataset.open = "ready";
