"""What the price becomes after signing."""
