"""Told in another order: "off it comes", "that gets hooked up", "three nuts, ten mil, hold the box"."""

from dataclasses import replace

from procbuilder.infer.dictionary.inflection import Form
from procbuilder.infer.dictionary.nouns import Thing, read_thing
from procbuilder.infer.dictionary.tokens import SIGNS
from procbuilder.infer.hearing.clauses import Clauses
from procbuilder.infer.hearing.outcomes import OUTWARD
from procbuilder.infer.hearing.verb_phrase import Told, read_verb

_MOST_APPOSED = 3
"""So many names of one thing, with commas between them."""


def holds_another(clauses: Clauses, at: int) -> bool:
    """ "Three nuts, ten mil, hold the box on the studs": what several things do is no command."""
    if not clauses.has("holds", at) or clauses.low(at - 1) != ",":
        return False
    thing = named_before(clauses, at, with_size=True)
    return thing is not None and thing.many


def named_before(clauses: Clauses, at: int, *, with_size: bool = False) -> Thing | None:
    """The thing with which a clause begins, with its place and its other names, ending right before a token."""
    for start in _beginnings(clauses, at):
        if (thing := _apposed(clauses, start, at, with_size=with_size)) is not None:
            return thing
    return None


def _beginnings(clauses: Clauses, at: int) -> list[int]:
    """Tokens at which what stands in front may begin: the sentence, and what stands behind a sign, the first first."""
    start, found = 0, []
    while start < at:
        while clauses.has("openers", start) or clauses.low(start) in SIGNS:
            start += 1
        if start < at:
            found.append(start)
        start += 1
        while start < at and clauses.low(start) not in SIGNS:
            start += 1
    return found


def _apposed(clauses: Clauses, start: int, at: int, *, with_size: bool) -> Thing | None:
    """ "The two at the back, the clamp bolts": the last name that says what it is, with the number of the first."""
    first = thing = _noun_phrase(clauses, start)
    for _ in range(_MOST_APPOSED):
        if thing is None or first is None:
            return None
        end = _behind_place(clauses, thing.end)
        if end == at or (clauses.low(end) == "," and end + 1 == at):
            return _best_name(first, thing)
        if clauses.low(end) != ",":
            return None
        end = _behind_remark(clauses, end)
        if end == at:
            return _best_name(first, thing)
        size = read_thing(clauses.tokens, end, clauses.book) if with_size else None
        if size is not None:
            return thing
        thing = _noun_phrase(clauses, end)
    return None


def _noun_phrase(clauses: Clauses, at: int) -> Thing | None:
    thing = read_thing(clauses.tokens, at, clauses.book)
    bare = thing is not None and thing.pointed and not thing.name and not thing.count
    if thing is None or thing.measure or (bare and clauses.low(at) in ("it", "them", "him", "her", "one")):
        return None
    return thing


def _best_name(first: Thing, last: Thing) -> Thing:
    """ "The long ones" says less than "the two bolts" before it."""
    named = first if first.name and not first.pointed else last if last.name and not last.pointed else first
    return replace(named, start=first.start, count=first.count or last.count, many=first.many or last.many)


def _behind_place(clauses: Clauses, at: int) -> int:
    """The token behind "on the side of the stem", "here" or "underneath"."""
    while True:
        if clauses.low(at) in ("here", "there", "underneath", "behind", "inside", "outside"):
            at += 1
        elif clauses.has("prepositions", at) and (place := read_thing(clauses.tokens, at + 1, clauses.book)):
            at = place.end
        else:
            return at


def _behind_remark(clauses: Clauses, comma: int) -> int:
    """The token behind ", which was filthy,"; where there is none, the one behind the comma."""
    at = comma + 1
    if clauses.low(at) in ("which", "who", "that"):
        while clauses.low(at) not in SIGNS:
            at += 1
        at += 1
    return at


def inverted(clauses: Clauses, at: int) -> Told | None:
    """ "Out they come", "off comes the cover", "out with the old seal": its particle first; None when not told so."""
    if not clauses.begins(at) or not (clauses.has("comes_first", at) or clauses.low(at) == "up"):
        return None
    particles = []
    while clauses.has("comes_first", at) or clauses.low(at) == "again":
        particles.append(clauses.low(at))
        at += 1
    verb = "take" if not OUTWARD.isdisjoint(particles) else "put"
    thing = (_comer(clauses, at) or None) if particles else None
    return Told(verb, Form.BASE, at - len(particles), thing.end, (thing,), tuple(particles)) if thing else None


def _comer(clauses: Clauses, at: int) -> Thing | None:
    """What comes out or goes on, before or behind its verb."""
    low = clauses.low(at)
    if low in ("it", "she", "he", "they") and clauses.has("comes", at + 1):
        return Thing("", at, at + 2, many=low == "they", pointed=True)
    if clauses.has("comes", at) or low == "with":
        thing = read_thing(clauses.tokens, at + 1, clauses.book, governed=True)
        return thing if thing is not None else None
    return None


_FOUND = ("replace", "renew", "change", "swap", "clean", "check", "sort")
"""What a finding wants: "that wants replacing"."""


def undergoes(clauses: Clauses, at: int) -> Thing | None:
    """The thing to which the past form at a token is done; None when it is no order and no report of work."""
    forms = clauses.book.forms.get(clauses.low(at), ())
    back = _behind_adverbs(clauses, at - 1)
    is_work = forms and all(form is Form.ING and verb not in _FOUND for verb, form in forms)
    if is_work and clauses.low(back) in ("wants", "want", "needs", "need"):
        return clauses.subject
    if not forms or any(form is not Form.PAST for _, form in forms):
        return None
    is_told = clauses.low(back) == "be"
    if is_told or clauses.low(back) in ("get", "gets", "getting"):
        return clauses.subject
    if at == clauses.clause and clauses.low(back) == "," and clauses.company:
        return clauses.company[-1]
    return None


def _behind_adverbs(clauses: Clauses, at: int) -> int:
    while (clauses.has("adverbs", at) or clauses.low(at) in ("both", "each")) and at > clauses.clause:
        at -= 1
    return at


def _done(clauses: Clauses, verb: str, at: int, thing: Thing) -> Told | None:
    """None where the form takes a thing of its own: "I got the cover and removed it"."""
    told = read_verb(clauses, verb, Form.PAST, at)
    return Told(verb, Form.BASE, at, told.end, (thing,), told.particles, told.means, where=told.where, so=told.so)
