"""Observed, normal and standard time, and numbers of readings, against published worked examples.

Inputs and formulas as printed in the sources named beside each; where a source prints a slip, it is said.
"""

from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction
from statistics import fmean, median, stdev

import pytest

from procbuilder.model.workstudy import (
    Allowance,
    Convention,
    Element,
    element,
    readings_for_error,
    readings_for_share,
    unusual,
    whole_readings,
)

TENTHS_OF_READING = (
    "23 20 21 19 22 19 21 23 20 23", "13 14 16 15 15 13 16 17 16 17", "16 21 18 17 18 19 17 18 19 20",
    "10 10 9 10 9 12 9 11 10 9", "12 11 10 13 12 11 13 12 11 13",
)  # fmt: skip
"""Five elements, ten cycles, in hundredths of a minute: a published course example."""


def numbers(text: str) -> tuple[Decimal, ...]:
    return tuple(map(Decimal, text.split()))


def printed(value: Decimal | Fraction | float, digits: str) -> Decimal:
    """Rounded half up to the digits of a printed figure."""
    exact = Decimal(value.numerator) / value.denominator if isinstance(value, Fraction) else Decimal(value)
    return exact.quantize(Decimal(digits), ROUND_HALF_UP)


def test_letter_mailing() -> None:
    """Heizer and Render, Operations Management, chapter 10, example 2: 15 % of the day, standard 18.07 min.

    The readings 21 and 5 are dropped before averaging.
    """
    elements = [
        element(numbers("8 10 9 21 11"), Decimal("1.20")),
        element(numbers("2 3 2 1 3"), Decimal("1.05")),
        element(numbers("2 1 5 2 1"), Decimal("1.10")),
    ]
    assert [each.dropped for each in elements] == [(Decimal(21),), (), (Decimal(5),)]
    assert [each.observed for each in elements] == [Decimal("9.5"), Decimal("2.2"), Decimal("1.5")]
    assert [each.normal for each in elements] == [Decimal("11.4"), Decimal("2.31"), Decimal("1.65")]
    total = sum((each.normal for each in elements), Decimal(0))
    assert total == Decimal("15.36")
    share = Decimal("0.15")
    assert printed(Allowance(share, Convention.DAY).standard(total), "0.01") == Decimal("18.07")
    assert printed(Allowance(share, Convention.JOB).standard(total), "0.01") == Decimal("17.66")


def test_envelopes() -> None:
    """The same book, problem 10.23: 12 % of the day, standard 5.4 min."""
    elements = [
        element(numbers("2.5 3.5 2.8 2.1 2.6 3.3"), Decimal("0.85")),
        element(numbers(".8 .8 .6 .8 3.1 .7"), Decimal(1)),
        element(numbers(".4 .5 1.9 .3 .6 .5"), Decimal("0.95")),
        element(numbers("1 2.9 .9 1 4.4 .9"), Decimal("1.25")),
    ]
    assert [each.dropped for each in elements] == [(), numbers("3.1"), numbers("1.9"), numbers("2.9 4.4")]
    assert [each.observed for each in elements] == list(numbers("2.8 .74 .46 .95"))
    assert [each.normal for each in elements] == list(numbers("2.38 .74 .437 1.1875"))
    standard = Allowance(Decimal("0.12"), Convention.DAY).standard(sum((e.normal for e in elements), Decimal(0)))
    assert (printed(standard, "0.01"), printed(standard, "0.1")) == (Decimal("5.39"), Decimal("5.4"))


def test_allowance_as_share_of_the_job_time() -> None:
    """Five readings of 20 s on average, rated 120 %, 20 % of job time: 20, 24, 28.8 s (a published example)."""
    one = element(numbers("27 19 20 21 13"), Decimal("1.2"))
    assert (one.dropped, one.observed, one.normal) == ((), Decimal(20), Decimal(24))
    assert Allowance(Decimal("0.2"), Convention.JOB).standard(one.normal) == Decimal("28.8")


def test_five_elements_of_ten_cycles() -> None:
    """Sample spreads as published; 110 % and 15 % by both conventions by exact arithmetic."""
    elements = [Element(numbers(row), Decimal("1.1")) for row in TENTHS_OF_READING]
    spreads = [printed(stdev(each.readings), "0.0001") for each in elements]
    assert spreads == list(numbers("1.5951 1.4757 1.4944 0.9944 1.0328"))
    assert sum(each.observed for each in elements) == Decimal("76.3")
    normal = sum((each.normal for each in elements), Decimal(0))
    assert normal == Decimal("83.93")
    assert printed(Allowance(Decimal("0.15"), Convention.JOB).standard(normal), "0.01") == Decimal("96.52")
    assert printed(Allowance(Decimal("0.15"), Convention.DAY).standard(normal), "0.01") == Decimal("98.74")


def test_unusual_is_beyond_twice_or_half_the_median_and_not_at_it() -> None:
    assert unusual(numbers("2 4 4 4 8")) == ()
    assert unusual(numbers("1.9 4 4 4 8.1")) == numbers("1.9 8.1")


@pytest.mark.parametrize(("share", "whole"), [("1", "1"), ("-0.01", "-0.01")])
def test_an_allowance_is_a_share(share: str, whole: str) -> None:
    with pytest.raises(ValueError, match=f"an allowance is a share from 0 to below 1, not {whole}"):
        Allowance(Decimal(share), Convention.DAY)


@pytest.mark.parametrize(
    ("readings", "share", "needed", "whole"),
    [
        ("7 6 7 7 6", Fraction(5, 100), "8.815", 9),  # the set of the ILO's introduction to work study
        ("8 7 8 9 7", Fraction(10, 100), "3.682", 4),  # a web example prints 3.87; its own formula gives 3.68
        ("8 7 8 9 7", Fraction(5, 100), "14.727", 15),
    ],
)
def test_readings_for_95_percent(readings: str, share: Fraction, needed: str, whole: int) -> None:
    """N = (40 · √(n·Σx² − (Σx)²) / Σx)² for ±5 %, with 20 in place of 40 for ±10 %."""
    exact = readings_for_share(numbers(readings), share)
    assert (printed(exact, "0.001"), whole_readings(exact)) == (Decimal(needed), whole)


def test_readings_for_an_error_of_one_unit() -> None:
    """The five elements again, z = 1.96, sample spread: exact arithmetic on published spreads."""
    needed = [readings_for_error(numbers(row), error=1) for row in TENTHS_OF_READING]
    assert [printed(each, "0.01") for each in needed] == list(numbers("9.77 8.37 8.58 3.80 4.10"))
    assert [whole_readings(each) for each in needed] == [10, 9, 9, 4, 5]


def test_one_film_can_never_justify_five_percent() -> None:
    """Two sets of open annotations: one repair in ten recordings, and one step by six people."""
    repair = numbers("103 123 103 355 68 68 135 168 115 30")
    step = numbers("39.216 34.688 26.834 31.799 51.806 24.641")
    assert (fmean(repair), median(repair), printed(stdev(repair), "0.01")) == (126.8, 109, Decimal("89.08"))
    assert printed(readings_for_share(repair, Fraction(5, 100)), "0.1") == Decimal("710.6")
    assert (printed(fmean(step), "0.001"), printed(stdev(step), "0.001")) == (Decimal("34.831"), Decimal("9.843"))
    assert printed(readings_for_share(step, Fraction(5, 100)), "0.1") == Decimal("106.5")
