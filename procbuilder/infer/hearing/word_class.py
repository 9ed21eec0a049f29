"""Whether a word that may be a verb is a noun where it stands: "clamp tight", "drain hose on", "two pushes"."""

from collections.abc import Sequence
from typing import Protocol

from procbuilder.infer.dictionary.english import singular
from procbuilder.infer.dictionary.inflection import Form
from procbuilder.infer.dictionary.nouns import Thing, read_thing
from procbuilder.infer.dictionary.tokens import SIGNS, Token
from procbuilder.infer.dictionary.wordbook import Block, Wordbook
from procbuilder.model.heard import Act


class Walk(Protocol):
    """A sentence that is walked over, with the clause and the subject of this moment."""

    tokens: Sequence[Token]
    book: Wordbook
    clause: int
    subject: Thing | None

    def low(self, at: int) -> str:
        """A token in lower case."""
        ...

    def has(self, kind: str, at: int) -> bool:
        """True when the token stands in this list of the grammar."""
        ...

    def stands_first(self, at: int) -> bool:
        """True for the first word of a clause."""
        ...


def is_noun(walk: Walk, at: int) -> bool:
    """True when the token is no verb here, though it may be one elsewhere."""
    low = walk.low(at)
    if _is_governed(walk, at) or f"{singular(low)} {singular(walk.low(at + 1))}" in walk.book.compounds:
        return True
    if low == "back" and at > walk.clause and walk.has("be", at - 1):
        return True
    if _is_number_of(walk, at) or (walk.low(at + 1) == "'s" and not _all_forms(walk, at, Form.PAST)):
        return True
    if not walk.stands_first(at):
        return False
    if any(rule(walk, at) for rule in _AT_FIRST):
        return True
    if walk.has("particles", at + 1) and any(block.default for block in walk.book.by_verb.get(low, ())):
        return False
    return singular(low) in walk.book.nouns and not _takes_thing(walk, at + 1)


def _is_governed(walk: Walk, at: int) -> bool:
    """Behind an article, a number or a preposition; "the clip underneath flicks out" has its verb there."""
    if at <= walk.clause:
        return False
    if walk.has("be", at - 1) and walk.low(at - 2) == "there":
        return True
    if walk.has("strict_articles", at - 1) or walk.low(at - 1) in walk.book.numbers:
        return True
    goes = walk.subject is not None and _all_forms(walk, at, Form.S)
    return not goes and walk.has("prepositions", at - 1) and walk.low(at - 1) not in ("to", "by")


def _is_number_of(walk: Walk, at: int) -> bool:
    """ "Number two crosshead", "size ten": a noun with its number."""
    if walk.low(at) == "couple":
        return walk.low(at + 1) == "of" or walk.low(at + 1).endswith("s")
    return walk.low(at) in ("number", "size", "grade") and walk.low(at + 1) in walk.book.numbers


def _all_forms(walk: Walk, at: int, form: Form) -> bool:
    return all(one is form for _, one in walk.book.forms.get(walk.low(at), ()))


# -- at the beginning of a clause


def _is_adjective(walk: Walk, at: int) -> bool:
    """ "Closed end facing you"."""
    return _all_forms(walk, at, Form.PAST) and walk.book.knows(walk.low(at + 1))


def _is_plural(walk: Walk, at: int) -> bool:
    """ "Clips off": no command ends with -s."""
    return _all_forms(walk, at, Form.S) and walk.book.knows(walk.low(at))


def _is_amount(walk: Walk, at: int) -> bool:
    """ "Drop of oil"."""
    return walk.low(at + 1) == "of"


def _is_position(walk: Walk, at: int) -> bool:
    """ "Back nut still": which one it is."""
    kinds = ("articles", "one_pronouns", "many_pronouns", "particles", "adverbs", "prepositions", "and")
    named = walk.low(at + 1) not in SIGNS and not any(walk.has(kind, at + 1) for kind in kinds)
    return walk.has("positions", at) and named


def is_modifier(walk: Walk, at: int) -> bool:
    """ "Drain hose on": the first part of a name, and what became of the thing stands behind."""
    thing = walk.has("modifiers", at) and walk.book.knows(walk.low(at + 1))
    kinds = ("particles", "be", "results")
    if walk.has("leading", at) and walk.book.knows(walk.low(at + 1)) and walk.low(at + 2) in SIGNS:
        return True
    behind = at + 2 + (walk.low(at + 2) in ("right", "straight", "all", "just", "now"))
    told = any(walk.has(kind, behind) for kind in kinds) or walk.low(behind) == "next"
    return thing and told


def _goes_no_way(walk: Walk, at: int) -> bool:
    """ "Hose through the guard": a known thing, and as a verb it does not go with this particle."""
    way = walk.low(at + 1)
    blocks = walk.book.by_verb.get(walk.low(at), ())
    known = walk.book.knows(walk.low(at)) and bool(blocks) and walk.has("particles", at + 1)
    return known and not any(_goes_with(block, way) for block in blocks)


def _goes_with(block: Block, way: str) -> bool:
    """True when a particle belongs to what the block says, or changes nothing about it."""
    if block.means:
        return False
    return way in block.particles or (not block.particles and block.act not in (Act.WORK, Act.CHECK))


_AT_FIRST = (
    _is_adjective,
    _is_plural,
    _is_amount,
    _is_position,
    is_modifier,
    _goes_no_way,
)


def _takes_thing(walk: Walk, at: int) -> bool:
    """True when a thing with an article, a pronoun or a number follows, perhaps behind a particle."""
    if walk.book.forms.get(walk.low(at)) and _all_forms(walk, at, Form.PAST):
        return False
    while walk.has("particles", at) or walk.has("adverbs", at):
        at += 1
    if any(walk.has(kind, at) for kind in ("articles", "many_pronouns", "one_pronouns", "new", "old", "positions")):
        return True
    if walk.low(at) in walk.book.numbers:
        return True
    return read_thing(walk.tokens, at, walk.book) is not None and singular(walk.low(at)) not in walk.book.nouns
