"""Passes and stations laid on each other."""
