"""Which points are slab."""
