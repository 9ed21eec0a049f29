"""Words as a technician writes them, in English."""

import pytest

from procbuilder.infer.lexicon import load
from procbuilder.model.commands import done_to
from procbuilder.model.phrases import called, mentioned

WORDS = load("en").words


@pytest.mark.parametrize(
    ("word", "one"),
    [
        ("nuts", "nut"), ("Bolts", "bolt"), ("bushes", "bush"), ("switches", "switch"), ("boxes", "box"),
        ("batteries", "battery"), ("hoses", "hose"), ("pulleys", "pulley"), ("glass", "glass"), ("chassis", "chassis"),
        ("radius", "radius"), ("gas", "gas"), ("nut", "nut"),
    ],
)  # fmt: skip
def test_plural_ending_is_taken_off(word: str, one: str) -> None:
    assert WORDS.singular(word) == one


@pytest.mark.parametrize(
    ("one", "other"),
    [
        ("wheel nuts", "wheel nut"),
        ("The dust cap", "dust  cap"),
        ("Brake Pads", "brake pad"),
    ],
)
def test_two_mentions_of_one_thing(one: str, other: str) -> None:
    assert WORDS.thing(one) == WORDS.thing(other)


@pytest.mark.parametrize(
    ("one", "other"),
    [("tire", "Tyres"), ("lock nuts", "locknut"), ("aluminum washer", "aluminium washers"), ("seatbelt", "seat belt")],
)
def test_two_ways_of_writing_are_one_word(one: str, other: str) -> None:
    assert WORDS.thing(one) == WORDS.thing(other)
    assert WORDS.as_spelled(one) != WORDS.as_spelled(other)


@pytest.mark.parametrize(("one", "other"), [("wheel nut", "hub nut"), ("nut", "nut, left"), ("seal", "sealing ring")])
def test_mentions_of_different_things(one: str, other: str) -> None:
    assert WORDS.thing(one) != WORDS.thing(other)


@pytest.mark.parametrize(
    ("name", "plural"),
    [
        ("wheel nuts", True), ("wheel nut", False), ("gas", False), ("chassis", False), ("mains plug", False),
        ("bolts of the cover", True), ("cover with screws", False), ("the screws, long", True),
    ],
)  # fmt: skip
def test_plural_is_seen(name: str, plural: bool) -> None:
    assert WORDS.is_plural(name) is plural


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("Front brakes, left", "brake"),
        ("the seat-belt buckle", "seat belt"),
        ("brakeman's lamp", ""),
        ("belt of the seat", ""),
        ("the tool tray", "tool/"),
    ],
)
def test_phrases_are_found_as_whole_words(text: str, found: str) -> None:
    assert mentioned(text, ["/", "brake", "seat belt", "tool/"], WORDS) == found


@pytest.mark.parametrize(
    ("sentence", "rest"),
    [
        ("Check the play", "the play"),
        ("Fit the cap and check the play.", "the play"),
        ("Carefully check it", "it"),
        ("Fit the check valve", None),
        ("Recheck it", None),
        ("Check", ""),
    ],
)
def test_verb_counts_only_where_a_command_begins(sentence: str, rest: str | None) -> None:
    assert done_to(sentence, ["check"], WORDS) == rest


@pytest.mark.parametrize(
    ("name", "found"),
    [
        ("grease seal", "seal"),
        ("Seals", "seal"),
        ("lip seal of the hub, 40 mm", "seal"),
        ("2 x O-rings", "o-ring"),
        ("seal spring", ""),
        ("unseal", ""),
        ("ring", ""),
    ],
)
def test_a_name_is_called_by_the_words_it_ends_with(name: str, found: str) -> None:
    assert called(name, ["seal", "o-ring"], WORDS) == found
