"""What the files must agree on, one module for each question."""
