"""Things in a sentence: ``the two long bolts``, ``both of them``, ``the upper one``."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from decimal import Decimal

from procbuilder.infer.hearing.inflect import Form
from procbuilder.infer.hearing.numbers import number_at, word_value
from procbuilder.infer.hearing.tokens import SIGNS, Token
from procbuilder.infer.hearing.wordbook import Wordbook
from procbuilder.model.words import is_plural, singular

MOST_PARTS = 2
"""How often a part of a part is followed: "one of all of the bolts"."""
MOST_WORDS = 6
"""Words of a thing; what is longer is no name."""


@dataclass(frozen=True, slots=True)
class Thing:
    """A thing as named, without article, number, ``new`` and ``old``."""

    name: str
    """Empty for a pronoun or a bare number; ``upper one`` for one of several."""
    start: int
    end: int
    """Tokens from start up to end."""
    count: Decimal | None = None
    new: bool = False
    old: bool = False
    many: bool = False
    """A plural, or a pronoun for several."""
    pointed: bool = False
    """Only pointed at: ``it``, ``those``, ``the other three``."""
    measure: bool = False
    """A number with a unit: no thing at all."""
    partial: bool = False
    """Only some length of it: "forty mil of the sheath"."""


def read_thing(tokens: Sequence[Token], at: int, book: Wordbook, *, governed: bool = False) -> Thing | None:
    """The thing that begins at a token; None when none does. ``governed``: a verb before it takes it."""
    return _Reader(tokens, book, governed).read(at)


class _Reader:
    def __init__(self, tokens: Sequence[Token], book: Wordbook, governed: bool) -> None:
        self.tokens, self.book, self.governed = tokens, book, governed
        self._depth = 0

    def _low(self, at: int) -> str:
        return self.tokens[at].low if at < len(self.tokens) else "."

    def read(self, at: int) -> Thing | None:
        if self._low(at) in _POINTING and (self._tells_how(at + 1) or self._tells_way(at)):
            many = self._low(at) in ("those", "these")
            return Thing("", at, at + 1, many=many, pointed=True)
        count, position = self._count(at)
        if (of := self._part_of(position)) is not None:
            return self._inner(at, of, count)
        alone = self._low(at) == "one" and position == at + 1
        if alone and not self.governed and not self._content(position, 0, after_article=True):
            return None
        article = position > at
        while self.book.has("loose_words", self._low(position)) and (
            self._content(position + 1, 0, after_article=True) or self._is_number(self._low(position + 1))
        ):
            position += 1
        counted = self._low(position + 1) != "one" and self._is_number(self._low(position + 1))
        if self.book.has("positions", self._low(position)) and counted:
            position += 1
        if self._low(position) == "little" and self.book.is_in(self._low(position + 1), ("fluid", "paste")):
            position += 1
        number, position = self._number(position)
        count = number or count
        return self._named(at, position, count, article or number is not None) or self._pointed(at, position, count)

    def _tells_how(self, at: int) -> bool:
        """ "Hammer that flat", "spray those first", "give that a squirt": no name stands behind the pronoun."""
        if self._low(at) in ("a", "an", "another"):
            return True
        ends = self._low(at + 1) in SIGNS or self.book.has("and", self._low(at + 1))
        return ends and (self.book.has("ordinals", self._low(at)))

    def _tells_way(self, at: int) -> bool:
        """ "Those slide off": no thing that is several ends like this."""
        entries = self.book.forms.get(self._low(at + 1), ())
        wanted = Form.BASE if self._low(at) in ("those", "these") else Form.S
        moves = any(form is wanted and self.book.has("moving", verb) for verb, form in entries)
        way = self._low(at + 2)
        return moves and (way in _AWAY)

    def _count(self, at: int) -> tuple[Decimal | None, int]:
        """Articles and numbers in front; ``all three`` is three."""
        count: Decimal | None = None
        while True:
            low = self._low(at)
            number, after = self._number(at)
            if low == "that" and self._low(at - 1) == "one":
                return count, at
            if number is not None and low not in ("a", "an", "one"):
                count, at = number, after
            elif low == "one" or self.book.has("articles", low) or (low == "them" and self._is_those(at + 1)):
                count = Decimal(1) if low == "one" else count
                at += 1
            else:
                return count, at

    def _is_those(self, at: int) -> bool:
        """ "Undo them two screws", "kick them chocks out"."""
        named = self._named(at, self._number(at)[1], None, article=False)
        return named is not None and named.many and self.book.knows(named.name)

    def _number(self, at: int) -> tuple[Decimal | None, int]:
        if self._low(at) in ("both", "couple", "pair"):
            return Decimal(2), at + 1
        number = number_at(self.tokens, at, self.book)
        return number if number is not None else (None, at)

    def _part_of(self, at: int) -> int | None:
        """Where the thing begins behind ``bit of``, ``all of``, ``four of``."""
        before = self._low(at - 1) if at else ""
        if self._low(at) == "of" and (self.book.has("parts_of", before) or before in self.book.numbers):
            return at + 1
        while any(self.book.has(kind, self._low(at)) for kind in ("parts_of", "loose_words", "units")):
            at += 1
            if self._low(at) == "of":
                return at + 1
        return None

    def _inner(self, start: int, of: int, count: Decimal | None) -> Thing | None:
        self._depth += 1
        thing = self.read(of)
        if thing is None:
            return None
        by_unit = any(self.book.has("units", self._low(at)) for at in range(start, of))
        count = None if by_unit else count or thing.count
        return replace(thing, start=start, count=count, partial=by_unit)

    def _named(self, start: int, at: int, count: Decimal | None, article: bool) -> Thing | None:
        words: list[Token] = []
        new = old = False
        position = at
        while len(words) < MOST_WORDS and self._content(position, len(words), after_article=article):
            token = self.tokens[position]
            if self.book.has("new", token.low):
                new = True
            elif self.book.has("old", token.low) and (
                self._low(position + 1) in ("one", "ones") or self._content(position + 1, 0, after_article=True)
            ):
                old = True
            elif token.low in ("little", "tiny", "wee") and self._content(position + 1, 0, after_article=True):
                pass
            else:
                words.append(token)
            position += 1
            position += self._is_owner(position)
        if self._low(position) in ("one", "ones"):
            words.append(self.tokens[position])
            position += 1
        if 0 < (sized := self._sizes(words)) < len(words):
            is_number = "-" not in words[0].low and not self._is_part_of_inch(words[0].low)
            count = self._count_before(start) if is_number else count
            words = words[sized:]
        if not words or (len(words) == 1 and self.book.has("loose_words", words[0].low)):
            return None
        name = self.book.filed(" ".join(_spelled(token, token.start == 0) for token in words))
        if words[-1].low.endswith("s") and self.book.has("heads", singular(words[-1].low)):
            name = f"{name.removesuffix('s')} screws"
        is_unit = self.book.has("units", words[0].low) and (len(words) == 1 or not self.book.knows(words[-1].low))
        measure = is_unit and count is not None and self._low(start) not in ("both", "the")
        many = is_plural(words[-1].low) or (count or 0) > 1
        return Thing(name, start, position, count, new, old, many, words[-1].low in ("one", "ones"), measure)

    def _sizes(self, words: Sequence[Token]) -> int:
        """How many words in front are a size: "quarter inch" of "two quarter inch screws"."""
        first = bool(words) and self._is_part_of_inch(words[0].low)
        return int(first) + 1 if len(words) > first and self._is_size(words[int(first)].low) else 0

    def _is_part_of_inch(self, low: str) -> bool:
        return low.rpartition("-")[2] in ("half", "quarter", "quarters", "eighth", "eighths", "sixteenth", "sixteenths")

    def _count_before(self, at: int) -> Decimal | None:
        """Two of "two ten mil nuts"; None for "the ten mil nut"."""
        return None

    def _is_size(self, low: str) -> bool:
        """``mil`` of "a five mil grub screw", ``half-inch`` of "half-inch nuts"."""
        return low.rpartition("-")[2] in (*self.book.sizes["millimetre"], *self.book.sizes["inch"])

    def _is_owner(self, at: int) -> bool:
        """True for the ``'s`` of "the pin's clip", but not for that of "the pin's loose"."""
        behind = self._low(at + 1)
        is_verb = any(form in (Form.PAST, Form.ING) for _, form in self.book.forms.get(behind, ()))
        is_small = any(self.book.has(kind, behind) for kind in (*_STOPS, "results", "positions"))
        known = self.book.knows(behind) or f"{behind} {singular(self._low(at + 2))}" in self.book.compounds
        return self._low(at) == "'s" and known and not is_verb

    def _pointed(self, start: int, at: int, count: Decimal | None) -> Thing | None:
        low = self._low(start)
        if count is not None and at > start and low not in ("a", "an"):
            return Thing("", start, at, count, many=count > 1, pointed=True)
        if self.book.has("many_pronouns", low):
            all_of = self._low(start + 1) in ("both", "all")
            two = Decimal(2) if self._low(start + 1) == "both" else None
            return Thing("", start, start + 1 + all_of, two, many=True, pointed=True)
        if self.book.has("one_pronouns", low):
            return Thing("", start, start + 1, pointed=True)
        return None

    def _content(self, at: int, so_far: int, *, after_article: bool) -> bool:
        """True when the token can be part of a name, so many words being read."""
        if at >= len(self.tokens):
            return False
        low = self._low(at)
        if not so_far and self._begins_name(at, low):
            return True
        if low in SIGNS or self._is_number(low) or low[0] == "'" or low == "n't":
            return False
        if self.book.has("positions", low) and not so_far:
            if self._low(at + 1) in ("one", "ones") and not self._content(at + 2, 0, after_article=True):
                return True
            strict = self.book.has("strict_articles", self._low(at - 1))
            alone = after_article and (strict or not self.book.has("particles", low))
            return alone or self._content(at + 1, 1, after_article=True)
        if any(self.book.has(kind, low) for kind in _STOPS) or (low.endswith("ly") and not self.book.knows(low)):
            return False
        if low in self.book.states or ((so_far or not after_article) and self.book.has("results", low)):
            return self._content(at + 1, so_far + 1, after_article=True)
        if low in self.book.idle and singular(low) not in self.book.nouns:
            return not so_far and self.book.has("strict_articles", self._low(at - 1))
        if so_far and self._is_size(self._low(at - 1)) and self.book.knows(low):
            return True
        return not (self._is_verb(at) if so_far else self._is_doing(low, after_article))

    def _begins_name(self, at: int, low: str) -> bool:
        """ "Drain plug", "the through axle", "kick plate": the first word of a thing, whatever it is elsewhere."""
        following = self._low(at + 1)
        if f"{low} {singular(following)}" in self.book.compounds:
            return True
        by_way = low in _WAYS and self.book.has("strict_articles", self._low(at - 1))
        return (by_way or self.book.has("modifiers", low)) and self.book.knows(following)

    def _is_doing(self, low: str, after_article: bool) -> bool:
        """True for a first word that is a verb: "turning it"."""
        is_doing = low.endswith("ing") and low in self.book.forms and low not in self.book.nouns
        return is_doing and not after_article

    def _is_number(self, low: str) -> bool:
        return low in self.book.numbers or word_value(low, self.book) is not None

    def _is_verb(self, at: int) -> bool:
        """True for a verb behind a name: the next thing that is done, or what the thing does."""
        behind = at + 1
        while not self.governed and self.book.has("adverbs", self._low(behind)):
            behind += 1
        low, following = self._low(at), self._low(behind)
        entries = self.book.forms.get(low, ())
        if not entries:
            return False
        if any(form is Form.ING for _, form in entries):
            return low not in self.book.nouns and not self._content(at + 1, 0, after_article=False)
        known = singular(low) in self.book.nouns
        stands_before_thing = self.book.has("articles", following) or self.book.has("one_pronouns", following)
        if low.startswith("un") and self.tokens[at - 1].low.endswith("s"):
            return True
        if any(form is Form.BASE for _, form in entries):
            return stands_before_thing or (self.book.has("particles", following) and not known and not self.governed)
        if self._moves_away(at, following):
            return True
        firm = singular(low) in self.book.firm_nouns
        return not (known if self.governed else firm)

    def _moves_away(self, at: int, following: str) -> bool:
        """ "The pin taps out": what it does, though "tap" is a thing, too."""
        entries = self.book.forms.get(self._low(at), ())
        moves = any(form is Form.S and self.book.has("moving", verb) for verb, form in entries)
        noun = self.governed and singular(self._low(at)) in self.book.nouns
        compound = f"{self._low(at - 1)} {singular(self._low(at))}" in self.book.compounds
        return moves and not noun and not compound and following in ("out", "through", "down", "away", "home", "into")


_AWAY = ("off", "out", "away", "apart")
_POINTING = ("that", "this", "those", "these")
_WAYS = ("through", "over", "under", "down", "up", "in", "out", "off", "by")
_STOPS = (
    "articles", "one_pronouns", "many_pronouns", "prepositions", "particles", "adverbs", "helpers", "subordinate",
    "negations", "doers", "others", "and",
)  # fmt: skip


def _spelled(token: Token, first: bool) -> str:
    """As spoken, but without the capital of a sentence's first word."""
    text = token.text
    return text[:1].lower() + text[1:] if (first and len(text) > 2 and text[1] != "-") else text
