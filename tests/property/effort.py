"""Where one case takes long, hypothesis tries only a share of the cases of its profile."""

from hypothesis import Phase, settings

_NO_SHRINKING = (Phase.explicit, Phase.generate)

_FEWEST = 4


def one_in(parts: int) -> settings:
    """Try one case for every `parts` that the profile asks for, and always a few."""
    return settings(max_examples=max(_FEWEST, settings().max_examples // parts))


def one_in_as_found(parts: int) -> settings:
    """The same; a failing case is shown as found, since making it smaller takes long."""
    return settings(one_in(parts), phases=_NO_SHRINKING)
