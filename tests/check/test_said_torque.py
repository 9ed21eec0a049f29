"""A torque that was said while a step was filmed, held against the one that was typed for it."""

from fractions import Fraction

import pytest

from procbuilder.check.case import Case
from procbuilder.check.settled import unsettled
from procbuilder.check.values import said_and_typed_differ
from procbuilder.infer.heard_torques import heard_torques
from procbuilder.infer.ledger import ledger
from procbuilder.infer.lexicon import load
from procbuilder.infer.torques import torques
from procbuilder.model.origin import Place
from procbuilder.model.procedure import Cue, Narration
from procbuilder.publish.wording.problems import line
from procbuilder.read.procedure import read_text
from tests.check.sample import changed

BOLT = "- Torque: keeper bolt | 15 N·m | from: D1 p. 4\n"


def said(words: str, typed: str, at: int = 3) -> list[str]:
    """What the rule finds and nobody answered, when these words are said in the film and these lines are typed."""
    procedure, _ = read_text(changed((BOLT, typed)))
    cues = (Cue(Place("refit.srt", 2), Fraction(at), Fraction(at + 4), words),)
    lexicon = load()
    heard = heard_torques(procedure, [Narration("refit", cues)])
    case = Case(procedure, {}, ledger(procedure, lexicon), (), torques(procedure, lexicon), lexicon, heard)
    open_ones = unsettled(procedure, said_and_typed_differ(case))
    return [f"{problem.severity} {line(problem)}" for problem in open_ones]


def test_another_value_names_both_places() -> None:
    assert said("Twenty-five newton metres on these.", BOLT) == [
        "ask procedure.md:43: the torque of keeper bolt is 15 N·m, but said refit 0:03 is 25 N·m (refit.srt:2) – "
        'write the right one with its document, or "- Asked: said and typed differ: keeper bolt | the words are wrong"'
    ]


def test_on_a_hub_it_stops() -> None:
    found = said("Twenty-five newton metres.", BOLT.replace("keeper bolt", "hub nut"))
    assert [line.partition(" ")[0] for line in found] == ["stop"]


def test_the_exact_answer_settles_it_even_there() -> None:
    typed = BOLT.replace("keeper bolt", "hub nut")
    answer = "- Asked: said and typed differ: hub nut | the words are those of the lock nut, page 5\n"
    assert said("Twenty-five newton metres.", typed + answer) == []
    assert len(said("Twenty-five newton metres.", f"{typed}- Asked: said and typed differ: hub nut |\n")) == 1


@pytest.mark.parametrize(
    ("words", "typed"),
    [
        ("Fifteen newton metres.", BOLT),
        ("Eleven foot pounds.", BOLT),
        ("Ten, then fifteen newton metres.", BOLT.replace("15 N·m", "10 N·m then 15 N·m")),
        ("Twenty-five newton metres.", BOLT.replace("15 N·m", "look up")),
        ("Twenty-five newton metres.", BOLT + "- Asked: said and typed differ: keeper bolt | he took the wrong line\n"),
        ("Twenty-five newton metres.", BOLT + BOLT.replace("keeper bolt", "clamp nut")),
        ("It takes twenty-five minutes.", BOLT),
    ],
)
def test_nothing_to_ask(words: str, typed: str) -> None:
    """The same value, no value, an answered question, or two things of which none is named."""
    assert said(words, typed) == []


def test_another_answer_about_the_same_thing_settles_nothing() -> None:
    """That the bolt was used again says nothing of its torque."""
    answered = BOLT + "- Asked: keeper bolt | used again after inspection\n"
    assert len(said("Twenty-five newton metres.", answered)) == 1


def test_words_of_another_step_do_not_count() -> None:
    assert said("Twenty-five newton metres.", BOLT, at=12) == []
