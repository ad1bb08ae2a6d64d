"""What every room stands on: units, grids, errors, plain files, signals, threads, cautions."""
