"""For the owner alone: costs, floors, other bids, outcome."""
