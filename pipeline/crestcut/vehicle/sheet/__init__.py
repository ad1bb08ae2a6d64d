"""The measuring sheet, filled in and read back."""
