"""Stage 6, publish: views become bytes, and one module writes them."""
