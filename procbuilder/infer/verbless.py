"""Operations told without a verb of their own: "washer off", "then the rear pins", "new gasket"."""

from dataclasses import replace
from functools import partial

from procbuilder.infer.again import says_same
from procbuilder.infer.inflect import Form
from procbuilder.infer.listening import Line, Talk
from procbuilder.infer.meaning import meaning
from procbuilder.infer.memory import Reach, renamed
from procbuilder.infer.naming import Naming
from procbuilder.infer.nouns import Thing, read_thing
from procbuilder.infer.outcome import joined
from procbuilder.infer.results import Now, pointed_result, result
from procbuilder.infer.same import Same
from procbuilder.infer.status import CLOSING
from procbuilder.infer.tokens import SIGNS
from procbuilder.infer.told import Told
from procbuilder.infer.unknown import mover
from procbuilder.model.heard import Act
from procbuilder.model.words import is_plural, thing

_NOT_POINTED = ("switched", "driven", "vehicle", "fluid", "paste", "tool", "worn", "body", "dirt", "pressure", "brake")
"""What "it's off" does not say to be taken off."""


class Verbless:
    """Takes the things of one sentence that no verb took."""

    def __init__(self, talk: Talk, line: Line, same: Same) -> None:
        self.talk, self.line = talk, line
        self.same, self.naming = same, Naming(talk, line)
        self.book, self.clauses = talk.book, line.clauses

    def take(self, thing: Thing, at: int) -> int:
        """The subject of what follows, or told with what became of it; gives back where to go on."""
        if not self.line.aside and (told := mover(self.clauses, thing)) is not None and self.same.tell(told, at):
            return told.end
        if (end := self._result(thing, at)) is not None:
            return end
        pairs = self.line.pairs
        if self._comes_along(thing):
            self.same.same_for(thing, (pairs or self.talk.before)[-1:])
            return thing.end
        if pairs and self._is_too(thing, at):
            self.same.same_for(thing, pairs[-1:], any_thing=True)
            return thing.end
        if self._is_same_again(thing, at):
            if (
                pairs
                and pairs[-1][1].act in CLOSING
                and pairs[-1][1].act is not Act.ON
                and self.talk.may_go_on(thing.name)
            ):
                self.same.tell(Told("fit", Form.BASE, at, thing.end, (thing,)), at)
                return thing.end
            pointed_out = self.clauses.low(at) == "the"
            self.same.same_for(thing, (pairs or self.talk.before)[-1:], any_thing=pointed_out)
            self.line.same_until = thing.end
            return thing.end
        if not self.line.aside and self._is_held_up_by(thing, at):
            self.same.tell(Told("put", Form.BASE, at, thing.end, (thing,), ("on",)), at)
        if self._holds_something(thing, at):
            self.line.holders.append(thing)
        self.naming.remember(thing, at)
        return thing.end

    # -- what became of it

    def take_person(self, at: int) -> int | None:
        """ "There, he's out": things are "he" and "she", too; None when it tells of nothing done."""
        pointed = Thing("", at, at + 1, many=self.clauses.low(at) == "they", pointed=True)
        return self._result(pointed, at)

    def _result(self, found: Thing, at: int) -> int | None:
        """What became of a thing, told without a verb: "washer off"."""
        clauses = self.clauses
        aside = self.line.aside or clauses.verbs or clauses.busy or clauses.low(at - 1) == "with" or clauses.asks(at)
        if not self.line.aside and self._is_new_one(found, at):
            told = Told("fit", Form.BASE, found.start, found.end, (found,))
            return told.end if self.same.tell(told, at) else None
        if aside or (became := self._became(found)) is None:
            return None
        company = [one for one in clauses.company if one.name and not one.measure and not self._is_feature(one)]
        told = replace(became, things=(*company, *became.things))
        if became.verb == "torque" and self._is_tight(told):
            return None
        if not self.same.tell(told, at):
            return None
        self.line.same_until, self.line.place_until = told.end, self.clauses.behind_place(told.end)
        return self._also(told, at)

    def _is_tight(self, told: Told) -> bool:
        """ "Tighten the bolts. They go to twenty.": said once, and its value."""
        last = self.line.heard[-1] if self.line.heard else self.talk.last
        names = {thing(self.talk.memory.named(one).name) for one in told.things}
        return last is not None and last.act is Act.TIGHTEN and thing(last.object) in names

    def _became(self, found: Thing) -> Told | None:
        """What became of a thing, as it is known now."""
        if found.pointed and not found.name and not found.count:
            return self._pointed(found)
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
            temporary=status.is_for_now(found.name),
        )
        return result(self.clauses, found, now)

    def _pointed(self, found: Thing) -> Told | None:
        """ "There, he's out": of a thing that has just been named and is not so yet."""
        status = self.talk.status
        told = pointed_result(self.clauses, found, late=status.is_late)
        if told is None:
            return None
        named = self.talk.memory.named(found, partial(self._may_be, told))
        if not named.name or (is_plural(named.name) or (named.count or 1) > 1) is not found.many:
            return None
        return replace(told, things=(renamed(found, named),))

    def _may_be(self, told: Told, name: str, reach: Reach) -> bool:
        """True for a thing that a pronoun may stand for, by what is said to have become of it."""
        status = self.talk.status
        if not self.talk.memory.is_solid(name) or self.book.is_in(name, _NOT_POINTED):
            return False
        match told.verb:
            case "take":
                return reach is not Reach.FAR and (not status.is_open(name) or status.is_for_now(name))
            case "put":
                return status.is_gone(name)
            case _:
                return status.is_late and (status.is_open(name) or self.book.is_in(name, ("fastener",)))

    def _also(self, told: Told, at: int) -> int:
        """ "Nuts on and tight": what else became of it; gives back where to go on."""
        outcome = joined(self.clauses, told.end)
        if outcome is None:
            return told.end
        things = tuple(replace(thing, end=outcome.end - len(outcome.ways)) for thing in told.things)
        ways = [way for way in outcome.ways if self.book.states.get(way)]
        if not ways:
            return told.end
        further = Told(self.book.states[ways[0]], Form.BASE, told.start, outcome.end, things, outcome.ways)
        self.same.tell(further, at)
        return outcome.end

    def _is_feature(self, thing: Thing) -> bool:
        """ "Delivery side, screw out": a part of the item that tells where."""
        return any(self.book.has(kind, thing.name.split()[-1]) for kind in ("features", "faces"))

    def _is_new_one(self, found: Thing, at: int) -> bool:
        """ "Nut to seventy, and a new split pin": at the end of a sentence in which things are put back."""
        goes_on = bool(self.line.pairs) and self.line.pairs[-1][1].act in CLOSING
        return goes_on and found.new and self.clauses.clause == at and self.clauses.low(found.end) in SIGNS

    # -- the same again

    def _is_same_again(self, found: Thing, at: int) -> bool:
        """ "Needle back in, then the pin" and "cover on, two screws": the same goes for them."""
        clauses, heard = self.clauses, self.line.heard
        before = clauses.low(at - 1) if at else ""
        follows = before in ("and", "plus") and self.line.same_until in (at - 1, at - 2)
        holds = before == "and" and self.line.place_until in (at - 1, at - 2)
        follows = follows or (holds and self.book.is_in(found.name, ("fastener", "clip")))
        joined = before == "then" or follows or (self.book.has("be", before) and clauses.low(at - 2) == "so")
        if clauses.busy or not (self._ends_behind(found) or (joined and clauses.low(found.end) == "and")):
            return False
        if joined:
            return bool(heard)
        last = heard[-1] if heard else self.talk.last
        goes_on = last is not None and last.act in (CLOSING if heard else (Act.ON,))
        goes_on = goes_on and (before == "," if heard else not before)
        fastener = self.book.is_in(found.name, ("fastener", "clip", "seal"))
        is_counted = bool(found.count) or len(heard) > 1 or not found.many
        is_counted = is_counted and clauses.low(found.start) != "same" and not self._is_sized(found)
        told_here = bool(heard) and clauses.low(found.end) in SIGNS
        fastener = fastener or (told_here and self.talk.status.is_late and self.talk.is_off(found.name))
        return goes_on and fastener and (found.new or (is_counted and (told_here or self.talk.is_off(found.name))))

    def _comes_along(self, found: Thing) -> bool:
        """ "Slide the drum off and the bearing comes with it"."""
        clauses, at = self.clauses, found.end
        goes = clauses.low(at) in ("comes", "come", "goes", "go", "came", "went")
        at += 1 + (clauses.low(at + 1) in ("up", "along", "away"))
        told = self.line.pairs or self.talk.before
        return bool(told) and goes and self._is_with_it(at) and bool(found.name)

    def _is_with_it(self, at: int) -> bool:
        return self.clauses.low(at) == "with" and self.clauses.low(at + 1) in ("it", "them", "that", "him", "her")

    def is_put_right(self, told: Told) -> bool:
        """ "The housing's screwed back on": how a thing is that was open."""
        clauses, subject = self.clauses, self.clauses.subject
        forms = {form for _, form in self.book.forms.get(clauses.low(told.start), ())}
        back = told.start - 1
        while clauses.has("adverbs", back) or clauses.low(back) == "been":
            back -= 1
        is_be = clauses.low(back) in ("'s", "is", "are", "'re", "has", "have", "'ve")
        if subject is None or not subject.name or subject.end != back or not is_be or forms != {Form.PAST}:
            return False
        block = meaning(replace(told, moves=False), subject.name, self.book, self.talk.status)
        is_open = self.talk.may_go_on(subject.name) or self.talk.status.holds("slack", subject.name)
        return block is not None and block.act in CLOSING and is_open

    def take_brought(self, at: int) -> int | None:
        """ "It brings the bearing with it": what comes along; None when the token tells no such thing."""
        if self.clauses.low(at) not in ("brings", "brought", "bringing") or self.line.aside:
            return None
        found = read_thing(self.clauses.tokens, at + 1, self.book, governed=True)
        if found is None or not found.name:
            return None
        along = self.clauses.low(found.end) == "along"
        if not (along or self._is_with_it(found.end)):
            return None
        self.same.same_for(found, (self.line.pairs or self.talk.before)[-1:])
        return found.end + (1 if along else 2)

    def _holds_something(self, found: Thing, at: int) -> bool:
        """ "Two bolts and the cover lifts off"."""
        alone = at == self.clauses.clause and self._ends_behind(found) and not self.clauses.busy
        behind = self.clauses.low(found.end) == "," and self.clauses.low(found.end + 1) in self.book.numbers
        behind = behind and self.clauses.low(found.end + 2) in SIGNS
        counted = (found.count is not None or behind) and not self._is_sized(found) and not self.line.aside
        return alone and counted and self.book.is_in(found.name, ("fastener", "clip"))

    def _is_sized(self, found: Thing) -> bool:
        """ "Five mil Allen": the tool, and no five of them."""
        return any(self.clauses.has("units", at) for at in range(found.start, found.end))

    def _is_held_up_by(self, found: Thing, at: int) -> bool:
        """ "The bars are hanging in a strap": what holds a thing for the job only."""
        clauses = self.clauses
        leads = clauses.low(at - 1) in ("in", "on", "by", "with", "from", "off") and at - 1 > clauses.clause
        indefinite = clauses.low(at) in ("a", "an", "some", "two", "my", "bits")
        held = any(clauses.has("held_up", back) for back in range(clauses.clause, at))
        held = held and not any(clauses.has("negations", back) for back in range(at))
        return leads and indefinite and held and self.book.is_in(found.name, ("temporary", "support"))

    def _is_too(self, found: Thing, at: int) -> bool:
        """ "Take the nut off, washer too"."""
        clauses = self.clauses
        return says_same(clauses, found.end) and at == clauses.clause and bool(found.name) and not found.measure

    def _ends_behind(self, found: Thing) -> bool:
        return self.clauses.low(found.end) in SIGNS or self.clauses.has("prepositions", found.end)
