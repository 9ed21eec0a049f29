"""Remembers the things that a sentence only names, so that "it" and "those" can stand for them."""

from procbuilder.infer.dictionary.nouns import Thing
from procbuilder.infer.dictionary.tokens import SIGNS
from procbuilder.infer.hearing.listening import Line, Talk
from procbuilder.infer.hearing.memory import renamed

_INTRODUCES = ("there", "here", "that", "those", "these", "this")


class Naming:
    """Remembers the things of one sentence."""

    def __init__(self, talk: Talk, line: Line) -> None:
        self.talk, self.clauses, self.book = talk, line.clauses, talk.book

    def remember(self, thing: Thing, at: int) -> None:
        """A thing that is only named: the subject of its clause, or something that stands beside another."""
        clauses = self.clauses
        thing = self._with_name(thing, at)
        before = clauses.low(at - 1) if at > clauses.clause else ""
        leads = self.book.has("prepositions", before) or self.book.has("particles", before)
        if before not in self.book.idle and not leads:
            clauses.subject = thing
            self._remember_subject(thing, at, before)
        elif before in ("by", "with") and self.book.knows(thing.name) and self._is_held(at):
            self.talk.memory.introduce(thing)
        elif thing.count or before in self.book.idle or not self.talk.memory.named_here:
            self._mention(thing)
        else:
            self._mention_behind(thing)

    def _with_name(self, thing: Thing, at: int) -> Thing:
        """ "The lower one is behind the cable": the name of what the sentence is about."""
        if not (thing.pointed and thing.name and self._is_topic(at)):
            return thing
        named = self.talk.memory.named(thing)
        return renamed(thing, named) if named.name else thing

    def _remember_subject(self, thing: Thing, at: int, before: str) -> None:
        is_be = self.book.has("be", before)
        counted = bool(thing.count) and self.book.knows(thing.name) and is_be
        is_topic = self._is_topic(at) and self.book.has("be", self.clauses.low(thing.end)) and bool(thing.name)
        shown = self._is_introduced(at) and self.book.has("articles", self.clauses.low(at))
        owned = before in ("has", "have", "got") and self.book.is_in(thing.name, ("fastener", "clip"))
        stands_first = thing.count or self._is_topic(at) or at == self.clauses.clause
        if (is_topic and self.clauses.low(at) == "the") or (shown and not (counted or is_topic)):
            self.talk.memory.introduce(thing)
        elif counted or is_topic:
            self.talk.memory.mention(thing)
        elif owned or self._is_introduced(at) or (not is_be and stands_first):
            self._mention(thing)
        else:
            self._mention_behind(thing)

    def _mention(self, found: Thing) -> None:
        """Remember a thing that was named without an operation, if its words leave no doubt that it is one."""
        before = [self.clauses.low(at) for at in range(self.clauses.clause, found.start)]
        if "nobody" in before or (before and before[-1] in ("number", "size", "grade")):
            return
        first = self.clauses.low(found.start)
        if found.end == found.start + 1 and self.book.has("manners", first):
            return
        if first != "no" and (self.book.has("articles", first) or found.count or self.book.knows(found.name)):
            self.talk.memory.mention(found)

    def _mention_behind(self, found: Thing) -> None:
        """Remember a thing that only stands beside another: "two screws hold the panel"."""
        if self.book.knows(found.name) and self.clauses.low(found.start) in ("the", "this"):
            self.talk.memory.mention_behind(found)

    def _is_held(self, at: int) -> bool:
        """ "It's held along the frame by two clips"."""
        return any(self.clauses.has("held", each) for each in range(self.clauses.clause, at))

    def _is_introduced(self, at: int) -> bool:
        """True behind "there's" and "that's"."""
        indefinite = self.clauses.low(at) in ("a", "an") and self.clauses.low(at - 2) not in ("it", "they")
        introduces = self.clauses.low(at - 2) in _INTRODUCES
        return self.book.has("be", self.clauses.low(at - 1)) and (indefinite or introduces)

    def _is_topic(self, at: int) -> bool:
        """True for a thing that a sentence begins with, behind no more than "now" and "then"."""
        return all(self.clauses.has("openers", before) or self.clauses.low(before) in SIGNS for before in range(at))
