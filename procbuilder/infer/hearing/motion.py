"""What a thing does by itself when it is free: "the belt rolls off", "the bowl drops", "the pulley slides home"."""

from dataclasses import replace

from procbuilder.infer.dictionary.inflection import Form
from procbuilder.infer.dictionary.nouns import Thing
from procbuilder.infer.hearing.outcomes import INWARD, OUTWARD
from procbuilder.infer.hearing.talk import Line, Talk
from procbuilder.infer.hearing.verb_phrase import Told

_OUT = OUTWARD - {"away"} | {"loose"}
_DOWN = frozenset({"down", "through", "into", "forward"})
_IN = INWARD | {"through", "onto", "into"}
_THERE = _IN | {"under", "underneath", "round", "around", "across", "between", "behind"}
_NO_THING = ("fluid", "pressure", "dirt", "body", "worn", "paste", "vehicle", "tool", "record")
"""What drips, blows or walks off by itself and is not taken off."""


class Motion:
    """Hears in one sentence what comes off or goes on by itself."""

    def __init__(self, talk: Talk, line: Line) -> None:
        self.talk, self.line, self.book, self.clauses = talk, line, talk.book, line.clauses

    def of(self, told: Told) -> Told | None:
        """The same as if a verb of work had said it; None when the thing is not taken off or put on by that."""
        subject = self.clauses.subject
        if subject is None or told.form is Form.ING or self._moves_another(told):
            return None
        if told.form is Form.PAST and self._is_participle(told.start):
            return None
        if told.form is Form.BASE and not (subject.many and self._stands_before(subject, told.start)):
            return None
        ways, moves = frozenset(told.particles), self.book.has("moving", told.verb)
        off = replace(told, verb="take", particles=("off",), things=())
        name = self.talk.pointing.named(subject, off).name if subject.pointed else subject.name
        if subject.pointed and self.book.is_in(name, ("fastener", "clip")) and not ways & _OUT:
            return None
        if self.book.is_in(name, _NO_THING) or not (self.book.knows(name) or self._is_the_one(subject)):
            return None
        if moves and not self.talk.status.is_gone(name) and not self._goes_back(name) and self._comes_off(told, ways):
            return off
        goes_on = subject.name and self._goes_back(name) and ways & _IN
        return replace(told, verb="put", things=()) if (goes_on) else None

    def _is_participle(self, at: int) -> bool:
        """ "The bolt's snapped off": what it is, and not what it does; but "the cover's come off"."""
        back = at - 1
        while self.clauses.has("adverbs", back) or self.clauses.low(back) == "been":
            back -= 1
        return self.clauses.has("be", back)

    def _stands_before(self, subject: Thing, at: int) -> bool:
        return all(self.clauses.has("adverbs", between) for between in range(subject.end, at))

    def _goes_back(self, name: str) -> bool:
        status = self.talk.status
        return status.is_late and self.talk.may_go_on(name) and not status.is_for_now(name)

    def _is_the_one(self, subject: Thing) -> bool:
        """ "The anchor": a thing that no list holds, when something has just been undone."""
        return bool(subject.name) and self.clauses.has("strict_articles", subject.start)

    def _moves_another(self, told: Told) -> bool:
        return any(not self._leads_to(thing) for thing in told.things)

    def _leads_to(self, thing: Thing) -> bool:
        """ "Through the bracket", "into my hand"."""
        before = self.clauses.low(thing.start - 1)
        return self.book.has("prepositions", before) or self.book.has("particles", before)

    def _comes_off(self, told: Told, ways: frozenset[str]) -> bool:
        if self.line.times.conditional_at(told.start):
            return False
        if told.verb == "run":
            return False
        if ways & _OUT or "away" in ways:
            return True
        falls = self.book.has("falling", told.verb) and (not ways or bool(ways & _DOWN))
        return falls or "through" in ways
