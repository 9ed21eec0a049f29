"""A problem knows every step of which it speaks, so that one about a hidden step can lose its words."""

import re

import pytest

from procbuilder.model.facts import StepRef, every
from procbuilder.model.ledger import Moment
from procbuilder.model.problem import Problem
from procbuilder.publish.wording.problems import said
from procbuilder.read.procedure import read_text
from tests.check.faults import FOLDER, Fault, faults
from tests.check.sample import GOOD, found

SAMPLES = [fault for path in sorted(FOLDER.glob("*.txt")) for fault in faults(path.stem)]
_NUMBERS = re.compile(r"\bsteps? (\d+(?:(?:, | and | or )\d+)*)")


def known(problem: Problem) -> set[int]:
    """Numbers of the steps among its facts."""
    return {value.number for value in every(problem.facts) if isinstance(value, StepRef | Moment)}


@pytest.mark.parametrize("fault", SAMPLES, ids=lambda fault: fault.title.replace(" ", "-"))
def test_the_steps_it_says_or_quotes_are_among_its_facts(fault: Fault) -> None:
    text = fault.applied(GOOD)
    steps = read_text(text)[0].steps
    for problem in found(text):
        told = str(said(problem))
        numbers = {int(number) for group in _NUMBERS.findall(told) for number in re.findall(r"\d+", group)}
        quoted = {number for number, step in enumerate(steps, 1) if f'"{step.command}"' in told}
        assert numbers | quoted <= known(problem), told
        assert {steps[number - 1].id for number in known(problem) if number} <= problem.steps


def test_a_step_that_is_only_in_the_words_would_be_noticed() -> None:
    assert _NUMBERS.findall("also in steps 4, 6 and 7, after step 12") == ["4, 6 and 7", "12"]


def test_values_of_several_steps_come_with_all_of_them() -> None:
    """A torque of a hidden step must not be told by the range of the wrench that is missing."""
    fault = next(fault for fault in SAMPLES if fault.title == "no torque wrench for two torques far apart")
    (problem,) = found(fault.applied(GOOD))
    assert known(problem) == {4, 5}
