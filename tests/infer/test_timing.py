"""Steps that may have a stopwatch."""

import pytest

from procbuilder.infer.dangers import standing
from procbuilder.infer.lexicon import load
from procbuilder.infer.timing import may_be_timed
from tests.infer.written import written


def timed(text: str) -> list[bool]:
    procedure = written(f"## Work\n\n{text}")
    still = standing(procedure, load())
    return [may_be_timed(step, still[step.id], load()) for step in procedure.steps]


def test_a_plain_step_may_be_timed_even_with_a_danger() -> None:
    assert timed("### Prise off the cap\n\n- Caution: the bar can slip | cut hand | push away from you\n") == [True]


@pytest.mark.parametrize(
    "step",
    [
        "### Prise off the cap\n\n- Hold: cap not bent | foreman\n",
        "### Fill the circuit\n\n- Reserved: licensed fitter\n",
        "### Slacken the fuel line\n",
        "### Clean the bore\n\n- Supply: brake cleaner, 50 ml\n",
        "### Clean the bore\n\n- Warning: vapours collect in the pit | explosion | open the door\n",
        "### Clean the bore\n\nKeep naked flames away.\n",
    ],
)
def test_no_stopwatch_where_hurry_could_hurt(step: str) -> None:
    assert timed(step) == [False]


def test_a_danger_that_still_stands_counts_until_it_ends() -> None:
    text = """\
### Open the cap

- State: tank open
- Danger: petrol can catch fire | burns | no flame near it | while: tank open

### Wipe the neck

### Close the cap

- Ends: tank open

### Push the car out
"""
    assert timed(text) == [False, False, False, True]


def test_a_word_inside_another_word_is_none() -> None:
    assert timed("### Cut the gasket\n\n### Fit the fireproof sheet\n") == [True, True]
