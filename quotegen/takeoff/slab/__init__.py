"""One slab formed of shapes: its boundary, edges, spans and concrete."""
