"""What a word was probably meant to be."""

import pytest

from quotegen.reading.yaml.near import FORMER, near_miss, renamed_or_near


@pytest.mark.parametrize(
    ("word", "hint"),
    [
        ("finsh", "did you mean `finish`?"),
        ("Finish", "did you mean `finish`?"),
        ("zzz", "allowed here: finish, include"),
    ],
)
def test_near_misses(word: str, hint: str):
    """A slip of the finger is met with the right word, anything else with all of them."""
    assert near_miss(word, ["include", "finish"]) == hint


def test_nothing_to_choose_from():
    """Where nothing is allowed the hint says so."""
    assert near_miss("zzz", []) == "there is none to choose from"


def test_a_former_name_counts_only_where_the_new_one_may_stand():
    """Elsewhere the word has its near miss like any other."""
    assert renamed_or_near("colour", ("color", "joints")) == "it is now called `color`"
    assert renamed_or_near("colour", ("colors", "joints")) == near_miss("colour", ("colors",))
    assert set(FORMER.values()).isdisjoint(FORMER)


@pytest.mark.parametrize(
    ("word", "allowed", "hint"),
    [
        ("stamped", ("broom", "stamped_texture", "stamped_pattern"),
         "did you mean `stamped_pattern` or `stamped_texture`?"),
        ("inner_radius", ("outer_radius", "width"), "allowed here: outer_radius, width"),
        ("excavation", ("dig_out", "protection"), "allowed here: dig_out, protection"),
        ("Wed", ("Tuesday", "Wednesday"), "did you mean `Wednesday`?"),
        ("BROOM", ("broom", "exposed"), "did you mean `broom`?"),
        ("pooldeck", ("patio", "pool deck"), "did you mean `pool deck`?"),
        ("sealer", ("base", "sealing"), "did you mean `sealing`?"),
        ("aera", ("add", "area"), "did you mean `area`?"),
    ],
)  # fmt: skip
def test_a_guess_never_changes_the_meaning(word: str, allowed: tuple[str, ...], hint: str):
    """Where two are meant both are named, and what only looks alike is none."""
    assert near_miss(word, allowed) == hint
