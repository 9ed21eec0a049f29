"""Steps of the same operation in several procedures."""

import pytest

from procbuilder.infer.alike import borrowed, kind_of, kinds
from procbuilder.model.practice import Logged
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
    found, there = borrowed(kinds(HUB.steps), [Logged("drill", DRILL, runs)])
    assert [(each.step, each.minutes) for each in found] == [("drill/r-pin", 2), ("drill/r-pin", 3)]
    assert there == {"drill/r-pin": "off split pin"}


def test_nothing_is_borrowed_for_operations_that_nobody_wants() -> None:
    found, there = borrowed({"cap": "off dust cap"}, [Logged("drill", DRILL, (run("r-pin", 2),))])
    assert (found, there) == ([], {})
