"""Texts on their way into a page: tied between tags, and as written within a tag."""

import pytest
from jinja2 import Environment
from markupsafe import Markup

from quotegen.publish.web.page_text import BetweenTags, tied_with


def _shown(template: str, **values: object) -> str:
    environment = Environment(autoescape=True, extensions=[BetweenTags])
    environment.filters["tied"] = tied_with(lambda text: text.replace(" ", "_"))
    return environment.from_string(template).render(**values)


@pytest.mark.parametrize(
    ("template", "page"),
    [
        ("<p>{{ x }}</p>", "<p>7_days</p>"),
        ("<p>{{ x if x else y }}, {{ 'A ' ~ x }}</p>", "<p>7_days, A_7_days</p>"),
        ('<p title="{{ x }}">', '<p title="7 days">'),
        ('<p{% if x %} title="{{ x }}"{% endif %} class="{{ x }}">{{ x }}',
         '<p title="7 days" class="7 days">7_days'),
        ("{% macro m(y) %}<b>{{ y }}</b>{% endmacro %}{{ m(x) }}", "<b>7_days</b>"),
        ("<title>{{ x | e }}</title>", "<title>7 days</title>"),
    ],
)  # fmt: skip
def test_a_value_is_tied_where_it_is_read(template: str, page: str):
    """Between two tags a value is tied, also through a macro; in a link or a label it is not."""
    assert _shown(template, x="7 days") == page


def test_markup_and_numbers_pass_as_they_are():
    """A drawing that arrives as markup is neither escaped nor tied."""
    assert _shown("{{ x }}{{ y }}", x=Markup("<b>7 m</b>"), y=7) == "<b>7 m</b>7"


def test_a_typed_tag_is_text():
    """What a customer typed cannot become markup on the way."""
    assert _shown("<p>{{ x }}</p>", x="<b>4-3/4 in") == (
        '<p>&lt;b&gt;<span class="tie">4-3/4</span>_in</p>'
    )
