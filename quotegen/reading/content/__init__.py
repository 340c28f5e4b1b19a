"""The content pages, and what another language must say."""
