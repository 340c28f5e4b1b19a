"""The design tokens of a theme: the custom properties that its style sheets set on the root."""

import re
from dataclasses import dataclass

_ROOT = re.compile(r"(@media print \{\s*)?:root \{(.*?)\}", re.DOTALL)
_SET = re.compile(r"(--[\w-]+):\s*([^;]+);")


@dataclass(frozen=True, slots=True, kw_only=True)
class Token:
    """One token, with its value on a wide screen and on paper."""

    name: str
    screen: str
    paper: str

    @property
    def key(self) -> str:
        """Its name without the dashes before it, as a class of the specimen."""
        return self.name.removeprefix("--")

    @property
    def group(self) -> str:
        """What it is about: the first word of its name."""
        return self.key.partition("-")[0]


def tokens_of(css: str) -> tuple[Token, ...]:
    """Return every token in the order in which it is first set; the last value holds."""
    screen: dict[str, str] = {}
    paper: dict[str, str] = {}
    for for_paper, body in _ROOT.findall(css):
        (paper if for_paper else screen).update(_SET.findall(body))
    return tuple(
        Token(name=name, screen=value, paper=paper.get(name, value))
        for name, value in screen.items()
    )
