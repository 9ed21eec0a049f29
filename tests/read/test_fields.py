"""Fields: names, parts, things, quantities, origins."""

import pytest

from procbuilder.model.fields import BY_NAME, Field
from procbuilder.model.origin import Place
from procbuilder.read.fields import read_field, split_parts
from procbuilder.read.flaws import Flaws
from procbuilder.read.names import find_kind, find_slip
from tests.read.told import told

HERE = Place("procedure.md", 1)


def field(text: str) -> tuple[Field, Flaws]:
    kind, value = find_kind(text)
    assert kind, text
    flaws: Flaws = []
    return read_field(kind, value, HERE, flaws), flaws


@pytest.mark.parametrize(
    ("text", "name", "value"),
    [
        ("Tool: flat bar", "Tool", "flat bar"),
        ("tool: flat bar", "Tool", "flat bar"),
        ("NIP UP: castle nut", "Nip up", "castle nut"),
        ("Nip  up : castle nut", "Nip up", "castle nut"),
        ("Out again: chock", "Out again", "chock"),
        ("Note: at 1:15 the light: dim", "Note", "at 1:15 the light: dim"),
        ("Tool:bar", "Tool", "bar"),
        ("**Tool**: bar", "Tool", "bar"),
        ("**Tool:** bar **M8**", "Tool", "bar **M8**"),
        ("__Tool: bar__", "Tool", "bar"),
        ("`Tool`： bar", "Tool", "bar"),
    ],
)
def test_a_known_name_before_the_colon_makes_a_field(text: str, name: str, value: str) -> None:
    kind, rest = find_kind(text)
    assert kind
    assert (kind.name, rest) == (name, value)


@pytest.mark.parametrize("text", ["Left side: two bolts", "flat bar", "0:42 Tool: bar", "http://x: y", "See://x"])
def test_anything_else_is_no_field(text: str) -> None:
    assert find_kind(text)[0] is None


@pytest.mark.parametrize(
    ("text", "near"),
    [
        ("Tourqe: nuts | 80 N·m", "Torque"),
        ("Tools: flat bar", "Tool"),
        ("Keypoint: slowly", "Key point"),
        ("Warnings: hot", "Warning"),
        ("Slaken: nuts", "Slacken"),
    ],
)
def test_a_mistyped_name_is_a_near_miss(text: str, near: str) -> None:
    slip = find_slip(text, listed=True)
    assert slip
    assert slip.kind
    assert slip.kind.name == near


@pytest.mark.parametrize("text", ["Left side: two bolts", "One: begin here", "Tip: use the long bar", "12: x"])
def test_prose_with_a_colon_is_no_near_miss(text: str) -> None:
    assert find_slip(text, listed=True) is None


def test_parts_by_place_then_by_word_in_any_order() -> None:
    entry, flaws = field(
        "Torque: keeper bolts | 15 N·m then 30 N·m | when: weight on wheels | order: cross | from: D1 p. 4"
    )
    assert flaws == []
    assert entry.parts == (
        ("item", "keeper bolts"),
        ("value", "15 N·m then 30 N·m"),
        ("when", "weight on wheels"),
        ("order", "cross"),
        ("from", "D1 p. 4"),
    )


@pytest.mark.parametrize(
    ("text", "parts"),
    [
        ("a | b", ["a", "b"]),
        ("a|b", ["a|b"]),
        (r"a \| b | c", ["a | b", "c"]),
        ("a |  | c", ["a", "", "c"]),
        ("a |", ["a", ""]),
        ("| b", ["", "b"]),
    ],
)
def test_bars_separate_parts_only_with_spaces_and_unescaped(text: str, parts: list[str]) -> None:
    assert split_parts(text) == parts


@pytest.mark.parametrize(
    ("text", "items"),
    [
        ("Tool: 2 x axle stand", ["2 x axle stand"]),
        ("Tool: 2 × axle stand; flat bar", ["2 x axle stand", "flat bar"]),
        ("Wear: eye protection; gloves", ["eye protection", "gloves"]),
        (r"Tool: puller\; three-leg", ["puller; three-leg"]),
        ("Supply: bearing grease, 60 g", ["bearing grease, 60 g"]),
        ("Supply: brake fluid, DOT 4, 0.5 l", ["brake fluid, DOT 4, 0.5 l"]),
        ("Supply: bearing grease, 60", ["bearing grease, 60"]),
        ("Part: 1 x bearing and seal kit, new", ["1 x bearing and seal kit, new"]),
        ("Part: new split pin", ["split pin, new"]),
        ("Off: split pin, scrap", ["split pin, scrap"]),
        ("Tool: newton meter", ["newton meter"]),
        ("Tool: 24 mm ring spanner", ["24 mm ring spanner"]),
        ("Off: M8 x 25 bolt", ["M8 x 25 bolt"]),
    ],
)
def test_things_with_quantity_and_marks(text: str, items: list[str]) -> None:
    entry, flaws = field(text)
    assert ([item.words for item in entry.items], flaws) == (items, [])


def test_counts_and_amounts_are_exact_numbers() -> None:
    (item,) = field("Supply: oil, 0.75 l")[0].items
    assert item.quantity
    assert (str(item.quantity.number), item.quantity.unit, item.name) == ("0.75", "l", "oil")


def test_none_is_an_explicit_nothing() -> None:
    entry, flaws = field("Supply: none")
    assert (entry.none, entry.items, flaws) == (True, (), [])


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("Tool: 24 mm ring spanner (said strip 3:12)", "said strip 3:12"),
        ("Tool: 24 mm ring spanner (seen 4:02)", "seen 4:02"),
        ("Torque: nut | 80 N·m (from D1 p. 4)", "from D1 p. 4"),
        ("Torque: nut | 80 N·m (from memory)", "from memory"),
        ("Tool: spanner (the long one)", ""),
        ("Tool: spanner", ""),
    ],
)
def test_the_origin_stands_at_the_end(text: str, words: str) -> None:
    assert field(text)[0].origin.words == words


def test_a_bracket_that_is_no_origin_stays_in_the_text() -> None:
    assert field("Tool: spanner (the long one)")[0].item.name == "spanner (the long one)"


def test_one_stage_of_a_torque_has_its_number_and_value() -> None:
    entry, flaws = field("Torque: head bolts | stage 2: 60 N·m")
    assert (entry.part("stage"), entry.part("value"), flaws) == ("2", "60 N·m", [])


@pytest.mark.parametrize(
    ("text", "what", "instead"),
    [
        ("Torque: nuts", "Torque has no value", "write: - Torque: item | value | where"),
        ("Off:", "Off has no item", "write: - Off: item"),
        ("Supply: oil, 0,5 l", "0,5 l has a decimal comma", "write a decimal point: 0.5 l"),
        ("Torque: Schraube | 8,5 Nm", "8,5 Nm has a decimal comma", "write a decimal point: 8.5 Nm"),
        ("Hold: cap seated | foreman | today", "Hold has a part too many: today",
         r"keep to what | who; a bar as such is \|"),
        ("Torque: nut | 80 N·m | D1 | p. 4", "Torque has a part too many: p. 4",
         r"begin it with one of order:, when:, from:, stage:, of:, heard:; a bar as such is \|"),
        ("Torque: nut | 80 N·m | ordr: cross", "ordr: is not known in Torque", "did you mean order:?"),
        ("Torque: nut | 80 N·m | from: D1 | from: D2", "from: stands twice in Torque", "keep one of the two"),
        ("Tool: bar (said strip 3:92)", "(said strip 3:92) has no time that can be read",
         "write it as (said strip 3:12) or (seen 4:02)"),
    ],
)  # fmt: skip
def test_field_with_one_fault_says_what_to_write_instead(text: str, what: str, instead: str) -> None:
    assert told("field", field(text)[1]) == [(what, instead)]


def test_asking_for_a_part_that_a_field_cannot_have_is_an_error() -> None:
    with pytest.raises(KeyError, match="Tool has no part reason"):
        field("Tool: bar")[0].part("reason")


def test_every_field_is_found_by_its_name() -> None:
    for kind in BY_NAME.values():
        assert find_kind(f"{kind.name}: x")[0] is kind
