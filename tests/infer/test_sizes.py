"""Sizes, numbers and torques as they are spoken."""

import pytest

from procbuilder.infer.dictionary.said_tools import said_tools
from procbuilder.infer.dictionary.said_torque import has_bare_number, said_torque
from procbuilder.infer.dictionary.sizes import sizes
from procbuilder.infer.dictionary.wordbook import wordbook

BOOK = wordbook()


@pytest.mark.parametrize(
    ("words", "found"),
    [
        ("It's a thirteen mil.", ["13 mm hexagon"]),
        ("Ten millimetre heads.", ["10 mm hexagon"]),
        ("A 13mm spanner.", ["13 mm hexagon"]),
        ("Get an eight-mil on it.", ["8 mm hexagon"]),
        ("That's a thirteen.", ["13 mm hexagon"]),
        ("That's E12.", ["E12 bit"]),
        ("A T thirty.", ["T30 bit"]),
        ("Seven-sixteenths on the bowl.", ["7/16 in hexagon"]),
        ("Half-inch drive.", ["1/2 in drive drive"]),
        ("A half-inch socket.", ["1/2 in inch"]),
        ("Two half-inch nuts.", ["1/2 in hexagon"]),
        ("Twenty-four mil, then nineteen mil.", ["24 mm hexagon", "19 mm hexagon"]),
        ("There are six of them.", []),
        ("Half a turn.", []),
        ("About thirty minutes.", []),
    ],
)
def test_sizes(words: str, found: list[str]) -> None:
    assert [f"{size.text} {size.kind}" for size in sizes(words, BOOK)] == found


@pytest.mark.parametrize(
    ("words", "last", "earlier"),
    [
        ("thirteen, sorry, fifteen mil", "15 mm", ("13 mm",)),
        ("ten millimeter, uh, sorry, eight millimeter", "8 mm", ("10 mm",)),
        ("a twelve, no, a fourteen millimeter", "14 mm", ("12 mm",)),
        ("nineteen mil, no hang on, seventeen", "17 mm", ("19 mm",)),
        ("twelve, no thirteen, no fourteen mil", "14 mm", ("13 mm",)),
    ],
)
def test_of_a_correction_the_last_is_kept_with_the_earlier_beside_it(
    words: str, last: str, earlier: tuple[str, ...]
) -> None:
    found = sizes(words, BOOK)
    assert [size.text for size in found] == [last]
    assert found[0].corrected[-1:] == earlier


@pytest.mark.parametrize(
    ("words", "value"),
    [
        ("Tighten them to forty-five newton metres.", "45 N·m"),
        ("Torque it to eighteen foot-pounds.", "18 lbf·ft"),
        ("Twenty newton metres then ninety degrees.", "20 N·m then 90°"),
        ("Fifteen, then thirty newton metres.", "15 N·m then 30 N·m"),
        ("A hundred and ten newton metres.", "110 N·m"),
        ("Eight point five newton metres.", "8.5 N·m"),
        ("The two long bolts to 45 newton meters.", "45 N·m"),
        ("Tighten it to twenty-five.", ""),
        ("Ninety degrees more.", ""),
        ("Good and tight.", ""),
        ("Twenty newtons.", ""),
    ],
)
def test_torques_are_taken_with_their_unit_only(words: str, value: str) -> None:
    assert said_torque(words, BOOK) == value


def test_a_number_without_a_unit_is_noticed() -> None:
    assert has_bare_number("Tighten it to twenty-five.", BOOK)
    assert not has_bare_number("Tighten it to twenty-five newton metres.", BOOK)
    assert not has_bare_number("Turn it to the mark.", BOOK)


@pytest.mark.parametrize(
    ("words", "tools"),
    [
        ("Clean it with a wire brush.", ("wire brush",)),
        ("Use the breaker bar.", ("breaker bar",)),
        ("Undo it, it's a thirteen mil.", ("13 mm spanner or socket",)),
        ("Take them out with a five-sixteenths nut driver.", ("5/16 in nut driver",)),
        ("Two torx screws, T27.", ("T27 bit",)),
        ("If the spanner slips, stop.", ()),
    ],
)
def test_tools(words: str, tools: tuple[str, ...]) -> None:
    assert said_tools(words, BOOK) == tools
