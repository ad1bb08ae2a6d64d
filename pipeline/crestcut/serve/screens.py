"""The screens up to the answer: scan, size, line, room, slab. Each a page and what its form does."""

from __future__ import annotations

import json
import math
import os
from collections.abc import Mapping
from typing import Any

from markupsafe import Markup
from starlette.requests import Request
from starlette.responses import JSONResponse, Response
from starlette.routing import Route

from crestcut.base.errors import CrestcutError
from crestcut.base.language import LANGUAGES
from crestcut.serve.answer import reasons_about
from crestcut.serve.asking import ROOM, SLAB, SOURCES, UNITS, Ask, answers, source_of, usual, value_of
from crestcut.serve.asking import bounds as written
from crestcut.serve.folder import Stale
from crestcut.serve.runs import Kind
from crestcut.serve.site import fault, go, page_data, screen, site_of, stale, texts, vehicle_data
from crestcut.serve.steps import Screen, State
from crestcut.serve.uploads import KINDS

WIDE, TALL = 0.3, 0.15  # m: of what is worth a word before anything is tapped
SCANNERS = (
    ("phone", "A phone or tablet that measures depth"), ("photogrammetry", "Photographs, by a program"),
    ("terrestrial", "A scanner on a tripod"), ("total-station", "A total station"),
)  # fmt: skip


async def scan_page(request: Request) -> Response:
    """Bring the scan, or what is wrong with the one that came."""
    site = site_of(request)
    last = site.runs.last(Kind.LOOK)
    told = last.get("fault") or {}
    return screen(request, Screen.SCAN, "scan.html", kinds=KINDS, wrong=told.get("what", ""),
                  mend=told.get("mend", ""))  # fmt: skip


def _refused(error: CrestcutError) -> Response:
    """A file that is not taken: an answer like others, for whoever brought it."""
    return JSONResponse({"what": error.what, "mend": error.mend})


async def upload(request: Request) -> Response:
    """An upload begins, or goes on: its key and how much of it is here."""
    site = site_of(request)
    try:
        told = json.loads(await request.body())
        key, here = site.uploads.begin(str(told["name"]), int(told["size"]), int(told.get("modified", 0)))
    except (ValueError, KeyError, TypeError):
        return JSONResponse({"what": "that was no upload", "mend": "reload this page"}, 400)
    except CrestcutError as error:
        return _refused(error)
    return JSONResponse({"key": key, "here": here})


async def upload_piece(request: Request) -> Response:
    """A piece of it."""
    site, key = site_of(request), request.path_params["key"]
    try:
        offset = int(request.headers.get("x-offset", ""))
        here = await site.uploads.take(key, offset, request.stream())
    except ValueError:
        return JSONResponse({"what": "that was no piece", "mend": "reload this page"}, 400)
    except CrestcutError as error:
        return _refused(error)
    except OSError as error:
        return JSONResponse({"what": f"cannot be kept ({error.strerror})", "mend": "free some space"}, 507)
    return JSONResponse({"here": here})


async def upload_end(request: Request) -> Response:
    """It is whole: it becomes the job's scan, or, with ``after``, the one made since the work."""
    site, key = site_of(request), request.path_params["key"]
    after = request.query_params.get("for") == "after"
    try:
        place = site.uploads.end(key)
        named = os.path.relpath(place, site.folder.home).replace(os.sep, "/")
        if after:
            site.folder.edit("the scan after the work", {"after.files": [named]})
        else:
            fresh = {"title": site.folder.data().get("title") or "Your slab", "scan.file": None,
                     "scan.files": [named], "scan.unit": None, "scan.up": None}  # fmt: skip
            site.folder.edit("another scan" if site.folder.scan_files() else "the scan", fresh)
            await site.look()
    except CrestcutError as error:
        return _refused(error)
    return JSONResponse({"next": "/after" if after else "/scan"})


async def check_page(request: Request) -> Response:
    """What is in the scan, and is its unit right?"""
    site = site_of(request)
    state = site.state()
    if not state.looked:
        return go(Screen.SCAN)
    scan = state.data.get("scan", {})
    data = page_data(site.folder.looked / "pick.html")
    sizes = _sizes(state)
    others = [[name, along / sizes[0][1]] for name, along, _, _ in sizes[1:]]
    served = {**data, "served": {"others": others, "unit": site.unit(state)}} if data is not None else None
    return screen(
        request, Screen.CHECK, "check.html", state=state, data=_in_page(served) if served else "",
        sizes=sizes, scanners=SCANNERS, scanner=scan.get("scanner") or "phone", things=_things(state),
        unit_now=state.looked.get("unit"),
    )  # fmt: skip


def _things(state: State) -> list[dict[str, Any]]:
    """What stands on the slab and is no edge of it, the largest first."""
    found = [t for t in state.looked.get("things", []) if min(t["size"]) > WIDE and t["height"] > TALL]
    return sorted(found, key=lambda t: -t["size"][0] * t["size"][1])[:3]


def _sizes(state: State) -> list[tuple[str, float, float, float]]:
    """What the scan would measure in each unit that it may be in: unit, along, across, high, m."""
    from crestcut.base.units import METRES_PER

    along, across, high = (float(v) for v in state.looked["extent"])
    here = METRES_PER.get(str(state.looked.get("unit")), 1.0)
    names = [str(state.looked.get("unit"))]
    for file in state.looked.get("files", []):
        names += [n for n in file.get("unit_alternatives", []) if n not in names]
    names += [n for n in ("m", "cm", "mm", "ft", "in") if n not in names]
    by = [(n, METRES_PER[n] / here) for n in names if n in METRES_PER]
    rows = [(n, along * f, across * f, high * f) for n, f in by]
    return [row for row in rows if 0.5 < row[1] < 300] or rows[:1]


async def check(request: Request) -> Response:
    """The size is confirmed or mended."""
    site, form = site_of(request), texts(await request.form())
    state = site.state()
    if not state.looked:
        return go(Screen.SCAN)
    unit, scanner = form.get("unit", ""), form.get("scanner", "phone")
    if unit not in [row[0] for row in _sizes(state)] or scanner not in dict(SCANNERS):
        return fault(request, Screen.CHECK, CrestcutError("choose one of the sizes", "", "go back to it"))
    keys: dict[str, Any] = {"scan.unit": unit, "scan.up": state.looked.get("up"), "scan.scanner": scanner}
    keys["title"] = form.get("title", "").strip()[:120] or "Your slab"
    try:
        site.folder.edit("the size of the scan", keys, form.get("number"))
    except Stale:
        return stale(request, Screen.CHECK)
    if unit != state.looked.get("unit"):
        await site.look()
        return go(Screen.SCAN)
    return go(site.state().after(Screen.CHECK))


async def line_page(request: Request) -> Response:
    """The plan to tap on, with what the job has already."""
    site = site_of(request)
    state = site.state()
    if not state.looked:
        return go(Screen.SCAN)
    data = page_data(site.folder.looked / "pick.html")
    if data is None:
        error = CrestcutError(
            "no slab was found in this scan", "", "scan the concrete itself, slowly, from about a metre"
        )
        return fault(request, Screen.LINE, error)
    vehicle = vehicle_data(site.folder)
    served = {
        "job": state.data, "vehicle": vehicle, "number": site.folder.number(),
        "units": "inches" if site.unit(state) == "in" else "metric",
    }  # fmt: skip
    told = _in_page({**data, "served": served})
    return screen(request, Screen.LINE, "line.html", state=state, data=told)


def _in_page(data: Mapping[str, Any]) -> Markup:
    """Data for a page's scripts, which no text in it can end."""
    told = json.dumps(_finite(data), default=str, allow_nan=False).replace("<", "\\u003c")
    return Markup(told)  # noqa: S704 - see <


def _finite(value: Any) -> Any:
    """The same with null for what no page can read: TOML knows nan and inf, JSON does not."""
    if isinstance(value, dict):
        return {key: _finite(one) for key, one in value.items()}
    if isinstance(value, list):
        return [_finite(one) for one in value]
    return None if isinstance(value, float) and not math.isfinite(value) else value


async def line(request: Request) -> Response:
    """Line, marks and no-cut areas as they were drawn."""
    site = site_of(request)
    try:
        told = json.loads(await request.body())
        if _finite(told) != told:
            raise ValueError
        drawn = told["line"]
        keys: dict[str, Any] = {"mark": told.get("mark") or None, "keep": told.get("keep") or None}
        if isinstance(drawn, list):
            keys["travel.line"] = [[float(v) for v in p] if isinstance(p, list) else p for p in drawn]
        _check_drawn(keys)
    except (ValueError, KeyError, TypeError):
        return JSONResponse({"what": "that was no line", "mend": "reload this page"}, 400)
    except CrestcutError as error:
        return JSONResponse({"what": error.what, "mend": error.mend}, 422)
    try:
        site.folder.edit("line, marks and no-cut areas", keys, told.get("number"))
    except Stale:
        return JSONResponse(
            {"what": "the job was changed elsewhere since you opened this plan", "mend": "reload it"}, 409
        )
    return JSONResponse({"next": f"/{site.state().after(Screen.LINE)}"})


def _check_drawn(keys: Mapping[str, Any]) -> None:
    drawn = keys.get("travel.line")
    if isinstance(drawn, list) and len(drawn) < 2:
        raise CrestcutError("the line has no end yet", "", "tap where it starts and where it ends")
    for mark in keys.get("mark") or []:
        mark["name"] = str(mark["name"]).strip()[:40]
        mark["at"] = [float(v) for v in mark["at"]]
        if set(mark) != {"name", "at"} or not mark["name"]:
            raise CrestcutError("a mark has no name", "", "give it a letter")
    for keep in keys.get("keep") or []:
        if not set(keep) <= {"kind", "over", "area", "deepest"} or len(keep["area"]) < 3:
            raise CrestcutError("an area wants three corners", "", "tap its corners, then Close area")


async def room_page(request: Request) -> Response:
    """How much room is wanted."""
    return _asked(request, Screen.ROOM, ROOM, {})


async def slab_page(request: Request) -> Response:
    """What is known of the slab."""
    return _asked(request, Screen.SLAB, SLAB, {})


async def room(request: Request) -> Response:
    """Wishes."""
    return await _answered(request, Screen.ROOM, ROOM)


async def slab(request: Request) -> Response:
    """Answers about the slab."""
    return await _answered(request, Screen.SLAB, SLAB)


def _asked(
    request: Request, here: Screen, asks: tuple[Ask, ...], faults: Mapping[str, str],
    form: Mapping[str, str] | None = None,
) -> Response:  # fmt: skip
    site = site_of(request)
    state = site.state()
    unit = site.unit(state)
    values = {a.key: value_of(a, state.data) if form is None else form.get(a.key, "") for a in asks}
    sources = {a.key: source_of(a, state.data) if form is None else form.get(a.beside, "") for a in asks}
    if here is Screen.ROOM:
        values["clearance.confidence"] = values["clearance.confidence"] or "0.95"
    reasons = reasons_about(state.result, here is Screen.SLAB) if state.fresh else []
    return screen(
        request, here, "asked.html", 422 if faults else 200, state=state, asks=asks, values=values,
        sources=sources, faults=faults, sources_of=SOURCES,
        usual={a.key: usual(a, unit) for a in asks}, reasons=reasons,
        ways=state.data.get("travel", {}).get("ways") or ["forward", "turned"],
    )  # fmt: skip


async def _answered(request: Request, here: Screen, asks: tuple[Ask, ...]) -> Response:
    site = site_of(request)
    sent = await request.form()
    form, ways = texts(sent), [str(way) for way in sent.getlist("travel.ways")]
    state = site.state()
    keys, faults = answers(asks, form, ways, site.unit(state))
    if here is Screen.SLAB and not any(v for k, v in keys.items() if k.startswith("slab.")):
        keys["slab.kind"] = "unknown"  # asked, and nobody knows
    if here is Screen.ROOM:
        default = written()["clearance.want"]["default"]
        keys["clearance.want"] = keys.get("clearance.want") or f"{float(default) * 1000:g} mm"
        ticked = set(ways) - set(written()["travel.ways"]["enum"])
        faults |= {"travel.ways": "choose one of the list"} if ticked else {}
    if faults:
        return _asked(request, here, asks, faults, form)
    try:
        site.folder.edit(str(here), keys, form.get("number"))
    except Stale:
        return stale(request, here)
    return go(site.state().after(here))


async def unit(request: Request) -> Response:
    """In what the person measures."""
    site, form = site_of(request), texts(await request.form())
    if form.get("unit") in UNITS:
        site.folder.remember("choices", {**site.folder.recall("choices"), "unit": form["unit"]})
    return _back(form)


async def language(request: Request) -> Response:
    """In which language pages and sheets are: the job says it, so that the command line writes it too."""
    site, form = site_of(request), texts(await request.form())
    if form.get("language") in LANGUAGES:
        try:
            site.folder.edit("the language", {"language": form["language"]}, form.get("number"))
        except Stale:
            return stale(request, Screen.SCAN)
    return _back(form)


async def words(request: Request) -> Response:
    """The catalogue, for what scripts write into a page."""
    site = site_of(request)
    told = site.words(request, site.state())
    return JSONResponse({"language": told.language, "decimal": told.decimal, "messages": told.messages})


def _back(form: Mapping[str, str]) -> Response:
    """To the screen that the form stood on."""
    name = form.get("path", "/")[1:]
    return go(name if name in list(Screen) else "")


async def undo(request: Request) -> Response:
    """Take the last change back."""
    site, form = site_of(request), texts(await request.form())
    site.folder.undo()
    return _back(form)


ROUTES = [
    Route("/scan", scan_page), Route("/upload", upload, methods=["POST"]),
    Route("/upload/{key}", upload_piece, methods=["PUT"]),
    Route("/upload/{key}/end", upload_end, methods=["POST"]),
    Route("/check", check_page), Route("/check", check, methods=["POST"]),
    Route("/line", line_page), Route("/line", line, methods=["POST"]),
    Route("/room", room_page), Route("/room", room, methods=["POST"]),
    Route("/slab", slab_page), Route("/slab", slab, methods=["POST"]),
    Route("/unit", unit, methods=["POST"]), Route("/language", language, methods=["POST"]),
    Route("/words", words), Route("/undo", undo, methods=["POST"]),
]  # fmt: skip
