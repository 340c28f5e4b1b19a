"""How the company's papers look: its theme, its paper and its logo."""

from collections.abc import Iterator
from pathlib import Path

from quotegen.problem import Problem
from quotegen.quantity import Units
from quotegen.reading.files.company import Company, PaperSize
from quotegen.reading.images.logos import Logo, shown_logo
from quotegen.reading.yaml.typed_file import Typed
from quotegen.reading.yaml.validate import near_miss
from quotegen.resources import theme_names


def look_problems(company: Typed[Company]) -> Iterator[Problem]:
    """Find a theme that is not there."""
    theme, names = company.value.theme, theme_names()
    if theme not in names:
        yield Problem(
            code="no-theme", source=company.places.of(("theme",)), path="theme",
            message=f"there is no theme `{theme}`", hint=near_miss(theme, names),
        )  # fmt: skip


def logo_of(company: Typed[Company]) -> Logo | Problem | None:
    """Read the logo, if the company has one."""
    name = company.value.logo
    if name is None:
        return None
    folder = Path(company.places.file).parent
    return shown_logo(folder, name, company.places.of(("logo",)))


def paper_of(company: Company, units: Units) -> PaperSize:
    """Return the company's paper; where it names none, Letter in feet and A4 in meters."""
    if company.paper is not None:
        return company.paper
    return PaperSize.LETTER if units is Units.US else PaperSize.A4
