"""Steps of the same operation, here and in the other procedures of a library: pulling a split pin is the same work."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace
from fractions import Fraction

from procbuilder.infer.commanded import commanded
from procbuilder.infer.lexicon import load
from procbuilder.infer.wordlists import ENGLISH
from procbuilder.model.heard import Sentence
from procbuilder.model.practice import Logged, Run
from procbuilder.model.procedure import Step
from procbuilder.model.workshop import NO_OWN_WORDS, OwnWords


def kind_of(step: Step, language: str = ENGLISH, own: OwnWords = NO_OWN_WORDS) -> str:
    """What its command does to which thing: ``off split pin``; empty when that is not understood."""
    lexicon = load(language, own)
    said = Sentence(step.command, step.place, "", Fraction(0), Fraction(0), 1)
    found = next(iter(commanded([said], lexicon, own)), None)
    return f"{found.act} {lexicon.words.as_spelled(found.object)}" if found else ""


def kinds(steps: Iterable[Step], language: str = ENGLISH, own: OwnWords = NO_OWN_WORDS) -> dict[str, str]:
    """The operation of each step by its id, where it is understood."""
    return {step.id: kind for step in steps if (kind := kind_of(step, language, own))}


def borrowed(
    wanted: Mapping[str, str], neighbours: Sequence[Logged], own: OwnWords = NO_OWN_WORDS
) -> tuple[list[Run], dict[str, str]]:
    """Rows of other procedures for the operations that are wanted, and the operation of each of their steps.

    Args:
        wanted: operations by step id.
        neighbours: the other procedures of the library with their logs.
        own: words of the workshop.
    """
    runs: list[Run] = []
    found: dict[str, str] = {}
    for neighbour in neighbours:
        logged = {run.step for run in neighbour.runs}
        language = neighbour.procedure.front["language"]
        theirs = kinds((step for step in neighbour.procedure.steps if step.id in logged), language, own)
        same = {step: kind for step, kind in theirs.items() if kind in wanted.values()}
        found |= {f"{neighbour.name}/{step}": kind for step, kind in same.items()}
        runs += (replace(run, step=f"{neighbour.name}/{run.step}") for run in neighbour.runs if run.step in same)
    return runs, found
