"""What opens and what closes: each way of being open has its fields, and each field is one of the format."""

from procbuilder.model.fields import BY_NAME
from procbuilder.model.heard import Act
from procbuilder.model.ledger import Opening
from procbuilder.model.moves import CLOSED_BY, FIELD_OF, HANDLED, LEFT_OPEN, MOVES, OPENED_BY


def test_each_way_of_being_open_begins_and_ends_with_a_field() -> None:
    pairs = [(opening, OPENED_BY[opening], CLOSED_BY[opening]) for opening in Opening]
    assert pairs == [
        (Opening.OFF, "Off", "On"),
        (Opening.SLACKENED, "Slacken", "Torque"),
        (Opening.TEMPORARY, "For now", "Out again"),
        (Opening.STATE, "State", "Ends"),
    ]


def test_every_field_that_moves_something_is_one_of_the_format() -> None:
    assert [name for name in (*MOVES, *HANDLED, LEFT_OPEN) if BY_NAME[name.casefold()].name != name] == []


def test_every_act_that_opens_or_closes_has_its_field() -> None:
    assert set(FIELD_OF.values()) == set(MOVES)
    assert set(Act) - set(FIELD_OF) == {Act.RENEW, Act.CHECK, Act.WORK}
