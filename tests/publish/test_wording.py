"""Every sentence of every rule, made of facts alone: reached by a sample, and in German without English words."""

import re
from collections.abc import Iterable, Iterator
from dataclasses import replace
from fractions import Fraction
from types import ModuleType
from typing import Any

import pytest
from jsonschema import Draft202012Validator

from procbuilder.model.facts import Blank, Line, Phrase, Term, every
from procbuilder.model.footage import PacketFacts
from procbuilder.model.origin import Place
from procbuilder.model.problem import Problem, Severity
from procbuilder.model.procedure import Cue, Narration
from procbuilder.publish.data import plain
from procbuilder.publish.language import ENGLISH, language_of
from procbuilder.publish.wording import (
    balance,
    closing,
    counting,
    derived,
    fasteners,
    footage,
    front,
    order,
    phrases,
    proposed,
    renewal,
    safety,
    strain,
    timeline,
    torque,
    values,
    writing,
)  # fmt: skip
from procbuilder.publish.wording.patterns import Plural
from procbuilder.publish.wording.problems import said
from tests.check.faults import FOLDER, faults
from tests.check.sample import GOOD, changed, found
from tests.publish.test_schema import SCHEMA

GERMAN = language_of("de-DE")
RULES: tuple[ModuleType, ...] = (
    balance, closing, counting, derived, fasteners, footage, front, order, proposed, renewal, safety, strain, timeline,
    torque, values, writing,
)  # fmt: skip
"""Sentences of the rules; those of reading have their own test."""
SAMPLES = [fault for path in sorted(FOLDER.glob("*.txt")) for fault in faults(path.stem)]
FILM = PacketFacts(key_spacing=Fraction(1), spacing=Fraction(1, 30))
_WORD = re.compile(r"[^\W\d_]+(?:'[a-z]+)?")


def _filmed(strip: str, refit: str) -> dict[str, PacketFacts]:
    return {"strip": replace(FILM, begun=strip), "refit": replace(FILM, begun=refit)}


def _others() -> Iterator[Problem]:
    """What no text alone can be wrong in: recordings, words of the film, and no step at all."""
    yield from found(GOOD[: GOOD.index("## Strip")])
    yield from found(GOOD, films=_filmed("2026-03-04T10:00:00", "2026-03-04T10:40:00"))
    yield from found(GOOD, films=_filmed("2026-03-04T10:00:00", "2026-03-04T10:00:10"))
    yield from found(GOOD, films={"refit": replace(FILM, speed=Fraction(15, 2))})
    yield from found(GOOD, films={"refit": replace(FILM, speed=Fraction(2, 15))})
    heard = Cue(Place("refit.srt", 2), Fraction(3), Fraction(7), "Twenty-five newton metres on these.")
    yield from found(GOOD, narration=[Narration("refit", (heard,))])
    german = found(changed(("author: RB\n", "author: RB\nlanguage: de-DE\nnarration: {refit: narration/refit.srt}\n")))
    yield from (problem for problem in german if problem.rule == "narration-not-read")


OF_SAMPLES = [(fault, problem) for fault in SAMPLES for problem in found(fault.applied(GOOD))]
PROBLEMS = list(dict.fromkeys([*(problem for _, problem in OF_SAMPLES), *_others()]))


def test_every_sentence_is_reached() -> None:
    forms = {(rule, form) for module in RULES for rule, forms in module.PATTERNS.items() for form in forms}
    assert {(problem.rule, problem.form) for problem in PROBLEMS} == forms


@pytest.mark.parametrize("problem", PROBLEMS, ids=lambda problem: f"{problem.rule}-{problem.form}")
def test_a_german_reader_finds_no_english_word_of_ours(problem: Problem) -> None:
    told = said(problem, GERMAN)
    assert told.what != said(problem, ENGLISH).what
    assert told.instead != said(problem, ENGLISH).instead
    assert not re.search(r"[{}]|None", str(told).replace(_recordings(problem), ""))
    assert _words(str(told)) & ENGLISH_ONLY - _words(" ".join(_typed(problem.facts))) == set()


def test_an_english_word_in_a_german_sentence_would_be_noticed() -> None:
    assert {"came", "off", "does", "not", "go", "back"} <= ENGLISH_ONLY
    assert not {"und", "schritt", "clip"} & ENGLISH_ONLY


def test_german_sentences() -> None:
    """Read by hand: a tenth, a sum of kilograms and a list as German writes them."""
    told = {(problem.rule, problem.form): said(problem, GERMAN) for problem in PROBLEMS}
    assert told["heavy-lift", "heavy"].what == (
        "wheel, 12 kg, ist das 1,2-Fache der 10 kg, die die Hebegleichung des NIOSH für eine Person empfiehlt; "
        "gerechnet für seltenes Heben mit beiden Händen, mäßigem Griff und ohne Drehung"
    )
    assert told["which-spanner", ""].what == '"M10 bolt": M10 kann je nach Norm SW 14, 16 oder 17 haben: welche?'
    assert told["other-speed", "faster"].what == (
        "refit läuft 7,5-mal so schnell wie die Arbeit, die Länge sagt also keine Zeit"
    )
    assert told["several-commands", ""].instead == (
        'aus jeder einen Schritt machen: "### Chock the wheel" und "### Raise the trailer"'
    )


@pytest.mark.parametrize("problem", PROBLEMS, ids=lambda problem: f"{problem.rule}-{problem.form}")
def test_an_edition_can_hold_it(problem: Problem) -> None:
    Draft202012Validator({"$ref": "#/$defs/Problem", "$defs": SCHEMA["$defs"]}).validate(plain(problem))


def test_every_question_and_advice_can_be_answered() -> None:
    """But that nobody has looked for dangers."""
    silent = {p.rule for p in PROBLEMS if p.severity is not Severity.STOP and not p.subject}
    assert silent == {"dangers-not-confirmed"}


def test_questions_of_one_rule_about_two_things_are_two_questions() -> None:
    for fault in SAMPLES:
        asked = [problem for problem in found(fault.applied(GOOD)) if problem.subject]
        assert len({problem.question for problem in asked}) == len(asked), fault.title


def _typed(given: Any) -> Iterator[str]:
    """What stands in the facts as somebody typed it, and the names of fields."""
    for value in every(given):
        if isinstance(value, Line):
            yield value.field
            yield from _typed([("", value.parts), *value.words])
            yield from (word for word, _ in value.words)
        elif not isinstance(value, Blank | Term | Phrase | tuple):
            yield str(value)


def _recordings(problem: Problem) -> str:
    """The line for the top of the file, which has braces of its own."""
    name = dict(problem.facts).get("name")
    return f"{{{name}: recordings/DATEI.mp4}}"


def _texts(value: Any) -> Iterator[str]:
    if isinstance(value, Plural):
        yield from (value.one, value.many)
    elif isinstance(value, str):
        yield value
    else:
        for part in value.values() if isinstance(value, dict) else value:
            yield from _texts(part)


def _words(text: str) -> set[str]:
    return set(_WORD.findall(re.sub(r"\{\w*(?::[^}]*)?\}", " ", text).casefold()))


def _only_english(texts: Iterable[str]) -> set[str]:
    texts = tuple(texts)
    german = {word for text in texts for form in _german(text) for word in _words(form)}
    return {word for text in texts for word in _words(text)} - german


def _german(text: str) -> tuple[str, ...]:
    plural = next(
        (one for one in phrases.PHRASES.values() if isinstance(one, Plural) and text in (one.one, one.many)), None
    )
    if plural is None:
        return (GERMAN.text(text),)
    return tuple(GERMAN.translations.ngettext(plural.one, plural.many, count) for count in (1, 2))


ENGLISH_ONLY = _only_english([
    *(text for module in RULES for text in _texts(module.PATTERNS)), *_texts(phrases.PHRASES), *phrases.BLANKS.values(),
    phrases.STEP, phrases.ON_FILM, phrases.IN_STEP, phrases.IN_LINE, phrases.OR,
])  # fmt: skip
"""Words of our English sentences that no German one of ours has."""
