"""Lognormal times and their sums against scipy, a general-purpose library, and exact arithmetic."""

import math

import pytest
from scipy import stats

from procbuilder.model.lognormal import Lognormal, added


@pytest.mark.parametrize("part", [Lognormal(0, 0.5), Lognormal(2.2, 0.2), Lognormal(-1, 1.3)])
def test_moments_and_quantiles_are_those_of_scipy(part: Lognormal) -> None:
    same = stats.lognorm(part.sigma, scale=math.exp(part.mu))
    assert (part.mean, part.variance) == (pytest.approx(same.mean()), pytest.approx(same.var()))
    assert [part.quantile(share) for share in (0.1, 0.5, 0.9)] == pytest.approx(list(same.ppf([0.1, 0.5, 0.9])))


def test_mean_9_spread_2() -> None:
    part = Lognormal.with_moments(9, 4)
    assert (f"{part.mu:.5f}", f"{part.sigma:.5f}") == ("2.17312", "0.21955")
    assert (part.mean, part.variance) == (pytest.approx(9), pytest.approx(4))


def test_sum_of_three() -> None:
    """Three times LN(0, 0.5): mean 3.39945, variance 1.09409, so μ 1.17838 and s .30076."""
    total = added([Lognormal(0, 0.5)] * 3)
    assert (f"{total.mean:.5f}", f"{total.variance:.5f}") == ("3.39945", "1.09409")
    assert (f"{total.mu:.5f}", f"{total.sigma:.5f}") == ("1.17838", "0.30076")


def test_published_critical_path_with_lognormal_steps() -> None:
    """Steps of 9, 5, 6 and 4 days with variances 4, 4/9, 4/9 and 1/9: median 23.897, 90 % within 26.920.

    A normal total gives 26.866.
    """
    total = added([Lognormal.with_moments(*each) for each in ((9, 4), (5, 4 / 9), (6, 4 / 9), (4, 1 / 9))])
    assert (f"{total.quantile(0.5):.3f}", f"{total.quantile(0.9):.3f}") == ("23.897", "26.920")
    assert f"{stats.norm(24, math.sqrt(5)).ppf(0.9):.3f}" == "26.866"
