"""Rules about parts that are used once."""

from collections.abc import Iterator
from dataclasses import replace

from procbuilder.check.case import Case
from procbuilder.model.facts import Line, Term, facts
from procbuilder.model.ledger import Balance, Entry, Opening
from procbuilder.model.lexicon import SingleUse
from procbuilder.model.problem import Problem, Severity, answer


def single_use_again(case: Case) -> Iterator[Problem]:
    """A part of the single-use list comes off and goes on again, and nothing says whether it is a new one."""
    renewed = _renewed(case)
    for entry in case.ledger.entries:
        if (
            entry.opening is not Opening.OFF
            or entry.balance not in (Balance.CLOSED, Balance.ASSUMED)
            or not entry.opened
        ):
            continue
        for name in _names(entry):
            part = _listed(name, case)
            if part is not None and not (entry.renewed and name == entry.item) and case.thing(name) not in renewed:
                yield _asked(entry, name, part, case)


def _names(entry: Entry) -> list[str]:
    return [entry.item, *(fastener.head for fastener in entry.fasteners)]


def _listed(name: str, case: Case) -> SingleUse | None:
    return next((one for one in case.lexicon.single_use if case.called(name, one.things)), None)


def _renewed(case: Case) -> set[str]:
    """Everything of which a new one is a part of the job."""
    fields = case.procedure.everywhere("Part", "On")
    return {case.thing(item.name) for entry in fields for item in entry.items if item.new}


def _asked(entry: Entry, name: str, part: SingleUse, case: Case) -> Problem:
    rule, opened = "single-use-again", entry.opened[0]
    command = case.procedure.steps[opened.number - 1].command if opened.number else ""
    critical = case.mentioned(f"{name} ; {entry.item} ; {command}", case.lexicon.critical)
    given = facts(
        item=name,
        opened=replace(opened, recording="", time=None),
        why=Term(part.why),
        new=Line("Part", (f"{name}, new",), place=case.front),
        answer=answer(rule, name, case.front, "used-again", "Asked"),
    )
    severity = Severity.STOP if critical else Severity.ASK
    return Problem(rule, severity, opened.place, given, danger=2, subject=name)
