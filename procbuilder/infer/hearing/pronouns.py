"""Which earlier thing a pronoun stands for, by what its verb does."""

from collections.abc import Callable
from dataclasses import replace
from functools import partial
from itertools import chain

from procbuilder.infer.dictionary.english import is_plural, singular
from procbuilder.infer.dictionary.nouns import Thing
from procbuilder.infer.dictionary.wordbook import Block, Wordbook
from procbuilder.infer.hearing.meaning import meaning
from procbuilder.infer.hearing.memory import Memory, Named, Reach
from procbuilder.infer.hearing.status import Status
from procbuilder.infer.hearing.verb_phrase import Told
from procbuilder.model.heard import Act

_Fits = Callable[[Told, str, Reach], bool]
_RESTORES = frozenset({"on", "in", "back", "down", "up"})
_LOOSE = ("paste", "fluid", "tool", "worn", "dirt", "body")
_STILL = (*_LOOSE, "place", "seal", "driven", "vehicle")
_TURNS = ("back", "screw", "unscrew", "wind", "spin", "undo")
"""Verbs for what has a thread, and for nothing that was fitted for now."""
_UNFIT = {
    Act.ON: ("paste", "tool", "worn", "place", "body"), Act.OFF: (*_LOOSE, "release"), Act.SLACKEN: _STILL,
    Act.TIGHTEN: _STILL, Act.NIP: _STILL, Act.STATE: ("paste", "tool", "worn", "dirt", "body", "fastener", "seal"),
}  # fmt: skip
"""What a pronoun does not stand for, by what is done to it."""


_PLUGGED = (
    "electrical", "appliance", "running", "switched", "driven", "motor", "pump", "fan", "solenoid", "light", "key",
    "temporary",
)  # fmt: skip
_FILLED = ("fluid", "vessel", "vehicle", "driven", "running", "appliance", "filter", "housing", "cup", "bottle", "can")
_ONLY = {"unplug": _PLUGGED, "plug": _PLUGGED, "top": _FILLED, "fill": _FILLED, "refill": _FILLED}
"""What has a plug, and what is filled: no pronoun before these verbs stands for anything else."""
_ANY = " "
"""Stands for no name at all."""


class Pointing:
    """Names what ``it``, ``those`` and ``the upper one`` stand for."""

    def __init__(self, book: Wordbook, memory: Memory, status: Status) -> None:
        self.book, self.memory, self.status = book, memory, status
        self._blocks: dict[str, Block | None] = {}
        """What the verb of this moment means for each name."""

    def named(self, thing: Thing, told: Told) -> Named:
        """The thing with its name: of this sentence, ended by the verb, off and put back, or the last that fits."""
        self._blocks = {}
        near: tuple[_Fits, ...] = (
            self._is_turned_here,
            partial(self._is_here, thing.many),
            self._is_turned,
        )
        far = (self._ends, self._fits)
        renewed = self._look_back(thing, told, self._is_renewed) if thing.new else None
        nearby = (self._look_back(thing, told, fits, near=True) for fits in near)
        anywhere = (self._look_back(thing, told, fits) for fits in far)
        found = next(filter(None, chain((renewed,), nearby, anywhere)))
        block = self._default(told)
        return found if thing.name or block is None else replace(found, name=self._kind(found.name, block))

    def _block(self, told: Told, name: str) -> Block | None:
        """What the verb means for a name; asked many times of each."""
        if name not in self._blocks:
            self._blocks[name] = meaning(told, name, self.book, self.status)
        return self._blocks[name]

    def _kind(self, name: str, block: Block) -> str:
        """``trailer`` for "little plant trailer", when it is the trailer that the verb is used for."""
        words = name.split()
        kinds = (" ".join(words[start:]) for start in range(len(words)))
        return next((kind for kind in kinds if self.book.names(kind, block.things)), name)

    def _look_back(self, found: Thing, told: Told, fits: _Fits, *, near: bool = False) -> Named | None:
        """The thing with the name of an earlier one that fits; None to look further."""
        named = self.memory.named(found, partial(fits, told), near=near)
        return named if named.name or fits == self._fits else None

    def _is_turned_here(self, told: Told, name: str, reach: Reach) -> bool:
        return reach is Reach.HERE and self._is_turned(told, name, reach)

    def _is_turned(self, told: Told, name: str, _reach: Reach) -> bool:
        """True for bolts, nuts and their like, when the verb slackens or tightens those."""
        block = self._block(told, name)
        turns = block is not None and (block.act in (Act.SLACKEN, Act.TIGHTEN, Act.NIP) or block.print == "Undo")
        return turns and self.book.is_in(name, ("fastener", "clip"))

    def _is_renewed(self, told: Told, name: str, _reach: Reach) -> bool:
        """True for what is off, so that "the new one" takes its place."""
        return self._block(told, name) is not None and self.status.holds("off", name)

    def _is_here(self, many: bool, told: Told, name: str, reach: Reach) -> bool:
        """True for a thing of this sentence that the verb goes for; what was just fitted for now is not taken off."""
        block = self._block(told, name)
        fitted = self.status.is_for_now(name) and block is not None and block.act in (Act.OFF, Act.OUT_AGAIN)
        return reach is Reach.HERE and is_plural(name) is many and not fitted and self._fits(told, name, reach)

    def _ends(self, told: Told, name: str, reach: Reach) -> bool:
        """True for a thing in a state that the verb ends; "take it off" does not reach far back for one."""
        block = self._block(told, name)
        takes_off = any(one.act is Act.OFF for one in self.book.by_verb[told.verb])
        near = reach is not Reach.FAR or not takes_off or not _RESTORES.isdisjoint(told.particles)
        return block is not None and block.act is Act.ENDS and self.status.holds("open", name, block.state) and near

    def _fits(self, told: Told, name: str, reach: Reach) -> bool:
        """True for a name that a pronoun may stand for: one of the last few, or any that goes on or is tightened."""
        block = self._block(told, name)
        if block is None:
            return False
        if self.book.is_in(name, _UNFIT.get(block.act, ("dirt", "paste", "worn"))):
            return False
        if block.act is Act.OFF and name in self.memory.fitted_here:
            return False
        if told.verb in _ONLY and not self.book.is_in(name, _ONLY[told.verb]):
            return False
        default = self._default(told)
        if default is not None and (default.act, default.state) != (block.act, block.state):
            return False
        if block.act is Act.ENDS and not self.status.holds("open", name, block.state):
            return False
        if self.book.has("elsewhere", singular(name.split()[-1])):
            return False
        return reach is not Reach.FAR or block.act in (Act.ON, Act.NIP, Act.TIGHTEN)

    def _default(self, told: Told) -> Block | None:
        """The block that holds when the thing of this verb is only pointed at: "start it" means the engine."""
        if _ANY not in self._blocks:
            self._blocks[_ANY] = meaning(told, "", self.book)
        block = self._blocks[_ANY]
        return block if (block is not None and block.default) else None
