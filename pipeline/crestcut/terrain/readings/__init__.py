"""Strings, levels and straightedges as evidence."""
