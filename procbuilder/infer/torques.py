"""The tightening table: typed torques, and a blank for each one that is missing."""

from dataclasses import replace

from procbuilder.infer.patterns import sequence
from procbuilder.model.commands import done_to
from procbuilder.model.fields import Field
from procbuilder.model.lexicon import Lexicon
from procbuilder.model.origin import TYPED, Origin, OriginKind, Place
from procbuilder.model.phrases import mentioned
from procbuilder.model.procedure import Procedure, Step
from procbuilder.model.quantity import Item
from procbuilder.model.torque import BLANK
from procbuilder.model.words import Words
from procbuilder.model.worked import TorqueRow


def torques(procedure: Procedure, lexicon: Lexicon) -> tuple[TorqueRow, ...]:
    """One row a torque, in step order; a value is never guessed.

    A blank row with ``demanded`` stands for a step that tightens and has no Torque field, and for
    a thing that is slackened or nipped up and has no torque anywhere.
    """
    words = lexicon.words
    typed = [(entry, step, number) for number, step in _numbered(procedure) for entry in step.all("Torque")]
    rows = [replace(_typed(*one), sequence=sequence(one[0], procedure, lexicon)) for one in typed]
    by_command = _commanded(procedure, lexicon)
    tightened = " ; ".join(row.item.words for row in by_command)
    half = _half_closed(procedure, words)
    rows += by_command + [row for name, row in half.items() if not mentioned(tightened, [name], words)]
    return tuple(sorted(rows, key=lambda row: (row.number, row.place)))


def tightens(command: str, lexicon: Lexicon) -> str:
    """What a command tightens for good, such as ``wheel nuts``; empty when it tightens nothing."""
    rest = done_to(command, lexicon.tightening, lexicon.words)
    return "" if rest is None else lexicon.words.named(rest) or command


def _numbered(procedure: Procedure) -> enumerate[Step]:
    return enumerate(procedure.steps, 1)


def _typed(entry: Field, step: Step, number: int) -> TorqueRow:
    document = entry.origin.document if entry.origin.kind is OriginKind.DOCUMENT else ""
    return TorqueRow(
        item=entry.item if entry.items else Item("", entry.place),
        step=step.id,
        number=number,
        value=entry.torque,
        look_in=entry.part("where") or entry.part("from") or document,
        order=entry.part("order"),
        when=entry.part("when"),
        origin=entry.origin,
        place=entry.place,
        also=entry.torque.in_other_unit,
        of=entry.part("of"),
    )


def _commanded(procedure: Procedure, lexicon: Lexicon) -> list[TorqueRow]:
    """Steps whose command tightens for good, without a Torque field. A Nip up field says that it is not for good."""
    rows = []
    for number, step in _numbered(procedure):
        item = tightens(step.command, lexicon)
        if item and not step.all("Torque", "Nip up"):
            rows.append(_blank(Item(item, step.place), step, number, step.place))
    return rows


def _half_closed(procedure: Procedure, words: Words) -> dict[str, TorqueRow]:
    """Things slackened or nipped up that have no torque anywhere, by name, at the last step that handles them."""
    known = {words.thing(e.item.name) for e in procedure.everywhere("Torque") if e.items}
    last: dict[str, TorqueRow] = {}
    demanding: set[str] = set()
    for number, step in _numbered(procedure):
        for entry in step.all("Slacken", "Nip up", "On"):
            key = words.thing(entry.item.name) if entry.items else ""
            if not key or key in known:
                continue
            demanding |= {key} if entry.name != "On" else set()
            last[key] = _blank(entry.item, step, number, entry.place, entry.origin)
    return {key: row for key, row in last.items() if key in demanding}


def _blank(item: Item, step: Step, number: int, place: Place, origin: Origin = TYPED) -> TorqueRow:
    return TorqueRow(item, step.id, number, BLANK, "", "", "", origin, place, demanded=True)
