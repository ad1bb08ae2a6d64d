"""Records that print as what they say in short, not as their arrays."""

from __future__ import annotations


class Summary:
    """Mix-in of a record made with ``repr=False``: it prints as its ``summary``, one to three lines with
    units."""

    @property
    def summary(self) -> str:
        """What it says in short."""
        raise NotImplementedError

    def __repr__(self) -> str:
        return f"{type(self).__name__}: {self.summary}"
