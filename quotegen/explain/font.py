"""The font of the drawings: how wide a text runs in it, and where it breaks into lines."""

from collections.abc import Mapping
from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Font:
    """A font in two weights.

    Attributes:
        family: its name in a style sheet.
        plain, bold: the advance width of each letter that it has, in parts of its size.
    """

    family: str
    plain: Mapping[str, float]
    bold: Mapping[str, float]

    def width(self, text: str, size: float, *, face: str = "plain") -> float:
        """Add up the letters of a text; one that the font lacks counts as its widest.

        Args:
            text: on one line.
            size: of the font, in the unit of the width.
            face: `plain` or `bold`.
        """
        letters = self.bold if face == "bold" else self.plain
        widest = max(letters.values())
        return size * sum(letters.get(letter, widest) for letter in text)

    def wrapped(
        self, text: str, width: float, size: float, *, face: str = "plain"
    ) -> tuple[str, ...]:
        """Break a text into lines that fit a width; a word longer than that stays whole."""
        lines = [""]
        for word in text.split():
            longer = f"{lines[-1]} {word}".strip()
            if lines[-1] and self.width(longer, size, face=face) > width:
                lines.append(word)
            else:
                lines[-1] = longer
        return tuple(lines)
