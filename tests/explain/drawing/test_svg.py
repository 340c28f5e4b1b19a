"""A finished drawing: titled, described, fit for a phone, and the same each time."""

from quotegen.explain.drawing.svg import Drawing
from quotegen.explain.pictures.cutaway import cutaway
from quotegen.explain.pictures.swatches import finish_swatch, look_swatch
from tests.explain.drawn import SVG, lettering, parsed
from tests.explain.pictures.two_finishes import two_finishes

LEAST_TEXT_PX, PHONE_PX = 12, 328


def _drawings() -> dict[str, Drawing]:
    results = two_finishes()
    return {
        "swatch": finish_swatch(results, "fancy"),
        "look": look_swatch(results, ("sand", "nut")),
    }


def test_each_has_a_title_a_description_and_fits_a_phone():
    """WCAG 2.2, 1.1.1: a drawing is named; no text is under 12 px, and none is cut on a phone."""
    for name, drawing in _drawings().items():
        root = parsed(drawing)
        assert root.findtext(f"{SVG}title") == drawing.title
        assert root.findtext(f"{SVG}desc"), name
        assert float(root.attrib["width"]) <= PHONE_PX
        sizes = {float(text.attrib["font-size"]) for text in root.iter(f"{SVG}text")}
        assert all(size >= LEAST_TEXT_PX for size in sizes), name


def test_the_same_results_are_the_same_drawings():
    """Nothing in a drawing is left to chance."""
    assert _drawings() == _drawings()


def _cuts() -> dict[str, Drawing]:
    results = two_finishes()
    (placement,) = results.job.placements
    return {
        f"cut of {width} px": cutaway(results, placement, width, "cut") for width in (640, PHONE_PX)
    }


def test_no_text_runs_off_its_drawing():
    """As wide as the font of the theme sets it, every text ends inside the drawing."""
    for name, drawing in (_drawings() | _cuts()).items():
        root = parsed(drawing)
        for text, box in lettering(root):
            assert box.bounds[0] >= 0, (name, text)
            assert box.bounds[2] <= float(root.attrib["width"]), (name, text)
