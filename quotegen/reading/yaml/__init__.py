"""YAML text with its places, read into typed files or into faults that say where."""
