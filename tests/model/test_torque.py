"""Torques as typed: stages, ranges, units; what is read is what was written, and nothing is made up."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from procbuilder.model.torque import NEWTON_METRES, Stage, TorqueUnit, read_torque

NUMBERS = st.decimals(min_value=1, max_value=900, places=1).map(lambda number: number.normalize() + 0)


@st.composite
def typed(draw: st.DrawFn) -> Stage:
    low = draw(NUMBERS)
    high = draw(st.sampled_from([low, low + draw(st.integers(1, 50))]))
    return Stage(low, high, draw(st.sampled_from(list(TorqueUnit))))


@given(st.lists(typed(), min_size=1, max_size=4), st.sampled_from([" then ", ", ", " + ", "; then "]))
def test_what_is_written_is_what_is_read(told: list[Stage], between: str) -> None:
    text = between.join(map(str, told))
    assert read_torque(text).stages == tuple(told)
    assert read_torque(text).units == {stage.unit for stage in told}


@given(typed())
def test_the_other_unit_is_the_same_torque_rounded(one: Stage) -> None:
    shown = read_torque(str(one)).in_other_unit
    if not one.is_torque:
        assert shown == ()
        return
    (other,) = shown
    exact = one.newton_metres[0] / NEWTON_METRES[other.unit]
    step = Fraction(1) if exact >= 10 else Fraction(1, 10)
    assert abs(exact - Fraction(other.low)) <= step / 2
    metric = one.unit in (TorqueUnit.NEWTON_METRE, TorqueUnit.NEWTON_CENTIMETRE, TorqueUnit.KILONEWTON_METRE)
    assert (other.unit is TorqueUnit.NEWTON_METRE) is not metric


@given(st.text(max_size=60))
def test_no_text_breaks_the_reading(text: str) -> None:
    read = read_torque(text)
    assert all(stage.low >= 0 for stage in (*read.stages, *read.in_other_unit))


@pytest.mark.parametrize(
    ("text", "read"),
    [
        ("15 then 30 N·m", ["15 N·m", "30 N·m"]),
        ("20 N·m, then 90 degrees, then 45°", ["20 N·m", "90°", "45°"]),
        ("52±5 N·m", ["52 ± 5 N·m"]),
        ("20 to 25 Nm", ["20–25 N·m"]),
        ("2.5 kgf·cm", ["2.5 kgf·cm"]),
        ("1.2 kN·m", ["1.2 kN·m"]),
        ("133 in-lb", ["133 lbf·in"]),
        ("M8, 25 N·m", ["25 N·m"]),
        ("15 dann 30 Nm, dann 90 Grad", ["15 N·m", "30 N·m", "90°"]),
        ("20 bis 25 Newtonmeter", ["20–25 N·m"]),
        ("20 Nm, danach 1 Umdrehung", ["20 N·m", "1 turn"]),
        ("half a turn", []),
        ("hand-tight", []),
        ("25", []),
    ],
)
def test_forms_in_which_torques_are_typed(text: str, read: list[str]) -> None:
    assert [str(stage) for stage in read_torque(text).stages] == read


def test_the_highest_value_of_a_range_counts() -> None:
    assert read_torque("20-25 N·m then 90°").newton_metres == (25,)
    assert read_torque("52±5 N·m").newton_metres == (57,)
