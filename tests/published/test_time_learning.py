"""Learning curves against printed tables and solutions, to the printed digit.

Bold entries of textbook tables (a chapter 13 solutions manual; Stevenson, supplement 7S) are named; the rest
of the table is exact arithmetic.
"""

import math
from decimal import ROUND_HALF_UP, Decimal

import pytest

from procbuilder.model.learning import exponent, unit_time

TABLE = """
2   .8000 1.800  .8500 1.850  .9000 1.900
4   .6400 3.142  .7225 3.345  .8100 3.556
5   .5956 3.738  .6857 4.031  .7830 4.339
8   .5120 5.346  .6141 5.936  .7290 6.574
10  .4765 6.315  .5828 7.116  .7047 7.994
18  .3944 9.716  .5078 11.405 .6445 13.334
20  .3812 10.485 .4954 12.402 .6342 14.608
50  .2838 20.122 .3996 25.513 .5518 32.142
100 .2271 32.651 .3397 43.754 .4966 58.141
"""
"""Number; then time of that unit and of all so far at 80, 85 and 90 %, the first unit taking 1 (unit model)."""


@pytest.mark.parametrize("row", TABLE.strip().splitlines())
def test_unit_model_table(row: str) -> None:
    number, *cells = row.split()
    found = []
    for rate in (0.80, 0.85, 0.90):
        found += [f"{unit_time(1, int(number), rate):.4f}"[1:], f"{_total(1, int(number), rate):.3f}"]
    assert found == cells


def test_exponents() -> None:
    assert [f"{exponent(rate):.6f}" for rate in (0.80, 0.85, 0.90)] == ["-0.321928", "-0.234465", "-0.152003"]


def test_solutions_manual() -> None:
    """300 h at 80 %: fifth unit 178.7 h, five 1 121.4 h (factor 3.738), eighteen 2 914.8 h (factor 9.716)."""
    assert f"{unit_time(300, 5, 0.8):.1f}" == "178.7"
    assert f"{300 * round(_total(1, 5, 0.8), 3):.1f}" == "1121.4"
    assert f"{300 * round(_total(1, 18, 0.8), 3):.1f}" == "2914.8"


@pytest.mark.parametrize(
    ("first", "rate", "numbers", "digits", "printed"),
    [
        (75, 0.85, (1, 2), 2, ["75.00", "63.75"]),
        (15, 0.70, (1, 2, 3), 3, ["15.000", "10.500", "8.523"]),
        (60, 0.95, (1, 2, 3, 4), 2, ["60.00", "57.00", "55.32", "54.15"]),
    ],
)
def test_unit_times_of_the_manual(
    first: float, rate: float, numbers: tuple[int, ...], digits: int, printed: list[str]
) -> None:
    assert [f"{unit_time(first, number, rate):.{digits}f}" for number in numbers] == printed


def test_manual_with_factors_of_three_digits() -> None:
    """75 min at 85 %: the manual prints 54.23 and 46.05 min, from the factors .723 and .614."""
    factors = [
        Decimal(f"{unit_time(1, number, 0.85):.9f}").quantize(Decimal("0.001"), ROUND_HALF_UP) for number in (4, 8)
    ]
    assert factors == [Decimal("0.723"), Decimal("0.614")]
    times = [(75 * factor).quantize(Decimal("0.01"), ROUND_HALF_UP) for factor in factors]
    assert times == [Decimal("54.23"), Decimal("46.05")]


def test_three_units_at_70_percent() -> None:
    assert f"{_total(15, 3, 0.7):.3f}" == "34.023"


def test_stevenson_20th_unit_at_90_percent() -> None:
    """Printed .634. The same solution prints .583 for the 10th at "80 %": that is its 85 % column, 80 % is .477."""
    assert f"{unit_time(1, 20, 0.9):.3f}" == "0.634"
    assert (f"{unit_time(1, 10, 0.85):.3f}", f"{unit_time(1, 10, 0.80):.3f}") == ("0.583", "0.477")


def test_the_unit_model_is_not_the_cumulative_average_one() -> None:
    """80 %, ten units together: 6.315; by the cumulative-average model they would take 4.765."""
    assert f"{_total(1, 10, 0.8):.3f}" == "6.315"


def _total(first: float, number: int, rate: float) -> float:
    return math.fsum(unit_time(first, each, rate) for each in range(1, number + 1))
