"""Stretches of footage: what is joined, shared and left, against sets of whole seconds."""

import random
from fractions import Fraction

from procbuilder.model.stretch import Stretch, Stretches, joined, seconds, shared, without


def stretch(start: int, end: int) -> Stretch:
    return Stretch(Fraction(start), Fraction(end))


def drawn(chance: random.Random) -> list[Stretch]:
    starts = [chance.randrange(40) for _ in range(chance.randrange(6))]
    return [stretch(start, start + chance.randrange(9)) for start in starts]


def whole_seconds(stretches: "list[Stretch] | Stretches") -> set[int]:
    return {second for one in stretches for second in range(int(one.start), int(one.end))}


def test_lists_of_stretches_behave_as_sets() -> None:
    """Python's own sets of whole seconds give the same answers, for a thousand random pairs of lists."""
    chance = random.Random(4)
    for _ in range(1000):
        some, others = drawn(chance), drawn(chance)
        a, b = whole_seconds(some), whole_seconds(others)
        assert whole_seconds(joined(some)) == a
        assert whole_seconds(shared(some, others)) == a & b
        assert whole_seconds(without(some, others)) == a - b
        assert seconds(some) == len(a)


def test_joined_is_in_order_and_nothing_touches() -> None:
    assert joined([stretch(5, 7), stretch(1, 3), stretch(3, 4), stretch(9, 9)]) == (stretch(1, 4), stretch(5, 7))


def test_joined_closes_gaps_up_to_a_length() -> None:
    assert joined([stretch(1, 2), stretch(4, 5), stretch(8, 9)], Fraction(2)) == (stretch(1, 5), stretch(8, 9))
