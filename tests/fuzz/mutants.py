"""A seeded sample of small wrongs put into one module of the package, each held against that room's tests.

``.venv/bin/python tests/fuzz/mutants.py work/release.py tests/work/test_release.py --count 20 --seed 1``
names what no test noticed. The module is changed in a copy of the package, never here.
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
from pathlib import Path
from random import Random

ROOT = Path(__file__).resolve().parents[2]
OTHER = {
    ast.Lt: ast.LtE, ast.LtE: ast.Lt, ast.Gt: ast.GtE, ast.GtE: ast.Gt, ast.Eq: ast.NotEq, ast.NotEq: ast.Eq,
    ast.Is: ast.IsNot, ast.IsNot: ast.Is, ast.In: ast.NotIn, ast.NotIn: ast.In, ast.And: ast.Or, ast.Or: ast.And,
    ast.Add: ast.Sub, ast.Sub: ast.Add, ast.Mult: ast.Div, ast.Div: ast.Mult,
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


def main() -> int:
    """The command."""
    ask = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    ask.add_argument("module", help="under pipeline/crestcut")
    ask.add_argument("tests", nargs="+")
    ask.add_argument("--count", type=int, default=20)
    ask.add_argument("--seed", type=int, default=1)
    asked = ask.parse_args()
    with tempfile.TemporaryDirectory(prefix="mutants") as place:
        shutil.copytree(ROOT / "pipeline", Path(place) / "pipeline")
        shutil.copytree(ROOT / "configs", Path(place) / "configs")
        target = Path(place) / "pipeline" / "crestcut" / asked.module
        source = target.read_text(encoding="utf-8")
        every = mutants(source)
        some = Random(asked.seed).sample(every, min(asked.count, len(every)))
        command = [sys.executable, "-m", "pytest", "-q", "-x", "-p", "no:cacheprovider", *asked.tests]
        env = {**os.environ, "PYTHONPATH": f"{place}/pipeline", "PYTHONDONTWRITEBYTECODE": "1"}

        def passes() -> bool:
            return (
                subprocess.run(command, cwd=ROOT, env=env, capture_output=True, timeout=600).returncode == 0
            )

        assert passes(), "the tests fail as it is"
        lived = []
        for line, told, text in sorted(some):
            target.write_text(text, encoding="utf-8")
            if passes():
                lived.append(f"  line {line}: {told}")
        print(f"{asked.module}: {len(some) - len(lived)} of {len(some)} noticed ({len(every)} there are)")
        print("\n".join(lived))
    return 0


if __name__ == "__main__":
    sys.exit(main())
