"""A typed shape to exact loops, and how sure its area is."""
