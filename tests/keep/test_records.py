"""Records survive being written as JSON."""

import json
from fractions import Fraction

import pytest

from procbuilder.keep.records import restored, stored
from procbuilder.model.footage import Choice, Cut, Heard, Oddity, PacketFacts, Reason, Recording, Remark, Weakness, Why
from procbuilder.model.stretch import Stretch

SHORT = Stretch(Fraction(1001, 30), Fraction(40))

TURNED = Remark(Oddity.TURNED, (Fraction(90),))

RECORDS = [
    Recording(
        "strip",
        "recordings/a.mp4",
        "ab",
        Fraction(1, 3),
        640,
        360,
        audio=None,
        remarks=(TURNED,),
    ),
    Recording("strip", "recordings/a.mp4", "ab", Fraction(5), 640, 360, audio=Fraction(7, 2)),
    PacketFacts(
        Fraction(1), Fraction(1, 30), frozen=(SHORT,), candidates=(Fraction(1, 7),), speed=None, begun="2026-01-01"
    ),
    Heard((SHORT, Stretch(Fraction(50), Fraction(51))), ()),
    Cut(Fraction(3, 25), jump=True),
    Choice("strip", Fraction(2), Reason(Why.CALM, Fraction(1), 98), (Weakness.DARK,)),
]


@pytest.mark.parametrize("record", RECORDS, ids=lambda record: type(record).__name__)
def test_a_record_comes_back_as_it_was(record: object) -> None:
    assert restored(type(record), json.loads(json.dumps(stored(record)))) == record


def test_what_was_written_for_another_kind_is_refused() -> None:
    with pytest.raises(KeyError, match="reason"):
        restored(Choice, stored(Cut(Fraction(1))) | {"recording": "strip"})
