"""Questions about the site: heights, reach and prepared ground."""
