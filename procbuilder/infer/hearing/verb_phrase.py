"""One verb in its sentence with all that belongs to it: its things, particles, and what it is done with."""

from collections.abc import Sequence
from dataclasses import dataclass

from procbuilder.infer.dictionary.inflection import Form
from procbuilder.infer.dictionary.nouns import Thing, read_thing
from procbuilder.infer.dictionary.tokens import SIGNS
from procbuilder.infer.hearing.clauses import Clauses
from procbuilder.model.heard import Act


@dataclass(frozen=True, slots=True)
class Told:
    """One verb in its sentence."""

    verb: str
    form: Form
    start: int
    end: int
    """Tokens from the verb up to end."""
    things: tuple[Thing, ...] = ()
    particles: tuple[str, ...] = ()
    means: Thing | None = None
    """What follows ``with``."""
    about: Thing | None = None
    """What follows ``for`` or ``over``: "look for leaks"."""
    where: Thing | None = None
    """What follows the particle or ``in``, ``on``, ``to``: "put it in the tray"."""
    moves: bool = False
    """The thing does it by itself: "the cover lifts off"."""
    so: str = ""
    """How the thing is then: "pull it straight"."""
    leads: bool = False
    """The last particle leads to a place: ``over`` of "slip it over the stud"."""


def read_verb(clauses: Clauses, verb: str, form: Form, at: int) -> Told:
    """The verb at a token with all that belongs to it."""
    return _Reader(clauses).read(verb, form, at)


class _Reader:
    def __init__(self, clauses: Clauses) -> None:
        self.clauses, self.tokens, self.book = clauses, clauses.tokens, clauses.book
        self.low, self.has = clauses.low, clauses.has

    def read(self, verb: str, form: Form, at: int) -> Told:
        """The verb with all that belongs to it."""
        position = self._skip(at + 1)
        particles: list[str] = []
        if form is Form.PAST or f"{verb} {self.low(position)}" not in self._leaning:
            position = self._particles(position, particles)
        if self.low(position) in ("they", "it") and self.has("be", position + 1) and self._is_check(verb):
            return Told(
                verb,
                form,
                at,
                position + 1,
                (Thing("", position, position + 1, many=self.low(position) == "they", pointed=True),),
            )
        about = self._about(verb, position)
        things, position = self._things(position if about is None else about.end)
        things = things if about is None else []
        behind = position
        position += bool(things) and self.has("results", position) and self.has("particles", position + 1)
        position = self._particles(self._skip(position), particles) if things else position
        position = self._late_particle(position, particles) if things and not particles else position
        where = self._where(position, particles)
        results = range(behind if things else at + 1, position + 1)
        so = next((self.low(each) for each in results if self.has("results", each)), "")
        leads = bool(things and particles) and where is not None and self.low(position - 1) == particles[-1]
        return Told(
            verb,
            form,
            at,
            position,
            tuple(things),
            tuple(particles),
            self._means(position),
            about,
            where,
            so=so,
            leads=leads,
        )

    def _is_check(self, verb: str) -> bool:
        return any(block.act is Act.CHECK for block in self.book.by_verb[verb])

    @property
    def _leaning(self) -> Sequence[str]:
        leaning: Sequence[str] = self.book.grammar["leaning"]
        return leaning

    def _skip(self, at: int) -> int:
        if self.low(at) in ("about", "roughly") and self.low(at + 1) in self.book.numbers:
            return at + 1
        while self.has("adverbs", at) and not (self.has("positions", at) and self.has("articles", at - 1)):
            at += 1
        return at

    def _particles(self, at: int, particles: list[str]) -> int:
        while self.has("particles", at) or (particles and self._is_between(at) and self.has("particles", at + 1)):
            if self._leads_to_place(at):
                return at
            if self.has("particles", at):
                particles.append(self.low(at))
            at += 1
        return at

    def _is_between(self, at: int) -> bool:
        """ "Down and out", "off again and away"."""
        return self.has("adverbs", at) or (self.low(at) == "and" and not self.clauses.verb_at(at + 1))

    def _leads_to_place(self, at: int) -> bool:
        """ "Put it on the bench", "it came in two pieces": ``on`` belongs to the bench here, ``in`` to the pieces."""
        if self.low(at) not in ("on", "in", "into", "onto", "to"):
            return False
        if self.low(at) == "in" and self._are_pieces(at + 1):
            return True
        thing = read_thing(self.tokens, at + 1, self.book)
        if thing is None or not thing.name:
            return False
        within = self.low(at) == "in" and self.book.has("positions", thing.name)
        return within or self.book.is_in(thing.name, ("place",))

    def _are_pieces(self, at: int) -> bool:
        """ "Two halves", "bits"."""
        pieces = read_thing(self.tokens, at, self.book)
        return pieces is not None and bool(pieces.name) and self.has("pieces", pieces.end - 1)

    def _things(self, at: int) -> tuple[list[Thing], int]:
        """One thing, or several joined by commas and ``and``."""
        things: list[Thing] = []
        thing = read_thing(self.tokens, at, self.book, governed=True)
        while thing is not None:
            if not thing.measure:
                things.append(thing)
            at = thing.end
            if things and things[0].pointed and not things[0].name:
                break
            thing = self._joined_thing(self._behind_of(at))
        return things, at

    def _behind_of(self, at: int) -> int:
        """The token behind "of the drum", so that a list may go on there."""
        whole = read_thing(self.tokens, at + 1, self.book, governed=True) if self.low(at) == "of" else None
        return whole.end if whole is not None and self.low(whole.end) in (",", "and") else at

    def _joined_thing(self, at: int) -> Thing | None:
        """The next thing of a list; None when what follows is another clause."""
        follows = at
        while self.low(follows) in (",", "and", "plus"):
            follows += 1
        if follows == at or self.clauses.verb_at(follows) or self.has("doers", follows) or self.has("others", follows):
            return None
        thing = read_thing(self.tokens, follows, self.book, governed=True)
        if thing is not None and self.low(follows - 1) == "," and self.book.is_in(thing.name, ("tool",)):
            return None
        if thing is None or not thing.name or thing.measure or thing.name.split()[-1] in ("one", "ones"):
            return None
        behind = thing.end
        last = self.low(behind - 1)
        if all(form is Form.S for _, form in self.book.forms.get(last, ())) and last in self.book.forms:
            return thing
        is_clause = self.has("helpers", behind) or (
            bool(self.book.forms.get(self.low(behind))) and not self.has("particles", behind)
        )
        comma_only = self.low(follows - 1) == ","
        if comma_only and self.low(behind) == "," and not self._goes_on(behind + 1):
            return None
        ends = self.low(behind) in SIGNS or self.has("and", behind)
        apposition = comma_only and not self.has("particles", behind) and self.low(behind) not in (",", "and")
        return None if is_clause or apposition or (comma_only and not ends) else thing

    def _goes_on(self, at: int) -> bool:
        """True when a list goes on behind a comma, so that what stood before it was no apposition."""
        return self.has("and", at) or read_thing(self.tokens, at, self.book, governed=True) is not None

    def _late_particle(self, at: int, particles: list[str]) -> int:
        """The particle in "take the bolts on the left out"."""
        if self.low(at) in ("of", "on", "in", "at", "for", "from", "with"):
            thing = read_thing(self.tokens, at + 1, self.book)
            if thing is not None and self.has("particles", thing.end):
                found: list[str] = []
                end = self._particles(thing.end, found)
                leads_away = found[-1:] in (["off"], ["out"])
                if leads_away or self.low(end) in SIGNS:
                    particles += found
                    return end
        return at

    def _about(self, verb: str, at: int) -> Thing | None:
        ways = ("for", "over", "from", "between") if verb in ("measure", "gauge") else ("for", "over")
        return read_thing(self.tokens, at + 1, self.book) if self.low(at) in ways else None

    def _where(self, at: int, particles: list[str]) -> Thing | None:
        if self.has("beside", at):
            particles.append("aside")
            at += 1
        elif self.low(at) in ("in", "on", "to", "into", "onto", "at"):
            at += 1
        elif not particles:
            return None
        return read_thing(self.tokens, at, self.book)

    def _means(self, at: int) -> Thing | None:
        """What follows ``with``, ``by`` or ``on`` in the same clause, or ", with their" behind it."""
        at += self.low(at) == "," and self.low(at + 1) == "with" and self.low(at + 2) in ("its", "their")
        while self.low(at) not in SIGNS and not self.has("and", at) and not self.has("subordinate", at):
            if self.low(at) in ("with", "by"):
                return read_thing(self.tokens, at + 1, self.book)
            at += 1
        return None
