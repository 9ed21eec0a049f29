"""An answer settles the one question that it names; a stop without one, and the list of all dangers, stay."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from procbuilder.check.settled import unsettled
from procbuilder.model.origin import Place
from procbuilder.model.problem import Problem, Severity, question
from procbuilder.read.procedure import read_text
from tests.check.faults import FOLDER, faults
from tests.check.sample import GOOD, changed, found, said

DRIFT = ("- Off: washer\n", "- Off: washer\n- Tool: bearing puller\n")
PLACE = Place("procedure.md", 7)
CONFIRMED = "- Dangers confirmed: RB | 2026-03-02\n"
SUBJECTS = ("petrol", "brakes", "wheel nut", "rear wheel nut", "split pin", "#dust-cap")
RULES = ("hold-missing", "wrong-order", "single-use-again", "danger-proposed", "not-reserved")
ASKED = tuple(
    Problem(rule, Severity.STOP if rule == "single-use-again" else Severity.ASK, PLACE, subject=subject)
    for rule in RULES
    for subject in SUBJECTS
)


def rules(*changes: tuple[str, str]) -> list[str]:
    return [line.split()[2] for line in said(changed(*changes))]


def test_the_question_is_asked_at_first() -> None:
    assert rules(DRIFT) == ["danger-proposed"]


@pytest.mark.parametrize(
    "answer",
    [
        "- Downgraded: chips fly from hammer, drift or puller | RB | brass on soft metal",
        "- Refused: danger proposed: chips fly from hammer, drift or puller | brass on soft metal",
        "- Asked: Danger-proposed:  Chips fly from hammer, drift or puller | brass on soft metal",
    ],
)
def test_an_answer_settles_it(answer: str) -> None:
    assert rules(DRIFT, (CONFIRMED, f"{CONFIRMED}{answer}\n")) == []


@pytest.mark.parametrize(
    "answer",
    [
        "- Refused: danger proposed: chips fly from hammer, drift or puller |",
        "- Refused: chips fly from hammer, drift or puller | brass, but of which question?",
        "- Refused: danger proposed: chips fly | too short to tell which",
        "- Refused: hold missing: chips fly from hammer, drift or puller | another rule",
        "- Note: danger proposed: chips fly from hammer, drift or puller",
    ],
)
def test_no_answer_settles_nothing(answer: str) -> None:
    assert rules(DRIFT, (CONFIRMED, f"{CONFIRMED}{answer}\n")) == ["danger-proposed"]


def test_a_downgrade_settles_no_other_question() -> None:
    order = (
        ("- Off: washer\n", "- Off: washer\n- Off: alternator\n"),
        ("- On: washer\n", "- On: washer\n- On: alternator\n"),
    )
    rule = "disconnect the battery before the alternator is touched"
    assert rules(*order) == ["wrong-order"]
    assert rules(*order, (CONFIRMED, f"{CONFIRMED}- Downgraded: {rule} | RB | no battery\n")) == ["wrong-order"]
    assert rules(*order, (CONFIRMED, f"{CONFIRMED}- Refused: wrong order: {rule} | no battery on it\n")) == []


def test_a_stop_without_a_question_is_never_settled() -> None:
    stop = ("- On: washer\n", "")
    assert rules(stop, (CONFIRMED, f"{CONFIRMED}- Refused: unbalanced ledger: washer | it stays off\n")) == [
        "unbalanced-ledger"
    ]


@settings(deadline=None)
@given(st.sets(st.sampled_from([(rule, subject) for rule in RULES for subject in SUBJECTS])))
def test_any_set_of_answers_settles_only_what_it_names(answers: set[tuple[str, str]]) -> None:
    lines = "".join(f"- Refused: {question(rule, subject)} | looked at\n" for rule, subject in sorted(answers))
    procedure, _ = read_text(changed((CONFIRMED, f"{CONFIRMED}{lines}")))
    left = {(problem.rule, problem.subject) for problem in unsettled(procedure, ASKED)}
    assert left == {(problem.rule, problem.subject) for problem in ASKED} - answers


def _rich() -> str:
    """The good procedure with every fault of the samples that fits; those first that take nothing away."""
    text = GOOD
    every = [fault for path in sorted(FOLDER.glob("*.txt")) for fault in faults(path.stem) if fault.expected]
    for fault in sorted(every, key=lambda one: not all(set(old) <= set(new) for old, new in one.changes)):
        fits = all(text.count("\n" + "".join(f"{line}\n" for line in old)) == 1 for old, _ in fault.changes)
        spoils = "language:" in str(fault.changes) or "- Dangers confirmed" in str(fault.changes)
        if fits and not spoils and read_text(fault.applied(text))[1] == ():
            text = fault.applied(text)
    return text


RICH = _rich()
OPEN = {problem.question: problem for problem in found(RICH)}


def test_the_rich_procedure_is_rich() -> None:
    assert len(OPEN) > 20
    assert len({problem.rule for problem in OPEN.values()}) > 15


@settings(deadline=None, max_examples=20)
@given(st.sets(st.sampled_from(sorted(OPEN.keys() - {""}))))
def test_any_set_of_answers_settles_only_that_in_a_procedure_full_of_faults(answers: set[str]) -> None:
    lines = "".join(f"- Refused: {asked} | looked at\n" for asked in sorted(answers))
    assert RICH.count(CONFIRMED) == 1
    left = found(RICH.replace(CONFIRMED, f"{CONFIRMED}{lines}"))
    assert {problem.question for problem in left} == OPEN.keys() - answers


def test_an_answer_about_a_torque_says_nothing_of_where_it_is_turned() -> None:
    raised = ("- On: wheel\n", "- On: wheel\n- Torque: wheel nuts | look up | D1, section 4\n")
    assert rules(raised) == ["torque-in-the-air"]
    value = f"{CONFIRMED}- Asked: torque against thread: wheel nuts | right, D1 section 4\n"
    assert rules(raised, (CONFIRMED, value)) == ["torque-in-the-air"]
    there = f"{CONFIRMED}- Refused: torque in the air: wheel nuts | the wheel is held by a second person\n"
    assert rules(raised, (CONFIRMED, there)) == []


def test_the_list_of_all_dangers_is_never_refused() -> None:
    refused = "- Refused: dangers not confirmed: all | no time\n"
    assert rules((CONFIRMED, refused)) == ["dangers-not-confirmed"]


def test_none_confirms_that_there_is_no_danger() -> None:
    assert rules((CONFIRMED, "- Danger: none\n")) == []
