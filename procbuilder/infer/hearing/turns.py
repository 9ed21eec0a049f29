"""Things that are only named, each in its turn: "then the rear pins", "faceplate too", "pulley, belt, cover"."""

from procbuilder.infer.dictionary.english import thing
from procbuilder.infer.dictionary.inflection import Form
from procbuilder.infer.dictionary.nouns import Thing
from procbuilder.infer.dictionary.wordbook import Block
from procbuilder.infer.hearing.again import bare_things, command, follows_again
from procbuilder.infer.hearing.listening import Line, Talk
from procbuilder.infer.hearing.memory import renamed
from procbuilder.infer.hearing.same import Same
from procbuilder.infer.hearing.status import CLOSING
from procbuilder.infer.hearing.told import Told
from procbuilder.model.heard import Act, Tense


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
        again = follows_again(self.clauses)
        is_next = any(token.low == "next" for token in self.clauses.tokens)
        for one in again.things:
            moved = [pair for pair in self.talk.moved if (is_next and not one.new)]
            self.same.same_for(one, moved or self.talk.before, any_thing=(is_next and not one.new) or again.too)

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
