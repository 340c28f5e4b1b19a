"""Numbers, rules and prose, as a reader of the language reads them."""
