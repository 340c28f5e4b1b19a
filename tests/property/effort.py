"""How hard hypothesis tries where one case takes long: a quarter of the cases of its profile."""

from hypothesis import settings

FEWER = settings(max_examples=settings().max_examples // 4)
