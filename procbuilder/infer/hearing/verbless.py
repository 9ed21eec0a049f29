"""Operations told without a verb of their own: "washer off", "then the rear pins"; all else named is remembered."""

from dataclasses import replace
from functools import partial

from procbuilder.infer.dictionary.nouns import Thing
from procbuilder.infer.dictionary.tokens import SIGNS
from procbuilder.infer.hearing.in_turn import Sharing
from procbuilder.infer.hearing.meaning import meaning
from procbuilder.infer.hearing.memory import Reach, renamed
from procbuilder.infer.hearing.outcomes import INWARD, Now
from procbuilder.infer.hearing.results import pointed_result, result
from procbuilder.infer.hearing.talk import Line, Talk
from procbuilder.infer.hearing.telling import Same
from procbuilder.infer.hearing.verb_phrase import Told
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
        introduces = self.clauses.has("introduces", at - 2)
        return self.book.has("be", self.clauses.low(at - 1)) and (indefinite or introduces)

    def _is_topic(self, at: int) -> bool:
        """True for a thing that a sentence begins with, behind no more than "now" and "then"."""
        return all(self.clauses.has("openers", before) or self.clauses.low(before) in SIGNS for before in range(at))


class Verbless:
    """Takes the things of one sentence that no verb took."""

    def __init__(self, talk: Talk, line: Line, same: Same) -> None:
        self.line, self.clauses, self.same = line, line.clauses, same
        self.reports, self.sharing, self.naming = (
            Reports(talk, line, same),
            Sharing(talk, line, same),
            Naming(talk, line),
        )

    def take(self, thing: Thing, at: int) -> int:
        """The subject of what follows, or told with what became of it; gives back where to go on."""
        if (end := self.reports.take(thing, at)) is not None:
            return end
        if not self.sharing.take(thing, at):
            self.sharing.note(thing, at)
            self.naming.remember(thing, at)
        return thing.end
