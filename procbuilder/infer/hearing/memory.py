"""What was spoken of last, so that ``it``, ``those`` and ``the upper one`` can be followed."""

from collections.abc import Callable
from dataclasses import dataclass, replace
from decimal import Decimal
from enum import IntEnum

from procbuilder.infer.dictionary.english import singular
from procbuilder.infer.dictionary.nouns import Thing
from procbuilder.infer.dictionary.wordbook import Wordbook

RECENT = 3
"""So many things back a pronoun reaches; only what closes something reaches further, to what is open."""
MOST = 200
"""Things that are remembered."""


_MACHINES = ("appliance", "driven", "vehicle")


class Reach(IntEnum):
    """How far back a thing was named."""

    HERE = 0
    """In this sentence."""
    RECENT = 1
    """One of the last few."""
    FAR = 2


Fits = Callable[[str, Reach], bool]
"""Tells whether a name fits, named so far back."""


@dataclass(frozen=True, slots=True)
class Named:
    """A thing with its name filled in."""

    name: str
    count: Decimal | None
    many: bool
    new: bool
    sure: bool
    """False when the name was taken from an earlier sentence."""


class Memory:
    """Things in the order of their mention, the last one last."""

    def __init__(self, book: Wordbook) -> None:
        self.book = book
        self._things: list[Thing] = []
        self._before = self._things
        """As they were before this sentence."""
        self._handled: set[str] = set()
        """Names of things that something was done to."""
        self._introduced: set[str] = set()
        """Names of things that were shown: "there's a clip"."""
        self._here = 0
        self.fitted_here: set[str] = set()
        """What this sentence has put somewhere, so that it is not what comes off next."""
        self.job = ""
        """What is to be renewed, as was said at the beginning."""

    def begin(self) -> None:
        """A new sentence."""
        self._here = 0
        self._before = self._things
        self.fitted_here.clear()

    def forget(self) -> None:
        """The sentence was about something else: what it named is not kept."""
        self._things, self._here = self._before, 0

    @property
    def named_here(self) -> bool:
        """True when this sentence has named a thing."""
        return self._here > 0

    def mention(self, thing: Thing) -> None:
        """A thing was named; measures and pronouns are passed over."""
        if not thing.name or thing.measure or thing.pointed or self._is_vague(thing.name):
            return
        self._things = [*self._things[-MOST + 1 :], thing]
        self._here += 1

    def _is_vague(self, name: str) -> bool:
        """True for what no pronoun stands for: "time", "the thread", a hand that holds something."""
        last = singular(name.split()[-1])
        holds = self.book.is_in(name, ("body",)) and not self.book.is_in(name, ("part",))
        return holds or self.book.has("bare", name) or self.book.has("vague", last) or self.book.has("features", last)

    def has_named(self, name: str) -> bool:
        """True for a thing that was spoken of in an earlier sentence, by this name or a longer one."""
        before = self._things[: len(self._things) - self._here] if self._here else self._things
        key = singular(name)
        return any(singular(one.name) == key or singular(one.name).endswith(f" {key}") for one in before)

    def in_full(self, name: str) -> str:
        """``dial indicator`` for "indicator", when that was named before."""
        longer = (thing.name for thing in reversed(self._things) if thing.name.endswith(f" {name}"))
        return next(longer, name)

    def handle(self, thing: Thing) -> None:
        """Something was done to a thing."""
        self._handled.add(thing.name)
        self.mention(thing)

    def introduce(self, thing: Thing) -> None:
        """A thing was shown, so that it is one, known or not."""
        self._introduced.add(thing.name)
        self.mention(thing)

    def is_solid(self, name: str) -> bool:
        """True for what was handled or shown, or is known as a thing; false for "a fault" and "the plan"."""
        return name in self._handled or name in self._introduced or self.book.knows(name)

    def mention_behind(self, thing: Thing) -> None:
        """A thing that only tells where another is: remembered as if it had been named before the sentence."""
        if not thing.name or thing.pointed or self._is_vague(thing.name):
            return
        at = len(self._things) - self._here
        self._things = [*self._things[:at], thing, *self._things[at:]]

    def _is_one(self, thing: Thing) -> bool:
        """True for one thing that is not what "those" means; a nut may be, after another nut."""
        single = not thing.many
        return single and not self.book.is_in(thing.name, ("fastener",))

    def _is_strange(self, thing: Thing, back: int) -> bool:
        """True for one thing of an earlier sentence, and for one machine, where several are meant."""
        return self._is_one(thing) and (back >= self._here or self.book.is_in(thing.name, _MACHINES))

    def last(self, fits: Fits, *, many: bool | None, near: bool = False) -> Thing | None:
        """The last thing of this number that fits; of any number where there is none, and of any kind at last.

        "Those" is never one thing of an earlier sentence that nothing was done to, and no machine.
        """
        other = loose = None
        asked: dict[tuple[str, Reach], bool] = {}
        things = self._things[-max(self._here, RECENT) :] if near else self._things
        for at, thing in enumerate(reversed(things)):
            solid = self.is_solid(thing.name)
            wanted = many in (None, thing.many) and solid
            if not wanted and (
                (other if solid else loose) is not None or (many is True and self._is_strange(thing, at))
            ):
                continue
            key = thing.name, _reach(at, self._here)
            if key not in asked:
                asked[key] = fits(*key)
            if asked[key]:
                if wanted:
                    return thing
                other, loose = (other or thing, loose) if solid else (other, loose or thing)
        return other or loose

    def named(self, thing: Thing, fits: Fits | None = None, *, near: bool = False) -> Named:
        """The thing with its name, found among the earlier ones that fit when it was only pointed at.

        ``near``: among those of this sentence and the last few alone.
        """
        words = thing.name.split()
        if not thing.pointed:
            return Named(thing.name, thing.count, thing.many, thing.new, sure=True)
        many = None if len(words) > 1 else thing.many
        many = True if len(words) > 1 and self.book.has("ordinals", words[0]) else many
        fits = fits or (lambda _name, _reach: True)
        earlier = self.last(fits, many=many, near=near)
        if earlier is None:
            return Named("", thing.count, thing.many, thing.new, sure=False)
        count = thing.count or (earlier.count if thing.many else None)
        if not words:
            return Named(earlier.name, count, thing.many, thing.new or earlier.new, sure=False)
        which = [word for word in words[:-1] if not self.book.has("ordinals", word)]
        rest = [word for word in earlier.name.split() if not (which and self.book.has("positions", word))]
        if rest and not thing.many:
            rest[-1] = singular(rest[-1])
        return Named(" ".join([*which, *rest]), thing.count, thing.many, thing.new, sure=False)


def renamed(thing: Thing, named: Named) -> Thing:
    """The thing under the name that was found for it."""
    return replace(thing, name=named.name, pointed=False, measure=False, count=named.count, new=named.new)


def _reach(back: int, here: int) -> Reach:
    return Reach.HERE if back < here else Reach.RECENT if back < RECENT else Reach.FAR
