"""A small shop with all that a homeowner may choose: finishes, colors, extras, alternates."""

from tests.pricing import shop

COLORS = {
    "sand": shop.rate("$1.00 / sq ft", "finish", applies="with color", color="integral"),
    "clay": shop.rate("$1.25 / sq ft", "finish", applies="with color", color="hardener"),
    "walnut": shop.rate("$0.50 / sq ft", "finish", applies="with color", color="release"),
}
RATES = {
    **shop.RINSE_AND_FILM, **COLORS,
    "trip": shop.rate("$85 / visit", "travel"),
    "both": {**shop.rate("$2.00 / sq ft"), "covers": ["slab", "placing"]},
    "drain": shop.rate("$10 / ft", "drain", applies="asked"),
    "lawn": shop.rate("$50 lump", "protection", applies="asked"),
}  # fmt: skip
FINISHES = {"plain": shop.PLAIN, "fancy": {**shop.FANCY, "colors": list(COLORS)}}
BOOK = shop.book(RATES, FINISHES)


def two_placements(**more) -> str:
    """A deck that may be fancy, and a walk that stays plain."""
    deck = shop.placement("20 ft x 10 ft", "deck", alternates=["fancy"])
    return shop.job(deck, shop.placement("10 ft x 4 ft", "walk", at="40 ft", use="walk"), **more)
