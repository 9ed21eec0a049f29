"""The tightening table: typed torques, and a blank for each one that is missing."""

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

from procbuilder.infer.commanded import commanded
from procbuilder.infer.patterns import sequence
from procbuilder.model.commands import done_to
from procbuilder.model.fields import Field
from procbuilder.model.heard import Act, Sentence
from procbuilder.model.lexicon import Lexicon
from procbuilder.model.moves import MOVES
from procbuilder.model.origin import TYPED, Origin, OriginKind, Place
from procbuilder.model.phrases import called, mentioned
from procbuilder.model.procedure import Procedure, Step
from procbuilder.model.quantity import Item
from procbuilder.model.torque import BLANK
from procbuilder.model.words import Words
from procbuilder.model.worked import TorqueRow
from procbuilder.model.workshop import NO_OWN_WORDS


def torques(procedure: Procedure, lexicon: Lexicon) -> tuple[TorqueRow, ...]:
    """One row a torque, in step order; a value is never guessed.

    A blank row with ``demanded`` stands for a step that tightens and has no Torque field, for a thing that is
    slackened or nipped up and has no torque anywhere, and for a threaded thing that goes on and has none.
    """
    words = lexicon.words
    typed = [(entry, step, number) for number, step in _numbered(procedure) for entry in step.all("Torque")]
    rows = [replace(_typed(*one), sequence=sequence(one[0], procedure, lexicon)) for one in typed]
    by_command = _commanded(procedure, lexicon)
    tightened = " ; ".join(row.item.words for row in by_command)
    half = _half_closed(procedure, words)
    rows += by_command + [row for name, row in half.items() if not mentioned(tightened, [name], words)]
    rows += _fitted(procedure, lexicon, rows)
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
        heard=entry.part("heard"),
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


def _fitted(procedure: Procedure, lexicon: Lexicon, known: list[TorqueRow]) -> list[TorqueRow]:
    """Threaded things that go on without a torque: one row a name and step that is the last to fit it."""
    last: dict[str, TorqueRow] = {}
    for number, step in _numbered(procedure):
        for thing in (*_moved_on(step), *_commanded_on(step, lexicon)):
            if called(thing.head, lexicon.refit.threaded, lexicon.words) and not _known(thing, step, known, lexicon):
                last[lexicon.words.thing(thing.head)] = _blank(thing, step, number, thing.place, thing.origin)
    return list(last.values())


def _moved_on(step: Step) -> Iterator[Item]:
    for entry in step.all("On"):
        yield from (*entry.items, *entry.fasteners)


def _commanded_on(step: Step, lexicon: Lexicon) -> Iterator[Item]:
    """What a step without fields puts on by its words."""
    if not step.all(*MOVES):
        said = Sentence(step.command, step.place, "", Fraction(0), Fraction(0))
        fitted = (one for one in commanded([said], lexicon, NO_OWN_WORDS) if one.act is Act.ON)
        yield from (Item(one.object, step.place) for one in fitted)


def _known(thing: Item, step: Step, rows: list[TorqueRow], lexicon: Lexicon) -> bool:
    """True when a torque names it, a part of its name, or the part that it holds; so does one in its own step."""
    words = lexicon.words
    ending = next((word for word in reversed(thing.head.split()) if word.isalpha()), thing.head)
    parts = [item.name for entry in step.all("On") for item in entry.items if thing in entry.fasteners]
    for row in rows:
        name = row.item.head
        if not called(name, [ending], words):
            continue
        alone = words.thing(name) == words.thing(ending)
        of_part = mentioned(f"{name} ; {row.of}", [each.split()[-1] for each in parts], words)
        bare = sum(word.isalpha() for word in thing.head.split()) == 1
        if alone or of_part or (bare and row.step == step.id) or mentioned(thing.name, [name], words):
            return True
    return False


def _blank(item: Item, step: Step, number: int, place: Place, origin: Origin = TYPED) -> TorqueRow:
    return TorqueRow(item, step.id, number, BLANK, "", "", "", origin, place, demanded=True)
