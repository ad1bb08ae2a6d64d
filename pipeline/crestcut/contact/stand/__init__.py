"""Tyres and springs."""
