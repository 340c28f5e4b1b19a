"""What may be typed for one value: lengths, money, dates, shares, choices."""
