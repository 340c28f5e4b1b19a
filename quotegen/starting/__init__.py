"""A first company: what is asked of its owner, and the files that the answers make."""
