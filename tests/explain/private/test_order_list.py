"""The owner's order list in words: what to order first, in the units of the job."""

from quotegen.explain.private.order_list import OrderList, OrderRow, order_list_view
from quotegen.publish.web.html import render
from quotegen.resources import themes_folder
from tests.pricing import shop
from tests.publish.built import page_text

METRIC = next(path for path in shop.JOBS if path.stem == "ferry-road-drive")
MEASURED = next(path for path in shop.JOBS if path.stem == "cutters-row-drive")
US = next(path for path in shop.JOBS if path.stem == "orchard-bend-pool-deck")


def _view(job) -> OrderList:
    owner = shop.example(job).owner
    assert owner is not None
    return order_list_view(shop.example_results(job), owner)


def _rows(job) -> dict[str, OrderRow]:
    return {row.name: row for row in reversed(_view(job).rows)}


def test_a_metric_job_orders_in_metric():
    """14.5 cu yd are 11.09 m3, rounded up; the plant's own count stands under it."""
    rows = _rows(METRIC)
    assert (rows["Concrete"].buy, rows["Concrete"].sold) == ("11.09 m³", "14.5 cu yd")
    # 27.05 tons and 5 % are 28.40 tons of 907.18474 kg
    assert rows["Stone, by weight"].buy == "26 t"
    assert rows["Weight of the bars"].needed == "327.24 kg"  # 54 bars of 20 ft, 721.44 lb
    assert rows["Tie wire"].buy == "2 kg"  # 10 lb to the ton: 3.61 lb are 1.64 kg
    assert rows["Joint filler, at what the slab only touches"].needed == "9.60 m"  # 4.8 m twice


def test_what_is_counted_stays_and_the_list_says_so():
    """Bars come in US sizes: they are counted, and a sentence says why."""
    view = _view(METRIC)
    assert (_rows(METRIC)["Bars"].buy, _rows(METRIC)["Bars"].sold) == ("54 bars", "")
    assert "Sheets, rolls and bars are sold in US sizes" in view.note
    assert "The working is in US units" in view.note
    assert _view(US).note == ""


def test_a_job_in_feet_stays_in_feet():
    """833 sq ft at 4 in and 1/8 in, and 5 %, are 11.14 cu yd: converted nowhere, and told once."""
    rows = _rows(US)
    assert (rows["Concrete"].buy, rows["Concrete"].sold) == ("11.25 cu yd", "")
    assert {row.sold for row in rows.values()} == {""}


def test_units_are_in_the_plural_form_that_they_take():
    """The working says `21 sheets` and `1 coat`, and what is counted has no decimals."""
    rows = _rows(US)
    assert "Number of sheets 24 sheets" in rows["Weight of the wire mesh"].how
    assert rows["Wire mesh"].needed == "20.60 sheets"  # 833 sq ft over 9.33 x 4.33, less laps
    assert rows["Wire mesh"].buy == "24 sheets"  # 15 % on a curved deck: 23.69
    assert "Coats 1 coat," in _rows(METRIC)["Sealer, all coats"].how


def test_what_to_order_is_the_first_figure_after_the_name():
    """On the phone to the plant the eye lands on the order and not on how it came about."""
    results = shop.example_results(US)
    view = _view(US)
    page = render("order-list.html.j2", view, results.words, themes_folder() / "shop",
                  on_paper=True)  # fmt: skip
    heads = page[page.index("<thead>") : page.index("</thead>")]
    assert heads.index("To order") < heads.index("Needed") < heads.index("Where")
    row = page_text(page[page.index("<tbody>") :])
    assert row.index(view.rows[0].name) < row.index(view.rows[0].buy) < row.index(view.rows[0].how)


def test_after_measuring_the_list_orders_for_the_measured_slab():
    """751.4 sq ft in the forms, not the 775.1 of the quote: less concrete, the quoted under it."""
    view = _view(MEASURED)
    assert "as measured in the forms on May 12, 2026" in view.measured
    rows = _rows(MEASURED)
    assert (rows["Concrete"].buy, rows["Concrete"].quoted) == ("12.5 cu yd", "quoted 13 cu yd")
    assert (rows["Bars"].buy, rows["Bars"].quoted) == ("58 bars", "quoted 60 bars")
    assert "Area of Drive 751.4 sq ft" in rows["Bars"].how
    assert _view(US).measured == ""
    assert {row.quoted for row in _rows(US).values()} == {""}
