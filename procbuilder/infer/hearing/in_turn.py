"""Things that are named in their turn, or share in what was told of another: "then the pin", "with it"."""

from procbuilder.infer.dictionary.english import thing
from procbuilder.infer.dictionary.inflection import Form
from procbuilder.infer.dictionary.nouns import Thing, read_thing
from procbuilder.infer.dictionary.tokens import SIGNS
from procbuilder.infer.dictionary.wordbook import Block
from procbuilder.infer.hearing.clauses import Clauses
from procbuilder.infer.hearing.memory import renamed
from procbuilder.infer.hearing.status import CLOSING
from procbuilder.infer.hearing.talk import Line, Talk
from procbuilder.infer.hearing.telling import Same
from procbuilder.infer.hearing.verb_phrase import Told
from procbuilder.model.heard import Act, Tense


def follows_again(clauses: Clauses) -> tuple[Thing, ...]:
    """The things of a sentence that says no more than ``then the rear pins, both of them``."""
    at = _behind_same_again(clauses)
    while clauses.has("openers", at) or clauses.low(at) in (",", "as", "with"):
        at += 1
    things = _joined(clauses, at)
    end = things[-1].end if things else at
    said = {token.low for token in clauses.tokens[:at]}
    goes_on = any(clauses.book.has("goes_on", word) for word in said)
    if not goes_on and all(token.low != "next" for token in clauses.tokens):
        return ()
    while things and (clauses.has("be", end) or clauses.low(end) == "next" or clauses.has("too", end)):
        end += 1
    end = clauses.behind_place(end)
    if clauses.low(end) == "," and any(
        clauses.has(kind, end + 1) for kind in ("one_pronouns", "many_pronouns", "others")
    ):
        return ()
    return things if clauses.low(end) in SIGNS else ()


def _joined(clauses: Clauses, at: int) -> tuple[Thing, ...]:
    """The things that stand one behind the other from a token on."""
    things: list[Thing] = []
    thing = read_thing(clauses.tokens, at, clauses.book)
    while thing is not None and not thing.measure:
        end = thing.end
        if not thing.name and (not thing.count or clauses.behind_place(end) == end):
            break
        things.append(thing)
        follows = end + 1 if clauses.low(end) == "and" else end
        thing = read_thing(clauses.tokens, follows, clauses.book) if follows > end else None
    return tuple(things)


def _behind_same_again(clauses: Clauses) -> int:
    """The token behind "do the same with" at the beginning of a sentence; 0 where there is none."""
    first = 0
    while clauses.has("openers", first) and clauses.low(first) != "same":
        first += 1
    words = [token.low for token in clauses.tokens[first : first + 6]]
    for phrase in clauses.book.grammar["same_again"]:
        if words[: len(phrase.split())] == phrase.split():
            return first + len(phrase.split())
    return 0


def command(clauses: Clauses) -> tuple[Told, Thing] | None:
    """The first word of a sentence taken as its verb, and the first thing behind it; None when there is none."""
    at = 0
    while clauses.has("openers", at) or clauses.has("adverbs", at) or clauses.low(at) in SIGNS:
        at += 1
        if at >= len(clauses.tokens):
            return None
    verb = clauses.low(at)
    if any(clauses.has(kind, at) for kind in ("articles", "prepositions", "one_pronouns", "many_pronouns")):
        return None
    for start in range(at + 1, len(clauses.tokens)):
        thing = read_thing(clauses.tokens, start, clauses.book, governed=True)
        if thing is not None and not thing.measure:
            return Told(verb, Form.BASE, at, thing.end, (thing,)), thing
    return None


def bare_things(clauses: Clauses) -> list[Told]:
    """ "New gasket, plate, two nuts": the things of a list with which a sentence begins, as if they were fitted."""
    things: list[Thing] = []
    at = 0
    while clauses.has("openers", at) or (at and clauses.low(at) == ","):
        at += 1
    while (thing := read_thing(clauses.tokens, at, clauses.book)) is not None:
        at = thing.end + (clauses.low(thing.end) in ("first", "next"))
        at = clauses.behind_place(at) if clauses.low(at) in ("behind", "under", "underneath") else at
        if not thing.name or thing.measure or thing.partial or clauses.low(thing.start) == "no":
            break
        if not (clauses.low(at) in SIGNS or clauses.low(at) in ("and", "then", "with")):
            break
        things.append(thing)
        at += 1
        at += clauses.low(at) in ("and", "then")
    return [Told("fit", Form.BASE, thing.start, thing.end, (thing,)) for thing in things]


class Turns:
    """Takes what a sentence names and no more, when all of it has been heard."""

    def __init__(self, talk: Talk, line: Line, same: Same) -> None:
        self.talk, self.line, self.same = talk, line, same
        self.book, self.clauses = talk.book, line.clauses

    def take_command(self) -> None:
        """A command whose verb is not known: its first word, with the first thing behind it."""
        if self.line.pairs or (found := command(self.clauses)) is None:
            return
        told, one = found
        named = self.talk.memory.named(one)
        if named.name:
            self.talk.memory.handle(renamed(one, named))
            block = Block("", Act.WORK, frozenset())
            self.line.pairs = [(told, self.same.teller.made(block, told, named, Tense.NOW))]

    def take(self) -> None:
        """ "Then the rear pins": what was done in the sentence before, done to another thing; or what goes on next."""
        if self.line.pairs:
            self._take_holders()
            self._take_first()
            return
        self._take_again()
        if not self.line.pairs:
            self._take_list(bare_things(self.clauses))

    def _take_again(self) -> None:
        is_next = any(token.low == "next" for token in self.clauses.tokens)
        for one in follows_again(self.clauses):
            moved = [pair for pair in self.talk.moved if (is_next and not one.new)]
            self.same.same_for(one, moved or self.talk.before, any_thing=is_next and not one.new)

    def _take_holders(self) -> None:
        """ "Two bolts and the cover lifts off": then the bolts are out."""
        first = self.line.pairs[0]
        holders = [one for one in self.line.holders if one.end <= first[0].start and not self._is_told(one)]
        if first[1].act is not Act.OFF or not holders:
            return
        pairs, self.line.pairs = self.line.pairs, []
        for one in holders:
            self.same.tell(Told("take", Form.BASE, one.start, one.end, (one,), ("out",)), one.start)
        self.line.pairs += pairs

    def _is_told(self, one: Thing) -> bool:
        """True for what is off, or what the sentence or one before says more of."""
        told = any(thing(operation.object) == thing(one.name) for operation in self.line.heard)
        return told or self.talk.is_off(one.name)

    def _take_first(self) -> None:
        """ "Then four new screws, and tighten all four": what goes on before the first verb."""
        behind = self.line.pairs[0][0].start
        listed = [told for told in bare_things(self.clauses) if told.end <= behind and not self._is_told_later(told)]
        pairs, self.line.pairs = self.line.pairs, []
        if all(one.act in CLOSING or (one.act is Act.WORK and told.form is Form.PAST) for told, one in pairs):
            self._take_list(listed)
        self.line.pairs += pairs

    def _is_told_later(self, told: Told) -> bool:
        """ "The pulley, slide it on": what goes on is told by the verb."""
        name = thing(told.things[0].name)
        return any(thing(operation.object) == name for operation in self.line.heard)

    def _take_list(self, listed: list[Told]) -> None:
        """What is off goes on when things are being put back; a list goes on with what was being taken off."""
        listed = [told for told in listed if not self.book.is_in(told.things[0].name, ("tool",))]
        if not listed:
            return
        off = [told for told in listed if self._may_go_on(told.things[0])]
        goes_on = self.talk.status.is_late and listed[0] in off
        for told in listed:
            if goes_on and told in off:
                self.same.tell(told, told.start)

    def _may_go_on(self, one: Thing) -> bool:
        """True for what was taken off or spoken of, and for a small thing that nobody names without fitting it."""
        return self.talk.is_off(one.name) or self.talk.may_go_on(one.name)


_PUT_BACK = (Act.ON, Act.ENDS, Act.OUT_AGAIN)
"""What is done to one thing, and then another one goes on."""


class Sharing:
    """Hears in one sentence which things share in what was told."""

    def __init__(self, talk: Talk, line: Line, same: Same) -> None:
        self.talk, self.line, self.same = talk, line, same
        self.book, self.clauses = talk.book, line.clauses

    def take(self, found: Thing, at: int) -> bool:
        """True when the same goes for a thing as for the last one, and it has been told so."""
        pairs = self.line.pairs
        if self._comes_along(found):
            self.same.same_for(found, pairs[-1:])
        elif not self._is_same_again(found, at):
            return False
        elif self._goes_on(found):
            self.same.tell(Told("fit", Form.BASE, at, found.end, (found,)), at)
        else:
            named = self.clauses.low(at) == "the"
            self.same.same_for(found, (pairs or self.talk.before)[-1:], any_thing=named)
            self.line.same_until = found.end
        return True

    def note(self, found: Thing, at: int) -> None:
        """A thing that is only named: what holds something for the job, or what it is held by."""
        if not self.line.aside and self._is_held_up_by(found, at):
            self.same.tell(Told("put", Form.BASE, at, found.end, (found,), ("on",)), at)

    def _goes_on(self, found: Thing) -> bool:
        """ "Gas on, boot": put back, though what stands before it was ended in another way."""
        last = self.line.heard[-1].act if self.line.heard else None
        return last in (Act.ENDS, Act.OUT_AGAIN) and self.talk.may_go_on(found.name)

    def _is_same_again(self, found: Thing, at: int) -> bool:
        """ "Needle back in, then the pin" and "cover on, two screws": the same goes for them."""
        clauses, heard = self.clauses, self.line.heard
        before = clauses.low(at - 1) if at else ""
        follows = before in ("and", "plus") and self.line.same_until in (at - 1, at - 2)
        holds = before == "and" and self.line.place_until in (at - 1, at - 2)
        joined = before == "then" or follows or holds
        if clauses.busy or not self._ends_behind(found):
            return False
        if joined:
            return bool(heard)
        last = heard[-1] if heard else self.talk.last
        goes_on = last is not None and last.act in (_PUT_BACK if heard else (Act.ON,))
        goes_on = goes_on and (before == "," if heard else not before)
        fastener = self.book.is_in(found.name, ("fastener", "clip", "seal"))
        is_counted = bool(found.count) or len(heard) > 1 or not found.many
        is_counted = is_counted and clauses.low(found.start) != "same" and not self._is_sized(found)
        told_here = bool(heard) and clauses.low(found.end) in SIGNS
        fastener = fastener or (told_here and self.talk.status.is_late and self.talk.is_off(found.name))
        return goes_on and fastener and (found.new or (is_counted and (told_here or self.talk.is_off(found.name))))

    def _ends_behind(self, found: Thing) -> bool:
        return self.clauses.low(found.end) in SIGNS or self.clauses.has("prepositions", found.end)

    def _comes_along(self, found: Thing) -> bool:
        """ "Slide the drum off and the bearing comes with it"."""
        clauses, at = self.clauses, found.end
        goes = clauses.low(at) in ("comes", "come", "goes", "go", "came", "went")
        at += 1 + (clauses.low(at + 1) in ("up", "along", "away"))
        told = self.line.pairs or self.talk.before
        named = bool(found.name) or clauses.low(found.start) == "they"
        return bool(told) and goes and named and self._is_with_it(at)

    def _is_with_it(self, at: int) -> bool:
        return self.clauses.low(at) == "with" and self.clauses.low(at + 1) in ("it", "them", "that", "him", "her")

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
