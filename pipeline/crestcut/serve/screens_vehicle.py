"""The screen of the vehicle: by tape, or one that was measured before."""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from typing import Any

from starlette.datastructures import UploadFile
from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from crestcut.base.errors import CrestcutError
from crestcut.serve import tape
from crestcut.serve.asking import length
from crestcut.serve.folder import Stale, edited
from crestcut.serve.site import (
    Site,
    example_vehicles,
    go,
    screen,
    site_of,
    stale,
    texts,
    vehicle_data,
    vehicles_beside,
)
from crestcut.serve.steps import Screen, State

CART = 1.5  # m of wheelbase: on less nobody sits in a cabin (common practice, no source)


async def vehicle_page(request: Request) -> Response:
    """The vehicle by tape, or one that was measured before."""
    site = site_of(request)
    state = site.state()
    typed = tape.typed_in(_sheet(site))
    return _vehicle(request, state, typed, {})


def _sheet(site: Site) -> dict[str, Any]:
    try:
        return tomllib.loads(site.folder.sheet.read_text(encoding="utf-8"))
    except (OSError, tomllib.TOMLDecodeError):
        return {}


def _vehicle(
    request: Request, state: State, typed: Mapping[str, str], faults: Mapping[str, str], **more: Any
) -> Response:
    site = site_of(request)
    unit = site.unit(state)
    parts = max([1] + [int(k.split(".")[1]) + 2 for k in typed if k.startswith("part.")])
    found = vehicle_data(site.folder)
    return screen(
        request, Screen.VEHICLE, "vehicle.html", 422 if faults or more else 200, state=state, typed=typed,
        groups=tape.groups(typed, faults, unit), now=(found or {}).get("name"), faults=faults,
        parts=[(n, tape.part_boxes(n, typed, unit)) for n in range(min(parts, tape.MOST_PARTS))],
        examples=list(example_vehicles()), beside=[p.name for p in vehicles_beside(site.folder)],
        doubts=site.folder.recall("vehicle").get("doubts", []) if found else [],
        by_tape=bool(typed), cart=_is_cart(found, typed),
        single=[] if typed else tape.single_measures(found or {}), **more,
    )  # fmt: skip


def _is_cart(found: Mapping[str, Any] | None, typed: Mapping[str, str]) -> bool:
    """Is it a cart, by what is known of it so far? Then it is drawn as one."""
    if typed.get("X"):
        return True
    told = (found or {}).get("wheelbase") or typed.get("A", "").partition(";")[0]
    try:
        return bool((found or {}).get("rigid")) or 0 < length(str(told), "mm") < CART
    except CrestcutError:
        return False


async def vehicle(request: Request) -> Response:
    """The filled sheet."""
    site, form = site_of(request), texts(await request.form())
    state = site.state()
    unit = site.unit(state)
    typed, faults = tape.from_form(form, unit)
    kept = {**typed, **{k: v for k, v in form.items() if k.startswith("part.")}}
    if faults:
        return _vehicle(request, state, kept, faults)
    try:
        text = tape.sheet_text(typed, form, unit)
        made, doubts, _ = tape.vehicle_from_sheet(text, site.folder.sheet)
        return _take(site, request, made, doubts, form.get("number"), text)
    except CrestcutError as error:
        return _vehicle(request, state, kept, faults, wrong=error.what, mend=error.mend)


async def vehicle_chosen(request: Request) -> Response:
    """One measured before: of the folder, a file from elsewhere, or a made-up one."""
    site = site_of(request)
    form = await request.form()
    state, sent = site.state(), form.get("file")
    name = str(form.get("vehicle", ""))
    try:
        if isinstance(sent, UploadFile) and sent.filename:
            text = (await sent.read()).decode("utf-8", "replace")
        elif name in example_vehicles():
            text = example_vehicles()[name]
        else:
            beside = {p.name: p for p in vehicles_beside(site.folder)}
            if name not in beside:
                raise CrestcutError("no vehicle was chosen", "", "choose one, or bring a file")
            text = beside[name].read_text(encoding="utf-8")
        _, doubts = tape.check_vehicle(text, site.folder.vehicle)
        return _take(site, request, text, doubts, str(form.get("number", "")), None)
    except CrestcutError as error:
        return _vehicle(request, state, {}, {}, wrong=error.what, mend=error.mend)


async def vehicle_number(request: Request) -> Response:
    """One measure of a vehicle file that no sheet stands behind."""
    site, form = site_of(request), texts(await request.form())
    state = site.state()
    found, path = vehicle_data(site.folder) or {}, site.folder.vehicle_file()
    key, typed = form.get("key", ""), form.get("value", "").strip()
    try:
        if path is None or key not in [one.key for one in tape.single_measures(found)]:
            raise CrestcutError("that is no measure of this vehicle", "", "choose one of the list")
        text = tape.with_measure(path.read_text(encoding="utf-8"), key, typed, site.unit(state))
        _, doubts = tape.check_vehicle(text, site.folder.vehicle)
        return _take(site, request, text, doubts, form.get("number"), None)
    except CrestcutError as error:
        return _vehicle(request, state, {}, {}, wrong=error.what, mend=error.mend)


def _take(
    site: Site, request: Request, made: str, doubts: tuple[str, ...], number: str | None, sheet: str | None
) -> Response:
    folder = site.folder
    job = edited(folder.text(), {"vehicle.file": folder.vehicle.name})
    files = {folder.vehicle: made, folder.sheet: sheet, folder.job: job}
    try:
        folder.change("the vehicle", files, number)
    except Stale:
        return stale(request, Screen.VEHICLE)
    folder.remember("vehicle", {"doubts": list(doubts)})
    return go(Screen.VEHICLE) if doubts else go(site.state().after(Screen.VEHICLE))


ROUTES = [
    Route("/vehicle", vehicle_page), Route("/vehicle", vehicle, methods=["POST"]),
    Route("/vehicle/chosen", vehicle_chosen, methods=["POST"]),
    Route("/vehicle/measure", vehicle_number, methods=["POST"]),
]  # fmt: skip
