"""How much a homeowner loads: the quote is e-mailed, and read on a phone in the yard."""

import re
from pathlib import Path

from tests.publish.built import EVERY_BUILT, built

MOST_BYTES = 150_000
"""What the quote may weigh without photos."""

PHOTO = re.compile(rb"data:image/(?:jpeg|png|webp);base64,[A-Za-z0-9+/=]*")


@EVERY_BUILT
def test_a_quote_without_photos_is_light(job_file: Path):
    """Text, styles, fonts, drawings and every choice together stay under the limit."""
    page = PHOTO.sub(b"", built(job_file)["customer/quote.html"])
    assert len(page) <= MOST_BYTES
