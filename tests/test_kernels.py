"""Compiled loops give the same bytes whether compiled just now or found in the cache of an earlier run.

With ``fastmath`` the compiler may add up in another order, and which one it takes depends on where a function
is compiled into. A kernel that another one calls by name exists twice in the run that compiles it (by itself,
and in its caller's object), and only in its caller's in later ones: the first run's last digits differed from
those of all others. Inlined by force there is one copy. (Seen with numba 0.68; how it links is from memory.)
"""

from __future__ import annotations

import ast
from collections.abc import Callable
from pathlib import Path
from typing import Any

import numba
import numpy as np
import pytest

import crestcut
from crestcut.base.kernels import greater, lesser, njit
from crestcut.contact.clearance.kernels import column_range
from crestcut.contact.stand.placing import Axles
from crestcut.contact.stand.tyres import _highest, settle, settle_part, tyre_ground

PACKAGE = Path(crestcut.__file__).parent


def kernels() -> dict[str, tuple[ast.FunctionDef, dict[str, object]]]:
    """Every function under ``njit``, by name, with the options it is compiled with."""
    found = {}
    for path in PACKAGE.rglob("*.py"):
        for node in ast.parse(path.read_text(encoding="utf-8")).body:
            for mark in node.decorator_list if isinstance(node, ast.FunctionDef) else ():
                if isinstance(mark, ast.Call) and getattr(mark.func, "id", "") == "njit":
                    options = {k.arg or "": getattr(k.value, "value", None) for k in mark.keywords}
                    found[node.name] = (node, options)
    return found


def test_fast_kernels_that_others_call_are_inlined() -> None:
    every = kernels()
    fast = {name for name, (_, options) in every.items() if options.get("fastmath") is True}
    called = {
        call.func.id
        for node, _ in every.values()
        for call in ast.walk(node)
        if isinstance(call, ast.Call) and isinstance(call.func, ast.Name) and call.func.id in fast
    }
    assert {"linear_fit", "gather"} <= called  # the walk does see them
    assert [name for name in sorted(called) if every[name][1].get("forceinline") is not True] == []


def test_read_only_arrays_do_not_have_the_ride_compiled_again() -> None:
    """Frozen records hand out read-only arrays, stages their own: one kernel serves both."""
    axles = Axles(2.8, 1.5, 1.5, 0.3, 0.1, 0.5, 0.5)
    heights, places = np.zeros((40, 60)), np.array([[0.5, 2.0, 0.0, 0.0, 0.0]])
    for frozen in (False, True):
        for array in (heights, places):
            array.flags.writeable = not frozen
        settle(tyre_ground(heights, 0.1, axles, places), places, axles, False)
    settle(
        tyre_ground(heights[:, ::-1], 0.1, axles, places),
        np.asfortranarray(places.repeat(2, axis=0)),
        axles,
        False,
    )
    assert len(settle_part.signatures) == 1  # type: ignore[attr-defined]


def test_where_nothing_can_be_kept_loops_are_compiled_all_the_same(monkeypatch: pytest.MonkeyPatch) -> None:
    """A package that may not be written, and no home: the compiler then refuses to keep anything."""
    import numba

    from crestcut.base import kernels

    plain = numba.njit

    def refusing(**options: bool) -> Callable[[Any], Any]:
        def decorate(loop: Any) -> Any:
            if options.get("cache"):
                raise RuntimeError("no locator available")
            return plain(**options)(loop)

        return decorate

    monkeypatch.setattr(numba, "njit", refusing)

    @kernels.njit()
    def twice(x: int) -> int:
        return 2 * x

    assert twice(21) == 42 and hasattr(twice, "py_func")


def anew(loop: Any) -> Any:
    """The same loop, compiled in this run: of what lies in the cache no code can be seen."""
    if not hasattr(loop, "py_func"):
        return loop
    fresh = numba.njit(**{k: v for k, v in loop.targetoptions.items() if k != "nopython"})(loop.py_func)
    assert fresh.targetoptions == loop.targetoptions
    return fresh


def _least_of(values: np.ndarray) -> float:
    least = 1e18
    for k in range(values.shape[0]):
        least = lesser(values[k], least)
    return least


def _most_of(values: np.ndarray) -> float:
    most = -1e18
    for k in range(values.shape[0]):
        most = greater(most, values[k])
    return most


@pytest.mark.parametrize(("loop", "of"), [(_least_of, np.min), (_most_of, np.max)])
def test_a_running_minimum_is_taken_several_at_a_time(
    loop: Callable[[np.ndarray], float], of: Callable[[np.ndarray], float]
) -> None:
    """To the last digit, compiled or not; one by one it took three times as long, and nobody noticed when a
    new compiler began to."""
    compiled = anew(njit(counted=False)(loop))
    rng = np.random.default_rng(0)
    for n in (1, 3, 16, 61):
        values = rng.normal(size=n)
        assert compiled(values) == loop(values) == of(values)
    if hasattr(compiled, "inspect_llvm"):  # else loops stay uncompiled in this run
        (code,) = compiled.inspect_llvm().values()
        assert "x double>" in code


def test_a_loop_that_does_not_count_lets_arrays_alone() -> None:
    loop = anew(column_range)
    assert loop(np.array([[0.0, 0.0], [1.0, 0.0], [1.0, 1.0], [0.0, 1.0]]), 0.25, 2, 9) == (0, 4)
    if hasattr(loop, "inspect_llvm"):
        (code,) = loop.inspect_llvm().values()
        assert "NRT_incref" not in code and "NRT_decref" not in code


def test_the_highest_node_under_a_tyre_is_found_several_at_a_time() -> None:
    loop = anew(_highest)
    rng = np.random.default_rng(1)
    for n in (1, 5, 31):
        ground, u = rng.normal(size=n), np.arange(n) * 0.01
        a = u * 0.9 - 0.1
        plain = (ground + np.sqrt(np.maximum(0.04 - a * a, 0.0)) + u * 0.02).max()
        assert loop(ground, u, 0.9, -0.1, 0.04, 0.02) == pytest.approx(plain, abs=1e-15)
    if hasattr(loop, "inspect_llvm"):
        (code,) = loop.inspect_llvm().values()
        assert "x double> @llvm.sqrt" in code


def test_loops_that_do_not_count_make_no_array_and_hand_none_back() -> None:
    """The compiler refuses the first; of the second nobody would keep what was handed back."""
    uncounted = [node for node, options in kernels().values() if options.get("counted") is False]
    assert len(uncounted) > 5
    for node in uncounted:
        assert not (isinstance(node.returns, ast.Name) and node.returns.id.endswith("Array")), node.name
