"""Plans, sections and drawings."""
