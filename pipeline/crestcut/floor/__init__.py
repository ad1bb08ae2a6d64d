"""High spots and flatness of a floor."""
