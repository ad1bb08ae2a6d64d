"""Slab and scan as two fields, judged apart."""
