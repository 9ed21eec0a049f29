"""Dangers that stand until a state ends, and the protection that must stay in place meanwhile."""

from collections.abc import Iterable
from decimal import Decimal

from procbuilder.infer.account import Account
from procbuilder.infer.book import Book, moment_of, named, visits
from procbuilder.infer.signs import danger_signs
from procbuilder.model.fields import Field
from procbuilder.model.ledger import Opening
from procbuilder.model.lexicon import Lexicon
from procbuilder.model.phrases import mentioned
from procbuilder.model.procedure import Procedure, Step
from procbuilder.model.quantity import Item
from procbuilder.model.sign import Sign
from procbuilder.model.signal import SIGNALS, Signal
from procbuilder.model.worked import Hazard, RemovedProtection, Standing


def hazards(fields: Iterable[Field], lexicon: Lexicon) -> tuple[Hazard, ...]:
    """The hazard statements among some fields, the worst first."""
    found = (
        Hazard(
            signal=SIGNALS[entry.name],
            hazard=entry.part("hazard"),
            consequence=entry.part("consequence"),
            avoid=entry.part("avoid"),
            state=entry.part("while"),
            place=entry.place,
            origin=entry.origin,
            signs=_signs(entry, lexicon),
        )
        for entry in fields
        if entry.name in SIGNALS and not entry.none
    )
    return tuple(sorted(found, key=lambda hazard: hazard.signal.rank))


def _signs(entry: Field, lexicon: Lexicon) -> tuple[Sign, ...]:
    """A notice is about things: no sign of what may hurt stands beside it."""
    found = danger_signs(entry.part("hazard"), entry.part("consequence"), entry.part("avoid"), lexicon)
    return tuple(sign for sign in found if SIGNALS[entry.name] is not Signal.NOTICE or sign.number[0] != "W")


def standing(procedure: Procedure, lexicon: Lexicon) -> dict[str, Standing]:
    """What still holds at each step, by step id.

    A hazard typed with ``while:`` holds from the step that opens the state to the step that ends
    it, both included; it is left out at steps where it is typed itself.
    """
    thing = lexicon.words.thing
    lasting: dict[str, list[tuple[int, Hazard]]] = {}
    for rank, hazard in enumerate(hazards(procedure.everywhere(*SIGNALS), lexicon)):
        lasting.setdefault(thing(hazard.state), []).append((rank, hazard))
    protect = {thing(entry.part("state")) for entry in procedure.everywhere("State") if _protects(entry, lexicon)}
    book, at_step = Book(lexicon.words), {}
    for number, step, fields in visits(procedure):
        states, before = _states(book), _in_place(book, protect)
        for entry in fields:
            book.enter(entry, moment_of(entry, number, step))
        if step is not None:
            states |= {thing(entry.part("state")): entry.part("state") for entry in step.all("State")}
            there = sorted(one for state in states for one in lasting.get(state, ()))
            still = _stand((hazard for _, hazard in there), step, lexicon)
            at_step[step.id] = Standing(still, _dangerous(states, protect), _stay(before, book, protect))
    return at_step


def _protects(entry: Field, lexicon: Lexicon) -> bool:
    return bool(entry.part("while") or mentioned(entry.part("state"), lexicon.safe_states, lexicon.words))


def _dangerous(states: dict[str, str], protect: set[str]) -> tuple[str, ...]:
    """The lasting states but for those that keep people safe."""
    return tuple(words for name, words in states.items() if name not in protect)


def removed_protection(procedure: Procedure, lexicon: Lexicon) -> tuple[RemovedProtection, ...]:
    """Each case where something that protects is taken away while the state that needs it lasts.

    A state that ends in the same step counts as ended.
    """
    book, needs = Book(lexicon.words), _needs(procedure, lexicon)
    removed: list[RemovedProtection] = []
    for number, step, fields in visits(procedure):
        for entry in fields:
            book.enter(entry, moment_of(entry, number, step))
        for entry in (one for one in fields if one.name in ("Out again", "Ends")):
            name = named(entry)
            for state in _states(book).values():
                reason = _why(name, state, needs, lexicon)
                if reason is not None:
                    removed.append(RemovedProtection(name, state, reason, moment_of(entry, number, step)))
    return tuple(removed)


def _states(book: Book) -> dict[str, str]:
    return {book.key(account.name): account.name for account in book.open(Opening.STATE)}


def _in_place(book: Book, protect: set[str]) -> list[tuple[Account, Decimal]]:
    """What protects at this moment and how many of it: fitted for now, or a state that keeps people safe."""
    states = book.open(Opening.STATE)
    kept_up = [account for account in states if account.protects or book.key(account.name) in protect]
    return [(account, account.rest) for account in book.open(Opening.TEMPORARY) + kept_up]


def _stay(before: list[tuple[Account, Decimal]], book: Book, protect: set[str]) -> tuple[Item, ...]:
    """Of what was in place before a step, what is still there after it."""
    after = {id(account): count for account, count in _in_place(book, protect)}
    return tuple(account.item(min(count, after[id(account)])) for account, count in before if id(account) in after)


def _stand(there: Iterable[Hazard], step: Step, lexicon: Lexicon) -> tuple[Hazard, ...]:
    """The dangers that are there, each once, without those that the step tells itself."""
    told = {_text(hazard, lexicon) for hazard in hazards(step.fields, lexicon)}
    here = []
    for hazard in there:
        if _text(hazard, lexicon) not in told:
            told.add(_text(hazard, lexicon))
            here.append(hazard)
    return tuple(here)


def _text(hazard: Hazard, lexicon: Lexicon) -> tuple[str, ...]:
    return (hazard.signal, hazard.hazard, hazard.consequence, hazard.avoid, lexicon.words.thing(hazard.state))


def _needs(procedure: Procedure, lexicon: Lexicon) -> set[tuple[str, str]]:
    """Pairs of a protection and the state for which it was fitted, as typed with ``while:``."""
    thing = lexicon.words.thing
    return {(thing(named(entry)), thing(entry.part("while"))) for entry in procedure.everywhere("For now", "State")}


def _why(name: str, state: str, needs: set[tuple[str, str]], lexicon: Lexicon) -> str | None:
    """Why this thing protects from this state; None when it does not."""
    words = lexicon.words
    for protection in lexicon.protections:
        if mentioned(state, protection.states, words) and mentioned(name, protection.items, words):
            return protection.reason
    return "" if (words.thing(name), words.thing(state)) in needs else None
