"""What is worked out of a procedure's text and the facts of its recordings, and its problems."""

from dataclasses import dataclass

from procbuilder.check.case import Case
from procbuilder.check.run import problems
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
from procbuilder.model.problem import Problem, worst_first
from procbuilder.model.procedure import NamedFile, Narration, Procedure
from procbuilder.model.worked import Standing, TorqueRow
from procbuilder.model.workshop import Workshop
from procbuilder.pipeline.paths import find
from procbuilder.pipeline.practice import read_times
from procbuilder.pipeline.recordings import Found
from procbuilder.pipeline.scanning import Footage


@dataclass(frozen=True, slots=True)
class Examined:
    """Everything known of a procedure before pictures are made."""

    procedure: Procedure
    lexicon: Lexicon
    """The words of its language."""
    ledger: Ledger
    trays: tuple[TrayLine, ...]
    standing: dict[str, Standing]
    torques: tuple[TorqueRow, ...]
    estimate: Estimate
    timed: frozenset[str]
    """Ids of the steps that may have a stopwatch."""
    problems: tuple[Problem, ...]
    workshop: Workshop
    no_phone: dict[str, str]
    """Why a step is worked without a phone, by step id; only those that are."""
    reserved: frozenset[str] = frozenset()
    """Ids of the steps of which this reader is not shown how they are done."""


def examine(
    procedure: Procedure,
    text_problems: tuple[Problem, ...],
    found: Found,
    footage: Footage,
    narration: tuple[Narration, ...] = (),
) -> Examined:
    """Work out and check; the problems of text and files are among the result."""
    times = read_times(procedure.folder)
    own = times.workshop.words
    lexicon = with_dangers(load(procedure.front["language"], own), times.workshop.dangers)
    still = standing(procedure, lexicon)
    book, rows = ledger(procedure, lexicon), torques(procedure, lexicon)
    case = Case(
        procedure=procedure,
        recordings={recording.name: recording for recording in found.recordings},
        films=dict(found.films),
        ledger=book,
        removed=removed_protection(procedure, lexicon),
        torques=rows,
        lexicon=lexicon,
        heard=heard_torques(procedure, narration),
        standing=still,
        noticed=noticed(procedure, still, lexicon),
        disorders=disorders(procedure, lexicon),
        taken_off=taken_off_by_words(procedure, own),
    )
    every = worst_first(
        [*text_problems, *found.problems, *_missing_pictures(procedure), *problems(case), *times.problems]
    )
    reckoned = estimate(procedure, times.runs, times.workshop, footage.splits, times.neighbours)
    timed = frozenset(
        step.id for step in procedure.steps if may_be_timed(step, still.get(step.id, Standing()), lexicon)
    )
    return Examined(
        procedure=procedure,
        lexicon=lexicon,
        ledger=book,
        trays=trays(book, lexicon.words, own),
        standing=still,
        torques=rows,
        estimate=reckoned,
        timed=timed,
        problems=every,
        workshop=times.workshop,
        no_phone=vapour(procedure, still, lexicon),
    )


def _missing_pictures(procedure: Procedure) -> list[Problem]:
    """Picture files that a step names but that cannot be used."""
    pictures = [picture for step in procedure.steps for picture in step.pictures if picture.file]
    found = (find(procedure.folder, NamedFile("", picture.file, picture.place)) for picture in pictures)
    return [problem for problem in found if isinstance(problem, Problem)]
