"""The sheets of the quote."""
