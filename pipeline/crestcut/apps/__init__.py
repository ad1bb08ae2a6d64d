"""The command line and what it composes."""
