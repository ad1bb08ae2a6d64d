"""The house keeps its own rules: rooms in order, each entered by its door, no door that nobody uses; style
and types as the page for contributors says."""

from __future__ import annotations

import ast
import importlib
import re
import subprocess
import sys
from pathlib import Path

import pytest

import crestcut

ROOT = Path(__file__).parents[1]
PACKAGE = ROOT / "pipeline" / "crestcut"
DOORS = sorted(PACKAGE.glob("*/__init__.pyi"))
PYTHON = sys.executable
HABITS = {
    "rooms": (str(Path(PYTHON).parent / "lint-imports"), "--no-cache"),
    "lint": (PYTHON, "-m", "ruff", "check", "."),
    "format": (PYTHON, "-m", "ruff", "format", "--check", "."),
    "types": (PYTHON, "-m", "mypy"),
}


def names_used(room: str) -> set[str]:
    """What modules of other rooms take by a room's door."""
    used = set()
    for path in PACKAGE.rglob("*.py"):
        if path.relative_to(PACKAGE).parts[0] == room:
            continue
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.ImportFrom) and node.module == f"crestcut.{room}":
                used |= {alias.name for alias in node.names}
    return used


@pytest.mark.parametrize("door", DOORS, ids=lambda p: p.parent.name)
def test_a_door_names_what_other_rooms_take_and_no_more(door: Path) -> None:
    room = importlib.import_module(f"crestcut.{door.parent.name}")
    assert set(room.__all__) == names_used(door.parent.name)
    for name in room.__all__:
        assert getattr(room, name) is not None
        # a module of that name in the room would hide it, or be hidden, by the order of imports
        assert not (door.parent / f"{name}.py").exists() and not (door.parent / name).is_dir(), name


def test_every_room_has_a_door() -> None:
    rooms = {p.parent for p in PACKAGE.glob("*/__init__.py")}
    assert {p.name for p in rooms} - {d.parent.name for d in DOORS} == {"apps", "base"}


def test_functions_take_few_parameters() -> None:
    """None over eight, nine in ten of them four or fewer; compiled loops not counted."""
    taken = []
    for path in PACKAGE.rglob("*.py"):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.FunctionDef) and not any(
                "njit" in ast.dump(d) for d in node.decorator_list
            ):
                args = [*node.args.posonlyargs, *node.args.args, *node.args.kwonlyargs]
                count = len(args) - (bool(args) and args[0].arg in ("self", "cls"))
                taken.append((count, f"{path.relative_to(PACKAGE)}: {node.name}"))
    assert [name for count, name in taken if count > 8] == []
    assert sorted(taken, reverse=True)[len(taken) // 10][0] <= 4


@pytest.mark.slow
@pytest.mark.parametrize("habit", HABITS)
def test_habits(habit: str) -> None:
    done = subprocess.run(HABITS[habit], cwd=ROOT, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stdout + done.stderr


def test_a_tag_says_the_version_that_files_are_stamped_with() -> None:
    """The version stands in one place in the source: what stamps results must not hang on git, on how deep a
    clone is, or on a tree with changes in it. A commit that is tagged as a version is that version, and what
    changed in it is told."""
    told = (ROOT / ".github" / "CHANGELOG.md").read_text(encoding="utf-8")
    assert f"\n## {crestcut.__version__}\n" in told
    git = ["git", "-C", str(ROOT), "tag", "--points-at", "HEAD"]
    try:
        tags = subprocess.run(git, capture_output=True, text=True, check=True).stdout.split()
    except (OSError, subprocess.CalledProcessError):
        return  # an export, or no git here
    versions = [tag for tag in tags if re.fullmatch(r"v\d+(\.\d+)+", tag)]
    assert versions in ([], [f"v{crestcut.__version__}"])
