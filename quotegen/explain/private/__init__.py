"""The owner's sheets. None of this reaches a customer."""
