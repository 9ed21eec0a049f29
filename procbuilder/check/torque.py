"""Rules about tightening: a value, its unit and where it comes from. A missing value is never guessed."""

from collections.abc import Iterator

from procbuilder.check.case import Case
from procbuilder.model.ledger import Balance, Opening
from procbuilder.model.problem import Problem, Severity, worded
from procbuilder.model.words import mentioned, thing
from procbuilder.model.worked import TorqueRow


def tightening_without_torque(case: Case) -> Iterator[Problem]:
    """Something is tightened for good, and no torque is given. What is still slackened is the ledger's to report."""
    still = {thing(e.item) for e in case.ledger.having(Balance.OPEN) if e.opening is Opening.SLACKENED}
    for row in case.torques:
        if row.demanded and not mentioned(row.item.words, still):
            yield worded(
                Severity.STOP if critical(row, case) else Severity.ASK,
                row.place,
                f'step {row.number} tightens "{row.item}" and gives no torque',
                f'add "- Torque: {row.item} | look up | document, section", or the value with its unit and document',
                "tightening-without-torque",
                2,
            )


def nowhere_to_look(case: Case) -> Iterator[Problem]:
    """A blank torque that does not say where to look it up."""
    for row in case.torques:
        if not row.demanded and not row.value and not row.look_in:
            yield worded(
                Severity.STOP,
                row.place,
                f"the torque of {row.item} is to be looked up, but it does not say where",
                f'write "- Torque: {row.item} | look up | document, section"',
                "nowhere-to-look",
                2,
            )


def torque_without_unit(case: Case) -> Iterator[Problem]:
    """A number without N·m, lbf·ft or degrees: nobody can set a wrench by it."""
    for row in case.torques:
        if row.value.has_number and not row.value.units:
            yield worded(
                Severity.STOP,
                row.place,
                f'the torque of {row.item}, "{row.value}", has no unit',
                "write behind the number what was meant: N·m, lbf·ft or degrees",
                "torque-without-unit",
                2,
            )


def torque_in_words(case: Case) -> Iterator[Problem]:
    """A torque such as "good and tight": no two people read it the same."""
    for row in case.torques:
        if row.value and not row.value.has_number:
            yield worded(
                Severity.STOP if critical(row, case) else Severity.ASK,
                row.place,
                f'the torque of {row.item} is only words: "{row.value}"',
                f'write "- Torque: {row.item} | look up | document, section" and keep the words as a "- Key point:"',
                "torque-in-words",
                2,
            )


def stage_left_out(case: Case) -> Iterator[Problem]:
    """A thing that is tightened by stages in several steps, and a stage before or behind them that no step does."""
    rows: dict[str, dict[int, TorqueRow]] = {}
    for row in case.torques:
        if row.stage.isdecimal():
            rows.setdefault(thing(row.item.name), {}).setdefault(int(row.stage), row)
    for name, by_stage in rows.items():
        last = max(by_stage)
        missing = next((stage for stage in range(1, max(last, 2) + 1) if stage not in by_stage), None)
        if missing is not None:
            yield worded(
                Severity.STOP if critical(by_stage[last], case) else Severity.ASK,
                by_stage[last].place,
                f"stage {last} of the torque of {name} is given, and no step does stage {missing}",
                f'add "- Torque: {name} | value | stage: {missing}", or take "stage:" away if there is only one',
                "stage-left-out",
                2,
            )


def torque_without_source(case: Case) -> Iterator[Problem]:
    """A value on brakes, steering, wheels, fuel or restraints that names no document."""
    for row in case.torques:
        word = critical(row, case)
        if word and row.value.has_number and not row.look_in:
            source = row.origin.words or "without a source"
            yield worded(
                Severity.STOP,
                row.place,
                f'the torque of {row.item} is given {source}, and lives depend on it ("{word}")',
                'add the document that says so to the line: " | from: document, page"',
                "torque-without-source",
                2,
            )


def critical(row: TorqueRow, case: Case) -> str:
    """The word of the list that makes this torque critical; empty when there is none."""
    command = case.procedure.steps[row.number - 1].command
    return mentioned(f"{row.item} ; {command}", case.lexicon.critical)
