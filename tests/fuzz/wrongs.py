"""Small wrongs that may be put into a module of the package: one operator, constant or choice at a time."""

from __future__ import annotations

import ast
import copy
import importlib.abc
import importlib.machinery
import importlib.util
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

PACKAGE = Path(__file__).resolve().parents[2] / "pipeline" / "crestcut"
OTHER = {
    ast.Lt: ast.LtE, ast.LtE: ast.Lt, ast.Gt: ast.GtE, ast.GtE: ast.Gt, ast.Eq: ast.NotEq, ast.NotEq: ast.Eq,
    ast.Is: ast.IsNot, ast.IsNot: ast.Is, ast.In: ast.NotIn, ast.NotIn: ast.In, ast.And: ast.Or, ast.Or: ast.And,
    ast.Add: ast.Sub, ast.Sub: ast.Add, ast.Mult: ast.Div, ast.Div: ast.Mult,
}  # fmt: skip
PAIRS = [("min", "max"), ("any", "all"), ("minimum", "maximum"), ("argmin", "argmax"), ("nanmin", "nanmax")]
NAMES = dict(PAIRS) | {b: a for a, b in PAIRS}


@dataclass(frozen=True)
class Wrong:
    """One wrong in one module: the lines of its statement down to it, the text of the line where it stands, what
    was and is there, the whole text with it, and whether it is in what is compiled."""

    module: str
    lines: range
    at: str
    told: str
    text: str
    kernel: bool


def wrongs(node: ast.AST) -> list[ast.expr]:
    """The node with one thing in it wrong, each way that there is; none for most."""
    found: list[ast.expr] = []
    if isinstance(node, ast.Compare) and type(node.ops[0]) in OTHER:
        new = copy.deepcopy(node)
        new.ops[0] = OTHER[type(node.ops[0])]()
        found.append(new)
    if isinstance(node, ast.BoolOp | ast.BinOp) and type(node.op) in OTHER:
        other = copy.deepcopy(node)
        other.op = OTHER[type(node.op)]()
        found.append(other)
    if isinstance(node, ast.UnaryOp) and isinstance(node.op, ast.Not):
        found.append(node.operand)
    if isinstance(node, ast.Constant) and isinstance(node.value, bool):
        found.append(ast.Constant(not node.value))
    elif isinstance(node, ast.Constant) and isinstance(node.value, int | float):
        found.append(ast.Constant(node.value * 2 + 1))
    if isinstance(node, ast.IfExp):
        found.append(ast.IfExp(node.test, node.orelse, node.body))
    if isinstance(node, ast.Call):
        named = node.func
        if isinstance(named, ast.Name) and named.id in NAMES:
            found.append(ast.Call(ast.Name(NAMES[named.id]), node.args, node.keywords))
        if isinstance(named, ast.Attribute) and named.attr in NAMES:
            found.append(ast.Call(ast.Attribute(named.value, NAMES[named.attr]), node.args, node.keywords))
    return found


def reached(node: ast.AST, first: int = 0, kernel: bool = False) -> Iterator[tuple[ast.AST, int, bool]]:
    """(node, first line of its statement, is it compiled) of all that may be made wrong."""
    if isinstance(node, ast.stmt):
        first = node.lineno
    if isinstance(node, ast.FunctionDef):
        kernel = kernel or any("njit" in ast.unparse(d) for d in node.decorator_list)
    yield node, first, kernel
    for name, value in ast.iter_fields(node):
        if name in ("annotation", "returns", "decorator_list") or isinstance(node, ast.JoinedStr):
            continue
        for child in value if isinstance(value, list) else [value]:
            if isinstance(child, ast.AST):
                yield from reached(child, first, kernel)


def all_wrongs(module: str) -> list[Wrong]:
    """Every wrong of a module, its lines where they were."""
    source = (PACKAGE / module).read_text(encoding="utf-8")
    tree, found = ast.parse(source), []
    rows = [0]
    for row in source.encode().splitlines(keepends=True):
        rows.append(rows[-1] + len(row))
    has_kernels = "@njit" in source
    for node, first, kernel in reached(tree):
        for wrong in wrongs(node):
            assert isinstance(node, ast.expr) and node.end_lineno and node.end_col_offset
            start, end = (
                rows[node.lineno - 1] + node.col_offset,
                rows[node.end_lineno - 1] + node.end_col_offset,
            )
            lines = "\n" * (node.end_lineno - node.lineno)
            text = (
                source.encode()[:start].decode()
                + f"({ast.unparse(wrong)}{lines})"
                + source.encode()[end:].decode()
            )
            told = f"{ast.unparse(node)[:70]} -> {ast.unparse(wrong)[:70]}"
            at = source.splitlines()[node.lineno - 1].strip()
            inside = kernel or (has_kernels and at_top(tree, node))
            found.append(Wrong(module, range(first, node.end_lineno + 1), at, told, text, inside))
    return found


def at_top(tree: ast.Module, node: ast.expr) -> bool:
    """Does it stand outside functions: in a constant, which compiled loops hold as it was when they were made?"""
    return any(
        isinstance(s, ast.Assign | ast.AnnAssign) and s.lineno <= node.lineno <= (s.end_lineno or 0)
        for s in tree.body
    )


class Wronged(importlib.abc.MetaPathFinder, importlib.abc.SourceLoader):
    """Gives one module of the package another text as it is imported."""

    def __init__(self, wrong: Wrong) -> None:
        self.name = "crestcut." + wrong.module.removesuffix(".py").replace("/", ".")
        self.path, self.text = PACKAGE / wrong.module, wrong.text

    def find_spec(self, fullname: str, *_: object) -> importlib.machinery.ModuleSpec | None:
        return (
            importlib.util.spec_from_file_location(fullname, self.path, loader=self)
            if fullname == self.name
            else None
        )

    def get_filename(self, fullname: str) -> str:
        return str(self.path)

    def get_data(self, path: str) -> bytes:
        return self.text.encode()
