"""When a thing is done: now, before the film, later, or only in some cases."""

from collections.abc import Iterable, Sequence

from procbuilder.infer.dictionary.tokens import SIGNS, Token
from procbuilder.infer.dictionary.wordbook import Wordbook
from procbuilder.model.heard import Tense

_IF = ("if", "unless")
WILL = frozenset({"will", "'ll", "going", "gonna", "shall", "'d", "would"})


class Times:
    """What a sentence says of its time."""

    def __init__(self, tokens: Sequence[Token], book: Wordbook) -> None:
        words = " ".join(token.low for token in tokens)
        self._text = f" {words.replace(' n' + chr(39) + 't', 'n' + chr(39) + 't')} "
        self._text = self._text.replace(" '", "'")
        plain = self._text
        for phrase in book.grammar["no_condition"]:
            plain = plain.replace(f" {phrase} ", " ")
        self.conditional = _holds(plain, [phrase for phrase in book.grammar["conditional"] if phrase not in _IF])
        self._ifs = _ifs(tokens) if _holds(plain, _IF) else []
        self._tokens = tokens
        self.later = _holds(self._text, book.grammar["later"])
        self.another_day = _holds(_without_reason(self._text, book), book.grammar["another_day"])
        self._will = any(token.low in WILL for token in tokens)
        self.earlier = _holds(self._text, book.grammar["earlier"])
        did = any(
            _holds(self._text, [f"{who} did {what}"]) for who in ("i", "we") for what in ("that", "it", "this", "those")
        )
        self.done_before = self.earlier and did
        self.not_now = _holds(self._text, book.grammar["not_now"])
        self.long_ago = _holds(self._text, book.grammar["long_ago"])
        self.history = self.long_ago or _holds(self._text, book.grammar["history"])

    def tense(self, before: Iterable[str], *, past: bool, at: int = 0) -> Tense | None:
        """The tense of a verb at a token with these words before it; None when it tells of some other job."""
        if self.not_now or (past and self.history):
            return None
        if self.conditional_at(at):
            return Tense.IF
        if (self.later and not WILL.isdisjoint(before)) or self.another_day:
            return Tense.LATER
        if self.earlier and (past or self.done_before):
            return Tense.EARLIER
        return Tense.NOW

    def conditional_at(self, at: int) -> bool:
        """True when what is told at a token holds only in some cases."""
        return self.conditional or any(self._covers(place, at) for place in self._ifs)

    def _covers(self, place: int, at: int) -> bool:
        """True for an "if" before the verb, or behind it with no sign between them."""
        return place < at or all(token.low not in SIGNS for token in self._tokens[at:place])


def _without_reason(text: str, book: Wordbook) -> str:
    """ "I leave it loose, because he'll be back tomorrow": a reason tells nothing of when it is done."""
    ends = (text.find(f" {phrase} ") for phrase in book.cues["reason"])
    return text[: min((end + 1 for end in ends if end > 0), default=len(text))]


def _ifs(tokens: Sequence[Token]) -> list[int]:
    return [at for at, token in enumerate(tokens) if token.low in _IF]


def _holds(text: str, phrases: Iterable[str]) -> bool:
    return any(f" {phrase} " in text for phrase in phrases)
