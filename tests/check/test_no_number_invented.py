"""No line to copy holds a number that nobody typed or said: over all faults of all rules, in both languages."""

import re

import pytest

from procbuilder.model.facts import Line
from procbuilder.publish.language import ENGLISH, language_of
from procbuilder.publish.wording.gaps import say
from procbuilder.publish.wording.problems import said
from tests.check.faults import FOLDER, Fault, faults
from tests.check.sample import GOOD, found

SAMPLES = [fault for path in sorted(FOLDER.glob("*.txt")) for fault in faults(path.stem)]
ALLOWED = {"torque-wrench-range": "ranges of wrenches as they are sold", "danger-proposed": "classes of the shelf"}
"""Rules whose lines hold a number of the trade, and which; none is a value of the work."""
NUMBER = re.compile(r"\d+(?:[.,]\d+)?")


def numbers(text: str) -> set[str]:
    return set(NUMBER.findall(text))


@pytest.mark.parametrize("fault", SAMPLES, ids=lambda fault: fault.title.replace(" ", "-"))
def test_a_line_to_copy_holds_only_numbers_of_the_input(fault: Fault) -> None:
    text = fault.applied(GOOD)
    for problem in found(text):
        if problem.rule in ALLOWED:
            continue
        for line in problem.lines:
            for language in (ENGLISH, language_of("de")):
                # How many are left over is counted, not invented.
                counted = {str(n) for n in range(1, 10)} if problem.rule == "unbalanced-ledger" else set()
                invented = numbers(say(line, language)) - numbers(text) - counted
                assert not invented, (problem.rule, say(line, language))


def test_quoted_lines_within_the_advice_hold_no_other_number() -> None:
    """A line that is typed into a sentence instead of being a fact would be seen here."""
    for fault in SAMPLES:
        text = fault.applied(GOOD)
        for problem in found(text):
            if problem.rule in ALLOWED or problem.rule == "unbalanced-ledger":
                continue
            for quoted in re.findall(r'"(- [A-Z][^"]*)"', said(problem).instead):
                assert numbers(quoted) <= numbers(text), (problem.rule, quoted)


def test_an_invented_number_would_be_noticed() -> None:
    assert numbers(say(Line("Lift", ("wheel", "25")), ENGLISH)) - numbers("- Lift: wheel") == {"25"}
