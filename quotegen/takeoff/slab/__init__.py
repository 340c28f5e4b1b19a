"""Shapes put together to one slab: its boundary, edges, spans and concrete."""
