"""The part of a plan that a panel shows."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from crestcut.base.grid import FloatArray


@dataclass(frozen=True)
class Window:
    """A part of the plan, grid u, v in metres."""

    u0: float
    v0: float
    u1: float
    v1: float

    @property
    def width(self) -> float:
        """Along travel, m."""
        return self.u1 - self.u0

    @property
    def height(self) -> float:
        """Across travel, m."""
        return self.v1 - self.v0

    def grown(self, by: float) -> Window:
        """With a margin on every side, m."""
        return Window(self.u0 - by, self.v0 - by, self.u1 + by, self.v1 + by)

    def clip(self, corners: FloatArray) -> FloatArray | None:
        """The part of a polygon (n, 2) that shows, as corners; None where nothing of it does.

        One side of the window at a time: Sutherland & Hodgman, Communications of the ACM 17 (1974).
        """
        inside = np.asarray(corners, dtype=float)
        for axis, sign, edge in ((0, 1, self.u0), (0, -1, self.u1), (1, 1, self.v0), (1, -1, self.v1)):
            kept = []
            for a, b in zip(inside, np.roll(inside, -1, axis=0), strict=True):
                near, far = sign * (a[axis] - edge), sign * (b[axis] - edge)
                if near >= 0:
                    kept.append(a)
                if near * far < 0:
                    kept.append(a + near / (near - far) * (b - a))
            if not kept:
                return None
            inside = np.array(kept)
        return inside

    def fitted(self, aspect: float) -> Window:
        """Grown about its middle to the width : height of the paper."""
        extra_u = max(self.height * aspect - self.width, 0.0) / 2
        extra_v = max(self.width / aspect - self.height, 0.0) / 2
        return Window(self.u0 - extra_u, self.v0 - extra_v, self.u1 + extra_u, self.v1 + extra_v)

    def crop(self, shape: tuple[int, ...], cell: float) -> tuple[slice, slice]:
        """Rows and columns that show of a grid (ny, nx, ...) of ``cell`` m, with a node around them."""
        ny, nx = shape[:2]
        i0, i1 = (int(np.clip(round(u / cell) + k, 0, nx)) for u, k in ((self.u0, -1), (self.u1, 2)))
        j0, j1 = (int(np.clip(round(v / cell) + k, 0, ny)) for v, k in ((self.v0, -1), (self.v1, 2)))
        return slice(j0, j1), slice(i0, i1)
