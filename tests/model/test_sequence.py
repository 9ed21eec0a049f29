"""Orders of tightening against published ones.

Flanges: the legacy cross pattern of ASME PCC-1 (table of sequences for 4 to 24 bolts), written down from memory.
Road wheels with five studs: the star of every second one, common practice. Cylinder head with ten bolts in two rows:
the usual picture of engine manuals, from the middle outwards and crosswise, from memory.
"""

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from procbuilder.model.sequence import FEWEST, MOST, Shape, spiral, star

CROSS_PATTERN = {
    4: "1-3-2-4",
    8: "1-5-3-7 2-6-4-8",
    12: "1-7-4-10 2-8-5-11 3-9-6-12",
    16: "1-9-5-13 3-11-7-15 2-10-6-14 4-12-8-16",
    20: "1-11-6-16 3-13-8-18 5-15-10-20 2-12-7-17 4-14-9-19",
    24: "1-13-7-19 4-16-10-22 2-14-8-20 5-17-11-23 3-15-9-21 6-18-12-24",
}


@pytest.mark.parametrize("count", CROSS_PATTERN)
def test_a_flange_is_tightened_in_the_published_cross_pattern(count: int) -> None:
    assert star(count).order == tuple(int(number) for number in CROSS_PATTERN[count].replace(" ", "-").split("-"))


@pytest.mark.parametrize(
    ("count", "order"),
    [(5, (1, 3, 5, 2, 4)), (6, (1, 4, 2, 5, 3, 6)), (10, (1, 6, 3, 8, 5, 10, 2, 7, 4, 9))],
)
def test_wheels_are_tightened_crosswise(count: int, order: tuple[int, ...]) -> None:
    assert star(count).order == order


@pytest.mark.parametrize(
    ("rows", "columns", "picture"),
    [
        (2, 5, "7 3 1 5 9 / 10 6 2 4 8"),
        (2, 3, "3 1 5 / 6 2 4"),
        (1, 5, "4 2 1 3 5"),
        (2, 4, "5 1 3 7 / 8 4 2 6"),
    ],
)
def test_a_head_or_cover_is_tightened_from_the_middle_outwards(rows: int, columns: int, picture: str) -> None:
    assert spiral(rows, columns).turns == tuple(int(turn) for turn in picture.replace("/", " ").split())


@given(st.integers(FEWEST, MOST))
def test_each_fastener_has_one_turn_and_even_circles_go_in_opposite_pairs(count: int) -> None:
    order = star(count).order
    assert sorted(order) == list(range(1, count + 1))
    if count % 2 == 0:
        pairs = zip(order[::2], order[1::2], strict=True)
        assert all(abs(one - other) == count // 2 for one, other in pairs)


@given(st.integers(1, 6), st.integers(3, 10))
def test_no_turn_of_a_spiral_lies_nearer_to_the_middle_than_the_one_before(rows: int, columns: int) -> None:
    sequence = spiral(rows, columns)
    assert sorted(sequence.order) == list(range(1, rows * columns + 1))
    along = [abs(sequence.places[number - 1][0 if columns >= rows else 1] - 0.5) for number in sequence.order]
    assert all(later >= before - 1e-9 for before, later in pairwise(along))


def test_places_lie_clockwise_from_the_top_or_row_by_row() -> None:
    circle = [(round(x, 3), round(y, 3)) for x, y in star(4).places]
    assert circle == [(0.5, 0), (1, 0.5), (0.5, 1), (0, 0.5)]
    assert spiral(2, 3).places == ((0, 0), (0.5, 0), (1, 0), (0, 1), (0.5, 1), (1, 1))
    assert spiral(1, 3).places[0] == (0, 0.5)
    assert (star(4).shape, spiral(1, 3).shape) == (Shape.CIRCLE, Shape.ROWS)


@pytest.mark.parametrize("count", [0, 2, 65])
def test_two_have_no_order_and_too_many_no_picture(count: int) -> None:
    with pytest.raises(ValueError, match=f"{count} fasteners are not 3 to 64"):
        star(count)
