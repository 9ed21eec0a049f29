"""Contrast of every pair of colours the page uses, computed by the formula of WCAG 2.2."""

import tomllib

import pytest

from procbuilder.model.signal import Signal
from procbuilder.publish import tokens
from tests.publish.blocks import TEMPLATES

SCHEMES = tomllib.loads((TEMPLATES / tokens.FILE).read_text(encoding="utf-8"))["schemes"]
PANELS = tokens.panels(TEMPLATES)


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


@pytest.mark.parametrize("scheme", SCHEMES)
def test_words_and_lines_can_be_seen_in_every_light(scheme: str) -> None:
    """1.4.6 for what is read at arm's length: 7; small words 4.5 (1.4.3); lines that mean something 3 (1.4.11)."""
    has = SCHEMES[scheme]
    assert set(has) == {"paper", "ink", "quiet", "tint", "rule", "link"}
    assert min(contrast(has["ink"], has[ground]) for ground in ("paper", "tint")) >= 7
    assert min(contrast(has[words], has[ground]) for words in ("quiet", "link") for ground in ("paper", "tint")) >= 4.5
    assert contrast(has["rule"], has["paper"]) >= 3


@pytest.mark.parametrize("signal", Signal)
def test_signal_words_stand_out_from_their_colour(signal: Signal) -> None:
    assert contrast(PANELS[signal].ink, PANELS[signal].ground) >= 4.5


def test_only_what_hurts_somebody_has_the_alert_sign() -> None:
    """ANSI Z535.6: NOTICE is for what is not related to injury, and carries no safety alert symbol."""
    assert [signal.value for signal in Signal if not PANELS[signal].alert] == ["NOTICE"]


def test_the_style_of_the_page_holds_every_token() -> None:
    style = tokens.style(TEMPLATES)
    assert ".warning { background: #ff7900; color: #000000; }" in style
    assert ".notice { background: #00539b; color: #ffffff; font-style: italic; }" in style
    assert style.count("--paper: #151515;") == 2


def test_no_other_file_holds_a_colour_of_a_signal_word() -> None:
    grounds = {panel.ground for panel in PANELS.values()}
    files = [path for path in TEMPLATES.rglob("*") if path.suffix in (".css", ".typ", ".html")]
    assert [path.name for path in files if any(ground in path.read_text(encoding="utf-8") for ground in grounds)] == []
