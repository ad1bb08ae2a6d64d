"""Joints that a tyre does not feel."""
