"""How hard hypothesis tries where one case takes long: for a part of the cases of its profile."""

from hypothesis import Phase, settings

_NO_SHRINKING = (Phase.explicit, Phase.generate)


_FEWEST = 4


def one_in(parts: int) -> settings:
    """Try one case in so many of what the profile asks for, but always a few."""
    return settings(max_examples=max(_FEWEST, settings().max_examples // parts))


def one_in_as_found(parts: int) -> settings:
    """Try one case in so many; what fails is shown as found, since making it smaller takes long."""
    return settings(one_in(parts), phases=_NO_SHRINKING)
