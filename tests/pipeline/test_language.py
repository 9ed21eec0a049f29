"""A build in the language of the procedure: what a machine works out is said in it, what was typed stays."""

import json
from collections.abc import Callable
from pathlib import Path

import pytest

from procbuilder.pipeline.build import Built, build
from procbuilder.publish.speaker import spoken
from procbuilder.publish.wording.problems import said
from tests.pipeline.text import WHOLE

FINDING = "\n- Finding: Riemen rissig | bald | Kunde informiert\n"
GERMAN = WHOLE.replace("author: demo\n", "author: demo\nlanguage: de-DE\nstated time: 1.5 h\n").replace(
    "- Check: turn the spindle by hand | no noise\n", f"- Check: turn the spindle by hand | no noise{FINDING}"
)


@pytest.fixture
def built(folder: Callable[[str], Path]) -> Built:
    return build(folder(GERMAN))


def test_pictures_and_steps_are_named_in_the_language(built: Built) -> None:
    told = spoken(built.edition)
    steps = told.steps
    assert steps[0].figures[0].alt == "Fertiger Zustand von: Lift off the belt cover"
    assert steps[1].as_found is not None
    assert steps[1].as_found.alt == "Vorher: Lift off the belt cover"
    assert told.closing[0].extra[-1] == "Schritt 3"


def test_page_says_german_and_keeps_what_was_typed(built: Built) -> None:
    page = built.page.read_text(encoding="utf-8")
    assert '<html lang="de-DE">' in page
    for words in ("Der Mechaniker gibt 1,5 h an", "Fest mit", "Riemen rissig", "In D1, page 2 nachschlagen."):
        assert words in page, words


def test_a_stop_is_told_in_the_language(folder: Callable[[str], Path]) -> None:
    edition = build(folder(GERMAN.replace("- On: belt cover | by: 2 x M5 bolt\n", ""))).edition
    assert edition.status == "draft"
    assert spoken(edition).why_draft.endswith("vor einer Freigabe geklärt werden")


def test_data_hold_no_german_terms(built: Built) -> None:
    data = json.loads((built.out / "edition.json").read_text(encoding="utf-8"))
    assert data["closing"][0]["name"] == "Finding"
    assert data["estimate"]["stated_hours"] == 1.5


@pytest.mark.parametrize(("tag", "told"), [("en-NZ", False), ("fr-FR", True)])
def test_of_a_language_without_words_one_question_is_asked(
    folder: Callable[[str], Path], tag: str, *, told: bool
) -> None:
    built = build(folder(WHOLE.replace("author: demo\n", f"author: demo\nlanguage: {tag}\n")))
    found = [problem for problem in built.problems if problem.rule == "no-words-for-language"]
    assert bool(found) is told
    if told:
        assert [(one.severity, one.place.line, one.blocks) for one in found] == [("ask", 8, True)]
        assert said(found[0]).what == "dangers, order and tools were not checked: no words for fr-FR"
        page = built.page.read_text(encoding="utf-8")
        assert '<html lang="fr-FR">' in page
        assert '<h3 lang="en">How long it takes</h3>' in page
