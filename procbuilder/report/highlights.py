"""What is worth a look first in an edition."""

from collections.abc import Iterable

from procbuilder.model.edition import Edition, EditionStep
from procbuilder.model.facts import StepRef, Term, Time
from procbuilder.model.ledger import Balance, Entry
from procbuilder.model.signal import Signal
from procbuilder.publish.language import ENGLISH, Language
from procbuilder.publish.terms import OPENINGS
from procbuilder.publish.terms import way as told_way
from procbuilder.publish.wording.commands import clause, tell


def highlights(edition: Edition, language: Language = ENGLISH) -> list[str]:
    """What nobody sees in the film: items still open, dangers that stand, torques to be looked up."""
    lines = [_open(entry, language) for entry in edition.ledger.having(Balance.OPEN, Balance.ASSUMED)]
    lines += _standing(edition.steps, language)
    for row in edition.torques:
        look_in = row.look_in
        source = clause("look-in", language, document=look_in) if look_in else clause("look-it-up", language)
        step = StepRef(row.step, row.number)
        form = "torque" if row.value else "torque-blank"
        lines.append(tell(form, language, item=row.item, step=step, value=str(row.value), source=source))
    return [edition.title, f"  {edition.item}", *(f"  {line}" for line in lines)]


def _open(entry: Entry, language: Language) -> str:
    moment, way = entry.opened[-1], told_way(entry.way, language)
    time = Time(moment.time, moment.recording) if moment.time is not None else None
    assumed = entry.balance is Balance.ASSUMED
    return tell(
        "assumed-closed" if assumed else "still-open",
        language,
        item=entry.item,
        opening=Term(OPENINGS[entry.opening]),
        film=clause("filmed-at", language, time=time) if time else clause("not-filmed", language),
        step=StepRef(moment.step, moment.number),
        closing=StepRef(entry.closed[-1].step, entry.closed[-1].number) if assumed else "",
        way=f", {way}" if way else "",
    )


def _standing(steps: Iterable[EditionStep], language: Language) -> list[str]:
    """Each danger that outlasts its step, with the steps at which it still stands."""
    numbers: dict[tuple[Signal, str], list[int]] = {}
    for step in steps:
        for hazard in step.standing.hazards:
            numbers.setdefault((hazard.signal, hazard.hazard), []).append(step.number)
    return [
        tell(
            "still-dangerous", language,
            runs=_runs(found, language), count=len(found), signal=Term(signal), hazard=hazard,
        )
        for (signal, hazard), found in numbers.items()
    ]  # fmt: skip


def _runs(numbers: list[int], language: Language) -> tuple[str, ...]:
    """``4``, ``3 to 33``, ``3 to 7`` and ``12``; numbers rise."""
    runs: list[list[int]] = []
    for number in numbers:
        if runs and number == runs[-1][-1] + 1:
            runs[-1].append(number)
        else:
            runs.append([number])
    return tuple(
        str(run[0]) if len(run) == 1 else clause("from-to", language, first=run[0], last=run[-1]) for run in runs
    )
