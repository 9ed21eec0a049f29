"""What became of the things of a sentence, told without a verb: "washer off", "he's out", "nuts on and tight"."""

from dataclasses import replace
from functools import partial

from procbuilder.infer.dictionary.nouns import Thing
from procbuilder.infer.hearing.case import Now
from procbuilder.infer.hearing.listening import Line, Talk
from procbuilder.infer.hearing.meaning import meaning
from procbuilder.infer.hearing.memory import Reach, renamed
from procbuilder.infer.hearing.outcome import INWARD
from procbuilder.infer.hearing.results import pointed_result, result
from procbuilder.infer.hearing.same import Same
from procbuilder.infer.hearing.told import Told
from procbuilder.model.heard import Act

_NOT_POINTED = ("switched", "driven", "vehicle", "fluid", "paste", "tool", "worn", "body", "dirt", "pressure", "brake")
"""What "it's off" does not say to be taken off."""


class Reports:
    """Hears in one sentence what became of its things."""

    def __init__(self, talk: Talk, line: Line, same: Same) -> None:
        self.talk, self.line, self.same = talk, line, same
        self.book, self.clauses = talk.book, line.clauses

    def take(self, found: Thing, at: int) -> int | None:
        """What became of a thing, told without a verb: "washer off"."""
        clauses = self.clauses
        aside = self.line.aside or clauses.verbs or clauses.busy or clauses.low(at - 1) == "with" or clauses.asks(at)
        if aside or (became := self._became(found)) is None:
            return None
        told = replace(became, things=(*clauses.company, *became.things))
        if not self.same.tell(told, at):
            return None
        self.line.same_until, self.line.place_until = told.end, self.clauses.behind_place(told.end)
        return told.end

    def _became(self, found: Thing) -> Told | None:
        """What became of a thing, as it is known now."""
        if found.pointed and not found.name and (told := self._pointed(found)) is not None:
            return told
        status = self.talk.status
        now = Now(
            off=self.talk.is_off(found.name),
            gone=status.is_gone(found.name),
            slack=status.holds("slack", found.name),
            back=self.talk.may_go_on(found.name),
            late=status.is_late,
            shut=status.holds("open", found.name, "off"),
            raised=status.state_of(found.name),
            begun=bool(self.talk.before),
            held=bool(self.line.holders),
            temporary=status.is_for_now(found.name),
        )
        return result(self.clauses, found, now)

    def _pointed(self, found: Thing) -> Told | None:
        """ "There, he's out": of a thing that has just been named and is not so yet."""
        status = self.talk.status
        subject = self.clauses.subject
        now = Now(late=status.is_late, held=bool(self.line.holders))
        told = pointed_result(self.clauses, found, now)
        relative = self.clauses.low(found.start - 1) in ("one", "ones")
        if told is None or relative or (subject is not None and subject.end == found.start):
            return None
        return self._named(found, told)

    def _named(self, found: Thing, told: Told) -> Told | None:
        """The same told of the thing that is pointed at; None when there is none."""
        named = self.talk.memory.named(found, partial(self._may_be, told))
        if not named.name:
            return None
        return replace(told, things=(renamed(found, named),))

    def _may_be(self, told: Told, name: str, reach: Reach) -> bool:
        """True for a thing that a pronoun may stand for, by what is said to have become of it."""
        status = self.talk.status
        if not self.talk.memory.is_solid(name) or self.book.is_in(name, _NOT_POINTED):
            return False
        match told.verb:
            case "take":
                return reach is not Reach.FAR and (not status.is_open(name))
            case "put":
                return status.is_gone(name)
            case _:
                return status.is_late

    def settled(self, told: Told) -> Told:
        """ "Split ring, pushed down": what may go on does so, whatever the verb; with what is named before it."""
        first, subject = told.things[0], self.clauses.subject
        company = [one for one in self.clauses.company if (first is subject and one.name)]
        told = replace(told, things=(*company, first))
        name, ways = first.name, frozenset(told.particles)
        block = meaning(told, name, self.book, self.talk.status)
        goes_down = ways & (INWARD | {"down"}) and self.talk.may_go_on(name)
        is_work = block is None or block.act is Act.WORK
        return replace(told, verb="put", particles=("on",)) if is_work and goes_down else told
