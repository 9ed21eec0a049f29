"""The short list of questions: what comes first, and what is folded."""

from procbuilder.model.origin import Place
from procbuilder.model.problem import Problem, Severity
from procbuilder.model.questions import Topic, questions


def ask(rule: str, danger: int, line: int, order: int = 0) -> Problem:
    return Problem(rule, Severity.ASK, Place("procedure.md", line), danger=danger, order=order)


def test_dangers_first_then_failure_rights_reader_time_style() -> None:
    asked = [ask("other", danger, 10 - danger) for danger in (6, 5, 4, 3, 2, 1)]
    assert [one.danger for one in questions(asked).first] == [1, 2, 3, 4, 5, 6]


def test_the_graver_signal_word_comes_first() -> None:
    asked = [ask("danger-proposed", 1, 3, order=2), ask("danger-proposed", 1, 9, order=0)]
    assert [one.place.line for one in questions(asked).first] == [9, 3]


def test_what_is_folded_is_counted_by_signal_word() -> None:
    asked = [ask("danger-proposed", 1, line, order) for order in range(4) for line in range(9)]
    found = questions(asked)
    assert [one.order for one in found.first] == [0] * 9 + [1] * 6
    assert found.more == ((Topic.WARNING, 3), (Topic.CAUTION, 9), (Topic.NOTICE, 9))


def test_only_questions_are_asked_and_none_twice() -> None:
    stop = Problem("rule", Severity.STOP, Place("procedure.md", 1), danger=1)
    one = ask("danger-proposed", 1, 3)
    assert questions([stop, one, one]).first == (one,)


def test_what_is_too_much_is_folded_by_kind() -> None:
    asked = [ask("danger-proposed", 1, line) for line in range(15)]
    asked += [ask("which-spanner", 4, line) for line in range(7)]
    asked += [ask("torque-in-words", 2, line) for line in range(2)]
    found = questions(asked)
    assert len(found.first) == 15
    assert found.more == ((Topic.TORQUES, 2), (Topic.SIZES, 7))
    assert questions(asked, None).more == ()
    assert len(questions(asked, None).first) == 24
