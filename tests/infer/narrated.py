"""Narrations of the tests with the truth that was written by hand beside them."""

import re
import tomllib
from dataclasses import dataclass
from pathlib import Path

from procbuilder.infer.dictionary.english import thing
from procbuilder.infer.hearing.sentences import sentences
from procbuilder.model.heard import Operation, Sentence
from procbuilder.model.procedure import Narration
from procbuilder.read.subtitles import read_subtitles
from procbuilder.read.text import read_file

FOLDER = Path(__file__).parent / "narrations"
NAMES = sorted(path.stem for path in FOLDER.glob("*.toml"))


@dataclass(frozen=True)
class Wanted:
    """One operation of the truth: ``off 4 x R-clip``, with ``?`` in front when a listener may also leave it out."""

    act: str
    names: frozenset[str]
    """What it may be called."""
    tense: str
    optional: bool

    def is_told_by(self, operation: Operation) -> bool:
        """Act, tense and thing are the same; of an optional one the act alone."""
        same = operation.act == self.act and (self.optional or operation.tense == self.tense)
        return same and (self.optional or bool({thing(operation.name), thing(operation.object)} & self.names))


@dataclass(frozen=True)
class Told:
    """A narration with its truth."""

    name: str
    narration: Narration
    sentences: tuple[Sentence, ...]
    unseen: bool
    """Never looked at while rules were made."""
    free: bool
    """The speaker thinks aloud, in half sentences, and tells most by how things are then."""
    said: dict[int, list[Wanted]]
    open: list[frozenset[str]]
    """What is open at the end, each with all names it may have."""
    starts: list[int]
    """Numbers of the sentences with which a step begins."""
    talk: set[int]
    misplaced: list[tuple[int, int]]
    """A sentence said too late, and the one at whose step it belongs."""


def read(name: str) -> Told:
    """One narration; the number of its sentences must be that of the truth."""
    truth = tomllib.loads((FOLDER / f"{name}.toml").read_text(encoding="utf-8"))
    cues, problems = read_subtitles(read_file(FOLDER / f"{name}.srt"))
    narration = Narration(truth["recording"], cues)
    found = sentences(narration)
    assert problems == ()
    assert len(found) == truth["sentences"] >= 60
    return Told(
        name,
        narration,
        found,
        truth["unseen"],
        truth.get("free", False),
        {int(number): [wanted(text) for text in texts] for number, texts in truth["said"].items()},
        [names_of(text) for text in truth["open"]],
        truth["starts"],
        set(truth["talk"]),
        [(late, place) for late, place in truth["misplaced"]],
    )


def wanted(text: str) -> Wanted:
    text, _, tense = text.partition(" @")
    optional = text.startswith("?")
    act, _, names = text.lstrip("?").partition(" ")
    act = {"temp": "for now", "out": "out again"}.get(act, act)
    return Wanted(act, frozenset(thing(uncounted(one)) for one in names.split("/")), tense or "now", optional)


def names_of(text: str) -> frozenset[str]:
    """``slackened | 2 x screw/pump screw`` as ``slackened: screw`` and ``slackened: pump screw``."""
    opening, _, names = text.partition(" | ")
    return frozenset(f"{opening}: {thing(uncounted(one))}" for one in names.split("/"))


def uncounted(text: str) -> str:
    return re.sub(r"\A\d+ x ", "", text)
