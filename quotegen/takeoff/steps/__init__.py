"""The working of each shape's area, step by step."""
