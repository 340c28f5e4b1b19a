"""Stage 1, read: YAML text becomes located nodes, and these the typed job, company and book."""
