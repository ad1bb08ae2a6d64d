// Is the scan's unit right? Two taps on the plan are a length; what the tape says of it tells.

const { byId, h, layOut } = crestcutViewer; // the script before this one

const SHARE = 0.01, // of a length: more is no scale error of a working scanner (common practice, no source)
  TAPPED = 0.03; // m: how well two taps and a tape are laid (common practice, no source)

/** What a tape says of a scanned length, both in m. others : name and factor of each unit that it may be in.
    Returns {level: right, unit or wrong, unit, off: share by which the scan is longer}. */
export function judged(scan, tape, others) {
  const near = (length) => Math.abs(length - tape) <= SHARE * tape + TAPPED;
  const off = scan / tape - 1;
  if (near(scan)) return { level: "right", unit: "", off };
  const fits = others
    .map(([unit, factor]) => ({ unit, away: Math.abs(Math.log((scan * factor) / tape)), factor }))
    .filter(({ factor }) => near(scan * factor))
    .sort((a, b) => a.away - b.away)[0];
  return { level: fits ? "unit" : "wrong", unit: fits?.unit ?? "", off };
}

async function start() {
  const data = JSON.parse(byId("served-data").textContent);
  const { others, unit } = data.served;
  document.documentElement.dataset.units = unit === "in" ? "inches" : "metric";
  const { page, model, map, plan } = await layOut(data, byId("app"));
  Object.assign(model, { choice: "own", own: null }); // no vehicle stands on a length
  const was = document.querySelector('input[name="unit"]:checked');
  const box = byId("tape"),
    told = byId("size-told");
  let scan = 0;
  page.lineDrawn = () => {};
  model.addEventListener("change", () => {
    const line = model.line;
    if (line.length > 2) model.doc.travel.line = line.slice(-1); // a third tap begins another length
    map.stage.request();
    const [a, b] = model.line.map((p) => plan.toGrid(p));
    scan = b ? Math.hypot(b[0] - a[0], b[1] - a[1]) : 0;
    byId("length-said").textContent = scan
      ? `The scan says ${crestcutViewer.show(scan, document.documentElement.dataset.units, 0)}. Type what the tape says.`
      : "Tap two points whose distance you can measure on the slab.";
    say();
  });
  function say() {
    let tape = 0;
    try {
      const text = box.value.trim().replace(/(?<=\d),(?=\d{1,2}(?!\d))/g, ".");
      tape = text ? crestcutViewer.parseLength(/^[0-9 ./]+$/.test(text) ? `${text} ${unit}` : text) : 0;
    } catch {
      // said beside the box
    }
    told.replaceChildren();
    told.className = "";
    if (!scan || !tape) return;
    if (was) was.checked = true;
    const found = judged(scan, tape, others),
      apart = `${Math.abs(found.off * 100).toFixed(1)} % ${found.off > 0 ? "longer" : "shorter"}`;
    told.className = found.level === "right" ? "note" : "wrong-box";
    if (found.level === "right")
      told.append(h("p", {}, `The size is right: the scan is ${apart} than the tape.`));
    else if (found.level === "unit") {
      const choice = document.querySelector(`input[name="unit"][value="${found.unit}"]`);
      choice.checked = true;
      told.append(h("p", {}, "The scan is in another unit. The size that fits the tape is chosen above."));
    } else
      told.append(
        h(
          "p",
          {},
          `The scan is ${apart} than the tape: more than a scan can be wrong, and no other unit fits.`,
        ),
        h(
          "p",
          {},
          "Tap and measure again. If it stays so, the program that made the scan wants a known length.",
        ),
      );
  }
  box.addEventListener("input", say);
  box.addEventListener("keydown", (e) => {
    if (e.key === "Enter") e.preventDefault(); // it is an answer to the plan, not yet to the screen
  });
  byId("undo-tap").addEventListener("click", () => model.undo());
  byId("nearer").addEventListener("click", () => map.stage.nudge({ zoom: 1.4 }));
  byId("farther").addEventListener("click", () => map.stage.nudge({ zoom: 1 / 1.4 }));
  document.documentElement.dataset.ready = "yes";
}

if (byId("served-data")) start();
