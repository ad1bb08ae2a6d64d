"""Who may ask, for what, and how much: before any screen sees a request.

The server listens to this machine alone, and with ``--phone`` to the local network too. Whoever has not
come in by an address with a token (128 bits, from the operating system) sees nothing. A page elsewhere on
the web may send a browser here, by a name that it turns to this address or by a form of its own: Host and
Origin tell. All of it dies with the command; nothing of it is written anywhere.
"""

from __future__ import annotations

import hmac
import secrets
from dataclasses import dataclass, field
from http.cookies import CookieError, SimpleCookie

from starlette.datastructures import Headers, MutableHeaders
from starlette.responses import PlainTextResponse
from starlette.types import ASGIApp, Message, Receive, Scope, Send

TOKEN_BYTES = 16  # 128 bits
MOST_BODY = 512 * 1024  # bytes of a form
MOST_CHUNK = 8 * 1024 * 1024  # of one piece of an upload
POLICY = (
    "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data: blob:; "
    "connect-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'"
)
_ALWAYS = {
    "x-content-type-options": "nosniff",
    "referrer-policy": "same-origin",  # no-referrer would take Origin from forms too
    "cross-origin-opener-policy": "same-origin",
    "cross-origin-resource-policy": "same-origin",
    "permissions-policy": "camera=(), microphone=(), geolocation=()",
}
_SAFE = ("GET", "HEAD")


@dataclass
class Doors:
    """Which addresses are this server's, and who has come in.

    hosts : as a browser names them, with the port.  here : the token of the address that the command opens,
    good as long as the command runs.  phone : of the address that the picture shows, good once.
    """

    hosts: set[str]
    here: str = field(default_factory=lambda: secrets.token_hex(TOKEN_BYTES))
    phone: str = ""
    sessions: set[str] = field(default_factory=set)
    cookie: str = "crestcut"

    def new_phone_address(self) -> str:
        """A token for one phone; the one before is dead."""
        self.phone = secrets.token_hex(TOKEN_BYTES)
        return self.phone

    def enter(self, token: str) -> str | None:
        """A session for who brings a token that is good; None for anybody else."""
        if self.phone and hmac.compare_digest(token.encode(), self.phone.encode()):
            self.phone = ""
        elif not hmac.compare_digest(token.encode(), self.here.encode()):
            return None
        session = secrets.token_hex(TOKEN_BYTES)
        self.sessions.add(session)
        return session

    def knows(self, headers: Headers) -> bool:
        """Does a request carry the cookie of somebody who came in?"""
        try:
            found = SimpleCookie(headers.get("cookie", "")).get(self.cookie)
        except CookieError:
            return False
        told = b"" if found is None else found.value.encode()
        return any(hmac.compare_digest(told, session.encode()) for session in self.sessions)


class Guard:
    """ASGI: lets through to ``app`` what may pass, and puts the policy on every answer."""

    def __init__(self, app: ASGIApp, doors: Doors) -> None:
        self.app, self.doors = app, doors

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """As ASGI has it."""
        if scope["type"] != "http":
            if scope["type"] == "lifespan":
                await self.app(scope, receive, send)
            return

        async def answer(message: Message) -> None:
            if message["type"] == "http.response.start":
                headers = MutableHeaders(scope=message)
                headers.setdefault("content-security-policy", POLICY)
                headers.setdefault("cache-control", "no-store")
                for name, value in _ALWAYS.items():
                    headers[name] = value
            await send(message)

        refused = self._refused(scope)
        if refused is not None:
            await refused(scope, receive, answer)
            return
        limit = MOST_CHUNK if scope["path"].startswith("/upload/") else MOST_BODY
        told = Headers(scope=scope).get("content-length", "0")
        if not told.isdigit() or int(told) > limit:
            await PlainTextResponse("This is more than is asked for here.", 413)(scope, receive, answer)
            return
        await self.app(scope, _bounded(receive, limit), answer)

    def _refused(self, scope: Scope) -> PlainTextResponse | None:
        headers, method = Headers(scope=scope), scope["method"]
        if headers.get("host", "").lower() not in self.doors.hosts:
            return PlainTextResponse("No such address here. Use the one that crestcut printed.", 421)
        if method not in (*_SAFE, "POST", "PUT"):
            return PlainTextResponse("Not asked for here.", 405)
        if method not in _SAFE:
            origin = headers.get("origin", "").lower()
            if origin != f"http://{headers['host'].lower()}" or headers.get("sec-fetch-site") not in (
                None,
                "same-origin",
            ):
                return PlainTextResponse("This came from another page: nothing was changed.", 403)
        if scope["path"].startswith("/enter/") or self.doors.knows(headers):
            return None
        return PlainTextResponse(
            "This page is private. Open it by the address that crestcut printed where it was started, or, on "
            "a phone, by a new picture from its Phone page.",
            403,
        )


def _bounded(receive: Receive, limit: int) -> Receive:
    """The same body, cut off where it is longer than it said."""
    taken = 0

    async def bounded() -> Message:
        nonlocal taken
        message = await receive()
        taken += len(message.get("body", b""))
        if taken > limit:
            return {"type": "http.disconnect"}
        return message

    return bounded
