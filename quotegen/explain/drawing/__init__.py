"""The drawing kit: SVG, scale, dimensions, free space, hatches."""
