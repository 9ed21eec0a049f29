"""Contrast of every pair of colours the page uses, computed by the formula of WCAG 2.2."""

import re

import pytest

from tests.publish.blocks import TEMPLATES

BASE = (TEMPLATES / "html" / "base.css").read_text(encoding="utf-8")
SCHEMES = {
    "as it is": ":root {",
    "dark by the device": ':root:not([data-scheme="bright"]) {',
    "dark by switch": ':root[data-scheme="dark"] {',
    "bright by switch": ':root[data-scheme="bright"] {',
}


def contrast(one: str, other: str) -> float:
    """WCAG 2.2, 1.4.3: (L1 + 0.05) / (L2 + 0.05), L the relative luminance of sRGB."""
    lighter, darker = sorted((_luminance(one), _luminance(other)), reverse=True)
    return (lighter + 0.05) / (darker + 0.05)


def _luminance(colour: str) -> float:
    digits = colour.removeprefix("#")
    digits = "".join(digit * 2 for digit in digits) if len(digits) == 3 else digits
    parts = [int(digits[at : at + 2], 16) / 255 for at in (0, 2, 4)]
    red, green, blue = (part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


@pytest.mark.parametrize(
    ("one", "other", "ratio"),
    [
        ("#000", "#fff", 21), ("#767676", "#fff", 4.54), ("#777777", "#fff", 4.48), ("#0000ff", "#fff", 8.59),
        ("#0000ff", "#ff0000", 2.15), ("#ffff00", "#fff", 1.07), ("#949494", "#fff", 3.03), ("#595959", "#fff", 7.00),
    ],
)  # fmt: skip
def test_the_formula_gives_the_published_ratios(one: str, other: str, ratio: float) -> None:
    """Pairs whose ratio is published with WCAG and its checkers."""
    assert round(contrast(one, other), 2) == ratio


def colours(scheme: str) -> dict[str, str]:
    block = BASE[BASE.index(scheme) :].partition("}")[0]
    return dict(re.findall(r"--(\w+): (#[0-9a-f]{3,6});", block))


@pytest.mark.parametrize("scheme", SCHEMES.values(), ids=SCHEMES)
def test_words_and_lines_can_be_seen_in_every_light(scheme: str) -> None:
    """1.4.6 for what is read at arm's length: 7; small words 4.5 (1.4.3); lines that mean something 3 (1.4.11)."""
    has = colours(scheme)
    assert set(has) == {"paper", "ink", "quiet", "tint", "rule", "link"}
    assert min(contrast(has["ink"], has[ground]) for ground in ("paper", "tint")) >= 7
    assert min(contrast(has[words], has[ground]) for words in ("quiet", "link") for ground in ("paper", "tint")) >= 4.5
    assert contrast(has["rule"], has["paper"]) >= 3


@pytest.mark.parametrize("word", ["danger", "warning", "caution", "notice"])
def test_signal_words_stand_out_from_their_colour(word: str) -> None:
    match = re.search(rf"\.{word} {{ background: (#\w+); color: (#\w+);", BASE)
    assert match is not None
    assert contrast(match[1], match[2]) >= 4.5


def test_both_ways_to_the_dark_are_the_same() -> None:
    assert colours(SCHEMES["dark by the device"]) == colours(SCHEMES["dark by switch"])
