"""The guide: what each thing in this price is, why, how to check it, and what is normal."""
