"""Papers beside the quote: final measurement, changes, care, comparing bids, notice."""
