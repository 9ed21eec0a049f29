"""What was done to one thing, done to another; and what is told of a thing without a verb of its own."""

from dataclasses import replace

from procbuilder.infer.dictionary.nouns import Thing
from procbuilder.infer.hearing.listening import Line, Pair, Talk
from procbuilder.infer.hearing.meaning import meaning
from procbuilder.infer.hearing.memory import Named, renamed
from procbuilder.infer.hearing.telling import Teller
from procbuilder.infer.hearing.told import Told
from procbuilder.model.heard import Act, Tense


class Same:
    """Tells of the things of one sentence that have no verb of their own."""

    def __init__(self, talk: Talk, line: Line, teller: Teller) -> None:
        self.talk, self.line, self.teller, self.book = talk, line, teller, talk.book

    def tell(self, told: Told, at: int) -> list[Pair]:
        """What became of a thing, as if a verb had said it."""
        made = self.teller.tell(told, at)
        self.line.pairs += made
        return made

    def same_for(self, found: Thing, pairs: list[Pair], *, any_thing: bool = False) -> None:
        """The first of some operations that goes for this thing, done to it; it need not be known to be one."""
        named = self.talk.memory.named(found)
        model = next((pair for pair in pairs if self._goes_for(pair, named, any_thing)), None)
        if model is not None:
            self.talk.memory.handle(renamed(found, named))
            told = replace(model[0], start=found.start, end=found.end)
            block = meaning(told, named.name, self.book, self.talk.status)
            assert block is not None
            self.line.pairs.append((told, self.teller.made(block, told, named, Tense.NOW)))

    def _goes_for(self, pair: Pair, named: Named, any_thing: bool) -> bool:
        """True when the same can be done to this thing, and it is known as one."""
        told, operation = pair
        block = meaning(told, named.name, self.book, self.talk.status) if named.name else None
        if block is None or block.act is not operation.act or block.act in (Act.WORK, Act.CHECK):
            return False
        if self.book.is_in(named.name, ("place",)):
            return False
        return any_thing or self.book.is_in(named.name, self.book.groups)
