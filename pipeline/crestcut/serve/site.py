"""What every screen has at hand: the job's folder, what runs on it, who may come in, and the pages' frame."""

from __future__ import annotations

import json
import tomllib
from collections.abc import Mapping
from dataclasses import dataclass, field
from importlib import resources
from pathlib import Path
from typing import Any

from jinja2 import Environment, PackageLoader, StrictUndefined
from starlette.requests import Request
from starlette.responses import HTMLResponse, RedirectResponse, Response

from crestcut.base.cautions import FELT_GAP, MEASURED_VEHICLE
from crestcut.base.errors import CrestcutError
from crestcut.base.language import ENGLISH, LANGUAGES, Words, wanted, words_of
from crestcut.serve.asking import UNITS, own_units, shown
from crestcut.serve.folder import JobFolder
from crestcut.serve.guard import Doors
from crestcut.serve.runs import Kind, Runs
from crestcut.serve.steps import TITLES, Screen, State, look_mark, state_of
from crestcut.serve.uploads import Uploads

INCHES = ("US", "LR", "MM")
TEMPLATES = Environment(
    loader=PackageLoader("crestcut.serve"),
    autoescape=True,
    undefined=StrictUndefined,
    trim_blocks=True,
    lstrip_blocks=True,
)
_DATA = '<script type="application/json" id="crestcut-data">'


@dataclass
class Site:
    """One server's one job. network : the address a phone would use, "" without ``--phone``."""

    folder: JobFolder
    doors: Doors
    network: str = ""
    runs: Runs = field(init=False)
    uploads: Uploads = field(init=False)

    def __post_init__(self) -> None:
        self.runs = Runs(self.folder)
        self.uploads = Uploads(self.folder)

    def state(self) -> State:
        """Where the job stands now."""
        return state_of(self.folder, self.runs)

    def unit(self, state: State) -> str:
        """In what the person measures: as chosen, else as usual in the country or the scan."""
        chosen = self.folder.recall("choices").get("unit")
        if chosen in UNITS:
            return str(chosen)
        country = str(state.data.get("site", {}).get("country", "")).upper()
        feet = state.looked.get("unit") in ("ft", "us-ft", "in")
        return "in" if country in INCHES or feet else "mm"

    def words(self, request: Request, state: State) -> Words:
        """In which language the pages are: the job's, as its sheets are, else as the browser asks for."""
        said = state.data.get("language") or wanted(request.headers.get("accept-language", ""))
        return words_of(str(said), str(state.data.get("site", {}).get("country") or "") or None)

    async def look(self) -> None:
        """Have the scan looked at, as the job says it is to be read."""
        data = self.folder.data()
        scan = data.get("scan", {})
        files = [p.resolve() for p in self.folder.scan_files()]
        said = [w for key in ("unit", "up", "scanner") if scan.get(key) for w in (f"--{key}", str(scan[key]))]
        said += ["--language", data["language"]] if data.get("language") in LANGUAGES else []
        await self.runs.start(
            Kind.LOOK, look_mark(self.folder), [*files, "--out", self.folder.looked.name, *said]
        )

    async def run(self, language: str = ENGLISH) -> None:
        """Work the answer out. language : of its sheets, where the job says none."""
        said = [] if language in ("", ENGLISH) else ["--language", language]
        await self.runs.start(
            Kind.RUN,
            self.folder.plan_mark(),
            [self.folder.job.name, "--out", self.folder.results.name, *said],
        )

    async def check(self) -> None:
        """Check the finished work."""
        await self.runs.start(
            Kind.VERIFY, self.folder.whole_mark(), [self.folder.job.name, "--out", self.folder.results.name]
        )


def site_of(request: Request) -> Site:
    """The site that a request is for."""
    found = request.app.state.site
    assert isinstance(found, Site)
    return found


def screen(
    request: Request, here: Screen | None, template: str, status: int = 200, **more: Any
) -> HTMLResponse:
    """A page in the frame that all have: where one is, what is next, what can be taken back."""
    site = site_of(request)
    state = more.pop("state", None) or site.state()
    unit, words = site.unit(state), site.words(request, state)
    text = TEMPLATES.get_template(template).render(
        here=here, position=list(Screen).index(here) + 1 if here else 0, rows=state.rows(),
        titles=TITLES, state=state, unit=unit, units=UNITS,
        title=str(state.data.get("title") or "Your slab"), number=site.folder.number(),
        undo=site.folder.last_change(), running=site.runs.now, cut_short=site.runs.cut_short(),
        network=site.network, length=lambda metres: shown(metres, unit),
        own=lambda text: own_units(text, unit) if words.language == ENGLISH else text,
        care=MEASURED_VEHICLE, felt=FELT_GAP, languages=LANGUAGES, language=words.language,
        **{"wrong": "", "mend": "", **more},
    )  # fmt: skip
    return HTMLResponse(words.page(text), status)


def go(screen: Screen | str) -> RedirectResponse:
    """To another screen, asked for anew."""
    return RedirectResponse(f"/{screen}", 303)


def stale(request: Request, here: Screen) -> Response:
    """Somebody else changed the job meanwhile."""
    return screen(request, here, "stale.html", 409)


def fault(request: Request, here: Screen | None, error: CrestcutError, status: int = 422) -> Response:
    """What is wrong, in its own place, with the mend."""
    return screen(request, here, "fault.html", status, error=error)


def texts(form: Mapping[str, Any]) -> dict[str, str]:
    """The texts of a form; files in it are passed over."""
    return {key: value for key, value in form.items() if isinstance(value, str)}


def asset(name: str) -> bytes:
    """A built style or script."""
    return resources.files("crestcut.report.pages").joinpath(f"viewer/built/{name}").read_bytes()


def example_vehicles() -> dict[str, str]:
    """Made-up vehicles for a first try: the name in each file, and its text."""
    folder = resources.files("crestcut.report.pages").joinpath("viewer/vehicles")
    texts_ = [f.read_text(encoding="utf-8") for f in folder.iterdir() if f.name.endswith(".toml")]
    return {str(tomllib.loads(text)["name"]): text for text in sorted(texts_)}


def vehicles_beside(folder: JobFolder) -> list[Path]:
    """Vehicle files in the job's own folder that it does not use."""
    found = []
    for path in sorted(folder.home.glob("*.toml")):
        try:
            if "wheelbase" in tomllib.loads(path.read_text(encoding="utf-8")):
                found.append(path)
        except (OSError, UnicodeDecodeError, tomllib.TOMLDecodeError):
            continue
    return found


def vehicle_data(folder: JobFolder) -> dict[str, Any] | None:
    """The job's vehicle as plain data; None where there is none that can be read."""
    path = folder.vehicle_file()
    try:
        return tomllib.loads(path.read_text(encoding="utf-8")) if path is not None else None
    except (OSError, UnicodeDecodeError, tomllib.TOMLDecodeError):
        return None


def page_data(path: Path) -> dict[str, Any] | None:
    """What one of our own offline pages carries for its viewer; None where there is no such page."""
    try:
        text = path.read_text(encoding="utf-8")
    except OSError:
        return None
    _, found, rest = text.partition(_DATA)
    read = json.loads(rest.partition("</script>")[0]) if found else None
    return read if isinstance(read, dict) else None
