"""Things of a sentence that has no verb of its own: "then the rear pins", "new gasket, two nuts", "emboss plate"."""

from dataclasses import dataclass

from procbuilder.infer.dictionary.inflection import Form
from procbuilder.infer.dictionary.nouns import Thing, read_thing
from procbuilder.infer.dictionary.tokens import SIGNS
from procbuilder.infer.hearing.clauses import Clauses
from procbuilder.infer.hearing.told import Told

_GOES_ON = ("then", "next", "and", "also", "same", "likewise", "plus", "finally", "lastly", "now")
_TOO = ("too", "also", "likewise")


@dataclass(frozen=True, slots=True)
class Again:
    """What a sentence names to say that the same goes for it."""

    things: tuple[Thing, ...] = ()
    too: bool = False
    """It says so: "faceplate too"."""


def follows_again(clauses: Clauses) -> Again:
    """The things of a sentence that says no more than ``then the rear pins, both of them`` or ``faceplate too``."""
    at = _behind_same_again(clauses)
    while clauses.has("openers", at) or clauses.low(at) in (",", "as", "with"):
        at += 1
    things = _joined(clauses, at)
    end = things[-1].end if things else at
    too = False
    said = {token.low for token in clauses.tokens[:at]}
    if not too and said.isdisjoint(_GOES_ON) and all(token.low != "next" for token in clauses.tokens):
        return Again()
    while things and (clauses.has("be", end) or clauses.low(end) == "next" or clauses.low(end) in _TOO):
        end += 1
    end = clauses.behind_place(end)
    if clauses.low(end) == "," and any(
        clauses.has(kind, end + 1) for kind in ("one_pronouns", "many_pronouns", "others")
    ):
        return Again()
    return Again(things, too) if (clauses.low(end) in SIGNS) else Again()


def _joined(clauses: Clauses, at: int) -> tuple[Thing, ...]:
    """The things that stand one behind the other from a token on."""
    things: list[Thing] = []
    thing = read_thing(clauses.tokens, at, clauses.book)
    while thing is not None and not thing.measure:
        end = thing.end
        if not thing.name and (not thing.count or clauses.behind_place(end) == end):
            break
        things.append(thing)
        follows = end + 1 if clauses.low(end) == "and" else end
        follows = follows
        thing = read_thing(clauses.tokens, follows, clauses.book) if follows > end else None
    return tuple(things)


def _behind_same_again(clauses: Clauses) -> int:
    """The token behind "do the same with" at the beginning of a sentence; 0 where there is none."""
    first = 0
    while clauses.has("openers", first) and clauses.low(first) != "same":
        first += 1
    words = [token.low for token in clauses.tokens[first : first + 6]]
    for phrase in clauses.book.grammar["same_again"]:
        if words[: len(phrase.split())] == phrase.split():
            return first + len(phrase.split())
    return 0


def command(clauses: Clauses) -> tuple[Told, Thing] | None:
    """The first word of a sentence taken as its verb, and the first thing behind it; None when there is none."""
    at = 0
    while clauses.has("openers", at) or clauses.has("adverbs", at) or clauses.low(at) in SIGNS:
        at += 1
        if at >= len(clauses.tokens):
            return None
    verb = clauses.low(at)
    if any(clauses.has(kind, at) for kind in ("articles", "prepositions", "one_pronouns", "many_pronouns")):
        return None
    for start in range(at + 1, len(clauses.tokens)):
        thing = read_thing(clauses.tokens, start, clauses.book, governed=True)
        if thing is not None and not thing.measure:
            return Told(verb, Form.BASE, at, thing.end, (thing,)), thing
    return None


def bare_things(clauses: Clauses) -> list[Told]:
    """ "New gasket, plate, two nuts": the things of a list with which a sentence begins, as if they were fitted."""
    things: list[Thing] = []
    at = 0
    while clauses.has("openers", at) or (at and clauses.low(at) == ","):
        at += 1
    while (thing := read_thing(clauses.tokens, at, clauses.book)) is not None:
        at = thing.end + (clauses.low(thing.end) in ("first", "next"))
        at = clauses.behind_place(at) if clauses.low(at) in ("behind", "under", "underneath") else at
        if not thing.name or thing.measure or thing.partial or clauses.low(thing.start) == "no":
            break
        if not (clauses.low(at) in SIGNS or clauses.low(at) in ("and", "then", "with")):
            break
        things.append(thing)
        at += 1
        at += clauses.low(at) in ("and", "then")
    return [Told("fit", Form.BASE, thing.start, thing.end, (thing,)) for thing in things]
