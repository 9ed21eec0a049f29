"""What is left of a span when parts of it are skipped."""

from fractions import Fraction

import pytest

from procbuilder.media.stretches import kept, room, tail
from procbuilder.model.timecode import Span


def _spans(*pairs: tuple[int, int], recording: str = "strip") -> tuple[Span, ...]:
    return tuple(Span(recording, Fraction(start), Fraction(end)) for start, end in pairs)


@pytest.mark.parametrize(
    ("skips", "left"),
    [
        ((), ((10, 20),)),
        (((12, 14),), ((10, 12), (14, 20))),
        (((15, 17), (11, 12)), ((10, 11), (12, 15), (17, 20))),
        (((11, 15), (13, 17)), ((10, 11), (17, 20))),
        (((11, 17), (13, 15)), ((10, 11), (17, 20))),
        (((5, 12),), ((12, 20),)),
        (((18, 30),), ((10, 18),)),
        (((0, 30),), ()),
        (((0, 10), (20, 30)), ((10, 20),)),
    ],
)
def test_kept_leaves_the_rest_in_order(skips: tuple[tuple[int, int], ...], left: tuple[tuple[int, int], ...]) -> None:
    """Skips may overlap, stand in any order, and reach beyond the span."""
    assert kept(_spans((10, 20))[0], _spans(*skips)) == _spans(*left)


def test_kept_skip_of_another_recording_does_not_count() -> None:
    """The same times of another recording are other footage."""
    assert kept(_spans((10, 20))[0], _spans((12, 14), recording="refit")) == _spans((10, 20))


def test_tail_counts_footage_not_time() -> None:
    """Five seconds of footage from the end may lie in two stretches."""
    assert tail(_spans((0, 10), (20, 23)), Fraction(5)) == _spans((8, 10), (20, 23))
    assert tail(_spans((0, 2)), Fraction(5)) == _spans((0, 2))


def test_room_ends_where_another_step_or_skip_lies() -> None:
    """Spans that overlap leave no room on that side; those of other recordings do not count."""
    (span,) = _spans((10, 20))
    assert room(span, Fraction(60), [span]) == _spans((0, 60))[0]
    assert room(span, Fraction(60), [span, *_spans((0, 8), (23, 30), (40, 50))]) == _spans((8, 23))[0]
    assert room(span, Fraction(60), _spans((5, 12), (19, 25))) == span
    assert room(span, Fraction(60), _spans((5, 9), recording="refit")) == _spans((0, 60))[0]
