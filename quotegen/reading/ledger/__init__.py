"""What was issued and accepted, read back: each entry held against its own list of files."""
