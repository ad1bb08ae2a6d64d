"""The results as records and documents."""
