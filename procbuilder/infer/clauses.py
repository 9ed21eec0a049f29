"""What a sentence says is done: each verb with its particles and things, and who does it."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from procbuilder.infer.inflect import Form
from procbuilder.infer.nouns import Thing, read_thing
from procbuilder.infer.tokens import SIGNS, Token
from procbuilder.infer.wordbook import Wordbook
from procbuilder.model.words import singular


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


class Clauses:
    """Walks over a sentence once, from left to right."""

    def __init__(self, tokens: Sequence[Token], book: Wordbook) -> None:
        self.tokens, self.book = tokens, book
        self.clause = 0
        """Token at which the current clause begins."""
        self.subject: Thing | None = None
        """The last thing of the current clause, before its verb."""
        self.verbs = 0
        """How many operations the clause has so far."""
        self.busy = False
        """The clause has a verb, so that nothing in it is told without one."""

    def low(self, at: int) -> str:
        """A token in lower case; a full stop behind the last one."""
        return self.tokens[at].low if 0 <= at < len(self.tokens) else "."

    def has(self, kind: str, at: int) -> bool:
        """True when the token stands in this list of the grammar."""
        return self.book.has(kind, self.low(at))

    def begin(self, at: int) -> None:
        """A new clause begins here."""
        self.clause, self.subject, self.verbs, self.busy = at, None, 0, False

    # -- is it a verb

    def verb_at(self, at: int) -> tuple[tuple[str, Form], ...]:
        """The verbs that a token may be here; none when it is a noun or no verb of the trade."""
        entries = self.book.forms.get(self.low(at), ())
        if not entries or self._is_noun(at):
            return ()
        return entries

    def _is_noun(self, at: int) -> bool:
        if at > self.clause:
            if self.has("strict_articles", at - 1) or self.low(at - 1) in self.book.numbers:
                return True
            if (
                self.has("prepositions", at - 1)
                and self.low(at - 1) not in ("to", "by")
                and not self._phrasal_before(at)
            ):
                return True
        low, following = singular(self.low(at)), singular(self.low(at + 1))
        if f"{low} {following}" in self.book.compounds or self._is_number_of(at):
            return True
        if self._stands_first(at) and self._has_finite_verb(at + 1):
            return True
        if self.has("particles", at + 1) and any(block.default for block in self.book.by_verb.get(self.low(at), ())):
            return False
        return low in self.book.nouns and self._stands_first(at) and not self._takes_thing(at + 1)

    def _is_number_of(self, at: int) -> bool:
        """ "Number two crosshead", "size ten": a noun with its number."""
        return self.low(at) in ("number", "size", "grade") and self.low(at + 1) in self.book.numbers

    def _has_finite_verb(self, at: int) -> bool:
        """ "Spinning it with air is a bad idea", "grease on the end keeps it off": what stood first was the subject."""
        seen = False
        while at < len(self.tokens) and self.low(at) not in SIGNS and not self.has("and", at):
            if self.has("subordinate", at) or self.has("doers", at) or self.has("others", at):
                return False
            if seen and self.low(at) in ("is", "are", "was", "'ll", "will", "can", "keeps", "makes", "means", "gives"):
                return not self.has("positions", at + 1)
            seen = seen or read_thing(self.tokens, at, self.book) is not None
            at += 1
        return False

    def _phrasal_before(self, at: int) -> bool:
        """True when the preposition before is the particle of a verb: "come off undo"."""
        return self.low(at - 1) in ("off", "out", "on", "in") and self.low(at) in ("and",)

    def _stands_first(self, at: int) -> bool:
        behind_opener = self.subject is None and (self.has("openers", at - 1) or self.has("and", at - 1))
        return at == self.clause or behind_opener

    def _takes_thing(self, at: int) -> bool:
        """True when a thing with an article, a pronoun or a number follows, perhaps behind a particle."""
        while self.has("particles", at) or self.has("adverbs", at):
            at += 1
        if self.has("articles", at) or self.has("many_pronouns", at) or self.has("one_pronouns", at):
            return True
        if self.low(at) in self.book.numbers or self.has("new", at) or self.has("old", at) or self.has("positions", at):
            return True
        return read_thing(self.tokens, at, self.book) is not None and singular(self.low(at)) not in self.book.nouns

    # -- who does it

    def before(self, at: int) -> "Before":
        """What stands between the beginning of the clause and its verb."""
        found = Before()
        for back in range(at - 1, self.clause - 1, -1):
            if self.has("negations", back) or (self.low(back) == "no" and self.low(back + 1) == "need"):
                found = replace(found, negated=True)
            elif self.low(back) == "to" and not self._is_wish(back - 1):
                return replace(found, purpose=True)
            elif self.has("others", back):
                return replace(found, other=True)
            elif self.has("doers", back) or (
                back == at - 1 and self.has("be", back) and self.tokens[at].low in self.book.by_verb
            ):
                return found
            elif self.has("one_pronouns", back) or self.has("many_pronouns", back):
                return replace(found, moves=True, other=self.low(back - 1) in ("let", "leave", "keep"))
            elif not any(self.has(kind, back) for kind in ("helpers", "adverbs", "openers", "and")):
                return replace(found, moves=True)
        return found

    def _is_wish(self, at: int) -> bool:
        while self.has("adverbs", at) and at > self.clause:
            at -= 1
        return self.has("wishes", at) or at < self.clause

    # -- what it is done to

    def read(self, verb: str, form: Form, at: int) -> Told:
        """The verb with all that belongs to it."""
        position = self._skip(at + 1)
        particles: list[str] = []
        if f"{verb} {self.low(position)}" not in self._leaning:
            position = self._particles(position, particles)
        about = self._about(position)
        things, position = self._things(position if about is None else about.end)
        things = things if about is None else []
        behind = position
        position = self._particles(self._skip(position), particles) if things else position
        position = self._late_particle(position, particles) if things and not particles else position
        where = self._where(position, particles)
        so = (
            next((self.low(each) for each in range(behind, position + 1) if self.has("results", each)), "")
            if things
            else ""
        )
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

    @property
    def _leaning(self) -> Sequence[str]:
        leaning: Sequence[str] = self.book.grammar["leaning"]
        return leaning

    def _skip(self, at: int) -> int:
        while self.has("adverbs", at) and not (self.has("positions", at) and self.has("articles", at - 1)):
            at += 1
        return at

    def _particles(self, at: int, particles: list[str]) -> int:
        while self.has("particles", at) or (particles and self.has("adverbs", at) and self.has("particles", at + 1)):
            if self._leads_to_place(at):
                return at
            if self.has("particles", at):
                particles.append(self.low(at))
            at += 1
        return at

    def _leads_to_place(self, at: int) -> bool:
        """ "Put it on the bench": here ``on`` belongs to the bench."""
        if self.low(at) not in ("on", "in", "into", "onto", "to"):
            return False
        thing = read_thing(self.tokens, at + 1, self.book)
        return thing is not None and bool(thing.name) and self.book.is_in(thing.name, ("place",))

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
            thing = self._joined_thing(at)
        return things, at

    def _joined_thing(self, at: int) -> Thing | None:
        """The next thing of a list; None when what follows is another clause."""
        follows = at
        while self.low(follows) in (",", "and", "plus"):
            follows += 1
        if follows == at or self.verb_at(follows) or self.has("doers", follows) or self.has("others", follows):
            return None
        thing = read_thing(self.tokens, follows, self.book, governed=True)
        if thing is None or not thing.name or thing.measure or thing.name.split()[-1] in ("one", "ones"):
            return None
        behind = thing.end
        is_clause = self.has("helpers", behind) or (
            bool(self.book.forms.get(self.low(behind))) and not self.has("particles", behind)
        )
        comma_only = self.low(follows - 1) == ","
        ends = self.low(behind) in SIGNS or self.has("and", behind) or self.has("particles", behind)
        apposition = comma_only and not self.has("particles", behind) and self.low(behind) not in (",", "and")
        return None if is_clause or apposition or (comma_only and not ends) else thing

    def _late_particle(self, at: int, particles: list[str]) -> int:
        """The particle in "take the bolts on the left out"."""
        if self.low(at) in ("of", "on", "in", "at", "for", "from", "with"):
            thing = read_thing(self.tokens, at + 1, self.book)
            if thing is not None and self.has("particles", thing.end):
                found: list[str] = []
                end = self._particles(thing.end, found)
                leads_away = found[-1] in ("off", "out")
                if leads_away or self.low(end) in SIGNS or self.has("and", end) or self.has("adverbs", end):
                    particles += found
                    return end
        return at

    def _about(self, at: int) -> Thing | None:
        return read_thing(self.tokens, at + 1, self.book) if self.low(at) in ("for", "over") else None

    def _where(self, at: int, particles: list[str]) -> Thing | None:
        if self.low(at) in ("in", "on", "to", "into", "onto", "at"):
            at += 1
        elif not particles:
            return None
        return read_thing(self.tokens, at, self.book)

    def _means(self, at: int) -> Thing | None:
        """What follows ``with``, ``by`` or ``on`` in the same clause."""
        while self.low(at) not in SIGNS and not self.has("and", at) and not self.has("subordinate", at):
            if self.low(at) in ("with", "by"):
                return read_thing(self.tokens, at + 1, self.book)
            at += 1
        return None


@dataclass(frozen=True, slots=True)
class Before:
    """What stands before a verb in its clause."""

    negated: bool = False
    purpose: bool = False
    """It tells what for: "to release the tab"."""
    other: bool = False
    """Somebody else does it."""
    moves: bool = False
    """The thing does it by itself, or it is named before: "the cover lifts off"."""


def subordinate_at(clauses: Clauses, at: int) -> bool:
    """True when what follows is no operation of its own: a reason, a time, a condition."""
    low = clauses.low(at)
    if low in ("if", "unless"):
        return True
    if low == "that" or low == "which":
        return _is_relative(clauses, at)
    if low == "so":
        return _is_purpose(clauses, at)
    if low in ("as", "than") and clauses.low(at + 1) in ("a", "the"):
        return low == "as"
    return clauses.has("subordinate", at) or f"{low} {clauses.low(at + 1)}" in _pairs(clauses.book)


def is_outcome(clauses: Clauses, at: int) -> bool:
    """ "Any more and you'll strip it": what would come of it."""
    will = clauses.low(at + 2) in ("'ll", "will")
    return at > clauses.clause and clauses.low(at) in ("and", "or") and will and not clauses.has("be", at + 1)


def is_resumed(clauses: Clauses, at: int) -> bool:
    """ "Before you drop the box you have to undo the rod": the clause that tells what to do begins."""
    if clauses.low(at) not in ("i", "you", "we") or at <= clauses.clause + 1:
        return False
    behind = at + 1
    while clauses.low(behind) in ("'ve", "'m", "'re", "'ll", "am", "are"):
        behind += 1
    return clauses.low(behind) in ("have", "need", "want", "must", "should", "got", "going", "gonna", "gotta")


def _is_relative(clauses: Clauses, at: int) -> bool:
    """``that`` directly behind a thing."""
    behind = at > clauses.clause and clauses.subject is not None and clauses.subject.end == at
    return behind or (clauses.low(at) == "which" and at > clauses.clause)


def _is_purpose(clauses: Clauses, at: int) -> bool:
    """``so it can't start``, but not ``so, next`` and not ``so I'm going to``."""
    if at == 0 or clauses.has("openers", at - 1):
        return False
    if clauses.low(at + 1) in ("i", "we", "i'm", "use", "don't"):
        return clauses.low(at + 2) in ("can", "do", "could")
    return not clauses.verb_at(at + 1)


def _pairs(book: Wordbook) -> frozenset[str]:
    return frozenset(words for words in book.grammar["subordinate"] if " " in words)
