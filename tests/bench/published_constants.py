"""Does every number taken from a source hold a test? Each is moved by five percent in a copy of the package,
and ``tests/published`` must turn red.

python tests/bench/published_constants.py [MODULE ...]    some minutes; exit code 1 if any stays green
"""

from __future__ import annotations

import ast
import os
import shutil
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
MOVED = 1.05
FLOOR, HAND, SLAB = "test_floor_flatness.py", "test_hand_work.py", "test_slab_limits.py"
# module: names in it whose numbers come from a source, and the tests that should see them move
SOURCED = {
    "floor/classes.py": (
        (
            "DIN_LENGTHS, DIN_GAPS", "BS_CLASSES", "BS_LENGTH", "ACI_CLASSES", "LOCAL_SHARE", "ROUGHLY",
            "TEN_FEET",
        ),
        (FLOOR,),
    ),
    "floor/numbers.py": (("FEWEST", "CLEAR", "OVER", "FLAT, LEVEL"), (FLOOR,)),
    "work/dust.py": (
        (
            "CFM", "CFM_PER_INCH", "LONG_SHIFT", "PERMISSIBLE, ACTION", "EUROPEAN", "BRITISH", "AUSTRALIAN",
            "TIMES_OVER", "APF_10",
        ),
        (HAND,),
    ),
    "work/slopes.py": (
        ("VERTICAL", "BEVELLED", "BEVEL", "RUNNING, CROSS", "RAMP, FLARE", "DRAINS", "RESIDENTIAL"), (HAND,),
    ),
    "work/quantities.py": (("ACTION_VALUE, LIMIT_VALUE",), (HAND,)),
    "work/timber.py": (("SOFTWOOD_STIFFNESS", "SOFTWOOD_DENSITY", "DRESSED_INCH"), (HAND,)),
    "cut/slab_limits.py": (("REFUSED_SHARE", "MESH_SHARE", "CONCRETE_DENSITY"), (SLAB, HAND)),
    "units.py": (("INCH", "FOOT", "US_SURVEY_FOOT"), ("test_edges_units.py",)),
    "vehicle/loads.py": (("GRAVITY",), ("test_loaded_vehicle.py",)),
}  # fmt: skip


def numbers(text: str, names: tuple[str, ...]) -> Iterator[tuple[str, int, int, int, float]]:
    """Every number in the assignments of these names ("A, B" where two are assigned at once): name, line,
    first and last column, value."""
    for node in ast.parse(text).body:
        targets = node.targets if isinstance(node, ast.Assign) else []
        name = ast.unparse(targets[0]).strip("()") if targets else ""
        if name in names and isinstance(node, ast.Assign):
            for part in ast.walk(node.value):
                if isinstance(part, ast.Constant) and isinstance(part.value, (int, float)):
                    yield name, part.lineno, part.col_offset, part.end_col_offset or 0, float(part.value)


def moved(text: str, line: int, start: int, end: int, value: float) -> str:
    """The text with that one number moved."""
    lines = text.split("\n")
    whole = lines[line - 1][start:end].isdigit()
    new = str(round(value) + 1) if whole and value < 21 else repr(value * MOVED)
    lines[line - 1] = lines[line - 1][:start] + new + lines[line - 1][end:]
    return "\n".join(lines)


def red(package: Path, tests: tuple[str, ...]) -> bool:
    """Whether the published tests fail with this copy of the package."""
    files = [str(ROOT / "tests" / "published" / name) for name in tests]
    command = [sys.executable, "-m", "pytest", "-x", "-q", "-p", "no:cacheprovider", *files]
    done = subprocess.run(
        command, cwd=ROOT, env={**os.environ, "PYTHONPATH": str(package)}, capture_output=True, check=False
    )
    if done.returncode > 1:  # could not even begin: a mutation that does not load is seen too
        return b"error" in done.stdout.lower()
    return done.returncode == 1


def main(only: list[str]) -> int:
    green, tried = [], 0
    with tempfile.TemporaryDirectory() as folder:
        package = Path(folder) / "pipeline"
        shutil.copytree(ROOT / "pipeline", package)
        for module, (names, tests) in SOURCED.items():
            if only and module not in only:
                continue
            path = package / "crestcut" / module
            text = path.read_text(encoding="utf-8")
            lost = set(names) - {name for name, *_ in numbers(text, names)}
            assert not lost, f"{module}: no number is assigned to {', '.join(sorted(lost))}"
            assert not red(package, tests), f"{module}: red before anything was moved"
            for name, line, start, end, value in numbers(text, names):
                path.write_text(moved(text, line, start, end, value), encoding="utf-8")
                tried += 1
                if not red(package, tests):
                    green.append(f"{module}:{line} {name}: {value:g}")
                    print(f"stays green: {green[-1]}", flush=True)
            path.write_text(text, encoding="utf-8")
            print(f"{module}: done", flush=True)
    print(f"{tried} numbers moved, {len(green)} stay green")
    return 1 if green else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
