"""Sums of three-point estimates, by exact arithmetic."""

import math

import pytest

from procbuilder.model.threepoint import added

CRITICAL = [(5.0, 8.0, 17.0), (3.0, 5.0, 7.0), (4.0, 6.0, 8.0), (3.0, 4.0, 5.0)]
"""The critical path of a published solved problem on project management: 24 days, variance 5."""


def test_sum_has_an_inner_and_an_outer_range() -> None:
    """Distances to the likely 23 are 3, 2, 2, 1 and 9, 2, 2, 1: √18 and √90 if independent, 8 and 14 at worst."""
    total = added(CRITICAL)
    assert (total.likely, total.worst) == (23, (15, 37))
    assert total.usual == (pytest.approx(23 - math.sqrt(18)), pytest.approx(23 + math.sqrt(90)))
