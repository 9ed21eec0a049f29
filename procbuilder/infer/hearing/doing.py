"""Who does what a verb says, and with which words it is told."""

from procbuilder.infer.dictionary.inflection import Form
from procbuilder.infer.dictionary.nouns import read_thing
from procbuilder.infer.dictionary.tokens import SIGNS
from procbuilder.infer.hearing.asides import subordinate_at
from procbuilder.infer.hearing.clauses import Clauses
from procbuilder.infer.hearing.told import Told
from procbuilder.model.heard import Sentence

_BEFORE_ING = ("'m", "am", "start", "keep", "and", "just", "now", "'re", "then")
_PRINTED = ("up", "down", "over", "out", "off", "back")


_COVERS = ("cover", "coat", "fill", "pack", "soak", "cake", "clog", "block", "plug", "stuff")
""" "Covered in goop": how something is."""


def is_done(clauses: Clauses, told: Told) -> bool:
    """True when the technician does it, or when the thing moves by itself without doing it to another."""
    at = told.start
    before = clauses.low(at - 1) if at > clauses.clause else ""
    is_be = _behind_be(clauses, at)
    if told.form is Form.ING and not told.moves:
        return not before or is_be or before in _BEFORE_ING
    if told.form is Form.PAST and told.verb in _COVERS and clauses.low(at + 1) in ("in", "with"):
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
