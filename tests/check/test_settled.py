"""What a technician answered is not asked again; a stop, and the list of all dangers, cannot be talked away."""

import pytest

from procbuilder.check.settled import unsettled
from procbuilder.model.origin import Place
from procbuilder.model.problem import Problem, Severity
from procbuilder.read.procedure import read_text
from tests.check.sample import changed, said

DRIFT = ("- Off: washer\n", "- Off: washer\n- Tool: brass drift\n")
PLACE = Place("procedure.md", 7)
CONFIRMED = "- Dangers confirmed: RB | 2026-03-02\n"


def rules(*changes: tuple[str, str]) -> list[str]:
    return [line.split()[2] for line in said(changed(*changes))]


def test_the_question_is_asked_at_first() -> None:
    assert rules(DRIFT) == ["danger-proposed"]


@pytest.mark.parametrize(
    "answer",
    [
        "- Downgraded: chips fly from hammer, drift or puller | RB | brass on soft metal",
        "- Refused: chips fly from hammer, drift or puller | brass on soft metal",
        "- Asked: Chips fly from hammer | brass on soft metal",
        '- Refused: proposed from "drift" in step 9 | brass on soft metal',
    ],
)
def test_an_answer_settles_it(answer: str) -> None:
    assert rules(DRIFT, (CONFIRMED, f"{CONFIRMED}{answer}\n")) == []


@pytest.mark.parametrize(
    "answer",
    [
        "- Refused: chips fly from hammer, drift or puller |",
        "- Refused: chips fly | too short to tell which",
        "- Refused: another thing altogether | no",
        "- Note: chips fly from hammer, drift or puller",
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
    assert rules(*order, (CONFIRMED, f"{CONFIRMED}- Refused: {rule} | no battery on it\n")) == []


def test_a_stop_is_never_settled_by_words() -> None:
    stop = ("- On: washer\n", "")
    (line,) = said(changed(stop))
    what = line.split(": ", 1)[1].partition(" – ")[0]
    assert line.startswith("stop")
    assert rules(stop, (CONFIRMED, f"{CONFIRMED}- Refused: {what} | it stays off\n")) == ["unbalanced-ledger"]


def test_the_answer_to_one_question_settles_no_other_that_holds_its_words() -> None:
    """That the split pin was looked at says nothing of where a second one comes from."""
    procedure, _ = read_text(changed((CONFIRMED, f"{CONFIRMED}- Asked: rear axle split pin | looked at\n")))
    again = Problem(
        Severity.STOP, PLACE, "a new one, or the old one?", "", "single-use-again", subject="rear axle split pin"
    )
    closed = Problem(Severity.ASK, PLACE, "rear axle split pin was never taken off", "", "closed-but-never-opened")
    assert list(unsettled(procedure, [again, closed])) == [closed]
    assert list(unsettled(procedure, [closed])) == []


def test_an_answer_about_a_torque_says_nothing_of_where_it_is_turned() -> None:
    raised = ("- On: wheel\n", "- On: wheel\n- Torque: wheel nuts | look up | D1, section 4 | stage: 1\n")
    assert rules(raised) == ["torque-in-the-air"]
    value = f"{CONFIRMED}- Asked: torque of wheel nuts | right, D1 section 4\n"
    assert rules(raised, (CONFIRMED, value)) == ["torque-in-the-air"]
    there = f"{CONFIRMED}- Refused: wheel nuts tightened in the air | the wheel is held by a second person\n"
    assert rules(raised, (CONFIRMED, there)) == []


def test_the_list_of_all_dangers_is_never_refused() -> None:
    refused = "- Refused: nobody has confirmed the dangers of the whole job | no time\n"
    assert rules((CONFIRMED, refused)) == ["dangers-not-confirmed"]


def test_none_confirms_that_there_is_no_danger() -> None:
    assert rules((CONFIRMED, "- Danger: none\n")) == []
