"""Views to HTML pages."""
