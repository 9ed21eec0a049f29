"""Things told with their place or value alone: "tray under it", "a smear of grease on the lip", "nut to forty N·m"."""

from procbuilder.infer.clauses import Clauses
from procbuilder.infer.inflect import Form
from procbuilder.infer.nouns import Thing, read_thing
from procbuilder.infer.tokens import SIGNS
from procbuilder.infer.told import Told

_ONTO = ("on", "in", "into", "onto", "over", "round", "around", "along", "down", "behind", "inside", "to", "between")

_UNDER = ("under", "underneath", "beneath", "between", "behind", "below")


def placed(clauses: Clauses, thing: Thing) -> Told | None:
    """What is fitted for now, put on or tightened, as if a verb had said it; None for anything else."""
    if not clauses.stands_first(thing.start):
        return None
    at = thing.end
    if _is_torqued(clauses, thing):
        return Told("torque", Form.BASE, thing.start, at, (thing,))
    if _lies_there(clauses, thing, at):
        return Told("put", Form.BASE, thing.start, at + 1, (thing,), (clauses.low(at),), leads=True)
    if _is_put_on(clauses, thing, at):
        return Told("put", Form.BASE, thing.start, at + 1, (thing,), ("on",), leads=True)
    return None


def _is_torqued(clauses: Clauses, thing: Thing) -> bool:
    """ "Axle nut to seventy foot-pounds"."""
    value = read_thing(clauses.tokens, thing.end + 1, clauses.book) if clauses.low(thing.end) in ("to", "at") else None
    turned = clauses.book.is_in(thing.name, ("fastener",)) and clauses.stands_first(thing.start)
    return turned and value is not None and value.measure and clauses.has("torque_units", value.end - 1)


def _is_put_on(clauses: Clauses, thing: Thing, at: int) -> bool:
    """ "A smear of grease on the lip": what is put on, and where."""
    is_dab = any(clauses.has("dabs", each) for each in range(thing.start, thing.end))
    if not (is_dab or clauses.book.is_in(thing.name, ("paste",))) or clauses.low(at) not in _ONTO:
        return False
    place = read_thing(clauses.tokens, at + 1, clauses.book)
    return (
        place is not None and not place.measure and clauses.low(thing.start) != "the" and not _does(clauses, place.end)
    )


def _does(clauses: Clauses, at: int) -> bool:
    """ "Grease on the end keeps it off", "a bit of oil on it would help": a verb follows."""
    rest = range(at, len(clauses.tokens))
    ends = next((each for each in rest if clauses.low(each) in SIGNS), len(clauses.tokens))
    if any(clauses.has("supposed", each) for each in range(at, ends)):
        return True
    return clauses.low(at) in clauses.book.idle or clauses.has("be", at) or bool(clauses.verb_at(at))


def _lies_there(clauses: Clauses, thing: Thing, at: int) -> bool:
    """ "Tray under it": what is fitted for the job only, and where."""
    place = read_thing(clauses.tokens, at + 1, clauses.book)
    fitted = clauses.book.is_in(thing.name, ("temporary", "support")) and clauses.low(at) in _UNDER
    fitted = fitted or (clauses.book.is_in(thing.name, ("lock",)) and clauses.low(at) == "on")
    return fitted and place is not None and not place.measure
