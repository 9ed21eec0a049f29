"""Three-point estimates against published examples, and against scipy, a general-purpose library."""

import math

import pytest
from scipy import stats

from procbuilder.model.threepoint import added, beta_shape, beta_variance, chance_within, classic_variance, mean

CRITICAL = [(5.0, 8.0, 17.0), (3.0, 5.0, 7.0), (4.0, 6.0, 8.0), (3.0, 4.0, 5.0)]
"""The critical path of a published solved problem on project management: 24 days, variance 5."""


def test_solved_problem_of_four_activities() -> None:
    """Means 9, 5, 6, 4; variances 4, .444, .444, .111; P(28 days) = .9633 by the table (z 1.79), .96318 exactly."""
    assert [mean(each) for each in CRITICAL] == [9, 5, 6, 4]
    variances = [classic_variance(each) for each in CRITICAL]
    assert [round(each, 3) for each in variances] == [4, 0.444, 0.444, 0.111]
    assert sum(variances) == pytest.approx(5)
    assert chance_within(28, 24, sum(variances)) == pytest.approx(0.96318, abs=5e-6)
    assert stats.norm.cdf(round(4 / math.sqrt(5), 2)) == pytest.approx(0.9633, abs=5e-5)


def test_mean_40_spread_5() -> None:
    """A published exercise: z = 2, P = .97725."""
    assert chance_within(50, 40, 25) == pytest.approx(0.97725, abs=5e-6)


def test_table_of_six_activities() -> None:
    """Inputs as published on a project-management site; means and variances by exact arithmetic."""
    rows = [(2, 5, 8), (1, 2, 9), (0.25, 0.5, 3.75), (1, 1, 7), (1, 2, 9), (1, 3, 11)]
    assert [mean(row) for row in rows] == [5, 3, 1, 2, 3, 4]
    assert [round(classic_variance(row), 3) for row in rows] == [1, 1.778, 0.340, 1, 1.778, 2.778]


def test_sixteen_weeks() -> None:
    """15 weeks, variance 3.11 (Heizer and Render, from memory): .7157 by the table z = .57, .7146 exactly."""
    assert chance_within(16, 15, 3.11) == pytest.approx(0.7146, abs=1e-4)
    assert chance_within(15 + 0.57, 15, 1) == pytest.approx(0.7157, abs=5e-5)
    assert chance_within(19.1, 15, 3.11) == pytest.approx(0.99, abs=5e-4)


@pytest.mark.parametrize("deadline", [18.0, 22.0, 24.0, 26.5, 28.0, 31.0])
def test_chance_is_that_of_scipy(deadline: float) -> None:
    assert chance_within(deadline, 24, 5) == pytest.approx(stats.norm(24, math.sqrt(5)).cdf(deadline), rel=1e-12)


@pytest.mark.parametrize("points", [*CRITICAL, (1.0, 1.0, 7.0), (2.0, 9.0, 9.0), (0.25, 0.5, 3.75)])
def test_beta_moments_are_those_of_scipy(points: tuple[float, float, float]) -> None:
    alpha, beta = beta_shape(points)
    outside = stats.beta(alpha, beta, loc=points[0], scale=points[2] - points[0])
    assert mean(points) == pytest.approx(outside.mean(), rel=1e-12)
    assert beta_variance(points) == pytest.approx(outside.var(), rel=1e-12)


def test_the_two_variances_are_not_equal() -> None:
    """(5, 8, 17): α 2, β 4, mean 9; 4.5714 for the beta distribution, 4 in the classic form, 6.5 for a triangle."""
    points = CRITICAL[0]
    assert beta_shape(points) == (2, 4)
    assert beta_variance(points) == pytest.approx(4.5714, abs=5e-5)
    assert classic_variance(points) == 4
    triangle = stats.triang((8 - 5) / 12, loc=5, scale=12)
    assert (triangle.mean(), triangle.var()) == (pytest.approx(10), pytest.approx(6.5))


def test_sum_has_an_inner_and_an_outer_range() -> None:
    """Distances to the likely 23 are 3, 2, 2, 1 and 9, 2, 2, 1: √18 and √90 if independent, 8 and 14 at worst."""
    total = added(CRITICAL)
    assert (total.likely, total.worst) == (23, (15, 37))
    assert total.usual == (pytest.approx(23 - math.sqrt(18)), pytest.approx(23 + math.sqrt(90)))
