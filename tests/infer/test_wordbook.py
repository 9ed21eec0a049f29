"""The words of a language: what can be read and added to, and what the rules rely on."""

from importlib.resources import files
from pathlib import Path

import pytest

from procbuilder.infer.dictionary.inflection import Form, forms
from procbuilder.infer.dictionary.wordbook import wordbook
from procbuilder.model.heard import Act

BOOK = wordbook()
FILES = ("cues", "grammar", "objects", "operations", "sizes", "verbs")


@pytest.mark.parametrize("name", FILES)
def test_each_file_opens_with_how_to_add_to_it(name: str) -> None:
    text = files("procbuilder.infer").joinpath("data", "en", f"{name}.toml").read_text(encoding="utf-8")
    opening = text[: text.index("\n[") if "\n[" in text else text.index(" = ")]
    assert text.startswith("# ")
    assert "To add" in opening


def test_every_act_has_a_way_of_saying_it() -> None:
    assert {block.act for block in BOOK.blocks} == set(Act)


def test_states_have_a_name_and_can_end() -> None:
    begun = {block.state for block in BOOK.blocks if block.act is Act.STATE}
    ended = {block.state for block in BOOK.blocks if block.act is Act.ENDS}
    assert "" not in begun | ended
    assert ended <= begun
    assert begun - ended <= {"tilted", "compressed", "depressurised"}


def test_things_of_a_block_are_known_groups_or_plain_words() -> None:
    words = [word for block in BOOK.blocks for word in block.things]
    assert [word for word in words if word != word.casefold() or word != word.strip()] == []


def test_a_name_belongs_to_a_group_by_its_last_words() -> None:
    assert BOOK.is_in("lower slide bolts", ["fastener"])
    assert BOOK.is_in("sump drain plug", ["drain plug"])
    assert not BOOK.is_in("bolt cutter", ["fastener"])
    assert BOOK.is_in("brake", ["brake"])
    assert not BOOK.is_in("disc brake", ["brake"])


@pytest.mark.parametrize(
    ("verb", "words"),
    [
        ("take", {"take", "takes", "taking", "took", "taken"}),
        ("nip", {"nip", "nips", "nipping", "nipped"}),
        ("pry", {"pry", "pries", "prying", "pried"}),
        ("unplug", {"unplug", "unplugs", "unplugging", "unplugged"}),
        ("push", {"push", "pushes", "pushing", "pushed"}),
        ("loosen", {"loosen", "loosens", "loosening", "loosened"}),
        ("clean", {"clean", "cleans", "cleaning", "cleaned"}),
        ("undo", {"undo", "undoes", "undoing", "undid", "undone"}),
    ],
)
def test_forms_of_a_verb(verb: str, words: set[str]) -> None:
    assert set(forms([verb], {"take": "took taken", "undo": "undid undone"})) == words


def test_a_form_may_belong_to_two_verbs() -> None:
    assert forms(["find", "found"], {"find": "found"})["found"] == (("find", Form.PAST), ("found", Form.BASE))


def test_every_list_is_used_by_a_rule() -> None:
    code = "".join(
        path.read_text(encoding="utf-8") for path in (Path(__file__).parents[2] / "procbuilder" / "infer").rglob("*.py")
    )
    unused = [name for name in [*BOOK.cues, *BOOK.grammar, *BOOK.speech] if f'"{name}"' not in code]
    assert unused == []
