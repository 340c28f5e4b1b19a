"""The price as quoted: rates, lines, options, totals, payments."""
