"""Stage 5, explain: results become what the homeowner and the owner read."""
