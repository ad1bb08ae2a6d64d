"""The finished work against the plan: scans after it, strings, levels, witnesses."""
