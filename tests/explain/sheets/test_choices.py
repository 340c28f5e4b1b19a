"""The choice sheet: controls, keys and texts of every combination, and the page that they make."""

import re
from pathlib import Path

import pytest

from quotegen.explain.sheets.choice_views import ChoiceSheet, CombinationTexts
from quotegen.explain.sheets.choices import choice_sheet
from quotegen.explain.sheets.price_sheet import price_sheet
from quotegen.explain.sheets.views import CustomerView
from quotegen.publish.web.html import render
from quotegen.resources import themes_folder
from tests.explain.examples import example_view
from tests.pricing import shop
from tests.publish.page_tree import choose, page_tree, seen

RATES = {
    **shop.RINSE_AND_FILM,
    "drain": shop.rate("$10 / ft", "drain", applies="asked"),
    "lawn": shop.rate("$50 lump", "protection", applies="asked"),
    "step": shop.rate("$90 each", "steps", applies="asked"),
    "sand": shop.rate("$1 / sq ft", "finish", applies="with color", color="integral"),
}
FINISHES = {"plain": shop.PLAIN, "fancy": {**shop.FANCY, "colors": ["sand"]}}


def _sheet(folder, **more) -> ChoiceSheet:
    results = shop.results(folder, shop.job(**more), rate_book=shop.book(RATES, FINISHES))
    return choice_sheet(results)


def _text(sheet: ChoiceSheet, key: str, name: str) -> str:
    texts = next(one.texts for one in sheet.combinations if one.key == key)
    return texts[sheet.text_names.index(name)]


def test_without_a_choice_there_is_nothing(tmp_path):
    """One finish and no extras leave nothing to choose."""
    sheet = _sheet(tmp_path)
    assert (sheet.groups, sheet.extras, sheet.combinations) == ((), (), ())


def test_the_first_combination_is_the_quote(tmp_path):
    """Its texts are those of sheet 1 as quoted, and its key is that of the checked options."""
    job = shop.job(compare=["fancy"], extras={"drain": "12 ft"})
    results = shop.results(tmp_path, job, rate_book=shop.book(RATES, FINISHES))
    sheet, quoted = choice_sheet(results), price_sheet(results)
    assert sheet.combinations[0].key == "plain,"
    assert _text(sheet, "plain,", "total") == quoted.total
    assert _text(sheet, "plain,", "finish") == quoted.finish
    assert _text(sheet, "plain,", "tax") == quoted.tax
    assert _text(sheet, "plain,", "say_by") == quoted.say_by
    assert _text(sheet, "plain,", "area") == quoted.can_change[0]
    assert [o.value for o in sheet.groups[0].options if o.chosen] == ["plain"]


def test_each_combination_says_what_is_chosen(tmp_path):
    """Finish, colors and extras stand in one line, which the reply then has as well."""
    sheet = _sheet(tmp_path, compare=["fancy"], colors=[{"base": "sand"}],
                   extras={"drain": "12 ft", "lawn": "yes"})  # fmt: skip
    said = _text(sheet, "fancy,sand,drain+lawn", "finish")
    assert said.startswith("Fancy; Item at $1 / sq ft; with item at $10 / ft and item at $50 lump")
    # 200 sq ft at 2.30 and at 1.00 for the color, 120 for the drain, 50 for the lawn
    assert _text(sheet, "fancy,sand,drain+lawn", "total") == "$830.00"
    assert _text(sheet, "fancy,sand,drain+lawn", "adds.drain") == "+$120.00"
    assert not any(one.key.startswith("plain,sand") for one in sheet.combinations)


def test_what_the_quoted_finish_does_not_take_has_no_total(tmp_path):
    """Plain takes no color: beside sand stands no amount as long as plain is chosen."""
    sheet = _sheet(tmp_path, compare=["fancy"], colors=[{"base": "sand"}])
    own, sand = sheet.groups[-1].options
    assert (own.value, own.amount, own.chosen) == ("", "$200.00", True)
    assert (sand.value, sand.amount, sand.chosen) == ("sand", "", False)


AMOUNT = re.compile(r"[+−]?\$[\d,]+(?:\.\d+)?")
OFFERED = frozenset({"choose", "compare"})
"""The controls and the finishes side by side: there each option has its own price."""
TYPED = re.compile(r"^(compare|extras|colors):", re.MULTILINE)
CHOICES = [path for path in shop.JOBS if TYPED.search(path.read_text(encoding="utf-8"))]
EVERY_CHOICE = pytest.mark.parametrize("job_file", CHOICES, ids=lambda path: path.stem)


def _figures(view: CustomerView, one: CombinationTexts) -> set[str]:
    """Return every amount of a combination: total, payments, lines, worked prices, area price."""
    texts = dict(zip(view.choice.text_names, one.texts, strict=True))
    said = [text for name, text in texts.items() if not name.startswith("adds.")]
    said += [cell for rows in one.rows for row in rows for cell in row]
    return set(AMOUNT.findall(" ".join(said)))


@pytest.mark.parametrize("job_file", shop.JOBS, ids=lambda path: path.stem)
def test_a_choice_is_there_where_one_is_typed(job_file: Path):
    """Finishes to compare, extras or colors give combinations; nothing else does."""
    assert (len(example_view(job_file).choice.combinations) > 1) == (job_file in CHOICES)


@EVERY_CHOICE
def test_a_choice_is_one_whole(job_file: Path):
    """With every combination no figure is left on the page that is the quote's alone.

    Whole means the other way round too: each of its own figures stands there.
    """
    view, words = example_view(job_file), shop.example_results(job_file).words
    page = render("quote.html.j2", view, words, themes_folder() / "shop")
    quoted = _figures(view, view.choice.combinations[0])
    for one in view.choice.combinations[1:]:
        tree = page_tree(page)
        choose(tree, view.choice, one)
        shown = set(AMOUNT.findall(seen(tree, without=OFFERED)))
        own = _figures(view, one)
        assert shown & (quoted - own) == set(), one.key
        assert own - shown == set(), one.key


@EVERY_CHOICE
def test_with_another_choice_nothing_can_be_signed(job_file: Path):
    """The signatures and the yes are hidden, and the letter that asks is shown; as quoted, not.

    Once the quote is accepted there is nothing left to sign with any choice.
    """
    view, words = example_view(job_file), shop.example_results(job_file).words
    page = render("quote.html.j2", view, words, themes_folder() / "shop")
    sign = words.labels["sign_sentence"].partition("{")[0]
    is_open = shop.example_results(job_file).contract.accepted_on is None
    for one in view.choice.combinations:
        tree = page_tree(page)
        choose(tree, view.choice, one)
        shown, is_quote = seen(tree), one is view.choice.combinations[0]
        for text in (sign, words.labels["reply_link"]):
            assert (text in shown) == (is_quote and is_open), (one.key, text)
        for text in (words.labels["ask_link"], words.labels["differs_ask"]):
            assert (text in shown) == (not is_quote), (one.key, text)


@EVERY_CHOICE
def test_the_subject_of_the_asking_letter_names_the_choice(job_file: Path):
    """Every combination has its own subject, so that the company sees at once what is asked."""
    choice = example_view(job_file).choice
    place = choice.text_names.index("ask_subject")
    subjects = [one.texts[place] for one in choice.combinations]
    quote = shop.example_results(job_file).job.quote
    assert all(quote in subject for subject in subjects)


def test_a_figure_left_behind_is_noticed():
    """A total that no slot refills is found on the page of another choice."""
    view = example_view(CHOICES[0])
    words = shop.example_results(CHOICES[0]).words
    page = render("quote.html.j2", view, words, themes_folder() / "shop")
    tree = page_tree(page.replace('<p class="total" data-slot="total">', '<p class="total">'))
    other = next(
        one for one in view.choice.combinations if one.texts[0] != view.price.total
    )  # fmt: skip
    choose(tree, view.choice, other)
    assert view.price.total in AMOUNT.findall(seen(tree, without=OFFERED))
