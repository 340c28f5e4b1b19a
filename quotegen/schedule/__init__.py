"""Stage 4, visits: a finish becomes visits, and these get dates."""
