"""Cues of a subtitle file joined into spoken sentences, none of them lost."""

import re
from collections.abc import Iterable, Iterator, Mapping
from fractions import Fraction
from itertools import pairwise

from procbuilder.infer.dictionary.wordbook import wordbook
from procbuilder.infer.hearing.captions import begins
from procbuilder.model.heard import Sentence
from procbuilder.model.origin import Place
from procbuilder.model.procedure import Cue, Narration

PAUSE = Fraction(3, 2)
"""Seconds of silence that end a sentence whose last word has no full stop."""
MOST_WORDS = 60
"""Words of one sentence; what is longer is cut, so that no text takes longer than its length."""
MOST_CUES = 12
"""Cues of one sentence; recognition without any full stop is cut here at the latest."""
WORDS_A_STOP = 60
"""With fewer full stops than one in so many words, a text has none that could be relied on."""

_END = re.compile(r"(?<![.!?…])[.!?…]+[\"'”’)]?(?=\s|\Z)")


def sentences(narration: Narration, language: str = "en") -> tuple[Sentence, ...]:
    """The sentences of a recording in the order in which they were said, numbered from 1.

    A sentence ends with a full stop. Where speech recognition wrote none, it ends with a pause, and before
    words with which a new one begins.
    """
    cues = sorted((cue for cue in narration.cues if cue.text.strip()), key=lambda cue: (cue.start, cue.end))
    texts = [" ".join(cue.text.split()) for cue in cues]
    pieces = list(_pieces(cues, begins(texts, wordbook(language)) if _has_no_stops(texts) else {}))
    return tuple(
        Sentence(words, place, narration.recording, start, end, number)
        for number, (words, place, start, end) in enumerate(pieces, 1)
    )


Piece = tuple[str, Place, Fraction, Fraction]


def _has_no_stops(texts: list[str]) -> bool:
    words, stops = sum(len(text.split()) for text in texts), sum(len(_END.findall(text)) for text in texts)
    return words > WORDS_A_STOP * stops


def _pieces(cues: list[Cue], starts: Mapping[int, list[int]]) -> Iterator[Piece]:
    open_parts: list[Piece] = []
    for number, cue in enumerate(cues):
        if open_parts and (cue.start - open_parts[-1][3] > PAUSE or len(open_parts) >= MOST_CUES):
            yield _joined(open_parts)
            open_parts = []
        if 0 in starts.get(number, ()) and open_parts:
            yield _joined(open_parts)
            open_parts = []
        for words, start, end, whole in _cut(cue, starts.get(number, ())):
            open_parts.append((words, cue.place, start, end))
            if whole or sum(part[0].count(" ") + 1 for part in open_parts) >= MOST_WORDS:
                yield _joined(open_parts)
                open_parts = []
    if open_parts:
        yield _joined(open_parts)


def _cut(cue: Cue, starts: Iterable[int]) -> Iterator[tuple[str, Fraction, Fraction, bool]]:
    """The parts of a cue at its full stops; its time is shared out by the length of the words."""
    text = " ".join(cue.text.split())
    ends = _long_ends(sorted({match.end() for match in _END.finditer(text)} | {one for one in starts if one}), text)
    bounds = [0, *ends] if ends and ends[-1] == len(text) else [0, *ends, len(text)]
    length = max(cue.end - cue.start, Fraction(0))
    for first, last in pairwise(bounds):
        words = text[first:last].strip()
        if words:
            begin, end = (cue.start + length * place / len(text) for place in (first, last))
            yield words, begin, end, last in ends


def _long_ends(ends: list[int], text: str) -> list[int]:
    """The ends of the sentences, with further ones within those that are too long."""
    result: list[int] = []
    words = 0
    known = set(ends)
    for at, sign in enumerate(text):
        words = 0 if at in known else words + (sign == " ")
        if at in known or words >= MOST_WORDS:
            result.append(at)
            words = 0
    return result + [len(text)] * (len(text) in known)


def _joined(parts: Iterable[Piece]) -> Piece:
    pieces = list(parts)
    return " ".join(piece[0] for piece in pieces), pieces[0][1], pieces[0][2], pieces[-1][3]
