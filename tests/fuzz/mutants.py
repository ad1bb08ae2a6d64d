"""A seeded sample of small wrongs put into one module of the package, each held against that room's tests.

``.venv/bin/python tests/fuzz/mutants.py work/release.py tests/work/test_release.py --count 20 --seed 1``
names what no test noticed; without a module some of every room's (``ROOMS``). The module is changed in a copy
of the package, never here.
"""

from __future__ import annotations

import argparse
import ast
import copy
import os
import shutil
import subprocess
import sys
import tempfile
import time
from collections.abc import Sequence
from pathlib import Path
from random import Random

ROOT = Path(__file__).resolve().parents[2]
OTHER = {
    ast.Lt: ast.LtE, ast.LtE: ast.Lt, ast.Gt: ast.GtE, ast.GtE: ast.Gt, ast.Eq: ast.NotEq, ast.NotEq: ast.Eq,
    ast.Is: ast.IsNot, ast.IsNot: ast.Is, ast.In: ast.NotIn, ast.NotIn: ast.In, ast.And: ast.Or, ast.Or: ast.And,
    ast.Add: ast.Sub, ast.Sub: ast.Add, ast.Mult: ast.Div, ast.Div: ast.Mult,
}  # fmt: skip

CHECK = ("tests/verify/test_check.py", "-k", "a_cut_by_the_plan or what_is_gone or half_the_cut_leaves or cut_too_deep"
         " or few_points_hit or wrong_place or felt_gaps or what_stands_alone or cannot_all_be_true or still_to_go_is"
         " or how_deep_a_pass or all_points_that_leave")  # fmt: skip
# room -> module -> the tests that it is held against: those of the room that take seconds
ROOMS: dict[str, dict[str, Sequence[str]]] = {
    "contact": {
        "contact/stand/ride.py": ("tests/contact/test_ride.py",),
        "contact/stand/tyres.py": ("tests/contact/test_tyres.py", "tests/contact/test_ride.py"),
        "contact/clearance/sweep.py": ("tests/contact/test_sweep_twin.py",),
        "contact/clearance/kernels.py": ("tests/contact/test_sweep_twin.py",),
        "contact/path/path.py": ("tests/contact/test_path.py",),
    },
    "cut": {
        "cut/problem.py": ("tests/cut/test_cut_plan.py",),
        "cut/solver.py": ("tests/cut/test_cut_plan.py",),
        "cut/slab_limits.py": ("tests/cut/test_slab_rules.py", "tests/work/test_release.py"),
        "cut/ruled_out.py": ("tests/cut/test_slab_rules.py", "tests/work/test_release.py"),
    },
    "chance": {
        "chance/assess.py": ("tests/chance/test_chance.py", "tests/chance/test_second_look.py"),
        "chance/against_all_points.py": ("tests/chance/test_second_look.py",),
        "chance/planned.py": ("tests/chance/test_chance_planned.py", "-k", "not over_many_places"),
        "chance/witness.py": ("tests/chance/test_chance_witness.py", "tests/chance/test_evidence_bad_input.py"),
    },
    "work/release": {"work/release.py": ("tests/work/test_release.py",)},
    "verify": {
        "verify/finished.py": ("tests/verify/test_finished.py",),
        "verify/by_hand.py": CHECK,
        "verify/removed.py": CHECK,
        "verify/edges.py": CHECK,
        "verify/rest.py": CHECK,
    },
}  # fmt: skip


def wrongs(node: ast.AST) -> list[ast.AST]:
    """The node with one thing in it wrong, each way that there is; none for most."""
    found = []
    if isinstance(node, ast.Compare) and type(node.ops[0]) in OTHER:
        new = copy.deepcopy(node)
        new.ops[0] = OTHER[type(node.ops[0])]()  # type: ignore[call-overload]
        found.append(new)
    if isinstance(node, ast.BoolOp | ast.BinOp) and type(node.op) in OTHER:
        other = copy.deepcopy(node)
        other.op = OTHER[type(node.op)]()  # type: ignore[call-overload]
        found.append(other)
    if isinstance(node, ast.UnaryOp) and isinstance(node.op, ast.Not):
        found.append(node.operand)
    if isinstance(node, ast.Constant) and isinstance(node.value, bool):
        found.append(ast.Constant(not node.value))
    elif isinstance(node, ast.Constant) and isinstance(node.value, int | float):
        found.append(ast.Constant(node.value * 2 + 1))
    if isinstance(node, ast.IfExp):
        found.append(ast.IfExp(node.test, node.orelse, node.body))
    return found


def mutants(source: str) -> list[tuple[int, str, str]]:
    """(line, what was there and is now, whole text) of every mutant of a module."""
    tree, found = ast.parse(source), []
    for parent in list(ast.walk(tree)):
        for field, value in ast.iter_fields(parent):
            for at, node in enumerate(value if isinstance(value, list) else [value]):
                if not isinstance(node, ast.AST) or not hasattr(node, "lineno"):
                    continue
                for wrong in wrongs(node):
                    told = f"{ast.unparse(node)[:60]} -> {ast.unparse(wrong)[:60]}"
                    if isinstance(value, list):
                        value[at] = wrong
                    else:
                        setattr(parent, field, wrong)
                    found.append((node.lineno, told, ast.unparse(ast.fix_missing_locations(tree))))
                    if isinstance(value, list):
                        value[at] = node
                    else:
                        setattr(parent, field, node)
    return found


def noticed(module: str, tests: Sequence[str], count: int, seed: int) -> tuple[int, list[str]]:
    """(how many mutants of a module were made, those that no test noticed); one that takes far longer than the
    tests did counts as noticed."""
    with tempfile.TemporaryDirectory(prefix="mutants") as place:
        shutil.copytree(ROOT / "pipeline", Path(place) / "pipeline")
        shutil.copytree(ROOT / "configs", Path(place) / "configs")
        target = Path(place) / "pipeline" / "crestcut" / module
        source = target.read_text(encoding="utf-8")
        every = mutants(source)
        some = Random(seed).sample(every, min(count, len(every)))
        command = [sys.executable, "-m", "pytest", "-q", "-x", "-p", "no:cacheprovider", *tests]
        env = {**os.environ, "PYTHONPATH": f"{place}/pipeline", "PYTHONDONTWRITEBYTECODE": "1"}

        def passes(limit: float) -> bool:
            try:
                done = subprocess.run(command, cwd=ROOT, env=env, capture_output=True, timeout=limit)
            except subprocess.TimeoutExpired:
                return False
            return done.returncode == 0

        assert passes(600), f"the tests of {module} fail as it is"
        began = time.monotonic()
        assert passes(600)  # compiled by now
        limit = 20 + 5 * (time.monotonic() - began)
        lived = []
        for line, told, text in sorted(some):
            target.write_text(text, encoding="utf-8")
            if passes(limit):
                lived.append(f"  {module} line {line}: {told}")
        return len(some), lived


def main() -> int:
    """The command."""
    ask = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    ask.add_argument("module", nargs="?", help="under pipeline/crestcut; left out: those of --room, or all")
    ask.add_argument("tests", nargs="*")
    ask.add_argument("--room", choices=ROOMS, action="append")
    ask.add_argument("--count", type=int, default=4, help="of each module")
    ask.add_argument("--seed", type=int, default=1)
    asked = ask.parse_args()
    rooms = {"": {asked.module: asked.tests}} if asked.module else ROOMS
    for room in asked.room or rooms:
        made, lived = 0, list[str]()
        for module, tests in rooms[room].items():
            some, left = noticed(module, tests, asked.count, asked.seed)
            made, lived = made + some, lived + left
            print(f"{module}: {some - len(left)} of {some} noticed", *left, sep="\n", flush=True)
        print(f"{room or asked.module}: {made - len(lived)} of {made}\n", flush=True)
    return 0


if __name__ == "__main__":
    sys.exit(main())
