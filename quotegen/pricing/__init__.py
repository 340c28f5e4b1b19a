"""Stage 3, price: quantities and rates become lines, totals, payments and the adjustment."""
