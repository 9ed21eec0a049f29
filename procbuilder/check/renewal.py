"""Rules about parts that are used once."""

from collections.abc import Iterator

from procbuilder.check.case import Case
from procbuilder.model.ledger import Balance, Entry, Opening
from procbuilder.model.lexicon import SingleUse
from procbuilder.model.problem import Problem, Severity, worded


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
    number = entry.opened[0].number
    command = case.procedure.steps[number - 1].command if number else ""
    critical = case.mentioned(f"{name} ; {entry.item} ; {command}", case.lexicon.critical)
    return worded(
        Severity.STOP if critical else Severity.ASK,
        entry.opened[0].place,
        f"{name} comes off in step {number} and goes on again: a new one, or the old one after inspection? "
        f"It is asked for because {part.why}",
        f'write "- Part: {name}, new", or "- Asked: single use again: {name} | used again after inspection"',
        "single-use-again",
        2,
        subject=name,
    )
