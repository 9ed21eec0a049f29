"""Puts the pieces of an edition into the words of its language."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from decimal import Decimal

from procbuilder.model.edition import EditionStep, Figure, FrontList, ItemLine, Statement, TrayLine
from procbuilder.model.fields import BY_NAME
from procbuilder.model.footage import Why
from procbuilder.model.ledger import Entry, Moment
from procbuilder.model.marks import PictureState
from procbuilder.model.sign import Sign
from procbuilder.model.timecode import format_time
from procbuilder.model.worked import Hazard, Standing, TorqueRow
from procbuilder.publish.filmed import taken_from, weaknesses
from procbuilder.publish.language import Language
from procbuilder.publish.pagewords import (
    AT_STEP,
    FROM_DOCUMENT,
    HEARD,
    HELD_BY_WORDS,
    HOLDS_WHILE,
    NIPPED_UP,
    NO_SOURCE,
    ORDER,
    PART_OF,
    RENEWED,
    SCRAPPED,
    TRAY,
    WHEN,
)  # fmt: skip
from procbuilder.publish.terms import BALANCES, LISTS, OPENINGS, minutes, other_unit, source, thing, things, way
from procbuilder.publish.told import (
    Told,
    ToldEntry,
    ToldFigure,
    ToldHazard,
    ToldItem,
    ToldList,
    ToldSign,
    ToldStanding,
    ToldTorque,
    ToldTray,
)  # fmt: skip


@dataclass(frozen=True, slots=True)
class Teller:
    """Puts the pieces of one edition into the words of its language."""

    language: Language
    steps: Mapping[str, EditionStep] = field(default_factory=dict)
    """By id."""

    def term(self, name: str) -> str:
        """What the language calls a term of the records."""
        return self.language.text(name)

    def _filled(self, pattern: str, **told: str) -> str:
        """A pattern with its one gap filled; empty when there is nothing to fill it with."""
        return self.language.text(pattern, **told) if all(told.values()) else ""

    def all(self, statements: Iterable[Statement], number: int = 0) -> tuple[Told, ...]:
        """Statements of the step with this number."""
        return tuple(self.statement(each, number) for each in statements)

    def statement(self, each: Statement, number: int = 0) -> Told:
        """A statement; one of a step that leads to another tells that one's number and command."""
        text, extra, other = self._first(each), self._further(each), self._named(each)
        if each.name == "Derived":
            text = self._derived(text, other)
        elif other:
            text = self.language.text("step {number}, {command}", number=other.number, command=other.command)
            if each.name == "Then" and other.number <= number:
                extra += (self.language.text("from there on everything once more"),)
        if each.step:
            extra += (self.language.text(AT_STEP, number=each.step),)
        return Told(
            each.name, self.term(each.name), text, extra, source(each.origin, self.language), self.signs(each.signs),
            other.number if other else 0,
        )  # fmt: skip

    def _named(self, each: Statement) -> EditionStep | None:
        """The step that it names; an id that no step has stays as it was typed."""
        return self.steps.get(each.refers) if each.refers else None

    def _derived(self, typed: str, other: EditionStep | None) -> str:
        if other:
            return self.language.text("from step {number}, not filmed and not yet accepted", number=other.number)
        return self.language.text("from {source}, not filmed and not yet accepted", source=typed)

    def _first(self, each: Statement) -> str:
        if each.items:
            return things(each.items, self.language)
        return self.language.text("none") if each.none else _shown(each, BY_NAME[each.name.casefold()].parts[0])

    def _further(self, each: Statement) -> tuple[str, ...]:
        """The parts by place, then those that begin with a word: of ``by: 2 x M8 bolt`` only the word is ours."""
        kind = BY_NAME[each.name.casefold()]
        by_word = {word: each.part(word) for word in kind.words}
        if each.fasteners:
            by_word["by"] = things(each.fasteners, self.language)
        told = [self.language.text(f"{word}: {{text}}", text=text) for word, text in by_word.items() if text]
        return tuple(filter(None, [*(_shown(each, name) for name in kind.parts[1:]), *told]))

    def list(self, each: FrontList) -> ToldList:
        """A list before the start."""
        return ToldList(each.name, self.term(LISTS.get(each.name, each.name)), self.all(each.lines), each.none)

    def item(self, line: ItemLine) -> ToldItem:
        """A tool, supply or part of the whole job."""
        quantity = str(line.quantity) if line.quantity else ""
        return ToldItem(line.name, quantity, line.new, line.steps, source(line.origin, self.language))

    def signs(self, signs: Iterable[Sign]) -> tuple[ToldSign, ...]:
        """Signs with their meaning."""
        return tuple(ToldSign(sign.number, self.term(sign.meaning)) for sign in signs)

    def hazards(self, hazards: Iterable[Hazard]) -> tuple[ToldHazard, ...]:
        """Dangers, in the order of the procedure."""
        return tuple(
            ToldHazard(
                each.signal, self.term(each.signal), each.hazard, each.consequence, each.avoid, each.state,
                self._filled(HOLDS_WHILE, state=each.state), source(each.origin, self.language), self.signs(each.signs),
            )
            for each in hazards
        )  # fmt: skip

    def standing(self, standing: Standing) -> ToldStanding:
        """What still holds."""
        named = {hazard.state for hazard in standing.hazards}
        bare = tuple(state for state in standing.states if state not in named)
        stay = tuple(thing(item, self.language) for item in standing.protections)
        return ToldStanding(self.hazards(standing.hazards), bare, stay)

    def tray(self, line: TrayLine) -> ToldTray:
        """What goes into one bag or tray."""
        counted = line.contents.count is not None
        return ToldTray(line.tray, thing(line.contents, self.language), counted, line.holds, line.off, line.on)

    def torque(self, row: TorqueRow) -> ToldTorque:
        """A line of the tightening table; the document counts as its source when the value itself names none."""
        language, origin = self.language, source(row.origin, self.language)
        heard = self._filled(HEARD, heard=row.heard)
        terms = tuple(filter(None, (self._filled(ORDER, order=row.order), self._filled(WHEN, when=row.when), heard)))
        when = " · ".join(filter(None, (row.when, heard)))
        document = language.text(FROM_DOCUMENT, document=row.look_in) if row.look_in else language.text(NO_SOURCE)
        name = ", ".join(filter(None, (thing(row.item, language), row.of)))
        return ToldTorque(
            name, row.number, row.value.text, other_unit(row.also, language), row.look_in,
            row.order, when, self.stage(row), terms, origin, origin.words or document, row.demanded, row.sequence,
        )  # fmt: skip

    def stage(self, row: TorqueRow) -> str:
        """``stage 2``; empty for a step that does all stages."""
        return self.language.text("stage {number}", number=row.value.stage) if row.value.stage else ""

    def figure(self, figure: Figure, command: str) -> ToldFigure:
        """A picture of the step with this command."""
        state = self.term(figure.state)
        return ToldFigure(
            figure.still, figure.marked, figure.marks, self._alt(figure, command), figure.shows,
            tuple(mark.label for mark in figure.marks if mark.label), weaknesses(figure.still, self.language),
            f"{state}, {taken_from(figure.still)}", figure.state,
        )  # fmt: skip

    def _alt(self, figure: Figure, command: str) -> str:
        text = self.language.text
        if figure.still.reason.why is Why.TYPED:
            told = figure.shows or f"{self.language.capital(figure.state)}: {command}"
        elif figure.state is PictureState.FOUND:
            told = text("Before: {command}", command=command)
        else:
            told = text("Finished state of: {command}", command=command)
        marks = "; ".join(f"{text(mark.shape)}, {mark.label}".rstrip(", ") for mark in figure.marks)
        return text("{picture}. Marked: {marks}", picture=told, marks=marks) if marks else told

    def entry(self, entry: Entry) -> ToldEntry:
        """An entry of the ledger."""
        language, spoilt = self.language, entry.spoilt.why if entry.spoilt else ""
        held_by = things(entry.fasteners, language)
        return ToldEntry(
            item=entry.item, opening=entry.opening, how=self.term(OPENINGS[entry.opening]), balance=entry.balance,
            ends=self.term(BALANCES[entry.balance]), opened=self._moments(entry.opened),
            closed=self._moments(entry.closed), opened_at=self._at(entry.opened), closed_at=self._at(entry.closed),
            count=language.number(_plain(entry.out)), back=language.number(_plain(entry.back)),
            even=entry.out == entry.back, held_by=self._filled(HELD_BY_WORDS, fasteners=held_by),
            in_tray=self._filled(TRAY, tray=entry.tray), part_of=self._filled(PART_OF, part=entry.of),
            scrapped=self.term(SCRAPPED) if entry.scrapped else "", spoilt=self.term(spoilt),
            nipped=self.term(NIPPED_UP) if entry.nipped else "", renewed=self.term(RENEWED) if entry.renewed else "",
            way=way(entry.way, language), reason=entry.reason,
        )  # fmt: skip

    def _moments(self, moments: Iterable[Moment]) -> tuple[str, ...]:
        told = ((self.language.text(AT_STEP, number=each.number), _on_film(each)) for each in moments)
        return tuple(", ".join(filter(None, each)) for each in told)

    def _at(self, moments: Iterable[Moment]) -> str:
        told = ((self.language.text(AT_STEP, number=each.number), _on_film(each)) for each in moments)
        return ", ".join(f"{step} ({film})" if film else step for step, film in told)


def _on_film(moment: Moment) -> str:
    return "" if moment.time is None else f"{moment.recording} {format_time(moment.time)}".strip()


def _shown(each: Statement, name: str) -> str:
    return minutes(each.part(name)) if name == "minutes" else each.part(name)


def _plain(number: Decimal) -> Decimal:
    return number.normalize() + 0
