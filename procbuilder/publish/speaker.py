"""Puts an edition into the words of its language, once for all that is published of it."""

from decimal import Decimal
from fractions import Fraction
from functools import lru_cache

from procbuilder.model.edition import Edition, EditionSection, EditionStep
from procbuilder.model.estimate import Basis
from procbuilder.model.footage import Clip, Recording
from procbuilder.model.problem import stops, worst_first
from procbuilder.model.timecode import format_time
from procbuilder.model.workshop import Qualification
from procbuilder.publish.data import as_given
from procbuilder.publish.filmed import moves, remark
from procbuilder.publish.language import language_of
from procbuilder.publish.opened import open_at
from procbuilder.publish.pagewords import STEP_OF, STOP_DONE_BY, TOLD_SAFE
from procbuilder.publish.spoken import (
    Spoken,
    SpokenPair,
    SpokenProblem,
    SpokenRecording,
    SpokenSection,
    SpokenStep,
)  # fmt: skip
from procbuilder.publish.teller import Teller
from procbuilder.publish.terms import things
from procbuilder.publish.timebars import bars
from procbuilder.publish.timewords import sentences
from procbuilder.publish.wording.problems import said
from procbuilder.publish.words import BASIS_WORDS, ONLY_FOR, STATUS_WORDS


@lru_cache(maxsize=4)
def spoken(edition: Edition) -> Spoken:
    """The edition in words. One that was asked for before is not put together again."""
    return _Speaker(edition).edition()


class _Speaker:
    """Puts together one edition."""

    def __init__(self, edition: Edition) -> None:
        self.facts, self.language = edition, language_of(edition.language)
        self.teller = Teller(self.language, {step.id: step for step in edition.steps})
        self.commands = {step.number: step.command for step in edition.steps}
        self.open = open_at(edition)

    def edition(self) -> Spoken:
        facts, tell, language = self.facts, self.teller, self.language
        return Spoken(
            language=language, title=facts.title, number=facts.number, revision=facts.revision, status=facts.status,
            status_words=language.text(STATUS_WORDS.get(facts.status, "")), why_draft=self._why_draft(),
            reader=self._reader(facts.reader), item=facts.item, applies_to=facts.applies_to, not_for=facts.not_for,
            author=facts.author, work_place=facts.work_place, people=facts.people, ask=facts.ask, intro=facts.intro,
            hazards=tell.hazards(facts.hazards), lists=tuple(map(tell.list, facts.lists)),
            tools=tuple(map(tell.item, facts.tools)), supplies=tuple(map(tell.item, facts.supplies)),
            parts=tuple(map(tell.item, facts.parts)), trays=tuple(map(tell.tray, facts.trays)),
            sections=tuple(map(self._section, facts.sections)), torques=tuple(map(tell.torque, facts.torques)),
            ledger=tuple(map(tell.entry, facts.ledger.entries)), pairs=self._pairs(), estimate=facts.estimate,
            sentences=sentences(facts.estimate, language), bars=bars(facts), closing=tell.all(facts.closing),
            problems=self._problems(), recordings=tuple(map(self._recording, facts.recordings)), film=facts.film,
            film_length=_length(facts.film.seconds) if facts.film else "",
        )  # fmt: skip

    def _why_draft(self) -> str:
        count = len(stops(self.facts.problems))
        if not count or self.facts.status == "withdrawn":
            return ""
        return self.language.plural(
            "{count} problem must be settled before it may be approved",
            "{count} problems must be settled before it may be approved",
            count,
        )

    def _reader(self, reader: Qualification | None) -> str:
        if reader is None:
            return ""
        told = self.language.text(
            "{name}: {holder}, valid until {date}",
            name=reader.name, holder=reader.holder, date=self.language.date(reader.valid_until),
        )  # fmt: skip
        return self.language.text(ONLY_FOR, reader=told)

    def _section(self, section: EditionSection) -> SpokenSection:
        steps = tuple(map(self._step, section.steps))
        return SpokenSection(section.title, section.prose, self.teller.all(section.notes), steps)

    def _step(self, step: EditionStep) -> SpokenStep:
        tell, number = self.teller, step.number
        return SpokenStep(
            number=number, id=step.id, command=step.command, spans=", ".join(map(str, step.spans)), prose=step.prose,
            where=self.language.text(STEP_OF, number=number, count=len(self.commands)),
            hazards=tell.hazards(step.hazards), standing=tell.standing(step.standing), reserved=step.reserved,
            stop=self.language.text(STOP_DONE_BY, who=step.reserved) if step.reserved else "",
            safe=self.language.text(TOLD_SAFE, who=step.reserved) if step.reserved else "",
            only_if=step.only_if, holds=tell.all(step.holds), tools=tell.all(step.tools),
            supplies=tell.all(step.supplies), parts=tell.all(step.parts), wear=tell.all(step.wear),
            moves=tell.all(step.moves), held_by=self._held_by(step), torques=tuple(map(tell.torque, step.torques)),
            key_points=tell.all(step.key_points), checks=tell.all(step.checks), notes=tell.all(step.notes, number),
            figures=tuple(tell.figure(figure, step.command) for figure in step.figures),
            as_found=tell.figure(step.as_found, self._command(step.as_found_step)) if step.as_found else None,
            as_found_step=step.as_found_step, clip=step.clip,
            clip_moves=moves(step.clip, self.language) if step.clip else (), captions=step.captions,
            held=self._held(step.clip), basis=step.basis,
            basis_words=self.language.text(BASIS_WORDS[step.basis]), minutes=self._minutes(step), timed=step.timed,
            withheld=self._withheld(step), no_phone=step.no_phone, address=self.facts.address_of(step),
            open=self.open[number],
        )  # fmt: skip

    def _held(self, clip: Clip | None) -> str:
        return self.language.number(Decimal(f"{float(clip.held):g}")) if clip else ""

    def _withheld(self, step: EditionStep) -> str:
        if not step.withheld or step.reserved:
            return ""
        lines = self.language.every(str(place.line) for place in step.withheld)
        return self.language.plural(
            "Pictures and clip withheld: line {lines} is not understood",
            "Pictures and clip withheld: lines {lines} are not understood",
            len(step.withheld),
            lines=lines,
        )

    def _minutes(self, step: EditionStep) -> str:
        known = step.minutes and step.basis in (Basis.LOG, Basis.TYPED)
        return self.language.number(round(step.minutes, 3).normalize()) if known else ""

    def _held_by(self, step: EditionStep) -> tuple[tuple[str, str], ...]:
        moves = (move for move in step.moves if move.fasteners)
        return tuple((things(m.fasteners, self.language), things(m.items, self.language)) for m in moves)

    def _command(self, number: int) -> str:
        return self.commands.get(number, "")

    def _pairs(self) -> tuple[SpokenPair, ...]:
        return tuple(
            SpokenPair(
                pair.item, pair.off,
                self.teller.figure(pair.found, self._command(pair.off)) if pair.found else None, pair.on,
                self.teller.figure(pair.done, self._command(pair.on)) if pair.done else None,
            )
            for pair in self.facts.pairs
        )  # fmt: skip

    def _problems(self) -> tuple[SpokenProblem, ...]:
        told = ((each, said(each, self.language)) for each in worst_first(self.facts.problems))
        return tuple(
            SpokenProblem(
                each.severity, self.language.text(each.severity), as_given(str(each.place)), words.what, words.instead
            )
            for each, words in told
        )

    def _recording(self, each: Recording) -> SpokenRecording:
        return SpokenRecording(
            each.name, as_given(each.path), each.sha256, _length(each.duration), each.width, each.height,
            tuple(remark(odd, self.language) for odd in each.remarks),
        )  # fmt: skip


def _length(seconds: Fraction) -> str:
    """``3:36``, in whole seconds."""
    return format_time(Fraction(round(seconds)))
