"""A written danger settles its own activity and no other: all pairs of activities, in both languages."""

from dataclasses import replace
from functools import cache

import pytest

from procbuilder.infer.lexicon import load
from procbuilder.infer.proposed import noticed
from procbuilder.model.activity import Activity
from procbuilder.model.procedure import Procedure
from procbuilder.model.signal import Signal
from tests.infer.written import written

LANGUAGES = ("en", "de")
ALL = [(language, activity) for language in LANGUAGES for activity in load(language).activities]
IDS = [f"{language}-{activity.id}" for language, activity in ALL]


def plain(phrase: str) -> str:
    """One way in which a phrase can stand in a text: ``climb/crawl + -tank`` as "climb tank"."""
    return " ".join(word.split("/")[0].strip("-") for word in phrase.replace("+", " ").split())


def typed(language: str, text: str) -> Procedure:
    return written(text, head=f"---\nformat: 1\nlanguage: {language}\n---\n# Probe\n\n")


@cache
def whole(language: str) -> Procedure:
    """A procedure with a step for each activity, with its first words."""
    return typed(language, "## A\n" + "".join(f"### {plain(one.words[0])}\n" for one in load(language).activities))


def settled(language: str, danger: str) -> set[str]:
    """The activities that a danger in front of all steps settles."""
    front = typed(language, f"## A\n- {danger}\n").front_fields
    found = noticed(replace(whole(language), fields=front), {}, load(language))
    assert {one.activity.id for one in found} == {one.id for one in load(language).activities}
    return {one.activity.id for one in found if all(hit.told for hit in one.hits if hit.number)}


def danger(one: Activity, *, signal: Signal, before: str = "") -> str:
    return f"{signal.field}: {before}{one.hazard} | {one.consequence} | {one.avoid}"


@pytest.mark.parametrize(("language", "one"), ALL, ids=IDS)
def test_the_proposed_line_settles_its_own_activity_alone(language: str, one: Activity) -> None:
    assert settled(language, danger(one, signal=one.signal)) == {one.id}


@pytest.mark.parametrize(("language", "one"), ALL, ids=IDS)
def test_nor_does_it_settle_another_in_other_words(language: str, one: Activity) -> None:
    before = {"en": "look out – ", "de": "Vorsicht – "}[language]
    assert settled(language, danger(one, signal=Signal.DANGER, before=before)) == {one.id}


@pytest.mark.parametrize(("language", "one"), ALL, ids=IDS)
def test_a_milder_word_settles_nothing_graver(language: str, one: Activity) -> None:
    for milder in list(Signal)[one.signal.rank + 1 :]:
        assert settled(language, danger(one, signal=milder)) == set()


@pytest.mark.parametrize("language", LANGUAGES)
def test_no_two_proposals_can_be_refused_by_one_answer(language: str) -> None:
    hazards = [load(language).words.thing(one.hazard) for one in load(language).activities]
    assert len(hazards) == len(set(hazards))
