"""Drawings true to scale: what is on each sheet, and the same sheets as PDF and as a drawing file."""
