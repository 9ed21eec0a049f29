"""Three hours of talk are heard in seconds, and no text blows up. The limits are wide: speed is measured elsewhere."""

import re
import time
from collections.abc import Callable
from fractions import Fraction

import pytest

from procbuilder.infer.cues import folded, is_talk
from procbuilder.infer.draft import draft
from procbuilder.infer.remarks import split_reason
from procbuilder.infer.sentences import sentences
from procbuilder.infer.tokens import cut
from procbuilder.infer.wordbook import wordbook
from procbuilder.model.origin import Place
from procbuilder.model.procedure import Cue, Narration
from tests.infer.narrated import NAMES, read

BOOK = wordbook()
HOSTILE = {
    "one word": "a" * 100_000,
    "apostrophes": "'s" * 50_000,
    "hyphens": "a-" * 50_000,
    "full stops": "." * 100_000,
    "full stops before a letter": "." * 100_000 + "a",
    "spaces": " " * 100_000,
    "articles": "the " * 25_000,
    "parts of parts": "one of " * 14_000,
    "numbers": "twenty-one " * 9_000,
    "commas": "the bolt, " * 10_000,
    "joined": "bolt and " * 11_000,
    "commands": "take the cover off " * 5_200,
    "reasons": "so that " * 12_500,
}


def seconds(work: Callable[[], object]) -> float:
    begin = time.process_time()
    work()
    return time.process_time() - begin


def test_three_hours_of_narration_are_drafted_in_seconds() -> None:
    cues: list[Cue] = []
    begin = Fraction(0)
    told = [read(name).narration.cues for name in NAMES]
    while begin < 3 * 3600:
        for each in told:
            cues += (Cue(cue.place, cue.start + begin, cue.end + begin, cue.text) for cue in each)
            begin = cues[-1].end + 5
    narration = Narration("strip", tuple(cues))
    best = seconds(lambda: draft([narration]))
    print(f"3 hours, {len(cues)} cues: {best:.2f} s")
    assert best <= 10


@pytest.mark.parametrize("text", HOSTILE.values(), ids=HOSTILE.keys())
def test_no_expression_blows_up(text: str) -> None:
    narration = Narration("strip", (Cue(Place("t.srt", 1), Fraction(0), Fraction(60), text),))
    for work in (
        lambda: cut(text, {}),
        lambda: folded(text),
        lambda: is_talk(text, BOOK),
        lambda: split_reason(text, BOOK),
        lambda: sentences(narration),
    ):
        assert seconds(work) <= 3
    fifth = Narration("strip", (Cue(Place("t.srt", 1), Fraction(0), Fraction(60), text[:20_000]),))
    assert seconds(lambda: draft([fifth])) <= 6


def test_no_word_is_lost_between_the_cues_and_the_draft() -> None:
    for name in NAMES:
        told = read(name)
        spoken = " ".join(cue.text for cue in told.narration.cues)
        landed = " ".join(landing.sentence.words for landing in draft([told.narration]).landings)
        assert re.findall(r"\w+", landed) == re.findall(r"\w+", spoken)
