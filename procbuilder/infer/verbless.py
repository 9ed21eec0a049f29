"""Operations told without a verb of their own: "washer off", "then the rear pins", "new gasket"."""

from dataclasses import replace

from procbuilder.infer.again import bare_things, command, follows_again, more
from procbuilder.infer.inflect import Form
from procbuilder.infer.listening import Line, Pair, Talk
from procbuilder.infer.meaning import meaning
from procbuilder.infer.memory import Named, renamed
from procbuilder.infer.nouns import Thing
from procbuilder.infer.results import Now, result
from procbuilder.infer.status import CLOSING
from procbuilder.infer.telling import Teller
from procbuilder.infer.tokens import SIGNS
from procbuilder.infer.told import Told
from procbuilder.infer.unknown import mover
from procbuilder.infer.wordbook import Block
from procbuilder.model.heard import Act, Sure, Tense

_INTRODUCES = ("there", "here", "that", "those", "these", "this")


class Verbless:
    """Takes the things of one sentence that no verb took."""

    def __init__(self, talk: Talk, line: Line, teller: Teller) -> None:
        self.talk, self.line, self.teller = talk, line, teller
        self.book, self.clauses = talk.book, line.clauses

    def take(self, thing: Thing, at: int) -> int:
        """The subject of what follows, or told with what became of it; gives back where to go on."""
        if not self.line.aside and (told := mover(self.clauses, thing)) is not None and self._tell(told, at):
            return told.end
        if (end := self._result(thing, at)) is not None:
            return end
        pairs = self.line.pairs
        if self._comes_along(thing):
            self._same_for(thing, pairs[-1:])
            return thing.end
        if self._is_same_again(thing, at):
            pointed_out = self.clauses.low(at) == "the"
            self._same_for(thing, (pairs or self.talk.before)[-1:], any_thing=pointed_out)
            self.line.same_until = thing.end
            return thing.end
        self._remember(thing, at)
        return thing.end

    def take_command(self) -> None:
        """A command whose verb is not known: its first word, with the first thing behind it."""
        if self.line.pairs or (found := command(self.clauses)) is None:
            return
        told, one = found
        named = self.talk.memory.named(one)
        if named.name:
            self.talk.memory.handle(renamed(one, named))
            block = Block("", Act.WORK, frozenset())
            self.line.pairs = [(told, self.teller.made(block, told, named, Tense.NOW, Sure.LOW))]

    def take_again(self) -> None:
        """ "Then the rear pins": what was done in the sentence before, done to another thing."""
        if self.line.pairs:
            self._take_first()
            return
        if (count := more(self.clauses)) is not None and self.talk.moved:
            told, operation = self.talk.moved[0]
            again = Thing(operation.object, 0, len(self.clauses.tokens), count, many=count > 1)
            self._same_for(again, [(told, operation)], any_thing=True)
            return
        for again in follows_again(self.clauses):
            is_next = not again.new and any(token.low == "next" for token in self.clauses.tokens)
            moved = [pair for pair in self.talk.moved if is_next and pair[1].act in (Act.OFF, Act.ON)]
            self._same_for(again, moved or self.talk.before, any_thing=is_next)
        if not self.line.pairs:
            self._take_list(bare_things(self.clauses))

    def _take_first(self) -> None:
        """ "Then four new screws, and tighten all four": what goes on before the first verb."""
        behind = self.line.pairs[0][0].start
        listed = [told for told in bare_things(self.clauses) if told.end < behind]
        pairs, self.line.pairs = self.line.pairs, []
        self._take_list(listed)
        self.line.pairs += pairs

    def _take_list(self, listed: list[Told]) -> None:
        """What is new of a list goes on where the old one was; the rest goes on when things are being put back."""
        last = self.talk.last
        off = [told for told in listed if self.talk.is_off(told.things[0].name)]
        goes_on = len(off) == len(listed) > 1 and last is not None and last.act in CLOSING
        if not off and self._is_taken_off(listed):
            for told in listed:
                self._tell(replace(told, verb="take", particles=("off",)), told.start)
        for told in off:
            if goes_on or told.things[0].new:
                self._tell(told, told.start)
        if listed and not off and listed[0].things[0].new and self._is_renewed(listed[0].things[0]):
            self._tell(listed[0], listed[0].start)

    def _is_taken_off(self, listed: list[Told]) -> bool:
        """ "Nut, washer, pulley": while things are taken off, a list of things goes on with it."""
        last = self.talk.moved[0][1].act if self.talk.moved else None
        known = all(self.book.knows(told.things[0].name) and not told.things[0].new for told in listed)
        return len(listed) > 1 and known and last in (Act.OFF, Act.SLACKEN) and not self.talk.status.is_late

    def _is_renewed(self, thing: Thing) -> bool:
        """Seals and clips are new as a rule, whether it was said that the old ones came off or not."""
        return self.talk.status.is_late and self.book.is_in(thing.name, ("seal", "clip"))

    # -- what became of it

    def _result(self, found: Thing, at: int) -> int | None:
        """What became of a thing, told without a verb: "washer off"."""
        clauses = self.clauses
        aside = self.line.aside or clauses.verbs or clauses.busy or clauses.low(at - 1) == "with"
        if not self.line.aside and self._is_new_one(found, at):
            told = Told("fit", Form.BASE, found.start, found.end, (found,))
            return told.end if self._tell(told, at) else None
        status = self.talk.status
        now = Now(self.talk.is_off(found.name), status.is_late, status.holds("open", found.name, "off"))
        if aside or (became := result(clauses, found, now)) is None:
            return None
        company = [one for one in clauses.company if one.name and not one.measure and not self._is_feature(one)]
        told = replace(became, things=(*company, *became.things))
        return told.end if self._tell(told, at) else None

    def _is_feature(self, thing: Thing) -> bool:
        """ "Delivery side, screw out": a part of the item that tells where."""
        return self.book.has("features", thing.name.split()[-1])

    def _is_new_one(self, found: Thing, at: int) -> bool:
        """ "Nut to seventy, and a new split pin": at the end of a sentence in which things are put back."""
        goes_on = bool(self.line.pairs) and self.line.pairs[-1][1].act in CLOSING
        return goes_on and found.new and self.clauses.clause == at and self.clauses.low(found.end) in SIGNS

    def _tell(self, told: Told, at: int) -> list[Pair]:
        made = [(one, replace(operation, sure=Sure.LOW)) for one, operation in self.teller.tell(told, at)]
        self.line.pairs += made
        return made

    # -- the same again

    def _is_same_again(self, found: Thing, at: int) -> bool:
        """ "Needle back in, then the pin" and "cover on, two screws": the same goes for them."""
        clauses, heard = self.clauses, self.line.heard
        before = clauses.low(at - 1) if at else ""
        joined = before == "then" or (before == "and" and self.line.same_until == at - 1)
        if clauses.busy or not (self._ends_behind(found) or (joined and clauses.low(found.end) == "and")):
            return False
        if joined:
            return bool(heard)
        last = heard[-1] if heard else self.talk.last
        goes_on = last is not None and last.act is Act.ON and (before == "," if heard else not before)
        fastener = self.book.is_in(found.name, ("fastener", "clip", "seal"))
        is_counted = bool(found.count) or len(heard) > 1 or not found.many
        is_counted = is_counted and clauses.low(found.start) != "same"
        told_here = bool(heard) and clauses.low(found.end) in SIGNS
        fastener = fastener or (told_here and self.talk.status.is_late and self.talk.is_off(found.name))
        return goes_on and fastener and (found.new or (is_counted and (told_here or self.talk.is_off(found.name))))

    def _comes_along(self, found: Thing) -> bool:
        """ "Slide the drum off and the bearing comes with it"."""
        goes = self.clauses.low(found.end) in ("comes", "come", "goes", "go")
        with_it = self.clauses.low(found.end + 1) == "with" and self.clauses.low(found.end + 2) in ("it", "them")
        return bool(self.line.pairs) and goes and with_it and bool(found.name)

    def _ends_behind(self, found: Thing) -> bool:
        return self.clauses.low(found.end) in SIGNS or self.clauses.has("prepositions", found.end)

    def _same_for(self, found: Thing, pairs: list[Pair], *, any_thing: bool = False) -> None:
        """The first of some operations that goes for this thing, done to it; it need not be known to be one."""
        named = self.talk.memory.named(found)
        model = next((pair for pair in pairs if self._goes_for(pair, named, any_thing)), None)
        if model is not None:
            self.talk.memory.handle(renamed(found, named))
            told = replace(model[0], start=found.start, end=found.end)
            block = meaning(told, named.name, self.book, self.talk.status)
            assert block is not None
            self.line.pairs.append((told, self.teller.made(block, told, named, Tense.NOW, Sure.LOW)))

    def _goes_for(self, pair: Pair, named: Named, any_thing: bool) -> bool:
        """True when the same can be done to this thing, and it is known as one."""
        told, operation = pair
        block = meaning(told, named.name, self.book, self.talk.status) if named.name else None
        if block is None or block.act is not operation.act or block.act in (Act.WORK, Act.CHECK):
            return False
        if self.book.is_in(named.name, ("place",)):
            return False
        return any_thing or self.book.is_in(named.name, self.book.groups) or named.name.split()[-1] in operation.object

    # -- only named

    def _remember(self, thing: Thing, at: int) -> None:
        """A thing that is only named: the subject of its clause, or something that stands beside another."""
        clauses = self.clauses
        if thing.pointed and thing.name and self._is_topic(at):
            named = self.talk.memory.named(thing)
            if named.name and named.name not in ("one", "ones"):
                thing = renamed(thing, named)
        before = clauses.low(at - 1) if at > clauses.clause else ""
        if before not in self.book.idle and not any(
            self.book.has(kind, before) for kind in ("prepositions", "particles")
        ):
            clauses.subject = thing
            counted = bool(thing.count) and self.book.knows(thing.name) and self.book.has("be", before)
            if counted or (self._is_topic(at) and self.book.has("be", clauses.low(thing.end)) and thing.name):
                self.talk.memory.mention(thing)
            elif self._is_introduced(at) and self.book.has("articles", clauses.low(at)):
                self.talk.memory.handle(thing)
            elif self._is_introduced(at) or (
                not self.book.has("be", before) and (thing.count or self._is_topic(at) or at == clauses.clause)
            ):
                self._mention(thing)
            else:
                self._mention_behind(thing)
        elif before in ("by", "with") and self.book.knows(thing.name) and self._is_held(at):
            self.talk.memory.handle(thing)
        elif thing.count or before in self.book.idle or not self.talk.memory.named_here:
            self._mention(thing)
        else:
            self._mention_behind(thing)

    def _mention(self, found: Thing) -> None:
        """Remember a thing that was named without an operation, if its words leave no doubt that it is one."""
        before = [self.clauses.low(at) for at in range(self.clauses.clause, found.start)]
        if "nobody" in before or (before and before[-1] in ("number", "size", "grade")):
            return
        first = self.clauses.low(found.start)
        if first != "no" and (self.book.has("articles", first) or found.count or self.book.knows(found.name)):
            self.talk.memory.mention(found)

    def _mention_behind(self, found: Thing) -> None:
        """Remember a thing that only stands beside another: "two screws hold the panel"."""
        if self.book.knows(found.name) and self.clauses.low(found.start) == "the":
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
