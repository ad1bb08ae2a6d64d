"""Lines driven."""
