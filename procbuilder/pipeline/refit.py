"""procbuilder new --refit: proposes the refit of a procedure from its strip, and writes it behind what is there."""

from dataclasses import dataclass
from pathlib import Path

from procbuilder.infer.ledger import ledger
from procbuilder.infer.lexicon import load
from procbuilder.infer.refit import derive
from procbuilder.keep.files import replace_unchanged
from procbuilder.model.fault import NoProcedure
from procbuilder.pipeline.library import read_workshop_of
from procbuilder.publish.language import language_of
from procbuilder.publish.wording.drafts import REFIT
from procbuilder.read.compose import derived_section
from procbuilder.read.edits import append
from procbuilder.read.procedure import FILE_NAME, read_procedure


@dataclass(frozen=True, slots=True)
class Refitted:
    """What was proposed."""

    file: Path
    steps: int
    to_decide: int
    """Of these, steps that only ask: pressed, bled, timed, preloaded or single-use work."""


def refit(folder: Path) -> Refitted:
    """Add a section with a step for everything that is still open; what was typed stays as it is.

    Raises:
        NoProcedure, NotText: there is nothing to read.
        ChangedMeanwhile, CannotWrite: nothing was written.
    """
    path = folder / FILE_NAME
    if not path.is_file():
        raise NoProcedure(folder)
    before = path.read_bytes()
    procedure, _ = read_procedure(folder)
    own = read_workshop_of(folder.resolve().parent)[0].words
    lexicon = load(procedure.front["language"], own)
    steps = derive(procedure, ledger(procedure, lexicon), lexicon, own)
    if steps:
        title = language_of(procedure.front["language"]).text(REFIT)
        text = derived_section(title, steps, [step.id for step in procedure.steps])
        replace_unchanged(path, before, append(before, text))
    return Refitted(path, len(steps), sum(step.fields[-1][0] == "Note" for step in steps))
