"""Files of every kind to raw points."""
