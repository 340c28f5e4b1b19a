"""Texts with places that a choice on the page fills anew."""

from collections.abc import Mapping

from markupsafe import Markup, escape


def slotted(text: str, places: Mapping[str, str], values: Mapping[str, str]) -> Markup:
    """Set values into a text of ours; those with a place stand in an element that names it.

    Args:
        text: with `{name}` for each value.
        places: the name of a value, and that of its place on the page.
        values: every value of the text.
    """
    return escape(text).format(**{
        name: Markup('<span data-slot="{}">{}</span>').format(places[name], value)
        if name in places
        else value
        for name, value in values.items()
    })  # fmt: skip
