"""Walks over a sentence: its tokens, where its clauses begin, and which of its words are verbs."""

from collections.abc import Sequence

from procbuilder.infer.inflect import Form
from procbuilder.infer.nouns import Thing, read_thing
from procbuilder.infer.tokens import SIGNS, Token
from procbuilder.infer.wordbook import Block, Wordbook
from procbuilder.model.heard import Act
from procbuilder.model.words import singular


class Clauses:
    """Walks over a sentence once, from left to right."""

    def __init__(self, tokens: Sequence[Token], book: Wordbook) -> None:
        self.tokens, self.book = tokens, book
        self.clause = 0
        """Token at which the current clause begins."""
        self.subject: Thing | None = None
        """The last thing of the current clause, before its verb."""
        self.company: list[Thing] = []
        """What was named with the subject: "the washer, the spring and the pin come off"."""
        self.verbs = 0
        """How many operations the clause has so far."""
        self.busy = False
        """The clause has a verb, so that nothing in it is told without one."""

        self.foreign = False
        """Somebody else, or something, does what it says."""

    def low(self, at: int) -> str:
        """A token in lower case; a full stop behind the last one."""
        return self.tokens[at].low if 0 <= at < len(self.tokens) else "."

    def has(self, kind: str, at: int) -> bool:
        """True when the token stands in this list of the grammar."""
        return self.book.has(kind, self.low(at))

    def begin(self, at: int) -> None:
        """A new clause begins here; it may go on with the list of its subjects."""
        goes_on = self.subject is not None and self.subject.end == at - 1 and self.low(at - 1) in (",", "and")
        alone = goes_on and self.subject is not None and self.subject.start == self.clause
        self.company = [*self.company, self.subject] if alone and self.subject and self._is_named(self.subject) else []
        self.clause, self.subject, self.verbs, self.busy, self.foreign = at, None, 0, False, False

    def _is_named(self, thing: Thing) -> bool:
        return bool(thing.name) and (self.book.knows(thing.name) or self.has("articles", thing.start))

    # -- is it a verb

    def verb_at(self, at: int) -> tuple[tuple[str, Form], ...]:
        """The verbs that a token may be here; none when it is a noun or no verb of the trade."""
        low = self.low(at)
        entries = self.book.forms.get(low) or self.book.forms.get(low.partition("-")[2] if _is_marked(low) else "", ())
        return () if not entries or self._is_noun(at) else entries

    def _is_noun(self, at: int) -> bool:
        if at > self.clause:
            if self.has("strict_articles", at - 1) or self.low(at - 1) in self.book.numbers:
                return True
            goes = self.subject is not None and all(form is Form.S for _, form in self.book.forms.get(self.low(at), ()))
            if (
                not goes
                and self.has("prepositions", at - 1)
                and self.low(at - 1) not in ("to", "by")
                and not self._phrasal_before(at)
            ):
                return True
        low, following = singular(self.low(at)), singular(self.low(at + 1))
        if f"{low} {following}" in self.book.compounds or self._is_number_of(at):
            return True
        if self.stands_first(at) and not self._is_asking(at) and self._has_finite_verb(at + 1):
            return True
        is_past = all(form is Form.PAST for _, form in self.book.forms.get(self.low(at), ()))
        if is_past and self.stands_first(at) and self.book.knows(self.low(at + 1)):
            return True
        is_s = all(form is Form.S for _, form in self.book.forms.get(self.low(at), ()))
        if is_s and self.stands_first(at) and self.book.knows(self.low(at)):
            return True
        if self.low(at + 1) == "of" and self.stands_first(at):
            return True
        if self.stands_first(at) and (self._is_position(at) or self._goes_no_way(at) or self.is_modifier(at)):
            return True
        if self.has("particles", at + 1) and any(block.default for block in self.book.by_verb.get(self.low(at), ())):
            return False
        return low in self.book.nouns and self.stands_first(at) and not self._takes_thing(at + 1)

    def _is_asking(self, at: int) -> bool:
        """ "Check the wires are free"."""
        return self.low(at) in ("check", "verify", "confirm", "ensure", "see")

    def _is_position(self, at: int) -> bool:
        """ "Back nut still": which one it is."""
        kinds = ("articles", "one_pronouns", "many_pronouns", "particles", "adverbs", "prepositions", "and")
        named = self.low(at + 1) not in SIGNS and not any(self.has(kind, at + 1) for kind in kinds)
        return self.has("positions", at) and named and self.low(at + 1) not in self.book.numbers

    def is_modifier(self, at: int) -> bool:
        """ "Drain hose on": the first part of a name, and what became of the thing stands behind."""
        thing = self.has("modifiers", at) and self.book.knows(self.low(at + 1)) and not self.has("articles", at + 1)
        kinds = ("particles", "be", "results")
        told = any(self.has(kind, at + 2) for kind in kinds) or self.low(at + 2) == "next"
        return thing and told and not self.has("particles", at + 1)

    def _goes_no_way(self, at: int) -> bool:
        """ "Hose through the guard": a known thing, and as a verb it does not go with this particle."""
        way = self.low(at + 1)
        blocks = self.book.by_verb.get(self.low(at), ())
        known = self.book.knows(self.low(at)) and bool(blocks) and self.has("particles", at + 1)
        return known and not any(_goes_with(block, way) for block in blocks)

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

    def stands_first(self, at: int) -> bool:
        """True for the first word of a clause, also of one behind "if" or "because"."""
        behind_opener = self.subject is None and (self.has("openers", at - 1) or self.has("and", at - 1))
        return at == self.clause or behind_opener

    def begins(self, at: int) -> bool:
        """True at the beginning of a sentence, behind a sign, and behind "now", "then", "and" and their like."""
        behind = self.low(at - 1) in SIGNS or self.has("openers", at - 1) or self.has("and", at - 1)
        return at == 0 or (behind and self.subject is None)

    def _takes_thing(self, at: int) -> bool:
        """True when a thing with an article, a pronoun or a number follows, perhaps behind a particle."""
        while self.has("particles", at) or self.has("adverbs", at):
            at += 1
        if self.has("articles", at) or self.has("many_pronouns", at) or self.has("one_pronouns", at):
            return True
        if self.low(at) in self.book.numbers or self.has("new", at) or self.has("old", at) or self.has("positions", at):
            return True
        return read_thing(self.tokens, at, self.book) is not None and singular(self.low(at)) not in self.book.nouns


def _goes_with(block: Block, way: str) -> bool:
    """True when a particle belongs to what the block says, or changes nothing about it."""
    return way in block.particles or (not block.particles and block.act not in (Act.WORK, Act.CHECK))


_MARKS = frozenset(
    [
        "re",
        "pre",
        "dry",
        "test",
        "wire",
        "hand",
        "double",
        "spot",
        "power",
        "pressure",
        "jet",
        "air",
        "heat",
        "cross",
        "over",
        "hot",
        "cold",
        "wet",
        "steam",
        "bench",
    ]
)


def _is_marked(low: str) -> bool:
    """``dry-fit``, ``re-grease``, ``wire-brush``: how, and the verb."""
    return low.partition("-")[0] in _MARKS and "-" in low
