"""A language is data: no word list of one stands in the code, and another one needs few files."""

import ast
import re
import tomllib
from collections import Counter
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from procbuilder.check.case import Case
from procbuilder.check.run import problems
from procbuilder.infer.dangers import removed_protection, standing
from procbuilder.infer.ledger import ledger
from procbuilder.infer.lexicon import load
from procbuilder.infer.order import disorders
from procbuilder.infer.proposed import noticed
from procbuilder.infer.signs import danger_signs
from procbuilder.infer.torques import torques
from procbuilder.infer.wordlists import DATA
from procbuilder.model.lexicon import Lexicon
from procbuilder.model.problem import Problem
from procbuilder.model.tokens import tokens
from tests.infer.written import written

ROOT = Path(__file__).parents[1] / "procbuilder"
ROOMS = ("model", "read", "infer", "check", "keep", "pipeline")
"""Not ``publish`` and the command line, which say things to a reader."""
_WORDS = re.compile(r"[a-z]{2,}(?:'[a-z]+)*(?: [a-z]+)?")
HEARING = ("infer/hearing/", "infer/dictionary/")
MOST = 3
"""Words in a row that are no list yet."""

WHY_IN_CODE = {
    "infer/by_words.py: temporary support": "names of groups in objects.toml",
    "model/activity.py: name words": "keys of a block in a file",
    "model/marks.py: left top": "names of facts",
    "model/procedure.py: format number": "keys of the front matter, which are those of the file format",
    "model/torque.py": "units, as they are written in several languages",
    "read/fields.py": "units",
    "read/stated.py": "units of a time, as the file format has them",
    "read/tables.py: start from": "headings of a table, as people write them",
    "read/tables.py: text step": "the same, as people write them",
    "read/tables.py: recording file": "the same, as people write them",
    "read/workshop.py: signs who": "keys of a block in a file",
    "read/workshop.py: words told": "keys of a block in a file",
}


def _lists(path: Path) -> Iterator[list[str]]:
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Set | ast.Tuple | ast.List):
            yield [part.value for part in node.elts if isinstance(part, ast.Constant) and isinstance(part.value, str)]
        elif isinstance(node, ast.Constant) and isinstance(node.value, str) and "|" in node.value:
            yield [word for word in re.split(r"[|()?:]+", node.value) if word]


def _in_code() -> Iterator[str]:
    """``infer/order.py: from with`` for each list of small words, by its file and its first two."""
    for room in ROOMS:
        for path in sorted((ROOT / room).rglob("*.py")):
            name = path.relative_to(ROOT).as_posix()
            for listed in _lists(path):
                small = [word for word in listed if _WORDS.fullmatch(word)]
                if len(small) > MOST and not name.startswith(HEARING):
                    yield f"{name}: {' '.join(small[:2])}"


def test_no_word_list_of_a_language_stands_in_the_code() -> None:
    assert (
        sorted(one for one in _in_code() if one not in WHY_IN_CODE and one.partition(":")[0] not in WHY_IN_CODE) == []
    )


def test_each_exception_is_still_needed() -> None:
    known = set(_in_code())
    assert sorted(set(WHY_IN_CODE) - known - {one.partition(":")[0] for one in known}) == []


STUB = {
    "words": 'articles = ["ze"]\nplurals = [["z", "", 3]]\n',
    "dangers": (
        '[airbag]\nname = "bagu"\nwords = ["bagu"]\nhazard = "ze bagu pufa"\nconsequence = "ow"\navoid = "waita"\n'
    ),
    "order": (
        '[verbs]\noff = ["unka"]\n[moves]\nOff = "unka"\n[order.battery-before-airbag]\n'
        'rule = "batu first"\nwhy = "pufa"\nfirst = ["@off: batu"]\nthen = ["@off: bagu"]\nexample = "Unka ze batu"\n'
    ),
    "tightening": 'words = ["tigha"]\n',
}
JOB = """
## Wok
### Unka ze bagu {#bag}
- Off: ze 2 x bolz
### Refi ze bolz {#on}
- On: 2 x bol
### Tigha ze bol {#tight}
"""


def _checked(text: str, lexicon: Lexicon) -> dict[str, Problem]:
    procedure = written(text)
    still = standing(procedure, lexicon)
    case = Case(
        procedure=procedure,
        recordings={},
        ledger=ledger(procedure, lexicon),
        removed=removed_protection(procedure, lexicon),
        torques=torques(procedure, lexicon),
        lexicon=lexicon,
        standing=still,
        noticed=noticed(procedure, still, lexicon),
        disorders=disorders(procedure, lexicon),
    )
    return {problem.rule: problem for problem in problems(case)}


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    (tmp_path / "xx").mkdir()
    for name, text in STUB.items():
        (tmp_path / "xx" / f"{name}.toml").write_text(text, encoding="utf-8")
    return tmp_path


def test_a_language_of_a_few_words_needs_four_files(folder: Path) -> None:
    lexicon = load("xx-YY", folder=folder)
    found = _checked(JOB.replace("- Off: ze 2", "- Off: 2"), lexicon)
    assert (lexicon.language, len(STUB)) == ("xx", 4)
    assert found["danger-proposed"].subject == "ze bagu pufa"
    assert found["wrong-order"].subject == "batu first"
    assert found["tightening-without-torque"].subject == "bol"
    assert not {"unbalanced-ledger", "closed-but-never-opened", "no-words-for-language"} & set(found)


def test_of_a_language_without_words_only_what_is_typed_is_followed(folder: Path) -> None:
    lexicon = load("qq", folder=folder)
    found = _checked(JOB.replace("- Off: ze 2", "- Off: 2").replace("- On: 2 x bol", "- On: 1 x bolz"), lexicon)
    assert (lexicon.language, lexicon.activities, lexicon.orders) == ("", (), ())
    assert found["no-words-for-language"].blocks
    assert "unbalanced-ledger" in found
    assert not {"danger-proposed", "wrong-order", "tightening-without-torque", "torque-wrench-range"} & set(found)
    assert lexicon.threads == load("en").threads
    assert [sign.number for sign in danger_signs("chaud (W017)", "brûlé", "", lexicon)] == ["W017"]


@pytest.mark.parametrize(("typed", "language"), [("", "en"), ("en-GB", "en"), ("EN", "en"), ("..", ""), ("fr", "")])
def test_a_region_has_the_words_of_its_language(typed: str, language: str) -> None:
    assert load(typed).language == language


def _table(language: str, name: str) -> dict[str, Any]:
    return tomllib.loads((DATA / language / f"{name}.toml").read_text(encoding="utf-8"))


ASKED = {"reserved", "hold", "begins", "since"}
PARTS = (("single_use", "part"), ("single_use", "command"), ("protection", "protection"), ("refit", "decide"))
LANGUAGES = sorted(path.parent.name for path in DATA.glob("*/dangers.toml"))


@pytest.mark.parametrize("language", LANGUAGES)
def test_each_entry_has_its_words_in_each_language(language: str) -> None:
    """A language that leaves out what may be reserved by law would be silent where another one asks."""
    for name in ("dangers", "order"):
        same = set(tomllib.loads((DATA / f"{name}.toml").read_text(encoding="utf-8")))
        own, english = _table(language, name), _table("en", name)
        entries, known = (table["order"] if name == "order" else table for table in (own, english))
        assert set(entries) == same == set(known)
        keys = {key: {"reserved", "hold", "begins", "since"} for key in same}
        assert {key: keys[key] & set(entries[key]) for key in same} == {
            key: keys[key] & set(known[key]) for key in same
        }
    assert set(_table(language, "safety_signs")) == set(_table("en", "safety_signs"))
    for name, part in (
        ("single_use", "part"),
        ("single_use", "command"),
        ("protection", "protection"),
        ("refit", "decide"),
    ):
        assert set(_table(language, name)[part]) == set(_table("en", name)[part]), name


def _phrase_lists(lexicon: Lexicon) -> Iterator[tuple[str, tuple[str, ...]]]:
    for name in ("critical", "flammable", "vapour", "rotating", "tests", "tightening", "safe_states"):
        yield name, getattr(lexicon, name)
    for activity in lexicon.activities:
        yield f"{activity.id}, words", activity.words
        yield f"{activity.id}, told", activity.told
    yield from ((number, sign.words) for number, sign in lexicon.signs.items())
    yield from ((part.id, part.things) for part in lexicon.single_use)
    for one in lexicon.protections:
        yield f"{one.id}, states", one.states
        yield f"{one.id}, items", one.items


@pytest.mark.parametrize("language", LANGUAGES)
def test_no_list_says_the_same_twice(language: str) -> None:
    lexicon = load(language)

    def key(phrase: str) -> tuple[str, ...]:
        return tuple(f"{word[0]}{one.key}{word[-1]}" if "-" in (word[0], word[-1]) else one.key
                     for word in phrase.split() for one in tokens(word, lexicon.words))  # fmt: skip

    lists = dict(_phrase_lists(lexicon))
    keys = {name: Counter(map(key, phrases)) for name, phrases in lists.items()}
    twice = {name: [one for one in lists[name] if keys[name][key(one)] > 1] for name in lists}
    assert {name: phrases for name, phrases in twice.items() if phrases} == {}
