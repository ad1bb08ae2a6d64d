"""Settings every test shares."""

from __future__ import annotations

import os

# as the command line sets it: every matrix is small, and a linear-algebra library's own threads only cost
# time
os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")
