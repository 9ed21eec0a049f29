"""Fasteners, torques, lifts and tools that shake: read once, and what cannot be read is left with its text."""

from decimal import Decimal
from fractions import Fraction

import pytest

from procbuilder.model.fastener import NamedThread, Sizes
from procbuilder.model.fields import Field
from procbuilder.model.origin import Place
from procbuilder.model.procedure import Step
from procbuilder.read.fields import read_field
from procbuilder.read.names import find_kind
from procbuilder.read.procedure import read_text


def field(text: str) -> Field:
    kind, value = find_kind(text)
    assert kind is not None
    return read_field(kind, value, Place("procedure.md", 7), [])


def step(*fields: str) -> Step:
    lines = "\n".join(f"- {each}" for each in fields)
    procedure, problems = read_text(f"# Hub\n\n## Work\n\n### Lift the hub {{#hub}}\n\n{lines}\n")
    assert problems == ()
    return procedure.steps[0]


def test_what_holds_a_part_is_a_list_of_things() -> None:
    bolts, clip = field("Off: keeper | by: 2 x M8x1.25 bolt, 13 mm, new; clip \\; spring").fasteners
    assert (bolts.name, bolts.head, bolts.count, bolts.new) == ("M8x1.25 bolt, 13 mm", "M8x1.25 bolt", Decimal(2), True)
    assert bolts.sizes == Sizes(thread=NamedThread("M8", 1.25, ""), spanners=(Decimal(13),))
    assert (clip.name, clip.count, clip.sizes) == ("clip ; spring", None, Sizes())
    assert field("Off: keeper").fasteners == ()


def test_a_wrench_tells_its_scale_and_an_amount_is_no_count() -> None:
    wrench, tape = field("Tool: torque wrench 5–25 N·m; tape, 2 m").items
    assert (wrench.sizes.scale, tape.count, tape.words) == ((Fraction(5), Fraction(25)), None, "tape, 2 m")


@pytest.mark.parametrize(
    ("value", "stages", "has_number", "has_unit"),
    [
        ("15 N·m then 90°", ["15 N·m", "90°"], True, True),
        ("15", [], True, False),
        ("good and tight", [], False, False),
        ("half a turn", [], False, True),
    ],
)
def test_a_torque_keeps_its_text(value: str, stages: list[str], has_number: bool, has_unit: bool) -> None:
    torque = field(f"Torque: nut | {value}").torque
    assert (torque.text, [str(stage) for stage in torque.stages]) == (value, stages)
    assert (torque.has_number, bool(torque.units)) == (has_number, has_unit)


def test_look_up_is_a_blank() -> None:
    entry = field("Torque: nut | Look up | D1, section 4")
    assert (bool(entry.torque), entry.part("value")) == (False, "Look up")


def test_a_lift_and_a_tool_that_shakes() -> None:
    read = step("Lift: hub | 25 kg | from 20 cm, to 110, reach 40 cm", "Vibration: grinder | 5 m/s² | 120 min")
    assert [(lift.item, lift.load, lift.path) for lift in read.lifts] == [("hub", 25, (20, 110, 40))]
    assert [(each.tool, each.level, each.minutes) for each in read.vibrations] == [("grinder", 5, 120)]


def test_what_cannot_be_read_of_a_lift_is_not_known() -> None:
    (lift,) = step("Lift: hub | a lot | to the bench").lifts
    assert (lift.item, lift.load, lift.path, lift.limits) == ("hub", None, None, ())


def test_people_of_a_step() -> None:
    assert (step("People: 2 | you: hold").crew, step("Note: hold it").crew) == (2, 0)


def test_a_field_that_refers_to_a_step_names_it() -> None:
    assert [field(text).step_id for text in ("Then: #hub", "After: hub", "Derived: #hub", "See: P-014")] == [
        "hub", "hub", "hub", "",
    ]  # fmt: skip
