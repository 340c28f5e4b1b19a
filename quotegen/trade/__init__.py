"""The trade's rules: dated data with sources, and one small pure function beside each rule."""
