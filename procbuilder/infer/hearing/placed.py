"""Things told with their place or value alone: "tray under it", "a smear of grease on the lip", "nut to forty N·m"."""

from procbuilder.infer.dictionary.inflection import Form
from procbuilder.infer.dictionary.nouns import Thing, read_thing
from procbuilder.infer.dictionary.tokens import SIGNS
from procbuilder.infer.hearing.clauses import Clauses
from procbuilder.infer.hearing.told import Told

_ONTO = ("on", "in", "into", "onto", "over", "round", "around", "along", "down", "behind", "inside", "to", "between")

_UNDER = ("under", "underneath", "beneath", "between", "behind", "below")
_THERE = (*_UNDER, "in", "into", "on", "onto", "over", "across", "around", "round", "through", "against")
"""Ways to the place of a thing that is fitted for the job only."""


def placed(clauses: Clauses, thing: Thing, *, is_open: bool) -> Told | None:
    """What is fitted for now or put on, as if a verb had said it; None for anything else."""
    if not (clauses.stands_first(thing.start) or _is_announced(clauses, thing)):
        return None
    at = thing.end
    if _lies_there(clauses, thing, at, is_open=is_open):
        leads = clauses.low(at + 1) != "what"
        return Told("put", Form.BASE, thing.start, at + 1, (thing,), (clauses.low(at),), leads=leads)
    if _is_put_on(clauses, thing, at):
        return Told("put", Form.BASE, thing.start, at + 1, (thing,), ("on",), leads=True)
    return None


def _is_announced(clauses: Clauses, thing: Thing) -> bool:
    """ "Second thing is a strap round the mast"."""
    before = range(clauses.clause, thing.start)
    return all(clauses.has("be", at) or clauses.has("openers", at) for at in before)


def _is_put_on(clauses: Clauses, thing: Thing, at: int) -> bool:
    """ "A smear of grease on the lip": what is put on, and where."""
    is_dab = any(clauses.has("dabs", each) for each in range(thing.start, thing.end))
    if not (is_dab or clauses.book.is_in(thing.name, ("paste",))) or clauses.low(at) not in _ONTO:
        return False
    place = read_thing(clauses.tokens, at + 1, clauses.book)
    return place is not None and clauses.low(thing.start) != "the" and not _does(clauses, place.end)


def _does(clauses: Clauses, at: int) -> bool:
    """ "Grease on the end keeps it off", "a bit of oil on it would help": a verb follows."""
    rest = range(at, len(clauses.tokens))
    ends = next((each for each in rest if clauses.low(each) in SIGNS), len(clauses.tokens))
    if any(clauses.has("supposed", each) for each in range(at, ends)):
        return True
    return clauses.goes_on_to_do(at)


def _lies_there(clauses: Clauses, thing: Thing, at: int, *, is_open: bool) -> bool:
    """ "Tray under it", "rag in the intake": what is fitted for the job only, and where."""
    low, book = clauses.low(at), clauses.book
    if low in ("underneath", "under", "below") and clauses.low(at + 1) in SIGNS:
        return book.is_in(thing.name, ("temporary", "support", "catching"))
    place = read_thing(clauses.tokens, at + 1, book)
    if clauses.low(at + 1) == "what":
        return low in _THERE and not is_open
    if place is None or place.measure:
        return False
    does = _does(clauses, place.end)
    under = book.is_in(thing.name, ("temporary", "support", "catching")) and low in _UNDER and not does
    locked = book.is_in(thing.name, ("lock",)) and low in ("on", "through")
    laid = book.is_in(place.name, ("place", "body")) or book.has("positions", place.name)
    laid = laid or is_open or clauses.low(thing.start) == "the"
    laid = laid or thing.partial
    there = book.is_in(thing.name, ("temporary", "support")) and low in _THERE
    return under or locked or (there and not laid and not does)
