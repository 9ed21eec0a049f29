"""Which earlier thing a pronoun stands for, by what its verb does."""

from collections.abc import Callable
from functools import partial

from procbuilder.infer.meaning import meaning
from procbuilder.infer.memory import Memory, Named, Reach
from procbuilder.infer.nouns import Thing
from procbuilder.infer.status import Status
from procbuilder.infer.told import Told
from procbuilder.infer.wordbook import Block, Wordbook
from procbuilder.model.heard import Act

_Fits = Callable[[Told, str, Reach], bool]
_RESTORES = frozenset({"on", "in", "back", "down", "up"})
_LOOSE = ("paste", "fluid", "tool", "worn", "place", "dirt", "body")
_UNFIT = {
    Act.ON: ("paste", "tool", "worn", "place", "body"), Act.OFF: _LOOSE, Act.SLACKEN: (*_LOOSE, "seal"),
    Act.TIGHTEN: (*_LOOSE, "seal"), Act.NIP: (*_LOOSE, "seal"),
}  # fmt: skip
"""What a pronoun does not stand for, by what is done to it."""


class Pointing:
    """Names what ``it``, ``those`` and ``the upper one`` stand for."""

    def __init__(self, book: Wordbook, memory: Memory, status: Status) -> None:
        self.book, self.memory, self.status = book, memory, status

    def named(self, thing: Thing, told: Told) -> Named:
        """The thing with its name: of this sentence, ended by the verb, off and put back, or the last that fits."""
        ways = (self._is_here, self._ends, self._goes_back, self._is_usual, self._fits)
        ways = (self._is_renewed, *ways) if thing.new else ways
        return next(filter(None, (self._look_back(thing, told, fits) for fits in ways)))

    def _look_back(self, found: Thing, told: Told, fits: _Fits) -> Named | None:
        """The thing with the name of an earlier one that fits; None to look further."""
        named = self.memory.named(found, partial(fits, told))
        return named if named.name or fits == self._fits else None

    def _is_renewed(self, told: Told, name: str, _reach: Reach) -> bool:
        """True for what is off, so that "the new one" takes its place."""
        return meaning(told, name, self.book, self.status) is not None and self.status.holds("off", name)

    def _is_usual(self, told: Told, name: str, _reach: Reach) -> bool:
        """True for the kind of thing that the verb is used for: "start it" means the last engine or pump."""
        block = self._default(told)
        return block is not None and self.book.is_in(name, block.things)

    def _is_here(self, told: Told, name: str, reach: Reach) -> bool:
        """True for a thing of this sentence that the verb goes for."""
        return reach is Reach.HERE and self._fits(told, name, reach)

    def _ends(self, told: Told, name: str, reach: Reach) -> bool:
        """True for a thing in a state that the verb ends; "take it off" does not reach far back for one."""
        block = meaning(told, name, self.book, self.status)
        near = reach is not Reach.FAR or not _RESTORES.isdisjoint(told.particles)
        return block is not None and block.act is Act.ENDS and self.status.is_open(name) and near

    def _goes_back(self, told: Told, name: str, reach: Reach) -> bool:
        """True for one of the last few things when it is off and the verb puts it back."""
        block = meaning(told, name, self.book, self.status)
        is_on = block is not None and block.act is Act.ON and self.status.holds("off", name)
        return is_on and reach is Reach.RECENT and self._fits(told, name, reach)

    def _fits(self, told: Told, name: str, reach: Reach) -> bool:
        """True for a name that a pronoun may stand for: one of the last few, or any that goes on or is tightened."""
        block = meaning(told, name, self.book, self.status)
        if block is None or self.book.is_in(name, _UNFIT.get(block.act, ("dirt",))):
            return False
        if self._default(told) not in (None, block):
            return False
        if block.act is Act.ON and self.book.is_in(name, ("temporary",)) and not self.status.is_open(name):
            return False
        near = reach is Reach.HERE or (reach is Reach.RECENT and block.act is not Act.ENDS)
        return near or block.act in (Act.ON, Act.NIP, Act.TIGHTEN)

    def _default(self, told: Told) -> Block | None:
        """The block that holds when the thing of this verb is only pointed at: "start it" means the engine."""
        block = meaning(told, "", self.book)
        return block if block is not None and block.default and block.things else None
