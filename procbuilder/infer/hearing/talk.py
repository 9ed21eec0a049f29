"""What is kept while a narration is heard: from sentence to sentence, and within one."""

from dataclasses import dataclass, field

from procbuilder.infer.dictionary.english import singular, thing
from procbuilder.infer.dictionary.nouns import Thing
from procbuilder.infer.dictionary.tokens import plain
from procbuilder.infer.dictionary.wordbook import Wordbook, tokens_of
from procbuilder.infer.hearing.clauses import Clauses
from procbuilder.infer.hearing.memory import Memory
from procbuilder.infer.hearing.pronouns import Pointing
from procbuilder.infer.hearing.status import Status
from procbuilder.infer.hearing.tenses import Times
from procbuilder.infer.hearing.verb_phrase import Told
from procbuilder.model.heard import Act, Operation, Sentence

Pair = tuple[Told, Operation]
"""An operation with the words that told it."""

_MOVES = (Act.OFF, Act.ON, Act.SLACKEN, Act.TIGHTEN, Act.NIP)
_PARTS = ("fastener", "clip", "seal", "electrical", "pipe", "spring", "part", "vessel", "lid")
"""What goes on again when it was spoken of before."""
_LOOKED_AHEAD = 8
"""So many words of the next sentence are looked at."""
_MOST_MOVED = 6
"""So many of them are remembered."""


class Talk:
    """What is remembered from one sentence to the next."""

    def __init__(self, book: Wordbook) -> None:
        self.book = book
        self.memory, self.status = Memory(book), Status()
        self.pointing = Pointing(book, self.memory, self.status)
        self.watched = frozenset(one for name in book.watched for one in book.groups.get(name, {name}))
        self.before: list[Pair] = []
        """What the last sentence with an operation told."""
        self.turned = False
        """It was said that things go back now, and nothing has been moved since."""
        self.moved: list[Pair] = []
        """The last operations that took something off or put it back, the latest first."""

    def end(self, pairs: list[Pair]) -> None:
        """A sentence has told this."""
        self.before = pairs or self.before
        moved = [pair for pair in reversed(pairs) if pair[1].act in _MOVES]
        self.moved = [*moved, *self.moved][:_MOST_MOVED]
        self.turned = self.turned and not moved

    def turn(self) -> None:
        """ "So, going back together": from here on things are put back."""
        self.turned = bool(self.moved)
        self.status.turn()

    @property
    def last(self) -> Operation | None:
        """The last operation of the sentences before."""
        return self.before[-1][1] if self.before else None

    @property
    def goes_on(self) -> bool:
        """True when the last thing that was moved went on or was tightened, or when it was said that now all does."""
        return self.turned or (bool(self.moved) and self.moved[0][1].act in (Act.ON, Act.TIGHTEN, Act.NIP))

    def may_go_on(self, name: str) -> bool:
        """True for what is off, and for what was spoken of before now that things are being put back."""
        if self.status.is_gone(name):
            return True
        if not self.goes_on or not self.status.is_late or self.status.holds("slack", name):
            return False
        head = thing(name).split()[-1:]
        small = self.book.is_in(name, ("clip", "seal"))
        alike = small or any(one.split()[-1:] == head for one in self.status.gone)
        return alike or (self.is_part(name) and self.memory.has_named(name))

    def is_part(self, name: str) -> bool:
        """True for what belongs to the item and goes on again."""
        last = singular(name.split()[-1]) if name else ""
        return self.book.is_in(name, _PARTS) and not self.book.has("bare", last)

    def is_off(self, name: str) -> bool:
        """True when something of this head word is off now."""
        head = thing(name).split()[-1:]
        return any(one.split()[-1:] == head for one in self.status.off)


@dataclass(slots=True)
class Line:
    """One sentence while it is heard."""

    sentence: Sentence
    clauses: Clauses
    times: Times
    pairs: list[Pair] = field(default_factory=list)
    """What it has told so far."""
    aside: bool = False
    """It is just telling a reason, a time or an outcome."""
    stands_first: bool = False
    """What it turned aside to stands before what is done."""
    until: bool = False
    """What it turned aside to is the end of what is done: "till the belt gives"."""
    perfect: bool = False
    """What it told last had "have" before it, which may hold for what follows behind "and"."""
    taken_up: bool = False
    """The next sentence points back at what this one names."""
    holders: list[Thing] = field(default_factory=list)
    """Fasteners that it only counts: "two bolts and the cover lifts off"."""
    place_until: int = -1
    """Token behind the place of the last thing that was told with one."""
    same_until: int = -1
    """Token behind the last thing for which the same goes."""

    @property
    def heard(self) -> list[Operation]:
        """The operations it has told so far."""
        return [operation for _, operation in self.pairs]


def line(sentence: Sentence, behind: Sentence | None, book: Wordbook) -> Line:
    """A sentence, cut and ready to be heard; ``behind``: the next one."""
    clauses = Clauses(tokens_of(sentence.words, book), book)
    taken_up = behind is not None and _points_back(behind, book)
    return Line(sentence, clauses, Times(clauses.tokens, book), taken_up=taken_up)


def _points_back(sentence: Sentence, book: Wordbook) -> bool:
    """ "Slide it on": a pronoun stands for a thing of the sentence before."""
    words = [token.low for token in plain(sentence.words)[:_LOOKED_AHEAD]]
    known = next((at for at, word in enumerate(words) if singular(word) in book.nouns), len(words))
    return any(book.has(kind, word) for word in words[:known] for kind in ("one_pronouns", "many_pronouns"))
