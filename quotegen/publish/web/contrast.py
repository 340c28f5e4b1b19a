"""Contrast: a company's accent is darkened until words in it can be read (WCAG 2.2, 1.4.3)."""

import colorsys

LEAST_FOR_TEXT = 4.5
_STEPS = 100


def contrast(one: str, other: str) -> float:
    """Return the contrast ratio of two colors such as `#7a4a1e`, from 1 to 21.

    WCAG 2.2, definition of contrast ratio: (L1 + 0.05) / (L2 + 0.05), the lighter on top.
    """
    lighter, darker = sorted((_luminance(one), _luminance(other)), reverse=True)
    return (lighter + 0.05) / (darker + 0.05)


def accent_ink(accent: str) -> str:
    """Return the accent, or the nearest darker shade of it that can be read on white."""
    hue, lightness, saturation = colorsys.rgb_to_hls(*_parts(accent))
    for step in range(_STEPS + 1):
        shade = colorsys.hls_to_rgb(hue, lightness * (1 - step / _STEPS), saturation)
        written = "#" + "".join(f"{int(part * 255 + 0.5):02x}" for part in shade)
        if contrast(written, "#ffffff") >= LEAST_FOR_TEXT:
            return written
    return "#000000"


def _parts(color: str) -> tuple[float, float, float]:
    red, green, blue = (int(color[i : i + 2], 16) / 255 for i in (1, 3, 5))
    return red, green, blue


def _luminance(color: str) -> float:
    """Relative luminance, WCAG 2.2: sRGB made linear, weighted 0.2126, 0.7152, 0.0722."""
    linear = [
        part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4
        for part in _parts(color)
    ]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]
