"""Syllables of words that stand in procedures, counted by hand."""

import pytest

from procbuilder.model.readability import syllables


@pytest.mark.parametrize(
    ("word", "count"),
    [("nut", 1), ("wheel", 1), ("remove", 2), ("bearing", 2), ("castle", 2), ("axle", 2), ("tightened", 2),
     ("slackened", 2), ("pulled", 1), ("torque", 1), ("tighten", 2), ("battery", 3), ("alternator", 4), ("M8", 1)],
)  # fmt: skip
def test_syllables(word: str, count: int) -> None:
    assert syllables(word) == count
