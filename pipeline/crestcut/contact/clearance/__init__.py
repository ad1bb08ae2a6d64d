"""The underside run over the ground."""
