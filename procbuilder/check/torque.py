"""Rules about tightening: a value, its unit and where it comes from. A missing value is never guessed."""

from collections.abc import Iterator

from procbuilder.check.case import Case
from procbuilder.model.commands import done_to
from procbuilder.model.facts import Blank, Line, facts
from procbuilder.model.ledger import Balance, Opening
from procbuilder.model.origin import Place
from procbuilder.model.problem import Problem, Severity, answerable
from procbuilder.model.worked import TorqueRow


def tightening_without_torque(case: Case) -> Iterator[Problem]:
    """Something is tightened for good, and no torque is given. What is still slackened is the ledger's to report."""
    still = {e.item for e in case.ledger.having(Balance.OPEN) if e.opening is Opening.SLACKENED}
    for row in case.torques:
        named = case.mentioned(row.item.words, still) or any(case.called(name, [row.item.name]) for name in still)
        if row.demanded and not named:
            line = look_up(row, case.heading(row.number))
            given = facts(step=case.step(row.number), item=row.item, line=line)
            grave = severity(row, case)
            subject = answerable(grave, row.item.words)
            form = "fitted" if _goes_on(row, case) else ""
            form = form if grave is Severity.STOP else f"{form}-plain".lstrip("-")
            yield Problem("tightening-without-torque", grave, row.place, given, form, 2, subject)


def nowhere_to_look(case: Case) -> Iterator[Problem]:
    """A blank torque that does not say where to look it up."""
    for row in case.torques:
        if not row.demanded and not row.value and not row.look_in:
            given = facts(item=row.item, line=look_up(row, row.place, replaces=True))
            yield Problem("nowhere-to-look", Severity.STOP, row.place, given, danger=2)


def torque_without_unit(case: Case) -> Iterator[Problem]:
    """A number without N·m, lbf·ft or degrees: nobody can set a wrench by it."""
    for row in case.torques:
        if row.value.has_number and not row.value.units:
            given = facts(item=row.item, value=row.value.text)
            yield Problem("torque-without-unit", Severity.STOP, row.place, given, danger=2)


def torque_in_words(case: Case) -> Iterator[Problem]:
    """A torque such as "good and tight": no two people read it the same."""
    for row in case.torques:
        plain = case.mentioned(row.value.text, case.lexicon.checks.plainly_tight)
        if row.value and not row.value.has_number and not (plain and not critical(row, case)):
            line = look_up(row, row.place, replaces=True)
            given = facts(item=row.item, value=row.value.text, line=line)
            grave = severity(row, case)
            subject = answerable(grave, row.item.words)
            yield Problem("torque-in-words", grave, row.place, given, danger=2, subject=subject)


def stage_left_out(case: Case) -> Iterator[Problem]:
    """A thing that is tightened by stages in several steps, and a stage before or behind them that no step does."""
    rows: dict[str, dict[int, TorqueRow]] = {}
    for row in case.torques:
        if row.value.stage:
            rows.setdefault(case.thing(row.item.name), {}).setdefault(row.value.stage, row)
    for name, by_stage in rows.items():
        last = max(by_stage)
        missing = next((stage for stage in range(1, max(last, 2) + 1) if stage not in by_stage), None)
        if missing is not None:
            line = Line("Torque", (name, Blank("value")), words=(("stage", missing),))
            given = facts(item=name, last=last, missing=missing, line=line)
            row = by_stage[last]
            grave = severity(row, case)
            yield Problem("stage-left-out", grave, row.place, given, danger=2, subject=answerable(grave, name))


def torque_without_source(case: Case) -> Iterator[Problem]:
    """A value on brakes, steering, wheels, fuel or restraints that names no document."""
    for row in case.torques:
        word = critical(row, case)
        if word and row.value.has_number and not row.look_in:
            given = facts(item=row.item, source=row.origin, word=word)
            form = "" if row.origin.words else "no-source"
            yield Problem("torque-without-source", Severity.STOP, row.place, given, form, 2)


def _goes_on(row: TorqueRow, case: Case) -> bool:
    """The row is there because a threaded thing is fitted, and nothing says that it is tightened."""
    step = case.procedure.steps[row.number - 1]
    tightens = done_to(step.command, case.lexicon.tightening, case.lexicon.words) is not None
    return row.place in [entry.place for entry in step.all("On")] or not tightens


def look_up(row: TorqueRow, place: Place, *, replaces: bool = False) -> Line:
    """The line that leaves a torque blank and says where to find it; with the rest of the line that it replaces."""
    rest = (("order", row.order), ("when", row.when), ("stage", row.value.stage)) if replaces else ()
    words = tuple((word, value) for word, value in rest if value)
    document = row.look_in or Blank("document-section")
    return Line("Torque", (row.item.words, "look up", document), words, place, replaces)


def severity(row: TorqueRow, case: Case) -> Severity:
    """A fault of a torque on which lives depend is a stop, of any other a question."""
    return Severity.STOP if critical(row, case) else Severity.ASK


def critical(row: TorqueRow, case: Case) -> str:
    """The word that makes this torque critical; empty when there is none."""
    step = case.procedure.steps[row.number - 1]
    held = [entry.item.name for entry in step.all("On") if row.item in entry.fasteners]
    return case.quoted(" ; ".join((str(row.item), row.of, *held, step.command)), case.lexicon.critical)
