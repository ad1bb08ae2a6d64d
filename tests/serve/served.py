"""`crestcut open` as a person starts it, and a client that is no browser and keeps no rule of one."""

from __future__ import annotations

import http.client
import os
import re
import signal
import subprocess
import sys
import time
import urllib.parse
from pathlib import Path
from types import TracebackType

ROOT = Path(__file__).parents[2]
START = 20.0  # s that a server may take on a busy machine


class Served:
    """A server of one job, with what it printed; ``with`` ends it."""

    def __init__(self, *arguments: str | Path, cwd: Path) -> None:
        command = [sys.executable, "-m", "crestcut.apps.cli", "open", *map(str, arguments), "--no-browser"]
        self.process = subprocess.Popen(
            command, cwd=cwd, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True
        )
        self.said = ""
        self.cookie = ""
        assert self.process.stdout is not None
        while "Ctrl-C ends it" not in self.said:
            line = self.process.stdout.readline()
            assert line, self.said
            self.said += line
        found = re.search(r"Open: http://127\.0\.0\.1:(\d+)(/enter/[0-9a-f]{32})", self.said)
        assert found, self.said
        self.port, self.entry = int(found[1]), found[2]

    @property
    def address(self) -> str:
        """What a person opens."""
        return f"http://127.0.0.1:{self.port}{self.entry}"

    def __enter__(self) -> Served:
        end = time.monotonic() + START
        while True:
            try:
                status, headers, _ = self.ask("GET", self.entry)
                break
            except OSError:
                assert time.monotonic() < end, "no answer"
                time.sleep(0.02)
        assert status == 303
        self.cookie = headers["set-cookie"].partition(";")[0]
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        self.end()

    def end(self, blow: signal.Signals = signal.SIGINT) -> int:
        """Stop it, and wait until it has gone."""
        if self.process.poll() is None:
            self.process.send_signal(blow)
        self.process.communicate(timeout=30)
        return self.process.returncode

    def ask(
        self, method: str, path: str, body: bytes | str = b"", headers: dict[str, str] | None = None
    ) -> tuple[int, dict[str, str], bytes]:
        """(status, headers, body). ``headers`` go over those a browser on this site would send."""
        own = {"Host": f"127.0.0.1:{self.port}", "Cookie": self.cookie}
        if method not in ("GET", "HEAD"):
            own["Origin"] = f"http://127.0.0.1:{self.port}"
        sent = {k: v for k, v in {**own, **(headers or {})}.items() if v}
        way = http.client.HTTPConnection("127.0.0.1", self.port, timeout=30)
        try:
            way.putrequest(method, path, skip_host=True, skip_accept_encoding=True)
            data = body.encode() if isinstance(body, str) else body
            for name, value in sent.items():
                way.putheader(name, value)
            if data or method in ("POST", "PUT"):
                if "Content-Length" not in sent:
                    way.putheader("Content-Length", str(len(data)))
            way.endheaders(data or None)
            answer = way.getresponse()
            return answer.status, {k.lower(): v for k, v in answer.getheaders()}, answer.read()
        finally:
            way.close()

    def get(self, path: str) -> str:
        """A page that must be there."""
        status, _, body = self.ask("GET", path)
        assert status in (200, 303), (status, body[:300])
        return body.decode()

    def send(self, path: str, **form: str) -> tuple[int, str]:
        """A form, with the change number of now; status and page."""
        fields = {"number": self.number(), **form}
        kind = {"Content-Type": "application/x-www-form-urlencoded"}
        status, _, body = self.ask("POST", path, urllib.parse.urlencode(fields), kind)
        return status, body.decode()

    def number(self) -> str:
        """The change number, as the page has it."""
        found = re.search(r'data-number="([0-9a-f]+)"', self.get("/phone"))
        assert found
        return found[1]

    def wait(self, seconds: float = 120.0) -> None:
        """Until nothing runs."""
        end = time.monotonic() + seconds
        while b'"running":true' in self.ask("GET", "/progress")[2]:
            assert time.monotonic() < end
            time.sleep(0.1)

    def children(self) -> list[int]:
        """Processes that it started."""
        known = Path(f"/proc/{self.process.pid}/task/{self.process.pid}/children")
        return [int(pid) for pid in known.read_text().split()] if known.exists() else []


def alive(pid: int) -> bool:
    """Is a process there, and no mere entry of one that has ended?"""
    try:
        os.kill(pid, 0)
        return "\nState:\tZ" not in Path(f"/proc/{pid}/status").read_text()
    except OSError:
        return False
