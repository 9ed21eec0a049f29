"""The film of the whole job as an edition tells it: chapters, cards and the words beside the footage."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from procbuilder.model.edition import Edition
from procbuilder.model.film import Card, CardLine, Panel, Scene, Style
from procbuilder.model.signal import Signal
from procbuilder.publish import pagewords, words
from procbuilder.publish.language import Language
from procbuilder.publish.speaker import spoken
from procbuilder.publish.spoken import Spoken, SpokenStep
from procbuilder.publish.terms import Source
from procbuilder.publish.told import Told, ToldHazard, ToldTorque

_FIRST_NOTES = ("Mistake", "Hidden", "If")
"""Notes without which the footage would mislead."""


def storyboard(edition: Edition, panels: Mapping[Signal, Panel]) -> tuple[Scene, ...]:
    """A title, the dangers of the whole job, every step, and the end.

    A step that is reserved shows a card that says by whom it is done, and no footage.
    """
    told = spoken(edition)
    scenes = _Scenes(told, told.language, panels)
    return (scenes.title(), *scenes.dangers(), *map(scenes.step, told.steps), scenes.end())


def identity(edition: Edition) -> str:
    """``P-014 · revision B · DRAFT – not approved``"""
    return _identity(spoken(edition))


def _identity(edition: Spoken) -> str:
    revision = edition.language.text(words.REVISION, revision=edition.revision) if edition.revision else ""
    return " · ".join(filter(None, (edition.number, revision, edition.status_words or edition.status)))


@dataclass(frozen=True, slots=True)
class _Scenes:
    """Tells the scenes of an edition in its language."""

    edition: Spoken
    language: Language
    panels: Mapping[Signal, Panel]

    def title(self) -> Scene:
        edition, text = self.edition, self.language.text
        named = {
            "Item": edition.item,
            "Applies to": edition.applies_to,
            "Not for": edition.not_for,
        }
        lines = [
            CardLine(Style.WHERE, _identity(edition)),
            CardLine(Style.TITLE, edition.title),
            *self._facts(named.items()),
            CardLine(Style.SMALL, text(words.PRIORITY)),
            CardLine(Style.SMALL, text(words.QUALIFIED)),
        ]
        return Scene(edition.title or text("Title"), (Card(tuple(lines)),))

    def dangers(self) -> Iterator[Scene]:
        hazards = self.edition.hazards
        if hazards:
            title = self.language.text(pagewords.WHOLE_JOB)
            yield Scene(title, (Card((CardLine(Style.WHERE, title), *self._hazards(hazards))),))

    def end(self) -> Scene:
        text, ask = self.language.text, self.edition.ask
        told = text(
            "What is left open, the torques and the checks stand on the page and in the PDF of {identity}.",
            identity=_identity(self.edition),
        )
        lines = [CardLine(Style.TITLE, text("End of the film")), CardLine(Style.FACT, told)]
        lines += [CardLine(Style.FACT, f"{text(pagewords.ASK)} {ask}")] if ask else []
        return Scene(text("End"), (Card((*lines, CardLine(Style.SMALL, text(words.CHECK_REVISION)))),))

    def step(self, step: SpokenStep) -> Scene:
        text = self.language.text
        where = CardLine(Style.WHERE, step.where)
        only_if = [CardLine(Style.FACT, step.only_if, text(words.ONLY_IF))] if step.only_if else []
        name = f"{step.number}  {step.command}"
        beginning = (where, *self._standing(step), *self._hazards(step.hazards), *only_if)
        if step.reserved:
            stop = CardLine(Style.STOP, step.stop)
            told = (stop, CardLine(Style.TITLE, step.command), *self._before_going_on(step))
            return Scene(name, (Card((*beginning, *told)),), number=step.number)
        points = list(self._points(step))
        facts = [*self._needed(step), *(() if step.clip else points)]
        withheld = [CardLine(Style.STOP, step.withheld)] if step.withheld else []
        return Scene(
            title=name,
            before=(Card((*beginning, CardLine(Style.TITLE, step.command), *withheld, *self._facts(facts))),),
            number=step.number,
            step=step.id,
            head=name,
            standing=self._still_dangerous(step),
            points=tuple(f"{text(label)}: {told}" for label, told in points if step.clip),
            after=tuple(Card((where, CardLine(Style.STOP, self._hold(hold)))) for hold in step.holds),
        )

    def _facts(self, pairs: Iterable[tuple[str, str]]) -> list[CardLine]:
        return [CardLine(Style.FACT, told, self.language.text(label)) for label, told in pairs if told]

    def _needed(self, step: SpokenStep) -> Iterator[tuple[str, str]]:
        """Protection, tools, sizes and torques."""
        kinds = (
            (words.WEAR, step.wear),
            (words.TOOL, step.tools),
            (words.PART, step.parts),
            (words.SUPPLY, step.supplies),
        )
        for label, lines in kinds:
            yield label, "; ".join(self._sure(line.text, line.source) for line in lines)
        yield pagewords.HELD_BY, "; ".join(f"{held} ({item})" for held, item in step.held_by)
        for row in step.torques:
            yield words.TORQUE, self._torque(row)

    def _torque(self, row: ToldTorque) -> str:
        text = self.language.text
        what = ", ".join(filter(None, (row.item, row.stage, row.order, row.when)))
        if not row.value:
            look = text("look it up in {document}", document=row.look_in) if row.look_in else text(words.LOOK_UP)
            return f"{what}: {look[0].lower()}{look[1:]}"
        if row.source.memory:
            return self._sure(f"{what}: {row.value}", row.source)
        return f"{what}: {row.value} ({row.whence})"

    def _sure(self, told: str, source: Source) -> str:
        """A text with where it comes from, when that matters."""
        doubt = (self.language.text("not checked"),) if source.memory else ()
        return f"{told} ({', '.join((source.words, *doubt))})" if source.words else told

    def _hazards(self, hazards: Iterable[ToldHazard]) -> Iterator[CardLine]:
        for hazard in _worst_first(hazards):
            what = f"{hazard.hazard}: {hazard.consequence}" if hazard.consequence else hazard.hazard
            avoid = f" – {hazard.avoid}" if hazard.avoid else ""
            yield CardLine(Style.SIGNAL, what + avoid, hazard.word, self.panels[hazard.signal])

    def _standing(self, step: SpokenStep) -> Iterator[CardLine]:
        text, stands = self.language.text, step.standing
        dangers = [
            f"{each.word} {each.hazard}{f' – {each.avoid}' if each.avoid else ''}"
            for each in _worst_first(stands.hazards)
        ]
        if dangers := [*dangers, *stands.bare]:
            yield CardLine(Style.STANDING, "; ".join(dangers), text(words.STILL_DANGEROUS))
        if stands.protections:
            yield CardLine(Style.STANDING, "; ".join(stands.protections), text(words.LEAVE_IN_PLACE))

    def _still_dangerous(self, step: SpokenStep) -> str:
        """One line, without how to avoid it: the card before has said that."""
        text, stands = self.language.text, step.standing
        told = [*(f"{each.word} {each.hazard}" for each in _worst_first(stands.hazards)), *stands.bare]
        return f"{text(words.STILL_DANGEROUS)}: {'; '.join(told)}" if told else ""

    def _points(self, step: SpokenStep) -> Iterator[tuple[str, str]]:
        """What to mind, by name; shown below the footage, or on the card where there is none."""
        for note in step.notes:
            if note.name in _FIRST_NOTES:
                yield note.name, note.joined()
        for point in step.key_points:
            why = f" – {self.language.text(pagewords.BECAUSE)} {', '.join(point.extra)}" if point.extra else ""
            told = f"{point.text}{why}"
            yield words.KEY_POINT, self._sure(told, point.source) if point.source.memory else told
        for check in step.checks:
            yield check.name, check.joined()

    def _hold(self, hold: Told) -> str:
        by = "".join(f" {self.language.text(pagewords.BY, who=part)}" for part in hold.extra)
        told = self.language.text("HOLD: before the next step this must be checked: {what}", what=hold.text)
        return f"{told}{by}"

    def _before_going_on(self, step: SpokenStep) -> Iterator[CardLine]:
        before = self.language.text(pagewords.BEFORE_GOING_ON).removesuffix(":")
        for told in [each.joined() for each in (*step.holds, *step.checks)] or [step.safe.removesuffix(".")]:
            yield CardLine(Style.FACT, told, before)


def _worst_first(hazards: Iterable[ToldHazard]) -> list[ToldHazard]:
    return sorted(hazards, key=lambda hazard: hazard.signal.rank)
