"""Typed shapes to exact loops: how each is measured, its area, its edge and how sure it is."""
