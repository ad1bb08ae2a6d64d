"""A scan tied to surveyed points."""
