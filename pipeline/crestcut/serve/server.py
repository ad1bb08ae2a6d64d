"""`crestcut open` on one page: the folder is claimed, what was cut short is put right, a socket is bound to
this machine (and, with ``--phone``, to the local network), the browser is sent to an address with a token,
and everything ends with the command.

What a request goes through: ``guard`` (who, from where, how much) -> a route of ``screens`` or ``outcome``
-> the files of ``folder`` (whole or not at all, each change kept for Undo) or a command of ``runs`` (a
process of its own) -> a page of ``templates``. There is no other state: close everything, and on the next
start all is there.
"""

from __future__ import annotations

import asyncio
import contextlib
import os
import re
import socket
import webbrowser
from collections.abc import AsyncIterator, Callable
from dataclasses import dataclass
from hashlib import sha256
from pathlib import Path

from starlette.applications import Starlette
from starlette.middleware import Middleware
from starlette.requests import Request
from starlette.responses import PlainTextResponse, RedirectResponse, Response
from starlette.routing import Route

from crestcut.base.errors import CrestcutError
from crestcut.serve import outcome, screens, screens_vehicle
from crestcut.serve.folder import JOB_NAME, JobFolder, SeveralLines, Stale
from crestcut.serve.guard import Doors, Guard
from crestcut.serve.runs import Kind
from crestcut.serve.site import Site, asset, fault, go, screen, site_of
from crestcut.serve.uploads import KINDS

HERE = "127.0.0.1"
JOBS = "jobs"  # where the folder of a scan is made, under the folder one stands in
ASSETS = {
    "open.js": "text/javascript", "viewer.js": "text/javascript", "line.js": "text/javascript",
    "tight.js": "text/javascript", "size.js": "text/javascript", "open.css": "text/css; charset=utf-8",
}  # fmt: skip


@dataclass(frozen=True)
class Asked:
    """What the command was asked for."""

    what: Path | None
    folder: Path | None = None
    phone: bool = False
    port: int = 0
    browser: bool = True


def serve(asked: Asked, tell: Callable[[str], None]) -> None:
    """Serve one job until the process is told to stop. tell : prints a line.

    Raises CrestcutError where the folder is open already, the port is taken, or what was named is no scan,
    job or folder.
    """
    folder, scan = folder_of(asked)
    _refuse_lines(folder)
    try:
        held = folder.claim()
    except OSError as error:
        raise CrestcutError(
            f"cannot be written ({(error.strerror or 'unknown').lower()})", str(folder.home),
            "name another folder with --folder",
        ) from None  # fmt: skip
    if held:
        raise CrestcutError(
            f"is open already, at {held}", str(folder.home), "use that one, or end it with Ctrl-C first"
        )
    if folder.put_right():
        tell("A change was cut short last time: the job is as it was before it.")
    if scan is not None and not folder.scan_files():
        begin(folder, scan)
    bound = _bind(HERE, asked.port)
    port = bound.getsockname()[1]
    sockets, hosts, network = [bound], {f"{HERE}:{port}", f"localhost:{port}"}, ""
    if asked.phone:
        network = _own_address()
        sockets.append(_bind(network, port))
        hosts.add(f"{network}:{port}")
    doors = Doors(hosts, cookie=f"crestcut_{port}")
    site = Site(folder, doors, f"{network}:{port}" if network else "")
    site.uploads.sweep()
    folder.tell(f"http://{HERE}:{port}")
    address = f"http://{HERE}:{port}/enter/{doors.here}"
    tell(f"Open: {address}")
    tell(f"Job:  {folder.job}")
    if network:
        _tell_phone(site, tell)
    tell("Ctrl-C ends it. Everything is kept.")
    with contextlib.suppress(KeyboardInterrupt):  # the way it is ended
        asyncio.run(_run(site, sockets, address if asked.browser else ""))
    tell("Ended.")


def _refuse_lines(folder: JobFolder) -> None:
    """Raise CrestcutError for a job of several lines; what else is wrong with one is told on its page."""
    try:
        folder.data()
    except SeveralLines:
        raise
    except CrestcutError:
        return


def begin(folder: JobFolder, scan: Path) -> None:
    """A job of a scan that lies somewhere: it stays there and is named."""
    named = os.path.relpath(scan.resolve(), folder.home)
    title = scan.stem.replace("_", " ").strip().capitalize() or "Your slab"
    folder.edit("the scan", {"title": title, "scan.files": [named.replace(os.sep, "/")]})


def folder_of(asked: Asked) -> tuple[JobFolder, Path | None]:
    """The job's folder, and the scan it is to begin with, if one was named.

    Raises CrestcutError for something that is neither.
    """
    what = asked.what
    if what is None:
        return JobFolder((asked.folder or Path(JOBS) / "slab") / JOB_NAME), None
    if what.is_dir():
        jobs = [p for p in sorted(what.glob("*.toml")) if _is_job(p)]
        if len(jobs) > 1 and what / JOB_NAME not in jobs:
            names = ", ".join(p.name for p in jobs[:6])
            raise CrestcutError(f"several jobs are in it: {names}", str(what), "name the one to open")
        return JobFolder(what / JOB_NAME if what / JOB_NAME in jobs or not jobs else jobs[0]), None
    ending = what.suffix.lower().lstrip(".")
    if ending == "toml":
        if not what.is_file():
            raise CrestcutError("no such job", str(what), "check the name and the folder")
        return JobFolder(what), None
    if ending not in (*KINDS, "gltf"):
        if not what.exists() and not ending:
            return JobFolder(what / JOB_NAME), None  # a folder that is to be
        raise CrestcutError("is neither a scan, a job nor a folder", str(what), f"scans: {', '.join(KINDS)}")
    if not what.is_file():
        raise CrestcutError("no such file", str(what), "check the name and the folder")
    name = re.sub(r"[^\w.-]+", "_", what.stem).strip("._") or "slab"
    return JobFolder((asked.folder or Path(JOBS) / name) / JOB_NAME), what


def _is_job(path: Path) -> bool:
    import tomllib

    with contextlib.suppress(OSError, UnicodeDecodeError, tomllib.TOMLDecodeError):
        return bool({"scan", "travel"} & set(tomllib.loads(path.read_text(encoding="utf-8"))))
    return False


def _bind(host: str, port: int) -> socket.socket:
    found = socket.socket(socket.AF_INET, socket.SOCK_STREAM)
    if os.name == "posix":
        found.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
    try:
        found.bind((host, port))
    except OSError as error:
        found.close()
        raise CrestcutError(
            f"cannot be used ({(error.strerror or 'unknown').lower()})", f"port {port} of {host}",
            "leave --port out, then a free one is taken",
        ) from None  # fmt: skip
    found.listen(64)
    found.setblocking(False)
    return found


def _own_address() -> str:
    """This machine's address on its network. Nothing is sent: a datagram's way is asked for, none leaves."""
    with contextlib.suppress(OSError), socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as way:
        way.connect(("192.0.2.1", 9))  # RFC 5737: reserved for documentation, belongs to nobody
        return str(way.getsockname()[0])
    raise CrestcutError("this machine is on no network", "--phone", "join the one that the phone is on")


def _tell_phone(site: Site, tell: Callable[[str], None]) -> None:
    import io

    import segno

    address = f"http://{site.network}/enter/{site.doors.new_phone_address()}"
    drawn = io.StringIO()
    segno.make(address, error="m").terminal(drawn, compact=True)
    for row in drawn.getvalue().splitlines():
        tell(row)
    tell(f"Phone, on the same network, once: {address}")


async def _run(site: Site, sockets: list[socket.socket], address: str) -> None:
    import uvicorn

    config = uvicorn.Config(
        application(site), log_level="error", access_log=False, server_header=False, loop="asyncio",
        http="h11", ws="none", lifespan="on", timeout_graceful_shutdown=2, date_header=False,
    )  # fmt: skip
    server = uvicorn.Server(config)
    serving = asyncio.create_task(server.serve(sockets=sockets))
    while not server.started and not serving.done():
        await asyncio.sleep(0.01)
    if address:
        await asyncio.to_thread(_open_browser, address)
    await serving


def _open_browser(address: str) -> None:
    with contextlib.suppress(webbrowser.Error, OSError):
        webbrowser.open(address)  # where there is none, the address stands in the terminal


def application(site: Site) -> Starlette:
    """The ASGI application of one job."""

    @contextlib.asynccontextmanager
    async def lifespan(app: Starlette) -> AsyncIterator[None]:
        state = site.state()
        wanted = not state.broken and site.folder.scan_files() and not state.looked
        if wanted and not site.runs.last(Kind.LOOK).get("fault"):
            await site.look()
        yield
        await site.runs.cancel()
        site.runs.let_go()

    app = Starlette(
        routes=[
            Route("/", home), Route("/enter/{token}", enter), Route("/static/{name}", static),
            Route("/phone", phone), Route("/phone", new_phone, methods=["POST"]),
            *screens.ROUTES, *screens_vehicle.ROUTES, *outcome.ROUTES,
        ],
        middleware=[Middleware(Guard, doors=site.doors)],
        exception_handlers={CrestcutError: _told, Stale: _stale, 404: _nowhere, Exception: _broke},
        lifespan=lifespan,
    )  # fmt: skip
    app.state.site = site
    return app


async def _told(request: Request, error: Exception) -> Response:
    assert isinstance(error, CrestcutError)
    return fault(request, None, error)


async def _broke(request: Request, error: Exception) -> Response:
    """A fault of ours: told as one; what is behind it stands in the terminal."""
    what = CrestcutError(
        "the program itself is at fault here", type(error).__name__, "nothing was lost: go back"
    )
    return fault(request, None, what, 500)


async def _stale(request: Request, error: Exception) -> Response:
    return screen(request, None, "stale.html", 409)


async def _nowhere(request: Request, error: Exception) -> Response:
    return PlainTextResponse("There is no such page here.", 404)


async def home(request: Request) -> Response:
    """Where the job stands."""
    return go(site_of(request).state().next)


async def enter(request: Request) -> Response:
    """A token for a cookie; the address that had it is gone from the browser then."""
    doors = site_of(request).doors
    session = doors.enter(request.path_params["token"])
    if session is None:
        return PlainTextResponse(
            "This address is used up or of an earlier start. Take the one that crestcut printed last, or, "
            "on a phone, a new picture from the Phone page.", 403,
        )  # fmt: skip
    answer = RedirectResponse("/", 303)
    answer.set_cookie(doors.cookie, session, httponly=True, samesite="strict", path="/")
    return answer


async def static(request: Request) -> Response:
    """The built style and scripts, by their names alone."""
    name = request.path_params["name"]
    if name not in ASSETS:
        return PlainTextResponse("There is no such page here.", 404)
    text = asset(name)
    tag = f'"{sha256(text).hexdigest()[:32]}"'  # asked for anew each time: another version has other ones
    headers = {"cache-control": "private, no-cache", "etag": tag}
    if tag in request.headers.get("if-none-match", ""):
        return Response(status_code=304, headers=headers)
    return Response(text, media_type=ASSETS[name], headers=headers)


async def phone(request: Request) -> Response:
    """The picture with a phone's address."""
    return screen(request, None, "phone.html", picture="")


async def new_phone(request: Request) -> Response:
    """A new one-time address; the one before is dead."""
    import segno
    from markupsafe import Markup

    site = site_of(request)
    if not site.network:
        return go("phone")
    address = f"http://{site.network}/enter/{site.doors.new_phone_address()}"
    drawn = segno.make(address, error="m").svg_inline(scale=6, border=3, light="#fff", dark="#000")
    return screen(request, None, "phone.html", picture=Markup(drawn), address=address)  # noqa: S704 - ours
