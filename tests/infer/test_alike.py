"""Steps of the same operation in several procedures."""

from dataclasses import replace

import pytest

from procbuilder.infer.alike import ENOUGH, borrowed, gathered, kind_of, kinds
from procbuilder.model.practice import PracticeLog
from tests.infer.logged import run
from tests.infer.written import written

HUB = written("""
    ## Strip
    ### Pull the split pin out {#pin}
    ### Prise off the dust cap {#cap}
""")
DRILL = written("""
    ## Strip
    ### Take out the split pin {#r-pin}
    ### Clean the spindle {#clean}
    ### Pull the split pins out {#never-done}
""")


@pytest.mark.parametrize(
    ("command", "kind"),
    [
        ("Pull the split pin out", "off split pin"),
        ("Take out the two split pins", "off split pin"),
        ("Prise off the dust cap", "off dust cap"),
        ("Fit the new split pin", "on split pin"),
        ("Onwards", ""),
    ],
)
def test_the_operation_is_what_is_done_to_which_thing(command: str, kind: str) -> None:
    assert kind_of(written(f"## A\n### {command} {{#a}}\n").steps[0]) == kind


def test_rows_of_the_same_operation_are_borrowed_under_a_name_of_their_own() -> None:
    runs = (run("r-pin", 2), run("clean", 9), run("r-pin", 3, day=2))
    found, there = borrowed(kinds(HUB.steps), gathered([PracticeLog("drill", DRILL, runs)]))
    assert [(each.step, each.minutes) for each in found] == [("drill/r-pin", 2), ("drill/r-pin", 3)]
    assert there == {"drill/r-pin": "off split pin"}


def test_nothing_is_borrowed_for_operations_that_nobody_wants() -> None:
    found, there = borrowed({"cap": "off dust cap"}, gathered([PracticeLog("drill", DRILL, (run("r-pin", 2),))]))
    assert (found, there) == ([], {})


def test_of_a_large_library_those_tell_that_did_it_last() -> None:
    """The procedure that borrows is none of them."""
    logs = [PracticeLog(f"p{day:02}", DRILL, (run("r-pin", day, day=day),)) for day in range(1, ENOUGH + 5)]
    found, _ = borrowed({"pin": "off split pin"}, replace(gathered(logs), but=f"p{ENOUGH + 4}"))
    assert [each.minutes for each in found] == list(range(4, ENOUGH + 4))
