"""The figures of a job as tables in the terminal."""

from rich.console import Console
from rich.table import Table
from rich.text import Text

from quotegen.explain.results import Results
from quotegen.explain.words.days import visit_said
from quotegen.explain.words.numbers import edge_length
from quotegen.pricing.quoted.records import Line
from quotegen.reading.files.shapes import EdgeKind


def print_figures(results: Results) -> None:
    """Print the figures of one job, table after table."""
    console = Console(markup=False, emoji=False)  # what was typed is text, brackets and all
    job = results.job
    about = f", quote {job.quote}, revision {job.revision}"
    console.print("", Text.assemble((job.title, "bold"), about), sep="\n")
    for table in (
        _sizes(results),
        _area_ranges(results),
        _lines(results),
        _finishes(results),
        _payments(results),
        _adjustments(results),
        _visits(results),
    ):
        console.print(table)


def _table(title: str, *columns: str, right: int = 1) -> Table:
    table = Table(title=title, title_justify="left", box=None, pad_edge=False)
    for index, column in enumerate(columns):
        table.add_column(column, justify="left" if index < len(columns) - right else "right")
    return table


def _sizes(results: Results) -> Table:
    table = _table(
        "Sizes", "placement", "area", "outer edge", "inner edge", "concrete", "order", right=5
    )
    words = results.words
    for spec, measured in zip(results.job.placements, results.takeoff.placements, strict=True):
        outer, inner = (
            edge_length(results, spec.id, edge) for edge in (EdgeKind.OUTER, EdgeKind.INNER)
        )
        table.add_row(
            spec.name,
            words.area(measured),
            outer,
            inner,
            words.volume(measured.volume_cuyd),
            words.volume(measured.order_cuyd),
        )
    takeoff = results.takeoff
    table.add_row(
        "all", "", "", "", words.volume(takeoff.volume_cuyd), words.volume(takeoff.order_cuyd)
    )
    return table  # fmt: skip


def _area_ranges(results: Results) -> Table:
    table = _table("How sure, 95 times in 100", "placement", "at least", "at most", right=2)
    words, units = results.words, results.job.units
    for spec, measured in zip(results.job.placements, results.takeoff.placements, strict=True):
        ends = measured.area_range.ends(units)
        table.add_row(spec.name, *(words.quantity(end, units.area_unit) for end in ends))
    low, high = results.quote.tape_range
    table.add_row("price", *(words.signed_money(end.difference) for end in (low, high)))
    return table


def _lines(results: Results) -> Table:
    chosen = results.quote.chosen
    table = _table(f"Lines, {chosen.name}", "line", "basis", "quantity", "rate", "amount", right=3)
    for line in chosen.lines:
        table.add_row(*_line(results, line))
    table.add_row("total", "", "", "", results.words.money(chosen.total), style="bold")
    return table


def _line(results: Results, line: Line) -> tuple[str, ...]:
    words, place = results.words, results.placement_name(line)
    return (f"{line.name}, {place}" if place else line.name, line.basis.value,
            words.quantity(line.quantity, line.unit), words.rate(line.rate, line.unit),
            words.money(line.amount))  # fmt: skip


def _finishes(results: Results) -> Table:
    table = _table("Finishes and extras", "finish", "visits", "total", right=2)
    for finish in results.quote.finishes:
        table.add_row(finish.name, str(finish.visits), results.words.money(finish.total))
    for extra in results.quote.extras:
        table.add_row(f"extra: {extra.name}", "", results.words.signed_money(extra.amount))
    for other in results.quote.alternates:
        name = f"alternate: {other.name} on {other.placement}"
        table.add_row(name, str(other.visits), results.words.signed_money(other.amount))
    for look in results.quote.color_choices:
        name = f"colors: {' with '.join(look.names)}"
        table.add_row(name, "", results.words.signed_money(look.amount))
    return table


def _payments(results: Results) -> Table:
    table = _table("Payments", "when", "amount")
    for payment in results.quote.payments:
        table.add_row(payment.when, results.words.money(payment.amount))
    return table


def _adjustments(results: Results) -> Table:
    table = _table(
        "If the area comes out different", "change", "area", "difference", "total", right=3
    )
    words = results.words
    for row in results.quote.adjustment:
        table.add_row(
            words.signed_percent(row.change),
            words.quantity(row.area, results.quote.area_unit),
            words.signed_money(row.difference),
            words.money(row.total),
        )
    return table


def _visits(results: Results) -> Table:
    table = _table("Visits", "days", "visit", right=0)
    for visit in results.chosen_visits:
        table.add_row(
            results.words.days(visit.first_day, visit.last_day), visit_said(results.words, visit)
        )
    return table
