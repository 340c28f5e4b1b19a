"""The trade's rules: dated data with sources, and one small pure function per rule beside it."""
