"""Normal and not: four pairs, each with its words, that differ and stay small."""

from itertools import combinations

from shapely import box

from quotegen.explain.pictures.normal_pictures import normal_pictures
from tests.explain.drawn import lettering, parsed, texts
from tests.explain.pictures.two_finishes import two_finishes


def test_four_pairs_say_which_side_is_normal():
    """Crack, shade, powder, seam: each pair has both verdicts, the normal one first."""
    pairs = normal_pictures(two_finishes())
    assert len({pair.title for pair in pairs}) == len(pairs) == 4
    for pair in pairs:
        said = texts(parsed(pair))
        assert said.index("Normal") < said.index("Not normal, call us")
        assert len(pair.svg) < 25_000


def test_words_of_a_pair_stand_apart():
    """No word over another or off the paper, on a phone of 328 px."""
    for pair in normal_pictures(two_finishes()):
        svg = parsed(pair)
        paper = box(0, 0, float(svg.attrib["width"]), float(svg.attrib["height"]))
        assert float(svg.attrib["width"]) <= 328
        placed = [at for _, at in lettering(svg)]
        assert all(map(paper.covers, placed))
        assert not any(one.intersects(other) for one, other in combinations(placed, 2))
