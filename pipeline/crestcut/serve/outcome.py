"""The screens from the answer on: running, what to measure, plan and sheets, after the work, and files."""

from __future__ import annotations

import io
import re
import zipfile
from base64 import b64encode
from collections.abc import Mapping, Sequence
from hashlib import sha256
from pathlib import Path
from typing import Any

from starlette.requests import Request
from starlette.responses import FileResponse, JSONResponse, PlainTextResponse, Response
from starlette.routing import Route

from crestcut.base.cautions import for_measuring
from crestcut.base.errors import CrestcutError
from crestcut.serve.answer import answer_of, verdict_words
from crestcut.serve.asking import length as metres_of
from crestcut.serve.asking import shown, with_unit
from crestcut.serve.folder import JobFolder, Stale, read_json
from crestcut.serve.readings import Asked, asked_of, places_after, read_in, read_of
from crestcut.serve.runs import Kind
from crestcut.serve.site import fault, go, page_data, screen, site_of, stale, texts
from crestcut.serve.steps import Screen, State, nothing_to_do
from crestcut.serve.uploads import KINDS

TYPES = {
    ".html": "text/html; charset=utf-8", ".png": "image/png", ".pdf": "application/pdf", ".csv": "text/csv",
    ".json": "application/json", ".glb": "model/gltf-binary",
}  # fmt: skip
SENT = (".html", ".pdf", ".csv", ".dxf", ".png")  # of the results, what whoever does the work can use
_NAMES = {
    "work_sheets.pdf": "The work sheets, to print",
    "agreement.pdf": "What is agreed on, to sign with the owner",
    "report.html": "The whole report, with the slab in 3D",
    "plan.png": "The plan, as a picture", "profile.png": "The tight place from the side, as a picture",
    "set_out.dxf": "A drawing for a drawing program", "hand_over.pdf": "The hand-over sheet, to sign",
}  # fmt: skip
_SCRIPT = re.compile(rb"<script>(.*?)</script>", re.DOTALL)
_STYLE = re.compile(rb"<style>(.*?)</style>", re.DOTALL)


async def answer_page(request: Request) -> Response:
    """What came out; or what is missing before it can; or how far it is."""
    site = site_of(request)
    state = site.state()
    last = site.runs.last(Kind.RUN)
    told = None
    if state.first:
        told = answer_of(state.first, state.data, site.unit(state), planned=False)
    elif state.result:
        told = answer_of(state.result, state.data, site.unit(state))
    wrong = last.get("fault") or {}
    there = [] if state.first else listed(site.folder, "results")  # those of the answer before
    pictures = [n for n in ("profile.png", "plan.png") if n in there]
    return screen(
        request, Screen.ANSWER, "answer.html", state=state, told=told, missing=state.missing,
        cancelled=bool(last.get("cancelled")), pictures=pictures, words=verdict_words,
        wrong=wrong.get("what", ""), mend=wrong.get("mend", ""), where=wrong.get("where", ""),
    )  # fmt: skip


async def run(request: Request) -> Response:
    """Work it out."""
    site = site_of(request)
    state = site.state()
    if state.missing:
        return go(state.missing[0])
    await site.run("" if state.data.get("language") else site.words(request, state).language)
    return go(Screen.ANSWER)


async def cancel(request: Request) -> Response:
    """Stop what is under way; what was there before stays."""
    site = site_of(request)
    kind = site.runs.now.kind if site.runs.now else Kind.RUN
    await site.runs.cancel()
    return go({Kind.LOOK: Screen.SCAN, Kind.RUN: Screen.ANSWER, Kind.VERIFY: Screen.AFTER}[kind])


async def again(request: Request) -> Response:
    """Start anew what was cut short or stopped."""
    site, form = site_of(request), texts(await request.form())
    match form.get("kind"):
        case Kind.LOOK:
            await site.look()
            return go(Screen.SCAN)
        case Kind.VERIFY:
            await site.check()
            return go(Screen.AFTER)
    return await run(request)


async def progress(request: Request) -> Response:
    """How far it is, for the page that waits."""
    site = site_of(request)
    now, number = site.runs.now, site.folder.number()
    if now is None:
        return JSONResponse({"running": False, "number": number})
    share, left = now.share()
    return JSONResponse(
        {
            "running": True, "kind": now.kind, "share": round(share, 3), "left": round(left),
            "words": now.words, "answered": bool(now.first), "number": number,
        }
    )  # fmt: skip


async def measure_page(request: Request) -> Response:
    """What is worth measuring, with boxes for what was read, and what was read so far."""
    return _measure(request, {}, None)


def _measure(request: Request, faults: Mapping[str, str], number: int | None) -> Response:
    site = site_of(request)
    state = site.state()
    asked = asked_of(state.known, state.data, site.unit(state)) if state.known else ()
    kinds = [a.kind for a in asked]
    return screen(
        request, Screen.MEASURE, "measure.html", 422 if faults else 200, state=state, asked=asked,
        faults=faults, faulty=number, read=read_of(state.data, state.known, state.data, site.unit(state)),
        care_for=for_measuring(kinds),
        answer_number=_answer_number(state),
    )  # fmt: skip


def _answer_number(state: State) -> str:
    """Of the result that a reading was asked by: another result asks for others."""
    return str([row.get("sha256") for row in state.known.get("inputs", [])][:1])


async def measured(request: Request) -> Response:
    """A reading where it was asked for."""
    site, form = site_of(request), texts(await request.form())
    state, number = site.state(), int(request.path_params["number"])
    unit = site.unit(state)
    asked = asked_of(state.known, state.data, unit)
    if not _asked_for(asked, number) or form.get("answer") != _answer_number(state):
        return stale(request, Screen.MEASURE)
    tables, faults = read_in(asked[number], form, unit)
    if faults:
        return _measure(request, faults, number)
    return _add(request, "", asked[number], tables, form)


def _asked_for(asked: Sequence[Asked], number: int) -> bool:
    """Is it one that is asked for, at a place that is known?"""
    return number < len(asked) and bool(asked[number].entries)


def _add(
    request: Request, home: str, asked: Asked, tables: list[dict[str, Any]], form: Mapping[str, str]
) -> Response:
    site = site_of(request)
    data = site.folder.data()
    here = data.get("after", {}) if home else data
    old = [row for row in here.get(asked.table) or [] if not any(_same(row, new) for new in tables)]
    back = Screen.AFTER if home else Screen.MEASURE
    try:
        site.folder.edit("a reading", {f"{home}{asked.table}": old + tables}, form.get("number"))
    except Stale:
        return stale(request, back)
    return go(back)


def _same(old: Mapping[str, Any], new: Mapping[str, Any]) -> bool:
    """Is it a reading of the same thing at the same place? The newer one stands."""
    read = ("gap", "down", "touched", "cleared")
    return {k: v for k, v in old.items() if k not in read} == {k: v for k, v in new.items() if k not in read}


async def reading(request: Request) -> Response:
    """A reading that stands in the job, changed or taken away."""
    site, form = site_of(request), texts(await request.form())
    home = "after." if form.get("home") == "after" else ""
    back = Screen.AFTER if home else Screen.MEASURE
    state = site.state()
    data = state.data.get("after", {}) if home else state.data
    table, number = form.get("table", ""), form.get("row", "")
    rows = [dict(row) for row in data.get(table) or []] if table in ("witness", "string") else []
    if not number.isdigit() or int(number) >= len(rows):
        return stale(request, back)
    if form.get("away"):
        del rows[int(number)]
    else:
        unit, row = site.unit(state), rows[int(number)]
        try:
            metres_of(form.get("value", ""), unit)
        except CrestcutError as error:
            return fault(request, back, error)
        for key in ("touched", "cleared"):
            row.pop(key, None)
        row["gap" if table == "witness" else "down"] = with_unit(form["value"], unit)
    try:
        site.folder.edit("a reading", {f"{home}{table}": rows or None}, form.get("number"))
    except Stale:
        return stale(request, back)
    return go(back)


async def work_page(request: Request) -> Response:
    """Plan, sheets, and one file for whoever does the work."""
    site = site_of(request)
    state = site.state()
    if not state.result:
        return go(Screen.ANSWER)
    there = listed(site.folder, "results")
    files = [(name, _NAMES.get(name, "")) for name in sorted(there, key=_first)]
    told = answer_of(state.result, state.data, site.unit(state))
    sheet = read_json(site.folder.results / "worksheet.json")
    return screen(
        request, Screen.WORK, "work.html", state=state, told=told,
        first=[f for f in files if f[1]], more=[n for n, words in files if not words], sheet=sheet,
        nothing=nothing_to_do(state.result), method=str(sheet.get("method") or ""),
        hours=(sheet.get("quantities") or {}).get("hours") or {},
    )  # fmt: skip


def _first(name: str) -> int:
    """Named files in the order in which they are named, then the others."""
    return list(_NAMES).index(name) if name in _NAMES else len(_NAMES)


async def after_page(request: Request) -> Response:
    """The finished work: readings, and whether it is done."""
    return _after(request, {}, None)


def _after(request: Request, faults: Mapping[str, str], number: int | None) -> Response:
    site = site_of(request)
    state = site.state()
    if not state.result:
        return go(Screen.ANSWER)
    last, unit = site.runs.last(Kind.VERIFY), site.unit(state)
    asked = _places(state, unit)
    told = last.get("fault") or {}
    now = state.checked.get("now") or {}
    gap = now.get("least_clearance")
    since = state.data.get("after", {})
    return screen(
        request, Screen.AFTER, "after.html", 422 if faults else 200, state=state, asked=asked, faults=faults,
        faulty=number, read=read_of(since, state.result, state.data, unit),
        verdict=str(state.checked.get("verdict") or ""),
        gap=shown(float(gap), unit) if isinstance(gap, (int, float)) else "", kinds=KINDS,
        wrong=told.get("what", ""), mend=told.get("mend", ""), scans=since.get("files") or [],
        care_for=for_measuring(["felt gap"]),
    )  # fmt: skip


def _places(state: State, unit: str) -> tuple[Asked, ...]:
    """Where the finished work is read: as the last check says, else where it was tight before."""
    return (asked_of(state.checked, state.data, unit) if state.checked else ()) or places_after(
        state.result, unit
    )


async def after(request: Request) -> Response:
    """A reading of the finished work."""
    site, form = site_of(request), texts(await request.form())
    state, number = site.state(), int(request.path_params["number"])
    unit = site.unit(state)
    asked = _places(state, unit)
    if not _asked_for(asked, number):
        return stale(request, Screen.AFTER)
    tables, faults = read_in(asked[number], form, unit)
    if faults:
        return _after(request, faults, number)
    return _add(request, "after.", asked[number], tables, form)


async def verify(request: Request) -> Response:
    """Check the finished work."""
    await site_of(request).check()
    return go(Screen.AFTER)


def listed(folder: JobFolder, where: str) -> list[str]:
    """The files that commands left in a folder of results, as its manifest names them."""
    place = _place(folder, where)
    sets = read_json(place / "manifest.json").get("sets") or {}
    names = [str(row.get("file")) for one in sets.values() for row in one.get("files") or []]
    return [n for n in dict.fromkeys(names) if "/" not in n and "\\" not in n and (place / n).is_file()]


def _place(folder: JobFolder, where: str) -> Path:
    return folder.results if where == "results" else folder.looked


async def file(request: Request) -> Response:
    """One of the files that a manifest names; nothing else is ever read by request."""
    site, where, name = site_of(request), request.path_params["where"], request.path_params["name"]
    if where not in ("results", "looked") or name not in listed(site.folder, where):
        return PlainTextResponse("There is no such file among the results.", 404)
    path = _place(site.folder, where) / name
    if path.suffix == ".html":
        return _own_page(path)
    known = TYPES.get(path.suffix, "application/octet-stream")
    download = None if path.suffix in (".png", ".pdf") else name
    return FileResponse(path, media_type=known, filename=download)


def _own_page(path: Path) -> Response:
    """A page with everything inside it, shut off from this site: an origin of its own, no request, no form.
    Its style and script run where the page is as a command wrote it; in one that was changed since, none."""
    text = path.read_bytes()
    sets = read_json(path.with_name("manifest.json")).get("sets") or {}
    written = {row.get("sha256") for one in sets.values() for row in one.get("files") or []
               if row.get("file") == path.name}  # fmt: skip
    told = {"script": "'none'", "style": "'none'"}
    if sha256(text).hexdigest() in written:
        for kind, found in (("script", _SCRIPT.search(text)), ("style", _STYLE.search(text))):
            if found:
                told[kind] = f"'sha256-{b64encode(sha256(found[1]).digest()).decode()}'"
    policy = (
        "sandbox allow-scripts allow-downloads allow-modals; default-src 'none'; "
        f"script-src {told['script']}; style-src {told['style']}; img-src data: blob:; "
        "base-uri 'none'; form-action 'none'; frame-ancestors 'none'"
    )
    return Response(text, media_type=TYPES[".html"], headers={"content-security-policy": policy})


async def tight(request: Request) -> Response:
    """What the drawing of the tight place is made from: the report's data, without what it does not use."""
    site = site_of(request)
    first = site.runs.now.first if site.runs.now is not None else {}
    data = first.get("scene") or page_data(site.folder.results / "report.html") or {}
    wanted = {k: v for k, v in data.items() if k not in ("gap", "short", "colours")}
    return JSONResponse(wanted, 200 if data else 404)


async def send(request: Request) -> Response:
    """All that whoever does the work needs, in one file."""
    site = site_of(request)
    packed = io.BytesIO()
    with zipfile.ZipFile(packed, "w", zipfile.ZIP_DEFLATED) as archive:
        for name in listed(site.folder, "results"):
            if name.endswith(SENT):
                archive.write(site.folder.results / name, name)
    headers = {"content-disposition": 'attachment; filename="for_the_contractor.zip"'}
    return Response(packed.getvalue(), media_type="application/zip", headers=headers)


ROUTES = [
    Route("/answer", answer_page), Route("/run", run, methods=["POST"]),
    Route("/cancel", cancel, methods=["POST"]), Route("/again", again, methods=["POST"]),
    Route("/progress", progress), Route("/measure", measure_page),
    Route("/measure/{number:int}", measured, methods=["POST"]),
    Route("/reading", reading, methods=["POST"]), Route("/work", work_page), Route("/after", after_page),
    Route("/after/{number:int}", after, methods=["POST"]), Route("/verify", verify, methods=["POST"]),
    Route("/file/{where}/{name}", file), Route("/send", send), Route("/tight", tight),
]  # fmt: skip
