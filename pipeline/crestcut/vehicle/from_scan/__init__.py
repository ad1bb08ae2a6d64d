"""A vehicle from a mesh or scan of its underside."""
