"""Lifting and vibration against published examples.

Lifting: worked examples of NIOSH 94-110 (rev. 9/2021), computed at full precision from the printed inputs; the printed
results are rounded at every step, so 34.9 and 15.2 lb of example 4 are 34.8 and 15.3 here. Vibration: HSE ready
reckoner (5 m/s² for 3 h) and Directive 2002/44/EC (action value 2.5, limit 5 m/s²).
"""

import pytest

from procbuilder.model.strain import ACTION, LIMIT, daily_exposure, team_limit, vibration_points, weight_limit


@pytest.mark.parametrize(
    ("example", "reach", "height", "travel", "factors", "pounds"),
    [
        ("4, package inspection, origin", 10, 22, 37, 0.88 * 0.95, 34.8),
        ("4, package inspection, destination", 20, 59, 37, 0.88, 15.3),
        ("1, punch-press stock, origin", 23, 15, 49, 0.95, 16.0),
        ("1, punch-press stock, destination", 23, 64, 49, 1.0, 14.1),
    ],
)
def test_recommended_weight_limit(
    example: str, reach: float, height: float, travel: float, factors: float, pounds: float
) -> None:
    """Inches and pounds as printed; the metric constants are rounded by themselves, up to 3.5 % off."""
    limit = weight_limit(reach * 2.54, height * 2.54, travel * 2.54)
    assert limit == pytest.approx(pounds * 0.45359237 / factors * 0.95, rel=0.035), example


@pytest.mark.parametrize(
    ("reach", "height", "travel", "share"),
    [(25, 75, 25, 1), (50, 75, 25, 25 / 50), (25, 175, 25, 1 - 0.003 * 100), (25, 75, 175, 0.82 + 4.5 / 175)],
)
def test_each_multiplier_in_metric_units(reach: float, height: float, travel: float, share: float) -> None:
    """23 kg, 25/H, 1 − 0.003·|V − 75| and 0.82 + 4.5/D of table 1; for a rare lift with a fair grip 0.95 of it."""
    assert weight_limit(reach, height, travel) == pytest.approx(23 * 0.95 * share)


@pytest.mark.parametrize(("reach", "height", "travel"), [(64, 75, 30), (30, 176, 30), (30, 75, 176)])
def test_outside_its_scope_there_is_no_limit(reach: float, height: float, travel: float) -> None:
    assert weight_limit(reach, height, travel) is None


@pytest.mark.parametrize(
    ("level", "minutes", "points", "exposure"),
    [(5, 180, 150, 3.06), (5, 120, 100, ACTION), (5, 480, 400, LIMIT), (10, 30, 100, 2.5), (4, 60, 32, 1.41)],
)
def test_vibration(level: float, minutes: float, points: float, exposure: float) -> None:
    assert vibration_points(level, minutes) == pytest.approx(points)
    assert round(daily_exposure([(level, minutes)]), 2) == exposure


@pytest.mark.parametrize(
    ("level", "action", "limit"),
    [
        (3, 333, 1333),
        (4, 187.5, 750),
        (6, 83.3, 333),
        (7, 61.2, 245),
        (8, 46.9, 187.5),
        (12, 20.8, 83.3),
        (15, 13.3, 53.3),
    ],
)
def test_minutes_to_action_value_and_limit(level: float, action: float, limit: float) -> None:
    assert daily_exposure([(level, action)]) == pytest.approx(ACTION, rel=0.002)
    assert daily_exposure([(level, limit)]) == pytest.approx(LIMIT, rel=0.002)


def test_points_of_several_tools_add_up() -> None:
    tools = [(5.0, 60.0), (5.0, 120.0)]
    assert sum(vibration_points(*tool) for tool in tools) == 150
    assert round(daily_exposure(tools), 2) == 3.06


@pytest.mark.parametrize(("people", "share"), [(1, 1), (2, 4 / 3), (3, 1.5), (4, 1.5)])
def test_a_team_carries_less_than_its_sum(people: int, share: float) -> None:
    """HSE L23: two persons about two thirds of the sum of what each can carry, three about half of it."""
    assert team_limit(12, people) == pytest.approx(12 * share)
