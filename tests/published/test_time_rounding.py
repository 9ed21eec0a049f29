"""Rounding of labour time against published habit and exact arithmetic.

Labour is quoted in tenths of an hour, six minutes each: common practice, seen in several trade
texts. The figures below are those of exact arithmetic, rounded up; a sum is rounded once.
"""

from decimal import Decimal
from fractions import Fraction

import pytest

from procbuilder.infer.times import hours


@pytest.mark.parametrize(
    ("minutes", "tenths"),
    [(0, "0.0"), (1, "0.1"), (3, "0.1"), (5, "0.1"), (6, "0.1"), (9, "0.2"), (10, "0.2"), (21, "0.4"), (33, "0.6"),
     (45, "0.8"), (61, "1.1")],
)  # fmt: skip
def test_minutes_are_rounded_up_to_tenths_of_an_hour(minutes: int, tenths: str) -> None:
    """Binary rounding to the nearest gives 0.1, 0.3 and 0.8 for 9, 21 and 45 minutes."""
    assert hours(Fraction(minutes)) == Decimal(tenths)


def test_sum_is_rounded_once() -> None:
    """Three steps of 4 minutes are 12 minutes: 0.2 h, not three times 0.1 h."""
    assert hours(Fraction(3 * 4)) == Decimal("0.2")
    assert 3 * hours(Fraction(4)) == Decimal("0.3")


def test_exact_tenth_is_not_pushed_up() -> None:
    """Thirty-six steps of two minutes are 72 minutes, 1.2 h; added up as binary hours they become 1.3."""
    assert hours(sum((Fraction(2) for _ in range(36)), Fraction(0))) == Decimal("1.2")
    assert hours(Fraction(42)) == Decimal("0.7")
    assert hours(Fraction(42) + Fraction(1, 1000)) == Decimal("0.8")


def test_thirds_of_a_minute_add_up_exactly() -> None:
    """Eighteen clips of twenty seconds are six minutes: one tenth."""
    assert hours(sum((Fraction(20, 60) for _ in range(18)), Fraction(0))) == Decimal("0.1")
