// The plan as `crestcut open` serves it: the same tapping as pick.html; what was drawn goes to the server, not into a file.

const { byId, check, h, layOut, points, tools } = crestcutViewer; // the script before this one

// what this screen asks; the others have their own
const MINE = /^(tool-line|points|line-\d+|mark-\d+|keep-\d+|v-turning|f-travel-heading)$/;

async function start() {
  const data = JSON.parse(byId("served-data").textContent);
  const { job, vehicle, number, units } = data.served;
  document.documentElement.dataset.units = units;
  const { page, model, map, height, plan } = await layOut(data, byId("app"));
  model.doc = { ...model.doc, ...job, travel: { ...model.doc.travel, ...job.travel } };
  Object.assign(model, { choice: "own", own: vehicle ? { file: "", doc: vehicle } : null });
  let changed = false;
  const refresh = () => {
    byId("close-area").hidden = map.open.length < 3;
    map.stage.request();
    strip();
    const found = check(model, height, plan, page.units).filter((f) => MINE.test(f.at));
    map.spots = found.map((f) => f.spot).filter(Boolean);
    byId("along-label").hidden = !map.route.path;
    points(model);
    tell(model.line.length ? found : []); // before the first tap the words above say what to do
    byId("keep-line").setAttribute("aria-disabled", String(found.some((f) => f.level === "stop")));
  };
  const strip = tools(page, model, map, refresh);
  if (model.line.length > 1) page.lineDrawn();
  model.addEventListener("change", () => {
    changed = true;
    refresh();
  });
  refresh();
  byId("panel").addEventListener("submit", (e) => e.preventDefault());
  byId("keep-line").addEventListener("click", async () => {
    if (byId("keep-line").getAttribute("aria-disabled") === "true") {
      const first = byId("mistakes").querySelector("li");
      if (first) first.focus();
      else map.tell("Nothing is drawn yet: tap where the line of travel starts and ends");
      return;
    }
    map.closeArea();
    const { mark, keep } = model.doc;
    const drawn = { number, line: model.doc.travel.line, mark: mark ?? [], keep: keep ?? [] };
    changed = false;
    await send(drawn);
  });
  addEventListener("beforeunload", (e) => {
    if (changed) e.preventDefault();
  });
  document.documentElement.dataset.ready = "yes";
}

function tell(found) {
  byId("mistakes").replaceChildren(
    h(
      "ul",
      { class: "found" },
      found.map((f) => h("li", { class: f.level, tabindex: -1 }, f.text)),
    ),
  );
}

async function send(drawn) {
  const said = byId("line-wrong");
  try {
    const answer = await fetch("/line", { method: "POST", body: JSON.stringify(drawn) });
    const told = await answer.json();
    if (told.next) location.assign(told.next);
    else said.textContent = `${told.what}: ${told.mend}`;
  } catch {
    said.textContent =
      "The program does not answer. Is it still running? What you drew is still here: try again.";
  }
}

start().catch((error) => {
  byId("said").textContent = `This plan could not start: ${error.message}. Open it in a current browser.`;
  throw error;
});
