"""Steps of the same operation, here and in the other procedures of a library: pulling a split pin is the same work."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field, replace
from fractions import Fraction
from itertools import count, islice

from procbuilder.infer.commanded import commanded
from procbuilder.infer.lexicon import load
from procbuilder.infer.wordlists import ENGLISH
from procbuilder.model.heard import Sentence
from procbuilder.model.practice import PracticeLog, Run
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


@dataclass(frozen=True, slots=True)
class Done:
    """The rows of one operation in the log of one procedure."""

    procedure: str
    """Name of its folder."""
    rows: tuple[tuple[int, Run], ...]
    """Each with its number among all rows of the library, its step and file under names of their own."""


@dataclass(frozen=True, slots=True)
class Neighbours:
    """What the logs of a library tell of each operation."""

    done: Mapping[str, tuple[Done, ...]] = field(default_factory=dict)
    """By operation, the procedures in which it was done last first."""
    but: str = ""
    """Name of the folder of the procedure that borrows; its own rows are none of a neighbour."""

    def of(self, kind: str) -> Iterator[Done]:
        """The others in which an operation was done last, as many as are of use."""
        return islice((done for done in self.done.get(kind, ()) if done.procedure != self.but), ENOUGH)


ENOUGH = 10
"""Other procedures that tell of an operation; more would tell little, and cost more the larger the library is."""
NO_NEIGHBOURS = Neighbours()


def gathered(logs: Iterable[PracticeLog], own: OwnWords = NO_OWN_WORDS) -> Neighbours:
    """What is understood of the steps of which there are rows."""
    found: dict[str, list[Done]] = {}
    number = count()
    for log in logs:
        logged = {run.step for run in log.runs}
        theirs = kinds(
            (step for step in log.procedure.steps if step.id in logged), log.procedure.front["language"], own
        )
        rows: dict[str, list[tuple[int, Run]]] = {}
        for run in log.runs:
            if kind := theirs.get(run.step):
                place = replace(run.place, file=f"../{log.name}/{run.place.file}")
                named = replace(run, step=f"{log.name}/{run.step}", place=place)
                rows.setdefault(kind, []).append((next(number), named))
        for kind, each in rows.items():
            found.setdefault(kind, []).append(Done(log.name, tuple(each)))
    return Neighbours({kind: tuple(sorted(each, key=_last, reverse=True)) for kind, each in found.items()})


def _last(done: Done) -> str:
    return max(run.when for _, run in done.rows)


def borrowed(wanted: Mapping[str, str], neighbours: Neighbours) -> tuple[list[Run], dict[str, str]]:
    """Rows of other procedures for the operations that are wanted, and the operation of each of their steps.

    ``wanted`` are operations by step id.
    """
    rows = [(*row, kind) for kind in set(wanted.values()) for done in neighbours.of(kind) for row in done.rows]
    rows.sort(key=lambda row: row[0])
    return [run for _, run, _ in rows], {run.step: kind for _, run, kind in rows}
