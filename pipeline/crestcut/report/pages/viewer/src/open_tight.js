// The tight place on the answer's screen, drawn as in the report, from the data that the report carries.

const { byId, Drive, fillDrawing, Raster, unpackLayer } = crestcutViewer; // the script before this one

async function start() {
  const home = byId("tight");
  const answer = await fetch("/tight");
  if (!answer.ok) return;
  const data = await answer.json();
  if (!data.drive) return;
  const report = { data, units: document.documentElement.dataset.units };
  report.height = new Raster(data.grid, await unpackLayer(data.height));
  report.drive = await Drive.of(data);
  report.depth = data.depth ? new Raster(data.grid, await unpackLayer(data.depth)) : null;
  const [x, y] = data.drive.contact.on;
  report.atWorst = { x, y };
  byId("tight-picture").hidden = true;
  home.hidden = false;
  const draw = () => fillDrawing(report, report.drive.worst, y, home, byId("tight-words"));
  let wide = 0;
  new ResizeObserver(() => {
    if (home.clientWidth === wide) return;
    wide = home.clientWidth;
    draw();
  }).observe(home);
  document.documentElement.dataset.ready = "yes";
}

start();
