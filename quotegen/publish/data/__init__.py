"""Files for other programs: figures, calendar, mail."""
