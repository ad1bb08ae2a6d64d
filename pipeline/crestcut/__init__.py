"""Crestcut: from a scan of a slab to a verdict on a low vehicle and a depth to remove."""

__version__ = "0.1.0"
