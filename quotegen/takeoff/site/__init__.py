"""Heights, reach and prepared ground."""
