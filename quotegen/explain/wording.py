"""Numbers, money, dates and fixed words, as a homeowner of the language reads them."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from fractions import Fraction

from babel import Locale
from babel.dates import format_date, format_skeleton
from babel.lists import format_list
from babel.numbers import format_currency, format_decimal, format_percent

from quotegen.explain.font import Font
from quotegen.quantity import (
    FEET_PER_METER,
    M3_PER_CUYD,
    SQFT_PER_M2,
    Length,
    Unit,
    Units,
    decimal_of,
    decimal_places,
    mixed_number,
    nearest,
    rounded,
    tape,
)
from quotegen.takeoff.records import PlacementTakeoff

_PLACES = {Unit.SQ_FT: 1, Unit.FT: 1, Unit.CU_YD: 2, Unit.M2: 2, Unit.M: 2, Unit.M3: 2}


@dataclass(frozen=True, slots=True, kw_only=True)
class Words:
    """The fixed words of one language, and how it writes numbers, money and dates.

    Attributes:
        labels: every fixed word by key.
        locale: as Babel names it.
        units: in which the job is shown.
        font: that of the drawings.
    """

    labels: Mapping[str, str]
    locale: str
    units: Units
    font: Font

    def __call__(self, key: str, **values: str) -> str:
        """The fixed text of a key, with its values filled in.

        Raises:
            LookupError: content/ has no such text.
        """
        if key not in self.labels:
            message = f"content/labels.yaml has no text `{key}`"
            raise LookupError(message)
        return self.labels[key].format(**values)

    def count(self, key: str, how_many: Decimal | int, **values: str) -> str:
        """The fixed text of a key in the plural form that its number takes.

        `{number}` stands for the number. The text of the other forms is under `<key>_other`; a
        form that reads differently, such as `<key>_one`, has its own (CLDR plural rules).
        """
        plain = decimal_of(Fraction(how_many))  # 1.00 is written 1, so it takes the form of 1
        form = f"{key}_{Locale.parse(self.locale).plural_form(plain)}"
        shown = {"number": self.plain_number(how_many), **values}
        return self(form if form in self.labels else f"{key}_other", **shown)

    def plain_number(self, value: Decimal | Fraction | int) -> str:
        """A number with its own decimals, without zeros at the end."""
        exact = decimal_of(Fraction(value))
        return format_decimal(exact, decimal_quantization=False, locale=self.locale)

    def money(self, amount: Decimal) -> str:
        """Money to the cent: `$1,234.50`."""
        return format_currency(amount, "USD", locale=self.locale).replace("-", "−")

    def signed_money(self, amount: Decimal) -> str:
        """Write a difference with its sign; zero has none."""
        return f"{_sign(amount)}{self.money(abs(amount))}"

    def tens(self, amount: Decimal) -> str:
        """Money to the ten dollars, where it is only about so much: `$18,620`."""
        tens = rounded(Fraction(amount) / 10, 0) * 10
        shown = format_currency(
            tens, "USD", format="¤#,##0", locale=self.locale, currency_digits=False
        )
        return shown.replace("-", "−")

    def signed_tens(self, amount: Decimal) -> str:
        """Write such a difference with its sign."""
        return f"{_sign(amount)}{self.tens(abs(amount))}"

    def price(self, amount: Decimal) -> str:
        """Money to the cent, or finer where it is: `$0.125`."""
        parts = format_currency(amount, "USD", locale=self.locale, decimal_quantization=False)
        cents = self.money(amount)
        return cents if len(parts) <= len(cents) else parts

    def rate(self, amount: Decimal, unit: Unit) -> str:
        """A rate with its unit: `$4.20 / sq ft`."""
        if unit is Unit.LUMP:
            return self("unit_lump")
        shown = self.price(amount)
        if unit is Unit.EACH:
            return self("rate_each", money=shown)
        return self("rate_per", money=shown, unit=self(f"unit_per_{_key(unit)}"))

    def unit(self, unit: Unit) -> str:
        """A unit as it follows a number: `sq ft`."""
        return self(f"unit_{_key(unit)}")

    def units_said(self) -> tuple[str, ...]:
        """Every unit, as it follows a number."""
        return tuple(text for key, text in self.labels.items() if key.startswith("unit_"))

    def number(self, value: Decimal | int, places: int) -> str:
        """A number rounded half-up to some decimals."""
        pattern = "#,##0" + ("." + "0" * places if places else "")
        return format_decimal(rounded(Fraction(value), places), format=pattern, locale=self.locale)

    def signed_number(self, value: Decimal | int, places: int) -> str:
        """A difference rounded to some decimals, with its sign; zero has none."""
        shown = rounded(Fraction(value), places)
        return f"{_sign(shown)}{self.number(abs(shown), places)}"

    def signed_quantity(self, value: Decimal, unit: Unit) -> str:
        """Write a difference with its sign; zero has none."""
        return f"{_sign(value)}{self.quantity(abs(value), unit)}"

    def unit_one(self, unit: Unit) -> str:
        """One of a unit, in a sentence: `square foot`."""
        return self(f"unit_one_{_key(unit)}")

    def quantity(self, value: Decimal, unit: Unit) -> str:
        """A quantity with its unit, at least as finely as it is priced.

        A quantity that was typed more finely than the takeoff rounds is written as typed, so
        that what is printed multiplies out.
        """
        if unit is Unit.LUMP:
            return self("unit_lump") if value == 1 else self.count("lumps", value)
        number = self.amount_of(value, unit)
        return number if unit is Unit.EACH else f"{number} {self.unit(unit)}"

    def amount_of(self, value: Decimal, unit: Unit) -> str:
        """A quantity without its unit, for a column that names it."""
        return self.number(value, max(_PLACES.get(unit, 0), decimal_places(value)))

    def signed_amount_of(self, value: Decimal, unit: Unit) -> str:
        """A difference for such a column, with its sign; zero has none."""
        return f"{_sign(value)}{self.amount_of(abs(value), unit)}"

    def length(self, length: Length) -> str:
        """A reading as it was typed: to a sixteenth of an inch, or to 0.01 m."""
        return tape(length.feet) if self.units is Units.US else self.feet(length.feet)

    def feet(self, feet: Fraction | Decimal | float) -> str:
        """A length as the job's tape shows it: 24'-6 1/2", or 7.47 m."""
        if self.units is Units.US:
            return tape(feet, parts=4)
        exact = Fraction(repr(feet)) if isinstance(feet, float) else Fraction(feet)
        return self.quantity(rounded(Length(exact).meters, 2), Unit.M)

    def panel_side(self, feet: Decimal) -> str:
        """The side of a joint panel: to the inch, or to 0.1 m."""
        if self.units is Units.US:
            return tape(feet, parts=1)
        meters = self.number(rounded(Length(Fraction(feet)).meters, 1), 1)
        return f"{meters} {self.unit(Unit.M)}"

    def depth(self, length: Length) -> str:
        """A thickness: in inches, or in millimeters."""
        if self.units is Units.US:
            return self("inches", inches=mixed_number(length.inches))
        return self("millimeters", number=self.number(rounded(length.meters * 1000, 0), 0))

    def slope(self, fall: Length) -> str:
        """A slope, given as the fall of one foot: in inches a foot, or in per cent."""
        if self.units is Units.US:
            return self("fall_per_foot", inches=mixed_number(nearest(fall.inches)))
        return self.percent(fall.feet)

    def area(self, measured: PlacementTakeoff) -> str:
        """The area of a placement as it is priced."""
        return self.quantity(measured.area(self.units), self.units.area_unit)

    def square_feet(self, area_sqft: Decimal) -> str:
        """An area that nothing is priced by, in the units of the job."""
        if self.units is Units.US:
            return self.quantity(area_sqft, Unit.SQ_FT)
        return self.quantity(rounded(Fraction(area_sqft) / SQFT_PER_M2, 2), Unit.M2)

    def height(self, feet: Decimal) -> str:
        """A height above or below the mark, with its sign; zero has none."""
        shown = self.feet(abs(feet))
        if shown == self.feet(feet - feet):
            return shown
        return f"{_sign(feet)}{shown}"

    def area_step(self) -> str:
        """What an area is rounded to: `0.1 sq ft`, or `0.01 m²`."""
        unit = self.units.area_unit
        return self.quantity(decimal_of(Fraction(1, 10 ** _PLACES[unit])), unit)

    def volume(self, cuyd: Decimal) -> str:
        """A volume of concrete: in cubic yards, in a metric job after the cubic meters."""
        yards = self.quantity(rounded(cuyd, _PLACES[Unit.CU_YD]), Unit.CU_YD)
        if self.units is Units.US:
            return yards
        meters = rounded(Fraction(cuyd) * M3_PER_CUYD, 2)
        return f"{self.quantity(meters, Unit.M3)} ({yards})"

    def scale_bar(self, px_per_ft: float) -> tuple[float, int, tuple[str, str, str]]:
        """A scale bar: the pixels of one step, the number of steps, and three labels."""
        if self.units is Units.US:
            return px_per_ft * 2.5, 4, ("0", "5", f"10 {self.unit(Unit.FT)}")
        return (
            px_per_ft * FEET_PER_METER.numerator / FEET_PER_METER.denominator,
            4,
            ("0", "2", f"4 {self.unit(Unit.M)}"),
        )

    def percent(self, share: Fraction) -> str:
        """A share in per cent, to a tenth."""
        return format_percent(rounded(share, 3), locale=self.locale, decimal_quantization=False)

    def exact_percent(self, share: Fraction) -> str:
        """A share with all its decimals: `8.875%`."""
        return format_percent(decimal_of(share), locale=self.locale, decimal_quantization=False)

    def signed_percent(self, share: Fraction) -> str:
        """A change in per cent, with its sign; zero has none."""
        return f"{_sign(share)}{self.percent(abs(share))}"

    def day(self, day: date) -> str:
        """A date in full: `June 8, 2026`."""
        return format_date(day, format="long", locale=self.locale)

    def month(self, day: date) -> str:
        """The month of a date: `June 2026`."""
        return format_skeleton("yMMMM", day, locale=self.locale)

    def weekday(self, day: date) -> str:
        """A date of this season, with its weekday: `Mon, Jun 8`."""
        return format_skeleton("MMMEd", day, locale=self.locale)

    def day_of_year(self, day: date) -> str:
        """A day of any year: `November 15`."""
        return format_skeleton("MMMMd", day, locale=self.locale)

    def days(self, first: date, last: date) -> str:
        """The first and the last day; one day alone stands once."""
        if first == last:
            return self.weekday(first)
        return f"{self.weekday(first)} – {self.weekday(last)}"

    def joined(self, items: tuple[str, ...]) -> str:
        """Short facts side by side, with dots between."""
        return " · ".join(items)

    def semicolons(self, items: tuple[str, ...]) -> str:
        """Facts of several words each, in a line."""
        return "; ".join(items)

    def listing(self, items: tuple[str, ...]) -> str:
        """A list in a sentence: `a, b, and c`."""
        return format_list(list(items), locale=self.locale)


def _sign(difference: Decimal | Fraction) -> str:
    """The sign of a difference; zero has none."""
    return "+" if difference > 0 else "−" if difference < 0 else ""


def _key(unit: Unit) -> str:
    return unit.value.replace(" ", "_")
