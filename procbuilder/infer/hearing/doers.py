"""Who does what a verb says: the technician, somebody else, the thing itself, or nobody; and with which words."""

from dataclasses import dataclass, replace

from procbuilder.infer.dictionary.inflection import Form
from procbuilder.infer.dictionary.nouns import read_thing
from procbuilder.infer.dictionary.tokens import SIGNS
from procbuilder.infer.hearing.clauses import Clauses
from procbuilder.infer.hearing.subordinate import subordinate_at
from procbuilder.infer.hearing.verb_phrase import Told
from procbuilder.model.heard import Sentence


def is_unreal(clauses: Clauses, at: int, verb: int) -> bool:
    """True where a token before a verb says so: "I was going to", "I should have", "I nearly", "I always"."""
    low = clauses.low(at)
    if low in ("going", "gonna"):
        return "was" in (clauses.low(at - 1), clauses.low(at - 2))
    if low in ("have", "'ve") and at < verb:
        return clauses.has("could", at - 1)
    return clauses.has("unreal", at) or _is_habit(clauses, at)


def _is_habit(clauses: Clauses, at: int) -> bool:
    """ "I always put the bolts back in their holes"; but "always tug it" tells what to do."""
    return clauses.low(at) == "always" and clauses.low(at - 1) in ("i", "we", "they")


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
    supposed: bool = False
    """It is only thought of, or what is usual: "you'd normally take it off"."""


def before(clauses: Clauses, at: int, form: Form) -> Before:
    """What stands between the beginning of the clause and its verb."""
    found = Before()
    for back in range(at - 1, clauses.clause - 1, -1):
        if clauses.has("negations", back) or (clauses.low(back), clauses.low(back + 1)) == ("no", "need"):
            found = replace(found, negated=True)
        elif is_unreal(clauses, back, at) or (clauses.has("supposed", back) and form is not Form.PAST):
            found = replace(found, supposed=True)
        elif (known := _known_by(clauses, back, at, found)) is not None:
            return known
    return found


def _known_by(clauses: Clauses, back: int, at: int, found: Before) -> Before | None:
    """What the token says at last of the verb; None to look further back."""
    if clauses.low(back) == "to" and (told_to := _behind_to(clauses, back, found)) is not None:
        return told_to
    if clauses.has("others", back) or _has_done(clauses, back, at):
        return replace(found, other=True)
    if clauses.has("tasks", back) and clauses.has("be", back + 1):
        return found
    if clauses.has("doers", back) or _is_done_to(clauses, back, at):
        return replace(found, supposed=found.supposed)
    if clauses.has("one_pronouns", back) or clauses.has("many_pronouns", back):
        return replace(found, moves=True, other=clauses.low(back - 1) in ("let", "leave", "keep"))
    passed_over = any(clauses.has(kind, back) for kind in ("helpers", "adverbs", "openers", "and"))
    return None if passed_over else replace(found, moves=True)


def _behind_to(clauses: Clauses, at: int, found: Before) -> Before | None:
    """ "Used to take", "tempted to take", and "to get it out", which tells what for; None for "want to take"."""
    if clauses.low(at - 1) == "used" or clauses.has("unreal", at - 1):
        return replace(found, supposed=True)
    if _is_wish(clauses, at - 1):
        return None
    negated = any(clauses.has("negations", each) for each in range(clauses.clause, at))
    return replace(found, purpose=True, negated=negated)


def _has_done(clauses: Clauses, at: int, verb: int) -> bool:
    """ "She's put a bulb in"."""
    past = any(form is Form.PAST for _, form in clauses.book.forms.get(clauses.low(verb), ()))
    return clauses.low(at) == "'s" and clauses.has("others", at - 1) and past


def _is_done_to(clauses: Clauses, at: int, verb: int) -> bool:
    return at == verb - 1 and clauses.has("be", at) and clauses.low(verb) in clauses.book.by_verb


def _is_wish(clauses: Clauses, at: int) -> bool:
    while clauses.has("adverbs", at) and at > clauses.clause:
        at -= 1
    return clauses.has("wishes", at) or 0 <= at < clauses.clause


_PRINTED = ("up", "down", "over", "out", "off", "back")


def is_done(clauses: Clauses, told: Told) -> bool:
    """True when the technician does it, or when the thing moves by itself without doing it to another."""
    at = told.start
    before = clauses.low(at - 1) if at > clauses.clause else ""
    is_be = _behind_be(clauses, at)
    if told.form is Form.ING and not told.moves:
        return not before or is_be or clauses.book.has("before_ing", before)
    if told.form is Form.PAST and clauses.book.has("covers", told.verb) and clauses.low(at + 1) in ("in", "with"):
        return False
    if is_be and (told.form is Form.PAST or _is_how_it_is(clauses, told)):
        return False
    if told.form is Form.ING and not is_be:
        return False
    if told.moves:
        return _moves_by_itself(clauses, told)
    return told.form is not Form.S or at == clauses.clause


def _is_how_it_is(clauses: Clauses, told: Told) -> bool:
    """ "The port was half shut": the same word as the command, and nothing that it is done to."""
    forms = clauses.book.forms.get(clauses.low(told.start), ())
    return not told.things and any(form is Form.PAST for _, form in forms)


def _behind_be(clauses: Clauses, at: int) -> bool:
    back = at - 1
    while back >= clauses.clause and (clauses.has("adverbs", back) or clauses.low(back) == "half"):
        back -= 1
    return back >= clauses.clause and clauses.has("be", back)


def _moves_by_itself(clauses: Clauses, told: Told) -> bool:
    """True for "the cover lifts off", "the seal goes in" and "the harness unplugs"; not when it moves another thing."""
    if told.verb.startswith("un") and not told.things:
        return told.form is not Form.PAST
    if clauses.low(told.start - 1) == "only":
        return False
    moves_another = bool(told.things) and not clauses.has("particles", told.things[0].start - 1)
    return bool(told.particles) and not moves_another and not clauses.book.has("never_by_itself", told.verb)


def as_said(told: Told) -> str:
    """The verb itself with its particle; with ``for`` where the thing is looked for."""
    if told.about is not None and not told.things:
        return f"{told.verb[:1].upper()}{told.verb[1:]} for"
    own = told.particles[:-1] if told.leads else told.particles
    particle = next((word for word in own if word in _PRINTED), "")
    words = " ".join(filter(None, [told.verb, particle]))
    return words[:1].upper() + words[1:]


def tail(clauses: Clauses, told: Told, sentence: Sentence) -> str:
    """What follows in the same clause; a time or aim with "until" belongs to it."""
    at = end = told.end - 1 if told.leads else told.end
    while end < len(clauses.tokens) and not _ends_clause(clauses, end):
        end += 1
    while end > at and clauses.has("prepositions", end - 1) and not clauses.has("particles", end - 1):
        end -= 1
    return sentence.words[clauses.tokens[at].start : clauses.tokens[end - 1].end] if end > at else ""


def _ends_clause(clauses: Clauses, at: int) -> bool:
    low = clauses.low(at)
    if low in SIGNS or (low not in ("until", "till") and subordinate_at(clauses, at)):
        return True
    return low in ("but", "then", "or", "so") or (low == "and" and not _goes_on(clauses, at + 1))


def _goes_on(clauses: Clauses, at: int) -> bool:
    """True for a further thing behind "and": "and the inside", but not "and give it a minute"."""
    if clauses.verb_at(at) or clauses.low(at) in clauses.book.idle:
        return False
    thing = read_thing(clauses.tokens, at, clauses.book)
    return thing is not None and bool(thing.name) and not clauses.goes_on_to_do(thing.end)
