"""Compiled loops: numba's compiler as it is used here."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, TypeVar, cast

import numba
import numpy as np
from numba.extending import lower_builtin, type_callable

F = TypeVar("F", bound=Callable[..., Any])
Whole = int | np.int64  # a whole number, as a loop counts or as numpy has it


def njit(
    *, fastmath: bool | set[str] = False, forceinline: bool = False, counted: bool = True
) -> Callable[[F], F]:
    """A loop that is compiled when first called, kept beside the code, and lets go of the interpreter. Where
    neither the code's folder nor a home can be written it is compiled anew by every command.

    To the type checker it stays the function that was written, so that its callers are held to its hints.
    """
    # counted : whether it keeps count of who refers to an array, at every slice and every array handed on, a
    # step that no other processor may come between: half of what is done in small loops called often. One
    # that makes no array and hands none back can do without.
    # Division by zero is numpy's in all of them: where settings differ, what they call is compiled for each.
    # They are never called from C, and that way in is 3 % of what compiling takes.
    options: dict[str, Any] = {
        "error_model": "numpy", "fastmath": fastmath, "forceinline": forceinline, "no_cfunc_wrapper": True
    } | ({} if counted else {"_nrt": False})  # fmt: skip

    def decorate(loop: F) -> F:
        try:
            compiled: Any = numba.njit(cache=True, nogil=True, **options)(loop)
        except RuntimeError:  # no place for what is compiled
            compiled = numba.njit(nogil=True, **options)(loop)
        return cast(F, compiled)

    return decorate


def lesser(a: float, b: float) -> float:
    """The lesser of two heights, of which neither is a NaN."""
    return min(a, b)


def greater(a: float, b: float) -> float:
    """The greater of two heights, of which neither is a NaN."""
    return max(a, b)


# A running minimum is taken several at a time by the compiler (LLVM 22) only where the choice itself, and not
# the comparison before it, is known to meet no NaN, which ``min`` of compiled loops does not tell it
_NO_NAN = ("nnan", "nsz")


def _one_instruction(function: Callable[[float, float], float], sign: str) -> None:
    """In compiled loops ``function`` of two float64 is the one that is ``sign`` the other."""

    @type_callable(function)
    def _(_: Any) -> Any:
        both = numba.float64
        return lambda a, b: both if a == both and b == both else None

    @lower_builtin(function, numba.float64, numba.float64)
    def _(_: Any, builder: Any, __: Any, of: Any) -> Any:
        return builder.select(builder.fcmp_ordered(sign, *of, flags=_NO_NAN), *of, flags=_NO_NAN)


_one_instruction(lesser, "<")
_one_instruction(greater, ">")
