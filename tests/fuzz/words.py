"""What is put in the place of something sound: numbers, words and shapes that have broken readers before."""

from __future__ import annotations

import json
from random import Random
from typing import Any

OUTSIDE = "../outside/secret"  # beside a case's own folder: whoever opens it is seen
ADDRESS = "http://127.0.0.1:{port}/secret"  # where nobody should ask; ``fill_in`` puts the port there

NUMBERS = [
    "0", "-0", "1", "2", "-1", "3", "255", "256", "32768", "65535", "65536", "2147483647", "2147483648",
    "-2147483649", "4294967295", "4294967296", "9223372036854775808", "18446744073709551616", "1e9", "1e18",
    "1e308", "-1e308", "1e309", "-1e400", "1e-320", "4e-7", "nan", "-nan", "inf", "-Infinity", "NaN", "0x10",
    "1_000", "1,5", "1.5.2", "1e", "+", "-", ".", "1 000", "9" * 400, "9" * 5000, "1." + "3" * 5000,
    "1e" + "9" * 300, "0." + "0" * 400 + "1", "-" * 200 + "1", "1" + "0" * 400,
]  # fmt: skip
WORDS = [
    "", " ", "abc", "\u00b2", "\u0663", "\u0967\u0968", "\uff11", "\u2028", "\u202e", "\x00", "\x1b[2J\x1b[31m",
    "\x07", "\r", "\t", "\ufeff", "\U0001f9f1", "A" * 300, "A" * 100_000, "~nobody/x", "~", "$HOME", "%s%n",
    "{0}{name}", "=1+1", "@A()", "'", '"', '"""', "\\", "\\u0000", "NUL", "/dev/zero", "/dev/stdin",
    "/etc/passwd", OUTSIDE, "../" * 40 + "etc/passwd", "file:///etc/passwd", ADDRESS,
    ADDRESS.replace("http", "ftp"), "\\\\127.0.0.1\\share", "C:\\x", "../outside/pipe", "true", "null",
    "<svg onload=alert(1)>", "[" * 3000, "{" * 3000, "(" * 3000, "#", "//", "list", "double", "x", "y", "z",
]  # fmt: skip
SIZES = [0, 1, 2, 3, 7, 8, 127, 128, 255, 256, 32767, 32768, 65535, 65536, 2**31 - 1, 2**31, 2**32 - 1]
DOUBLES = [0.0, -1.0, 1e-320, 4e-7, 1e-300, 1e300, 1.7e308, float("nan"), float("inf"), -float("inf"), 1e18]


def word(rng: Random) -> str:
    """A hostile word; now and then a number near a power of two."""
    if rng.random() < 0.1:
        return str(2 ** rng.randrange(64) + rng.randrange(-2, 3))
    return rng.choice(NUMBERS if rng.random() < 0.55 else WORDS)


def value(rng: Random, depth: int = 0) -> Any:
    """A hostile value of JSON or TOML: of any type, also deep or long."""
    kind = rng.randrange(10)
    if kind < 3:
        return word(rng)
    if kind < 5:
        return rng.choice([0, 1, -1, 2, 10**9, 2**31, 2**63, -(2**63), 2**64, 10**400, -(10**400), 10**4299])
    if kind == 5:
        return rng.choice([0.5, -0.0, 1e308, float("inf"), float("-inf"), float("nan"), 4e-7])
    if kind == 6:
        return rng.choice([True, False, None])
    if kind == 7 and depth < 3:
        return [value(rng, depth + 1) for _ in range(rng.randrange(5))]
    if kind == 8 and depth < 3:
        return {word(rng)[:50]: value(rng, depth + 1) for _ in range(rng.randrange(4))}
    return nest(rng.choice([5, 60, 900]))


def nest(depth: int) -> Any:
    """A list in a list in a list."""
    found: Any = []
    for _ in range(depth):
        found = [found]
    return found


def as_json(tree: Any) -> bytes:
    """JSON however long its numbers are; what json itself would not write (too deep) becomes null."""
    try:
        return json.dumps(tree).encode("utf-8", "surrogatepass")
    except (ValueError, RecursionError):
        return b"null"
