"""What is worked out of a procedure's text and the facts of its recordings, and what its rules find wrong."""

from dataclasses import dataclass

from procbuilder.check.case import Case
from procbuilder.check.run import problems as broken_rules
from procbuilder.infer.by_words import taken_off_by_words
from procbuilder.infer.dangers import removed_protection, standing
from procbuilder.infer.heard_torques import heard_torques
from procbuilder.infer.ledger import ledger
from procbuilder.infer.lexicon import load, with_dangers
from procbuilder.infer.order import disorders
from procbuilder.infer.proposed import noticed
from procbuilder.infer.times import estimate
from procbuilder.infer.timing import may_be_timed
from procbuilder.infer.torques import torques
from procbuilder.infer.trays import trays
from procbuilder.infer.vapour import vapour
from procbuilder.model.edition import TrayLine
from procbuilder.model.estimate import Estimate
from procbuilder.model.ledger import Ledger
from procbuilder.model.lexicon import Lexicon
from procbuilder.model.problem import Problem
from procbuilder.model.procedure import NamedFile, Narration, Procedure
from procbuilder.model.worked import Standing, TorqueRow
from procbuilder.model.workshop import Workshop
from procbuilder.pipeline.library import Library, Source
from procbuilder.pipeline.paths import find
from procbuilder.pipeline.recordings import Recordings
from procbuilder.pipeline.scanning import Footage


@dataclass(frozen=True, slots=True)
class Examined:
    """Everything known of a procedure before pictures are made."""

    procedure: Procedure
    narration: tuple[Narration, ...]
    recordings: Recordings
    workshop: Workshop
    lexicon: Lexicon
    """The words of its language, with the workshop's own."""
    ledger: Ledger
    trays: tuple[TrayLine, ...]
    standing: dict[str, Standing]
    torques: tuple[TorqueRow, ...]
    estimate: Estimate
    timed: frozenset[str]
    """Ids of the steps that may have a stopwatch."""
    no_phone: dict[str, str]
    """Why a step is worked without a phone, by step id; only those that are."""
    reserved: frozenset[str] = frozenset()
    """Ids of the steps of which this reader is not shown how they are done."""


def examine(
    source: Source, narration: tuple[Narration, ...], recordings: Recordings, footage: Footage, library: Library
) -> Examined:
    """Work out what follows from text, recordings and the library."""
    procedure, workshop = source.procedure, library.workshop
    lexicon = with_dangers(load(procedure.front["language"], workshop.words), workshop.dangers)
    still = standing(procedure, lexicon)
    book = ledger(procedure, lexicon)
    timed = (step.id for step in procedure.steps if may_be_timed(step, still.get(step.id, Standing()), lexicon))
    return Examined(
        procedure=procedure,
        narration=narration,
        recordings=recordings,
        workshop=workshop,
        lexicon=lexicon,
        ledger=book,
        trays=trays(book, lexicon),
        standing=still,
        torques=torques(procedure, lexicon),
        estimate=estimate(procedure, source.runs, workshop, footage.splits, library.beside(source)),
        timed=frozenset(timed),
        no_phone=vapour(procedure, still, lexicon),
    )


def check(examined: Examined) -> tuple[Problem, ...]:
    """What the rules find wrong or missing, and picture files that cannot be used."""
    procedure, lexicon, still = examined.procedure, examined.lexicon, examined.standing
    case = Case(
        procedure=procedure,
        recordings={file.facts.name: file.facts for file in examined.recordings.files},
        films={file.facts.name: file.film for file in examined.recordings.files},
        ledger=examined.ledger,
        removed=removed_protection(procedure, lexicon),
        torques=examined.torques,
        lexicon=lexicon,
        heard=heard_torques(procedure, examined.narration),
        standing=still,
        noticed=noticed(procedure, still, lexicon, examined.narration),
        disorders=disorders(procedure, lexicon),
        taken_off=taken_off_by_words(procedure, examined.workshop.words),
    )
    return (*broken_rules(case), *_missing_pictures(procedure))


def _missing_pictures(procedure: Procedure) -> list[Problem]:
    """Picture files that a step names but that cannot be used."""
    pictures = [picture for step in procedure.steps for picture in step.pictures if picture.file]
    found = (find(procedure.folder, NamedFile("", picture.file, picture.place)) for picture in pictures)
    return [problem for problem in found if isinstance(problem, Problem)]
