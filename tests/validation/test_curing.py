"""Curing and the sealer over it, as makers of both say in public notes on outdoor flatwork.

The notes: a curing compound (ASTM C309) keeps out a sealer that must soak in, unless it wears off;
a later film sticks to it badly; nothing is sprayed before release powder is washed off; a product
that cures and seals in one (ASTM C1315) is itself a film. Neither standard was read. The rate of a
compound, at most 200 sq ft a gallon, stands in UFGS 03311 and 03372.
"""

from pathlib import Path

import pytest

from quotegen.pipeline import figure
from tests.pricing import shop
from tests.world import write_world

SEAL = {"visit": "seal", "days": "1", "wait_days": "28"}


def _warned(folder: Path, **finish: str) -> bool:
    plain = {**shop.PLAIN, "visits": [shop.FORM, shop.POUR, SEAL], **finish}
    job = write_world(folder, shop.job(), rate_book=shop.book(finishes={"plain": plain}))
    return "cure-under-sealer" in [one.code for one in figure(job, shop.shared()).problems]


@pytest.mark.parametrize(
    ("sealer", "cure", "fits"),
    [
        ("penetrating", "compound", False),  # cannot soak in
        ("penetrating", "cure and seal", False),  # nor through this
        ("penetrating", "wet", True),
        ("penetrating", "cover", True),
        ("film", "compound", False),  # sticks badly
        ("film", "cure and seal", True),  # a second coat of its own kind
        ("film", "cover", True),
        ("none", "compound", True),
    ],
)
def test_which_sealer_goes_over_what(tmp_path: Path, sealer: str, cure: str, fits: bool):
    """The owner is warned where a film of curing lies under a sealer that it keeps off."""
    assert _warned(tmp_path, sealer=sealer, cure=cure) is not fits


@pytest.mark.parametrize("kind", ["broom", "exposed_aggregate", "stamped_pattern"])
@pytest.mark.parametrize("sealer", ["penetrating", "film", "none"])
def test_what_is_usual_always_fits(tmp_path: Path, kind: str, sealer: str):
    """A book without the key is never warned: what is derived goes with its sealer."""
    assert not _warned(tmp_path, kind=kind, sealer=sealer)


def test_a_bare_slab_is_sprayed_at_the_rate_of_the_guide(tmp_path: Path):
    """600 sq ft take 3 gal at 200 sq ft each; typed at 300, they take 2."""
    (tmp_path / "typed").mkdir()
    job = shop.job(shop.placement("30 ft x 20 ft"))
    usual = shop.results(tmp_path, job, rate_book=shop.book())
    order = {"allowance": "0 %", "round_up_to": "0.25 cu yd", "curing_coverage": "300 sq ft / gal"}
    typed = shop.results(tmp_path / "typed", job, rate_book=shop.book(order=order))
    gallons = [str(m.needed) for made in (usual, typed) for m in made.takeoff.materials
               if m.id == "curing"]  # fmt: skip
    assert gallons == ["3.00", "2.00"]
