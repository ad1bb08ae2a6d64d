"""What a scan may be wrong by: white, patch and warp."""
