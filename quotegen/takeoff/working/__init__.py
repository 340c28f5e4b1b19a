"""The working of each shape, step by step."""
