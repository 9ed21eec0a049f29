"""Which turns a typed order of tightening means. Orders themselves: tests/model/test_sequence.py."""

import pytest

from procbuilder.infer.lexicon import load
from procbuilder.infer.torques import torques
from procbuilder.model.sequence import Sequence, spiral, star
from tests.infer.written import written


def _sequence(torque: str, off: str = "wheel | by: 4 x wheel nut, 19 mm") -> Sequence | None:
    text = f"## Work\n### Take it off\n- Off: {off}\n### Tighten the nuts\n- Torque: {torque}\n"
    [row] = torques(written(text), load())
    return row.sequence


@pytest.mark.parametrize("order", ["cross", "crosswise, two stages", "star", "in opposite pairs"])
def test_a_star_is_drawn_for_as_many_as_came_off(order: str) -> None:
    assert _sequence(f"wheel nuts | look up | D1 | order: {order}") == star(4)


def test_a_count_typed_with_the_torque_comes_first() -> None:
    assert _sequence("5 x wheel nut | 90 N·m | order: star") == star(5)


def test_rows_are_drawn_only_as_typed() -> None:
    assert _sequence("head bolts | 25 N·m | order: spiral 2 x 5") == spiral(2, 5)
    assert _sequence("head bolts | 25 N·m | order: from the middle, 2 rows of 4") == spiral(2, 4)
    assert _sequence("10 x head bolt | 25 N·m | order: from the middle") is None


@pytest.mark.parametrize(
    "torque",
    ["wheel nuts | 90 N·m", "cover bolts | 9 N·m | order: cross", "2 x bolt | 9 N·m | order: cross",
     "wheel nuts | 90 N·m | order: see the plate"],
)  # fmt: skip
def test_nothing_is_drawn_where_order_or_number_is_not_known(torque: str) -> None:
    assert _sequence(torque) is None


def test_a_count_is_found_where_the_thing_is_slackened_too() -> None:
    text = "## Work\n### Slacken\n- Slacken: 4 x wheel nut\n### Tighten\n- Torque: wheel nuts | 90 N·m | order: cross\n"
    assert torques(written(text), load())[0].sequence == star(4)


def test_two_different_counts_are_no_count() -> None:
    assert _sequence("wheel nuts | 90 N·m | order: cross", "wheel | by: 4 x wheel nut; 5 x wheel nut") is None
