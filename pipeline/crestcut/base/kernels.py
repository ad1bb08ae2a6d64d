"""Compiled loops: numba's compiler as it is used here."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, TypeVar, cast

import numba
import numpy as np

F = TypeVar("F", bound=Callable[..., Any])
Whole = int | np.int64  # a whole number, as a loop counts or as numpy has it


def njit(*, fastmath: bool | set[str] = False, forceinline: bool = False) -> Callable[[F], F]:
    """A loop that is compiled when first called, kept beside the code, and lets go of the interpreter. Where
    neither the code's folder nor a home can be written it is compiled anew by every command.

    To the type checker it stays the function that was written, so that its callers are held to its hints.
    """
    # Division by zero is numpy's in all of them: where settings differ, what they call is compiled for each.
    # They are never called from C, and that way in is 3 % of what compiling takes.
    options: dict[str, Any] = {
        "error_model": "numpy", "fastmath": fastmath, "forceinline": forceinline, "no_cfunc_wrapper": True
    }  # fmt: skip

    def decorate(loop: F) -> F:
        try:
            compiled: Any = numba.njit(cache=True, nogil=True, **options)(loop)
        except RuntimeError:  # no place for what is compiled
            compiled = numba.njit(nogil=True, **options)(loop)
        return cast(F, compiled)

    return decorate
