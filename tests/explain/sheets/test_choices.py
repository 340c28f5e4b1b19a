"""The choice sheet: controls, keys and texts of every combination."""

from quotegen.explain.sheets.choices import choice_sheet
from quotegen.explain.sheets.price_sheet import price_sheet
from quotegen.explain.sheets.views import ChoiceSheet
from tests.pricing import shop

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
    assert (sheet.groups, sheet.extras, sheet.combinations, sheet.totals) == ((), (), (), ())


def test_the_first_combination_is_the_quote(tmp_path):
    """Its texts are those of sheet 1 as quoted, and its key is that of the checked options."""
    job = shop.job(compare=["fancy"], extras={"drain": "12 ft"})
    results = shop.results(tmp_path, job, rate_book=shop.book(RATES, FINISHES))
    sheet, quoted = choice_sheet(results), price_sheet(results)
    assert sheet.combinations[0].key == "plain,"
    assert _text(sheet, "plain,", "total") == quoted.total
    assert _text(sheet, "plain,", "finish") == quoted.finish
    assert _text(sheet, "plain,", "sentence") == quoted.sentence
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


def test_the_table_has_each_total_of_two_extras(tmp_path):
    """Two finishes by four sets of two extras; nothing is left out."""
    sheet = _sheet(tmp_path, compare=["fancy"], extras={"drain": "12 ft", "lawn": "yes"})
    assert [row.totals for row in sheet.totals] == [
        ("$200.00", "$320.00", "$250.00", "$370.00"),
        ("$460.00", "$580.00", "$510.00", "$630.00"),
    ]
    assert sheet.columns[0] == "Nothing added"
    assert sheet.totals_note == ""


def test_of_more_extras_none_each_and_all_are_shown(tmp_path):
    """Three extras make eight sets; five are in the table, and it says so."""
    extras = {"drain": "12 ft", "lawn": "yes", "step": "2"}
    sheet = _sheet(tmp_path, extras=extras)
    (row,) = sheet.totals
    assert row.totals == ("$200.00", "$320.00", "$250.00", "$380.00", "$550.00")
    assert sheet.totals_note.startswith("5 of 8 combinations")
