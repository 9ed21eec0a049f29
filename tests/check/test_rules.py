"""Every rule, on a procedure that is wrong in exactly one way, with the sentence it says."""

from fractions import Fraction

import pytest

from procbuilder.check.run import RULES
from procbuilder.model.problem import RANK, Severity
from procbuilder.publish.wording.problems import said as told
from tests.check.faults import FOLDER, Fault, faults
from tests.check.sample import GOOD, changed, found, said

SUBJECTS = (
    "balance", "fasteners", "footage", "front", "order", "proposed", "renewal", "safety", "strain", "torque", "values",
    "writing",
)  # fmt: skip
ALL = [fault for subject in SUBJECTS for fault in faults(subject)]


def test_good_procedure_has_no_problem() -> None:
    assert said(GOOD) == []


@pytest.mark.parametrize("fault", ALL, ids=lambda fault: fault.title.replace(" ", "-"))
def test_fault_is_said_in_these_words(fault: Fault) -> None:
    assert said(fault.applied(GOOD)) == fault.expected


def test_every_fault_file_is_read() -> None:
    assert sorted(path.stem for path in FOLDER.glob("*.txt")) == sorted(SUBJECTS)


def test_every_rule_is_shown_to_find_something() -> None:
    """A problem carries the name of the function that found it, with dashes."""
    names = {rule.__name__.replace("_", "-") for rule in RULES}
    shown = {line.split()[2] for fault in ALL for line in fault.expected}
    in_python = {"narration-not-read", "no-steps", "said-and-typed-differ", "other-speed", "time-between-recordings"}
    assert shown | in_python == names


def test_procedure_without_a_step() -> None:
    text = GOOD[: GOOD.index("## Strip")]
    assert said(text) == [
        "stop 4 no-steps procedure.md:1: the procedure has no step – "
        'write each as a heading: "### 0:42-1:15 Prise off the dust cap"'
    ]


def test_end_that_is_a_second_too_late_is_outside() -> None:
    assert said(GOOD, durations={"strip": Fraction(24), "refit": Fraction(39)}) == [
        "stop 4 time-outside-recording procedure.md:49: 0:40 lies outside the recording refit, which ends at 0:39 – "
        "write a time before 0:39, or name the recording that shows it"
    ]


def test_end_rounded_up_to_the_whole_second_is_inside() -> None:
    """A player shows 39.01 seconds as 0:40."""
    assert said(GOOD, durations={"strip": Fraction(24), "refit": Fraction(3901, 100)}) == []


def test_recording_that_was_not_looked_into_is_not_judged() -> None:
    text = changed(("### refit 0:30-0:40", "### refit 9:30-9:40"))
    assert said(text, durations={}) == []


def test_problems_stand_worst_first() -> None:
    text = changed(
        ("number: P-014\n", ""),
        ("- On: washer\n", ""),
        ("- Wear: eye protection\n", ""),
        (" | never on the jack alone", ""),
        ("Raise the trailer", "Raising the trailer"),
    )
    order = [(problem.severity, problem.danger) for problem in found(text)]
    assert order == sorted(order, key=lambda pair: (RANK[pair[0]], pair[1]))
    assert order == [
        (Severity.STOP, 1),
        (Severity.STOP, 2),
        (Severity.ASK, 1),
        (Severity.ASK, 5),
        (Severity.ADVICE, 6),
    ]


def test_every_sentence_says_what_to_write_instead() -> None:
    for fault in ALL:
        for problem in found(fault.applied(GOOD)):
            assert told(problem).instead
            assert problem.place.line > 0
            assert not told(problem).what.endswith(".")
