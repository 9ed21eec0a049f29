"""Tools, supplies and parts with their totals and steps."""

from decimal import Decimal
from fractions import Fraction

from procbuilder.infer.lexicon import load
from procbuilder.infer.lists import parts, supplies, tools
from procbuilder.model.edition import ItemLine
from procbuilder.model.origin import Origin, OriginKind
from procbuilder.model.quantity import Quantity
from tests.infer.written import written

WORDS = load().words
TEXT = """
## Before you start

- Tool: torque wrench; 2 x axle stand
- Supply: bearing grease, 60 g
- Part: 1 x bearing kit, new

## Work

### Raise it

- Tool: axle stands; trolley jack

### Prise off the cap

- Tool: flat bar (said strip 0:44)
- Supply: cleaner; bearing grease, 20 g

### Clean the old pin

- Part: split pin

### Fit the kit

- Tool: 1 x axle stand; flat bar
- Supply: bearing grease, 50 g
- Part: bearing kit, new; 2 x split pin, new
"""


def test_tools_stand_in_order_of_first_use_with_the_largest_count() -> None:
    """Those that no step names stand behind; a plural is the same tool."""
    assert tools(written(TEXT), WORDS) == (
        ItemLine("axle stand", Quantity(Decimal(2)), False, (1, 4)),
        ItemLine("trolley jack", None, False, (1,)),
        ItemLine("flat bar", None, False, (2, 4), Origin(OriginKind.SAID, "strip", Fraction(44))),
        ItemLine("torque wrench", None, False, ()),
    )


def test_supplies_are_added_up_over_the_steps() -> None:
    """The steps use 70 g, the front list says 60 g: the larger amount must be at hand."""
    assert supplies(written(TEXT), WORDS) == (
        ItemLine("bearing grease", Quantity(Decimal(70), "g"), False, (2, 4)),
        ItemLine("cleaner", None, False, (2,)),
    )


def test_front_total_stands_when_the_steps_use_less() -> None:
    text = TEXT.replace("60 g", "100 g")
    assert supplies(written(text), WORDS)[0] == ItemLine("bearing grease", Quantity(Decimal(100), "g"), False, (2, 4))


def test_new_parts_are_marked_and_kept_apart_from_used_ones() -> None:
    assert parts(written(TEXT), WORDS) == (
        ItemLine("bearing kit", Quantity(Decimal(1)), True, (4,)),
        ItemLine("split pin", None, False, (3,)),
        ItemLine("split pin", Quantity(Decimal(2)), True, (4,)),
    )


def test_none_is_an_empty_list() -> None:
    procedure = written("""
        ## Before you start
        - Tool: none
        - Supply: none
        - Part: none
        """)
    assert (tools(procedure, WORDS), supplies(procedure, WORDS), parts(procedure, WORDS)) == ((), (), ())
