"""Dangers that stand until a state ends, and the protection that must stay in place meanwhile."""

from collections.abc import Iterable
from decimal import Decimal

from procbuilder.infer.book import Account, Book, moment_of, named, visits
from procbuilder.infer.signs import danger_signs
from procbuilder.model.fields import Field
from procbuilder.model.ledger import Opening
from procbuilder.model.lexicon import Lexicon
from procbuilder.model.procedure import Procedure, Step
from procbuilder.model.sign import Sign
from procbuilder.model.signal import SIGNALS, Signal
from procbuilder.model.words import mentioned, thing
from procbuilder.model.worked import Hazard, RemovedProtection, Standing


def hazards(fields: Iterable[Field]) -> tuple[Hazard, ...]:
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
            signs=_signs(entry),
        )
        for entry in fields
        if entry.name in SIGNALS and not entry.none
    )
    return tuple(sorted(found, key=lambda hazard: hazard.signal.rank))


def _signs(entry: Field) -> tuple[Sign, ...]:
    """A notice is about things: no sign of what may hurt stands beside it."""
    found = danger_signs(entry.part("hazard"), entry.part("consequence"), entry.part("avoid"))
    return tuple(sign for sign in found if SIGNALS[entry.name] is not Signal.NOTICE or sign.number[0] != "W")


def standing(procedure: Procedure, safe: tuple[str, ...] = ()) -> dict[str, Standing]:
    """What still holds at each step, by step id; ``safe`` are words of states that keep people safe.

    A hazard typed with ``while:`` holds from the step that opens the state to the step that ends
    it, both included; it is left out at steps where it is typed itself.
    """
    lasting: dict[str, list[tuple[int, Hazard]]] = {}
    for rank, hazard in enumerate(hazards(procedure.everywhere(*SIGNALS))):
        lasting.setdefault(thing(hazard.state), []).append((rank, hazard))
    protect = {thing(entry.part("state")) for entry in procedure.everywhere("State") if _protects(entry, safe)}
    book, at_step = Book(), {}
    for number, step, fields in visits(procedure):
        states, before = _states(book), _in_place(book, protect)
        for entry in fields:
            book.enter(entry, moment_of(entry, number, step))
        if step is not None:
            states |= {thing(entry.part("state")): entry.part("state") for entry in step.all("State")}
            there = sorted(one for state in states for one in lasting.get(state, ()))
            still = _stand((hazard for _, hazard in there), step)
            at_step[step.id] = Standing(still, _dangerous(states, protect), _stay(before, book, protect))
    return at_step


def _protects(entry: Field, safe: tuple[str, ...]) -> bool:
    return bool(entry.part("while") or mentioned(entry.part("state"), safe))


def _dangerous(states: dict[str, str], protect: set[str]) -> tuple[str, ...]:
    """The lasting states but for those that keep people safe."""
    return tuple(words for name, words in states.items() if name not in protect)


def removed_protection(procedure: Procedure, lexicon: Lexicon) -> tuple[RemovedProtection, ...]:
    """Each case where something that protects is taken away while the state that needs it lasts.

    A state that ends in the same step counts as ended.
    """
    book, needs = Book(), _needs(procedure)
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
    return {thing(account.name): account.name for account in book.open(Opening.STATE)}


def _in_place(book: Book, protect: set[str]) -> list[tuple[Account, Decimal]]:
    """What protects at this moment and how many of it: fitted for now, or a state that keeps people safe."""
    states = book.open(Opening.STATE)
    kept_up = [account for account in states if account.protects or thing(account.name) in protect]
    return [(account, account.rest) for account in book.open(Opening.TEMPORARY) + kept_up]


def _stay(before: list[tuple[Account, Decimal]], book: Book, protect: set[str]) -> tuple[str, ...]:
    """Of what was in place before a step, what is still there after it."""
    after = {id(account): count for account, count in _in_place(book, protect)}
    return tuple(account.words(min(count, after[id(account)])) for account, count in before if id(account) in after)


def _stand(there: Iterable[Hazard], step: Step) -> tuple[Hazard, ...]:
    """The dangers that are there, each once, without those that the step tells itself."""
    told = {_text(hazard) for hazard in hazards(step.fields)}
    here = []
    for hazard in there:
        if _text(hazard) not in told:
            told.add(_text(hazard))
            here.append(hazard)
    return tuple(here)


def _text(hazard: Hazard) -> tuple[str, ...]:
    return (hazard.signal, hazard.hazard, hazard.consequence, hazard.avoid, thing(hazard.state))


def _needs(procedure: Procedure) -> set[tuple[str, str]]:
    """Pairs of a protection and the state for which it was fitted, as typed with ``while:``."""
    return {(thing(named(entry)), thing(entry.part("while"))) for entry in procedure.everywhere("For now", "State")}


def _why(name: str, state: str, needs: set[tuple[str, str]], lexicon: Lexicon) -> str | None:
    """Why this thing protects from this state; None when it does not."""
    for protection in lexicon.protections:
        if mentioned(state, [protection.state]) and mentioned(name, protection.items):
            return protection.reason
    return "" if (thing(name), thing(state)) in needs else None
