"""Made-up vehicles for a first look: copies of the files in configs/vehicles that an installed package
carries along."""

from __future__ import annotations

import tomllib
from importlib import resources
from typing import Any


def generic_vehicles() -> list[dict[str, Any]]:
    """``{"file": name, "doc": the file as an object, "text": the file itself}``, in the order of their
    names."""
    folder = resources.files("crestcut.report.pages").joinpath("viewer/vehicles")
    found = sorted((f for f in folder.iterdir() if f.name.endswith(".toml")), key=lambda f: f.name)
    texts = [(f.name, f.read_text(encoding="utf-8")) for f in found]
    return [{"file": name, "doc": tomllib.loads(text), "text": text} for name, text in texts]
