"""The joint plan of one placement: where joints lie, and whether each panel keeps the rules."""
