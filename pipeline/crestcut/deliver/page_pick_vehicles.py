"""Made-up vehicles for a first look: the same files as in configs/vehicles, carried inside the page."""

from __future__ import annotations

from typing import Any

GENERIC: dict[str, dict[str, Any]] = {
    "flat_floor_hatchback.toml": {
        "name": "flat-floor hatchback",
        "wheelbase": "2.60 m", "front_track": "1.51 m", "rear_track": "1.50 m", "tyre_radius": "305 mm", "tyre_width": "195 mm",
        "width": "1.76 m", "belly_clearance": "135 mm", "front_overhang": "820 mm", "rear_overhang": "700 mm",
    },
}  # fmt: skip
