"""Texts on their way into a page: what stands between tags gets its ties, tags stay as written."""

from collections.abc import Callable, Iterator

from jinja2.ext import Extension
from jinja2.lexer import Token, TokenStream
from markupsafe import Markup

from quotegen.explain.words.no_break import on_page


class BetweenTags(Extension):
    """Passes each value that a template sets between two tags through the filter `tied`.

    A value within a tag, such as a link or the name of a drawing, is left alone, and so is what
    arrives as markup.
    """

    def filter_stream(self, stream: TokenStream) -> Iterator[Token]:
        """Read `{{ value }}` as `{{ (value) | tied }}`."""
        within = False
        for token in stream:
            if token.type == "data":
                opened, closed = token.value.rfind("<"), token.value.rfind(">")
                within = opened > closed if opened != closed else within
            if token.type == "variable_end" and not within:
                for kind, value in (("rparen", ")"), ("pipe", "|"), ("name", "tied")):
                    yield Token(token.lineno, kind, value)
            yield token
            if token.type == "variable_begin" and not within:
                yield Token(token.lineno, "lparen", "(")


def tied_with(ties: Callable[[str], str]) -> Callable[[object], object]:
    """Return the filter `tied` for a language."""
    return lambda value: (
        on_page(value, ties) if isinstance(value, str) and not isinstance(value, Markup) else value
    )
