"""Results written as a whole."""
