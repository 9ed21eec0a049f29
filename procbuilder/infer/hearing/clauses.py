"""Walks over a sentence: its tokens, where its clauses begin, and which of its words are verbs."""

from collections.abc import Sequence

from procbuilder.infer.dictionary.inflection import Form
from procbuilder.infer.dictionary.nouns import Thing, read_thing
from procbuilder.infer.dictionary.tokens import SIGNS, Token
from procbuilder.infer.dictionary.wordbook import Wordbook
from procbuilder.infer.hearing.word_class import is_noun


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
        subject = self.subject
        goes_on = subject is not None and subject.end == at - 1 and self.low(at - 1) in (",", "and")
        alone = subject is not None and goes_on and self.heads(subject) and self._is_named(subject)
        self.company = [*self.company, subject] if subject is not None and alone else []
        self.clause, self.subject, self.verbs, self.busy, self.foreign = at, None, 0, False, False

    def _is_named(self, thing: Thing) -> bool:
        return bool(thing.name) and (self.book.knows(thing.name) or self.has("articles", thing.start))

    # -- is it a verb

    def verb_at(self, at: int) -> tuple[tuple[str, Form], ...]:
        """The verbs that a token may be here; none when it is a noun or no verb of the trade."""
        low = self.low(at)
        plain = low.partition("-")[2] if low.partition("-")[0] in self.book.grammar["marks"] else low
        entries = self.book.forms.get(low) or self.book.forms.get(plain, ())
        return () if not entries or is_noun(self, at) else entries

    def stands_first(self, at: int) -> bool:
        """True for the first word of a clause, also of one behind "if" or "because"."""
        behind_opener = self.subject is None and (self.has("openers", at - 1) or self.has("and", at - 1))
        return at == self.clause or behind_opener

    def goes_on_to_do(self, at: int) -> bool:
        """True where a thing does or is something: "the seal off the crown came away"."""
        while self.low(at) == "of" and (whole := read_thing(self.tokens, at + 1, self.book)) is not None:
            at = whole.end
        return self.low(at) in self.book.idle or self.has("be", at) or bool(self.verb_at(at))

    def behind_place(self, at: int) -> int:
        """The token behind "at the front" and "behind it"; the token itself where no place begins."""
        if not self.has("leads_to_place", at):
            return at
        place = read_thing(self.tokens, at + 1, self.book)
        return place.end if place is not None and not place.measure else at

    def asks(self, at: int) -> bool:
        """True for a token in a clause that ends with a question mark."""
        return next((token.low for token in self.tokens[at:] if token.low in SIGNS), ".") == "?"

    def ends(self, at: int) -> bool:
        """True behind the last word of the sentence."""
        return all(token.low in SIGNS for token in self.tokens[at:])

    def heads(self, thing: Thing) -> bool:
        """True for a thing with which its clause begins, or that stands behind no more than "that's"."""
        before = range(self.clause, thing.start)
        small = ("be", "one_pronouns", "many_pronouns", "openers", "adverbs")
        return all(any(self.has(kind, at) for kind in small) for at in before)

    def begins(self, at: int) -> bool:
        """True at the beginning of a sentence, behind a sign, and behind "now", "then", "and" and their like."""
        behind = self.low(at - 1) in SIGNS or self.has("openers", at - 1) or self.has("and", at - 1)
        return at == 0 or (behind and self.subject is None)
