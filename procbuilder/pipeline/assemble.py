"""The edition: text, worked-out facts and pictures put together, ready to publish."""

from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction
from pathlib import Path
from urllib.parse import quote

from procbuilder.infer.dangers import hazards
from procbuilder.infer.lists import parts, supplies, tools
from procbuilder.model.edition import Edition, EditionSection, EditionStep, Statement
from procbuilder.model.fields import Field
from procbuilder.model.moves import LEFT_OPEN, MOVES
from procbuilder.model.problem import Problem, stops
from procbuilder.model.procedure import Procedure, Section, Step
from procbuilder.model.signal import SIGNALS
from procbuilder.model.worked import Standing
from procbuilder.model.workshop import Qualification, Workshop
from procbuilder.pipeline.clips import Clips
from procbuilder.pipeline.examine import Examined
from procbuilder.pipeline.lines import FRONT_LISTS, front_lists, items, statements, worn
from procbuilder.pipeline.narration import said_in
from procbuilder.pipeline.pairs import pairs
from procbuilder.pipeline.paths import OUT
from procbuilder.pipeline.pictures import Pictures
from procbuilder.pipeline.trimming import Trimmed

_MOVES = (*(move for move in MOVES if move != "Torque"), LEFT_OPEN)
"""A torque has a place of its own."""
CLOSING = ("Finding", "Later")
SHOWN_APART = (
    *SIGNALS, *_MOVES, *CLOSING, "Tool", "Supply", "Part", "Wear", "Torque", "Key point", "Measure", "Check", "Hold",
    "Reserved", "Only if", "Picture", "Hide", "Skip", "Time", "Asked", "Refused",
)  # fmt: skip
"""Fields of a step that have a place of their own, or none on the page."""


def assemble(
    examined: Examined,
    trimmed: Mapping[str, Trimmed],
    pictures: Pictures,
    clips: Clips,
    problems: tuple[Problem, ...],
    reader: Qualification | None = None,
) -> Edition:
    """The edition of a procedure for its reader; nothing is worked out or made any more."""
    procedure, lexicon = examined.procedure, examined.lexicon
    maker = _StepMaker(examined, trimmed, pictures, clips)
    sections = tuple(maker.section(section) for section in procedure.sections)
    front = procedure.front
    typed = front["status"] or "draft"
    status = "draft" if typed != "withdrawn" and stops(problems) else typed
    return Edition(
        title=procedure.title, number=front["number"], revision=front["revision"], status=status,
        item=front["item"], applies_to=front["applies to"], not_for=front["not for"], author=front["author"],
        work_place=front["place"], people=front["people"], ask=front["ask"], language=front["language"] or "en-GB",
        intro=tuple(prose.text for prose in procedure.intro), hazards=hazards(procedure.listed(*SIGNALS), lexicon),
        lists=front_lists(procedure, lexicon), tools=tools(procedure, lexicon.words),
        supplies=supplies(procedure, lexicon.words), parts=parts(procedure, lexicon.words),
        trays=examined.trays, sections=sections, torques=examined.torques, ledger=examined.ledger,
        pairs=pairs(examined.ledger, [step for section in sections for step in section.steps]),
        estimate=examined.estimate,
        closing=_closing(procedure), problems=problems, recordings=examined.recordings.facts,
        paper=_paper(examined.workshop, front["language"]), address=_address(examined.workshop, procedure.folder),
        reader=reader,
    )  # fmt: skip


def _paper(workshop: Workshop, language: str) -> str:
    return workshop.paper or ("letter" if language == "en-US" else "a4")


def _address(workshop: Workshop, folder: Path) -> str:
    return f"{workshop.address}{quote(folder.resolve().name)}/{OUT}/" if workshop.address else ""


def _closing(procedure: Procedure) -> tuple[Statement, ...]:
    """Findings and later re-checks of the whole job, then those that steps say."""
    lines = list(statements(procedure.listed(*CLOSING)))
    for number, step in enumerate(procedure.steps, 1):
        lines += (replace(line, step=number) for line in statements(step.all(*CLOSING)))
    return tuple(lines)


class _StepMaker:
    """Makes the steps of an edition one by one; numbers run through all sections."""

    def __init__(self, examined: Examined, trimmed: Mapping[str, Trimmed], pictures: Pictures, clips: Clips) -> None:
        self.examined, self.trimmed, self.pictures, self.clips = examined, trimmed, pictures, clips
        self.steps = examined.procedure.steps
        self.numbers = {step.id: number for number, step in enumerate(self.steps, 1)}
        self.times = {time.step: time for time in examined.estimate.steps}

    def section(self, section: Section) -> EditionSection:
        notes = [entry for entry in section.fields if entry.name not in (*SHOWN_APART, *FRONT_LISTS)]
        steps = tuple(self.step(step) for step in section.steps)
        return EditionSection(section.title, tuple(prose.text for prose in section.prose), statements(notes), steps)

    def step(self, step: Step) -> EditionStep:
        number = self.numbers[step.id]
        time = self.times[step.id]
        before, opened = self.pictures.as_found.get(step.id, (None, ""))
        clip = self.clips.by_step.get(step.id)
        said = said_in(self.examined.narration, self.trimmed[step.id].stretches, clip.held if clip else Fraction(0))
        return EditionStep(
            number=number, id=step.id, command=step.command, spans=step.spans,
            prose=tuple(prose.text for prose in step.prose), hazards=hazards(step.all(*SIGNALS), self.examined.lexicon),
            standing=self.examined.standing.get(step.id, Standing()),
            reserved="; ".join(entry.part("who") for entry in step.all("Reserved")) if self._hides(step) else "",
            only_if="; ".join(entry.part("condition") for entry in step.all("Only if")),
            holds=statements(step.all("Hold")), tools=items(step.all("Tool")), supplies=items(step.all("Supply")),
            parts=items(step.all("Part")), wear=worn(step.all("Wear"), self.examined.lexicon),
            moves=statements(step.all(*_MOVES)),
            torques=tuple(row for row in self.examined.torques if row.step == step.id),
            key_points=statements(step.all("Key point")),
            checks=statements(step.all("Measure", "Check")), notes=statements(self._others(step)),
            figures=self.pictures.figures.get(step.id, ()),
            as_found=before, as_found_step=self.numbers.get(opened, 0),
            clip=clip, captions=() if step.withheld else said, withheld=step.withheld,
            basis=time.basis, minutes=time.likely, footage=time.footage, timed=step.id in self.examined.timed,
            no_phone="" if self._hides(step) else self.examined.no_phone.get(step.id, ""),
        )  # fmt: skip

    def _hides(self, step: Step) -> bool:
        return step.id in self.examined.reserved

    def _others(self, step: Step) -> list[Field]:
        """What has no place of its own; who may do a reserved step, where the reader is shown how."""
        apart = set(SHOWN_APART) - (set() if self._hides(step) else {"Reserved"})
        return [*step.all("Derived"), *(entry for entry in step.fields if entry.name not in {*apart, "Derived"})]
