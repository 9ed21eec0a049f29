"""Three hours of talk are heard without a blow-up, and no text makes an expression blow up."""

import re
from collections.abc import Callable

import pytest

from procbuilder.infer.hearing.draft import draft
from tests.growth import no_blow_up
from tests.infer.large import BY_EXPRESSIONS, HOSTILE, repeated, said_at_once, told_for
from tests.infer.narrated import NAMES, read


def drafted(seconds: int) -> Callable[[], object]:
    narration = told_for(seconds)
    return lambda: draft([narration])


def test_three_hours_of_narration_are_drafted() -> None:
    no_blow_up(drafted, 3 * 3600)


@pytest.mark.parametrize("work", BY_EXPRESSIONS.values(), ids=BY_EXPRESSIONS.keys())
@pytest.mark.parametrize("words", HOSTILE.values(), ids=HOSTILE.keys())
def test_no_expression_blows_up(words: str, work: Callable[[str], object]) -> None:
    def prepare(size: int) -> Callable[[], object]:
        text = repeated(words, size)
        return lambda: work(text)

    no_blow_up(prepare, 100_000)


@pytest.mark.parametrize("words", HOSTILE.values(), ids=HOSTILE.keys())
def test_no_draft_blows_up(words: str) -> None:
    def prepare(size: int) -> Callable[[], object]:
        narration = said_at_once(repeated(words, size))
        return lambda: draft([narration])

    no_blow_up(prepare, 20_000)


def test_no_word_is_lost_between_the_cues_and_the_draft() -> None:
    for name in NAMES:
        told = read(name)
        spoken = " ".join(cue.text for cue in told.narration.cues)
        landed = " ".join(landing.sentence.words for landing in draft([told.narration]).landings)
        assert re.findall(r"\w+", landed) == re.findall(r"\w+", spoken)
