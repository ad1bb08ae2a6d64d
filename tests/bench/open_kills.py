"""`crestcut open` killed at random moments: server, run, or the connection of whoever types. Counts what was
lost and who outlived it; then the first screen's time, idle memory and the memory of a large upload.

Run: .venv/bin/python tests/bench/open_kills.py [KILLS] [MEGABYTES]
"""

from __future__ import annotations

import json
import os
import random
import signal
import socket
import sys
import tempfile
import time
import tomllib
from pathlib import Path

ROOT = Path(__file__).parents[2]
sys.path.insert(0, str(ROOT / "tests"))

from serve.served import Served, alive  # noqa: E402
from serve.test_serve_open import site  # noqa: E402

FORM = {"clearance.confidence": "0.95", "travel.ways": "forward"}


def rss(pid: int, key: str = "VmRSS") -> float:
    """Megabytes of a process."""
    text = Path(f"/proc/{pid}/status").read_text()
    return int(text.partition(f"{key}:")[2].split()[0]) / 1024


def room_form(want: str) -> bytes:
    """The form of the screen of wishes."""
    return "&".join(f"{k}={v}" for k, v in {"clearance.want": want, **FORM}.items()).encode()


def type_in(served: Served, body: bytes, announced: int) -> socket.socket:
    """Somebody types; the connection, nothing of the answer read. announced : bytes, as the head says."""
    host = f"127.0.0.1:{served.port}"
    head = (
        f"POST /room HTTP/1.1\r\nHost: {host}\r\nOrigin: http://{host}\r\nCookie: {served.cookie}\r\n"
        f"Content-Type: application/x-www-form-urlencoded\r\nContent-Length: {announced}\r\n\r\n"
    )
    way = socket.create_connection(("127.0.0.1", served.port))
    way.sendall(head.encode() + body)
    return way


def kills(count: int, home: Path) -> tuple[int, int, dict[str, int]]:
    """(jobs lost, processes that outlived the server, kills by kind)."""
    chance, lost, strays = random.Random(1), 0, 0
    kinds = {"server": 0, "run": 0, "browser": 0}
    held: list[socket.socket] = []
    for number in range(count):
        kind = chance.choice(list(kinds))
        kinds[kind] += 1
        before = (home / "job.toml").read_text()
        want = f"{4 + number % 7} mm"
        with Served(home, cwd=home) as served:
            if chance.random() < 0.6:
                served.send("/run")
                time.sleep(chance.uniform(0, 3))
            children = served.children()
            if kind == "browser":
                body = room_form("9")
                type_in(served, body[:-3], len(body)).close()  # cut in the middle
            elif kind == "run":
                for pid in children:
                    os.kill(pid, signal.SIGKILL)
            elif chance.random() < 0.5:
                body = room_form(want)
                held.append(type_in(served, body, len(body)))  # open when the server is killed
                time.sleep(chance.uniform(0, 0.02))
            served.process.kill()
            served.process.communicate()
            end = time.monotonic() + 10
            while any(map(alive, children)) and time.monotonic() < end:
                time.sleep(0.02)
            strays += sum(map(alive, children))
        with Served(home, cwd=home) as served:
            served.get("/answer")
        now = (home / "job.toml").read_text()
        told = tomllib.loads(now)
        result = home / "results" / "result.json"
        whole = not result.exists() or "schema" in json.loads(result.read_text())
        if not whole or (now != before and told["clearance"]["want"] != want):
            lost += 1
    return lost, strays, kinds


def upload(home: Path, megabytes: int) -> tuple[float, float]:
    """Idle MB of a server, and by how many MB it grew at most while a file came."""
    with Served(home / "empty", cwd=home) as served:
        served.get("/scan")
        idle = rss(served.process.pid)
        size, piece = megabytes << 20, b"0.1 0.2 0.3\n" * 349_525
        told = json.dumps({"name": "big.xyz", "size": size, "modified": 1})
        key = json.loads(served.ask("POST", "/upload", told)[2])["key"]
        here = 0
        while here < size:
            sent = piece[: min(len(piece), size - here)]
            got = served.ask("PUT", f"/upload/{key}", sent, {"x-offset": str(here)})
            here = json.loads(got[2])["here"]
        return idle, rss(served.process.pid, "VmHWM") - idle


def main() -> None:
    """Print data, figures, accuracy."""
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 50
    megabytes = int(sys.argv[2]) if len(sys.argv) > 2 else 500
    with tempfile.TemporaryDirectory() as folder:
        home = site(Path(folder))
        began = time.perf_counter()
        with Served(Path(folder) / "new", cwd=home) as served:
            up = time.perf_counter()
            served.get("/scan")
            first = time.perf_counter() - up
        idle, grew = upload(Path(folder), megabytes)
        lost, strays, kinds = kills(count, home)
    print(f"start to listening {up - began:.2f} s, first screen after that {first * 1000:.0f} ms")
    print(f"idle {idle:.0f} MB; grew by {grew:.0f} MB while {megabytes} MB came")
    print(f"{count} kills {kinds}: {lost} jobs lost, {strays} stray processes (moments hang on the machine)")


if __name__ == "__main__":
    main()
