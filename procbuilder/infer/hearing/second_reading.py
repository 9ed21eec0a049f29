"""A second, smaller reading of a sentence, made apart from the first one: a known verb and the next thing it names.

It shares no more with the rules than the dictionary. What both find is sure: two readings that are wrong in different
ways seldom agree on a wrong act.
"""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace

from procbuilder.infer.dictionary.english import singular
from procbuilder.infer.dictionary.tokens import SIGNS, Token
from procbuilder.infer.dictionary.wordbook import Block, Wordbook, tokens_of
from procbuilder.model.heard import Act, Operation, Sentence

_MOST_BETWEEN = 5
"""So many words stand between a verb and the last word of its thing."""
_ENOUGH = 20
"""By so many operations it is judged how well the two readings agree on a speaker."""
_AGREED = 0.5
"""Of a speaker on whom they agree less, nothing is sure: he thinks aloud, and what both find is as often wrong."""
_SAME_WAY = {Act.OUT_AGAIN: Act.OFF, Act.FOR_NOW: Act.ON, Act.NIP: Act.TIGHTEN}
"""What this reading cannot tell apart, as it remembers nothing of what was done before."""

Reading = frozenset[tuple[Act, str]]
"""What is done, and the last word of the thing."""


def judged(operations: Sequence[Operation], sentences: Iterable[Sentence], book: Wordbook) -> tuple[Operation, ...]:
    """The operations of a narration, each sure when this reading finds it, too."""
    readings: dict[tuple[str, int], Reading] = {}
    last = ""
    for sentence in sentences:
        reader = _Reader(tokens_of(sentence.words, book), book, last)
        readings[sentence.recording, sentence.number] = frozenset((_way(act), name) for act, name in reader.acts())
        last = reader.last
    found = [(_way(one.act), _head(one)) in readings[one.said.recording, one.said.number] for one in operations]
    aloud = len(found) >= _ENOUGH and sum(found) < _AGREED * len(found)
    return tuple(replace(one, sure=sure and not aloud) for one, sure in zip(operations, found, strict=True))


def _head(operation: Operation) -> str:
    return singular(operation.object.split()[-1].casefold()) if operation.object else ""


def _way(act: Act) -> Act:
    return _SAME_WAY.get(act, act)


class _Reader:
    def __init__(self, tokens: Sequence[Token], book: Wordbook, before: str) -> None:
        self.words, self.book, self.last = [token.low for token in tokens], book, before

    def acts(self) -> Iterator[tuple[Act, str]]:
        for at, word in enumerate(self.words):
            found = list(self._done(at)) if word in self.book.forms and self._is_command(at) else []
            yield from found or (self._become(at) if self._noun(at) and not self._is_told_aside(at) else ())
            self.last = self._noun(at) or self.last

    def _low(self, at: int) -> str:
        return self.words[at] if 0 <= at < len(self.words) else "."

    def _noun(self, at: int) -> str:
        """The thing that a word names; empty when it names none, or when its name goes on."""
        name, behind = singular(self._low(at)), singular(self._low(at + 1))
        if name not in self.book.nouns or behind in self.book.nouns:
            return ""
        return singular(self.book.filed(f"{self._low(at - 1)} {name}").split()[-1])

    def _is_command(self, at: int) -> bool:
        """True for a verb with nothing before it but openers, or "I", "you" or "we" with their helpers."""
        back = at - 1
        while self._passes(back):
            back -= 1
        word = self._low(back)
        return (word in SIGNS or self.book.has("speakers", word)) and not self._is_told_aside(back)

    def _passes(self, at: int) -> bool:
        kinds = ("openers", "helpers", "adverbs", "and")
        return at >= 0 and self._low(at) not in SIGNS and any(self.book.has(kind, self._low(at)) for kind in kinds)

    def _is_told_aside(self, at: int) -> bool:
        """A reason, a time or a doubt stands before it in the same clause."""
        while at >= 0 and self._low(at) not in SIGNS:
            word = self._low(at)
            if any(self.book.has(kind, word) for kind in ("negations", "supposed", "unreal", "others", "subordinate")):
                return True
            at -= 1
        return False

    def _done(self, at: int) -> Iterator[tuple[Act, str]]:
        """What a verb does to the next thing, or to what "it" stands for."""
        ways, thing, end = self._object(at + 1)
        things = [thing] if thing else []
        while things and self._low(end) in ("and", ",") and (more := self._object(end + 1))[1] and not more[0]:
            things.append(more[1])
            end = more[2]
        for verb, _ in self.book.forms[self._low(at)]:
            for one in things:
                block = next((b for b in self.book.by_verb.get(verb, ()) if _fits(b, verb, ways, one, self.book)), None)
                if block is not None:
                    yield block.act, one

    def _object(self, at: int) -> tuple[set[str], str, int]:
        """The ways in and behind the thing, its last word, and the place behind it."""
        ways: set[str] = set()
        for place in range(at, at + _MOST_BETWEEN):
            word = self._low(place)
            if word in SIGNS:
                break
            pronoun = self.book.has("one_pronouns", word) or self.book.has("many_pronouns", word)
            thing = self._noun(place) or (self.last if pronoun and not self._names_on(place + 1) else "")
            if thing:
                end = place + 1
                while self.book.has("particles", self._low(end)) or self.book.has("adverbs", self._low(end)):
                    ways.add(self._low(end))
                    end += 1
                return ways, thing, end
            if self.book.has("particles", word):
                ways.add(word)
        return ways, "", at

    def _names_on(self, at: int) -> bool:
        """ "Those two bolts": a name follows the pronoun."""
        return any(self._noun(each) for each in range(at, at + 3)) and self._low(at) not in SIGNS

    def _become(self, at: int) -> Iterator[tuple[Act, str]]:
        """ "Cover off", "the bolts are tight", "the cover lifts off": how a thing is then."""
        place = at + 1
        while self.book.has("be", self._low(place)) or self.book.has("adverbs", self._low(place)):
            place += 1
        verbs = self.book.forms.get(self._low(place), ())
        place += any(self.book.has("moving", verb) for verb, _ in verbs) or self._low(place) in ("goes", "go")
        word = self._low(place)
        if word in ("off", "out"):
            yield Act.OFF, self._noun(at)
        elif word in ("on", "back", "in"):
            yield Act.ON, self._noun(at)
        elif word in self.book.states:
            verb = self.book.states[word]
            yield from ((block.act, self._noun(at)) for block in self.book.by_verb.get(verb, ())[:1])


def _fits(block: Block, verb: str, ways: set[str], thing: str, book: Wordbook) -> bool:
    if block.things and not book.is_in(thing, block.things):
        return False
    if block.alone:
        return not ways
    if block.so or block.about or block.where or block.by or block.means or block.when or block.moves:
        return False
    return (
        not block.particles
        or bool(block.particles & ways)
        or ("" in block.particles and not ways and verb not in block.not_alone)
    )
