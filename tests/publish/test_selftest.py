"""The self-test: only facts of the procedure, nothing of a reserved step, no option that could also be right."""

import dataclasses
import json
from fractions import Fraction

import pytest

from procbuilder.model.edition import Edition, EditionStep
from procbuilder.model.torque import read_torque
from procbuilder.publish.data import plain
from procbuilder.publish.moments import moment_in_clip
from procbuilder.publish.selftest import MOST_OF_A_KIND, Question, selftest
from procbuilder.publish.speaker import spoken
from tests.publish.sample import changed_step
from tests.publish.typed import listed, typed


def asked(edition: Edition, kind: str) -> list[Question]:
    return [question for question in selftest(edition) if question.kind == kind]


def step(edition: Edition, name: str) -> EditionStep:
    return next(one for one in edition.steps if one.id == name)


def test_selftest_asks_what_fades_first(edition: Edition) -> None:
    """Accuracy goes first when a job is not done: order, counts, sizes, torques, reasons (decay studies)."""
    kinds = {question.kind for question in selftest(edition)}
    assert kinds == {"picture", "order", "hold", "tool", "reason", "fasteners", "quantity", "torque", "look_up"}


def test_selftest_every_option_is_something_the_procedure_says(edition: Edition) -> None:
    said = json.dumps([plain(section) for section in spoken(edition).sections], ensure_ascii=False)
    questions = selftest(edition)
    for question in questions:
        for option in (*question.options, question.answer):
            assert json.dumps(option, ensure_ascii=False)[1:-1] in said, (question.ask, option)
    assert sum(len(question.options) for question in questions) > 20


def test_selftest_one_option_is_right_and_none_stands_twice(edition: Edition) -> None:
    for question in selftest(edition):
        assert len(set(question.options)) == len(question.options) in (0, 3, 4)
        assert not question.options or question.options.count(question.answer) == 1


def test_selftest_holds_nothing_of_a_reserved_step(edition: Edition) -> None:
    told = [(question.ask, question.answer, question.why, *question.options) for question in selftest(edition)]
    assert not [words for part in told for words in part if "gas" in words or "ecret" in words]
    assert not [question for question in selftest(edition) if question.number == 9]


def test_selftest_order_is_asked_only_where_one_step_follows_the_other(edition: Edition) -> None:
    """Step 4 belongs to a branch and step 9 is reserved: nothing is asked across them."""
    pairs = {(question.ask, question.answer) for question in asked(edition, "order")}
    commands = {one.number: one.command for one in edition.steps}
    for number in (3, 4, 8, 9):
        assert f"What comes directly after “{commands[number]}”?" not in {ask for ask, _ in pairs}
    assert (f"What comes directly after “{commands[1]}”?", commands[2]) in pairs


def test_selftest_what_must_come_before_is_never_mixed_with_what_came_before_too(edition: Edition) -> None:
    demanding = changed_step(edition, "clean", notes=(typed("After: #hub-off"),))
    (question,) = asked(demanding, "before")
    commands = {one.command: one.number for one in edition.steps}
    assert question.answer == "Pull the hub off the stub axle"
    assert len(question.options) == 4
    assert all(commands[option] > 6 for option in question.options if option != question.answer)


def test_selftest_a_missing_torque_asks_where_to_look_and_never_for_a_value(edition: Edition) -> None:
    (question,) = asked(edition, "look_up")
    assert (question.ask, question.answer) == ("Where do you look up the torque: hub nut?", "D1, section 3")
    assert "no value is written" in question.why


def test_selftest_a_value_from_memory_is_not_drilled(edition: Edition) -> None:
    assert [question.answer for question in asked(edition, "torque")] == ["15 N·m then 30 N·m"]


def test_selftest_words_for_a_torque_are_not_drilled(edition: Edition) -> None:
    rows = tuple(
        dataclasses.replace(row, value=read_torque("good and tight")) for row in step(edition, "keeper-on").torques
    )
    worded = changed_step(edition, "keeper-on", torques=rows)
    assert [question.kind for question in selftest(worded) if question.kind in ("torque", "look_up")] == []


def test_selftest_amounts_are_compared_in_one_unit(edition: Edition) -> None:
    """Among grams a single millilitre would tell itself."""
    supplies = {"chock": "oil, 20 ml", "raise": "paste, 5 g", "clean": "cleaner, 200 ml", "lower": "wax, 9 g"}
    for name, words in supplies.items():
        edition = changed_step(edition, name, supplies=listed(f"Supply: {words}"))
    assert [set(question.options) for question in asked(edition, "quantity")] == [set(), set(), {"60 g", "5 g", "9 g"}]


def test_selftest_single_use_is_asked_among_what_goes_back(edition: Edition) -> None:
    fitted = tuple(typed(f"On: {words}") for words in ("split pin, new", "keeper", "hub nut", "wheel"))
    (question,) = asked(changed_step(edition, "keeper-on", moves=fitted), "new")
    assert question.answer == "split pin"
    assert set(question.options) == {"split pin", "hub", "keeper", "hub nut"}


def test_selftest_a_size_is_asked_and_a_count_is_not_taken_for_one(edition: Edition) -> None:
    (question,) = asked(edition, "tool")
    assert (question.answer, question.number) == ("13 mm socket", 4)
    assert "pliers" not in question.options


def test_selftest_too_few_facts_are_to_be_said_aloud(edition: Edition) -> None:
    (question,) = asked(edition, "fasteners")
    assert (question.ask, question.answer, question.options) == ("What holds this: keeper?", "2 x M8 bolt, 13 mm", ())


def test_selftest_two_answers_to_one_question_leave_it_out(edition: Edition) -> None:
    """The same key point with two reasons cannot be asked."""
    again = (typed("Key point: turn the hub a little after each push | it is done so"),)
    asks = [question.ask for question in asked(changed_step(edition, "hub-off", key_points=again), "reason")]
    assert asks == ["Why: “wipe away from the seat”?"]


def test_selftest_takes_at_most_three_of_a_kind_from_the_whole_job(edition: Edition) -> None:
    numbers = [question.number for question in asked(edition, "order")]
    assert len(numbers) == MOST_OF_A_KIND
    assert (numbers[0], numbers[-1]) == (2, 11)


def test_selftest_is_the_same_each_time_and_its_order_tells_nothing(edition: Edition) -> None:
    assert selftest(edition) == selftest(edition)
    places = {question.options.index(question.answer) for question in selftest(edition) if question.options}
    assert len(places) > 2


@pytest.mark.parametrize(
    ("origin", "seconds"),
    [("(said strip 0:51)", 9), ("(seen strip 0:42)", 0), ("(said 1:14.500)", Fraction(65, 2)),
     ("(said strip 1:15)", None), ("(said refit 0:51)", None), ("(from D1 p. 4)", None), ("", None)],
)  # fmt: skip
def test_a_moment_of_the_film_is_found_in_the_clip(edition: Edition, origin: str, seconds: Fraction | None) -> None:
    """The clip of this step is strip 0:42 to 1:15."""
    assert moment_in_clip(step(edition, "dust-cap"), typed(f"Note: here {origin}").origin) == seconds


def test_a_moment_is_not_guessed_where_parts_were_cut_out(edition: Edition) -> None:
    shorter = dataclasses.replace(step(edition, "dust-cap"), footage=Fraction(30))
    assert moment_in_clip(shorter, typed("Note: here (said strip 0:51)").origin) is None
