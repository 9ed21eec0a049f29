"""Steps reserved by law: an edition for everybody says that somebody else does them, never how."""

from bisect import bisect_right
from collections.abc import Iterable
from dataclasses import replace
from datetime import date

from procbuilder.model.estimate import Estimate
from procbuilder.model.fault import NotQualified
from procbuilder.model.ledger import Balance, Entry, Ledger
from procbuilder.model.phrases import mentioned
from procbuilder.model.problem import RESERVED, Problem
from procbuilder.model.procedure import Procedure, Step
from procbuilder.model.signal import SIGNALS
from procbuilder.model.words import Words
from procbuilder.model.workshop import Qualification, Workshop
from procbuilder.pipeline.examine import Examined

TOLD = (
    "Reserved", "Only if", *SIGNALS, "State", "Ends", "Check", "Hold", "Finding", "Later",
)  # fmt: skip
"""What an edition for everybody says of a reserved step: who does it, and what must be true before going on."""


def qualification(name: str, workshop: Workshop, words: Words, today: date) -> Qualification:
    """The qualification of this name that lasts longest.

    Raises:
        NotQualified: the workshop file names none, or its last day is over.
    """
    known = [each for each in workshop.qualifications if words.thing(each.name) == words.thing(name)]
    latest = max(known, key=lambda each: each.valid_until, default=None)
    if latest is None or latest.valid_until < today:
        raise NotQualified(name, latest.valid_until if latest else None)
    return latest


def without_methods(examined: Examined, reader: Qualification | None) -> Examined:
    """What may be shown to this reader: of the other reserved steps nothing that tells how they are done."""
    procedure = examined.procedure
    closed = [step for step in procedure.steps if not _may_see(step, reader, examined.lexicon.words)]
    if not closed:
        return examined
    hidden = frozenset(step.id for step in closed)
    numbers = {number for number, step in enumerate(procedure.steps, 1) if step.id in hidden}
    sections = tuple(
        replace(section, steps=tuple(_bare(step) if step.id in hidden else step for step in section.steps))
        for section in procedure.sections
    )
    return replace(
        examined,
        procedure=replace(procedure, sections=sections),
        torques=tuple(row for row in examined.torques if row.step not in hidden),
        trays=tuple(line for line in examined.trays if numbers.isdisjoint((line.off, *line.on))),
        ledger=Ledger(tuple(entry for one in examined.ledger.entries if (entry := _entry(one, hidden)))),
        estimate=_estimate(examined.estimate, closed),
        reserved=hidden,
    )


def _may_see(step: Step, reader: Qualification | None, words: Words) -> bool:
    reserved = step.all("Reserved")
    return all(reader is not None and bool(mentioned(entry.part("who"), [reader.name], words)) for entry in reserved)


def _bare(step: Step) -> Step:
    return Step(
        place=step.place,
        command=step.command,
        id=step.id,
        id_typed=step.id_typed,
        fields=step.all(*TOLD),
        minutes=step.minutes,
    )


def _entry(entry: Entry, hidden: frozenset[str]) -> Entry | None:
    """What the ledger shows: nothing that began and ended within reserved steps, and not how a thing is held there."""
    moments = (*entry.opened, *entry.closed)
    inside = [moment.step in hidden for moment in moments]
    if entry.balance is Balance.CLOSED and all(inside):
        return None
    return replace(entry, fasteners=(), tray="") if any(inside) else entry


def _estimate(estimate: Estimate, closed: list[Step]) -> Estimate:
    cases = {entry.part("condition") for step in closed for entry in step.all("If")}
    return replace(estimate, extras=tuple(extra for extra in estimate.extras if extra.condition not in cases))


def without_words(problems: Iterable[Problem], procedure: Procedure, hidden: frozenset[str]) -> tuple[Problem, ...]:
    """Problems within a hidden step, or about one, tell only that there is something to settle.

    Rule, facts and words could all quote the method.
    """
    if not hidden:
        return tuple(problems)
    closed = {step.place.line for step in procedure.steps if step.id in hidden}
    parts = [step.place for step in procedure.steps] + [section.place for section in procedure.sections]
    begins = sorted({place.line for place in parts})

    def within(line: int) -> bool:
        at = bisect_right(begins, line)
        return at > 0 and begins[at - 1] in closed

    told = (_only_that(one) if within(one.place.line) or one.steps & hidden else one for one in problems)
    return tuple(dict.fromkeys(told))


def _only_that(problem: Problem) -> Problem:
    return replace(problem, rule=RESERVED, facts=(), form=RESERVED, subject="", order=0)
