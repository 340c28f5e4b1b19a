"""Figures, working and ballpark as text."""
