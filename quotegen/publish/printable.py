"""Whether the print engine takes a company's logo, which its file alone cannot tell."""

from datetime import date
from functools import lru_cache

from quotegen.problem import Problem
from quotegen.publish.pdf import engine_problem, to_pdf
from quotegen.reading.images.logos import Logo
from quotegen.reading.images.photos import data_address
from quotegen.reading.records import JobSpec


def unprintable_logo(job: JobSpec) -> tuple[Problem, ...]:
    """Return a problem where the logo cannot be printed; a machine that prints nothing says none.

    The engine is slow to load, so a company without a logo does without.
    """
    if job.logo is None or engine_problem() or _prints(job.logo, job.quote_date):
        return ()
    said = f"`{job.company.logo}` is a drawing that cannot be printed"
    hint = "export it anew as plain SVG, or use a PNG"
    return (job.company_places.fault(("logo",), "logo-not-printed", said, hint),)


@lru_cache(maxsize=8)
def _prints(logo: Logo, dated: date) -> bool:
    image = f'<img alt="logo" src="{data_address(logo.kind, logo.data)}">'
    try:
        to_pdf(f'<html lang="en"><title>logo</title><body>{image}', dated)
    except Exception:  # noqa: BLE001 - the engine fails in more ways than can be named
        return False
    return True
