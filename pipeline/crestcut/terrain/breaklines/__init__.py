"""Crests, sags and steps."""
