"""The total that is stated in the front matter, and the number of people."""

from fractions import Fraction

import pytest

from procbuilder.read.stated import read_crew, stated_minutes


@pytest.mark.parametrize(
    ("text", "minutes"),
    [("1.5 h", 90), ("90 min", 90), ("1 h 30 min", 90), ("1 hour and 5 minutes", 65), ("1:30", 90), ("1:05 h", 65),
     ("0.1 h", 6), ("20 min.", 20)],
)  # fmt: skip
def test_stated_total_is_read(text: str, minutes: int) -> None:
    assert stated_minutes(text) == Fraction(minutes)


@pytest.mark.parametrize("text", ["", "about 1.5 h", "1.5", "1,5 h", "half a day", "1-2 h", "1:75", "h", "1 h 30"])
def test_stated_total_that_says_something_else_stays_words(text: str) -> None:
    assert stated_minutes(text) is None


@pytest.mark.parametrize(("text", "people"), [("2", 2), ("", 1), ("0", 1), ("a helper", 1)])
def test_people_are_counted(text: str, people: int) -> None:
    assert read_crew(text) == people
