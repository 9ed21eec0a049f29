"""Captions that speech recognition wrote without full stops: where sentences begin, and how much is heard.

The two narrations are our own inventions. With the truth they were written before any rule for such captions.
"""

import tomllib
from collections.abc import Iterable
from fractions import Fraction
from pathlib import Path

import pytest

from procbuilder.infer.hearing.operations import operations
from procbuilder.infer.hearing.sentences import sentences
from procbuilder.model.heard import Operation
from procbuilder.model.procedure import Narration
from procbuilder.read.subtitles import read_subtitles
from procbuilder.read.text import read_file
from tests.infer.narrated import FOLDER, Wanted, wanted
from tests.infer.spoken import narrated

RUNNING = sorted((FOLDER / "running").glob("*.srt"))
NEAR = 2
"""Seconds by which an operation may lie beside its sentence."""


@pytest.mark.parametrize(
    ("cues", "found"),
    [
        (["take the cover off then lift the", "drum out"], ["take the cover off", "then lift the drum out"]),
        (
            ["the cap is tight so I turn it", "and you pull it off"],
            ["the cap is tight", "so I turn it", "and you pull it off"],
        ),
        (
            ["you need to take the cover", "off if you see oil stop"],
            ["you need to take the cover off", "if you see oil stop"],
        ),
        (["pull the pin. lift", "the lid off."], ["pull the pin.", "lift the lid off."]),
    ],
    ids=["commands", "who does it", "a condition stays whole", "full stops are believed"],
)
def test_a_sentence_begins_with_a_command_or_with_who_does_it(cues: list[str], found: list[str]) -> None:
    assert [one.words for one in sentences(narrated(*cues, gap=1))] == found


def test_captions_without_full_stops_are_heard_in_part() -> None:
    scores = [score(path) for path in RUNNING]
    right, wrong, missed = (sum(one) for one in zip(*scores, strict=True))
    print(f"running captions: precision {right / (right + wrong):.2f}, recall {right / (right + missed):.2f}")
    assert len(scores) == 2
    assert right / (right + wrong) >= 0.7
    assert right / (right + missed) >= 0.55


def score(path: Path) -> tuple[int, int, int]:
    """How many operations were found and right, found and wrong, and missed."""
    said = tomllib.loads(path.with_suffix(".toml").read_text(encoding="utf-8"))["said"]
    left = [(Fraction(at), wanted(text)) for at, _, text in (line.partition(" ") for line in said)]
    right = wrong = 0
    for operation in operations(sentences(Narration("film", read_subtitles(read_file(path))[0]))):
        found = match(operation, left)
        if found is None:
            wrong += 1
        else:
            left.remove(found)
            right += not found[1].optional
    return right, wrong, sum(not one.optional for _, one in left)


def match(operation: Operation, left: Iterable[tuple[Fraction, Wanted]]) -> tuple[Fraction, Wanted] | None:
    said = operation.said
    near = [(at, one) for at, one in left if said.start - NEAR <= at <= said.end + NEAR and one.is_told_by(operation)]
    return min(near, key=lambda one: (one[1].optional, abs(said.start + said.end - 2 * one[0])), default=None)
