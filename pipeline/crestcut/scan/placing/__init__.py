"""Unit, up axis, reference system, local origin."""
