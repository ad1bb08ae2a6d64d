"""Whoever is not let in sees nothing and changes nothing: each rule is attacked as somebody would."""

from __future__ import annotations

import re
import socket
from collections.abc import Iterator
from pathlib import Path

import pytest
from starlette.datastructures import Headers

from crestcut.base.errors import CrestcutError
from crestcut.serve.folder import JobFolder
from crestcut.serve.guard import MOST_BODY, Doors
from crestcut.serve.server import _own_address, application
from crestcut.serve.site import Site
from serve.served import Served


@pytest.fixture(scope="module")
def served(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Served]:
    """A server of an empty job, with a secret beside it."""
    home = tmp_path_factory.mktemp("home")
    (home / "secret.txt").write_text("another job's secret")
    (home / "job").mkdir()
    (home / "job" / "results").mkdir()
    (home / "job" / "results" / "left.txt").write_text("lies there, no command wrote it")
    with Served(home / "job", cwd=home) as running:
        yield running


def test_it_listens_to_this_machine_alone(served: Served) -> None:
    try:
        own = _own_address()
    except CrestcutError:
        pytest.skip("this machine is on no network")
    with pytest.raises(OSError):
        socket.create_connection((own, served.port), timeout=2).close()


@pytest.mark.parametrize("path", ["/", "/scan", "/answer", "/progress", "/static/open.css", "/send", "/none"])
@pytest.mark.parametrize("cookie", ["", "crestcut=1", "crestcut_{port}=", "crestcut_{port}=" + "0" * 32])
def test_without_the_cookie_nothing_is_seen(served: Served, path: str, cookie: str) -> None:
    status, _, body = served.ask("GET", path, headers={"Cookie": cookie.format(port=served.port)})
    assert status == 403 and b"private" in body


@pytest.mark.parametrize("token", ["0" * 32, "", "x", "é" * 16, "%00", "../scan"])
def test_a_wrong_token_lets_nobody_in(served: Served, token: str) -> None:
    from urllib.parse import quote

    status, headers, _ = served.ask("GET", f"/enter/{quote(token, safe='%')}", headers={"Cookie": ""})
    assert status in (403, 404) and "set-cookie" not in headers


def test_the_cookie_is_for_this_server_alone(served: Served) -> None:
    _, headers, _ = served.ask("GET", served.entry, headers={"Cookie": ""})
    told = headers["set-cookie"].lower()
    assert "httponly" in told and "samesite=strict" in told and served.entry[7:] not in told


@pytest.mark.parametrize("host", ["evil.example", "evil.example:{port}", "127.0.0.1", "127.0.0.1:1", ""])
def test_a_name_turned_to_this_address_is_refused(served: Served, host: str) -> None:
    """DNS rebinding: a page's own name resolves to 127.0.0.1, and the browser takes it for the same site."""
    status, _, body = served.ask("GET", "/scan", headers={"Host": host.format(port=served.port)})
    assert status in (400, 421) and b"<h1>" not in body


@pytest.mark.parametrize(
    "headers",
    [
        {"Origin": "http://evil.example"},
        {"Origin": "null"},
        {"Origin": ""},
        {"Origin": "http://127.0.0.1"},
        {"Sec-Fetch-Site": "cross-site"},
        {"Sec-Fetch-Site": "same-site"},
    ],
)
@pytest.mark.parametrize("path", ["/undo", "/run", "/slab", "/upload", "/phone"])
def test_a_form_of_another_page_changes_nothing(served: Served, path: str, headers: dict[str, str]) -> None:
    before = served.number()
    status, _, _ = served.ask("POST", path, "slab.kind=other", headers)
    assert status == 403 and served.number() == before


@pytest.mark.parametrize("method", ["DELETE", "OPTIONS", "PATCH", "TRACE", "CONNECT"])
def test_no_other_method_and_no_cors(served: Served, method: str) -> None:
    status, headers, _ = served.ask(method, "/scan", headers={"Origin": "http://evil.example"})
    assert status in (400, 405)
    assert not [name for name in headers if name.startswith("access-control")]


def test_every_answer_carries_the_policy_without_inline_script(served: Served) -> None:
    for path in ("/scan", "/static/open.js", "/none", "/file/results/left.txt"):
        _, headers, body = served.ask("GET", path)
        policy = headers["content-security-policy"]
        assert (
            "default-src 'none'" in policy and "unsafe" not in policy and "frame-ancestors 'none'" in policy
        )
        assert headers["x-content-type-options"] == "nosniff"
        assert b"<script>" not in body and b" onclick" not in body and b"style=" not in body


@pytest.mark.parametrize(
    "name",
    ["left.txt", "../secret.txt", "..%2fsecret.txt", "%2e%2e/secret.txt", "....//secret.txt", "/etc/passwd",
     "..%5csecret.txt", "manifest.json", "%00", "job.toml"],
)  # fmt: skip
@pytest.mark.parametrize("where", ["results", "looked", "..", "scans", ".crestcut"])
def test_only_what_a_manifest_names_is_read(served: Served, where: str, name: str) -> None:
    status, _, body = served.ask("GET", f"/file/{where}/{name}")
    assert status == 404 and b"secret" not in body and b"root:" not in body


def test_a_manifest_that_names_what_lies_elsewhere_gives_nothing_away(tmp_path: Path) -> None:
    from crestcut.serve.outcome import listed

    (tmp_path / "secret.txt").write_text("x")
    folder = JobFolder(tmp_path / "job" / "job.toml")
    folder.results.mkdir(parents=True)
    rows = '[{"file": "../../secret.txt"}, {"file": "/etc/passwd"}, {"file": "..\\\\secret.txt"}]'
    (folder.results / "manifest.json").write_text('{"sets": {"run": {"files": ' + rows + "}}}")
    assert listed(folder, "results") == []


def test_a_page_of_results_is_shut_off_and_one_that_was_changed_runs_nothing(tmp_path: Path) -> None:
    from crestcut.report import Staging

    with Served(tmp_path / "job", cwd=tmp_path) as served:
        with Staging(tmp_path / "job" / "results", "run") as folder:
            (folder / "report.html").write_text("<style>a{}</style><script>let a</script>", encoding="utf-8")
        policy = served.ask("GET", "/file/results/report.html")[1]["content-security-policy"]
        assert "sandbox allow-scripts" in policy and "allow-same-origin" not in policy
        assert (
            "script-src 'sha256-" in policy and "connect-src" not in policy and "default-src 'none'" in policy
        )
        (tmp_path / "job" / "results" / "report.html").write_text("<script>evil()</script>", encoding="utf-8")
        policy = served.ask("GET", "/file/results/report.html")[1]["content-security-policy"]
        assert "script-src 'none'" in policy


def test_more_than_is_asked_for_is_refused(served: Served) -> None:
    big = str(10 * MOST_BODY)
    assert served.ask("POST", "/slab", b"x", {"Content-Length": big})[0] == 413
    assert served.ask("POST", "/slab", b"x" * (MOST_BODY + 1))[0] == 413
    chunked = {"Transfer-Encoding": "chunked", "Content-Length": ""}
    for _ in range(2):
        try:  # says nothing of its length, and is longer: cut off
            status, _, _ = _chunked(served, chunked, MOST_BODY + 70_000)
        except OSError:
            status = 0
        assert status in (0, 400, 413, 500)
    assert served.get("/scan")


def _chunked(served: Served, headers: dict[str, str], size: int) -> tuple[int, dict[str, str], bytes]:
    piece = b"10000\r\n" + b"x" * 65536 + b"\r\n"
    body = piece * (size // 65536 + 1) + b"0\r\n\r\n"
    way = socket.create_connection(("127.0.0.1", served.port), timeout=20)
    host = f"127.0.0.1:{served.port}"
    with way:
        way.sendall(
            f"POST /slab HTTP/1.1\r\nHost: {host}\r\nOrigin: http://{host}\r\nCookie: {served.cookie}\r\n"
            "Content-Type: application/x-www-form-urlencoded\r\nTransfer-Encoding: chunked\r\n\r\n".encode()
            + body
        )
        told = way.recv(4096)
    return int(told.split()[1]) if told else 0, {}, told


def test_a_phones_address_is_good_once_and_the_commands_as_long_as_it_runs() -> None:
    doors = Doors({"127.0.0.1:1"})
    assert len(doors.here) == 32 and doors.enter("") is None and doors.enter(doors.here) is not None
    first = doors.new_phone_address()
    second = doors.new_phone_address()
    assert first != second and doors.enter(first) is None  # a new picture kills the one before
    session = doors.enter(second)
    assert session is not None and doors.enter(second) is None
    assert doors.knows(Headers({"cookie": f"crestcut={session}"}))
    assert not doors.knows(Headers({"cookie": f"crestcut={session[:-1]}"}))
    assert not doors.knows(Headers({"cookie": "crestcut=é"}))


def test_the_token_is_dead_when_the_command_has_ended(tmp_path: Path) -> None:
    with Served(tmp_path / "job", cwd=tmp_path) as first:
        entry, cookie, port = first.entry, first.cookie, first.port
    with Served(tmp_path / "job", "--port", str(port), cwd=tmp_path) as second:
        assert second.ask("GET", entry, headers={"Cookie": ""})[0] == 403
        assert second.ask("GET", "/scan", headers={"Cookie": cookie})[0] == 403
    assert entry.rpartition("/")[2] not in "".join(
        p.read_text(errors="replace") for p in (tmp_path / "job").rglob("*") if p.is_file()
    )


def test_without_phone_there_is_no_address_for_one(tmp_path: Path) -> None:
    site = Site(JobFolder(tmp_path / "job.toml"), Doors({"127.0.0.1:1"}))
    assert application(site).state.site.network == "" and site.doors.phone == ""


def test_a_phone_comes_in_once_by_its_own_address_and_by_no_other_name(tmp_path: Path) -> None:
    try:
        network = _own_address()
    except CrestcutError:
        pytest.skip("this machine is on no network")
    with Served(tmp_path / "job", "--phone", cwd=tmp_path) as served:
        found = re.search(
            rf"once: http://{re.escape(network)}:{served.port}(/enter/[0-9a-f]{{32}})", served.said
        )
        assert found is not None
        host = {"Host": f"{network}:{served.port}", "Cookie": ""}
        status, headers, _ = served.ask("GET", found[1], headers=host)
        assert status == 303
        assert served.ask("GET", found[1], headers=host)[0] == 403
        cookie = {**host, "Cookie": headers["set-cookie"].partition(";")[0]}
        assert served.ask("GET", "/scan", headers=cookie)[0] == 200
        with socket.create_connection((network, served.port), timeout=5):
            pass  # and it does listen there
        origin = {"Origin": f"http://{network}:{served.port}"}
        status, _, body = served.ask("POST", "/phone", headers=origin | {"Host": host["Host"]})
        assert status == 200 and b"<svg" in body
        assert served.ask("POST", "/phone", headers=origin)[0] == 403  # another of its names
